package hardware

import (
	"galewright/plan/framing"
)

// Shape says how a piece lies on the wood, so that placement can give it its
// true line in space.
type Shape uint8

// The shapes.
const (
	Body  Shape = iota // a clip, base, cap or hanger: one place
	Band               // a flat strap with two lapped ends
	Over               // a strap that goes over a plate, a ridge or a rafter
	Rod                // a bolt or rod through wood
	Pair               // two bodies joined by a rod
	Sheet              // sheathing: counted by area, not placed
)

// Kind is the kind of a catalog item.
type Kind struct {
	Name    string         // as the plan writes it
	Code    string         // the word a tag ends with; short, stable
	Doc     string         // what the piece does, one clause
	Purpose string         // two rules of one purpose compete at a joint
	On      []framing.Kind // joint kinds it belongs at, the usual first
	Symbol  string         // id in package symbols
	Strap   bool           // a band with two lapped ends, drawn to length
	Shape   Shape
	Phase   string // when it goes on, unless the item says
	// Face is where it goes, unless rule or item says. Where Face is "" it
	// takes the first of Faces that is free; there "" means the free side of
	// an upright, or for what goes over a plate down both faces.
	Face  string
	Faces []string
}

// Phase says when a piece goes on.
type Phase struct {
	Name string // "before floor", "before sheathing", "after sheathing", "inside"
	Doc  string
}

// Phases lists the phases in the order of work.
var Phases = []*Phase{
	{"before floor", "before the subfloor closes what is below it"},
	{"before sheathing", "on bare studs, before the wall is sheathed"},
	{"after sheathing", "from outside, over the sheathing"},
	{"inside", "from inside, before the walls are closed"},
}

// clipFaces are the faces a clip may take: a side of its member, else a face
// of the wall.
var clipFaces = []string{"", "left", "right", "inside", "outside"}

// Kinds lists the kinds of hardware in the order of the load path.
var Kinds = []*Kind{
	{
		Name: "clip", Code: "clip", Doc: "holds the angle between two members that cross", Purpose: "clip",
		On:     []framing.Kind{framing.RafterPlate, framing.StudTop, framing.StudBase, framing.OpeningSill, framing.RafterRidge, framing.OpeningHead},
		Symbol: "sym-clip", Phase: "before sheathing", Faces: clipFaces,
	},
	{
		Name: "ridge strap", Code: "ridge", Doc: "goes over the ridge and ties opposing rafters", Purpose: "strap",
		On:     []framing.Kind{framing.RafterRidge},
		Symbol: "sym-ridge-strap", Strap: true, Shape: Over, Phase: "before sheathing", Face: "top",
	},
	{
		Name: "wrap strap", Code: "wrap", Doc: "goes over a plate or rafter and down both faces", Purpose: "strap",
		On:     []framing.Kind{framing.StudTop, framing.RafterPlate, framing.OpeningHead},
		Symbol: "sym-wrap", Strap: true, Shape: Over, Phase: "before sheathing", Faces: []string{"", "inside", "outside"},
	},
	{
		Name: "opening strap", Code: "head", Doc: "ties a header's end up over the plate and down the king", Purpose: "strap",
		On:     []framing.Kind{framing.OpeningHead},
		Symbol: "sym-wrap", Strap: true, Shape: Over, Phase: "before sheathing", Faces: []string{"", "inside", "outside"},
	},
	{
		Name: "strap", Code: "strap", Doc: "a flat band lapped on two members in line", Purpose: "strap",
		On: []framing.Kind{
			framing.StudStud, framing.StudBase, framing.PlateSplice, framing.WallCorner, framing.WallEnd,
			framing.OpeningHead, framing.OpeningSill, framing.RafterPlate, framing.RafterRidge, framing.StudTop, framing.GirderPile, framing.PostCap, framing.PostBase,
		},
		Symbol: "sym-strap", Strap: true, Shape: Band, Phase: "before sheathing", Face: "outside",
	},
	{
		Name: "coil strap", Code: "coil", Doc: "a flat band cut to length from a roll", Purpose: "strap",
		On: []framing.Kind{
			framing.StudStud, framing.StudBase, framing.PlateSplice, framing.WallCorner, framing.WallEnd,
			framing.OpeningHead, framing.OpeningSill, framing.RafterRidge, framing.StudTop, framing.Collector,
		},
		Symbol: "sym-coil", Strap: true, Shape: Band, Phase: "before sheathing", Face: "outside",
	},
	{
		Name: "long strap", Code: "long", Doc: "a long flat band where the engineer asks for one; from inside it goes through a hole in the subfloor", Purpose: "strap",
		On:     []framing.Kind{framing.StudStud, framing.WallEnd, framing.StudBase},
		Symbol: "sym-long-strap", Strap: true, Shape: Band, Phase: "before floor", Faces: []string{"inside", "outside", "left", "right"},
	},
	{
		Name: "hold-down", Code: "hold-down", Doc: "one body that holds a post down to what is below by a rod", Purpose: "hold-down",
		On:     []framing.Kind{framing.WallEnd, framing.StudBase},
		Symbol: "sym-hold-down", Phase: "inside", Faces: []string{"", "left", "right"},
	},
	{
		Name: "hold-down pair", Code: "pair", Doc: "two bodies, above and below a floor, joined by a rod", Purpose: "hold-down",
		On:     []framing.Kind{framing.WallEnd, framing.StudStud, framing.StudBase},
		Symbol: "sym-hold-down-pair", Shape: Pair, Phase: "inside", Faces: []string{"", "left", "right"},
	},
	{
		Name: "collector strap", Code: "collector", Doc: "carries a shear wall's line on into a truss, joist or beam", Purpose: "collector",
		On:     []framing.Kind{framing.Collector, framing.PlateSplice},
		Symbol: "sym-collector", Strap: true, Shape: Band, Phase: "inside", Faces: []string{"top", "inside", "outside"},
	},
	{
		Name: "anchor bolt", Code: "anchor", Doc: "holds a sill plate down to what is below", Purpose: "anchor",
		On:     []framing.Kind{framing.StudBase, framing.WallEnd, framing.GirderPile, framing.PostBase},
		Symbol: "sym-anchor", Shape: Rod, Phase: "before floor", Face: "through",
	},
	{
		Name: "anchor rod", Code: "rod", Doc: "a threaded rod with nut and washer", Purpose: "anchor",
		On:     []framing.Kind{framing.WallEnd, framing.StudBase, framing.GirderPile, framing.PostBase},
		Symbol: "sym-anchor", Shape: Rod, Phase: "before floor", Face: "through",
	},
	{
		Name: "post base", Code: "base", Doc: "stands a post off and holds it down", Purpose: "post base",
		On:     []framing.Kind{framing.PostBase, framing.GirderPile},
		Symbol: "sym-post-base", Phase: "before floor",
	},
	{
		Name: "post cap", Code: "cap", Doc: "holds a beam on a post", Purpose: "post cap",
		On:     []framing.Kind{framing.PostCap, framing.GirderPile},
		Symbol: "sym-post-cap", Phase: "before floor",
	},
	{
		Name: "hanger", Code: "hanger", Doc: "carries the end of a member against the side of another", Purpose: "hanger",
		On:     []framing.Kind{framing.RafterRidge, framing.OpeningHead, framing.Collector},
		Symbol: "sym-hanger", Phase: "before floor",
	},
	{
		Name: "sheathing", Code: "sheathing", Doc: "panels of a shear wall with their edge and field nailing", Purpose: "sheathing",
		Symbol: "sym-sheathing", Shape: Sheet, Phase: "after sheathing",
	},
	{
		Name: "generic", Code: "piece", Doc: "anything else that is nailed or bolted at a joint", Purpose: "generic",
		Symbol: "sym-generic", Phase: "before sheathing", Faces: clipFaces,
	},
}

// KindNamed returns the kind with the name, or nil.
func KindNamed(name string) *Kind {
	for _, k := range Kinds {
		if k.Name == name {
			return k
		}
	}
	return nil
}

// PhaseNamed returns the phase with the name, or nil.
func PhaseNamed(name string) *Phase {
	for _, p := range Phases {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// Order returns the place of p in the order of work, from 0.
func (p *Phase) Order() int {
	for i, q := range Phases {
		if q == p {
			return i
		}
	}
	return len(Phases)
}

// Belongs tells whether items of kind k go at joints of kind j.
func (k *Kind) Belongs(j framing.Kind) bool {
	if k.Shape == Sheet {
		return false
	}
	for _, x := range k.On {
		if x == j {
			return true
		}
	}
	return len(k.On) == 0
}
