package plan

// onWalls is the place of joints within a wall.
var onWalls = []JointPlace{{WallHost, ElevationSheet}}

// onRakes is the place of joints of gable overhangs.
var onRakes = []JointPlace{{RoofHost, RoofSheet}}

// carried are the parts of the uplift that a wall's uprights take.
var carried = []string{"from the plate, floor above included", "from the header", "from the stud above", "of the wall"}

// notYet is the reason of the kinds that framing finds and that no load check
// follows.
const notYet = "not checked yet: no load is followed through them, and ordinary nailing there counts for nothing"

// ofFloors is the reason of the joints around openings in floors.
const ofFloors = "they carry the floor's own weight and live load, which are not computed; wind brings no uplift to them but to joists on which walls stand off what is below (joist-uplift)"

// ofBeams is the reason of the joints of what carries a beam of a floor or ceiling.
const ofBeams = "they carry floors and ceilings down: what floors bring is compared with bearing and hangers there (beam-bearing), ceilings and roofs are not, and nothing is followed from a post inside to girders, piles or footings: size beam, hangers, bearing, posts and what is under them by the engineer of record; wind brings no uplift to them but where walls stand on joists over them, which is followed by lever to the walls at their ends and not compared at these, and the collector force of a beam in a shear wall's line is checked at the collector joint where it begins"

// ofOffGirders is the reason of what lies on girders: where those lie under the walls no load
// is followed through it.
const ofOffGirders = "no load is followed through them but where walls stand on joists off the girders, to which joists and the rims that run with them bring it (joist-girder-uplift), and ordinary nailing there counts for nothing"

// ofBraces is the reason of the ends of bracing between piles.
const ofBraces = "what braces carry is the engineer's: wind and flood, waves and debris on the piles are not computed, of two crossed braces the one in tension works, and nothing of them counts as capacity here"

// ofDecks is the reason of the joints of a porch's deck.
const ofDecks = "a porch's deck is not followed: wind on it from below and from the side, what lies and stands on it, and what leans on its rails are the engineer's; rails are no load path"

// byBending is the reason of the ends of cripples over headers.
const byBending = "a cripple that pieces tie at both its ends is checked with the plates over its opening (plate-bending), and one that they do not holds nothing there"

// Joints lists all kinds of joints, one row a kind, in the order of the load
// path. All packages read it; nothing else need be told of a kind that
// framing finds.
var Joints = []*JointRow{
	{
		Kind: RafterRidge, Code: "RR", One: "rafters at ridge", Many: "rafters at ridges",
		Doc:    "each rafter pair, or single rafter, at the ridge; each jack rafter at its hip or valley; of a dormer each jack at its valley board, each cut rafter and each rafter of a shed at a header, each header at a trimmer",
		Places: []JointPlace{{RoofHost, RoofSheet}, {DormerHost, RoofSheet}}, Lies: LiesOverRidge,
		Demand: []string{"across the ridge or on the beam"}, Check: "ridge-tie",
	},
	{
		Kind: FlyOutlooker, Code: "FO", One: "fly rafter to outlooker", Many: "fly rafters to outlookers",
		Doc:    "the fly rafter of a gable overhang to each outlooker that ends at it",
		Places: onRakes, Lies: LiesOnSlope,
		Demand: []string{"of half the overhang's width"}, Check: "overhang-uplift",
	},
	{
		Kind: OutlookerGable, Code: "OG", One: "outlooker to gable", Many: "outlookers to gables",
		Doc:    "each outlooker to the end rafter or gable truss that it passes over",
		Places: onRakes, Lies: LiesOnSlope,
		Demand: []string{"of the overhang, by its lever"}, Check: "overhang-uplift",
	},
	{
		Kind: OutlookerRafter, Code: "OR", One: "outlooker to rafter", Many: "outlookers to rafters",
		Doc:    "the inner end of each outlooker to the rafter or truss that it ends at",
		Places: onRakes, Lies: LiesOnSlope,
		Demand: []string{"of the roof over its inner end"}, Check: "overhang-uplift",
	},
	{
		Kind: RafterPlate, Code: "RP", One: "rafter to plate", Many: "rafters to plates",
		Doc:    "each rafter over each bearing plate",
		Places: []JointPlace{{WallHost, ElevationSheet}, {PorchHost, RoofSheet}, {DormerHost, RoofSheet}}, Shown: RoofSheet, Lies: LiesAtRafter,
		Demand: []string{"of the roof it carries"}, Check: "rafter-uplift",
	},
	{
		Kind: GirderPlate, Code: "TG", One: "girder truss to plate", Many: "girder trusses to plates",
		Doc:    "each girder truss over each bearing plate: it brings what hangs on it too",
		Places: []JointPlace{{WallHost, ElevationSheet}, {PorchHost, RoofSheet}}, Shown: RoofSheet, Lies: LiesAtRafter,
		Demand: []string{"of the roof it carries, and of what hangs on it"}, Check: "rafter-uplift",
	},
	{
		Kind: JackGirder, Code: "JT", One: "jack truss to girder truss", Many: "jack trusses to girder trusses",
		Doc:    "each jack truss and corner jack that ends at a girder truss",
		Places: []JointPlace{{RoofHost, RoofSheet}}, Lies: LiesStandalone,
		Demand: []string{"of the roof it carries"}, Check: "hung-uplift",
	},
	{
		Kind: JackCorner, Code: "JC", One: "jack truss to corner jack", Many: "jack trusses to corner jacks",
		Doc:    "each jack truss that ends at a corner jack",
		Places: []JointPlace{{RoofHost, RoofSheet}}, Lies: LiesStandalone,
		Demand: []string{"of the roof it carries"}, Check: "hung-uplift",
	},
	{
		Kind: ValleyTruss, Code: "VT", One: "valley frame to truss", Many: "valley frames to trusses",
		Doc:    "each frame of a valley set to each truss of the roof below that it stands on",
		Places: []JointPlace{{RoofHost, RoofSheet}}, Lies: LiesOver,
		Demand: []string{"of the roof it carries"}, Check: "hung-uplift",
	},
	{
		Kind: RafterLedger, Code: "RL", One: "rafter to ledger", Many: "rafters to ledgers",
		Doc:    "each rafter that ends at a ledger on a wall",
		Places: onWalls, Shown: RoofSheet, Lies: LiesAtRafter,
		Demand: []string{"of the roof it carries"}, Check: "rafter-uplift",
	},
	{
		Kind: LedgerWall, Code: "LW", One: "ledger to wall", Many: "ledgers to walls",
		Doc:    "each ledger at each full stud, or at the rim or plate, that it lies against",
		Places: onWalls, Shown: FloorSheet, Lies: LiesAgainst,
		Unchecked: notYet,
	},
	{
		Kind: GableStud, Code: "GT", One: "gable rafter to plate", Many: "gable rafters to plates",
		Doc:    "the end rafter or gable truss along a gable wall to the plate, at each full stud",
		Places: onWalls, Shown: RoofSheet, Lies: LiesOver,
		Unchecked: notYet,
	},
	{
		Kind: BoardRafter, Code: "VB", One: "valley board to rafter", Many: "valley boards to rafters",
		Doc:    "each valley board of a dormer to each rafter of the roof below that it lies on",
		Places: []JointPlace{{DormerHost, RoofSheet}}, Lies: LiesOnSlope,
		Demand: []string{"of the dormer's roof"}, Check: "dormer-uplift",
	},
	{
		Kind: DormerTop, Code: "DT", One: "dormer plate to stud", Many: "dormer plates to studs",
		Doc:    "the top plates of a dormer's walls to each stud, king and corner post from plate to plate; of a shed dormer's side walls the rafter over them to each stud",
		Places: []JointPlace{{DormerHost, DormerSheet}}, Lies: LiesToPlate,
		Demand: []string{"of the dormer's roof"}, Check: "dormer-uplift",
	},
	{
		Kind: DormerFoot, Code: "DF", One: "dormer stud to roof", Many: "dormer studs to roofs",
		Doc:    "each such stud to what the wall stands on: the trimmer, the lower header, the plates under the eave; of a shed dormer each rafter over a side wall to the trimmer that it comes down on",
		Places: []JointPlace{{DormerHost, DormerSheet}}, Lies: LiesUpright,
		Demand: []string{"of the dormer's roof"}, Check: "dormer-uplift",
	},
	{
		Kind: StudTop, Code: "ST", One: "stud to top plate", Many: "studs to top plates",
		Doc:    "each full stud, king and jack or header bearing to its top plate",
		Places: onWalls, Shown: FloorSheet, Lies: LiesToPlate,
		Demand: []string{"from the plate, floor above included"}, Check: "stud-top-uplift",
	},
	{
		Kind: OpeningHead, Code: "OH", One: "header end", Many: "header ends",
		Doc:    "each end of each header, king to header to plate",
		Places: onWalls, Shown: FloorSheet, Lies: LiesToPlate,
		Demand: carried, Check: "header-uplift",
	},
	{
		Kind: CripplePlate, Code: "CP", One: "cripple to plate", Many: "cripples to plates",
		Doc:    "each cripple over a header to the top plates",
		Places: onWalls, Shown: FloorSheet, Lies: LiesToPlate,
		Unchecked: byBending,
	},
	{
		Kind: CrippleHeader, Code: "CH", One: "cripple to header", Many: "cripples to headers",
		Doc:    "each cripple over a header to the header",
		Places: onWalls, Shown: FloorSheet, Lies: LiesUpright,
		Unchecked: byBending,
	},
	{
		Kind: HeaderKing, Code: "HK", One: "header to king", Many: "headers to kings",
		Doc:    "each end of each header to the king beside it",
		Places: onWalls, Shown: FloorSheet, Lies: LiesAlong,
		Unchecked: notYet,
	},
	{
		Kind: OpeningSill, Code: "OS", One: "sill end", Many: "sill ends",
		Doc:    "each end of each sill",
		Places: onWalls, Shown: FloorSheet, Lies: LiesAlong,
		Unchecked: "no uplift comes to a sill; wind on the window it carries is not computed",
	},
	{
		Kind: PlateSplice, Code: "PS", One: "plate splice", Many: "plate splices",
		Doc:    "each break in a top plate",
		Places: onWalls, Shown: FloorSheet, Lies: LiesAlong,
		Check: "chord-splice",
	},
	{
		Kind: Collector, Code: "CO", One: "collector", Many: "collectors",
		Doc:    "where a shear wall's line continues past its end",
		Places: onWalls, Lies: LiesAlong,
		Check: "collector",
	},
	{
		Kind: HeaderTrimmer, Code: "HT", One: "header joist to trimmer", Many: "header joists to trimmers",
		Doc:    "each end of the header joist of a floor opening to the trimmers there",
		Places: []JointPlace{{OpeningHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofFloors,
	},
	{
		Kind: TailHeader, Code: "TH", One: "tail joist to header", Many: "tail joists to headers",
		Doc:    "each joist that ends at the header joist of a floor opening",
		Places: []JointPlace{{OpeningHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofFloors,
	},
	{
		Kind: BeamEnd, Code: "BE", One: "beam end", Many: "beam ends",
		Doc:    "each end of each beam of a floor or ceiling to the plate or upright that it is hung from",
		Places: onWalls, Shown: FloorSheet, Lies: LiesAlong,
		Unchecked: ofBeams,
	},
	{
		Kind: BeamSeat, Code: "BS", One: "beam on plate", Many: "beams on plates",
		Doc:    "each flush beam to each wall's plates that it lies on",
		Places: onWalls, Shown: FloorSheet, Lies: LiesOver,
		Unchecked: ofBeams,
	},
	{
		Kind: BeamHung, Code: "BH", One: "beam to beam", Many: "beams to beams",
		Doc:    "each end of each beam of a floor or ceiling that hangs on the face of another",
		Places: []JointPlace{{BeamHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofBeams,
	},
	{
		Kind: JoistHung, Code: "JH", One: "joist to flush beam", Many: "joists to flush beams",
		Doc:    "each joist that ends at the face of a flush beam",
		Places: []JointPlace{{BeamHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofFloors,
	},
	{
		Kind: JoistBeam, Code: "JB", One: "joist over dropped beam", Many: "joists over dropped beams",
		Doc:    "each joist of floor or ceiling that lies on a dropped beam",
		Places: []JointPlace{{BeamHost, FloorSheet}}, Lies: LiesOver,
		Unchecked: ofFloors,
	},
	{
		Kind: JoistPlate, Code: "JP", One: "joist to plate", Many: "joists to plates",
		Doc:    "where a wall stands on joists off the walls below: each joist there, and the rim that runs with them, to each wall's plates that it lies on",
		Places: onWalls, Shown: FloorSheet, Lies: LiesOver,
		Demand: []string{"of the walls on the joists, by lever"}, Check: "joist-uplift",
	},
	{
		Kind: BeamToPost, Code: "BP", One: "beam to post inside", Many: "beams to posts inside",
		Doc:    "each post under a beam of a floor or ceiling to the beam",
		Places: []JointPlace{{BeamHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofBeams,
	},
	{
		Kind: BeamPostBase, Code: "PF", One: "foot of post inside", Many: "feet of posts inside",
		Doc:    "each post under a beam of a floor or ceiling to the floor that it stands on",
		Places: []JointPlace{{BeamHost, FloorSheet}}, Lies: LiesStandalone,
		Unchecked: ofBeams,
	},
	{
		Kind: WallCorner, Code: "WC", One: "corner", Many: "corners",
		Doc:    "where walls meet",
		Places: onWalls, Shown: FloorSheet, Lies: LiesRound,
		Unchecked: "chord and drag forces are not followed round corners",
	},
	{
		Kind: StudStud, Code: "SS", One: "stud to stud", Many: "studs to studs",
		Doc:    "a stud over the stud below, through the floor",
		Places: onWalls, Shown: FloorSheet, Lies: LiesUpright,
		Demand: carried, Check: "story-uplift",
	},
	{
		Kind: WallEnd, Code: "WE", One: "shear wall end", Many: "shear wall ends",
		Doc:    "each end of each shear wall segment, each level",
		Places: onWalls, Shown: FloorSheet, Lies: LiesUpright,
		Check: "overturning",
	},
	{
		Kind: StudBase, Code: "SB", One: "stud base", Many: "stud bases",
		Doc:    "each full stud, king and jack to the floor or stringer below",
		Places: onWalls, Shown: FloorSheet, Lies: LiesUpright,
		Demand: carried, Check: "base-uplift",
	},
	{
		Kind: SoleRim, Code: "SR", One: "bottom plate to floor", Many: "bottom plates to floors",
		Doc:    "the bottom plate to the rim or joist under the subfloor, at each full stud",
		Places: onWalls, Shown: FloorSheet, Lies: LiesOver,
		Unchecked: notYet,
	},
	{
		Kind: RimGirder, Code: "RG", One: "rim to girder", Many: "rims to girders",
		Doc:    "the lowest rim to the girder along under it, at each full stud, and to each that it crosses",
		Places: onWalls, Shown: FloorSheet, Lies: LiesOver,
		Unchecked: ofOffGirders,
	},
	{
		Kind: JoistGirder, Code: "JG", One: "joist to girder", Many: "joists to girders",
		Doc:    "each joist over each girder or stringer",
		Places: []JointPlace{{GirderHost, FoundationSheet}}, Lies: LiesOver,
		Unchecked: ofOffGirders,
	},
	{
		Kind: SillFoundation, Code: "SF", One: "sill plate to foundation", Many: "sill plates to foundation",
		Doc:    "each piece of sill plate near both its ends and at each bay between the studs, under doors too where the plate runs on",
		Places: onWalls, Shown: FoundationSheet, Lies: LiesUpright,
		Check: "sill-anchors",
	},
	{
		Kind: PostCap, Code: "PC", One: "beam to post", Many: "beams to posts",
		Doc:    "each porch post to its beam, each post under a ridge to the ridge",
		Places: []JointPlace{{PorchHost, FoundationSheet}, {RoofHost, RoofSheet}}, Lies: LiesStandalone,
		Demand: []string{"from the beam"}, Check: "porch-cap-uplift",
	},
	{
		Kind: PostBase, Code: "PB", One: "post base", Many: "post bases",
		Doc:    "each porch post to its footing or pile, each post under a ridge to its footing",
		Places: []JointPlace{{PorchHost, FoundationSheet}, {RoofHost, FoundationSheet}}, Lies: LiesStandalone,
		Demand: []string{"from the beam"}, Check: "porch-base-uplift",
	},
	{
		Kind: DeckHung, Code: "DH", One: "hung deck joist", Many: "hung deck joists",
		Doc:    "each end of a porch deck's joist or girder that is hung: from the ledger on the house, the doubled joist or the girder past a corner",
		Places: []JointPlace{{PorchHost, FoundationSheet}}, Lies: LiesStandalone,
		Unchecked: ofDecks,
	},
	{
		Kind: DeckOver, Code: "DG", One: "deck joist on girder", Many: "deck joists on girders",
		Doc:    "each joist of a porch's deck over its outer girder",
		Places: []JointPlace{{PorchHost, FoundationSheet}}, Lies: LiesOver,
		Unchecked: ofDecks,
	},
	{
		Kind: DeckPost, Code: "DP", One: "deck girder to post", Many: "deck girders to posts",
		Doc:    "each girder of a porch's deck to each post that it lies against",
		Places: []JointPlace{{PorchHost, FoundationSheet}}, Lies: LiesStandalone,
		Unchecked: ofDecks,
	},
	{
		Kind: GirderSplice, Code: "GX", One: "girder splice", Many: "girder splices",
		Doc:    "each break in a girder",
		Places: []JointPlace{{GirderHost, FoundationSheet}}, Lies: LiesAlong,
		Unchecked: notYet,
	},
	{
		Kind: GirderPile, Code: "GP", One: "girder to pile", Many: "girders to piles",
		Doc:    "each girder or stringer over a pile",
		Places: []JointPlace{{GirderHost, FoundationSheet}}, Lies: LiesStandalone,
		Demand: []string{"from walls and joists", "", "", "dead load of the lowest floor"}, Check: "girder-pile-uplift",
	},
	{
		Kind: BraceEnd, Code: "BR", One: "brace to pile", Many: "braces to piles",
		Doc:    "each end of each brace of boards between piles, and of each knee brace, to the pile or girder it lies on",
		Places: []JointPlace{{GirderHost, FoundationSheet}}, Lies: LiesAgainst,
		Unchecked: ofBraces,
	},
	{
		Kind: BraceRod, Code: "RB", One: "rod between piles", Many: "rods between piles",
		Doc:    "each rod of crossed bracing, through the two piles that it braces",
		Places: []JointPlace{{GirderHost, FoundationSheet}}, Lies: LiesAgainst,
		Unchecked: ofBraces,
	},
}
