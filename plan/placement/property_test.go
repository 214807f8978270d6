package placement_test

import (
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"

	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// house is a generated plan: two stories over a rectangle, with openings in
// its south walls, and some rules.
type house struct {
	row        int // houses in a row, 0 = one
	long, wide int // ft
	spacing    int // in
	at         [2][]int
	rules      []string
}

const catalog = `
[[item]]
mark = "strap"
kind = "strap"
length = "54in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 9 }
[[item]]
mark = "base"
kind = "strap"
length = "36in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 8 }
[[item]]
mark = "clip"
kind = "clip"
thickness = "17 ga"
nails = { type = "8d x 1 1/2", to_stud = 4, to_plate = 7 }
[[item]]
mark = "ridge"
kind = "ridge strap"
length = "24in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 6 }
`

// ruleTexts are rules of different joints or purposes: none competes with
// another, so their order must not matter.
var ruleTexts = []string{
	`at = "stud-stud"
use = "strap"`,
	`at = "stud-base"
use = "base"
where = { exterior = true }`,
	`at = "stud-top"
use = "clip"
every = 2`,
	`at = "rafter-plate"
use = "clip"`,
	`at = "rafter-ridge"
use = "ridge"`,
	`at = "stud-base"
use = "clip"
at_most = "32in"`,
	`at = "stud-stud"
use = "strap"
purpose = "inside"
face = "inside"
where = { corner = "under 4'" }`,
}

func (h house) toml() string {
	var b strings.Builder
	fmt.Fprintf(&b, "[project]\nname = \"Generated\"\ndate = 2026-03-02\n[site]\nwind_speed = \"150 mph\"\nexposure = \"D\"\n")
	for i, l := range []string{"first", "second"} {
		fmt.Fprintf(&b, "[[level]]\nname = %q\nplate_height = \"9' 1 1/8in\"\nstuds = \"2x6 @ %din\"\n", l, h.spacing)
		if i == 0 {
			b.WriteString("floor = \"10'\"\n")
		}
		b.WriteString("floor_depth = \"12 7/8in\"\n")
	}
	for n := range max(h.row, 1) {
		h.one(&b, n)
	}
	b.WriteString(catalog)
	for _, r := range h.rules {
		fmt.Fprintf(&b, "[[rule]]\n%s\n", r)
	}
	return b.String()
}

// one writes the walls and the roof of the nth house of a row, 60 ft on.
func (h house) one(b *strings.Builder, n int) {
	name := ""
	if n > 0 {
		name = fmt.Sprintf("h%d-", n)
	}
	x := 60 * n
	for i, l := range []string{"first", "second"} {
		corners := [][2]int{{x + h.long, 0}, {x + h.long, h.wide}, {x, h.wide}, {x, 0}}
		for k, side := range []string{"S", "E", "N", "W"} {
			from := corners[(k+3)%4]
			fmt.Fprintf(b, "[[wall]]\nname = \"%s%d%s\"\nlevel = %q\nfrom = [\"%d'\", \"%d'\"]\nto = [\"%d'\", \"%d'\"]\n", name, i+1, side, l, from[0], from[1], corners[k][0], corners[k][1])
			if side != "S" {
				continue
			}
			for n, at := range h.at[i] {
				fmt.Fprintf(b, "  [[wall.opening]]\n  name = \"w%d\"\n  at = \"%din\"\n  width = \"3'\"\n  height = \"4'\"\n  sill = \"2' 6in\"\n  header = \"2-2x10\"\n", n, at)
			}
		}
	}
	fmt.Fprintf(b, "[[roof]]\nname = \"%smain\"\nover = \"second\"\nkind = \"gable\"\nridge = \"x\"\npitch = \"7:12\"\noverhang = \"1'\"\n"+
		"rafters = \"2x8 @ 16in\"\narea = [[\"%d'\", \"0'\"], [\"%d'\", \"%d'\"]]\n", name, x, x+h.long, h.wide)
}

// few keeps a property to a number of houses that runs in a second or two.
func few(t *testing.T, check func(*rapid.T)) {
	t.Helper()
	require.NoError(t, flag.Set("rapid.checks", "25"))
	rapid.Check(t, check)
}

func generate(t *rapid.T) house {
	h := house{
		long: rapid.SampledFrom([]int{24, 25, 26, 28, 29, 30, 32, 34, 36, 40}).Draw(t, "long"), wide: rapid.IntRange(16, 28).Draw(t, "wide"),
		spacing: rapid.SampledFrom([]int{12, 16, 24}).Draw(t, "spacing"),
	}
	for i := range h.at {
		for n := range rapid.IntRange(1, 2).Draw(t, "openings") {
			h.at[i] = append(h.at[i], 36+n*120+rapid.IntRange(0, 40).Draw(t, "at"))
		}
	}
	h.rules = rapid.Permutation(ruleTexts).Draw(t, "rules")[:rapid.IntRange(1, len(ruleTexts)).Draw(t, "how many")]
	return h
}

type fataler interface {
	Fatalf(format string, args ...any)
}

func place(t fataler, h house) *placement.Placement {
	p, ds := read.Plan("g.toml", []byte(h.toml()), nil)
	if ds.Errors() {
		t.Fatalf("%v\n%s", ds, h.toml())
	}
	frame, ds := framing.Frame(p)
	if ds.Errors() {
		t.Fatalf("%v\n%s", ds, h.toml())
	}
	c, ds := hardware.New(p.Items)
	if ds.Errors() {
		t.Fatalf("%v", ds)
	}
	out, _ := placement.Place(frame, c)
	return out
}

// said is what a piece is, without the line of its rule.
func said(p *placement.Piece) string {
	return fmt.Sprintf("%s %s %s %.4f %.4f", p.Tag, p.Item.Mark, p.Face, p.Path, p.Laps())
}

func TestTagsAreUniqueAndPiecesFoundByThem(t *testing.T) {
	few(t, func(t *rapid.T) {
		p := place(t, generate(t))
		seen := map[string]bool{}
		for _, q := range p.Pieces {
			if seen[q.Tag] {
				t.Fatalf("tag %s twice", q.Tag)
			}
			seen[q.Tag] = true
			if p.Piece(q.Tag) != q || !slices.Contains(p.At(q.Joint), q) {
				t.Fatalf("%s is not found by its tag and joint", q.Tag)
			}
			if !strings.HasPrefix(q.Tag, q.Joint.ID+"-"+q.Item.Kind.Code) {
				t.Fatalf("tag %s is not made from its joint and kind", q.Tag)
			}
		}
	})
}

func TestRuleOrderChangesNothingUnrelated(t *testing.T) {
	few(t, func(t *rapid.T) {
		h := generate(t)
		other := h
		other.rules = rapid.Permutation(h.rules).Draw(t, "again")
		a, b := place(t, h), place(t, other)
		var as, bs []string
		for _, q := range a.Pieces {
			as = append(as, said(q))
		}
		for _, q := range b.Pieces {
			bs = append(bs, said(q))
		}
		slices.Sort(as)
		slices.Sort(bs)
		if !slices.Equal(as, bs) {
			t.Fatalf("other pieces after reordering the rules")
		}
	})
}

func TestMovingAnOpeningChangesNoTagElsewhere(t *testing.T) {
	few(t, func(t *rapid.T) {
		h := generate(t)
		// Rules that pass over joints choose anew when joints come and go.
		h.rules = slices.DeleteFunc(slices.Clone(h.rules), func(r string) bool {
			return strings.Contains(r, "every") || strings.Contains(r, "at_most")
		})
		moved := h
		moved.at[0] = slices.Clone(h.at[0])
		old := h.at[0][0]
		moved.at[0][0] += rapid.IntRange(1, 30).Draw(t, "by")
		far := func(q *placement.Piece) bool {
			host := q.Joint.Host
			if host != "1S" && host != "2S" {
				return true
			}
			// The opening, its kings, and the studs it swallowed or gave back.
			return q.Joint.Station < float64(old-24) || q.Joint.Station > float64(old+36+30+24)
		}
		tags := func(p *placement.Placement) (out []string) {
			for _, q := range p.Pieces {
				if far(q) {
					out = append(out, q.Tag)
				}
			}
			return out
		}
		require.Equal(t, tags(place(t, h)), tags(place(t, moved)))
	})
}

func TestSteelIsAsLongAsItsPath(t *testing.T) {
	few(t, func(t *rapid.T) {
		for _, q := range place(t, generate(t)).Pieces {
			if !q.Item.Kind.Strap {
				continue
			}
			sum := 0.0
			for i := range q.Path[1:] {
				sum += q.Path[i+1].Sub(q.Path[i]).Len()
			}
			if d := sum - q.Length(); d > 1e-6 || d < -1e-6 {
				t.Fatalf("%s: a path of %g for %g of steel", q.Tag, sum, q.Length())
			}
			if q.Z0 > q.Z1 {
				t.Fatalf("%s: from %g to %g", q.Tag, q.Z0, q.Z1)
			}
		}
	})
}

// BenchmarkPlace places one house and rows of houses in one plan: the time
// must grow with the houses, not with their square.
func BenchmarkPlace(b *testing.B) {
	for _, n := range []int{1, 10, 100} {
		b.Run(fmt.Sprintf("houses=%d", n), func(b *testing.B) {
			h := house{row: n, long: 44, wide: 28, spacing: 16, at: [2][]int{{60, 200}, {60, 200}}, rules: ruleTexts}
			p, ds := read.Plan("row.toml", []byte(h.toml()), nil)
			require.False(b, ds.Errors(), "%v", ds)
			frame, ds := framing.Frame(p)
			require.False(b, ds.Errors(), "%v", ds)
			c, ds := hardware.New(p.Items)
			require.False(b, ds.Errors(), "%v", ds)
			b.ReportAllocs()
			b.ResetTimer()
			pieces := 0
			for range b.N {
				out, _ := placement.Place(frame, c)
				pieces = len(out.Pieces)
			}
			b.ReportMetric(float64(pieces), "pieces")
		})
	}
}
