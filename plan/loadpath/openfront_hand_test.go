package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A deck 40 ft along x and 24 ft across, wind along x: lines along x at some y of 0 to 288
// in. Past the last of two lines, by more than a tenth of 24 ft, it hangs free: its part of
// what the deck brings to that line is the width past it over that and half the way to the
// next, and its middle lies half of that width out. With one line all of it turns about
// that line, from the deck's middle.
func TestOpenFrontsByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		at   []float64 // of the lines, in
		told []string
	}{
		{"lines at both ends", []float64{0, 288}, nil},
		{"less than a tenth past both", []float64{28, 261}, nil},
		// 60 in past the first: 1,700 lb x 60 / (60 + 110) = 600 lb; 0.6 x 600 x 30 in = 900
		// lb ft; over 40 ft 22.5 lb, printed to the even pound.
		{"5 ft past the first", []float64{60, 280}, []string{`the diaphragm reaches 5'-0" past line 60 on side S, 0.12 of its depth along the wind; torsion 900 lb-ft, a couple of 22 lb`}},
		// 88 in past the last: 1,700 x 88 / (88 + 100) = 795.7 lb x 0.6 x 44 in = 1,751 lb ft.
		{"past the last", []float64{0, 200}, []string{`the diaphragm reaches 7'-4" past line 200 on side N, 0.18 of its depth along the wind; torsion 1751 lb-ft, a couple of 44 lb`}},
		// 84 in from the middle: 0.6 x 1,700 x 84 = 7,140 lb ft, over 40 ft 178.5 lb.
		{"one line", []float64{60}, []string{`one line only, 60, 7'-0" from the middle of the diaphragm; torsion 7140 lb-ft, a couple of 178 lb`}},
		{"none", nil, []string{"no sheathed segment runs along x; nothing resists wind in that direction"}},
	} {
		d := &diaphragm{level: &plan.Level{Name: "first"}, extent: extent{hi: geom.Vec2{X: 480, Y: 288}}}
		l := &lateral{m: &model{decks: []*diaphragm{d}}}
		for i, at := range c.at {
			x := &ShearLine{n: i, At: at, Name: map[float64]string{0: "0", 28: "28", 60: "60", 200: "200", 261: "261", 280: "280", 288: "288"}[at]}
			d.lines[0] = append(d.lines[0], x)
			l.lines = append(l.lines, &LineShear{ShearLine: x, Deck: 1700})
		}
		for _, at := range []float64{0, 480} { // along y, at both ends
			x := &ShearLine{n: len(l.lines), At: at}
			d.lines[1] = append(d.lines[1], x)
			l.lines = append(l.lines, &LineShear{ShearLine: x, Deck: 1000})
		}
		l.openFronts()
		require.Len(t, l.torsion, len(c.told), "%s: %v", c.name, l.torsion)
		for i, s := range c.told {
			assert.Contains(t, l.torsion[i], s, c.name)
			assert.Contains(t, l.torsion[i], "story first", c.name)
		}
	}
}
