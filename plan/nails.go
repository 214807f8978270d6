package plan

import (
	"fmt"
	"slices"
	"strings"
)

// nailSize is one penny class; a size of 0 is not made.
type nailSize struct {
	penny            string
	commonL, commonD float64
	boxL, boxD       float64
	sinkerL, sinkerD float64
}

// nailSizes is NDS 2018, Table L4: length and diameter of standard nails, in
// (transcribed).
var nailSizes = []nailSize{
	{"6d", 2, 0.113, 2, 0.099, 0, 0},
	{"7d", 2.25, 0.113, 2.25, 0.099, 2.125, 0.099},
	{"8d", 2.5, 0.131, 2.5, 0.113, 2.375, 0.113},
	{"10d", 3, 0.148, 3, 0.128, 2.875, 0.120},
	{"12d", 3.25, 0.148, 3.25, 0.128, 3.125, 0.135},
	{"16d", 3.5, 0.162, 3.5, 0.135, 3.25, 0.148},
	{"20d", 4, 0.192, 4, 0.148, 3.75, 0.177},
}

// screwSizes is NDS 2018, Table L3: diameter of wood screws by number, in
// (transcribed by a secondary source that cites table and page).
var screwSizes = []struct {
	number   string
	diameter float64
}{
	{"6", 0.138},
	{"8", 0.164},
	{"10", 0.190},
	{"12", 0.216},
	{"14", 0.242},
}

// NailSize returns diameter and length, in, of a fastener as written:
//
//	"10d", "10d common", "8d box", "16d sinker"  standard nails
//	"10d x 1 1/2"                     shank of the common nail, other length
//	"0.148 x 1 1/2"                   any nail
//	"No. 14 x 2", "screw No. 14 x 2"  wood screws No. 6 to 14
//	"bolt 5/8", "bolt 5/8 x 8", "screw 0.25 x 3"  anything else, by diameter
//
//	"8d x 38mm", "3.3mm x 64mm", "bolt 16mm x 200mm"  millimeters
//
// Lengths in a fastener are inches, as boxes are labeled, where they say no mm.
func NailSize(text string) (diameter, length float64, err error) {
	s := strings.Join(strings.Fields(text), " ")
	head, tail, long := strings.Cut(s, " x ")
	if long {
		length, err = bare(strings.TrimSuffix(tail, "in"))
	}
	if err == nil && (!long || length > 0) {
		diameter, err = shank(head, &length)
	}
	if err != nil || diameter <= 0 || diameter > 2 || length > 60 {
		return 0, 0, fmt.Errorf(`%q is not a fastener; write it like "10d x 1 1/2", "8d common", "16d sinker", "0.131 x 2 1/2", "No. 14 x 2", "bolt 5/8 x 8" or "8d x 38mm"`, text)
	}
	return diameter, length, nil
}

// shank returns the diameter that head names; a standard nail sets length
// when it is still 0.
func shank(head string, length *float64) (float64, error) {
	words := strings.Fields(head)
	if len(words) == 0 {
		return 0, fmt.Errorf("no size")
	}
	for _, n := range nailSizes {
		if words[0] == n.penny {
			return n.named(words[1:], length)
		}
	}
	if number, ok := strings.CutPrefix(strings.TrimPrefix(head, "screw "), "No. "); ok {
		return screw(number, *length)
	}
	return bare(strings.Join(slices.DeleteFunc(words, func(w string) bool {
		return w == "bolt" || w == "screw" || w == "lag" || w == "rod" || w == "nail" || w == "ring"
	}), " "))
}

// bare reads inches without a unit, or millimeters.
func bare(s string) (float64, error) {
	if mm, ok := strings.CutSuffix(s, "mm"); ok {
		v, err := decimal(strings.TrimSpace(mm))
		return v / 25.4, err
	}
	return Inches(s)
}

// screw returns the diameter of the wood screw of that number; its length is
// written, for no number implies one.
func screw(number string, length float64) (float64, error) {
	for _, s := range screwSizes {
		if s.number == number && length > 0 {
			return s.diameter, nil
		}
	}
	return 0, fmt.Errorf("no screw No. %s, or no length", number)
}

// named returns the diameter of the nail of that name; none means common.
func (n nailSize) named(words []string, length *float64) (float64, error) {
	l, d := n.commonL, n.commonD
	switch name := strings.Join(words, " "); name {
	case "", "common":
	case "box":
		l, d = n.boxL, n.boxD
	case "sinker":
		l, d = n.sinkerL, n.sinkerD
	default:
		return 0, fmt.Errorf("no %s nail", name)
	}
	if *length == 0 {
		*length = l
	}
	return d, nil
}
