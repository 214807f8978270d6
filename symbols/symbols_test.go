package symbols

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
)

func TestIDsAreValidUniqueAndInOrder(t *testing.T) {
	ok := regexp.MustCompile(`^sym-[a-z]+(-[a-z]+)*$`)
	last := ""
	for _, s := range All() {
		assert.Regexp(t, ok, s.ID)
		assert.Greater(t, s.ID, last)
		last = s.ID
	}
}

func TestEverySymbolSaysWhy(t *testing.T) {
	for _, e := range Table() {
		assert.NotEmpty(t, e.Title, e.ID)
		assert.Greater(t, len(strings.Fields(e.Why)), 5, e.ID)
	}
}

func TestForFindsEachAndNothingElse(t *testing.T) {
	for _, s := range All() {
		got, ok := For(s.ID)
		assert.True(t, ok)
		assert.Equal(t, s, got)
	}
	_, ok := For("sym-nothing")
	assert.False(t, ok)
}

// The box is measured from ink, not from the numbers it was made of.
func TestBoxesHoldTheInkAndNoMore(t *testing.T) {
	for _, s := range All() {
		x0, y0, x1, y1 := 9.0, 9.0, -9.0, -9.0
		for i, row := range raster(s.Marks) {
			for j, ink := range row {
				if p := at(i, j); ink {
					x0, y0 = min(x0, float64(p.X)), min(y0, float64(p.Y))
					x1, y1 = max(x1, float64(p.X)), max(y1, float64(p.Y))
				}
			}
		}
		const tol = 0.25 // a mitred corner and a cell
		assert.InDelta(t, x0, float64(s.Box.X), tol, s.ID)
		assert.InDelta(t, y0, float64(s.Box.Y), tol, s.ID)
		assert.InDelta(t, x1, float64(s.Box.X+s.Box.W), tol, s.ID)
		assert.InDelta(t, y1, float64(s.Box.Y+s.Box.H), tol, s.ID)
	}
}

func TestSizesAreThreeToSixMillimeters(t *testing.T) {
	for _, s := range All() {
		big := max(s.Box.W, s.Box.H)
		assert.True(t, big >= 3 && big <= 6.01, "%s is %.2f mm", s.ID, big)
	}
}

func TestNoTwoSymbolsLookAlikeHoweverTheyAreTurned(t *testing.T) {
	all := All()
	g := make([]grid, len(all))
	for i, s := range all {
		g[i] = raster(s.Marks)
	}
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			h := g[j]
			for turn := range 4 {
				d := g[i].distance(h)
				assert.Greater(t, d, 0.35, "%s and %s turned %d: %.2f", all[i].ID, all[j].ID, turn*90, d)
				h = h.turned()
			}
		}
	}
}

func TestHardwareIsTheHeaviestInk(t *testing.T) {
	for _, e := range Table() {
		share := float64(raster(e.Symbol().Marks).ink()) * cell * cell
		if e.Hardware {
			assert.Greater(t, share, 4.0, "%s has %.1f mm² of ink", e.ID, share)
		}
	}
}

// TestContactSheet draws the family when GALEWRIGHT_CONTACT names a file, for
// looking at; else it checks that every mark is of a kind it can draw.
func TestContactSheet(t *testing.T) {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="150mm" height="60mm" viewBox="0 0 150 60"><rect width="150" height="60" fill="#fff"/>`)
	for i, s := range All() {
		x, y := 10+i%10*14, 12+i/10*26
		fmt.Fprintf(&b, `<g transform="translate(%d,%d)">`, x, y)
		svgMarks(t, &b, s)
		fmt.Fprintf(&b, `</g><g transform="translate(%d,%d) scale(%.3f)">`, x, y+8, 3/max(s.Box.W, s.Box.H))
		svgMarks(t, &b, s)
		fmt.Fprintf(&b, `</g><text x="%d" y="%d" font-size="1.6" text-anchor="middle">%s</text>`, x, y+13, s.ID[4:])
	}
	b.WriteString(`</svg>`)
	if f := os.Getenv("GALEWRIGHT_CONTACT"); f != "" {
		assert.NoError(t, os.WriteFile(f, []byte(b.String()), 0o644))
	}
}

func svgMarks(t *testing.T, b *strings.Builder, s sheet.Symbol) {
	fill := map[sheet.Fill]string{sheet.NoFill: "none", sheet.White: "#fff", sheet.Black: "#000"}
	pen := func(s sheet.Style) string {
		if s.Pen == sheet.NoPen {
			return ""
		}
		return fmt.Sprintf(` stroke="#000" stroke-width="%.2f"`, s.Pen.Width())
	}
	for _, m := range s.Marks {
		switch m := m.(type) {
		case sheet.Line:
			fmt.Fprintf(b, `<path d="M%.2f %.2fL%.2f %.2f"%s/>`, m.A.X, m.A.Y, m.B.X, m.B.Y, pen(m.Style))
		case sheet.Circle:
			fmt.Fprintf(b, `<circle cx="%.2f" cy="%.2f" r="%.2f" fill="%s"%s/>`, m.C.X, m.C.Y, m.R, fill[m.Fill], pen(m.Style))
		case sheet.Polyline:
			d := "M"
			for _, p := range m.Pts {
				d += fmt.Sprintf("%.2f %.2f ", p.X, p.Y)
			}
			if m.Closed {
				d += "Z"
			}
			fmt.Fprintf(b, `<path d="%s" fill="%s"%s/>`, d, fill[m.Fill], pen(m.Style))
		default:
			t.Errorf("%s: mark %T", s.ID, m)
		}
	}
}
