package deck

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/read"
	"galewright/plan/timber"
	"galewright/plan/wind"
)

// small is a gable roof whose slopes are 96 in long: a pitch of 9:12 over half
// of 153.6 in, 76.8 x 1.25.
const small = `
level = [{ name = "floor", plate_height = "8' 1 1/8in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["16'", "0'"] },
  { name = "E", to = ["16'", "153.6in"], top = "rake" },
  { name = "N", to = ["0'", "153.6in"] },
  { name = "W", to = ["0'", "0'"], top = "rake" },
]
roof = [{ kind = "gable", ridge = "x", pitch = "9:12", rafters = "2x8 @ 16in", overhang = "0'", rake = "%s" }]
[project]
name = "Invented"
[site]
wind_speed = "150 mph"
exposure = "C"
[deck]
panel = "15/32"
nail = "8d common"
edge = "6in"
field = "12in"
%s
`

func framed(t testing.TB, src, dir string) *framing.House {
	t.Helper()
	p, faults := read.Plan("plan.toml", []byte(src), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, faults.Errors(), "%v", faults)
	h, faults := framing.Frame(p)
	require.False(t, faults.Errors(), "%v", faults)
	return h
}

func example(t testing.TB, name string) *framing.House {
	t.Helper()
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	return framed(t, string(src), dir)
}

// The small roof counted by hand. A face is 192 by 96 in: two courses.
// Rafters stand at 3/4 in, then 16, 32 ... 176, then 191 1/4 in.
// Course 1: a panel from 0 to 96 and one to 192. Course 2 begins with a half:
// 0 to 48, 48 to 144, 144 to 192. So 5 pieces a face, 3 of them whole, and two
// halves from one panel: 4 panels a face, none wasted.
func TestPanelsOfASmallRoofByHand(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(small, "0'", ""), ""))
	require.Len(t, d.Faces, 2)
	all, whole := d.Pieces()
	assert.Equal(t, 10, all)
	assert.Equal(t, 6, whole)
	assert.Equal(t, 8, d.Sheets())
	assert.InDelta(t, 2*192*96/144, d.Area(), 1e-6)
	assert.InDelta(t, 0, d.Waste(), 1e-6)
	var ends []float64
	for _, p := range d.Faces[0].Pieces {
		ends = append(ends, p.Lo.X, p.Hi.X)
	}
	assert.InDeltaSlice(t, []float64{0, 96, 96, 192, 0, 48, 48, 144, 144, 192}, ends, 1e-6)
}

// The nails of the same roof. A row is 48 in, its nails 3/8 in from both ends:
// at 6 in 47.25/6 = 7.9, so 8 spaces and 9 nails; at 12 in 4 spaces, 5 nails.
// Whole panels: 2 ends or gable rows of 9 and 5 rafters of 5 between, 43; half
// ones: 2 of 9 and 2 of 5, 28. A face: 3 x 43 + 2 x 28 = 185.
func TestNailsOfASmallRoofByHand(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(small, "0'", ""), ""))
	assert.Equal(t, 2*185, d.Nails())
	rows := map[Row]int{}
	for _, p := range d.Faces[1].Pieces {
		for _, n := range p.Nails {
			rows[n.Row]++
		}
	}
	// gable rows: both ends of both courses, 4 x 9; panel ends: one joint in
	// course 1, two in course 2, two rows each, 6 x 9; the rest 19 x 5.
	assert.Equal(t, map[Row]int{GableRow: 36, EndRow: 54, FieldRow: 95}, rows)
	// Closer at the gable: 4 in, 47.25/4 = 11.8, so 13 nails in place of 9, 8 rows in all.
	closer := New(framed(t, fmt.Sprintf(small, "0'", `gable = "4in"`), ""))
	assert.Equal(t, 2*185+8*4, closer.Nails())
	// Zones: from the eaves 48 in on plan (60 on the slope) everything at 4 in.
	// Course 1 lies wholly within: 15 rows of 13 a face, gables and joints
	// among them (7 + 7 on the panels, and both panels' rows at 96).
	zoned := New(framed(t, fmt.Sprintf(small, "0'", `zone = [{ near = ["eave"], within = "4'", edge = "4in", field = "4in" }]`), ""))
	n := 0
	for _, p := range zoned.Faces[0].Pieces {
		if p.Course == 1 {
			n += len(p.Nails)
		}
		for _, x := range p.Nails {
			v := zoned.Faces[0].own(x.At).Y
			assert.Equal(t, map[bool]int{true: 1, false: 0}[v <= 60+1e-6], x.Zone, "a nail %.1f in up the slope", v)
		}
	}
	assert.Equal(t, 14*13, n)
}

// What a nail holds: between rafters 16 in apart 16 in; at a joint half of
// that for each panel; over the gable, with a rake of 12 in whose first inner
// rafter stands 15 1/4 in away: the deck hangs 12.75 in out, so by lever about
// that rafter 12.75 x (1 + 12.75 / 30.5), and half of 15.25 inward.
func TestWidthOfDeckThatANailHolds(t *testing.T) {
	d := New(framed(t, fmt.Sprintf(small, "1'", ""), ""))
	width := func(x float64, row Row) (out []float64) {
		for _, p := range d.Faces[0].Pieces {
			for _, n := range p.Nails {
				if p.Course == 1 && n.Row == row && n.At.X > x-1 && n.At.X < x+1 {
					out = append(out, n.Width)
				}
			}
		}
		require.NotEmpty(t, out, "%v %s", x, row)
		return out
	}
	assert.InDelta(t, 16, width(48, FieldRow)[0], 1e-6)
	// The first panel reaches from -12 to the rafter at 80.
	assert.InDelta(t, 8, width(80, EndRow)[0], 1e-6)
	assert.InDelta(t, 8, width(80, EndRow)[9], 1e-6)
	assert.InDelta(t, 12.75*(1+12.75/30.5)+15.25/2, width(0.75, GableRow)[0], 1e-6)
}

// Every example's panels cover its roofs once, and every nail is in its panel
// and over the wood of its row.
func TestPanelsCoverEveryRoof(t *testing.T) {
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "dunlin", "sanderling", "turnstone"} {
		d := New(example(t, name+".toml"))
		require.NotEmpty(t, d.Faces, name)
		for _, x := range d.Faces {
			sum := 0.0
			for _, p := range x.Pieces {
				sum += area(p.shape) / 144
				assert.LessOrEqual(t, p.Hi.X-p.Lo.X, PanelLong+touch, "%s %s", name, x.Name)
				assert.LessOrEqual(t, p.Hi.Y-p.Lo.Y, PanelWide+touch, "%s %s", name, x.Name)
				assert.NotEmpty(t, p.Nails, "%s %s course %d", name, x.Name, p.Course)
				for _, n := range p.Nails {
					q := x.own(n.At)
					assert.True(t, q.X > p.Lo.X-2 && q.X < p.Hi.X+2 && q.Y > p.Lo.Y-2 && q.Y < p.Hi.Y+2, "%s %s", name, x.Name)
				}
			}
			assert.InDelta(t, x.Area(), sum, 0.01, "%s %s", name, x.Name)
		}
		assert.GreaterOrEqual(t, d.Waste(), 0.0, name)
	}
}

// Joints of neighboring courses do not stand over one another, and each is
// over a rafter.
func TestJointsAreStaggeredOverRafters(t *testing.T) {
	for _, name := range []string{"marsh-wren", "dunlin", "turnstone"} {
		for _, x := range New(example(t, name+".toml")).Faces {
			joints := map[int][]float64{}
			for _, p := range x.Pieces {
				if p.right != nil {
					joints[p.Course] = append(joints[p.Course], p.right.a.X)
					assert.InDelta(t, p.right.a.X, p.Hi.X, touch)
				}
			}
			for c, list := range joints {
				for _, u := range list {
					for _, o := range joints[c+1] {
						assert.Greater(t, max(u-o, o-u), 12.0, "%s %s course %d", name, x.Name, c)
					}
				}
			}
		}
	}
}

// Without a deck in the plan there are faces and zones, and no panels.
func TestNoDeckNoPanels(t *testing.T) {
	h := example(t, "dunlin.toml")
	h.Plan.Deck = nil
	d := New(h)
	all, _ := d.Pieces()
	assert.Zero(t, all)
	assert.Zero(t, d.Nails())
	w := d.Blow(basis(h))
	assert.Greater(t, w.Most(h.Plan.Roofs[0]).Suction, 100.0)
}

func basis(h *framing.House) wind.Basis {
	s, size := h.Plan.Site, h.Size()
	return wind.Basis{
		Edition: s.Edition, Speed: s.WindSpeed, Exposure: s.Exposure, Enclosure: s.Enclosure, Kzt: s.Kzt, Elevation: s.Elevation,
		Length: size.Length / 12, Width: size.Width / 12, Eave: size.Eave / 12, Height: size.Mean / 12,
	}
}

// The cutting of pieces one after the other: 60 and 36 in make a row, 35.5 in
// another one; three of 40 in take two rows.
func TestRows(t *testing.T) {
	assert.Equal(t, 2, rows([]float64{35.5, 60, 36}))
	assert.Equal(t, 1, rows([]float64{60, 36}))
	assert.Equal(t, 2, rows([]float64{60, 36.1}))
	assert.Equal(t, 2, rows([]float64{40, 40, 40}))
	assert.Equal(t, 3, rows([]float64{96, 96, 96}))
	assert.Zero(t, rows(nil))
}

// A face 100 in high leaves 4 in at the ridge: two courses of 26 in share it
// with a whole one between; 120 in leaves 24, which is left.
func TestStarter(t *testing.T) {
	assert.InDelta(t, 26, starter(100), 1e-9)
	assert.InDelta(t, 48, starter(120), 1e-9)
	assert.InDelta(t, 48, starter(96), 1e-9)
	assert.InDelta(t, 48, starter(30), 1e-9)
}

var pine, _ = timber.SpeciesOf("southern pine")

func TestEdgeStrips(t *testing.T) {
	e := measured(Edge{plan.EaveEdge, geom.Vec2{}, geom.Vec2{X: 100}})
	assert.True(t, e.within(geom.Vec2{X: 50, Y: 36}, 36))
	assert.False(t, e.within(geom.Vec2{X: 50, Y: 36.1}, 36))
	assert.True(t, e.within(geom.Vec2{X: 136, Y: 36}, 36), "square around an inside corner")
	r := measured(Edge{plan.RidgeEdge, geom.Vec2{}, geom.Vec2{X: 100}})
	assert.True(t, r.within(geom.Vec2{X: 114.9, Y: 0}, 36), "36 tan 22.5 = 14.9")
	assert.False(t, r.within(geom.Vec2{X: 115, Y: 0}, 36))
	assert.False(t, measured(Edge{}).within(geom.Vec2{}, 36))
}
