package plan

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseLumber reads a section: "2x6" and "3-2x10" are nominal and stand for
// their dressed sizes, "1.75x11.875" and "1 3/4x11 7/8" are actual inches,
// because nominal sizes are whole numbers. "12.0x12.0" is a full 12 in pile.
// "38x140mm" and "3-45x240mm" are actual millimeters; those of a dressed size,
// to the half millimeter, are that size.
func ParseLumber(text string) (Lumber, error) {
	bad := fmt.Errorf("%q is not a lumber size; write it like 2x6, 3-2x10, 1.75x11.875 or 45x240mm", text)
	l, s, ok := cutPly(text)
	switch {
	case !ok:
		return Lumber{}, bad
	case l.Ply < 1 || l.Ply > 6:
		return Lumber{}, fmt.Errorf("%q has %d plies; a built-up member has 1 to 6", text, l.Ply)
	}
	s, metric := strings.CutSuffix(s, "mm")
	b, d, ok := strings.Cut(strings.TrimSuffix(s, "in"), "x")
	if !ok {
		return Lumber{}, bad
	}
	b, d = strings.TrimSpace(b), strings.TrimSpace(d)
	if metric {
		return l.metric(text, b, d)
	}
	nb, err1 := strconv.Atoi(b)
	nd, err2 := strconv.Atoi(d)
	if err1 == nil && err2 == nil {
		if nb < 1 || nd < 2 || nb > 24 || nd > 24 {
			return Lumber{}, fmt.Errorf("%q is not a nominal size: 1x2 to 24x24", text)
		}
		timber := nb >= 5 && nd >= 5
		l.Breadth, l.Depth = dressed(nb, timber), dressed(nd, timber)
		return l, nil
	}
	l.Breadth, err1 = Inches(b)
	l.Depth, err2 = Inches(d)
	if err1 != nil || err2 != nil {
		return Lumber{}, bad
	}
	return l.sane(text)
}

// sane refuses what no yard has.
func (l Lumber) sane(text string) (Lumber, error) {
	if l.Breadth < 0.25 || l.Depth < 0.5 || l.Breadth > 36 || l.Depth > 60 {
		return Lumber{}, fmt.Errorf("%q is not a size of lumber: 1/4 in by 1/2 in to 36 by 60 in, 7 by 13 mm to 914 by 1524 mm", text)
	}
	return l, nil
}

// metric takes a section from millimeters.
func (l Lumber) metric(text, b, d string) (Lumber, error) {
	mb, err1 := decimal(strings.TrimSpace(strings.TrimSuffix(b, "mm")))
	md, err2 := decimal(d)
	if err1 != nil || err2 != nil {
		return Lumber{}, fmt.Errorf("%q is not a lumber size; in millimeters write it like 38x140mm or 3-45x240mm", text)
	}
	l.Breadth, l.Depth = mb/25.4, md/25.4
	for nb := 1; nb <= 24; nb++ {
		for nd := nb; nd <= 24; nd++ {
			timber := nb >= 5 && nd >= 5
			if b, d := dressed(nb, timber), dressed(nd, timber); math.Abs(b*25.4-mb) <= 0.5 && math.Abs(d*25.4-md) <= 0.5 {
				l.Breadth, l.Depth = b, d
			}
		}
	}
	return l.sane(text)
}

// cutPly takes the number of plies off the front of a section and tidies its
// text: "3 - 2 x 10" is "3-2x10".
func cutPly(text string) (l Lumber, section string, ok bool) {
	s := strings.Join(strings.Fields(text), " ")
	s = strings.ReplaceAll(s, " x ", "x")
	n, rest, built := strings.Cut(s, "-")
	if !built || strings.Contains(n, "x") {
		return Lumber{Ply: 1, Text: s}, s, true
	}
	ply, err := strconv.Atoi(strings.TrimSpace(n))
	rest = strings.TrimSpace(rest)
	return Lumber{Ply: ply, Text: fmt.Sprintf("%d-%s", ply, rest)}, rest, err == nil
}

// dressed returns the dry dressed size of a nominal one, in.
// PS 20, American Softwood Lumber Standard, dressed sizes: 1 is 3/4; 2 to 6
// lose 1/2; 7 and more lose 3/4; timbers (5 in and more both ways) of 16 and
// more lose 1.
func dressed(nominal int, timber bool) float64 {
	n := float64(nominal)
	switch {
	case nominal == 1:
		return 0.75
	case nominal <= 6:
		return n - 0.5
	case timber && nominal >= 16:
		return n - 1
	}
	return n - 0.75
}

// Inches reads "11.875", "11 7/8" or "7/8" as inches.
func Inches(s string) (float64, error) {
	s = strings.TrimSpace(s)
	whole, part, ok := strings.Cut(s, " ")
	if !ok && strings.Contains(s, "/") {
		whole, part, ok = "0", s, true
	}
	v, err := decimal(whole)
	if err != nil || !ok {
		return v, err
	}
	a, b, ok := strings.Cut(part, "/")
	n, err1 := strconv.ParseUint(a, 10, 16)
	d, err2 := strconv.ParseUint(b, 10, 16)
	if !ok || err1 != nil || err2 != nil || n >= d {
		return 0, fmt.Errorf("%q is not a fraction", part)
	}
	return v + float64(n)/float64(d), nil
}

// decimal reads plain digits with at most one point: no sign, no exponent.
func decimal(s string) (float64, error) {
	if s == "" || strings.Trim(s, "0123456789.") != "" {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return strconv.ParseFloat(s, 64)
}

// Times returns n of a single member nailed together: "2-2x12" of a 2x12. A member
// that is built up already stays as it is.
func (l Lumber) Times(n int) Lumber {
	if l.Ply > 1 || n < 2 {
		return l
	}
	l.Ply, l.Text = n, strconv.Itoa(n)+"-"+l.Text
	return l
}
