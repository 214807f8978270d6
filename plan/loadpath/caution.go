package loadpath

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// assumptions lists what was taken for granted.
func assumptions(a *analysis) []string {
	p := a.plan
	out := windAssumptions(a)
	out = append(out,
		"Uplift by 0.6 D + 0.6 W; where dead load itself lifts, by a lever, it counts whole, D + 0.6 W ("+ASD.Source+", second-hand). Dead load is only what is listed; it counts only at joints below it.",
		spansAssumed(p),
		p.InRoofWords("A rafter bears at the middle of its seat; its tributary width reaches halfway to its neighbors, that of the outer ones to the edge of the roof. Roof dead load is that of the slope; ceilings count between the walls and hang on ceiling joists where the roof has them, as simple spans between the plates of bearing walls: they relieve no rafter and no ridge then, and where no joist is framed, as in hip ends, nothing; else they hang on rafters or trusses. Openings in walls count as the wall around them; those in floors weigh nothing."),
		"Top plates share uplift to the full-height members on both sides of a load; over an opening the header carries it to the inner king at each end, not to the studs beyond.",
		"A stud's uplift goes to the stud below it that the joint names, else through the plates below. Half of each joist span counts as dead load on bearing walls across the joists.",
		"A diaphragm takes the wind on the upper half of the story below it, the floor's depth and the lower half of the story above; roofs reach from the eaves' edges to the ridge and from rake to rake; gables stand over the walls with boxed eaves beside them. On the lowest floor the lower half of its walls and its edge come in under the segments. Diaphragms are flexible and distribute wind to shear walls by tributary width"+map[bool]string{true: ", but the plan asks for stiffness: diaphragms are rigid, lines as stiff as their segments, or where that is not known as length times unit shear capacity; what torsion adds to the lines across the wind is left out", false: ""}[p.Loads.Distribution == plan.Stiffness]+".",
		sharesAssumed(p)+" Ends of segments that stand over each other within "+p.Project.Units.Words("{18 in}")+" add up; other ends go straight down. Overturning acts from the top of the plates, under a rake from their mean height, over the lever arm from the rod or strap that holds an end to the middle of the far post.",
		fmt.Sprintf("Overturning is relieved only by dead load left after uplift. Framing is %s, G %.2f, dry, at ordinary temperature, but for %s, taken as wet (loads.wet): there CM is 0.7 on nails, screws and bolts across their shanks (NDS 2018 Table 11.3.3, transcribed), 0.25 on nails drawn out, 0.67 on wood under washers (from memory).", a.species.Name, a.species.G, wetWords(p)),
		"Computed capacities: NDS 2018 nail values at wind duration 1.6, each end of a strap or leg of a clip by itself; straps ASTM A653 Gr 33 by AISI S100-16; rods A36; sheathing by SDPWS 2015 Table 4.3A, wind column, divided by 2.0 (2021 not read). Holes are "+p.Project.Units.Words("{0.022 in}")+" wider than the nails, staggered rows count as straight; steel over wall sheathing loses "+passedPanel(p)+" of its nails. Maker's values are taken as allowable loads at wind duration, as the catalog's key asks. The bending of a clip's or hold-down's steel is not computed: a maker's value should be given.",
		"Pieces of one mark at a joint add up; of different marks only the strongest counts. A bolt through a sill holds the plate and no stud.",
		nailsAssumed(a),
		pliesAssumed(a),
	)
	if len(a.house.Dormers) > 0 {
		out = append(out, "Dormers: each has the wind of a gable or shed roof of its own with the height of the house, the line along which a shed meets the main roof taken as its high edge, its end zones measured from its own walls. What of the main roof a dormer's roof lies over counts twice, in wind and in weight, but for the opening; trimmers and the pair across the ridge are one stiff piece under what the headers bring. The plates of their walls, of a shed the rafters over its side walls, hand uplift to the studs on both sides by lever arm, past the last one by lever back to the one before.")
	}
	if slices.ContainsFunc(p.Items, stainless) {
		out = append(out, "Stainless straps are taken at Fy 30 ksi (from memory) and an Fu no higher than that of A653 Gr 33; smooth stainless nails draw out by NDS 2018 equation 12.2-4 (transcribed), and across their shanks are taken as of low carbon steel.")
	}
	out = append(out, a.deckAssumptions()...)
	for _, s := range p.Site.Assumed {
		out = append(out, "Site: "+s.In(a.u)+", not in the plan.")
	}
	if p.Lumber.Species == "" {
		out = append(out, "Species: southern pine, not in the plan.")
	}
	return out
}

// passedPanel says how much of its nails steel over wall sheathing loses.
func passedPanel(p *plan.Plan) string {
	if _, thick := p.WallPanels(nil); thick.Given {
		return "up to " + thick.Text + " in (the thickest shear panel of its wall, else of the house)"
	}
	return plan.AssumedWallPanel + " in (assumed)"
}

// windAssumptions lists what was taken for granted of the wind.
func windAssumptions(a *analysis) []string {
	e := "ASCE " + string(a.basis.Edition)
	out := []string{
		"Wind: " + e + ", procedure: " + a.choice.String() + ": " + a.choice.Why + ". All four directions, each with both corners, internal pressure of both signs, with and without pressure under the eaves of the corner's side.",
		"Enclosure: " + protection(a.basis) + ".",
		"The whole plan is one building; mean roof height, eave and angle are those of the main roof, its length and width those of all exterior walls. A house on piles is taken at its height above grade.",
	}
	if a.choice.Has(plan.Envelope) {
		out = append(out, "Envelope procedure: zone 2 reaches from the walls' face as far as half the building's dimension parallel to the wind, or 2.5 eave heights. The end slopes of a hip take zone 2 or 3 by the side of the ridge they are on. Lateral load on roofs is by zones 2 and 3.")
	}
	if a.choice.Has(plan.Directional) {
		out = append(out, "Directional procedure: the building is rigid, G 0.85; the windward wall has the mean q of each story's height. Distances on the roof are from the windward wall's face, -1.3 is not reduced for area. The end slopes of a hip are read as slopes and as roof along the wind, and the more severe is taken. Cases 1 and 3; the torsional cases 2 and 4 are not run, as for light frames of up to two stories (ASCE 7-05 low-rise note 5 and 7-22 Appendix D.1, transcribed).")
	}
	return append(out,
		"Undersides: eaves, rakes and roof over a porch take the windward wall's pressure from below on the side the wind comes from and on that of its corner ("+soffitText(a)+"); no internal pressure acts there. "+a.plan.InRoofWords("A rafter")+" is inside or outside by the line of its middle.",
		"An open roof on posts is run as a free roof, clear and obstructed, and as an overhang of the house; the larger uplift is taken place by place."+cornerText(a.plan)+pileText(a.plan),
		a.u.Sprintf("Lateral load on roofs is never below zero, each roof by itself, none shields another; gable triangles and hip ends take the walls' pressure. Minimum loads of %.0f{psf} and %.0f psf (ASCE 7-16 27.1.5, transcribed) are run too.", wind.LeastWall, wind.LeastRoof),
	)
}

// pileText tells what holds the piles of porches down.
func pileText(p *plan.Plan) string {
	if !slices.ContainsFunc(p.Porches, func(x *plan.Porch) bool { return x.Piles }) {
		return ""
	}
	return " Posts of porches that are piles hold what their beams' ties bring by their embedment, which is the engineer's; at a corner they hold both sides'."
}

// cornerText tells how a porch's roof is taken past a corner of the house.
func cornerText(p *plan.Plan) string {
	turns := func(r *plan.Roof) bool {
		return r.Kind == plan.ShedRoof && slices.Contains(r.GableEnd[:], plan.HipEnd)
	}
	if !slices.ContainsFunc(p.Roofs, turns) {
		return ""
	}
	return " No figure has the corner of a porch: the slope past it takes the largest of any part of any case of a free roof with one slope, as a hip the strips along its edges, and the hip's pull at the house goes in halves to the two walls of the corner."
}

// spansAssumed says how pressure on the roof comes to what it bears on.
func spansAssumed(p *plan.Plan) string {
	s := "Roof pressure acts normal to the slope."
	if slices.ContainsFunc(p.Roofs, func(r *plan.Roof) bool { return !r.Trusses }) {
		s += " With no ridge beam, a rafter and its opposite act as one rigid piece on two plates; where one foot stands higher, as on a valley or at a dormer, the pull at their ridge is that of two bars hinged there, and the level force at the higher foot is not followed. With a ridge beam, and at hips, each is a simple beam and the horizontal part of the pressure goes to the diaphragm."
	}
	if slices.ContainsFunc(p.Roofs, func(r *plan.Roof) bool { return r.Trusses }) {
		s += " Of a truss, what comes on each slope goes to the bearings under that slope, and the horizontal part to the diaphragm. What hangs on a girder truss, and what the level top of a girder or hip truss carries, goes to its two bearings as of a stiff beam; jack trusses and corner jacks are simple spans from the plate to what they hang on. No truss is designed, and no fastening of the plies of a girder truss to each other: that is the truss designer's of record."
	}
	return s
}

// soffitText tells the coefficients on undersides.
func soffitText(a *analysis) string {
	var parts []string
	if a.choice.Has(plan.Envelope) {
		parts = append(parts, "envelope: 0.7 qh, ASCE 7-16 28.3.3, from memory")
	}
	if a.choice.Has(plan.Directional) {
		parts = append(parts, "directional: 0.8 G qh, ASCE 7-16 27.3.3, transcribed")
	}
	return strings.Join(parts, "; ")
}

// stainless tells whether an item or its fasteners are of stainless steel.
func stainless(it *plan.Item) bool {
	return it.Coating.Stainless() || slices.ContainsFunc(it.Fasteners, func(f plan.Fasteners) bool { return f.Coating.Stainless() })
}

// panelsUnchecked says of which wall panels outside of shear segments nothing was looked at.
func panelsUnchecked(p *plan.Plan) string {
	switch {
	case !ownPanels(p):
		return "Wall panels outside of sheathed segments, "
	case slices.ContainsFunc(p.Walls, func(w *plan.Wall) bool { return w.Exterior && w.Sheathing == nil }):
		return "Wall panels outside of sheathed segments where the plan says nothing of them, and what others hold but suction on their nails: they count for no shear and no uplift; "
	}
	return "What wall panels outside of sheathed segments hold but suction on their nails: they count for no shear and no uplift; "
}

// unchecked lists what was not looked at.
func unchecked(a *analysis) []string {
	p := a.plan
	out := []string{
		"The end rafter or gable truss over a gable wall along that wall: its uplift, rake overhang included, is taken at its eaves, and nothing of it at the wall's studs. Outlookers and fly rafters in bending; their uplift is the check overhang-uplift.",
		"Members themselves: bending and shear of rafters, headers under load from above, studs, joists, girders, ridge beams; plates under load from above or from the side.",
		panelsUnchecked(p) + "roofing, siding, windows and doors, and their fastening; panels themselves between their supports, and wind pressing on them.",
		"Openings in floors: the deck's shear and its chords around them, what headers and trimmers carry; deflection of floors and roofs; the drift of a story is told, not compared with a limit.",
		"Downward loads: dead, live, snow, and wind pressing down, but for floors on beams at what carries those (" + beamCheck + "); compression at shear wall ends is checked without those.",
		"Out-of-plane forces on studs other than the lateral load at rafter joints and on walls under gables; what holds the plates of gable walls at roof and floor against suction.",
		"Lateral load along and across the wall at rafter bearings, where the maker gives no allowable load for it; the horizontal thrust of rafters on their plates in wind.",
		"Shear from the roof diaphragm down to interior walls that do not reach it; shear and uplift together on the nails of bottom plates.",
		"Uplift from stories above on plates between studs that do not stand over each other; deflection of plates; bottom plates on floors between their nails.",
		"Torsional load cases; torsion of open fronts is reported, not added.",
		"Nails missing, split wood, edge distances and spacing of nails; corrosion.",
		"Flood, wave, scour, earthquake, and impact of debris.",
	}
	if a.eccentric() {
		out = append(out, "Torsion of girders whose straps to their piles lie on one face: where plies must pass their share on, it is told with the check "+pliesCheck+" and compared with nothing; nor is what holds a girder from rolling on its piles.")
	}
	if len(a.house.Dormers) > 0 {
		out = append(out, "Dormers: wind on their side walls, front walls and roofs sideways is in no deck's, shear wall's or plate's load, and what hands it on to the main roof's deck is not checked; their windows' headers, the headers and trimmers of their openings in bending, the deck around these openings in shear; the end of a dormer's ridge board, and the thrust of jacks on their valley boards; wind that turns a corner around a dormer.")
	}
	if a.bareEaves() {
		out = append(out, "Rafters turning over at eaves without blocks, where the deck's shear goes through them to the plates: the moment is told with the check "+deckShearCheck+" and compared with nothing.")
	}
	for i := range out {
		out[i] = p.InRoofWords(out[i])
	}
	if p.Foundation.Kind == plan.Piles || len(p.Girders) > 0 {
		out = append(out, "Pile embedment, pile bending and bracing, and the wind on piles and what is between them.", underside(a.u, a.basis),
			"The level force from girders to piles, along and across the girder: what of it bolts, straps and the wood behind a notch take; what a notch leaves of a pile in bending.")
	}
	if a.house.StepsUp() {
		out = append(out, "The deck at hip ends above the girder trusses: how far its panels span between level tops, and its edges along the hips, where no stick stands under it; the bracing of level tops and of top chords until the deck is on.")
	}
	if len(p.Breakaways) > 0 {
		out = append(out, "Breakaway walls below the lowest floor: they carry nothing, are in no load path, and how they give way is their designer's.")
	}
	if p.Foundation.Kind != plan.Piles {
		out = append(out, "Anchorage in concrete or masonry, upward and sideways, shear together with uplift on the bolts there, the foundation, and the soil.")
	}
	return append(out, uncheckedJoints(a.house)...)
}

// underside tells of wind on the underside of a house on piles, which is not
// in the numbers.
func underside(u units.System, b wind.Basis) string {
	if b.Edition == plan.ASCE716 {
		return "Wind on the underside of the house: ASCE 7-16 has no rule for it that was found."
	}
	psf, _ := b.CladUnder(10)
	return u.Sprintf("Wind on the underside of the house (ASCE 7-22 27.3.1.1): for the main frame no source of the upward value was found, so none is counted; the downward one relieves nothing. Sheathing and soffit panels there take wall zone 4's positive value upward, %.0f psf at strength level on {10 ft²} (ASCE 7-22 30.3.2.1, second-hand): not checked.", psf)
}

// uncheckedJoints says of the kinds of joints that the house has, and that no
// load check looks at, why: kinds of one reason together.
func uncheckedJoints(h *framing.House) (out []string) {
	has := map[plan.JointKind]bool{}
	for _, j := range h.Joints {
		has[j.Kind] = true
	}
	var reasons []string
	kinds := map[string][]string{}
	for _, r := range plan.Joints {
		if r.Check != "" || !has[r.Kind] {
			continue
		}
		if kinds[r.Unchecked] == nil {
			reasons = append(reasons, r.Unchecked)
		}
		kinds[r.Unchecked] = append(kinds[r.Unchecked], h.Plan.InRoofWords(r.Many))
	}
	for _, why := range reasons {
		names := strings.Join(kinds[why], ", ")
		out = append(out, strings.ToUpper(names[:1])+names[1:]+": "+why+".")
	}
	return out
}

// nailsAssumed says what nails between members count, and what is taken as one
// piece without an order for its nails.
func nailsAssumed(a *analysis) string {
	s := "Nails between members count only as [nailing] orders them; toe-nails hold no uplift, nor do nails drawn out of end grain."
	if len(a.nails.Lines) == 0 {
		return s + " The plan orders none: plates, jacks, plies and all else are nailed by others, and nothing of it counts."
	}
	var open []string
	for _, m := range a.nails.Missing {
		open = append(open, fmt.Sprintf("%s (%d)", m.Row.One, m.Spots))
	}
	if len(open) == 0 {
		return s
	}
	return s + " Not ordered, and counted for nothing: " + strings.Join(open, ", ") + "."
}

// pliesAssumed says which plies are taken as one member though no line orders
// their nails.
func pliesAssumed(a *analysis) string {
	for _, m := range a.nails.Missing {
		if m.Row.Connection == plan.GirderPlies || m.Row.Connection == plan.HeaderPlies {
			return "Plies of girders, beams and headers are taken as one member although the plan orders no nails for all of them."
		}
	}
	return "Plies of girders, beams and headers act as one member by their ordered nails, whose own load is computed only of girders at their piles (" + pliesCheck + "), where straps do not reach all plies."
}

// sharesAssumed says how segments of one line share its force.
func sharesAssumed(p *plan.Plan) string {
	if p.Loads.Segments == plan.ByLength {
		return "Segments of one line share its force by counted length, as the plan asks, narrow ones with 2b/h."
	}
	return p.Project.Units.Words("Segments of one line share its force by stiffness: bending of end posts, panel shear with the lower Ga of plywood, and anchorage that stretches {1/8 in} at the segment's allowable shear (assumed; the maker's value belongs there); by counted length where a stiffness is not known.")
}

// wetWords names the members taken as wet: "piles, porch posts and girders".
func wetWords(p *plan.Plan) string {
	roles := p.Loads.Wet
	if roles == nil {
		roles = plan.WetRoles
	}
	words := make([]string, len(roles))
	for i, r := range roles {
		words[i] = string(r) + "s"
	}
	if p.Loads.Wet == nil && p.OpenUnderside() {
		words = append(words, "the rims, joists and blocking of the lowest floor over its open underside")
	}
	return strings.Join(words, " and ")
}
