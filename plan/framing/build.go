package framing

import (
	"math"
	"slices"
	"strconv"

	"galewright/plan"
	"galewright/plan/geom"
)

// plate is the thickness of one plate, in: a dressed 2-by (PS 20).
const plate = 1.5

// near is the distance, in, within which two places on a plan are taken as
// the same: half an inch, what a framer sets right with a hammer.
const near = 0.5

// sixteenth is a tape's smallest mark, in: heights that differ by less are one height,
// and members may reach so far into each other untold.
const sixteenth = 1.0 / 16

// skin is how far, in, bodies may reach into each other and points lie apart and still
// only touch.
const skin = 0.01

// meets tells whether two bodies share room.
func meets(a, b geom.Solid) bool { return geom.Overlap(a, b, skin) }

// column returns a rectangle on plan as a slab one inch high about z = 0: what overlaps
// on plan overlaps as columns.
func column(f geom.Frame, s0, s1, t0, t1 float64) geom.Solid { return f.Box(s0, s1, t0, t1, -0.5, 0.5) }

// onLine is how far, in, a point may lie off a line of the roof and still be
// on it: what crossing planes leave of rounding, well under a sawcut.
const onLine = 0.1

// builder gathers the members and joints of one house. Walls are framed
// first, then floors and foundation, then roofs, then joints over all of
// them.
type builder struct {
	plan      *plan.Plan
	house     *House
	faults    plan.Diagnostics
	walls     []*framedWall // in the order of the plan
	byWall    map[*plan.Wall]*framedWall
	ids       map[string]int
	index     *geom.Grid[*Member]     // of all members so far, filled by member
	wallsAt   *geom.Grid[*framedWall] // made by wallGrid when first asked for
	girders   []*framedGirder
	girdersAt *geom.Grid[*framedGirder]
	widths    map[*plan.Level]float64     // widths of the building, once asked for
	loops     map[*plan.Level][][]edge    // outlines of the levels, once the floors stand
	bodies    *geom.Grid[*roofBody]       // of all roofs, filled by roofs
	found     map[*plan.FloorOpening]bool // those that lie in a floor
	wellEnds  []wellEnd                   // the headers of openings in floors
	beams     []*framedBeam               // of floors and ceilings
	flushIn   map[*plan.FloorBeam]bool    // those that are flush in a floor that was found
	placed    map[string]bool             // added joists and blocking, by name, that lie in a floor
	refs      int                         // numbers given to members of the roofs

	wallLines *wallLines // for the roofs, made when first asked for
}

func newBuilder(p *plan.Plan) *builder {
	return &builder{
		plan:   p,
		house:  &House{Plan: p},
		byWall: map[*plan.Wall]*framedWall{},
		ids:    map[string]int{},
		index:  geom.NewGrid[*Member](),
		bodies: geom.NewGrid[*roofBody](),
		widths: map[*plan.Level]float64{},
		loops:  map[*plan.Level][][]edge{},
		found:  map[*plan.FloorOpening]bool{},

		flushIn: map[*plan.FloorBeam]bool{},
		placed:  map[string]bool{},
	}
}

// member adds m to the house. An ID that is taken already gets b, c ... at
// its end.
func (b *builder) member(m *Member) *Member {
	b.ids[m.ID]++
	if n := b.ids[m.ID]; n > 1 {
		m.ID += suffix(n)
		b.ids[m.ID]++
	}
	b.house.Members = append(b.house.Members, m)
	addMember(b.index, m)
	return m
}

// joint adds j to the house. Its ID is given at the end, when all joints are
// sorted by host and station.
func (b *builder) joint(j *Joint) *Joint {
	b.house.Joints = append(b.house.Joints, j)
	return j
}

// fault notes a fault of the plan.
func (b *builder) fault(d plan.Diagnostic) { b.faults = append(b.faults, d) }

// suffix returns "", "b", "c" ... "z", "27" ... for the nth thing of a name.
func suffix(n int) string {
	switch {
	case n <= 1:
		return ""
	case n <= 26:
		return string(rune('a' + n - 1))
	}
	return strconv.Itoa(n)
}

// at prints a station for an ID: two decimals at most.
func at(s float64) string {
	r := math.Round(s*100) / 100
	if r == 0 {
		r = 0 // no minus zero
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// framedWall is a wall with its resolved extents and the members in it.
// Stations are along the plan wall's line, from where its tape hooks.
type framedWall struct {
	*plan.Wall
	nth      int // among the plan's walls
	frame    geom.Frame
	mirrored bool // the house is: choices between left and right are the other way
	// s0 and s1 are the stations between which its bottom plate, studs and
	// lower top plate stand; c0 and c1 those of its upper plate, which laps
	// over corners.
	s0, s1, c0, c1 float64
	// floor is the top of the subfloor it stands on, base the foot of its
	// studs, head their top, top the top of its upper plate, in above grade.
	// For a rake wall head and top are those at its lowest place.
	floor, base, head, top float64
	uprights               []*Member // studs, kings, jacks, posts and cripples, by station
	bottoms, plates, caps  []*Member // by station
	openings               []*framedOpening
	added                  []*Member     // of the posts that the plan adds
	lower                  []*framedWall // walls below it in its plane
	rims, ledgers, sills   []*Member     // of the floors, at or in the wall
	seat                   []geom.Plane  // of a rake wall: what its top stays below
	meets                  []meeting     // walls that meet its side or its ends
	miters                 []*miter      // ends that are cut to meet others
	past                   [2]float64    // how far the plates go past s0 and s1 there, in
	breaks                 []span        // where the upper plates of walls that meet it lap over it
	gaps                   []span        // where walls that cross it run through
}

// capAt returns the upper plate over station s, or nil where there is none.
func (w *framedWall) capAt(s float64) *Member { return w.memberAt(w.caps, s) }

// memberAt returns the member of list whose extent holds station s, or nil: where one ends
// as the next begins the first, in a mirrored house the next.
func (w *framedWall) memberAt(list []*Member, s float64) *Member {
	if w.mirrored {
		s = -s
		for _, m := range slices.Backward(list) {
			if -m.S1-geom.Eps <= s && s <= -m.S0+geom.Eps {
				return m
			}
		}
		return nil
	}
	return memberAt(list, s)
}

// memberAt returns the member of list whose extent holds station s, or nil.
func memberAt(list []*Member, s float64) *Member {
	for _, m := range list {
		if m.S0-geom.Eps <= s && s <= m.S1+geom.Eps {
			return m
		}
	}
	return nil
}
