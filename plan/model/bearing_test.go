package model_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Every fastener that is counted ends in wood, or check says in one line how many
// of an item's do not and on how many pieces; every rod bears at both ends, or there
// is no model. Nothing else is said, of the examples and of generated houses.
func TestSteelHoldsOrIsReported(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			r, ds := put(t, source(t, name), nil)
			holdsOrReported(t, decoded(t, r), ds)
		})
	}
	t.Run("generated", func(t *testing.T) {
		few(t, func(x *rapid.T) {
			r, ds := put(x, drawHouse(x).toml(), nil)
			require.False(x, ds.Errors(), "%v", ds)
			holdsOrReported(x, decoded(x, r), ds)
		})
	})
}

// said is what is told of an item at joints of one kind, by number.
type said struct{ mark, joint string }

func holdsOrReported(t assert.TestingT, m object, ds plan.Diagnostics) {
	kind := kindOf(m)
	loose, of := map[said]int{}, map[said]int{} // fasteners in no wood, and their pieces
	each(m, "pieces", func(p object) {
		air, all := 0, 0
		each(p, "fasteners", func(f object) {
			all++
			if len(f["in"].([]any)) == 0 {
				air++
			}
		})
		counted := 0
		each(p, "ends", func(e object) { counted += int(e["driven"].(float64)) })
		assert.Equal(t, counted, all, "fasteners of %s", p["tag"])
		if k := (said{p["mark"].(string), kind[p["tag"].(string)]}); air > 0 {
			loose[k] += air
			of[k]++
		}
		each(p, "rods", func(r object) {
			bears(t, p, r)
		})
	})
	toldLoose, toldOf := reported(t, ds, kind)
	assert.Equal(t, loose, toldLoose, "fasteners in no wood")
	assert.Equal(t, of, toldOf, "pieces with fasteners in no wood")
}

// kindOf gives the kind of joint of each piece, by tag.
func kindOf(m object) map[string]string {
	kind, out := map[string]string{}, map[string]string{}
	each(m, "joints", func(j object) { kind[j["id"].(string)] = j["kind"].(string) })
	each(m, "pieces", func(p object) { out[p["tag"].(string)] = kind[p["joint"].(string)] })
	return out
}

// A line told of fasteners in no wood, and the number of its pieces.
var (
	inNoWood = regexp.MustCompile(`^(\S+): fasteners that find no wood \((\d+) fasteners?\)`)
	ofPieces = regexp.MustCompile(`^(\d+) pieces at (\S+) joints, `)
)

// reported reads the diagnostics back: fasteners in no wood and their pieces.
// One piece stands there with its tag alone, several with their number.
func reported(t assert.TestingT, ds plan.Diagnostics, kindOf map[string]string) (fasteners, pieces map[said]int) {
	fasteners, pieces = map[said]int{}, map[said]int{}
	for _, d := range ds {
		if d.Code != "fastener-in-no-wood" {
			continue
		}
		of := inNoWood.FindStringSubmatch(d.Summary)
		if !assert.NotNil(t, of, "%s", d) {
			continue
		}
		n, joint := 1, kindOf[d.Where[strings.LastIndex(d.Where, " ")+1:]]
		if many := ofPieces.FindStringSubmatch(d.Where); many != nil {
			n, _ = strconv.Atoi(many[1])
			joint = many[2]
		}
		count, _ := strconv.Atoi(of[2])
		k := said{of[1], joint}
		assert.Zero(t, fasteners[k], "one line a cause: %s", d)
		fasteners[k], pieces[k] = count, n
	}
	return fasteners, pieces
}

// bears holds a rod to its bearings: beyond a nut's face the rod goes on by the nut, an eighth of washer and
// some thread; what the piece is cut to, and what the item is long, is the rod.
func bears(t assert.TestingT, p, r object) {
	axis, ends := r["axis_in"].([]any), r["bearings"].([]any)
	cut := r["cut_in"].(float64)
	if c := p["cut_in"].(float64); c > 0 {
		assert.InDelta(t, c, cut, 1e-3, "%s: the length ordered is that of the rod", p["tag"])
	}
	for i, e := range ends {
		b := e.(object)
		assert.NotEqual(t, "nothing", b["kind"], "%s: an error, of which no model is made", p["tag"])
		beyond := point(axis[i]).length(point(b["at_in"]))
		if b["nuts"].(float64) > 0 {
			assert.GreaterOrEqual(t, beyond+1e-3, r["diameter_in"].(float64)+0.125, "%s: the nut is on the rod", p["tag"])
		}
		if b["kind"] == "washer on wood" {
			assert.NotEmpty(t, b["member"], p["tag"])
			assert.Positive(t, b["area_in2"], p["tag"])
		}
		if b["kind"] == "cast in concrete" {
			assert.NotEmpty(t, r["passes"], p["tag"])
		}
	}
}
