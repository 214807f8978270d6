package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// A hip roof over 96 by 72, and at its south wall a shed of 9 in 12, 40 deep, from a porch beam 3 wide
// at 180 up to a ledger; its numbers those of TestAGableByHand. The seat is the beam's 3 in, so the
// roof is at 180 + 9.0625 - 3 x 3/4 = 186.8125 over the beam's face, 180.8125 at the eave 8 out and
// 216.8125 at the wall. The ledger stands off by the sheathing, 7/16, is 1 1/2 thick and 9 1/4
// deep, the size over 9.0625, its arris in the roof: 216.8125 - 1.9375 x 3/4 = 215.359.
// Rafters run from the eave to the ledger, 46.0625: 57.578 + 5.4375 long, 1.5 x 46.0625 x 9.0625
// less 3 x 2.25/2 x 1.5 = 5.0625 of wood. The fly rafters, 6 - 0.75 out, run on to the sheathing.
// Rungs of 84 to 88.5 have their middles 1.4 and 25.4 from the beam's face and serve 8 + 13.4 and
// 40 - 13.4. Blocks stand in 1.5 from the beam's inner side, vented: 2 x 5/4 under the deck, at
// their inner face 186.8125 + 3 x 3/4 - 2.5 = 186.5625, in their middle 6 high.
// A rafter is tied to the ledger at its underside, 9.0625 lower; the ledger to each stud of 1A
// that it passes, the outer ones from its ends on. Each serves 48 of the face from eave to wall.
// The beam of 72 in stock of 60 breaks over the post at 40, where the post holds both pieces; the
// posts are 5 1/2 square under its middle, from 60 to 180 - 9.25, and share the beam at 21.375 and
// 54.625.
func TestAShedOnALedgerAndAPorchByHand(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 96, 72)...)
	roofOn(p, "main", plan.HipRoof, plan.AxisX, 9, rect(0, 0, 96, 72)).Overhang = 0
	p.Porches = []*plan.Porch{{
		Name: "porch", From: geom.Vec2{X: 12, Y: -40}, To: geom.Vec2{X: 84, Y: -40},
		Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
		Posts: []float64{2.75, 40, 69.25}, Base: 60, Top: 180, Pos: plan.Pos{File: "plan.toml", Line: 40},
	}}
	r := roofOn(p, "lean", plan.ShedRoof, plan.AxisX, 9, rect(12, -40, 84, 0))
	r.High, r.Overhang, r.Rake, r.Spacing, r.Blocking = plan.North, 8, 6, 24, plan.VentedBlocking
	p.Lumber.Stock = []float64{48, 60}
	h := roofed(t, p)
	lean := &House{Plan: p}
	var porch []*Member
	for _, m := range h.Members {
		switch {
		case m.Roof == r:
			lean.Members = append(lean.Members, m)
		case m.Role == plan.Beam || m.Role == plan.PorchPost:
			porch = append(porch, m)
		}
	}
	for _, j := range h.Joints {
		if j.Roof == r || j.Host == "porch" {
			lean.Joints = append(lean.Joints, j)
		}
	}
	for _, s := range h.Shares {
		if s.Member.Roof == r {
			lean.Shares = append(lean.Shares, s)
		}
	}
	assert.Equal(t, strings.TrimSpace(`
lean/S/outlooker@88.5/-40, 2x4 : 84 -38.6 187.863 to 88.5 -38.6 187.863, 185.613 to 188.913 high, 4.5 long, 23.625 in³
lean/S/outlooker@88.5/-16, 2x4 : 84 -14.6 205.863 to 88.5 -14.6 205.863, 203.613 to 206.913 high, 4.5 long, 23.625 in³
lean/S/fly@77.25, 2x8 : 89.25 -48 180.813 to 89.25 -0.437 216.484, 171.75 to 216.484 high, 64.891 long, 646.553 in³
lean/ledger, 2x10 : 84 -1.187 210.734 to 12 -1.187 210.734, 206.109 to 215.359 high, 72 long, 999 in³
lean/S/outlooker@7.5/-40, 2x4 : 12 -38.6 187.863 to 7.5 -38.6 187.863, 185.613 to 188.913 high, 4.5 long, 23.625 in³
lean/S/outlooker@7.5/-16, 2x4 : 12 -14.6 205.863 to 7.5 -14.6 205.863, 203.613 to 206.913 high, 4.5 long, 23.625 in³
lean/S/fly@-5.25, 2x8 : 6.75 -48 180.813 to 6.75 -0.437 216.484, 171.75 to 216.484 high, 64.891 long, 646.553 in³
lean/S/rafter@0.75, 2x8 21: 12.75 -48 180.813 to 12.75 -1.937 215.359, 171.75 to 215.359 high, 63.016 long, 621.1 in³
lean/S/rafter@24, 2x8 22: 36 -48 180.813 to 36 -1.937 215.359, 171.75 to 215.359 high, 63.016 long, 621.1 in³
lean/S/rafter@48, 2x8 23: 60 -48 180.813 to 60 -1.937 215.359, 171.75 to 215.359 high, 63.016 long, 621.1 in³
lean/S/rafter@71.25, 2x8 24: 83.25 -48 180.813 to 83.25 -1.937 215.359, 171.75 to 215.359 high, 63.016 long, 621.1 in³
lean/porch/block@12.38, 2x8 : 13.5 -37.75 183.625 to 35.25 -37.75 183.625, 180 to 186.563 high, 21.75 long, 195.75 in³
lean/porch/block@36, 2x8 : 36.75 -37.75 183.625 to 59.25 -37.75 183.625, 180 to 186.563 high, 22.5 long, 202.5 in³
lean/porch/block@59.63, 2x8 : 60.75 -37.75 183.625 to 82.5 -37.75 183.625, 180 to 186.563 high, 21.75 long, 195.75 in³`), roofMembers(lean))
	assert.Equal(t, strings.TrimSpace(`
porch/beam@0, 2-2x10: 12 -40 170.75 to 52 -37 180, 1110 in³, 12 -38.5 175.375 to 52 -38.5 175.375
porch/beam@40, 2-2x10: 52 -40 170.75 to 84 -37 180, 888 in³, 52 -38.5 175.375 to 84 -38.5 175.375
porch/porch post@2.75, 6x6: 12 -41.25 60 to 17.5 -35.75 170.75, 3350.188 in³, 14.75 -38.5 60 to 14.75 -38.5 170.75
porch/porch post@40, 6x6: 49.25 -41.25 60 to 54.75 -35.75 170.75, 3350.188 in³, 52 -38.5 60 to 52 -38.5 170.75
porch/porch post@69.25, 6x6: 78.5 -41.25 60 to 84 -35.75 170.75, 3350.188 in³, 81.25 -38.5 60 to 81.25 -38.5 170.75`), sticks(porch, func(m *Member) string { return solids(m) + ", " + three(m.A) + " to " + three(m.B) }))
	assert.Equal(t, strings.TrimSpace(`
1A-13-RL at 12.75 -1.937 206.297, station 12.75, serves 23.625: lean/S/rafter@0.75 lean/ledger
1A-16-LW at 16 0 210.734, station 16, serves 12: lean/ledger 1A/stud@16; gap 0.438
1A-32-LW at 32 0 210.734, station 32, serves 16: lean/ledger 1A/stud@32; gap 0.438
1A-36-RL at 36 -1.937 206.297, station 36, serves 23.625: lean/S/rafter@24 lean/ledger
1A-48-LW at 48 0 210.734, station 48, serves 16: lean/ledger 1A/stud@48; gap 0.438
1A-60-RL at 60 -1.937 206.297, station 60, serves 23.625: lean/S/rafter@48 lean/ledger
1A-64-LW at 64 0 210.734, station 64, serves 16: lean/ledger 1A/stud@64; gap 0.438
1A-80-LW at 80 0 210.734, station 80, serves 12: lean/ledger 1A/stud@80; gap 0.438
1A-83-RL at 83.25 -1.937 206.297, station 83.25, serves 23.625: lean/S/rafter@71.25 lean/ledger
lean/rakeSE-1-FO at 88.5 -38.15 187.263, station 1.4, serves 21.4: lean/S/fly@77.25 lean/S/outlooker@88.5/-40; 6.75 out, 0 back
lean/rakeSE-1-OR at 84 -38.15 187.263, station 1.4, serves 21.4: lean/S/outlooker@88.5/-40 lean/S/rafter@71.25; 6.75 out, 0 back
lean/rakeSE-25-FO at 88.5 -14.15 205.263, station 25.4, serves 26.6: lean/S/fly@77.25 lean/S/outlooker@88.5/-16; 6.75 out, 0 back
lean/rakeSE-25-OR at 84 -14.15 205.263, station 25.4, serves 26.6: lean/S/outlooker@88.5/-16 lean/S/rafter@71.25; 6.75 out, 0 back
lean/rakeSW-1-FO at 7.5 -38.15 187.263, station 1.4, serves 21.4: lean/S/fly@-5.25 lean/S/outlooker@7.5/-40; 6.75 out, 0 back
lean/rakeSW-1-OR at 12 -38.15 187.263, station 1.4, serves 21.4: lean/S/outlooker@7.5/-40 lean/S/rafter@0.75; 6.75 out, 0 back
lean/rakeSW-25-FO at 7.5 -14.15 205.263, station 25.4, serves 26.6: lean/S/fly@-5.25 lean/S/outlooker@7.5/-16; 6.75 out, 0 back
lean/rakeSW-25-OR at 12 -14.15 205.263, station 25.4, serves 26.6: lean/S/outlooker@7.5/-16 lean/S/rafter@0.75; 6.75 out, 0 back
porch-1-RP at 12.75 -38.5 180, station 0.75, serves 23.625: lean/S/rafter@0.75 porch/beam@0
porch-24-RP at 36 -38.5 180, station 24, serves 23.625: lean/S/rafter@24 porch/beam@0
porch-48-RP at 60 -38.5 180, station 48, serves 23.625: lean/S/rafter@48 porch/beam@40
porch-71-RP at 83.25 -38.5 180, station 71.25, serves 23.625: lean/S/rafter@71.25 porch/beam@40`), roofJoints(lean))
	assert.Equal(t, strings.TrimSpace(`
porch-3-PC at 14.75 -38.5 170.75, gap 0, serves 21.375: porch/beam@0 porch/porch post@2.75
porch-40-PC at 52 -38.5 170.75, gap 0, serves 33.25: porch/beam@0 porch/porch post@40 porch/beam@40
porch-69-PC at 81.25 -38.5 170.75, gap 0, serves 17.375: porch/beam@40 porch/porch post@69.25
porch-3-PB at 14.75 -38.5 60, gap 0, serves 21.375: porch/porch post@2.75
porch-40-PB at 52 -38.5 60, gap 0, serves 33.25: porch/porch post@40
porch-69-PB at 81.25 -38.5 60, gap 0, serves 17.375: porch/porch post@69.25`), jointsOf(joints(h, "porch", plan.PostCap))+"\n"+jointsOf(joints(h, "porch", plan.PostBase)))
	assert.Equal(t, strings.TrimSpace(`
lean/S/rafter@0.75 from 12.75 -48, run 46.063 at 0.75: 6 to 24.375, 19.148 wide
lean/S/rafter@24 from 36 -48, run 46.063 at 0.75: 24.375 to 48, 24.619 wide
lean/S/rafter@48 from 60 -48, run 46.063 at 0.75: 48 to 71.625, 24.619 wide
lean/S/rafter@71.25 from 83.25 -48, run 46.063 at 0.75: 71.625 to 90, 19.148 wide`), roofShares(lean))
	for _, b := range h.Blocks {
		assert.Equal(t, []any{"porch", r, false}, []any{strings.Split(b.Plate.ID, "/")[0], b.Member.Roof, b.Full}, b.Member.ID)
		assert.Nil(t, b.Wall)
	}
}
