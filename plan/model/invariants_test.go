package model_test

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// source returns the text of an example.
func source(t require.TestingT, name string) string {
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	return string(src)
}

// put runs a plan that a change has put elsewhere; a nil change leaves it.
func put(t require.TestingT, text string, c *change) (*pipeline.Result, plan.Diagnostics) {
	p, ds := read.Plan("plan.toml", []byte(text), func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	if c != nil {
		c.plan(p)
	}
	return pipeline.From(p)
}

// built is put and decoded; what framing refuses is skipped.
func built(t *testing.T, text string, c *change) object {
	r, ds := put(t, text, c)
	require.False(t, ds.Errors(), "%v", ds)
	return decoded(t, r)
}

// pointsOf returns all points of an object: what ends in _in and is a list of
// three numbers, or of such lists, in order of keys.
func pointsOf(x any) (out []vec) {
	switch x := x.(type) {
	case object:
		for _, k := range []string{"axis_in", "corners_in", "head_in", "tip_in", "at_in", "vertices_in", "plates", "fasteners", "rods", "slots", "bearings", "solids"} {
			out = append(out, pointsOf(x[k])...)
		}
	case []any:
		if len(x) == 3 {
			if _, ok := x[0].(float64); ok {
				return []vec{point(x)}
			}
		}
		for _, y := range x {
			out = append(out, pointsOf(y)...)
		}
	}
	return out
}

// A moved house has moved members and bodies, point by point.
func TestAMovedHouseHasMovedBodies(t *testing.T) {
	for _, name := range examples(t) {
		text := source(t, name)
		was := built(t, text, nil)
		for _, c := range []change{moved(), lying("mirrored", plan.MirrorX), lying("turned to the right", plan.Turned(3))} {
			t.Run(name+" "+c.name, func(t *testing.T) { samePlaces(t, was, built(t, text, &c), c) })
		}
	}
}

// thing is a member or a piece as it lies: what it is and all its points.
type thing struct {
	name, is string
	mid      vec
	points   []vec
}

// things returns the members or the pieces of a model, each point put by a
// change. Names do not tell: those of roofs follow the compass.
func things(m object, list, name, is string, put func(vec) vec) (out []thing) {
	each(m, list, func(x object) {
		t := thing{name: x[name].(string), is: x[is].(string)}
		for _, p := range pointsOf(x) {
			p = put(p)
			t.points = append(t.points, p)
			for i := range t.mid {
				t.mid[i] += p[i]
			}
		}
		for i := range t.mid {
			t.mid[i] /= float64(max(len(t.points), 1))
		}
		out = append(out, t)
	})
	return out
}

// alike tells whether two things are one, in whatever order their points are.
func (t thing) alike(o thing) bool {
	if t.is != o.is || len(t.points) != len(o.points) || t.mid.length(o.mid) > tolerance {
		return false
	}
	for _, p := range t.points {
		if !slices.ContainsFunc(o.points, func(q vec) bool { return p.length(q) < tolerance }) {
			return false
		}
	}
	return true
}

// tolerance is how near two points are that are the same, in: rounding.
const tolerance = 0.005

// unmatched returns what of a is not in b.
func unmatched(a, b []thing) (out []string) {
	taken := make([]bool, len(b))
	for _, t := range a {
		i := slices.IndexFunc(b, func(o thing) bool { return t.alike(o) })
		for i >= 0 && taken[i] {
			k := slices.IndexFunc(b[i+1:], func(o thing) bool { return t.alike(o) })
			if k < 0 {
				i = -1
				break
			}
			i += 1 + k
		}
		if i < 0 {
			out = append(out, fmt.Sprintf("%s %s at %.2f", t.is, t.name, t.mid))
			continue
		}
		taken[i] = true
	}
	return out
}

func samePlaces(t assert.TestingT, was, is object, c change) {
	for _, l := range [][3]string{{"members", "id", "role"}, {"pieces", "tag", "mark"}} {
		a := things(was, l[0], l[1], l[2], c.vec)
		b := things(is, l[0], l[1], l[2], func(v vec) vec { return v })
		assert.Empty(t, unmatched(a, b), "%s that are not %s", l[0], c.name)
		assert.Empty(t, unmatched(b, a), "%s that only the %s house has", l[0], c.name)
	}
	for _, k := range []string{"joints", "ties", "lifted", "gaps"} {
		assert.Len(t, is[k], len(was[k].([]any)), "%s of a %s house", k, c.name)
	}
}

// Generated houses, moved, turned and mirrored, have the same bodies there.
func TestAGeneratedHouseHasItsBodiesAnywhere(t *testing.T) {
	for _, c := range []change{moved(), turned(), lying("mirrored", plan.MirrorX), lying("mirrored, north for south", plan.MirrorY), lying("turned around", plan.Turned(2))} {
		t.Run(c.name, func(t *testing.T) {
			few(t, func(r *rapid.T) {
				text := drawHouse(r).toml()
				a, ds := put(r, text, nil)
				if ds.Errors() {
					r.Fatalf("%v\n%s", ds, text)
				}
				b, ds := put(r, text, &c)
				require.False(r, ds.Errors(), "%v", ds)
				samePlaces(r, decoded(r, a), decoded(r, b), c)
			})
		})
	}
}

// few keeps a property to a number of houses that runs in a second or two.
func few(t *testing.T, check func(*rapid.T)) {
	t.Helper()
	require.NoError(t, flag.Set("rapid.checks", "6"))
	rapid.Check(t, check)
}
