package framing

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// widest returns how wide a wing of a pitch may be, in whole feet, so that
// its ridge dies in the main roof, d deep.
func widest(main *plan.Roof, pitch, d float64) float64 {
	a, b := main.Pitch, main.PitchOther
	if b == 0 {
		b = a
	}
	if main.PitchOther == 0 {
		return 12 * math.Floor(d/12) // equal ridges
	}
	return 12*math.Floor((2*d*a*b/(a+b)/pitch)/12) - 12
}

// roofPlan draws a house under a gable or hip roof, maybe with a wing to the
// south that may stand flush with an end, and one to the north.
func roofPlan(t *rapid.T) *plan.Plan {
	foot := func(lo, hi int, name string) float64 { return 12 * float64(rapid.IntRange(lo, hi).Draw(t, name)) }
	kinds := rapid.SampledFrom([]plan.RoofKind{plan.GableRoof, plan.HipRoof})
	pitch := func(name string) float64 { return float64(rapid.IntRange(3, 12).Draw(t, name)) }
	p := stories(1)
	p.Lumber.Stud = 360                                  // rake walls may be high
	w, d := foot(26, 40, "width"), foot(14, 26, "depth") // a hip needs room for its ridge
	rakes, trusses := rapid.Bool().Draw(t, "rake walls"), rapid.Bool().Draw(t, "trusses")
	var inner [][2]geom.Vec2
	mainKind := plan.GableRoof
	if !trusses {
		mainKind = kinds.Draw(t, "kind")
	}
	main := roofOn(p, "main", mainKind, "x", pitch("pitch"), rect(0, 0, w, d))
	main.Overhang = 6 * float64(rapid.IntRange(0, 4).Draw(t, "overhang"))
	main.Spacing = rapid.SampledFrom([]float64{16, 19.2, 24}).Draw(t, "spacing")
	if main.Kind == "gable" && rapid.Bool().Draw(t, "unequal") {
		main.PitchOther = pitch("other pitch")
	}
	south, north := []geom.Vec2{{}, {X: w}}, []geom.Vec2{{X: w, Y: d}, {Y: d}}
	if rapid.Bool().Draw(t, "south wing") {
		ww, l := min(foot(8, 14, "south width"), widest(main, main.Pitch, d)), foot(6, 14, "south length")
		x := rapid.SampledFrom([]float64{36, 60, w - ww, w - ww - 36}).Draw(t, "south place")
		kind := plan.GableRoof
		if !trusses {
			kind = kinds.Draw(t, "south kind")
		}
		r := roofOn(p, "south", kind, "y", main.Pitch, rect(x, -l, x+ww, 0))
		if trusses { // something must carry the main trusses over the wing's mouth
			inner = append(inner, [2]geom.Vec2{{X: x + 5.5}, {X: x + ww - 5.5}})
		}
		r.Overhang = main.Overhang
		south = []geom.Vec2{{}, {X: x}, {X: x, Y: -l}, {X: x + ww, Y: -l}, {X: x + ww}}
		if x+ww < w {
			south = append(south, geom.Vec2{X: w})
		}
	}
	if rapid.Bool().Draw(t, "north wing") {
		slope := max(main.PitchOther, main.Pitch)
		if main.PitchOther > 0 {
			slope = main.PitchOther
		}
		ww, l := min(foot(8, 12, "north width"), widest(main, slope, d)), foot(6, 10, "north length")
		r := roofOn(p, "north", "gable", "y", slope, rect(48, d, 48+ww, d+l))
		if trusses {
			inner = append(inner, [2]geom.Vec2{{X: 48 + ww - 5.5, Y: d}, {X: 53.5, Y: d}})
		}
		r.Overhang = main.Overhang
		north = []geom.Vec2{{X: w, Y: d}, {X: 48 + ww, Y: d}, {X: 48 + ww, Y: d + l}, {X: 48, Y: d + l}, {X: 48, Y: d}, {Y: d}}
	}
	walls := ring(p, 0, append(south, north...)...)
	for i, x := range inner {
		wall(p, fmt.Sprintf("M%d", i), 0, x[0], x[1]).Bearing = true
	}
	for _, r := range p.Roofs {
		r.Rake, r.Trusses = r.Overhang, trusses
		if !rakes && r.Kind == "gable" {
			r.GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
		}
		for _, x := range walls {
			along := x.From.Y == x.To.Y
			end := r.Ridge == "y" && along && (x.From.Y == r.Area[0].Y || x.From.Y == r.Area[1].Y) && x.From.X >= r.Area[0].X && x.From.X <= r.Area[1].X && x.To.X >= r.Area[0].X && x.To.X <= r.Area[1].X ||
				r.Ridge == "x" && !along && (x.From.X == 0 || x.From.X == w)
			if end && rakes && r.Kind == "gable" && (r.Ridge == "y" || x.From.Y >= 0 && x.To.Y >= 0) {
				x.Top = "rake"
			}
		}
	}
	return p
}

func TestAnyRoofIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, faults := Frame(roofPlan(t))
		for _, d := range faults {
			require.NotEqual(t, plan.Error, d.Severity, d.String())
		}
		for _, pair := range h.Overlaps(0.01) {
			require.Fail(t, pair[0].ID+" reaches into "+pair[1].ID)
		}
		for _, m := range withRole(h, plan.Rafter) {
			require.True(t, bears(h, m), "%s bears on nothing", m.ID)
		}
	})
}
