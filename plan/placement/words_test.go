package placement

import (
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// A strap has a way to lie at each kind of joint it belongs at, and at no
// other: an unknown kind of joint is told.
func TestEveryStrapHasAWayToLieWhereItBelongs(t *testing.T) {
	lie := func(k *hardware.Kind, j plan.JointKind) *plan.Diagnostic {
		l := &plan.Level{Name: "first"}
		w := &plan.Wall{Name: "1S", Level: l, ToLevel: l, To: geom.Vec2{X: 240}, Studs: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
		m := &framing.Member{Role: plan.Stud, Wall: w, Level: l, Section: w.Studs, S0: 60, S1: 61.5, Z0: 0, Z1: 96}
		second := m
		if j == plan.GirderPile || j == plan.PostCap {
			second = &framing.Member{Role: plan.Pile, Z0: -96}
		}
		ask := want{
			item:  &hardware.Item{Item: &plan.Item{Length: 24, Width: 1.25}, Kind: k},
			joint: &framing.Joint{Kind: j, Wall: w, Level: l, Station: 60.75, Members: []*framing.Member{m, second}}, n: 1,
		}
		if ofDormer(ask.joint) {
			ask.joint.Dormer = &framing.Dormer{Dormer: &plan.Dormer{Name: "D"}, Frame: w.Frame(), From: 24, To: 96}
		}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{Levels: []*plan.Level{l}, Walls: []*plan.Wall{w}}}), found: map[plan.Code][]finding{}}
		_, fault := x.lie(ask)
		return fault
	}
	n := 0
	for _, k := range hardware.Kinds {
		if k.Shape != hardware.Band && k.Shape != hardware.Over {
			continue
		}
		for _, j := range k.On {
			n++
			if d := lie(k, j); d != nil {
				require.NotEqual(t, "no-way-to-lie", string(d.Code), "%s at %s", k.Name, j)
			}
		}
		d := lie(k, "roof-sky")
		require.NotNil(t, d)
		require.Equal(t, "no-way-to-lie", string(d.Code))
	}
	require.Greater(t, n, 25)
}
