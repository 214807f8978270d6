package svg

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// decimals of a millimeter in the file: a micrometer, far under a pen.
const decimals = 3

// stickyWriter remembers the first write error and writes nothing after it;
// the SVG library returns none.
type stickyWriter struct {
	w   io.Writer
	err error
}

func (s *stickyWriter) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	n, err := s.w.Write(p)
	s.err = err
	return n, err
}

// round rounds x to the file's decimals and never returns a negative zero.
// ok is false when x is no number that a file can hold.
func round(x float64) (r float64, ok bool) {
	if math.IsNaN(x) || math.Abs(x) > 1e9 {
		return 0, false
	}
	return math.Round(x*1000)/1000 + 0, true // -0 + 0 = 0
}

// number prints x as it stands in an attribute.
func number(x float64) string { return strconv.FormatFloat(x, 'f', decimals, 64) }

// short prints x without trailing zeros.
func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// attr returns name="value" with the value escaped, for an SVG library that
// puts attributes into the file as they come.
func attr(name, value string) string { return name + `="` + escape(value) + `"` }

var escapes = map[rune]string{
	'&': "&amp;", '<': "&lt;", '>': "&gt;", '"': "&quot;", '\'': "&#39;", '\t': "&#9;", '\n': "&#10;", '\r': "&#13;",
}

// escape makes s fit for an attribute: markup as entities, characters that
// XML 1.0 (section 2.2) does not allow as U+FFFD.
func escape(s string) string {
	plain := true
	for _, r := range s {
		if escapes[r] != "" || !allowed(r) {
			plain = false
			break
		}
	}
	if plain && utf8.ValidString(s) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch e := escapes[r]; {
		case e != "":
			b.WriteString(e)
		case !allowed(r):
			b.WriteRune(utf8.RuneError)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func allowed(r rune) bool {
	return r == '\t' || r == '\n' || r == '\r' || r >= 0x20 && r <= 0xd7ff || r >= 0xe000 && r <= 0xfffd || r >= 0x10000 && r <= 0x10ffff
}

// points rounds parallel coordinates.
func (w *writer) points(ps []pt) (x, y []float64) {
	x, y = make([]float64, len(ps)), make([]float64, len(ps))
	for i, p := range ps {
		x[i], y[i] = w.num(float64(p.X)), w.num(float64(p.Y))
	}
	return x, y
}

// num rounds x and notes when it is none.
func (w *writer) num(x float64) float64 {
	r, ok := round(x)
	if !ok {
		w.fail(fmt.Errorf("%v is no number to draw with", x))
	}
	return r
}
