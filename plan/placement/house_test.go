package placement

import (
	"fmt"
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/require"
)

// The house of these tests is framed by hand, so that each number in them can
// be followed: two walls of 8 ft, one over the other, 2x6 at 16 in.
//
//	first floor   z 120, plates' top 120 + 109.125 = 229.125
//	second floor  z 229.125 + 12.875 = 242, plates' top 242 + 97.125 = 339.125
//	studs         from floor + 1.5 to plates' top - 3
//	story gap    1.5 + 12.875 + 3 = 17.375
//	base gap      1.5 bottom plate + 0.75 subfloor = 2.25, rim 11.25 deep below
const (
	floor1, floor2 = 120.0, 242.0
	top1, top2     = 229.125, 339.125
	storyGap       = 17.375
	baseGap        = 2.25
	rimDeep        = 11.25
)

var stations = []float64{0.75, 16, 32, 48, 64, 80, 95.25}

var two6 = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}

type hand struct {
	*framing.House
	walls [2]*plan.Wall
}

func newHand() *hand {
	l1 := &plan.Level{Name: "first", Index: 0, Floor: floor1, PlateHeight: top1 - floor1, FloorDepth: 12, Subfloor: 0.75}
	l2 := &plan.Level{Name: "second", Index: 1, Floor: floor2, PlateHeight: top2 - floor2, FloorDepth: 12.875, Subfloor: 0.75}
	h := &hand{House: &framing.House{Plan: &plan.Plan{File: "t.toml", Levels: []*plan.Level{l1, l2}}}}
	for i, l := range h.Plan.Levels {
		w := &plan.Wall{Name: fmt.Sprintf("%dS", i+1), Level: l, ToLevel: l, To: geom.Vec2{X: 96}, Exterior: true, Bearing: true, Studs: two6, Spacing: 16}
		h.walls[i] = w
		h.Plan.Walls = append(h.Plan.Walls, w)
	}
	return h
}

// standard is the hand-framed house with all its studs.
func standard() *hand {
	h := newHand()
	for _, s := range stations {
		h.column(s, s)
	}
	h.Joints = append(h.Joints, h.held(0)...)
	h.Joints = append(h.Joints, h.held(1)...)
	return h
}

// column adds a stud at s2 of the upper wall over one at s1 of the lower.
func (h *hand) column(s1, s2 float64) (low, high *framing.Member) {
	low = h.member(0, plan.Stud, s1-.75, s1+.75, floor1+1.5, top1-3)
	high = h.member(1, plan.Stud, s2-.75, s2+.75, floor2+1.5, top2-3)
	return low, high
}

func (h *hand) member(wall int, role plan.Role, s0, s1, z0, z1 float64) *framing.Member {
	w := h.walls[wall]
	f := w.Frame()
	m := &framing.Member{
		ID: fmt.Sprintf("%s/%s@%g", w.Name, role, (s0+s1)/2), Role: role, Wall: w, Level: w.Level, Section: two6,
		S0: s0, S1: s1, Z0: z0, Z1: z1, Length: z1 - z0,
		A: f.At((s0+s1)/2, 2.75, z0), B: f.At((s0+s1)/2, 2.75, z1),
		Solid: []geom.Solid{f.Box(s0, s1, 0, 5.5, z0, z1)},
	}
	if role != plan.Stud {
		m.A, m.B = f.At(s0, 2.75, (z0+z1)/2), f.At(s1, 2.75, (z0+z1)/2)
	}
	h.Members = append(h.Members, m)
	return m
}

// held makes the joints of one wall's studs.
func (h *hand) held(wall int) (out []*framing.Joint) {
	w := h.walls[wall]
	floor, top := w.Level.Floor, w.Level.Top()
	bottom := h.member(wall, plan.BottomPlate, 0, 96, floor, floor+1.5)
	plate := h.member(wall, plan.TopPlate, 0, 96, top-3, top-1.5)
	h.member(wall, plan.UpperPlate, 0, 96, top-1.5, top)
	rim := h.member(wall, plan.Rim, 0, 96, floor-0.75-rimDeep, floor-0.75)
	rim.Solid = []geom.Solid{w.Frame().Box(0, 96, 0, 1.5, rim.Z0, rim.Z1)}
	for _, m := range h.Members {
		if m.Wall != w || m.Role != plan.Stud {
			continue
		}
		base := h.joint(w, plan.StudBase, m.Mid(), m.Z0, m, bottom, rim)
		base.Gap = baseGap
		if wall == 1 {
			base.Kind, base.Gap = plan.StudStud, storyGap
			base.Members = []*framing.Member{m}
			h.below(base)
		}
		out = append(out, base, h.joint(w, plan.StudTop, m.Mid(), m.Z1, m, plate))
	}
	for _, j := range out {
		j.ID = fmt.Sprintf("%s-%d-%s", j.Host, int(math.Round(j.Station)), j.Kind.Code())
	}
	return out
}

// below finds the stud of the lower wall nearest under a stud-stud joint.
func (h *hand) below(j *framing.Joint) {
	best := 12.0
	for _, m := range h.Members {
		if d := m.Mid() - j.Station; m.Wall == h.walls[0] && m.Role == plan.Stud && math.Abs(d) < math.Abs(best) {
			best = d
			j.Members, j.Below, j.Offset = []*framing.Member{j.First(), m}, true, d
		}
	}
}

func (h *hand) joint(w *plan.Wall, k plan.JointKind, s, z float64, ms ...*framing.Member) *framing.Joint {
	return &framing.Joint{Kind: k, Host: w.Name, Wall: w, Level: w.Level, Station: s, Members: ms, At: w.Frame().At(s, 2.75, z), Tributary: 16}
}

// with adds rules or places and gives them lines of their own.
func (h *hand) with(what ...any) *hand {
	for _, x := range what {
		switch x := x.(type) {
		case plan.Rule:
			x.Pos = plan.Pos{File: "t.toml", Line: 100 + len(h.Plan.Rules), Col: 1}
			h.Plan.Rules = append(h.Plan.Rules, &x)
		case plan.Place:
			x.Pos = plan.Pos{File: "t.toml", Line: 200 + len(h.Plan.Places), Col: 1}
			h.Plan.Places = append(h.Plan.Places, &x)
		}
	}
	return h
}

func nails(part string, n, parts int) []plan.Fasteners {
	return []plan.Fasteners{{Part: part, Nail: "10d x 1 1/2", Count: n, Parts: parts}}
}

// items is the catalog of these tests; edit changes it before it is checked.
func items(edit ...func(map[string]*plan.Item)) []*plan.Item {
	list := []*plan.Item{
		{Mark: "story-strap", Kind: "strap", Length: 42, Width: 1.375, Thickness: .0418, Fasteners: nails("each end", 9, 2)},
		{Mark: "short-strap", Kind: "strap", Length: 24, Width: 1.375, Thickness: .0418, Fasteners: nails("each end", 9, 2)},
		{Mark: "base-strap", Kind: "strap", Length: 36, Width: 1.375, Thickness: .0418, Fasteners: nails("each end", 9, 2)},
		{Mark: "wrap-strap", Kind: "wrap strap", Length: 30, Width: 1.375, Thickness: .0418, Fasteners: nails("each leg", 6, 2)},
		{Mark: "coil", Kind: "coil strap", Lap: 15, Coil: 1800, Width: 1.375, Thickness: .0418, Fasteners: nails("each end", 9, 2)},
		{Mark: "floor-strap", Kind: "long strap", Length: 60, Width: 2.125, Thickness: .0673, Fasteners: nails("each end", 14, 2)},
		{Mark: "plate-clip", Kind: "clip", Length: 4.375, Width: 1.625, Thickness: .0538, Fasteners: nails("to stud", 7, 1)},
		{Mark: "hold-down-pair", Kind: "hold-down pair", Length: 10.625, Width: 2.375, Rod: .625, Standoff: 1.5, Center: 1.4375, Washer: 2, Fasteners: nails("each end", 11, 2)},
	}
	by := map[string]*plan.Item{}
	for i, it := range list {
		it.Pos = plan.Pos{File: "t.toml", Line: 10 + i, Col: 1}
		by[it.Mark] = it
	}
	for _, e := range edit {
		e(by)
	}
	return list
}

// placed places a hand-framed house with the test catalog.
func placed(t *testing.T, h *hand, edit ...func(map[string]*plan.Item)) (*Placement, plan.Diagnostics) {
	t.Helper()
	list := items(edit...)
	h.Plan.Items = list
	c, ds := hardware.New(list)
	require.Empty(t, ds, "the catalog of the test")
	p, ds := Place(h.House, c)
	return p, without(ds, "unused-mark")
}

func without(ds plan.Diagnostics, code string) (out plan.Diagnostics) {
	for _, d := range ds {
		if string(d.Code) != code {
			out = append(out, d)
		}
	}
	return out
}
