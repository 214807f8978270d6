package golden

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
)

// flatSheets are the sheets whose flat sheet is kept as text beside the SVG:
// where both change, the layout did; where only the SVG does, its writer did.
// Of the other examples one sheet of each kind would say the same at length.
var flatSheets = map[string][]string{"shed": nil, "marsh-wren": {"S-101", "S-201", "S-501"}} // nil: all

// keptFlat tells whether a sheet of an example is kept as text.
func keptFlat(example, number string) bool {
	list, ok := flatSheets[example]
	return ok && (list == nil || slices.Contains(list, number))
}

// isFlat tells the text of a flat sheet from other outputs by its file.
func isFlat(file string) bool {
	return strings.HasPrefix(file, "S-") && strings.HasSuffix(file, ".txt")
}

var (
	penNames  = [...]string{"-", "hardware", "cut", "member", "hidden", "dim", "grid"}
	fillNames = [...]string{"-", "white", "black", "pale", "mid"}
	anchors   = [...]string{"left", "middle", "right"}
)

// writeFlat writes a sheet in order, one mark a line: layer, pen, fill, kind,
// millimeters to the thousandth as in the SVG, what is written, and the
// tag of its piece: "=" where the mark stands for the piece, "~" where it
// shows it again.
func writeFlat(w io.Writer, s *sheet.Sheet) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %q on %s, %s mm, scale %s, %d of %d\n", s.Title.Sheet, s.Title.SheetTitle, s.Paper.Name, mm(s.Paper.W, s.Paper.H), s.Title.Scale, s.Title.Index, s.Title.Of)
	for _, m := range s.Marks {
		b.WriteString(flat(m) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// flat is one mark in a line.
func flat(m sheet.Mark) string {
	switch m := m.(type) {
	case sheet.Line:
		return lead(m.Style) + "line " + points(m.A, m.B) + tag(m.Piece)
	case sheet.Polyline:
		kind := "polyline "
		if m.Closed {
			kind = "polygon "
		}
		return lead(m.Style) + kind + points(m.Pts...) + tag(m.Piece)
	case sheet.Path:
		return lead(m.Style) + "path" + steps(m.Segs) + tag(m.Piece)
	case sheet.Circle:
		return lead(m.Style) + "circle " + points(m.C) + " r " + mm(m.R) + tag(m.Piece)
	case sheet.Text:
		return lead(m.Style) + "text " + points(m.At) + " " + lettering(m) + tag(m.Piece)
	case sheet.Use:
		mirrored := ""
		if m.Mirror {
			mirrored = " mirrored"
		}
		return lead(m.Style) + fmt.Sprintf("use %s %s angle %s scale %s", m.Symbol, points(m.At), decimal(m.Angle), decimal(m.Scale)) + mirrored + tag(m.Piece)
	}
	panic(fmt.Sprintf("a %T has no line in the flat text", m))
}

func lead(s sheet.Style) string {
	return fmt.Sprintf("%s %s %s ", s.Layer, penNames[s.Pen], fillNames[s.Fill])
}

func lettering(m sheet.Text) string {
	out := fmt.Sprintf("%s size %s", anchors[m.Anchor], mm(m.Size))
	if m.Angle != 0 {
		out += " angle " + decimal(m.Angle)
	}
	if m.Bold {
		out += " bold"
	}
	if m.Link != "" {
		out += " to " + m.Link
	}
	return fmt.Sprintf("%s %s %q", out, m.Role, m.S)
}

func steps(segs []sheet.Seg) string {
	var b strings.Builder
	for _, s := range segs {
		n := map[rune]int{'M': 1, 'L': 1, 'C': 3}[s.Op]
		b.WriteString(" " + string(s.Op) + points(s.P[:n]...))
	}
	return b.String()
}

func tag(p *sheet.Piece) string {
	switch {
	case p == nil:
		return ""
	case p.Home:
		return fmt.Sprintf(" =%s no. %d", p.Tag, p.Legend)
	}
	return fmt.Sprintf(" ~%s no. %d", p.Tag, p.Legend)
}

func points(list ...sheet.Pt) string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = mm(p.X, p.Y)
	}
	return strings.Join(out, " ")
}

// mm writes lengths to the thousandth with commas between.
func mm(list ...sheet.MM) string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = decimal(float64(x))
	}
	return strings.Join(out, ",")
}

// decimal writes a number to the thousandth, without zeros at its end and
// never as a negative zero.
func decimal(x float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", x), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// Every kind of mark has its line, with what it must not leave out.
func TestFlatTextSaysEachMark(t *testing.T) {
	st := sheet.Style{Pen: sheet.PenMember, Fill: sheet.Pale, Layer: sheet.LayerHardware}
	home, again := &sheet.Piece{Tag: "1S-5-SB-strap", Legend: 3, Home: true}, &sheet.Piece{Tag: "1S-5-SB-strap", Legend: 3}
	at := sheet.Pt{X: 1.2556, Y: -0.0001}
	for want, m := range map[string]sheet.Mark{
		"hardware member pale line 1.256,0 2,3.5 =1S-5-SB-strap no. 3":                            sheet.Line{Style: st, A: at, B: sheet.Pt{X: 2, Y: 3.5}, Piece: home},
		"hardware member pale polygon 1.256,0 2,3 ~1S-5-SB-strap no. 3":                           sheet.Polyline{Style: st, Pts: []sheet.Pt{at, {X: 2, Y: 3}}, Closed: true, Piece: again},
		"hardware member pale polyline 1.256,0 2,3":                                               sheet.Polyline{Style: st, Pts: []sheet.Pt{at, {X: 2, Y: 3}}},
		"hardware member pale path M1.256,0 C1,1 2,2 3,3 Z":                                       sheet.Path{Style: st, Segs: []sheet.Seg{{Op: 'M', P: [3]sheet.Pt{at}}, {Op: 'C', P: [3]sheet.Pt{{X: 1, Y: 1}, {X: 2, Y: 2}, {X: 3, Y: 3}}}, {Op: 'Z'}}},
		"hardware member pale circle 1.256,0 r 4.5":                                               sheet.Circle{Style: st, C: at, R: 4.5},
		`hardware member pale text 1.256,0 middle size 2.5 angle 90 bold to S-201 label "5'-4\""`: sheet.Text{Style: st, At: at, Size: 2.5, Anchor: sheet.Middle, Angle: 90, Bold: true, Link: "S-201", Role: "label", S: `5'-4"`},
		"hardware member pale use clip 1.256,0 angle 45 scale 0.5":                                sheet.Use{Style: st, Symbol: "clip", At: at, Angle: 45, Scale: 0.5},
	} {
		require.Equal(t, want, flat(m))
	}
}
