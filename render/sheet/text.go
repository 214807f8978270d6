package sheet

import "math"

// Shape of the letters, in parts of the em (Helvetica: capitals 718, the
// tallest accent 929, descenders 207 of 1000).
const (
	CapHeight = 0.718 // of a capital or a figure above the baseline
	descent   = 0.207
	ascent    = 0.74 // of the tallest letter without accent: the slash and brackets
	accented  = 0.93
)

// The em sizes of lettering. Height of lettering on a drawing is the height
// of its capitals: 3/32 in is the least that is read at arm's length, 1/8 in
// is for piece numbers and dimensions on full-size sheets.
const (
	SizeNote  MM = 2.4 / CapHeight // capitals 2.4 mm (3/32 in): notes, tables, the least there is
	SizeDim   MM = 3.2 / CapHeight // capitals 3.2 mm (1/8 in): dimensions, piece numbers
	SizeHead  MM = 4.0 / CapHeight // capitals 4 mm: heads of tables and views
	SizeTitle MM = 6.0 / CapHeight // capitals 6 mm: titles of sheets
)

// Em returns the em size whose capitals are cap high.
func Em(cap MM) MM { return cap / CapHeight }

// substitutes are characters that core Helvetica lacks, with what a PDF shows
// instead; their width is that of the substitute.
var substitutes = map[rune]string{
	'′': "'", '″': `"`, '≤': "<=", '≥': ">=", '≈': "~", '−': "-", '√': "sqrt ", '\u2009': " ", '⌀': "Ø",
}

// Latin returns s with every character that core Helvetica lacks replaced: by
// its like where there is one, by a question mark elsewhere, by a blank where
// it is a control character.
func Latin(s string) string {
	out := make([]rune, 0, len(s))
	for _, r := range s {
		switch {
		case known(r):
			out = append(out, r)
		case substitutes[r] != "":
			out = append(out, []rune(substitutes[r])...)
		case r < 0x20 || r >= 0x7f && r <= 0x9f:
			out = append(out, ' ')
		default:
			out = append(out, '?')
		}
	}
	return string(out)
}

// known tells whether core Helvetica has r.
func known(r rune) bool {
	if r >= 0x20 && r <= 0xff {
		return regularWidths[r-0x20] > 0
	}
	return regularExtra[r] > 0
}

// TextWidth returns the width on paper of one line of lettering of em size.
// The widths are those of Helvetica without kerning, so they hold for its
// metric twins too. A character not in the table takes one em.
func TextWidth(s string, size MM, bold bool) MM {
	n := 0
	for _, r := range s {
		n += runeWidth(r, bold)
	}
	return size * MM(n) / 1000
}

// runeWidth returns the advance width of r, 1/1000 em.
func runeWidth(r rune, bold bool) int {
	widths, extra := &regularWidths, regularExtra
	if bold {
		widths, extra = &boldWidths, boldExtra
	}
	if r >= 0x20 && r <= 0xff && widths[r-0x20] > 0 {
		return int(widths[r-0x20])
	}
	if w, ok := extra[r]; ok {
		return int(w)
	}
	if sub, ok := substitutes[r]; ok {
		n := 0
		for _, c := range sub {
			n += runeWidth(c, bold)
		}
		return n
	}
	if r < 0x20 || r >= 0x7f && r <= 0x9f {
		return int(widths[0])
	}
	return 1000
}

// Box returns the upright rectangle that the lettering of t covers, turned
// text included: from its lowest descender to its tallest letter.
func (t Text) Box() Rect {
	w := TextWidth(t.S, t.Size, t.Bold)
	x := MM(0)
	switch t.Anchor {
	case Middle:
		x = -w / 2
	case Right:
		x = -w
	}
	up, down := t.rise()
	return turned(Rect{x, -up, w, up + down}, t.At, t.Angle, 1)
}

// rise returns how far the letters of t reach above and below the baseline.
func (t Text) rise() (up, down MM) {
	up, down = CapHeight, 0
	for _, r := range t.S {
		switch r {
		case 'g', 'j', 'p', 'q', 'y', 'Q', '(', ')', '[', ']', '{', '}', '|', ',', ';', '_', '@', '$', 'ç', 'Ç', 'µ', '/':
			down = descent
		}
		if r >= 0xc0 && r <= 0xdd {
			up = accented
		} else if r > 0x60 && up < ascent {
			up = ascent
		}
	}
	return up * t.Size, down * t.Size
}

// turned returns the extent of r, drawn about the origin, after scaling by k,
// turning by deg counterclockwise and moving to at.
func turned(r Rect, at Pt, deg, k float64) Rect {
	sin, cos := sincos(deg)
	lo, hi := Pt{MM(math.Inf(1)), MM(math.Inf(1))}, Pt{MM(math.Inf(-1)), MM(math.Inf(-1))}
	for _, p := range []Pt{{r.X, r.Y}, {r.X + r.W, r.Y}, {r.X, r.Y + r.H}, {r.X + r.W, r.Y + r.H}} {
		q := Turn(p, sin, cos, k).Add(at)
		lo = Pt{min(lo.X, q.X), min(lo.Y, q.Y)}
		hi = Pt{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return Rect{lo.X, lo.Y, hi.X - lo.X, hi.Y - lo.Y}
}

// Turn returns p scaled by k and turned counterclockwise on paper (where y
// points down) by the angle with that sine and cosine.
func Turn(p Pt, sin, cos, k float64) Pt {
	x, y := float64(p.X)*k, float64(p.Y)*k
	return Pt{MM(x*cos + y*sin), MM(-x*sin + y*cos)}
}

// sincos is exact at quarter turns, so that upright text stays upright.
func sincos(deg float64) (sin, cos float64) {
	if q := math.Mod(deg, 360) / 90; q == math.Trunc(q) {
		i := (int(q) + 4) % 4
		return [...]float64{0, 1, 0, -1}[i], [...]float64{1, 0, -1, 0}[i]
	}
	return math.Sincos(deg * math.Pi / 180)
}
