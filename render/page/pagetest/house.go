package pagetest

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/plan/steel"
	"galewright/render/page"
)

// TextHouse returns an invented house of two levels whose pieces are put down
// by hand, so that the text sheets are tested apart from framing and rules.
func TextHouse() *page.Model {
	p := &plan.Plan{
		Project: plan.Project{
			Name: "Invented house", Number: "demo 6", Site: "no real place", Date: "2026-03-02", Revision: "0",
			DrawnBy: "site office", CheckedBy: "lead framer", Engineer: "structural engineer of record", Notes: []string{"Piles by others."},
		},
		Site: plan.Site{WindSpeed: 150, Exposure: plan.ExposureD, Risk: plan.RiskII, Edition: plan.ASCE722, Enclosure: plan.Enclosed, Kzt: 1, Assumed: []plan.Assumption{{Key: "enclosure", Value: `"enclosed"`}}},
	}
	for i, name := range []string{"first", "second"} {
		p.Levels = append(p.Levels, &plan.Level{Name: name, Index: i, Floor: 120 + 122*float64(i), PlateHeight: 109.125})
	}
	for i, l := range p.Levels {
		for _, w := range []struct {
			name           string
			x0, y0, x1, y1 float64
		}{{"S", 0, 0, 44, 0}, {"E", 44, 0, 44, 28}, {"N", 44, 28, 0, 28}, {"W", 0, 28, 0, 0}, {"A", 20, 0, 20, 28}, {"stair", 8, 14, 8, 28}} {
			p.Walls = append(p.Walls, &plan.Wall{
				Name: fmt.Sprintf("%d%s", i+1, w.name), Level: l, ToLevel: l, Exterior: len(w.name) == 1 && w.name != "A",
				From: geom.Vec2{X: w.x0 * 12, Y: w.y0 * 12}, To: geom.Vec2{X: w.x1 * 12, Y: w.y1 * 12}, Studs: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}, Spacing: 16,
			})
		}
	}
	p.Roofs = []*plan.Roof{{Name: "main", Over: p.Levels[1]}}
	p.Items = textItems()
	c, _ := hardware.New(p.Items)
	m := &page.Model{House: &framing.House{Plan: p}}
	m.Placement = &placement.Placement{House: m.House, Catalog: c}
	for _, w := range p.Walls {
		for s := 0.75; s < w.Length(); s += 16 {
			put(m, w, s, plan.StudTop, "stud-clip", plan.Inside, w.Level.Top())
			if w.Exterior {
				put(m, w, s, plan.StudBase, "story-strap", plan.Outside, w.Level.Floor)
			}
		}
		put(m, w, 1.5, plan.WallEnd, "floor-strap", plan.Inside, w.Level.Floor)
		put(m, w, 4.5, plan.WallEnd, "hold-down-pair", plan.Inside, w.Level.Floor)
	}
	for i := range 34 {
		j := &framing.Joint{Kind: plan.RafterRidge, Host: "main", Roof: p.Roofs[0], Station: float64(i * 16)}
		m.Placement.Pieces = append(m.Placement.Pieces, &placement.Piece{Tag: fmt.Sprintf("main-%d-RR-ridge", i*16), Joint: j, Item: c.Item("ridge-strap"), Lie: placement.Lie{Face: plan.Top, Station: j.Station}})
	}
	m.Schedule = schedule.New(steel.New(m.Placement))
	return m
}

func textItems() []*plan.Item {
	nails := func(part, nail string, count, parts int, hand bool) plan.Fasteners {
		return plan.Fasteners{Part: part, Nail: nail, Count: count, Parts: parts, HandOnly: hand}
	}
	return []*plan.Item{
		{Mark: "stud-clip", Kind: plan.ClipItem, Length: 4.375, Gauge: "19", Fasteners: []plan.Fasteners{nails("to stud", "8d x 1 1/2", 4, 1, false), nails("to plate", "8d x 1 1/2", 7, 1, false)}},
		{Mark: "ridge-strap", Kind: plan.RidgeStrapItem, Length: 31.25, Width: 1.375, Gauge: "19", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 8, 2, false)}},
		{Mark: "story-strap", Kind: plan.StrapItem, Length: 47.25, Width: 1.375, Gauge: "17", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 11, 2, false)}},
		{Mark: "unused-strap", Kind: plan.StrapItem, Length: 99, Width: 1.375, Gauge: "17", Fasteners: []plan.Fasteners{nails("each end", "10d x 1 1/2", 11, 2, false)}},
		{Mark: "floor-strap", Kind: plan.LongStrapItem, Length: 61.5, Width: 2.125, Gauge: "15", Fasteners: []plan.Fasteners{nails("above", "10d common", 14, 1, true), nails("below", "10d common", 13, 1, true)}},
		{Mark: "hold-down-pair", Kind: plan.HoldDownPairItem, Rod: .625, Gauge: "13", Standoff: 1.625, Center: 1.4375, Fasteners: []plan.Fasteners{nails("each body", "screw No. 14 x 3", 11, 2, false)}},
	}
}

// put places a piece of a mark on a wall.
func put(m *page.Model, w *plan.Wall, s float64, k plan.JointKind, mark string, face plan.Face, z float64) {
	it := m.Placement.Catalog.Item(mark)
	j := &framing.Joint{Kind: k, Host: w.Name, Wall: w, Level: w.Level, Station: s, At: w.Frame().At(s, 0, z)}
	m.Placement.Pieces = append(m.Placement.Pieces, &placement.Piece{
		Tag: fmt.Sprintf("%s-%.0f-%s-%s", w.Name, s, k.Code(), it.Kind.Code), Joint: j, Item: it, Lie: placement.Lie{Face: face, Station: s, Z0: z, Z1: z + it.Length},
	})
}
