package sheet

import (
	"math"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Sizes of US papers in inches: ANSI A to E, and ARCH A to E with E1, as
// collected in an office's drawing standards and a paper size chart
// (transcribed: they agree); ISO 216 A4 to A0 in mm (transcribed).
func TestPapersHavePublishedSizes(t *testing.T) {
	for _, c := range []struct {
		name        string
		short, long float64
		unit        float64
	}{
		{"ansi-a", 8.5, 11, 25.4},
		{"ansi-b", 11, 17, 25.4},
		{"ansi-c", 17, 22, 25.4},
		{"ansi-d", 22, 34, 25.4},
		{"ansi-e", 34, 44, 25.4},
		{"letter", 8.5, 11, 25.4},
		{"tabloid", 11, 17, 25.4},
		{"arch-a", 9, 12, 25.4},
		{"arch-b", 12, 18, 25.4},
		{"arch-c", 18, 24, 25.4},
		{"arch-d", 24, 36, 25.4},
		{"arch-e", 36, 48, 25.4},
		{"arch-e1", 30, 42, 25.4},
		{"a4", 210, 297, 1},
		{"a3", 297, 420, 1},
		{"a2", 420, 594, 1},
		{"a1", 594, 841, 1},
		{"a0", 841, 1189, 1},
	} {
		p, ok := PaperNamed(strings.ToUpper(c.name))
		require.True(t, ok, c.name)
		require.Equal(t, c.name, p.Name)
		require.InDelta(t, c.long*c.unit, float64(p.W), 1e-9, c.name)
		require.InDelta(t, c.short*c.unit, float64(p.H), 1e-9, c.name)
	}
	require.Len(t, PaperNames(), 18)
	_, ok := PaperNamed("foolscap")
	require.False(t, ok)
}

// The PDF library carries the widths of the Adobe core font metrics; the
// table must equal them for every character of Latin-1 and the extra ones.
func TestWidthsAreHelveticas(t *testing.T) {
	pdf := fpdf.New("P", "pt", "A4", "")
	tr := pdf.UnicodeTranslatorFromDescriptor("")
	for _, bold := range []bool{false, true} {
		style := map[bool]string{false: "", true: "B"}[bold]
		pdf.SetFont("Helvetica", style, 1000)
		n := 0
		for r := rune(0x20); r <= 0x2122; r++ {
			if !known(r) {
				continue
			}
			n++
			require.InDelta(t, pdf.GetStringWidth(tr(string(r))), float64(TextWidth(string(r), 1000, bold)), 0.01, "%q bold %v", r, bold)
		}
		require.Equal(t, 191+8, n)
	}
}

// 12,599/1000 em was measured in a browser with kerning off and Liberation
// Sans, a metric twin of Helvetica (measured, no publication).
func TestWidthOfAStringAgreesWithABrowser(t *testing.T) {
	require.InDelta(t, 12599, float64(TextWidth(`LVL 1-3/4 x 9-1/2 @ 16" o.c.`, 1000, false)), 1e-9)
}

func TestLatinLeavesOnlyWhatHelveticaHas(t *testing.T) {
	require.Equal(t, `12'-3 ½" <=`, Latin(`12′-3 ½″ ≤`))
	require.Equal(t, "a b?é", Latin("a\nb界é"))
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		for _, r := range Latin(s) {
			require.True(t, known(r), "%q", r)
		}
	})
}

func TestCapitalsAreAsHighAsDrawingsWant(t *testing.T) {
	require.GreaterOrEqual(t, float64(SizeNote*CapHeight), 3.0/32*25.4)
	require.GreaterOrEqual(t, float64(SizeDim*CapHeight), 1.0/8*25.4)
}

func TestTextBoxTurnsWithTheText(t *testing.T) {
	x := Text{At: Pt{100, 50}, Size: 10, S: "HH"}
	w := TextWidth("HH", 10, false)
	cap := MM(7.18)
	for _, c := range []struct {
		name   string
		anchor Anchor
		angle  float64
		want   Rect
	}{
		{"upright", Left, 0, Rect{100, 50 - cap, w, cap}},
		{"middle", Middle, 0, Rect{100 - w/2, 50 - cap, w, cap}},
		{"right", Right, 0, Rect{100 - w, 50 - cap, w, cap}},
		{"read from the right", Left, 90, Rect{100 - cap, 50 - w, cap, w}},
		{"upside down", Left, 180, Rect{100 - w, 50, w, cap}},
		{"read from the left", Left, -90, Rect{100, 50, cap, w}},
	} {
		x.Anchor, x.Angle = c.anchor, c.angle
		requireRect(t, c.want, x.Box(), c.name)
	}
}

func requireRect(t *testing.T, want, got Rect, name string) {
	t.Helper()
	for i, d := range []MM{want.X - got.X, want.Y - got.Y, want.W - got.W, want.H - got.H} {
		require.InDelta(t, 0, float64(d), 1e-9, "%s: side %d of %v, want %v", name, i, got, want)
	}
}

func TestBoundsHoldEveryPointOfATurnedSymbol(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sym := Symbol{ID: "s", Box: Rect{-2, -3, 5, 7}}
		u := Use{
			Symbol: "s", At: Pt{10, 20},
			Angle: rapid.Float64Range(-720, 720).Draw(t, "angle"), Scale: rapid.Float64Range(0.1, 9).Draw(t, "scale"),
			Mirror: rapid.Bool().Draw(t, "mirror"),
		}
		b := Bounds(u, map[string]Symbol{"s": sym})
		a := u.Angle * math.Pi / 180
		for _, p := range []Pt{{-2, -3}, {3, -3}, {-2, 4}, {3, 4}, {0, 0}} {
			if u.Mirror {
				p.X = -p.X
			}
			q := Turn(p, math.Sin(a), math.Cos(a), u.Scale).Add(u.At)
			require.True(t, b.Holds(Rect{q.X, q.Y, 0, 0}, 1e-6))
		}
	})
}

// good returns a small set that Check accepts.
func good() *Set {
	p, _ := PaperNamed("letter")
	one := &Piece{Tag: "1S-16-SB-strap", Legend: 1, Home: true}
	return &Set{
		Symbols: []Symbol{{ID: "clip", Box: Rect{-1, -1, 2, 2}, Marks: []Mark{Circle{R: 1}}}},
		Sheets: []*Sheet{{Paper: p, Title: Title{Sheet: "S-201", Index: 1, Of: 1}, Marks: []Mark{
			Line{A: Pt{1, 1}, B: Pt{2, 2}, Piece: one},
			Use{Symbol: "clip", At: Pt{50, 50}, Scale: 1, Piece: one},
			Text{At: Pt{20, 20}, Size: SizeNote, S: "note", Link: "S-201"},
		}}},
	}
}

func TestCheckAcceptsAGoodSet(t *testing.T) { require.NoError(t, Check(good())) }

func TestCheckNamesEveryFault(t *testing.T) {
	nan, inf := MM(math.NaN()), MM(math.Inf(1))
	for _, c := range []struct {
		want string
		mark Mark
	}{
		{"no number", Line{A: Pt{nan, 0}}},
		{"no number", Polyline{Pts: []Pt{{1, 1}, {inf, 2}}}},
		{"has 1 points", Polyline{Pts: []Pt{{1, 1}}}},
		{"begins with a move", Path{Segs: []Seg{{Op: 'L'}, {Op: 'L'}}}},
		{"unknown step", Path{Segs: []Seg{{Op: 'M'}, {Op: 'Q'}}}},
		{"no number", Path{Segs: []Seg{{Op: 'M'}, {Op: 'C', P: [3]Pt{{}, {nan, 0}, {}}}}}},
		{"radius", Circle{C: Pt{5, 5}}},
		{"no number", Circle{C: Pt{5, nan}, R: 1}},
		{"to draw with", Text{At: Pt{5, 5}, S: "x"}},
		{"to draw with", Text{At: Pt{5, 5}, S: "x", Size: 3, Angle: math.Inf(1)}},
		{`symbol "none" is not in the set`, Use{Symbol: "none", Scale: 1}},
		{"to draw with", Use{Symbol: "clip", At: Pt{9, 9}}},
		{"off the paper", Line{A: Pt{5, 5}, B: Pt{400, 5}}},
		{"off the paper", Text{At: Pt{275, 5}, Size: 4, S: "too wide"}},
		{`points to sheet "S-999"`, Text{At: Pt{9, 9}, Size: 4, S: "x", Link: "S-999"}},
		{"unknown pen", Line{Style: Style{Pen: 99}}},
		{"needs a tag", Line{Piece: &Piece{Legend: 1}}},
		{"already stands", Use{Symbol: "clip", At: Pt{9, 9}, Scale: 1, Piece: &Piece{Tag: "1S-16-SB-strap", Legend: 1, Home: true}}},
		{"no mark that writers know", &Line{}},
		{"is nil", nil},
	} {
		set := good()
		set.Sheets[0].Marks = append(set.Sheets[0].Marks, c.mark, Line{A: Pt{nan, 0}})
		err := Check(set)
		require.ErrorContains(t, err, c.want)
		require.ErrorContains(t, err, "mark 4") // the fault after it is told too
	}
	set := good()
	set.Symbols[0].ID = `clip"><x`
	require.ErrorContains(t, Check(set), "letters, digits and hyphens")
}
