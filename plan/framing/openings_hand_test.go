package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// The wall of these tests stands on a slab at 120, 109.125 high: studs from
// 121.5 to 226.125 under two plates.
const studTop = 120 + 109.125 - 3

func faults(t *testing.T, p *plan.Plan) (codes []string) {
	t.Helper()
	_, ds := Frame(p)
	for _, d := range ds {
		codes = append(codes, string(d.Code))
	}
	return codes
}

func TestOpeningsThatJustFit(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*plan.Opening)
		code string
	}{
		// Head at 226.125 - 9.25 = 216.875, 96.875 over the floor: 66.875 over a sill
		// at 30.
		{"a header tight to the plates", func(o *plan.Opening) { o.Height = 66.875 }, ""},
		{"a sixteenth higher", func(o *plan.Opening) { o.Height = 66.9375 }, "header-too-high"},
		// Three plies of 1.5 are 4.5 in a wall of 5.5; four are 6.
		{"three plies", func(o *plan.Opening) { o.Header = headerWide }, ""},
		{"four plies", func(o *plan.Opening) { o.Header.Ply = 4 }, "header-too-thick"},
		{"a sill right on the plate: 3 in", func(o *plan.Opening) { o.Sill = 3 }, ""},
		{"a sill lower than that", func(o *plan.Opening) { o.Sill = 2.9 }, "sill-too-low"},
		{"no sill", func(o *plan.Opening) { o.Sill = 0 }, ""},
		{"no header", func(o *plan.Opening) { o.Header = plan.Lumber{} }, "header-missing"},
		{"no width", func(o *plan.Opening) { o.Width = 1 }, "opening-no-size"},
		{"no height", func(o *plan.Opening) { o.Height = 1 }, "opening-no-size"},
		// One jack and the end stud: 3 in.
		{"3 in from the start", func(o *plan.Opening) { o.At = 3 }, ""},
		{"2.9 in from the start", func(o *plan.Opening) { o.At = 2.9 }, "opening-near-end"},
		{"3 in from the end", func(o *plan.Opening) { o.At = 192 - 3 - 38.5 }, ""},
		{"2.9 in from the end", func(o *plan.Opening) { o.At = 192 - 2.9 - 38.5 }, "opening-near-end"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := window("w", 64, 38.5)
			c.edit(o)
			p, _ := straight(192, o)
			got := faults(t, p)
			if c.code == "" {
				assert.Empty(t, got)
			} else {
				assert.Equal(t, []string{c.code}, got)
			}
		})
	}
}

func TestCripplesByHand(t *testing.T) {
	// An opening of 38.5 at 64: jacks 62.5 to 64 and 102.5 to 104, header 62.5 to 104 on
	// them. On the module 64, 80 and 96 fall over it; 64's own stud, 63.25 to 64.75,
	// and all others stand wholly over the header. Its top is 120 + 84 + 9.25 =
	// 213.25. The sill's top is at 150: cripples under both ends, 64 to 65.5 and 101 to
	// 102.5, and at 80 and 96.
	p, _ := straight(192, window("w", 64, 38.5))
	h := frame(t, p)
	var over, under []float64
	for _, m := range of(h, "1A", plan.Cripple) {
		if m.Z0 > 200 {
			over = append(over, m.Mid())
			plantest.Near(t, []float64{213.25, studTop}, []float64{m.Z0, m.Z1}, 1e-9)
		} else {
			under = append(under, m.Mid())
			plantest.Near(t, []float64{121.5, 148.5}, []float64{m.Z0, m.Z1}, 1e-9)
		}
	}
	assert.Equal(t, []float64{64, 80, 96}, over)
	assert.ElementsMatch(t, []float64{64.75, 80, 96, 101.75}, under)
	sill := of(h, "1A", plan.Sill)
	require.Len(t, sill, 1)
	assert.Equal(t, [4]float64{64, 102.5, 148.5, 150}, [4]float64{sill[0].S0, sill[0].S1, sill[0].Z0, sill[0].Z1})
	// The gap of a header's end is what lies between header and plates.
	for _, j := range joints(h, "1A", plan.OpeningHead) {
		assert.InDelta(t, studTop-213.25, j.Gap, 1e-9)
		assert.InDelta(t, 41.5/2, j.Tributary, 1e-9, "half of the header")
		assert.InDelta(t, 204, j.At.Z, 1e-9, "at its foot")
	}
	for _, j := range joints(h, "1A", plan.OpeningSill) {
		assert.InDelta(t, 38.5/2, j.Tributary, 1e-9)
		assert.InDelta(t, 150, j.At.Z, 1e-9)
	}
}

func TestStudsSideBySide(t *testing.T) {
	for space, n := range map[float64]int{1.49: 0, 1.5: 1, 2.99: 1, 3: 2, 4.5: 3} {
		assert.Equal(t, n, fit(space), "%v", space)
	}
}

func TestSpliceIsChosenByHand(t *testing.T) {
	at := func(cost float64, s ...float64) (out []place) {
		for _, x := range s {
			out = append(out, place{x, cost})
		}
		return out
	}
	for _, c := range []struct {
		name   string
		length float64
		places []place
		stock  float64
		want   []float64
	}{
		// Two pieces do, and the longer comes first.
		{"one cut, the longer piece first", 240, at(0, 96, 120, 144), 192, []float64{144}},
		// Of 192 and 48 no piece is under 4 ft; 200 would be over the stock.
		{"no piece over the stock", 240, at(0, 192, 200), 192, []float64{192}},
		// 192 leaves 47 of 239: 20 for a short piece, so 144 is taken.
		{"no short piece where there is a choice", 239, at(0, 144, 192), 192, []float64{144}},
		{"a short piece rather than three", 230, at(0, 190), 192, []float64{190}},
		{"off a header where there is a choice", 240, append(at(0, 120), place{144, 10}), 192, []float64{120}},
		// One cut over a lap costs 30 + 100, two cuts 200.
		{"over a lap rather than in three", 240, append(at(0, 40), place{144, 30}, place{200, 0}), 192, []float64{144}},
		// 208 is over the stock from the start, and 192 leaves 208: three pieces, of
		// which the first is the longest that the stock gives.
		{"as many as it takes", 400, at(0, 100, 192, 208, 300), 192, []float64{192, 300}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := chooseCuts(span{0, c.length}, c.places, c.stock)
			require.True(t, ok)
			assert.Equal(t, c.want, got)
		})
	}
	_, ok := chooseCuts(span{0, 400}, at(0, 100), 192)
	assert.False(t, ok, "300 are left")
	assert.Equal(t, 20.0, short(47.9))
	assert.Zero(t, short(48))
	assert.True(t, within([]float64{10, 50}, 33, 24))
	assert.False(t, within([]float64{10}, 34, 24), "24 in off is enough")
	assert.Equal(t, []float64{100, 200}, even(0, 250, 100))
	assert.Equal(t, []float64{100}, even(0, 200, 100), "the last piece is whole")
}

func TestTributaryLengthsByHand(t *testing.T) {
	// A wall of 100: studs at 0.75, 16, 32, 48, 64, 80, 96 and the end's at 99.25.
	p, _ := straight(100)
	h := frame(t, p)
	for station, want := range map[float64]float64{
		0.75:  (0.75 + 16) / 2,
		16:    (32 - 0.75) / 2,
		32:    16,
		96:    (99.25-96)/2 + 8,
		99.25: 100 - (96+99.25)/2,
	} {
		j := jointAt(h, "1A", plan.StudTop, station)
		require.NotNil(t, j, "%v", station)
		assert.InDelta(t, want, j.Tributary, 1e-9, "%v", station)
		assert.InDelta(t, studTop, j.At.Z, 1e-9)
		assert.InDelta(t, 2.75, j.At.Y, 1e-9, "the middle of the wall's depth")
	}
}

func TestPostsOfShearSegments(t *testing.T) {
	// A segment from 20 to 90 of a wall of 160 wants full members at 20.75 and 89.25.
	// Studs of the module are laid out after the posts, so only what stands before,
	// as the end studs, saves one.
	for _, c := range []struct {
		from, to float64
		posts    []float64
	}{
		{20, 90, []float64{20.75, 89.25}},
		{15.25, 99, []float64{16, 98.25}},
		{0, 160, nil}, // the end studs
	} {
		p, w := straight(160)
		w.Shear = []*plan.Shear{{Name: "s", From: c.from, To: c.to}}
		h := frame(t, p)
		var got []float64
		for _, m := range of(h, "1A", plan.Post) {
			got = append(got, m.Mid())
		}
		assert.Equal(t, c.posts, got, "%v to %v", c.from, c.to)
		ends := joints(h, "1A", plan.WallEnd)
		require.Len(t, ends, 2)
		for i, at := range []float64{c.from + 0.75, c.to - 0.75} {
			assert.InDelta(t, at, ends[i].Station, 3)
			assert.InDelta(t, c.to-c.from, ends[i].Tributary, 1e-9)
		}
	}
}

func TestMembersThatShareAPlaceAreFound(t *testing.T) {
	box := func(id string, x float64) *Member {
		f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 1})
		return &Member{ID: id, Solid: []geom.Solid{f.Box(x, x+1.5, 0, 5.5, 0, 90)}}
	}
	h := &House{Members: []*Member{box("a", 0), box("b", 1.5), box("c", 2.9), box("d", 40)}}
	// b is 1.5 to 3, c 2.9 to 4.4: a tenth of an inch.
	pairs := h.Overlaps(0.01)
	require.Len(t, pairs, 1)
	assert.Equal(t, [2]string{"b", "c"}, [2]string{pairs[0][0].ID, pairs[0][1].ID})
	assert.Empty(t, h.Overlaps(0.11))
	assert.Len(t, (&House{Members: []*Member{box("a", 0), box("b", 0), box("c", 0)}}).Overlaps(0.01), 3)
}

func TestWallsAreOneLevelByTheirTops(t *testing.T) {
	a, b := &framedWall{top: 100}, &framedWall{top: 100}
	assert.True(t, level(a, b))
	b.top = 100.1
	assert.False(t, level(a, b))
	assert.Equal(t, 3.0, abs(-3))
	assert.Equal(t, 3.0, abs(3))
	assert.True(t, span{0, 5}.meets(span{4, 9}))
	assert.False(t, span{0, 5}.meets(span{5, 9}))
	assert.False(t, span{5, 9}.meets(span{0, 5}))
}
