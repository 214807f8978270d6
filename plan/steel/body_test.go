package steel

import (
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/plantest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stick is a member of a box between two corners, its grain along z.
func stick(id string, lo, hi geom.Vec3) *framing.Member {
	d := hi.Sub(lo)
	mid := lo.Add(hi).Mul(0.5)
	return &framing.Member{
		ID: id, Solid: []geom.Solid{geom.Box(lo, geom.Vec3{X: d.X}, geom.Vec3{Y: d.Y}, geom.Vec3{Z: d.Z})},
		A: geom.Vec3{X: mid.X, Y: mid.Y, Z: lo.Z}, B: geom.Vec3{X: mid.X, Y: mid.Y, Z: hi.Z}, Z0: lo.Z, Z1: hi.Z,
	}
}

func end(count, rows int) hardware.End {
	return hardware.End{
		Fasteners: plan.Fasteners{Count: count, Rows: rows, Spacing: 2, EndDist: 1},
		Size:      hardware.Nail{Diameter: 0.148, Length: 1.5},
	}
}

// all fastens one end after the other, alike.
func all(w *Wood, b *Body, e hardware.End, seats []Seat) {
	for i, at := range seats {
		w.fasten(b, i, e, at, 1.375, 0)
	}
}

// A strap of 30 in over two studs that stand 12 in apart one over the other:
// laps of 9 in. Four nails at 1, 3, 5 and 7 in from each end all find their
// stud; with six at each end the fifth, at 9 in, stands on the very end of
// the stud and the sixth in the floor between.
func TestAStrapsNailsAreWhereItLies(t *testing.T) {
	low := stick("low", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 90})
	up := stick("up", geom.Vec3{Z: 102}, geom.Vec3{X: 1.5, Y: 5.5, Z: 192})
	w := NewWood([]*framing.Member{low, up})
	band := geom.Band{{A: geom.Vec3{X: 0.75, Z: 81}, B: geom.Vec3{X: 0.75, Z: 111}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.05}}
	seats := []Seat{{Back: true}, {}}
	b := &Body{Bands: []geom.Band{band}}
	all(w, b, end(4, 1), seats)
	require.Len(t, b.Fasteners, 8)
	assert.Empty(t, b.Loose())
	assert.Len(t, b.Holds(up), 4)
	assert.Len(t, b.Holds(low), 4)
	assert.InDelta(t, 110, b.Holds(up)[0].Head.Z, 1e-9, "the first nail an inch from the upper end")
	assert.Equal(t, []*framing.Member{up, low}, b.Members())

	b = &Body{Bands: []geom.Band{band}}
	all(w, b, end(6, 1), seats)
	assert.Len(t, b.Loose(), 2, "one at each end, 11 in from it")
}

func TestAPatternLongerThanTheSteelIsTold(t *testing.T) {
	w := NewWood([]*framing.Member{stick("m", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 90})})
	b := &Body{Bands: []geom.Band{{{A: geom.Vec3{X: 0.75, Z: 10}, B: geom.Vec3{X: 0.75, Z: 14}, N: geom.Vec3{Y: -1}, Width: 1.5}}}}
	w.fasten(b, 0, end(4, 1), Seat{}, 1.5, 0)
	require.Len(t, b.Off, 1)
	assert.Equal(t, OffSteel{0, 7, 4}, b.Off[0])
}

// Nails of 1 1/2 in driven at one place from both faces of a 1 1/2 in rafter
// meet inside; half an inch aside they pass.
func TestNailsFromTwoFacesMeet(t *testing.T) {
	m := stick("rafter", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 7.25, Z: 90})
	w := NewWood([]*framing.Member{m})
	make := func(x, dy float64, n geom.Vec3) *Body {
		b := &Body{Bands: []geom.Band{{{A: geom.Vec3{X: x, Y: 3 + dy, Z: 10}, B: geom.Vec3{X: x, Y: 3 + dy, Z: 18}, N: n, Width: 1.5}}}}
		w.fasten(b, 0, end(3, 1), Seat{}, 1.5, 0)
		return b
	}
	left, right := make(0, 0, geom.Vec3{X: -1}), make(1.5, 0, geom.Vec3{X: 1})
	got := Meetings([]*Body{left, right})
	require.Len(t, got, 3)
	assert.True(t, got[0].InWood)
	assert.Empty(t, Meetings([]*Body{left, make(1.5, 0.5, geom.Vec3{X: 1})}))
}

// What stops the other counts no deeper than where shanks touch, whichever goes in
// first: of two 0.148 in nails from both faces at one place each stops at the other's
// tip, 1.5 in of nail in 1.5 in of wood, so at nothing; where one crosses 1 in under the
// face and 0.074 in aside, they touch sqrt(0.148² − 0.074²) = 0.128 in above it, and a
// third that is 0.15 in aside is not in its way. The one that crosses is stopped as it
// comes to the first.
func TestANailCountsAsFarAsAnotherLetsIt(t *testing.T) {
	m := stick("rafter", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 7.25, Z: 90})
	nail := func(head, tip geom.Vec3) Fastener {
		f := Fastener{Head: head, Tip: tip, Diameter: 0.148}
		f.Runs = NewWood([]*framing.Member{m}).Through(head, tip)
		return f
	}
	bite := func(f Fastener) float64 {
		_, deep, _, ok := f.Bite(0)
		require.True(t, ok)
		return deep
	}
	at := geom.Vec3{Y: 3, Z: 10}
	one := &Body{Fasteners: []Fastener{nail(at, at.Add(geom.Vec3{X: 1.5}))}}
	back := &Body{Fasteners: []Fastener{nail(at.Add(geom.Vec3{X: 1.5}), at)}}
	stop([]*Body{one, back})
	assert.InDelta(t, 0, bite(one.Fasteners[0]), 1e-6)
	assert.InDelta(t, 0, bite(back.Fasteners[0]), 1e-6)

	for _, c := range []struct{ aside, down, across float64 }{{0, 1 - 0.148, 3 - 0.148}, {0.074, 1 - 0.128172, 3 - 0.128172}, {0.15, 1.5, 3.5}} {
		down := &Body{Fasteners: []Fastener{nail(at, at.Add(geom.Vec3{X: 1.5}))}}
		from := geom.Vec3{X: 1, Z: 10 + c.aside}
		across := &Body{Fasteners: []Fastener{nail(from, from.Add(geom.Vec3{Y: 3.5}))}}
		stop([]*Body{down, across})
		assert.InDelta(t, c.down, bite(down.Fasteners[0]), 1e-5, "%v aside", c.aside)
		assert.InDelta(t, c.across, bite(across.Fasteners[0]), 1e-5, "%v aside", c.aside)
	}
}

// Staggered holes of two flanges pass each other through a member between them: in
// one row each the second flange's are half a step on; in two rows the first flange's
// first row looks at the second one's second row, and the parts are as in one flange.
func TestStaggeredFlangesPassEachOther(t *testing.T) {
	m := stick("hip", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 7.25, Z: 90})
	w := NewWood([]*framing.Member{m})
	for rows, want := range map[int][2][]float64{1: {{1, 3, 5}, {2, 4, 6}}, 2: {{1, 2, 3}, {1, 2, 3}}, 3: {{1, 1, 2}, {1, 2, 2}}} {
		e := end(3, rows)
		e.Spacing, e.EndDist, e.Stagger = 2, 1, true
		b := &Body{Bands: []geom.Band{
			{{A: geom.Vec3{Y: 3}, B: geom.Vec3{Y: 3, Z: 9}, N: geom.Vec3{X: -1}, Width: 2}},
			{{A: geom.Vec3{X: 1.5, Y: 3}, B: geom.Vec3{X: 1.5, Y: 3, Z: 9}, N: geom.Vec3{X: 1}, Width: 2}},
		}}
		for k := range 2 {
			w.fasten(b, 0, e, Seat{Band: k, Flange: k}, 2, 0)
			var got []float64
			for _, f := range b.Fasteners[3*k:] {
				got = append(got, f.Head.Z)
			}
			slices.Sort(got)
			plantest.Near(t, want[k], got, 1e-9)
		}
		assert.Empty(t, Meetings([]*Body{b}), "%d rows", rows)
	}
	assert.InDelta(t, 6, Pattern{Count: 3, Holes: 3, Rows: 1, Spacing: 2, EndDist: 1, Stagger: true, Offset: 1, Odd: true}.Need(), 1e-9)
}

// A bolt without a length goes through the member it meets, whatever that
// is thick.
func TestABoltGoesThrough(t *testing.T) {
	post := stick("post", geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 90})
	w := NewWood([]*framing.Member{post})
	e := end(1, 1)
	e.Size = hardware.Nail{Name: "bolt 5/8", Diameter: 0.625}
	b := &Body{Bands: []geom.Band{{{A: geom.Vec3{X: 2.75}, B: geom.Vec3{X: 2.75, Z: 8}, N: geom.Vec3{Y: -1}, Width: 3, Thickness: 0.25}}}}
	w.fasten(b, 0, e, Seat{}, 3, 0)
	require.Len(t, b.Fasteners, 1)
	assert.InDelta(t, 5.75, b.Fasteners[0].Length(), 1e-6)
	assert.Zero(t, b.Fasteners[0].Beyond())
}

// A rod from a seat at 24 in, through a girder whose underside is at -3: to the
// underside 27 in; above the seat a cut washer 3/16, nut 7/8, thread 1/4 = 1 5/16;
// below it a 3 in plate of 1/4, nut and thread = 1 3/8: 29 11/16. Cut to 18 it ends
// in the girder and bears on nothing.
func TestARodBearsOnlyAsFarAsItIsCut(t *testing.T) {
	girder := stick("girder", geom.Vec3{X: -20, Z: -3}, geom.Vec3{X: 20, Y: 4.5, Z: 8.25})
	girder.Role = plan.GirderBeam
	s := &Steel{Wood: NewWood([]*framing.Member{girder}), Placed: &placement.Placement{House: &framing.House{}}}
	it := &hardware.Item{Item: &plan.Item{Rod: 0.875, Washer: 3}}
	for _, c := range []struct {
		cut   float64
		bears bool
	}{{18, false}, {29.625, false}, {29.6875, true}, {31, true}} {
		top := geom.Vec3{Y: 2, Z: 24 + 1.3125}
		r := &Rod{A: top, B: top.Sub(geom.Vec3{Z: c.cut}), Diameter: 0.875, For: &placement.Piece{Item: it}}
		r.Ends[0] = onSeat(r.A, r.Diameter, 0, -1)
		assert.InDelta(t, 24, r.Ends[0].At.Z, 1e-9)
		s.down(r, r.Ends[0].At)
		assert.Equal(t, c.bears, r.Bears(), "cut to %v", c.cut)
		assert.InDelta(t, 29.6875, r.Need, 1e-9)
		assert.Equal(t, c.bears, r.Why == "", r.Why)
	}
}

// Beside the girder the rod passes nothing; the message names the girder, whose
// middle line is 2.25 in from the face and here 5.25 from the rod.
func TestARodThatMeetsNothingNamesTheNearest(t *testing.T) {
	girder := stick("girder", geom.Vec3{X: -20, Z: -3}, geom.Vec3{X: 20, Y: 4.5, Z: 8.25})
	girder.Role, girder.A, girder.B = plan.GirderBeam, geom.Vec3{X: -20, Y: 2.25, Z: 2.6}, geom.Vec3{X: 20, Y: 2.25, Z: 2.6}
	s := &Steel{Wood: NewWood([]*framing.Member{girder}), Placed: &placement.Placement{House: &framing.House{Members: []*framing.Member{girder}}}}
	top := geom.Vec3{Y: 7.5, Z: 24}
	r := &Rod{A: top, B: top.Sub(geom.Vec3{Z: 30}), Diameter: 0.875, For: &placement.Piece{Item: &hardware.Item{Item: &plan.Item{Rod: 0.875}}}}
	s.down(r, top)
	require.False(t, r.Bears())
	assert.Equal(t, "nothing under it takes a washer: it goes through nothing; the nearest is the girder girder, whose middle line passes it at 5 1/4\"", r.Why)
}

// Nine nails of 0.148 in in one row, the catalog gives no spacing: 10 diameters,
// 1.48 in, where the strap has 18 in of wood: 0.5 + 8 x 1.48 = 12.34, and 1.48
// more to where the wood ends fits. On 12 in of wood (12 - 0.5 - 1.48) / 8 = 1.2525.
// On 8 in that would be 0.7525, on 7 in less than 3/4: 3/4 stays, though it ends
// nearer to the wood's end. A leg of 2 in has (2 - 0.5 - 0.25) / 8 = 0.156.
func TestHolesThatTheCatalogDoesNotPlaceUseTheRoomThereIs(t *testing.T) {
	e := hardware.End{Fasteners: plan.Fasteners{Count: 9}, Size: hardware.Nail{Diameter: 0.148}}
	for _, c := range []struct {
		room Room
		want float64
	}{
		{Room{37, 18}, 1.48},
		{Room{37, 12}, 1.2525},
		{Room{37, 8}, 0.7525},
		{Room{37, 7}, 0.75},
		{Room{37, 0}, 0.75},
		{Room{2, 2}, 0.15625},
	} {
		p := PatternOf(e, 1.375, c.room)
		assert.InDelta(t, c.want, p.Spacing, 1e-9, "%v", c.room)
		assert.Equal(t, 1, p.Rows)
		assert.InDelta(t, 0.5, p.EndDist, 1e-9)
	}
	e.Spacing = 2
	assert.InDelta(t, 2, PatternOf(e, 1.375, Room{37, 7}).Spacing, 1e-9, "the catalog's own stays")
}
