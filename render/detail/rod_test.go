package detail

import (
	"math"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"

	"github.com/stretchr/testify/assert"
)

// measured is how long the rod of a body is in a picture of it: from the lowest to the
// highest of its lines, looked at square to it. Its nuts are beyond or on its ends.
func measured(h *scene.House, b *steel.Body, r *steel.Rod) (long float64, nuts int) {
	axis := r.A.Sub(r.B).Unit()
	sight := geom.Vec3{X: 1}
	if math.Abs(axis.X) > 0.9 {
		sight = geom.Vec3{Y: 1}
	}
	view := project.Looking(sight, axis)
	mid, wide := r.A.Add(r.B).Mul(0.5), geom.Vec3{X: 30, Y: 30, Z: r.Length()}
	lo, hi := mid.Sub(wide), mid.Add(wide)
	low, high := math.Inf(1), math.Inf(-1)
	for _, l := range project.Project(h.Around(nil, lo, hi, b), view).Lines() {
		switch l.Owner {
		case scene.Part{Kind: scene.Rod, Body: b}:
			for _, p := range []geom.Vec2{l.A, l.B} {
				low, high = min(low, p.Y), max(high, p.Y)
			}
		case scene.Part{Kind: scene.Nut, Body: b}:
			nuts++
		}
	}
	return high - low, nuts
}

// A rod in a picture is as long as it is cut, and its nuts are drawn: of all rods of all
// examples, one of each item and length. What is cut is what is ordered: a test of the
// schedule holds the bodies to it.
func TestARodIsAsLongInThePictureAsItIsCut(t *testing.T) {
	for _, f := range pagetest.ExampleFiles() {
		m := pagetest.Model(f)
		h := scene.New(m.House)
		type kind struct {
			mark string
			long float64
		}
		seen := map[kind]bool{}
		for _, b := range m.Schedule.Steel.Bodies {
			for _, r := range b.Rods {
				k := kind{b.Piece.Item.Mark, math.Round(r.Length() * 100)}
				if r.For != b.Piece || len(b.Rods) > 1 || seen[k] {
					continue
				}
				seen[k] = true
				if b.Piece.Item.Kind.Name == plan.BraceRodItem {
					continue // broken off between its piles; the elevation of its line has all of it
				}
				long, nuts := measured(h, b, r)
				assert.InDelta(t, r.Length(), long, 1e-6, "%s: %s", filepath.Base(f), b.Piece.Tag)
				if r.Ends[0].Nuts+r.Ends[1].Nuts > 0 {
					assert.Positive(t, nuts, "%s: %s", filepath.Base(f), b.Piece.Tag)
				}
			}
		}
		t.Log(filepath.Base(f), len(seen))
	}
}
