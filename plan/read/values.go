package read

import (
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/length"
)

// text reads a string that is not blank.
func (v value) text() (string, bool) {
	s, ok := v.raw.(string)
	if !ok {
		v.wrong("a string")
		return "", false
	}
	if strings.TrimSpace(s) == "" {
		v.bad("blank", "write it, or leave the key out", "is blank")
		return "", false
	}
	if len(s) > mostText {
		v.bad("too-long", "shorten it; it must fit on a sheet", "is %d letters long, and %d is the most", len(s), mostText)
		return "", false
	}
	return s, true
}

// texts reads a string or an array of strings.
func (v value) texts() (out []string) {
	for _, x := range v.list() {
		if s, ok := x.text(); ok {
			out = append(out, s)
		}
	}
	return out
}

// nameLimit is the most letters of a name: a tag must fit beside its mark.
const nameLimit = 32

// name reads a name that can stand in a tag and on a command line.
func (v value) name() (string, bool) {
	s, ok := v.text()
	if !ok {
		return "", false
	}
	good := func(r rune) bool {
		return r < 0x100 && (unicode.IsLetter(r) || unicode.IsDigit(r)) || strings.ContainsRune("._-+/", r)
	}
	if i := strings.IndexFunc(s, func(r rune) bool { return !good(r) }); i >= 0 || len(s) > nameLimit {
		v.bad("bad-name", "names stand in tags: use up to 32 letters, digits and . _ - + /", "%q cannot be a name", s)
		return "", false
	}
	return s, true
}

// choice reads one word of a fixed list, whatever the case.
func choice[W ~string](v value, words []W) (W, bool) {
	s, ok := v.text()
	if !ok {
		return "", false
	}
	for _, w := range words {
		if strings.EqualFold(s, string(w)) {
			return w, true
		}
	}
	v.bad("unknown-word", suggest(s, plan.Words(words)), "%q is not one of %s", s, strings.Join(plan.Words(words), ", "))
	return "", false
}

// length reads a length of 0 or more, in.
func (v value) length() (float64, bool) { return v.measure(length.Parse) }

// signed reads a length that may be negative, in.
func (v value) signed() (float64, bool) { return v.measure(length.ParseSigned) }

func (v value) measure(parse func(string) (float64, error)) (float64, bool) {
	switch x := v.raw.(type) {
	case string:
		in, err := parse(x)
		if err != nil {
			v.bad("bad-length", "", "%s", err)
			return in, false
		}
		return in, v.bounded(in, strings.TrimSpace(x), v.r.units().Length)
	case int64, float64:
		n := printNumber(x)
		if !finite(x) {
			v.wrong("a length in quotes")
			return 0, false
		}
		v.bad("no-unit", `write "`+n+`'", "`+n+`in" or "`+n+`mm"`, "%s has no unit", n)
	default:
		v.wrong("a length in quotes")
	}
	return 0, false
}

// lengths reads one length or an array of them, each with its place.
func (v value) lengths() (in []float64, at []plan.Pos) {
	for _, x := range v.list() {
		if l, ok := x.length(); ok {
			in, at = append(in, l), append(at, x.place())
		}
	}
	return in, at
}

// point reads [x, y].
func (v value) point() (p geom.Vec2, ok bool) {
	list, isList := v.raw.([]any)
	if !isList || len(list) != 2 {
		v.bad("wrong-type", `write it like ["28'", "0'"]`, "must be the two lengths of a point, east and north")
		return p, false
	}
	x, okx := value{v.node, v.key, 0, list[0]}.signed()
	y, oky := value{v.node, v.key, 1, list[1]}.signed()
	return geom.Vec2{X: x, Y: y}, okx && oky
}

// number reads a finite number from lo to hi.
func (v value) number(lo, hi float64) (float64, bool) {
	var n float64
	switch x := v.raw.(type) {
	case int64:
		n = float64(x)
	case float64:
		n = x
	default:
		v.wrong("a number")
		return 0, false
	}
	if !finite(n) || n < lo || n > hi {
		v.bad("out-of-range", "", "%s is not between %s and %s", printNumber(v.raw), printNumber(lo), printNumber(hi))
		return 0, false
	}
	return n + 0, true // no -0
}

// whole reads an integer from lo to hi.
func (v value) whole(lo, hi int) (int, bool) {
	n, ok := v.raw.(int64)
	if !ok {
		v.wrong("a whole number")
		return 0, false
	}
	if n < int64(lo) || n > int64(hi) {
		v.bad("out-of-range", "", "%d is not between %d and %d", n, lo, hi)
		return 0, false
	}
	return int(n), true
}

// flag reads true or false.
func (v value) flag() (b, ok bool) {
	if b, ok = v.raw.(bool); !ok {
		v.wrong("true or false")
	}
	return b, ok
}

// quantity reads a number with one of the units, times its factor.
func (v value) quantity(units []unit) (float64, bool) {
	s, ok := v.raw.(string)
	if !ok {
		if n, is := v.raw.(int64); is {
			v.bad("no-unit", `write "`+strconv.FormatInt(n, 10)+" "+units[0].name+`", or `+named(units[1:]), "%d has no unit", n)
		} else {
			v.wrong("a number with its unit in quotes")
		}
		return 0, false
	}
	s = strings.TrimSpace(s)
	i := strings.LastIndexAny(s, "0123456789.") + 1
	n, err := strconv.ParseFloat(strings.ReplaceAll(s[:i], ",", ""), 64)
	for _, u := range units {
		if strings.TrimSpace(s[i:]) == u.name && err == nil && n >= 0 && !math.IsInf(n, 0) {
			return n * u.factor, v.bounded(n*u.factor, s, inUnit(units[0]))
		}
	}
	v.bad("bad-quantity", "", "%q is not a quantity; write it like \"150 %s\", in %s", s, units[0].name, named(units))
	return 0, false
}

// unit is a unit and its size in the model's unit.
type unit struct {
	name   string
	factor float64
}

// named lists units: "psf, kPa or Pa".
func named(units []unit) string {
	out := ""
	for i, u := range units {
		switch {
		case i > 0 && i == len(units)-1:
			out += " or "
		case i > 0:
			out += ", "
		}
		out += u.name
	}
	return out
}

// date reads a TOML date or an ISO date in quotes.
func (v value) date() (string, bool) {
	switch x := v.raw.(type) {
	case time.Time:
		if x.Location().String() == "time-local" { // as BurntSushi/toml marks a time of day
			v.bad("bad-date", "write it like 2026-03-02", "%s is a time of day", x.Format(time.TimeOnly))
			return "", false
		}
		return x.Format(time.DateOnly), true
	case string:
		if _, err := time.Parse(time.DateOnly, x); err == nil {
			return x, true
		}
		v.bad("bad-date", "write it like 2026-03-02", "%q is not a date", x)
	default:
		v.wrong("a date")
	}
	return "", false
}

// section reads a lumber section.
func (v value) section() (plan.Lumber, bool) {
	s, ok := v.text()
	if !ok {
		return plan.Lumber{}, false
	}
	l, err := plan.ParseLumber(s)
	if err != nil {
		v.bad("bad-lumber", "", "%s", err)
	}
	return l, err == nil
}

// spaced reads "2x6 @ 16in": a section and its spacing on center, 0 when left out.
func (v value) spaced() (plan.Lumber, float64, bool) {
	s, ok := v.text()
	if !ok {
		return plan.Lumber{}, 0, false
	}
	size, gap, given := strings.Cut(s, "@")
	v.raw = strings.TrimSpace(size)
	l, ok := v.section()
	if !given {
		return l, 0, ok
	}
	gap = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(gap), "o.c."))
	in, err := length.Parse(gap)
	switch {
	case err != nil:
		v.bad("bad-length", "write it like 2x6 @ 16in", "spacing %s", err)
		return l, 0, false
	case ok && (in < 2*l.Breadth || in > 96):
		v.bad("out-of-range", "", "spacing %s is not between %s (two thicknesses) and %s", v.r.units().Length(in), v.r.units().Length(2*l.Breadth), v.r.units().Length(96))
		return l, 0, false
	}
	return l, in, ok
}

// finite tells whether a TOML number is neither nan nor inf.
func finite(x any) bool {
	f, is := x.(float64)
	return !is || !math.IsNaN(f) && !math.IsInf(f, 0)
}

// printNumber prints a TOML number.
func printNumber(x any) string {
	switch n := x.(type) {
	case int64:
		return strconv.FormatInt(n, 10)
	case float64:
		return strconv.FormatFloat(n, 'g', -1, 64)
	}
	return ""
}
