package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The reader and framing keep these faults from a plan that is written in a
// file; a caller that builds its own meets them here.
func TestChecksThatNoFileReaches(t *testing.T) {
	lone := func(kind plan.JointKind, ms ...*framing.Member) *hand {
		h := newHand()
		j := h.joint(h.walls[0], kind, 48, top1, ms...)
		j.ID = "1S-48-" + kind.Code()
		h.Joints = append(h.Joints, j)
		return h
	}
	header := func() *hand {
		h := lone(plan.OpeningHead)
		m := h.member(0, plan.Header, 48, 90, 200, 210)
		m.Opening = &plan.Opening{Name: "w1", At: 48, Width: 42, Pos: plan.Pos{File: "t.toml", Line: 50, Col: 1}}
		h.Joints[0].Members = []*framing.Member{m}
		return h
	}
	plates := func(turned bool) *hand {
		h := lone(plan.WallCorner)
		a := h.member(0, plan.TopPlate, 0, 96, top1-3, top1-1.5)
		h.Joints[0].Members = []*framing.Member{a}
		if turned {
			h.walls[1].From, h.walls[1].To = geom.Vec2{X: 96}, geom.Vec2{X: 192}
			h.Joints[0].Members = append(h.Joints[0].Members, h.member(1, plan.TopPlate, 0, 96, top1-3, top1-1.5))
		}
		return h
	}
	ridge := &framing.Member{ID: "main/ridge", Role: plan.Ridge, Section: two6, A: geom.Vec3{Z: 400}, B: geom.Vec3{X: 96, Z: 400}}
	wrap := func(m map[string]*plan.Item) { m["wrap-strap"].Kind = "ridge strap" }
	for name, c := range map[string]struct {
		house *hand
		edit  func(map[string]*plan.Item)
		code  string
		where string
	}{
		"unknown joint of a rule":       {standard().with(rule("s", "stud-studs", "story-strap")), nil, "unknown-word", `did you mean "stud-stud"?`},
		"unknown joint of a place":      {standard().with(plan.Place{Use: "coil", Wall: "2S", On: "stud-baze", At: []float64{16}}), nil, "unknown-word", `did you mean "stud-base"?`},
		"unknown action":                {standard().with(plan.Place{Use: "coil", Wall: "2S", At: []float64{16}, Action: "removed"}), nil, "unknown-word", `did you mean "remove"?`},
		"unknown host":                  {standard().with(plan.Place{Use: "coil", Wall: "3S", At: []float64{16}}), nil, "unknown-host", "use one of 1S, 2S"},
		"joint without a member":        {lone(plan.StudTop).with(rule("c", "stud-top", "plate-clip")), nil, "joint-without-member", "1S-48-ST"},
		"corner strap on one wall":      {plates(false).with(rule("s", "wall-corner", "story-strap")), nil, "corner-of-one", "only one wall"},
		"corner strap on walls in line": {plates(true).with(rule("s", "wall-corner", "story-strap")), nil, "corner-of-one", "walls 1S and 2S run one way"},
		"ridge without a rafter":        {lone(plan.RafterRidge, ridge).with(rule("r", "rafter-ridge", "wrap-strap")), wrap, "no-rafter", "1S-48-RR"},
		"header without a king":         {header(), nil, "header-without-king", "t.toml:50:1"},
	} {
		t.Run(name, func(t *testing.T) {
			var edits []func(map[string]*plan.Item)
			if c.edit != nil {
				edits = append(edits, c.edit)
			}
			_, ds := placed(t, c.house, edits...)
			found := only(ds, c.code)
			require.Len(t, found, 1, "%v", ds)
			assert.Contains(t, found[0].String(), c.where)
			assert.NotEmpty(t, found[0].Mend, "how to fix it")
			assert.NotZero(t, found[0].Pos.Line)
		})
	}
}
