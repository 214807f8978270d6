package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A simple-span deck by
// own statics: 516 plf over 192 ft on a deck 120 ft deep: V = 49,536 lb, v = 413
// plf, M = wL²/8 = 2,377,728 lb-ft, chord 19,814 lb.
func TestBayOfADeck(t *testing.T) {
	b := Bay{Lines: [2]string{"a", "b"}, Lo: 120, Hi: 120 + 192*12, Depth: 120 * 12}
	b.load([]Band{{From: "walls", Lo: 0, Hi: 5000, Load: 516}})
	assert.InDelta(t, 49_536, b.Ends[0], 1e-6)
	assert.InDelta(t, 49_536, b.Ends[1], 1e-6)
	assert.InDelta(t, 413, b.Unit(), 0.5)
	assert.InDelta(t, 19_814, b.Chord(), 0.5)

	// Statics: a load of 100 plf on the first 10 of 40 ft: 875 and 125 lb; the moment is
	// largest where the shear comes to nothing, 8.75 ft in: 875 x 8.75 / 2.
	b = Bay{Lines: [2]string{"a", "b"}, Lo: 0, Hi: 480, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 120, Load: 100}})
	assert.InDeltaSlice(t, []float64{875, 125}, b.Ends[:], 1e-9)
	assert.InDelta(t, 875*8.75/2*12, b.Moment, 0.002*875*8.75/2*12)

	// Past the last line it is a cantilever.
	b = Bay{Lines: [2]string{"a", ""}, Lo: 480, Hi: 540, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 540, Load: 100}})
	assert.InDeltaSlice(t, []float64{500, 0}, b.Ends[:], 1e-9)
	assert.InDelta(t, 500*30, b.Moment, 1e-9)
	b = Bay{Lines: [2]string{"", "a"}, Lo: 0, Hi: 60, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 540, Load: 100}})
	assert.InDeltaSlice(t, []float64{0, 500}, b.Ends[:], 1e-9)
	assert.InDelta(t, 500*30, b.Moment, 1e-9)
}

// What the bays hand to the lines is all the wind on each deck.
func TestBaysHandOnAllOfTheDeck(t *testing.T) {
	r := demoReport(t)
	for _, s := range r.Stories {
		sum := 0.0
		for _, b := range r.Bays {
			if b.Level == s.Level && plan.Axes[b.Axis] == s.Axis {
				sum += b.Ends[0] + b.Ends[1]
			}
		}
		assert.InDelta(t, s.Deck, sum, 1e-6*s.Deck, "%s along %s", s.Level.Name, s.Axis)
	}
	// The demo's roof: 0.6 of its wind by halves over 44 ft, without that on the eaves,
	// which goes to the walls under them: 18 in out, as deep at the wall as a 2x10 at
	// 7:12 and half of what the slope falls, under 58.44 psf. Its deck, 19/32 in with
	// ring nails of 0.120 in, has the 15/32 row of 8d, 360 x 1.4 to 505 / 2, less by
	// the nail.
	eaves := 2 * 1.5 * 58.44 * (9.25*math.Hypot(1, 7.0/12) + 18*7.0/12/2) / 12
	l := demand(t, r, "roof deck, line 2S, from its high side", diaphragmCheck)
	assert.InDelta(t, (r.Stories[0].Total-eaves)/2/44*0.6, l.Demand, 0.5)
	assert.Less(t, l.Capacity.Value, 252.5)
	assert.Greater(t, l.Capacity.Value, 180.0)
	require.Empty(t, l.Gap)
}

// An L of 40 by 40 ft whose court, 20 ft wide and 16 ft deep, is open: south of the
// inside corner the deck is the wing's 20 ft deep for wind along x, west of it the
// main body's 24 ft for wind along y. 300 plf over the 16 ft between the wing's end
// and the line of the court are 2,400 lb at each end, 120 plf on 20 ft, and wL²/8 =
// 9,600 lb-ft, a chord of 480 lb; over all of the house's 40 ft they would be half.
func TestBayBesideTheCourtOfAnL(t *testing.T) {
	ft := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x * 12, Y: y * 12} }
	o, corners := outline{}, []geom.Vec2{ft(20, -16), ft(40, -16), ft(40, 24), ft(0, 24), ft(0, 0), ft(20, 0)}
	whole := noExtent()
	for i, p := range corners {
		o = append(o, [2]geom.Vec2{p, corners[(i+1)%6]})
		whole.hold(p)
	}
	for _, c := range []struct {
		ax           int
		lo, hi, deep float64 // ft
	}{
		{0, -16, 0, 20},
		{0, 0, 24, 40},
		{0, -17, -16, 20},
		{0, 24, 25, 40},
		{0, -16, 24, 20},
		{1, 0, 20, 24},
		{1, 20, 40, 40},
		{1, -1, 0, 24},
		{1, 40, 41, 40},
	} {
		assert.InDelta(t, c.deep*12, o.depth(whole, c.ax, c.lo*12, c.hi*12), 1e-6, "%v", c)
		assert.InDelta(t, 480, outline(nil).depth(whole, c.ax, c.lo*12, c.hi*12), 1e-6, "no loop")
	}
	m := &model{}
	m.indoors = map[*plan.Level]outline{nil: o}
	d := &diaphragm{extent: whole, lines: [2][]*ShearLine{{{Name: "S", At: -192}, {Name: "C"}, {Name: "N", At: 288}}, nil}}
	load := []Band{{Lo: -192, Hi: 288, Load: 300}}
	b := m.baysOf(d, StoryShear{Bands: load}, 0)
	require.Len(t, b, 2)
	assert.InDelta(t, 120, b[0].Unit(), 1e-6)
	assert.InDelta(t, 480, b[0].Chord(), 0.5)
	assert.InDelta(t, 90, b[1].Unit(), 1e-6)

	l := &lateral{m: m, stories: []StoryShear{{Axis: plan.Axes[0], Bands: load}}}
	m.decks = []*diaphragm{d}
	lb, of := l.chordAt(nil, 0, -96)
	assert.InDelta(t, 480, lb, 0.5)
	assert.Equal(t, "a simple beam between the lines S and C", of.spans())
	lb, of = l.chordAt(nil, 0, -400)
	assert.Zero(t, lb)
	assert.Nil(t, of)
}

// A deck held fast at one line has its moment there, and none at its free edge.
func TestMomentOfACantileveredBay(t *testing.T) {
	load := []Band{{Lo: 0, Hi: 1000, Load: 100}}
	for _, c := range []struct {
		lines    [2]string
		at, want float64 // in, lb-ft
	}{{[2]string{"a", ""}, 0, 1250}, {[2]string{"a", ""}, 60, 0}, {[2]string{"a", ""}, 30, 312.5}, {[2]string{"", "a"}, 0, 0}, {[2]string{"", "a"}, 60, 1250}} {
		b := Bay{Lines: c.lines, Hi: 60}
		b.load(load)
		assert.InDelta(t, c.want, math.Abs(b.moment(load, c.at))/12, 1e-6, "%v", c)
	}
}
