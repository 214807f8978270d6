package framing

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
)

var twoByEight = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}

// roofOn adds a roof over level 0 of p with the corners given.
func roofOn(p *plan.Plan, name, kind, ridge string, pitch float64, area []geom.Vec2) *plan.Roof {
	r := &plan.Roof{Name: name, Over: p.Levels[0], Kind: kind, Area: [2]geom.Vec2{area[0], area[2]}, AreaGiven: true,
		Ridge: ridge, Pitch: pitch, Overhang: 18, Rake: 12, Rafters: twoByEight, Spacing: 16,
		RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"},
		GableEnd:    [2]string{"rake", "rake"}, CeilingTies: true, Pos: plan.Pos{File: "plan.toml", Line: 50 + len(p.Roofs)}}
	if kind == "hip" {
		r.GableEnd = [2]string{"hip", "hip"}
	}
	p.Roofs = append(p.Roofs, r)
	return r
}

func dumpRoof(h *House, d plan.Diagnostics) {
	for _, x := range d {
		fmt.Println(x)
	}
	for _, m := range h.Members {
		if m.Roof != nil {
			fmt.Printf("%s %s %s len %.2f parts %d z %.2f-%.2f %s\n", m.ID, m.Role, m.Section.Text, m.Length, len(m.Solid), m.Z0, m.Z1, m.Ref)
		}
	}
	for _, j := range h.Joints {
		if j.Roof != nil {
			s := ""
			for _, m := range j.Members {
				s += " " + m.ID
			}
			fmt.Printf("%s %.3f%s trib %.2f %v\n", j.ID, j.Station, s, j.Tributary, j.At)
		}
	}
	n := 0
	for _, pair := range h.Overlaps(0.01) {
		if n++; n < 60 {
			fmt.Println("OVERLAP", pair[0].ID, pair[1].ID)
		}
	}
}


var roofHouses = []struct {
	name string
	plan func() *plan.Plan
}{
	{"gable on rake walls", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192))
		return p
	}},
	{"gable with gable trusses, unequal pitches", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 192, 288)...)
		r := roofOn(p, "main", "gable", "y", 7, rect(0, 0, 192, 288))
		r.GableEnd = [2]string{"gable truss", "gable truss"}
		r.PitchOther = 10
		return p
	}},
	{"trusses", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		r := roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		r.GableEnd = [2]string{"gable truss", "gable truss"}
		r.Trusses = true
		return p
	}},
	{"hip", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
		return p
	}},
	{"pyramid", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 192, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 192, 192))
		return p
	}},
	{"shed", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 192, 120)...)
		w[1].Top, w[2].Top, w[3].Top = "rake", "rake", "rake"
		r := roofOn(p, "main", "shed", "x", 3, rect(0, 0, 192, 120))
		r.High = "N"
		return p
	}},
	{"L with gables and a carried valley", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 360, Y: 0}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 360, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 264, 0))
		return p
	}},
	{"L with hips, broken hip", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "hip", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
	{"T with equal ridges", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 312, Y: -120}, geom.Vec2{X: 312, Y: 0}, geom.Vec2{X: 432, Y: 0}, geom.Vec2{X: 432, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 432, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 312, 0))
		return p
	}},
	{"L flush with a gable", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 0}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[4].Top, w[6].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
}

func TestDumpRoof(t *testing.T) {
	for _, c := range roofHouses {
		fmt.Println("=======", c.name)
		h, d := Frame(c.plan())
		dumpRoof(h, d)
	}
}
