package framing

import (
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

var twoByEight = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}

// roofOn adds a roof over level 0 of p with the corners given.
func roofOn(p *plan.Plan, name string, kind plan.RoofKind, ridge plan.Axis, pitch float64, area []geom.Vec2) *plan.Roof {
	r := &plan.Roof{
		Name: name, Over: p.Levels[0], Kind: kind, Area: [2]geom.Vec2{area[0], area[2]},
		Ridge: ridge, Pitch: pitch, Overhang: 18, Rake: 12, Rafters: twoByEight, Spacing: 16,
		RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"},
		GableEnd:    [2]plan.GableEnd{"rake", "rake"}, CeilingTies: true, Pos: plan.Pos{File: "plan.toml", Line: 50 + len(p.Roofs)},
	}
	if kind == "hip" {
		r.GableEnd = [2]plan.GableEnd{"hip", "hip"}
	}
	p.Roofs = append(p.Roofs, r)
	return r
}

// trussed makes a roof one of trusses of 2x4 at 24 in.
func trussed(r *plan.Roof) *plan.Roof {
	r.Trusses, r.Rafters, r.Spacing, r.HipGirderPlies = true, twoByFour, 24, 2
	return r
}

var roofHouses = []struct {
	name string
	plan func() *plan.Plan
}{
	{"gable on rake walls", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192))
		return p
	}},
	{"gable with gable trusses, unequal pitches", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 192, 288)...)
		r := roofOn(p, "main", "gable", "y", 7, rect(0, 0, 192, 288))
		r.GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
		r.PitchOther = 10
		return p
	}},
	{"trusses", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		r := roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		r.GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
		r.Trusses = true
		return p
	}},
	{"trusses under a hip", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 408, 312)...)
		trussed(roofOn(p, "main", "hip", "x", 5, rect(0, 0, 408, 312)))
		return p
	}},
	{"trusses under a hip and a gable, along y", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 240, 336)...)
		r := trussed(roofOn(p, "main", "gable", "y", 7, rect(0, 0, 240, 336)))
		r.GableEnd, r.HipGirder, r.HipGirderPlies = [2]plan.GableEnd{"gable truss", "hip"}, 66, 3
		return p
	}},
	{"trusses under a point", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 264, 264)...)
		trussed(roofOn(p, "main", "hip", "x", 6, rect(0, 0, 264, 264)))
		return p
	}},
	{"hip", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
		return p
	}},
	{"pyramid", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, rect(0, 0, 192, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 192, 192))
		return p
	}},
	{"shed", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, rect(0, 0, 192, 120)...)
		w[1].Top, w[2].Top, w[3].Top = "rake", "rake", "rake"
		r := roofOn(p, "main", "shed", "x", 3, rect(0, 0, 192, 120))
		r.High = "N"
		return p
	}},
	{"L with gables and a carried valley", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 360, Y: 0}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 360, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 264, 0))
		return p
	}},
	{"L with hips, broken hip", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "hip", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
	{"T with equal ridges", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 312, Y: -120}, geom.Vec2{X: 312, Y: 0}, geom.Vec2{X: 432, Y: 0}, geom.Vec2{X: 432, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 432, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 312, 0))
		return p
	}},
	{"cross of two gables", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 384, Y: 0}, geom.Vec2{X: 384, Y: 144}, geom.Vec2{X: 264, Y: 144}, geom.Vec2{X: 264, Y: 264}, geom.Vec2{X: 120, Y: 264}, geom.Vec2{X: 120, Y: 144}, geom.Vec2{X: 0, Y: 144})
		w[2].Top, w[5].Top, w[8].Top, w[11].Top = "rake", "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 384, 144))
		roofOn(p, "cross", "gable", "y", 6, rect(120, -120, 264, 264))
		return p
	}},
	{"U with two lower wings and gable trusses", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 0, Y: -120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 120}, geom.Vec2{X: 312}, geom.Vec2{X: 312, Y: -96}, geom.Vec2{X: 432, Y: -96}, geom.Vec2{X: 432, Y: 192}, geom.Vec2{X: 0, Y: 192})
		roofOn(p, "main", "gable", "x", 8, rect(0, 0, 432, 192))
		roofOn(p, "west", "gable", "y", 8, rect(0, -120, 120, 0))
		roofOn(p, "east", "gable", "y", 5, rect(312, -96, 432, 0))
		for _, r := range p.Roofs {
			r.GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
		}
		return p
	}},
	{"hip main, gable wing to the north, steeper", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 360}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{X: 240, Y: 192}, geom.Vec2{X: 240, Y: 300}, geom.Vec2{X: 120, Y: 300}, geom.Vec2{X: 120, Y: 192}, geom.Vec2{Y: 192})
		w[4].Top = "rake"
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 360, 192))
		roofOn(p, "wing", "gable", "y", 8, rect(120, 192, 240, 300))
		return p
	}},
	{"shed porch against a wall, on a beam", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192)).Overhang = 6
		p.Porches = append(p.Porches, &plan.Porch{
			Name: "porch", From: geom.Vec2{X: 24, Y: -96}, To: geom.Vec2{X: 264, Y: -96},
			Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
			Posts: []float64{2.75, 120, 237.25}, Base: 60, Top: 196, Pos: plan.Pos{File: "plan.toml", Line: 40},
		})
		r := roofOn(p, "lean", "shed", "x", 2, rect(24, -96, 264, 0))
		r.High, r.Overhang = "N", 12
		return p
	}},
	{"low wing against a wall of two stories", func() *plan.Plan {
		p := stories(2)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 288}, geom.Vec2{X: 288, Y: 24}, geom.Vec2{X: 408, Y: 24}, geom.Vec2{X: 408, Y: 168}, geom.Vec2{X: 288, Y: 168}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{Y: 192})
		w[3].Top = "rake"
		w2 := ring(p, 1, rect(0, 0, 288, 192)...)
		w2[1].Top, w2[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192)).Over = p.Levels[1]
		roofOn(p, "wing", "gable", "x", 7, rect(288, 24, 408, 168))
		return p
	}},
	{"lean-to over a setback", func() *plan.Plan {
		p := stories(2)
		ring(p, 0, rect(0, 0, 288, 192)...)
		w := ring(p, 1, rect(0, 60, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 5, rect(0, 60, 288, 192)).Over = p.Levels[1]
		r := roofOn(p, "lean", "shed", "x", 4, rect(0, 0, 288, 60))
		r.High = "N"
		return p
	}},
	{"ridge beam, no ties, steep", func() *plan.Plan {
		p := simple(12, 3.5, 12, 240)
		p.Roofs[0].RidgeBearing, p.Roofs[0].CeilingTies = true, false
		return p
	}},
	{"shed on plates, high wall to the west, gable ends trussed", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, rect(0, 0, 120, 192)...)
		w[3].Top = "rake"
		r := roofOn(p, "main", "shed", "y", 3, rect(0, 0, 120, 192))
		r.High = "W"
		return p
	}},
	{"walls of two depths", func() *plan.Plan {
		p := simple(6, 1.75, 12, 240)
		p.Walls[2].Studs = twoByFour
		return p
	}},
	{"walls of two heights", func() *plan.Plan {
		p := simple(6, 1.75, 12, 240)
		p.Walls[2].Height = 121.125
		return p
	}},
	{"L of two bodies that overlap, hip at the corner", func() *plan.Plan {
		p := overlapping(288, 192, 240)
		for _, r := range p.Roofs {
			r.GableEnd = [2]plan.GableEnd{"rake", "hip"}
		}
		return p
	}},
	{"L of two bodies that overlap, the wing narrower", func() *plan.Plan {
		p := overlapping(240, 192, 168)
		for _, r := range p.Roofs {
			r.GableEnd = [2]plan.GableEnd{"rake", "hip"}
		}
		return p
	}},
	{"L of two bodies that overlap, one gable and one hip", func() *plan.Plan {
		p := overlapping(264, 192, 168)
		p.Roofs[0].GableEnd = [2]plan.GableEnd{"rake", "hip"}
		return p
	}},
	{"T of trusses with a valley set", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 384, Y: 0}, geom.Vec2{X: 384, Y: 192}, geom.Vec2{X: 0, Y: 192})
		wall(p, "1M", 0, geom.Vec2{X: 125.5}, geom.Vec2{X: 258.5}).Bearing = true
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 384, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 264, 0))
		for _, r := range p.Roofs {
			r.Trusses, r.GableEnd = true, [2]plan.GableEnd{"gable truss", "gable truss"}
		}
		return p
	}},
	{"T of trusses with a girder truss across its mouth", func() *plan.Plan {
		p := stories(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 384, Y: 0}, geom.Vec2{X: 384, Y: 192}, geom.Vec2{X: 0, Y: 192})
		for _, r := range []*plan.Roof{roofOn(p, "main", "gable", "x", 6, rect(0, 0, 384, 192)), roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 264, 0))} {
			trussed(r).GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
		}
		return p
	}},
	{"L flush with a gable", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 0}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[4].Top, w[6].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
}

// overlapping returns an L: a main roof of width w and depth d with its east
// part under a wing that is ww wide and runs on to the north wall.
func overlapping(w, d, ww float64) *plan.Plan {
	p := stories(1)
	p.Lumber.Stud = 360
	walls := ring(p, 0, geom.Vec2{}, geom.Vec2{X: w - ww}, geom.Vec2{X: w - ww, Y: -144}, geom.Vec2{X: w, Y: -144}, geom.Vec2{X: w, Y: d}, geom.Vec2{Y: d})
	walls[2].Top, walls[5].Top = "rake", "rake"
	roofOn(p, "main", "gable", "x", 6, rect(0, 0, w, d))
	roofOn(p, "wing", "gable", "y", 6, rect(w-ww, -144, w, d))
	return p
}

// A porch roof that ends at the house's wall passes under the overhang: its
// rafters reach the ledger there, and where there is no room for them it is
// told.
func TestPorchRoofPassesUnderTheOverhang(t *testing.T) {
	house := func(overhang float64) *plan.Plan {
		for _, c := range roofHouses {
			if c.name == "shed porch against a wall, on a beam" {
				p := c.plan()
				p.Roofs[0].Overhang = overhang
				return p
			}
		}
		panic("no such house")
	}
	for _, overhang := range []float64{0, 6, 16} {
		h := roofed(t, house(overhang))
		refs := map[string]bool{}
		for _, m := range withRole(h, plan.Rafter) {
			require.False(t, refs[m.Ref], "rafter %s is numbered once in the house", m.Ref)
			refs[m.Ref] = true
			if m.Roof.Name == "lean" {
				require.InDelta(t, -1.5-7.0/16, m.B.Y, 1e-6, "%s ends at the ledger", m.ID)
			}
		}
	}
	_, faults := Frame(house(24))
	require.Len(t, faults, 1)
	// the eave wall's plates are at 229 1/8; 24 in out the underside of rafters
	// at 7 in 12 is 14 in lower, and the porch at 2 in 12 is 4 in under its top
	require.Equal(t, "roof-in-overhang", string(faults[0].Code))
	require.Contains(t, faults[0].Summary, "roof main")
}
