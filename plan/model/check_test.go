package model_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/model"
	"galewright/plan/pipeline"
	"galewright/plan/plantest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The tests of this file take the JSON alone, decoded as any program would,
// and work out again what it says by other and simpler ways. They share no
// code with the stages that found it.

type (
	object = map[string]any
	vec    [3]float64
)

func examples(t *testing.T) (names []string) {
	files, err := filepath.Glob("../../examples/*.toml")
	require.NoError(t, err)
	for _, f := range files {
		if name := strings.TrimSuffix(filepath.Base(f), ".toml"); name != "hardware" {
			names = append(names, name)
		}
	}
	require.Greater(t, len(names), 4)
	return names
}

// run takes an example through the pipeline, with strings of its plan replaced, old
// before new.
func run(t *testing.T, name string, edits ...string) *pipeline.Result {
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	r, ds := pipeline.Run(name+".toml", plantest.Edit(t, src, edits...), func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	return r
}

// decoded is the model of a result as its JSON says it.
func decoded(t require.TestingT, r *pipeline.Result) (out object) {
	loads, _ := loadpath.Run(r.Placement)
	var b bytes.Buffer
	require.NoError(t, model.New(r.Schedule, loads).JSON(&b))
	require.NoError(t, json.Unmarshal(b.Bytes(), &out))
	return out
}

func each(x any, key string, do func(object)) {
	for _, e := range x.(object)[key].([]any) {
		do(e.(object))
	}
}

func list(x any) (out []string) {
	for _, e := range x.([]any) {
		out = append(out, e.(string))
	}
	return out
}

func point(x any) (v vec) {
	for i, e := range x.([]any) {
		v[i] = e.(float64)
	}
	return v
}

func (a vec) to(b vec, t float64) (v vec) {
	for i := range v {
		v[i] = a[i] + t*(b[i]-a[i])
	}
	return v
}

func (a vec) length(b vec) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

// face is the plane of a face: its inner side is n·p <= c.
type face struct {
	n vec
	c float64
}

// part is a convex part of a member as the JSON gives it.
type part struct {
	member string
	lo, hi vec
	faces  []face
}

// parts reads the solids of all members.
func parts(m object) (out []part) {
	each(m, "members", func(x object) {
		each(x, "solids", func(s object) {
			p := part{member: x["id"].(string), lo: vec{1e9, 1e9, 1e9}, hi: vec{-1e9, -1e9, -1e9}}
			var corners []vec
			for _, c := range s["vertices_in"].([]any) {
				v := point(c)
				for i := range v {
					p.lo[i], p.hi[i] = min(p.lo[i], v[i]), max(p.hi[i], v[i])
				}
				corners = append(corners, v)
			}
			for _, f := range s["faces"].([]any) {
				var loop []vec
				for _, i := range f.([]any) {
					loop = append(loop, corners[int(i.(float64))])
				}
				p.faces = append(p.faces, plane(loop))
			}
			out = append(out, p)
		})
	})
	return out
}

// plane is the plane of a loop, by the sum of its turns.
func plane(loop []vec) face {
	var n vec
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		for k := range n {
			y, z := (k+1)%3, (k+2)%3
			n[k] += a[y]*b[z] - a[z]*b[y]
		}
	}
	l := n.length(vec{})
	c := 0.0
	for k := range n {
		n[k] /= l
		c += n[k] * loop[0][k]
	}
	return face{n, c}
}

func (p part) holds(v vec) bool {
	for i := range v {
		if v[i] < p.lo[i] || v[i] > p.hi[i] {
			return false
		}
	}
	for _, f := range p.faces {
		if f.n[0]*v[0]+f.n[1]*v[1]+f.n[2]*v[2] > f.c {
			return false
		}
	}
	return true
}

// near returns the parts that a line may meet.
func near(all []part, a, b vec) (out []part) {
	for _, p := range all {
		apart := false
		for i := range a {
			apart = apart || max(a[i], b[i]) < p.lo[i] || min(a[i], b[i]) > p.hi[i]
		}
		if !apart {
			out = append(out, p)
		}
	}
	return out
}

// step is how finely a line is sampled, in; what it finds is true to two.
const step = 1.0 / 64

// sampled walks a line in small steps and adds up where it is in wood.
func sampled(all []part, a, b vec) map[string]float64 {
	out := map[string]float64{}
	l := a.length(b)
	n := int(math.Ceil(l / step))
	hit := near(all, a, b)
	for i := range n {
		v := a.to(b, (float64(i)+0.5)/float64(n))
		met := map[string]bool{}
		for _, p := range hit {
			if p.holds(v) {
				met[p.member] = true
			}
		}
		for m := range met {
			out[m] += l / float64(n)
		}
	}
	return out
}

// Every fastener and rod is in its members for the lengths that are listed,
// and in no other, by samples along its line.
func TestListedLengthsAreThoseInTheSolids(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			m := decoded(t, run(t, name))
			all, seen := parts(m), 0
			each(m, "pieces", func(p object) {
				each(p, "fasteners", func(f object) {
					seen++
					sameLengths(t, p["tag"], f["in"].([]any), sampled(all, point(f["head_in"]), point(f["tip_in"])))
				})
				each(p, "rods", func(r object) {
					axis := r["axis_in"].([]any)
					a, b := point(axis[0]), point(axis[1])
					sameLengths(t, p["tag"], r["passes"].([]any), sampled(all, a, b))
					assert.InDelta(t, r["cut_in"], a.length(b), 1e-3, p["tag"])
				})
			})
			require.Greater(t, seen, 50)
		})
	}
}

// sameLengths compares lengths listed with lengths sampled. A member met for
// less than the play of a joint, 1/32 in, may be left out.
func sameLengths(t *testing.T, tag any, runs []any, found map[string]float64) {
	t.Helper()
	for _, r := range runs {
		id := r.(object)["member"].(string)
		assert.InDelta(t, r.(object)["length_in"], found[id], 2*step+1.0/32, "%s in %s", tag, id)
		delete(found, id)
	}
	for id, l := range found {
		assert.Less(t, l, 2*step, "%s runs in %s, which is not listed", tag, id)
	}
}

// The fasteners in space are those of the schedule, by mark and by size.
func TestFastenersInSpaceAreTheSchedules(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			r := run(t, name)
			got, pieces := map[string]int{}, map[string]int{}
			each(decoded(t, r), "pieces", func(p object) {
				pieces[p["mark"].(string)]++
				ends := p["ends"].([]any)
				each(p, "fasteners", func(f object) {
					e := ends[int(f["end"].(float64))].(object)
					got[p["mark"].(string)+" "+e["fastener"].(string)]++
				})
			})
			for _, l := range r.Schedule.Lines {
				assert.Equal(t, len(l.Pieces), pieces[l.Item.Mark], l.Item.Mark)
				for _, n := range l.Nails {
					key := l.Item.Mark + " " + n.Size.Name
					assert.Equal(t, n.Count, got[key], key)
					delete(got, key)
				}
			}
			assert.Empty(t, got, "fasteners that no schedule has")
		})
	}
}

// Uniting members along the ties, from the ground up and never down again to
// what stands higher, leaves as gaps what the load path says.
func TestTiesUnitedLeaveTheGapsOfTheLiftTest(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			m := decoded(t, run(t, name))
			rank := ranks(m)
			held, ends := grown(m, rank), map[string]bool{}
			for _, id := range list(m["lifted"]) {
				if !held[id] {
					for _, e := range lowest(m, rank, id) {
						ends[e] = true
					}
				}
			}
			gaps := map[string]bool{}
			for _, id := range list(m["gaps"]) {
				gaps[id] = true
			}
			assert.Equal(t, ends, gaps)
			assert.NotEmpty(t, m["lifted"])
		})
	}
}

// ranks returns the height by which members lie over each other: the foot of
// what stands steeper than 45 degrees, else the middle; an outlooker over all that
// it cantilevers from, a fly rafter over the outlookers.
func ranks(m object) map[string]float64 {
	out := map[string]float64{}
	each(m, "members", func(x object) {
		ends := x["axis_in"].([]any)
		a, b := point(ends[0]), point(ends[1])
		out[x["id"].(string)] = (a[2] + b[2]) / 2
		if math.Abs(a[2]-b[2]) > math.Hypot(a[0]-b[0], a[1]-b[1])+0.01 { // by more than the rounding of lengths
			out[x["id"].(string)] = min(a[2], b[2])
		}
		switch plan.Role(x["role"].(string)) {
		case plan.Outlooker:
			out[x["id"].(string)] = 1e6
		case plan.FlyRafter:
			out[x["id"].(string)] = 2e6
		}
	})
	return out
}

// goes tells whether force at a goes along a tie to b: b lies no more than
// half an inch higher.
func goes(rank map[string]float64, a, b string) bool { return rank[b] <= rank[a]+0.5+1e-3 }

// grown marks what is held: first what is tied to the ground, then over and
// over what a tie leads down from to something held, until nothing is new.
func grown(m object, rank map[string]float64) map[string]bool {
	held := map[string]bool{}
	for before := -1; before != len(held); {
		before = len(held)
		each(m, "ties", func(e object) {
			a := e["a"].(string)
			b, two := e["b"].(string)
			switch {
			case !two:
				held[a] = true
			case held[b] && goes(rank, a, b):
				held[a] = true
			case held[a] && goes(rank, b, a):
				held[b] = true
			}
		})
	}
	return held
}

// lowest follows the ties down from a member and returns where they end; of
// those that only hold each other the lowest, or the first of the lowest.
func lowest(m object, rank map[string]float64, from string) (out []string) {
	reached := map[string]bool{from: true}
	down := map[string]bool{} // of those reached, what goes on
	for before := -1; before != len(reached)+len(down); {
		before = len(reached) + len(down)
		each(m, "ties", func(e object) {
			a := e["a"].(string)
			b, two := e["b"].(string)
			for _, x := range [][2]string{{a, b}, {b, a}} {
				if two && a != b && reached[x[0]] && goes(rank, x[0], x[1]) {
					down[x[0]], reached[x[1]] = true, true
				}
			}
		})
	}
	best := ""
	each(m, "members", func(x object) {
		id := x["id"].(string)
		if !reached[id] {
			return
		}
		if !down[id] {
			out = append(out, id)
		}
		if best == "" || rank[id] < rank[best]-1e-6 {
			best = id
		}
	})
	if len(out) == 0 {
		out = []string{best}
	}
	return out
}
