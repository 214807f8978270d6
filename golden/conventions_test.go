package golden

import (
	"bytes"
	"os"
	"testing"

	"galewright/render/sheet"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

const conventionsFile = "../examples/conventions.svg"

// TestConventions draws the README's picture of how walls are written and
// measured; -update writes it anew.
func TestConventions(t *testing.T) {
	d := &conventions{}
	d.draw()
	s := &sheet.Sheet{Title: sheet.Title{Sheet: "conventions", SheetTitle: "How walls are written"}, Paper: sheet.Paper{Name: "figure", W: 190, H: 132}, Marks: d.marks}
	require.Empty(t, sheet.TextOverlaps(s, 0.2))
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, &sheet.Set{Sheets: []*sheet.Sheet{s}}, 0, svg.Options{}))
	if *update {
		require.NoError(t, os.WriteFile(conventionsFile, b.Bytes(), 0o644))
	}
	got, err := os.ReadFile(conventionsFile)
	require.NoError(t, err)
	require.Equal(t, b.String(), string(got), "make golden draws it anew")
}

// conventions is the drawing: an L-shaped house from above, 2 mm a foot, walls
// thicker than to scale.
type conventions struct{ marks []sheet.Mark }

// outline is the outside face of the studs, counterclockwise from the south-west
// corner of the wing, mm of paper.
var outline = []sheet.Pt{{X: 74, Y: 104}, {X: 134, Y: 104}, {X: 134, Y: 28}, {X: 22, Y: 28}, {X: 22, Y: 70}, {X: 74, Y: 70}}

// inner is the inside face.
var inner = []sheet.Pt{{X: 79, Y: 99}, {X: 129, Y: 99}, {X: 129, Y: 33}, {X: 27, Y: 33}, {X: 27, Y: 65}, {X: 79, Y: 65}}

func (d *conventions) draw() {
	wall := sheet.Style{Pen: sheet.PenCut, Fill: sheet.Pale, Layer: sheet.LayerMember}
	d.add(sheet.Polyline{Style: wall, Pts: outline, Closed: true})
	wall.Fill = sheet.White
	d.add(sheet.Polyline{Style: wall, Pts: inner, Closed: true})
	names := []string{"S", "E", "N", "W", "C", "D"}
	at := []sheet.Pt{{X: 110, Y: 110}, {X: 141, Y: 66}, {X: 78, Y: 25}, {X: 15, Y: 49}, {X: 44, Y: 77}, {X: 69, Y: 84}}
	for i, a := range outline {
		d.wall(names[i], a, outline[(i+1)%len(outline)], at[i])
	}
	d.interior()
	d.stations()
	d.corners()
	d.faces()
}

func (d *conventions) add(m ...sheet.Mark) { d.marks = append(d.marks, m...) }

// wall marks a wall's start, the way it runs, and its name.
func (d *conventions) wall(name string, a, z, at sheet.Pt) {
	d.add(sheet.Circle{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, C: a, R: 1.3})
	u := toward(a, z)
	mid := sheet.Pt{X: (a.X + z.X) / 2, Y: (a.Y + z.Y) / 2}
	d.arrow(sheet.PenMember, mid, sheet.Pt{X: mid.X + 9*u.X, Y: mid.Y + 9*u.Y})
	d.text(name, at, sheet.SizeHead, sheet.Middle, true)
}

// interior is a wall inside, with its viewing side.
func (d *conventions) interior() {
	d.add(sheet.Polyline{Style: sheet.Style{Pen: sheet.PenMember, Fill: sheet.Pale, Layer: sheet.LayerMember}, Pts: []sheet.Pt{{X: 96, Y: 33}, {X: 99.5, Y: 33}, {X: 99.5, Y: 65}, {X: 96, Y: 65}}, Closed: true})
	d.add(sheet.Circle{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, C: sheet.Pt{X: 99.5, Y: 65}, R: 1.3})
	d.arrow(sheet.PenMember, sheet.Pt{X: 99.5, Y: 58}, sheet.Pt{X: 99.5, Y: 46})
	d.text("interior wall", sheet.Pt{X: 94, Y: 57}, sheet.SizeNote, sheet.Right, false)
	d.text("P", sheet.Pt{X: 92, Y: 50}, sheet.SizeHead, sheet.Middle, true)
	d.add(sheet.Polyline{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, Pts: []sheet.Pt{{X: 102, Y: 41}, {X: 106, Y: 39}, {X: 106, Y: 43}}, Closed: true})
	d.lines(sheet.Pt{X: 107.5, Y: 42}, sheet.Left, "seen from the", "right of its", "run")
	d.text("from", sheet.Pt{X: 101.5, Y: 66}, sheet.SizeNote, sheet.Left, false)
	d.text("to", sheet.Pt{X: 101.5, Y: 36.5}, sheet.SizeNote, sheet.Left, false)
}

// stations are the running dimensions of wall S, with an opening.
func (d *conventions) stations() {
	const y = 118
	for _, x := range []sheet.MM{84, 100} {
		d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: x, Y: 99}, B: sheet.Pt{X: x, Y: 104}})
	}
	d.add(sheet.Polyline{Style: sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}, Pts: []sheet.Pt{{X: 84, Y: 99}, {X: 100, Y: 99}, {X: 100, Y: 104}, {X: 84, Y: 104}}, Closed: true})
	d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: 74, Y: y}, B: sheet.Pt{X: 138, Y: y}})
	for _, s := range []struct {
		x sheet.MM
		s string
	}{{74, "0"}, {84, "at"}, {100, "at + width"}, {134, "length"}} {
		d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: s.x, Y: 106}, B: sheet.Pt{X: s.x, Y: y + 1.5}})
		d.text(s.s, sheet.Pt{X: s.x, Y: y + 5.5}, sheet.SizeNote, sheet.Middle, false)
	}
	d.text("stations of wall S, along its outside face from its start (●)", sheet.Pt{X: 104, Y: 129}, sheet.SizeNote, sheet.Middle, false)
}

// corners says what an inside corner does to stations.
func (d *conventions) corners() {
	d.add(sheet.Line{Style: sheet.Style{Pen: sheet.PenHidden, Layer: sheet.LayerHidden}, A: sheet.Pt{X: 74, Y: 65}, B: sheet.Pt{X: 74, Y: 70}})
	d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: 73, Y: 71}, B: sheet.Pt{X: 50, Y: 84}})
	d.lines(sheet.Pt{X: 6, Y: 89}, sheet.Left, "At an inside corner the wall that", "runs through continues past it by the", "other wall's depth: past its length at", "its end (C); at its start (D) the tape", "hooks behind the corner.")
}

// faces names the faces of a wall and of a stud.
func (d *conventions) faces() {
	d.text("outside face", sheet.Pt{X: 50, Y: 20}, sheet.SizeNote, sheet.Left, false)
	d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: 48, Y: 20}, B: sheet.Pt{X: 44, Y: 27.5}})
	d.text("inside face", sheet.Pt{X: 52, Y: 42}, sheet.SizeNote, sheet.Left, false)
	d.add(sheet.Line{Style: dim(), A: sheet.Pt{X: 51, Y: 40}, B: sheet.Pt{X: 44, Y: 33.5}})
	d.text("N", sheet.Pt{X: 12, Y: 12}, sheet.SizeNote, sheet.Middle, true)
	d.arrow(sheet.PenMember, sheet.Pt{X: 12, Y: 26}, sheet.Pt{X: 12, Y: 14})
	d.add(sheet.Polyline{Style: sheet.Style{Pen: sheet.PenCut, Fill: sheet.Pale, Layer: sheet.LayerMember}, Pts: []sheet.Pt{{X: 160, Y: 58}, {X: 168, Y: 58}, {X: 168, Y: 76}, {X: 160, Y: 76}}, Closed: true})
	d.lines(sheet.Pt{X: 164, Y: 46}, sheet.Middle, "A stud from above,", "seen from outside")
	d.text("inside", sheet.Pt{X: 164, Y: 56}, sheet.SizeNote, sheet.Middle, false)
	d.text("outside", sheet.Pt{X: 164, Y: 80.5}, sheet.SizeNote, sheet.Middle, false)
	d.text("left", sheet.Pt{X: 158.5, Y: 68}, sheet.SizeNote, sheet.Right, false)
	d.text("right", sheet.Pt{X: 169.5, Y: 68}, sheet.SizeNote, sheet.Left, false)
	d.add(sheet.Polyline{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, Pts: []sheet.Pt{{X: 164, Y: 83}, {X: 162, Y: 87}, {X: 166, Y: 87}}, Closed: true})
	d.lines(sheet.Pt{X: 164, Y: 92}, sheet.Middle, "you stand here; walls", "run left to right,", "counterclockwise", "around the house")
}

func dim() sheet.Style { return sheet.Style{Pen: sheet.PenDim, Layer: sheet.LayerDimension} }

// lines sets lines of a note under each other.
func (d *conventions) lines(at sheet.Pt, a sheet.Anchor, lines ...string) {
	for i, s := range lines {
		d.text(s, sheet.Pt{X: at.X, Y: at.Y + 4.2*sheet.MM(i)}, sheet.SizeNote, a, false)
	}
}

func (d *conventions) text(s string, at sheet.Pt, size sheet.MM, a sheet.Anchor, bold bool) {
	d.add(sheet.Text{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerNote}, At: at, Size: size, Anchor: a, Bold: bold, S: s, Role: "note"})
}

// arrow draws a line with a head at z.
func (d *conventions) arrow(pen sheet.Pen, a, z sheet.Pt) {
	u := toward(a, z)
	d.add(sheet.Line{Style: sheet.Style{Pen: pen, Layer: sheet.LayerLabel}, A: a, B: z},
		sheet.Polyline{Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}, Closed: true, Pts: []sheet.Pt{
			z, {X: z.X - 3*u.X - u.Y, Y: z.Y - 3*u.Y + u.X}, {X: z.X - 3*u.X + u.Y, Y: z.Y - 3*u.Y - u.X},
		}})
}

// toward is the unit vector from a to z, which lie across or along the paper.
func toward(a, z sheet.Pt) sheet.Pt {
	l := max(z.X-a.X, a.X-z.X) + max(z.Y-a.Y, a.Y-z.Y)
	return sheet.Pt{X: (z.X - a.X) / l, Y: (z.Y - a.Y) / l}
}
