package table

import (
	"fmt"
	"math"

	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// laidTable is a table, or a part of one, whose widths are settled.
type laidTable struct {
	*Table
	c     *page.Context
	w     sheet.MM // of the table
	room  sheet.MM // for its title
	cols  []sheet.MM
	lines [][][]string // row, column, line
	highs []sheet.MM   // of rows
	from  int          // first row of this part
	to    int
}

// Lay settles the table at a width of w or less.
func (t *Table) Lay(c *page.Context, w sheet.MM) page.Laid {
	l := &laidTable{Table: t, c: c, room: w, cols: t.widths(c, w), to: len(t.Rows)}
	l.w = Sum(l.cols)
	for _, r := range t.Rows {
		lines, h := l.layRow(r)
		l.lines, l.highs = append(l.lines, lines), append(l.highs, h)
	}
	return l
}

func (l *laidTable) layRow(r Row) (lines [][]string, tall sheet.MM) {
	letter := l.cap(l.c)
	lines = make([][]string, len(r.Cells))
	if !r.Group {
		tall = l.RowH
	}
	for i, cell := range r.Cells {
		w := l.w
		if !r.Group {
			w = l.cols[i]
		}
		lines[i] = WrapHard(cell.S, letter, r.Bold || r.Group, w-2*l.padX(l.c))
		count := sheet.MM(max(len(lines[i]), 1))
		tall = max(tall, letter+(count-1)*Pitch(letter)+2*l.padY(l.c))
		switch {
		case cell.Legend > 0:
			tall = max(tall, 2*l.circle(l.c)+1)
		case cell.Symbol != "":
			tall = max(tall, l.symbolH(l.c)+1.6)
		case cell.Tick:
			tall = max(tall, TickSize+1.6)
		}
		if r.Group {
			break
		}
	}
	return lines, tall
}

// headLines wraps the heads of the columns.
func (l *laidTable) headLines() (lines [][]string, h sheet.MM) {
	if l.Plain {
		return nil, 0
	}
	n, least := 1, sheet.MM(0)
	for i, col := range l.Cols {
		if col.Legend > 0 {
			least = 2*l.circle(l.c) + 1
		}
		s := WrapHard(col.Head, l.cap(l.c), true, l.cols[i]-2*l.padX(l.c))
		lines, n = append(lines, s), max(n, len(s))
	}
	return lines, max(least, l.cap(l.c)+sheet.MM(n-1)*Pitch(l.cap(l.c))+2*l.padY(l.c))
}

func (l *laidTable) titleH() sheet.MM {
	if l.Title == "" {
		return 0
	}
	return sheet.MM(len(l.titleLines()))*Pitch(l.titleCap(l.c)) + 1
}

func (l *laidTable) titleLines() []string {
	s := l.Title
	if l.from > 0 && s != "" {
		s += " (continued)"
	}
	return WrapHard(s, l.titleCap(l.c), true, l.room)
}

// Height is the height of this part with its title, heads and foot, mm.
func (l *laidTable) Height() sheet.MM {
	_, h := l.headLines()
	return l.titleH() + h + l.leadH() + Sum(l.highs[l.from:l.to]) + l.footH()
}

// lead returns the row of the group that this part goes on with, -1 for none.
func (l *laidTable) lead() int {
	if l.from == 0 || l.from >= l.to || l.Rows[l.from].Group {
		return -1
	}
	for i := l.from - 1; i >= 0; i-- {
		if l.Rows[i].Group {
			return i
		}
	}
	return -1
}

func (l *laidTable) leadH() sheet.MM {
	if i := l.lead(); i >= 0 {
		return l.highs[i]
	}
	return 0
}

// footH is the height of the foot, under the table's last part only.
func (l *laidTable) footH() sheet.MM {
	if l.Foot == nil || l.to < len(l.Rows) {
		return 0
	}
	return l.Foot.H
}

// Split returns the part that is no higher than h, and the rest. A row that
// belongs to the one above stays with it, and a group keeps its first row.
func (l *laidTable) Split(h sheet.MM) (first, rest page.Laid) {
	if l.Height() <= h {
		return l, nil
	}
	_, y := l.headLines()
	y += l.titleH() + l.leadH()
	n := l.from
	for n < l.to && y+l.highs[n] <= h {
		y += l.highs[n]
		n++
	}
	if n == l.to { // the rows fit, the foot does not
		n--
	}
	for n > l.from && n < l.to && (l.Rows[n].Join || l.Rows[n-1].Group) {
		n--
	}
	if n == l.from {
		return nil, l
	}
	a, b := *l, *l
	a.to, b.from = n, n
	return &a, &b
}

// DrawAt draws the part with its upper left corner at at.
func (l *laidTable) DrawAt(p *page.Page, at sheet.Pt) {
	p.Box("label", "table "+l.Title, sheet.Rect{X: at.X, Y: at.Y, W: l.w, H: l.Height()})
	y := at.Y
	if l.Title != "" {
		for i, s := range l.titleLines() {
			p.Text(page.Lettered{S: s, Cap: l.titleCap(l.c), At: sheet.Pt{X: at.X, Y: y + l.titleCap(l.c)*1.1 + sheet.MM(i)*Pitch(l.titleCap(l.c))}, Bold: true, Role: "note"})
		}
		y += l.titleH()
	}
	top := y
	if heads, h := l.headLines(); h > 0 {
		r := sheet.Rect{X: at.X, Y: y, W: l.w, H: h}
		p.Rect(sheet.Style{Pen: sheet.PenMember, Fill: sheet.Pale, Layer: sheet.LayerNote}, r)
		x := at.X
		for i, lines := range heads {
			l.drawCell(p, sheet.Rect{X: x, Y: y, W: l.cols[i], H: h}, Cell{Legend: l.Cols[i].Legend}, lines, l.Cols[i].Align, true)
			x += l.cols[i]
		}
		y += h
	}
	if i := l.lead(); i >= 0 {
		l.drawRow(p, at.X, y, i)
		y += l.highs[i]
	}
	for i := l.from; i < l.to; i++ {
		l.drawRow(p, at.X, y, i)
		y += l.highs[i]
	}
	if !l.Plain {
		p.Rect(page.Style(sheet.PenMember, sheet.LayerNote), sheet.Rect{X: at.X, Y: top, W: l.w, H: y - top})
	}
	if l.Grid {
		l.drawGrid(p, at.X, top, y)
	}
	if l.footH() > 0 {
		l.Foot.Draw(p, sheet.Pt{X: at.X, Y: y})
	}
}

func (l *laidTable) drawGrid(p *page.Page, x, top, bottom sheet.MM) {
	for _, w := range l.cols[:len(l.cols)-1] {
		x += w
		p.Line(sheet.PenDim, sheet.LayerNote, sheet.Pt{X: x, Y: top}, sheet.Pt{X: x, Y: bottom})
	}
}

func (l *laidTable) drawRow(p *page.Page, x, y sheet.MM, i int) {
	r, h := l.Rows[i], l.highs[i]
	if r.Group {
		p.Rect(sheet.Style{Fill: sheet.Pale, Layer: sheet.LayerNote}, sheet.Rect{X: x, Y: y, W: l.w, H: h})
	}
	if i > l.from && !r.Join && !l.Plain {
		p.Line(sheet.PenDim, sheet.LayerNote, sheet.Pt{X: x, Y: y}, sheet.Pt{X: x + l.w, Y: y})
	}
	for k, cl := range r.Cells {
		box := sheet.Rect{X: x, Y: y, W: l.cols[k], H: h}
		if r.Group {
			box.W = l.w
		}
		a := l.Cols[k].Align
		if r.Group {
			a = sheet.Left
		}
		l.drawCell(p, box, cl, l.lines[i][k], a, r.Bold || r.Group)
		x += l.cols[k]
		if r.Group {
			return
		}
	}
}

func (l *laidTable) drawCell(p *page.Page, box sheet.Rect, x Cell, lines []string, a sheet.Anchor, bold bool) {
	mid := box.Center()
	switch {
	case x.Legend > 0:
		legendMark(p, x.Legend, sheet.Pt{X: cellX(box, a, l.padX(l.c), l.circle(l.c)), Y: mid.Y}, l.circle(l.c))
	case x.Symbol != "":
		symbolIn(p, x.Symbol, box.Inset(0.9))
	case x.Tick:
		s := TickSize
		p.Rect(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerNote}, sheet.Rect{X: mid.X - s/2, Y: mid.Y - s/2, W: s, H: s})
	default:
		l.text(p, box, lines, a, bold, x.Link)
	}
}

// cellX returns the middle of something of half width r that is aligned in
// the cell.
func cellX(box sheet.Rect, a sheet.Anchor, padX, r sheet.MM) sheet.MM {
	switch a {
	case sheet.Left:
		return box.X + padX + r
	case sheet.Right:
		return box.X + box.W - padX - r
	}
	return box.X + box.W/2
}

// text sets the lines of a cell in the middle of its height; those of a plain
// table begin at its top, so that a number stands by its first line.
func (l *laidTable) text(p *page.Page, box sheet.Rect, lines []string, a sheet.Anchor, bold bool, link string) {
	z := l.cap(l.c)
	block := z + sheet.MM(max(len(lines)-1, 0))*Pitch(z)
	y := box.Y + (box.H-block)/2 + z
	if l.Plain {
		y = box.Y + l.padY(l.c) + z
	}
	for i, s := range lines {
		p.Text(page.Lettered{S: s, Cap: z, At: sheet.Pt{X: cellX(box, a, l.padX(l.c), 0), Y: y + sheet.MM(i)*Pitch(z)}, Anchor: a, Bold: bold, Role: "note", Link: link})
	}
}

// legendMark draws a legend number in a circle of radius r for a table: it
// stands for no piece and claims no place.
func legendMark(p *page.Page, n int, at sheet.Pt, r sheet.MM) {
	p.Circle(sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}, at, r)
	h := r / 0.95
	if n > 9 {
		h = max(page.MinLetter, h*0.8)
	}
	p.Text(page.Lettered{S: fmt.Sprint(n), Cap: h, At: sheet.Pt{X: at.X, Y: at.Y + h/2}, Anchor: sheet.Middle, Bold: true, Role: "legend"})
}

// symbolIn draws a symbol as large as fits in the middle of a cell, at most
// twice its own size.
func symbolIn(p *page.Page, id string, box sheet.Rect) {
	s, ok := symbols.For(id)
	if !ok {
		return
	}
	k := math.Min(2, math.Min(float64(box.W/s.Box.W), float64(box.H/s.Box.H)))
	c, m := s.Box.Center(), box.Center()
	p.Use(id, sheet.Pt{X: m.X - c.X*sheet.MM(k), Y: m.Y - c.Y*sheet.MM(k)}, 0, k, nil)
}
