package placement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/units"
)

// condition is one key of a rule's where: what it asks, whether that holds at
// a joint, and what the joint has instead.
type condition struct {
	key   string
	given func(*plan.Where) bool
	holds func(*world, *plan.Where, *framing.Joint) bool
	want  func(units.System, *plan.Where) string
	have  func(*world, *framing.Joint) string
}

// conditions lists all conditions of plan.Where.
var conditions = []condition{
	{
		key:   "level",
		given: func(w *plan.Where) bool { return len(w.Level) > 0 },
		holds: func(x *world, w *plan.Where, j *framing.Joint) bool { return slices.Contains(w.Level, x.storyOf(j)) },
		want:  func(_ units.System, w *plan.Where) string { return strings.Join(w.Level, " or ") },
		have:  func(x *world, j *framing.Joint) string { return cmp.Or(x.storyOf(j), "none") },
	},
	names("wall", func(w *plan.Where) []string { return w.Wall }, func(j *framing.Joint) string {
		if j.Wall == nil {
			return ""
		}
		return j.Wall.Name
	}),
	names("roof", func(w *plan.Where) []string { return w.Roof }, func(j *framing.Joint) string {
		if r := roofOf(j); r != nil {
			return r.Name
		}
		return ""
	}),
	names("girder", func(w *plan.Where) []string { return w.Girder }, func(j *framing.Joint) string {
		switch j.Kind {
		case plan.GirderPile, plan.GirderSplice, plan.JoistGirder:
			return j.Host
		}
		return ""
	}),
	names("role", func(w *plan.Where) []plan.Role { return w.Role }, func(j *framing.Joint) plan.Role {
		if m := j.First(); m != nil {
			return m.Role
		}
		return ""
	}),
	{
		key:   "against",
		given: func(w *plan.Where) bool { return len(w.Against) > 0 },
		holds: func(_ *world, w *plan.Where, j *framing.Joint) bool {
			return slices.ContainsFunc(met(j), func(role plan.Role) bool { return slices.Contains(w.Against, role) })
		},
		want: func(_ units.System, w *plan.Where) string { return strings.Join(plan.Words(w.Against), " or ") },
		have: func(_ *world, j *framing.Joint) string { return strings.Join(plan.Words(met(j)), " and ") },
	},
	names("stud", func(w *plan.Where) []string { return w.Stud }, func(j *framing.Joint) string {
		if j.Wall == nil {
			return ""
		}
		return j.Wall.Studs.Text
	}),
	flag("exterior", func(w *plan.Where) *bool { return w.Exterior }, func(_ *world, j *framing.Joint) bool { return j.Wall != nil && j.Wall.Exterior }),
	flag("bearing", func(w *plan.Where) *bool { return w.Bearing }, func(_ *world, j *framing.Joint) bool { return j.Wall != nil && j.Wall.Bearing }),
	flag("balloon", func(w *plan.Where) *bool { return w.Balloon }, func(_ *world, j *framing.Joint) bool { return j.Wall != nil && j.Wall.Balloon() }),
	flag("lines_up", func(w *plan.Where) *bool { return w.LinesUp }, func(_ *world, j *framing.Joint) bool {
		return j.Kind != plan.StudStud || j.Below && len(j.Members) > 1 && standing(j.Members[1]) && math.Abs(j.Offset) <= touch
	}),
	flag("covered", func(w *plan.Where) *bool { return w.Covered }, (*world).coveredOutside),
	flag("end_zone", func(w *plan.Where) *bool { return w.EndZone }, (*world).inEndZone),
	flag("shear", func(w *plan.Where) *bool { return w.Shear }, inShear),
	span("spacing", func(w *plan.Where) [2]float64 { return w.Spacing }, func(_ *world, j *framing.Joint) float64 {
		switch r := roofOf(j); {
		case j.Wall != nil && j.Kind.Lies() != plan.LiesAtRafter:
			return j.Wall.Spacing
		case r != nil:
			return r.Spacing
		}
		return math.NaN()
	}),
	span("corner", func(w *plan.Where) [2]float64 { return w.Corner }, (*world).fromCorner),
	span("opening", func(w *plan.Where) [2]float64 { return w.Opening }, fromOpening),
	span("opening_width", func(w *plan.Where) [2]float64 { return w.OpeningWidth }, func(_ *world, j *framing.Joint) float64 {
		for _, m := range j.Members {
			if m.Opening != nil {
				return m.Opening.Width
			}
		}
		return math.NaN()
	}),
	span("height", func(w *plan.Where) [2]float64 { return w.Height }, func(_ *world, j *framing.Joint) float64 {
		if j.Level == nil {
			return j.At.Z
		}
		return j.At.Z - j.Level.Floor
	}),
	{
		key:   "from, to",
		given: func(w *plan.Where) bool { return w.From > 0 || w.To > 0 },
		holds: func(x *world, w *plan.Where, j *framing.Joint) bool {
			s := x.house.AsWritten(j)
			return (w.From == 0 || s >= w.From-touch) && (w.To == 0 || s <= w.To+touch)
		},
		want: func(u units.System, w *plan.Where) string {
			if w.To == 0 {
				return "from " + u.Length(w.From)
			}
			return u.Length(w.From) + " to " + u.Length(w.To)
		},
		have: func(x *world, j *framing.Joint) string { return j.Units.Length(x.house.AsWritten(j)) },
	},
}

// storyOf returns the name of the story that a joint belongs to, "" for none.
func (w *world) storyOf(j *framing.Joint) string {
	if l := w.house.Story(j); l != nil {
		return l.Name
	}
	return ""
}

// met returns the roles of the members that a joint's first one meets.
func met(j *framing.Joint) (roles []plan.Role) {
	for _, m := range j.Members[min(1, len(j.Members)):] {
		if !slices.Contains(roles, m.Role) {
			roles = append(roles, m.Role)
		}
	}
	return roles
}

// names is a condition that holds when the joint's word is in a list.
func names[W ~string](key string, list func(*plan.Where) []W, word func(*framing.Joint) W) condition {
	return condition{
		key,
		func(w *plan.Where) bool { return len(list(w)) > 0 },
		func(_ *world, w *plan.Where, j *framing.Joint) bool { return slices.Contains(list(w), word(j)) },
		func(_ units.System, w *plan.Where) string { return strings.Join(plan.Words(list(w)), " or ") },
		func(_ *world, j *framing.Joint) string {
			if s := word(j); s != "" {
				return string(s)
			}
			return "none"
		},
	}
}

// flag is a condition on a yes or no.
func flag(key string, want func(*plan.Where) *bool, is func(*world, *framing.Joint) bool) condition {
	return condition{
		key,
		func(w *plan.Where) bool { return want(w) != nil },
		func(wo *world, w *plan.Where, j *framing.Joint) bool { return is(wo, j) == *want(w) },
		func(_ units.System, w *plan.Where) string { return fmt.Sprint(*want(w)) },
		func(wo *world, j *framing.Joint) string { return fmt.Sprint(is(wo, j)) },
	}
}

// span is a condition on a length between two others; an upper end of zero
// asks nothing.
func span(key string, want func(*plan.Where) [2]float64, of func(*world, *framing.Joint) float64) condition {
	return condition{
		key,
		func(w *plan.Where) bool { return want(w) != [2]float64{} },
		func(wo *world, w *plan.Where, j *framing.Joint) bool {
			r, v := want(w), of(wo, j)
			return v >= r[0]-touch && (r[1] == 0 || v <= r[1]+touch)
		},
		func(u units.System, w *plan.Where) string {
			if r := want(w); r[1] != 0 {
				return u.Length(r[0]) + " to " + u.Length(r[1])
			}
			return "from " + u.Length(want(w)[0])
		},
		func(wo *world, j *framing.Joint) string {
			if v := of(wo, j); !math.IsNaN(v) && !math.IsInf(v, 0) {
				return j.Units.Length(v)
			}
			return "none"
		},
	}
}

func roofOf(j *framing.Joint) *plan.Roof {
	if j.Roof != nil {
		return j.Roof
	}
	if m := j.First(); m != nil {
		return m.Roof
	}
	return nil
}

func (w *world) inEndZone(j *framing.Joint) bool {
	if j.Wall != nil && !j.Wall.Exterior {
		return false
	}
	return w.fromCorner(j) <= w.endZone+touch
}

// handBreadth is the height over an upright's foot at which its outside face is
// looked at, in.
const handBreadth = 4

// coveredOutside tells whether another member stands against the outside face of
// the upright that a joint of a wall holds, just over its foot: at an inside
// corner the other wall's end does.
func (w *world) coveredOutside(j *framing.Joint) bool {
	m := j.First()
	if j.Wall == nil || m == nil || !standing(m) {
		return false
	}
	g := facingOf(j.Wall.Frame(), m.S0, m.S1, j.Wall.Depth(), plan.Outside)
	return w.cover(geom.Plate{A: g.at(m.Z0, 0), B: g.at(m.Z0+handBreadth, 0), N: g.n, Width: g.breadth}, probeFar, m) != nil
}

// fromCorner returns the distance from the nearer end of the wall, or for
// other hosts from the first or last joint along it, in.
func (w *world) fromCorner(j *framing.Joint) float64 {
	if j.Wall != nil {
		return max(0, min(j.Station-j.Wall.Hook, j.Wall.Length()-j.Station))
	}
	list := w.byHost[hostKind{j.Host, j.Kind}]
	return min(math.Abs(w.apart(list[0], j)), math.Abs(w.apart(j, list[len(list)-1])))
}

func fromOpening(_ *world, j *framing.Joint) float64 {
	least := math.NaN()
	if j.Wall == nil {
		return least
	}
	for _, o := range j.Wall.Openings {
		d := max(o.At-j.Station, j.Station-o.End(), 0)
		if !(d >= least) {
			least = d
		}
	}
	return least
}

func inShear(_ *world, j *framing.Joint) bool {
	if j.Wall == nil {
		return false
	}
	for _, s := range j.Wall.Shear {
		if j.Station >= s.From-touch && j.Station <= s.To+touch {
			return true
		}
	}
	return false
}

// fails returns the first condition of where that does not hold at j.
func (w *world) fails(where *plan.Where, j *framing.Joint) *condition {
	for i := range conditions {
		c := &conditions[i]
		if c.given(where) && !c.holds(w, where, j) {
			return c
		}
	}
	return nil
}

// excepted returns the exception of r that takes j out, or nil.
func (w *world) excepted(r *plan.Rule, j *framing.Joint) *plan.Where {
	for i := range r.Except {
		if w.fails(&r.Except[i], j) == nil {
			return &r.Except[i]
		}
	}
	return nil
}

// describe lists what a where asks.
func describe(u units.System, where *plan.Where) string {
	var parts []string
	for _, c := range conditions {
		if c.given(where) {
			parts = append(parts, c.key+" = "+c.want(u, where))
		}
	}
	if len(parts) == 0 {
		return "anything"
	}
	return strings.Join(parts, ", ")
}
