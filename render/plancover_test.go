package render

import (
	"math"
	"slices"
	"testing"

	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
)

// No near steel is covered on a plan: of each piece's symbol, and of each line of
// steel, at least half is seen under the grounds of lettering, circles and walls that
// are drawn after it, on every paper.
func TestSteelIsNotCoveredOnPlans(t *testing.T) {
	near := 0
	for _, name := range planExamples {
		for _, paper := range pagetest.Papers {
			drawn := planSheets(t, name, paper)
			symbols := drawn.set.Map()
			for _, s := range drawn.set.Sheets {
				if s.Title.Sheet >= "S-5" {
					continue // details: their holes are counted
				}
				marks := flat(s.Marks, sheet.Pt{})
				var grounds []sheet.Mark // white ones, from the last back
				for _, mk := range slices.Backward(marks) {
					if seen(mk) {
						near++
						assert.LessOrEqual(t, covered(mk, symbols, grounds), 0.5, "%s on %s, %s: %s", name, paper, s.Title.Sheet, sheet.PieceOf(mk).Tag)
					}
					if sheet.StyleOf(mk).Fill == sheet.White {
						grounds = append(grounds, mk)
					}
				}
			}
		}
	}
	assert.Greater(t, near, 1000)
}

// seen tells whether a mark is the steel of a piece, not its number.
func seen(m sheet.Mark) bool {
	_, circle := m.(sheet.Circle)
	return sheet.PieceOf(m) != nil && sheet.StyleOf(m).Layer != sheet.LayerLabel && !circle
}

// flat lists marks with those inside of windows where they are on the sheet.
func flat(marks []sheet.Mark, by sheet.Pt) (out []sheet.Mark) {
	for _, m := range marks {
		switch x := m.(type) {
		case sheet.Window:
			out = append(out, flat(x.Marks, x.Shift)...)
		case sheet.Use:
			x.At = x.At.Add(by)
			out = append(out, x)
		case sheet.Circle:
			x.C = x.C.Add(by)
			out = append(out, x)
		case sheet.Polyline:
			pts := make([]sheet.Pt, len(x.Pts))
			for i, p := range x.Pts {
				pts[i] = p.Add(by)
			}
			x.Pts = pts
			out = append(out, x)
		case sheet.Line:
			x.A, x.B = x.A.Add(by), x.B.Add(by)
			out = append(out, x)
		default:
			out = append(out, m)
		}
	}
	return out
}

// covered is the part of a mark's points that lie under white of later marks.
func covered(m sheet.Mark, symbols map[string]sheet.Symbol, after []sheet.Mark) float64 {
	pts := pointsOf(m, symbols)
	under := 0
	for _, p := range pts {
		for _, o := range after {
			if white(o, p) {
				under++
				break
			}
		}
	}
	return float64(under) / float64(max(1, len(pts)))
}

// pointsOf are points along a line, or in the middle three fifths of a symbol.
func pointsOf(m sheet.Mark, symbols map[string]sheet.Symbol) (out []sheet.Pt) {
	along := func(a, b sheet.Pt) {
		for k := range 9 {
			f := (sheet.MM(k) + 0.5) / 9
			out = append(out, sheet.Pt{X: a.X*(1-f) + b.X*f, Y: a.Y*(1-f) + b.Y*f})
		}
	}
	switch x := m.(type) {
	case sheet.Line:
		along(x.A, x.B)
	case sheet.Polyline:
		for i := 1; i < len(x.Pts); i++ {
			along(x.Pts[i-1], x.Pts[i])
		}
	case sheet.Use:
		b := symbols[x.Symbol].Box
		sin, cos := math.Sincos(x.Angle * math.Pi / 180)
		for i := range 5 {
			for k := range 5 {
				at := sheet.Pt{X: b.X + b.W*(0.2+0.15*sheet.MM(i)), Y: b.Y + b.H*(0.2+0.15*sheet.MM(k))}
				out = append(out, x.At.Add(sheet.Turn(at, sin, cos, x.Scale)))
			}
		}
	}
	return out
}

// white tells whether a mark fills a point with paper.
func white(m sheet.Mark, at sheet.Pt) bool {
	switch x := m.(type) {
	case sheet.Circle:
		return x.Fill == sheet.White && math.Hypot(float64(at.X-x.C.X), float64(at.Y-x.C.Y)) < float64(x.R)
	case sheet.Polyline:
		return x.Closed && x.Fill == sheet.White && encloses(x.Pts, at)
	}
	return false
}

// encloses tells whether a point lies in the polygon, by the crossings of a ray.
func encloses(pts []sheet.Pt, at sheet.Pt) (in bool) {
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(b.X-a.X)*(at.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// A white ground over a symbol's middle is found, one beside it is not.
func TestWhatCoversSteelIsFound(t *testing.T) {
	symbols := map[string]sheet.Symbol{"x": {Box: sheet.Rect{X: -2, Y: -2, W: 4, H: 4}}}
	use := sheet.Use{Symbol: "x", At: sheet.Pt{X: 10, Y: 10}, Angle: 45, Scale: 1}
	ground := func(x, w sheet.MM) sheet.Mark {
		return sheet.Polyline{Style: sheet.Style{Fill: sheet.White}, Closed: true, Pts: []sheet.Pt{{X: x, Y: 5}, {X: x + w, Y: 5}, {X: x + w, Y: 15}, {X: x, Y: 15}}}
	}
	for _, c := range []struct {
		after sheet.Mark
		want  float64
	}{{ground(5, 10), 1}, {ground(10.01, 10), 0.4}, {ground(13, 5), 0}, {sheet.Circle{Style: sheet.Style{Fill: sheet.White}, C: sheet.Pt{X: 10, Y: 10}, R: 3}, 1}} {
		assert.InDelta(t, c.want, covered(use, symbols, []sheet.Mark{c.after}), 1e-9)
		line := sheet.Line{A: sheet.Pt{X: 8, Y: 10}, B: sheet.Pt{X: 12, Y: 10}}
		assert.Equal(t, c.want > 0, covered(line, symbols, []sheet.Mark{c.after}) > 0)
	}
}
