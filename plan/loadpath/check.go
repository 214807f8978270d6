package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/units"
)

// Check is one load check: what it looks at and how. The list of checks in
// the documentation comes from these values.
type Check struct {
	ID    string
	Title string
	Doc   string
	run   func(c *Check, a *analysis) []*Link
}

// Checks lists the load checks from ridge to foundation, then sideways.
func Checks() []*Check {
	return []*Check{
		{limitCheck, "Limits of the method", "where the house lies within what the wind procedures, their figures and what is left out hold for; outside of one, every other number rests on a method that was not made for this house", methodLimits},
		{deckCheck, "Roof deck", "suction of components and cladding on the deck that one nail holds, against withdrawal from the framing and pull-through of its head; the worst nail of each zone, on overhangs with what acts from below", deckNails},
		{"hung-uplift", "Jack trusses to what they hang on, valley frames to trusses", "uplift of each jack truss at the girder truss or corner jack that it ends at, of each corner jack at its girder truss, and of each frame of a valley set at each truss that it stands on", hungUplift},
		{"ridge-tie", "Rafters to the ridge", "tension across a ridge board (rafters hinged there and held at the plates: moment over rise, wL²/(8f) for a uniform load), or uplift of each rafter on a ridge beam, hip or valley", ridgeTies},
		{ridgeBendCheck, "Ridge boards", ridgeBendDoc, ridgeBending},
		{tieCheck, "Ceiling joists that hold rafters together", tieDoc, tieThrust},
		{"overhang-uplift", "Outlookers and fly rafters", "uplift of a gable overhang by components and cladding of the worst zone, its soffit pushed up as the wall below is, at each outlooker: half of its width at the fly rafter, all of it by lever at the gable; the roof over the inner end at the rafter there", overhangUplift},
		{"rafter-uplift", "Rafters to plates", "uplift of each rafter at each bearing, by statics over its whole length; with the wind's lateral load on the wall where the maker gives allowable loads along or across it", rafterUplift},
		{"dormer-uplift", "Dormers on their roofs", "uplift of a dormer's roof as it goes down: from the plates of its walls to their studs, from those to trimmers, headers or the plates under the eave, and from valley boards to the rafters below them, by lever arm between what holds on both sides", dormerUplift},
		{"stud-top-uplift", "Plates to studs", "uplift from the top plates to each full-height member", upliftAt(plan.StudTop)},
		{platesCheck, "Upper plates to top plates", "what each rafter's tie brings into the upper of the two top plates and the studs' ties do not reach, by the part of their fasteners in each plate, against the ordered nails between the plates half way to the next rafters, drawn out", platesApart},
		{bendingCheck, "Plates and headers between their ties", bendingDoc, plateBending},
		{"header-uplift", "Header ends", "uplift over an opening, gathered by the header to the king at each end", upliftAt(plan.OpeningHead)},
		{upperJoists, "Joists under walls that stand on them", upperDoc, joistsLifted(true)},
		{"story-uplift", "Stud to stud through the floor", "uplift from story to story, less the dead load of the wall above", upliftAt(plan.StudStud)},
		{"base-uplift", "Studs to floor or foundation", "uplift at the base of the lowest studs, less the dead load of the walls above", upliftAt(plan.StudBase)},
		{sillCheck, "Bottom plates to the foundation", "uplift that clips bring to a sill plate on a slab or stem wall, shared by lever arm to the bolts on both sides; with the uplift t of a perforated wall, at every story; bending of the plate between bolts is the check plate-bending; anchorage of the bolts in concrete or masonry is not computed", sillAnchors},
		{beamCheck, "Beams on what carries them", beamDoc, beamsBear},
		{joistsCheck, "Joists to girders", joistsDoc, joistsLifted(false)},
		{"girder-pile-uplift", "Girders to piles", "uplift from walls and joists at each pile, less the dead load of the lowest floor", upliftAt(plan.GirderPile)},
		{"pile-overturning", "Shear wall ends to piles", "uplift at a pile plus the end tension that the lowest shear walls bring there through girders and joists", overturnedAtPiles},
		{pliesCheck, "Plies of girders at piles", pliesDoc, girderPlies},
		{"porch-cap-uplift", "Beams and ridges to posts", "uplift of the roof on a porch beam, or of what the post under a ridge holds", upliftAt(plan.PostCap)},
		{"porch-base-uplift", "Posts to footings", "uplift of the roof on a porch beam, or of what the post under a ridge holds", upliftAt(plan.PostBase)},
		{"story-shear", "Stories and lines with no lateral resistance", "shear of a story without sheathed segments in the wind's direction, or of a line with no segment wide enough to count", storyShear},
		{panelCheck, "Wall panels", "suction of components and cladding on the wall that one nail of a sheathed segment holds, against withdrawal and pull-through; in its own worst case, not with the segment's shear", wallPanels},
		{"unit-shear", "Sheathed segments", "shear along each segment over its counted length", unitShear},
		{"overturning", "Shear wall ends", "tension at the ends of each segment, stories above included, less the dead load left after uplift; for a segment not over another, also at the base of the post below", overturning},
		{gableCheck, "Gable wall studs, out of plane", gableDoc, gableStuds},
		{deckShearCheck, "Decks to shear walls", "the force of each line of shear walls, from rims, floor joists and rafters to its top plates; and from the lowest floor's edge to girders or sills, with the wind on the lower half of the walls on that floor and on its edge: against the ordered nails there: at eaves with full blocking the lesser of the deck's nails into each block and the block's into the plates, at others the rafters' into the plates. Clips and straps are not counted, nor are ceiling joists: no ceiling is a diaphragm", deckShear},
		{diaphragmCheck, "Decks in shear", "shear of the decks of roof and floors where each hands its force to each line of walls, the deck's plan depth along the wind, against the unblocked deck as ordered; at an inner line what comes from both sides, against one row of its nails into the rafter or joist there; where joists cross an inner line, how the floor's deck comes down past them is not checked; at the lowest floor the wind that enters there", diaphragms},
		{"chord-push", "Shear wall ends, pressed", "the couple of each end's tension with the dead load on the post, against bearing of the post on its plate and its studs as columns across the wall; at a corner whose studs are nailed together 0.75 of both walls' (case 3) on the studs of both, where that is more; live load of floor and roof and wind across the wall are not in it, studs nailed beside it (built_up_studs, corner_studs) count as far as those nails bring the force from the tie's stud to them, and the sheathing is taken to hold them along the wall", pressedEnds},
		{postCheck, "Shear wall end posts, pulled", "the tension at each end, with the uplift of the post itself, against the wood of the studs that the tie's fasteners are in, on their net section; studs nailed beside them do not count at the tie, and bending by the tie's distance from the middle of the post is not in it", pulledPosts},
		{"collector", "Collectors", "force along a shear wall's line where it continues past a segment; with 0.75 of both (case 3) where it ties plates of two walls that are a chord too", collectors},
		{"chord-splice", "Top plate splices", "chord force of the floor or roof, collector force, or 0.75 of both where the wind blows along both axes (case 3 of the directional procedure), at each break in a top plate", splices},
		{soleCheck, "Bottom plates to floors", "shear of each sheathed segment through the ordered nails of its bottom plate into the floor", soleShear},
		{anchorCheck, "Sill plates to concrete", "shear of each sheathed segment that stands on a sill plate on concrete, against the bolts within it; under a floor on a stem wall the force of the whole line, with the wind on the lower half of its walls and on the floor's edge, against the sill's bolts in line: bending of the bolt at its thread and bearing in the plate. Not checked are how the concrete holds the bolts sideways (breakout toward its edge, pryout: the engineer's or a maker's value, which the catalog's load along may give), end distances, wind on walls across their sills, and shear together with the uplift of the same bolts", anchorShear},
		{nailingCheck, "Members that nails alone hold down", "uplift of each member that no fastener of a piece and no rod ties on down, and that ordered nailing does: jacks to kings, headers to kings, bottom plates to floors; toe-nails hold nothing, nor do nails drawn out of end grain", nailUplift},
		{liftCheck, "Members that nothing holds down", "the house pulled up by its roof: each member that uplift reaches and that no fastener, rod, wrap or ordered nailing ties to what is below, down to piles and concrete; weight and bearing hold nothing here", liftTest},
		{twistCheck, "What keeps the house from twisting", "level force from the deck to the plates of each shear wall line, along them to its segments, down to their ends and bottom plates, and on to the wall, girder or concrete below: each place where no fastener, rod or member hands it on", twist},
	}
}

// ChecksFor lists the load checks in the words of a plan's roofs.
func ChecksFor(p *plan.Plan) []*Check {
	list := Checks()
	for _, c := range list {
		c.Title, c.Doc = p.InRoofWords(c.Title), p.InRoofWords(c.Doc)
	}
	return list
}

// whereOf names a joint as somebody on the floor would.
func whereOf(u units.System, j *framing.Joint) string {
	s := j.HostName() + ", "
	if m := j.First(); m != nil {
		s += string(m.Role) + " "
	}
	return s + "at " + u.Length(j.Station)
}

// upliftAt makes the run of a check of uplift at one kind of joint.
func upliftAt(k plan.JointKind) func(*Check, *analysis) []*Link {
	return func(c *Check, a *analysis) (out []*Link) {
		for _, j := range a.house.Joints {
			if j.Kind == k && a.peaks[j] != nil {
				out = append(out, a.upliftLink(c, j))
			}
		}
		return out
	}
}

// upliftLink makes the link of a joint from its peak.
func (a *analysis) upliftLink(c *Check, j *framing.Joint) *Link {
	names := j.Kind.Row().Demand
	p := a.peaks[j]
	l := &Link{
		Check: c, ID: j.ID, Joint: j, Wall: j.Wall, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Force: p.force,
		Demand: math.Max(0, p.demand), Strength: math.Max(0, p.force.net(Strength)), Case: p.wind.String(), uplift: true,
	}
	for i, f := range p.parts {
		if f.W != 0 && i < len(names) {
			l.Terms = append(l.Terms, Term{"wind uplift, strength level, " + names[i], f.W, "lb"})
		}
		if f.D != 0 && i < len(names) {
			l.Terms = append(l.Terms, Term{"dead load, " + names[i], f.D, "lb"})
		}
	}
	l.Terms = append(l.Terms, Term{ASD.said(p.force), p.demand, "lb"})
	held := a.heldUp(j)
	if held != nil && p.demand > held.Value {
		held = a.withBeside(j, held)
	}
	l.close(held)
	if j.Kind == plan.StudStud && !j.Below {
		l.Notes = append(l.Notes, "nothing below to tie to")
	}
	return l
}

// heldUp is what holds a joint against uplift: its pieces but hold-downs, which overturning
// wants; at the foot of a stud that no strap holds the hold-down where one stands, for nothing
// is asked of the plate that clips end at then, and overturning counts that uplift too; else whatever there is, and at a bare foot the hold-down of the
// stud nailed beside it.
func (a *analysis) heldUp(j *framing.Joint) *Capacity {
	if j.Kind == plan.StudBase && a.allowed.Of(j, capacity.Upward, ordinaryStrap) == nil {
		if held := a.allowed.Of(j, capacity.Upward, engineered); held != nil {
			return held
		}
	}
	if held := a.allowed.Of(j, capacity.Upward, ordinary); held != nil {
		return held
	}
	if held := a.allowed.At(j, capacity.Upward); held != nil {
		return held
	}
	return a.heldAtBeside(j)
}

// least is the demand up to which nothing is asked of a joint, lb: rounding.
// A link that asks for more has a capacity or a gap.
const least = 0.5

// close sets capacity, ratio and gap.
func (l *Link) close(c *Capacity) {
	l.Capacity = c
	switch {
	case l.Demand <= least:
		l.Demand, l.Ratio = 0, 0
	case c == nil:
		l.Gap, l.Ratio = "no hardware at this joint", math.Inf(1)
	case c.Unknown != "":
		l.Gap, l.Ratio = "no capacity known: "+c.Unknown, math.Inf(1)
	case c.Value <= 0:
		l.Gap, l.Ratio = "capacity is 0", math.Inf(1)
	default:
		l.Ratio = l.Demand / c.Value
	}
}

// Governs says what sets the link's capacity.
func (l *Link) Governs() string {
	switch {
	case l.Gap != "":
		return l.Gap
	case !l.followed():
		return "no wind uplift is followed to it: not checked"
	case l.Capacity == nil:
		return "no demand"
	case l.Capacity.Unknown != "":
		return "no demand; " + l.Capacity.Unknown
	}
	return l.Capacity.Governs
}
