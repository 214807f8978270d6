package loadpath

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"galewright/plan/capacity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The terms of every link are done again from each other: they are not rounded, so the
// products hold to the last figure.

// valueOf returns the value of the first term whose words have a part.
func valueOf[T Term | capacity.Term](list []T, part string) (float64, bool) {
	for _, x := range list {
		if y := Term(x); strings.Contains(y.Text, part) {
			return y.Value, true
		}
	}
	return 0, false
}

// valuesOf returns the values of terms with these words, in the order of the words; all
// of them are there or ok is false.
func valuesOf[T Term | capacity.Term](list []T, parts ...string) (out []float64, ok bool) {
	for _, p := range parts {
		x, ok := valueOf(list, p)
		if !ok {
			return nil, false
		}
		out = append(out, x)
	}
	return out, true
}

// terms of each check are related so: what the parts come to. A relation holds wherever its
// words stand together, whatever check it is.
var relations = []struct {
	name  string
	parts []string
	want  func(v []float64) float64 // of all but the last
	but   string                    // where these words stand, something comes between
}{
	{"moment of a segment", []string{"shear of the segment, strength level", "height at which it acts", "shear of the segments above", "moment, both"}, func(v []float64) float64 { return v[0]*v[1] + v[2] }, ""},
	{"relieved tension", []string{"chord tension, strength level", "less 0.6 of the dead load left", "0.6 of the tension less the relief"}, func(v []float64) float64 { return math.Max(0, 0.6*v[0]-v[1]) }, ""},
	{"end post", []string{"0.6 of the tension less the relief", "uplift of the post", "both, ASD"}, func(v []float64) float64 { return v[0] + v[1] }, ""},
	{"unit shear of a segment", []string{"shear of the line, strength level", "share of this segment", "counted length", "0.6 of it over that length"}, func(v []float64) float64 { return 0.6 * v[0] * v[1] / v[2] }, ""},
	{"tie along the slope", []string{"0.6 D + 0.6 W", "1 / cos of the steeper slope", "tension of the tie, ASD"}, func(v []float64) float64 { return v[0] * v[1] }, "together, ASD"},
	{"tie with what hangs there", []string{"together, ASD", "1 / cos of the steeper slope", "tension of the tie, ASD"}, func(v []float64) float64 { return v[0] * v[1] }, ""},
	{"wind on both axes", []string{"chord force, strength level", "collector force, strength level", "0.75 of both together"}, func(v []float64) float64 { return 0.75 * (v[0] + v[1]) }, ""},
	{"pile", []string{"0.6 D + 0.6 W", "0.6 of the end tension that shear walls bring", "both, "}, func(v []float64) float64 { return v[0] + v[1] }, ""},
	{"seam of a girder", []string{"both, each in its own worst case", "part of the uplift that crosses the seam", "across that seam, ASD"}, func(v []float64) float64 { return v[0] * v[1] }, ""},
	{"net suction", []string{"qh with Kd", "GCp of", "GCpi", "net suction"}, func(v []float64) float64 { return v[0] * (v[2] - v[1]) }, ""},
	{"suction on a deck nail", []string{"net suction, strength level", "area of both, along the slope", "suction on it, strength level"}, func(v []float64) float64 { return v[0] * v[1] }, ""},
	{"0.6 of a nail's suction", []string{"suction on it, strength level", "0.6 of it; the deck's own weight"}, func(v []float64) float64 { return 0.6 * v[0] }, ""},
	{"a wall nail", []string{"net suction on it", "a nail between the edges holds", "a nail at a panel edge holds", "0.6 of the suction on the larger"}, func(v []float64) float64 { return 0.6 * v[0] * math.Max(v[1], v[2]) }, ""},
	{"a nail in the deck", []string{"withdrawal of ", "length that holds in the wood", "withdrawal times CD 1.6"}, func(v []float64) float64 { return 1.6 * v[0] * v[1] }, ""},
	{"the lesser", []string{"withdrawal times CD 1.6", "pull-through of the", "the lesser"}, func(v []float64) float64 { return math.Min(v[0], v[1]) }, ""},
	{"load of a gable stud", []string{"pressure of components and cladding", "width of wall that it serves", "0.6 of it on the post"}, func(v []float64) float64 { return 0.6 * v[0] * v[1] }, ""},
	{"nails by spacing", []string{"one nail", "nails in that length, by their spacing", "together"}, func(v []float64) float64 { return v[0] * v[1] }, ""},
	{"a post pushed", []string{"0.6 of it", "dead load on the post", "both, D + 0.6W"}, func(v []float64) float64 { return v[0] + v[1] }, ""},
}

func TestTermsOfEveryLinkMakeItsNumbers(t *testing.T) {
	var kinds []string
	for _, x := range relations {
		kinds = append(kinds, x.name)
	}
	eachSheet(t, kinds, func(t *testing.T, r *Report, seen map[string]int) {
		for _, l := range r.Links {
			for _, x := range relations {
				v, ok := valuesOf(l.Terms, x.parts...)
				if _, other := valueOf(l.Terms, x.but); other && x.but != "" {
					continue
				}
				if c := l.Capacity; !ok && c != nil {
					v, ok = valuesOf(c.Terms, x.parts...)
				}
				if !ok {
					continue
				}
				seen[x.name]++
				n := len(v) - 1
				assert.InDelta(t, x.want(v[:n]), v[n], 1e-6*(1+math.Abs(v[n])), "%s, %s %s: %v", x.name, l.Check.ID, l.ID, v)
			}
			closesOnItsTerms(t, l)
		}
	})
}

// closesOnItsTerms asserts that the demand and the capacity of a link stand among their
// terms, and that the ratio is one over the other, or more where loads act together.
func closesOnItsTerms(t *testing.T, l *Link) {
	among := func(v float64, list []Term) bool {
		for _, x := range list {
			if math.Abs(math.Max(0, x.Value)-v) < 1e-6*(1+v) {
				return true
			}
		}
		return len(list) == 0
	}
	if l.Demand > 0 {
		assert.NotEmpty(t, l.Terms, "%s %s", l.Check.ID, l.ID)
	}
	assert.True(t, l.Demand == 0 || among(l.Demand, l.Terms), "%s %s: %v not among %v", l.Check.ID, l.ID, l.Demand, l.Terms)
	c := l.Capacity
	if c == nil || c.Unknown != "" {
		return
	}
	var held []Term
	for _, x := range c.Terms {
		held = append(held, Term(x))
	}
	assert.True(t, among(c.Value, held), "%s %s holds %v, not among %v", l.Check.ID, l.ID, c.Value, held)
	if l.Gap == "" && c.Value > 0 {
		assert.GreaterOrEqual(t, l.Ratio, l.Demand/c.Value-1e-9, "%s %s", l.Check.ID, l.ID)
	}
}

var (
	severalOf = regexp.MustCompile(`^(\d+) of .*: ([\d.]+) lb each$`)
	eachOf    = regexp.MustCompile(`Z ([\d.]+) lb \((?:[^)]*)\)(?:, p/10D ([\d.]+))?,? (?:x )?CD ([\d.]+)(?: x CM ([\d.]+))?: ([\d.]+) lb each$`)
	oneNail   = regexp.MustCompile(`^one nail, .*: Z ([\d.]+) lb \((?:[^)]*)\)(?:, p/10D ([\d.]+))?,? (?:x )?CD ([\d.]+)$`)
	countOf   = regexp.MustCompile(`^(\d+) nails on (?:one|each) side|^(\d+) nails within the segment`)
	oneHolds  = regexp.MustCompile(`^(\d+) nails of .*: one holds (\d+) lb, `)
	leverOf   = regexp.MustCompile(`^stud at .*: (-?\d+) lb ASD in its own worst case, times (-?[\d.]+) by lever arm$`)
	someOf    = regexp.MustCompile(`of (\d+) lb of uplift (\d+) of (\d+) fasteners in the plates bring`)
)

// product multiplies figures that a text may leave out.
func product(v []float64) float64 {
	p := 1.0
	for _, x := range v {
		if !math.IsNaN(x) {
			p *= x
		}
	}
	return p
}

// The words of a term say how its value comes about: so many nails of so much each, each by
// its factors; a share by a count; a force by a lever.
func TestWordsOfTermsAreTheirArithmetic(t *testing.T) {
	kinds := []string{"several", "each", "one nail", "count", "one holds", "lever", "some of"}
	eachSheet(t, kinds, func(t *testing.T, r *Report, seen map[string]int) {
		for _, l := range r.Links {
			one, levers, sum := 0.0, 0, 0.0
			list := append([]Term{}, l.Terms...)
			if l.Capacity != nil {
				for _, x := range l.Capacity.Terms {
					list = append(list, Term(x))
				}
			}
			for _, x := range list {
				what := l.Check.ID + " " + l.ID + ": " + x.Text
				if v, ok := figures(severalOf, x.Text); ok {
					seen["several"]++
					assert.InDelta(t, v[0]*v[1], x.Value, 0.051*v[0]+0.01, what)
				}
				if v, ok := figures(eachOf, x.Text); ok {
					seen["each"]++
					assert.InDelta(t, product(v[:4]), v[4], 0.1+0.0012*v[4], what)
				}
				if v, ok := figures(oneNail, x.Text); ok {
					seen["one nail"]++
					one = x.Value
					assert.InDelta(t, product(v), x.Value, 0.1+0.0012*x.Value, what)
				}
				if m := countOf.FindStringSubmatch(x.Text); m != nil && one > 0 {
					seen["count"]++
					n, err := strconv.Atoi(m[1] + m[2])
					require.NoError(t, err, what)
					assert.InDelta(t, float64(n)*one, x.Value, 1e-6*x.Value, what)
				}
				if v, ok := figures(oneHolds, x.Text); ok {
					seen["one holds"]++
					assert.InDelta(t, v[0]*v[1], x.Value, 0.51*v[0], what)
				}
				if v, ok := figures(leverOf, x.Text); ok {
					seen["lever"]++
					levers, sum = levers+1, sum+x.Value
					assert.InDelta(t, v[0]*v[1], x.Value, 0.51*math.Abs(v[1])+0.0006*math.Abs(v[0]), what)
				}
				if v, ok := figures(someOf, x.Text); ok {
					seen["some of"]++
					assert.InDelta(t, v[0]*v[1]/v[2], x.Value, 0.51, what)
				}
				if x.Text == "together, ASD" && levers > 0 {
					assert.LessOrEqual(t, sum-1e-6, x.Value, what)
				}
			}
		}
	})
}

// added is a sum.
func added(list []float64) (sum float64) {
	for _, x := range list {
		sum += x
	}
	return sum
}
