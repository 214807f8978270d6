package symbols

// table holds one row a symbol: id, title, why, hardware or drafting mark,
// drawing function.
var table = []Entry{
	{
		"sym-clip", "clip",
		"a small angle that holds a rafter or stud to its plate: two legs at a right angle, a nail in each", true, clip,
	},
	{
		"sym-strap", "strap",
		"a flat band over a joint: nails at both ends, none over the joint between them", true, strap,
	},
	{
		"sym-wrap", "wrap strap",
		"a band bent over a plate: a hook with one long and one short leg, and the plate it holds", true, wrap,
	},
	{
		"sym-ridge-strap", "ridge strap",
		"a band over the ridge: two slopes meeting over the ridge board", true, ridgeStrap,
	},
	{
		"sym-long-strap", "long strap",
		"a band that passes a floor: two nailed ends with the floor's two faces between them", true, longStrap,
	},
	{
		"sym-coil", "coil strap",
		"a band cut from a roll: the roll seen from its side, the loose end leaving it", true, coil,
	},
	{
		"sym-hold-down", "hold-down",
		"a seat on the side of a stud with a rod down from it: back plate, gusset, seat, rod and nut", true, holdDown,
	},
	{
		"sym-hold-down-pair", "hold-down pair",
		"two bodies, one above the floor and one below, and the rod that joins them", true, holdDownPair,
	},
	{
		"sym-post-base", "post base",
		"a cup that keeps a post off what it stands on: cup, stem, foot", true, postBase,
	},
	{
		"sym-post-cap", "post cap",
		"a saddle for a beam on two plates that grip the post below", true, postCap,
	},
	{
		"sym-anchor", "anchor bolt",
		"a rod cast in with a hook at its foot, washer and nut on the sill above", true, anchor,
	},
	{
		"sym-collector", "collector",
		"a band that pulls along a line, both ways, across a break in the lumber: arrow heads and a gap", true, collector,
	},
	{
		"sym-hanger", "hanger",
		"a stirrup a joist sits in, hung by its two ears", true, hanger,
	},
	{
		"sym-sheathing", "shear panel nailing",
		"a panel with nails round its edge", true, sheathing,
	},
	{
		"sym-generic", "other hardware",
		"steel with one fastener and no shape of its own", true, generic,
	},
	{
		"sym-north", "north",
		"a needle, dark on one side so that it has a head even when it is faint, and the letter", false, north,
	},
	{
		"sym-needle", "north",
		"the needle of the north mark alone, for plans that lie turned: the letter stands upright beside it", false, needle,
	},
	{
		"sym-revision", "revision",
		"the triangle that common drafting practice puts round a revision's number", false, revision,
	},
	{
		"sym-view", "look this way",
		"where to stand and which way to look for the elevation named beside it: a wedge from a base line", false, viewArrow,
	},
	{
		"sym-splice", "plate splice",
		"a board cut through: two slanting strokes with a gap", false, splice,
	},
	{
		"sym-hole", "hole in subfloor",
		"a drilled hole with the cross by which it is laid out", false, hole,
	},
}
