package framing

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
)

// row returns n two-story houses side by side in one plan.
func row(n int) *plan.Plan {
	p := stories(2)
	for i := range n {
		x := float64(i) * 480
		for l := range 2 {
			first := len(p.Walls)
			ring(p, l, rect(x, 0, x+336, 528)...)
			for k, w := range p.Walls[first:] {
				w.Name = fmt.Sprintf("%d-%d%c", i+1, l+1, 'A'+k)
				w.Openings = []*plan.Opening{window("w", 64, 38.5), window("v", 160, 38.5)}
			}
		}
		for k, y := range []float64{3, 176, 352, 525} {
			p.Girders = append(p.Girders, &plan.Girder{
				Name: fmt.Sprintf("G%d-%d", i+1, k+1), From: geom.Vec2{X: x, Y: y}, To: geom.Vec2{X: x + 336, Y: y},
				Member: headerWide, Piles: []float64{6, 168, 330},
			})
		}
	}
	return p
}

// BenchmarkFrame shows time in houses: n log n or better, so ten times the
// houses take about ten times as long.
func BenchmarkFrame(b *testing.B) {
	for _, n := range []int{1, 10, 100, 1000} {
		p := row(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			members := 0
			for b.Loop() {
				h, _ := Frame(p)
				members = len(h.Members)
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(n), "µs/house")
			b.ReportMetric(float64(members), "members")
		})
	}
}

// winged returns one house with n wings under one long roof.
func winged(n int) *plan.Plan {
	p := stories(1)
	w := float64(n) * 240
	walls := []geom.Vec2{{}}
	for i := range n {
		x := float64(i)*240 + 48
		walls = append(walls, geom.Vec2{X: x}, geom.Vec2{X: x, Y: -96}, geom.Vec2{X: x + 144, Y: -96}, geom.Vec2{X: x + 144})
	}
	ring(p, 0, append(walls, geom.Vec2{X: w}, geom.Vec2{X: w, Y: 240}, geom.Vec2{Y: 240})...)
	roofOn(p, "main", "gable", "x", 6, rect(0, 0, w, 240))
	for i := range n {
		x := float64(i)*240 + 48
		roofOn(p, fmt.Sprintf("wing%d", i+1), "gable", "y", 6, rect(x, -96, x+144, 0))
	}
	for _, r := range p.Roofs {
		r.GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
	}
	return p
}

// BenchmarkWings shows that time grows with the roof also where all of it is
// one: what stands near is found by place, not by trying all of it.
func BenchmarkWings(b *testing.B) {
	for _, n := range []int{1, 10, 100} {
		p := winged(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Frame(p)
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(n), "µs/wing")
		})
	}
}
