package hardware

import (
	"galewright/plan"
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
	Name    plan.ItemKind
	Code    string           // the word a tag ends with; short, stable
	Doc     string           // what the piece does, one clause
	Purpose string           // two rules of one purpose compete at a joint
	On      []plan.JointKind // joint kinds it belongs at, the usual first
	Symbol  string           // id in package symbols
	Strap   bool             // a band with two lapped ends, drawn to length
	Shape   Shape
	Phase   plan.Phase // when it goes on, unless the item says
	// Face is where it goes, unless rule or item says. Where Face is "" it
	// takes the first of Faces that is free; there "" means the free side of
	// an upright, or for what goes over a plate down both faces.
	Face  plan.Face
	Faces []plan.Face
}

// Phase says when a piece goes on.
type Phase struct {
	Name plan.Phase
	Doc  string
}

// Phases lists the phases in the order of work.
var Phases = []*Phase{
	{plan.BeforeFloor, "before the subfloor closes what is below it"},
	{plan.BeforeSheathing, "on bare studs, before the wall is sheathed"},
	{plan.AfterSheathing, "from outside, over the sheathing"},
	{plan.FromInside, "from inside, before the walls are closed"},
}

// clipFaces are the faces a clip may take: a side of its member, else a face
// of the wall.
var clipFaces = []plan.Face{"", plan.Left, plan.Right, plan.Inside, plan.Outside}

// Kinds lists the kinds of hardware in the order of the load path.
var Kinds = []*Kind{
	{
		Name: plan.ClipItem, Code: "clip", Doc: "ties two members that cross, at the corner between them", Purpose: "clip",
		On: []plan.JointKind{
			plan.RafterPlate, plan.GirderPlate, plan.StudTop, plan.StudBase, plan.OpeningSill, plan.RafterRidge, plan.OpeningHead,
			plan.RafterLedger, plan.GableStud, plan.CripplePlate, plan.CrippleHeader, plan.HeaderKing, plan.SoleRim, plan.RimGirder, plan.JoistGirder, plan.JoistBeam, plan.JoistPlate, plan.BeamSeat,
			plan.OutlookerGable, plan.OutlookerRafter, plan.FlyOutlooker, plan.DeckOver, plan.DormerTop, plan.DormerFoot, plan.BoardRafter, plan.ValleyTruss,
		},
		Symbol: "sym-clip", Phase: plan.BeforeSheathing, Faces: clipFaces,
	},
	{
		Name: plan.RidgeStrapItem, Code: "ridge", Doc: "goes over the ridge and ties opposing rafters", Purpose: "strap",
		On:     []plan.JointKind{plan.RafterRidge},
		Symbol: "sym-ridge-strap", Strap: true, Shape: Over, Phase: plan.BeforeSheathing, Face: plan.Top,
	},
	{
		Name: plan.WrapStrapItem, Code: "wrap", Doc: "goes over a plate or rafter and down both faces", Purpose: "strap",
		On:     []plan.JointKind{plan.StudTop, plan.RafterPlate, plan.GirderPlate, plan.OpeningHead, plan.CripplePlate},
		Symbol: "sym-wrap", Strap: true, Shape: Over, Phase: plan.BeforeSheathing, Faces: []plan.Face{"", plan.Inside, plan.Outside},
	},
	{
		Name: plan.OpeningStrapItem, Code: "head", Doc: "ties a header's end up over the plate and down the king", Purpose: "strap",
		On:     []plan.JointKind{plan.OpeningHead},
		Symbol: "sym-wrap", Strap: true, Shape: Over, Phase: plan.BeforeSheathing, Faces: []plan.Face{"", plan.Inside, plan.Outside},
	},
	{
		Name: plan.StrapItem, Code: "strap", Doc: "a flat band lapped on two members in line", Purpose: "strap",
		On: []plan.JointKind{
			plan.StudStud, plan.StudBase, plan.PlateSplice, plan.WallCorner, plan.WallEnd,
			plan.OpeningHead, plan.OpeningSill, plan.RafterPlate, plan.GirderPlate, plan.RafterRidge, plan.StudTop, plan.GirderPile, plan.PostCap,
			plan.RafterLedger, plan.GableStud, plan.CripplePlate, plan.CrippleHeader, plan.HeaderKing, plan.SoleRim, plan.RimGirder, plan.GirderSplice, plan.DormerTop, plan.DormerFoot,
		},
		Symbol: "sym-strap", Strap: true, Shape: Band, Phase: plan.BeforeSheathing, Face: plan.Outside,
	},
	{
		Name: plan.CoilStrapItem, Code: "coil", Doc: "a flat band cut to length from a roll", Purpose: "strap",
		On: []plan.JointKind{
			plan.StudStud, plan.StudBase, plan.PlateSplice, plan.WallCorner, plan.WallEnd,
			plan.OpeningHead, plan.OpeningSill, plan.RafterRidge, plan.StudTop, plan.Collector,
			plan.GableStud, plan.CripplePlate, plan.CrippleHeader, plan.HeaderKing, plan.SoleRim, plan.RimGirder, plan.GirderSplice, plan.DormerTop, plan.DormerFoot,
		},
		Symbol: "sym-coil", Strap: true, Shape: Band, Phase: plan.BeforeSheathing, Face: plan.Outside,
	},
	{
		Name: plan.LongStrapItem, Code: "long", Doc: "a long flat band where the engineer asks for one; it goes through holes in the floor and the plates that are in its way", Purpose: "strap",
		On:     []plan.JointKind{plan.StudStud, plan.WallEnd, plan.StudBase},
		Symbol: "sym-long-strap", Strap: true, Shape: Band, Phase: plan.BeforeFloor, Faces: []plan.Face{plan.Inside, plan.Outside, plan.Left, plan.Right},
	},
	{
		Name: plan.HoldDownItem, Code: "hold-down", Doc: "one body that ties a post to what is below with a rod", Purpose: "hold-down",
		On:     []plan.JointKind{plan.WallEnd, plan.StudBase},
		Symbol: "sym-hold-down", Phase: plan.FromInside, Faces: []plan.Face{"", plan.Left, plan.Right},
	},
	{
		Name: plan.HoldDownPairItem, Code: "pair", Doc: "two bodies, above and below a floor, joined by a rod", Purpose: "hold-down",
		On:     []plan.JointKind{plan.WallEnd, plan.StudStud, plan.StudBase},
		Symbol: "sym-hold-down-pair", Shape: Pair, Phase: plan.FromInside, Faces: []plan.Face{"", plan.Left, plan.Right},
	},
	{
		Name: plan.CollectorStrapItem, Code: "collector", Doc: "carries the force of a shear wall's line into a truss, joist, beam or wall", Purpose: "collector",
		On:     []plan.JointKind{plan.Collector, plan.PlateSplice},
		Symbol: "sym-collector", Strap: true, Shape: Band, Phase: plan.FromInside, Faces: []plan.Face{plan.Top, plan.Inside, plan.Outside},
	},
	{
		Name: plan.AnchorBoltItem, Code: "anchor", Doc: "holds a sill plate down to what is below, or a girder to its pile", Purpose: "anchor",
		On:     []plan.JointKind{plan.StudBase, plan.WallEnd, plan.GirderPile, plan.PostBase, plan.LedgerWall, plan.SillFoundation, plan.BraceEnd, plan.DeckPost},
		Symbol: "sym-anchor", Shape: Rod, Phase: plan.BeforeFloor, Face: plan.Through,
	},
	{
		Name: plan.AnchorRodItem, Code: "rod", Doc: "a threaded rod with nut and washer", Purpose: "anchor",
		On:     []plan.JointKind{plan.WallEnd, plan.StudBase, plan.GirderPile, plan.PostBase, plan.SillFoundation},
		Symbol: "sym-anchor", Shape: Rod, Phase: plan.BeforeFloor, Face: plan.Through,
	},
	{
		Name: plan.BraceRodItem, Code: "brace", Doc: "a threaded rod through two piles, cut to length, with beveled washers and nuts", Purpose: "brace",
		On:     []plan.JointKind{plan.BraceRod},
		Symbol: "sym-anchor", Shape: Rod, Phase: plan.BeforeFloor, Face: plan.Through,
	},
	{
		Name: plan.PostBaseItem, Code: "base", Doc: "holds a post down, clear of what it stands on", Purpose: "post base",
		On:     []plan.JointKind{plan.PostBase, plan.BeamPostBase, plan.GirderPile},
		Symbol: "sym-post-base", Phase: plan.BeforeFloor,
	},
	{
		Name: plan.PostCapItem, Code: "cap", Doc: "ties a beam to its post", Purpose: "post cap",
		On:     []plan.JointKind{plan.PostCap, plan.BeamToPost, plan.GirderPile},
		Symbol: "sym-post-cap", Phase: plan.BeforeFloor,
	},
	{
		Name: plan.HangerItem, Code: "hanger", Doc: "carries the end of a member against the side of another", Purpose: "hanger",
		On:     []plan.JointKind{plan.RafterRidge, plan.OpeningHead, plan.Collector, plan.RafterLedger, plan.HeaderKing, plan.HeaderTrimmer, plan.TailHeader, plan.BeamEnd, plan.BeamHung, plan.JoistHung, plan.DeckHung, plan.JackGirder, plan.JackCorner},
		Symbol: "sym-hanger", Phase: plan.BeforeFloor,
	},
	{
		Name: plan.SheathingItem, Code: "sheathing", Doc: "panels of a shear wall with their edge and field nailing", Purpose: "sheathing",
		Symbol: "sym-sheathing", Shape: Sheet, Phase: plan.AfterSheathing,
	},
	{
		Name: plan.GenericItem, Code: "piece", Doc: "anything else that is nailed or bolted at a joint", Purpose: "generic",
		Symbol: "sym-generic", Phase: plan.BeforeSheathing, Faces: clipFaces,
	},
}

// bodies are the bodies of the kinds that have some.
var bodies = map[plan.ItemKind]int{plan.HoldDownItem: 1, plan.HoldDownPairItem: 2}

// KindNamed returns the kind with the name, or nil.
func KindNamed(name plan.ItemKind) *Kind {
	for _, k := range Kinds {
		if k.Name == name {
			return k
		}
	}
	return nil
}

// PhaseNamed returns the phase with the name, or nil.
func PhaseNamed(name plan.Phase) *Phase {
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
func (k *Kind) Belongs(j plan.JointKind) bool {
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
