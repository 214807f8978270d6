package length

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Limit is the longest length Parse takes, in: no plan reaches 150 miles, a
// slip of the unit does.
const Limit = 1e7

// units gives the inches in one of each unit, the longer spelling first.
// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
var units = []struct {
	text string
	in   float64
}{
	{"feet", 12},
	{"foot", 12},
	{"ft", 12},
	{"'", 12},
	{"inches", 1},
	{"inch", 1},
	{"in", 1},
	{`"`, 1},
	{"mm", 1 / 25.4},
	{"cm", 10 / 25.4},
	{"m", 1000 / 25.4},
}

// marks turns the marks of typographers into those of the keyboard.
var marks = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`, "''", `"`, "½", " 1/2", "¼", " 1/4", "¾", " 3/4")

// Parse reads a length of 0 or more and returns inches.
func Parse(s string) (float64, error) {
	v, err := ParseSigned(s)
	if err == nil && v < 0 {
		return 0, fmt.Errorf("%q is negative; a length here is 0 or more", s)
	}
	return v, err
}

// ParseSigned reads a length that may be negative, such as a coordinate, and
// returns inches.
func ParseSigned(s string) (float64, error) {
	text := strings.TrimSpace(marks.Replace(s))
	rest, neg := strings.CutPrefix(text, "-")
	v, err := parse(strings.TrimSpace(rest))
	switch {
	case err != nil:
		return 0, fmt.Errorf("%q %w", s, err)
	case v > Limit:
		return 0, fmt.Errorf("%q is longer than any house; check the unit", s)
	case neg && v != 0:
		return -v, nil
	}
	return v, nil
}

var errForm = errors.New(`is not a length; write it like 12' 3 1/2", 147.5in or 3744mm`)

// parse reads feet, inches or both, or one metric quantity.
func parse(s string) (float64, error) {
	first, rest, err := quantity(s)
	if err != nil || rest == "" {
		return first.in(), err
	}
	if first.unit != 12 {
		return 0, errForm
	}
	rest = strings.TrimSpace(strings.TrimPrefix(rest, "-"))
	second, rest, err := quantity(rest)
	switch {
	case errors.Is(err, errUnit):
		return 0, fmt.Errorf(`lacks the inch mark after its feet; write " or in at the end`)
	case err != nil:
		return 0, err
	case rest != "" || second.unit != 1:
		return 0, errForm
	case second.n >= 12:
		return 0, errors.New("has 12 inches or more beside its feet; carry them over to the feet")
	}
	return first.in() + second.in(), nil
}

// amount is a number with the inches in its unit.
type amount struct{ n, unit float64 }

// in divides for metric units, so that 25.4mm is 1 in without rounding error.
func (a amount) in() float64 {
	if a.unit == 1/25.4 {
		return a.n / 25.4
	}
	return a.n * a.unit
}

var errUnit = errors.New("has no unit")

// quantity reads a number and its unit off the front of s.
func quantity(s string) (a amount, rest string, err error) {
	end := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789./ -", r) })
	number := s
	if end >= 0 {
		number = s[:end]
	}
	a.n, err = mixed(strings.TrimSpace(number))
	if err != nil {
		return amount{}, "", err
	}
	if end < 0 {
		n := strings.TrimSpace(s)
		return amount{}, "", fmt.Errorf(`%w; write %s', %sin or %smm`, errUnit, n, n, n)
	}
	for _, u := range units {
		if tail, ok := strings.CutPrefix(s[end:], u.text); ok {
			a.unit = u.in
			return a, strings.TrimSpace(tail), nil
		}
	}
	return amount{}, "", fmt.Errorf("has an unknown unit; use ' or ft, \" or in, mm, cm or m")
}

// mixed reads "3", "3.5", "1/2", "3 1/2" or "3-1/2".
func mixed(s string) (float64, error) {
	i := strings.LastIndexAny(s, " -")
	if i < 0 {
		if strings.Contains(s, "/") {
			return fraction(s)
		}
		return decimal(s)
	}
	whole, err := integer(strings.TrimSpace(s[:i]))
	if err != nil {
		return 0, err
	}
	part, err := fraction(s[i+1:])
	return whole + part, err
}

// fraction reads a proper fraction.
func fraction(s string) (float64, error) {
	a, b, ok := strings.Cut(s, "/")
	if !ok {
		return 0, errForm
	}
	n, err1 := integer(a)
	d, err2 := integer(b)
	if err1 != nil || err2 != nil || d == 0 {
		return 0, errForm
	}
	if n >= d {
		return 0, fmt.Errorf("has the fraction %s, which is not less than 1", s)
	}
	return n / d, nil
}

// integer reads digits only.
func integer(s string) (float64, error) {
	if strings.Contains(s, ".") {
		return 0, errForm
	}
	return decimal(s)
}

// decimal reads digits with at most one point.
func decimal(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) || strings.Trim(s, "0123456789.") != "" {
		return 0, errForm
	}
	return v, nil
}
