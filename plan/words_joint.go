package plan

// JointKind is the kind of a joint.
type JointKind string

// The kinds of joints.
const (
	RafterPlate JointKind = "rafter-plate"
	RafterRidge JointKind = "rafter-ridge"
	StudTop     JointKind = "stud-top"
	StudBase    JointKind = "stud-base"
	StudStud    JointKind = "stud-stud"
	OpeningHead JointKind = "opening-head"
	OpeningSill JointKind = "opening-sill"
	WallEnd     JointKind = "wall-end"
	WallCorner  JointKind = "wall-corner"
	Collector   JointKind = "collector"
	PlateSplice JointKind = "plate-splice"
	GirderPile  JointKind = "girder-pile"
	PostBase    JointKind = "post-base"
	PostCap     JointKind = "post-cap"
	BeamEnd     JointKind = "beam-end"

	RafterLedger  JointKind = "rafter-ledger"
	LedgerWall    JointKind = "ledger-wall"
	GableStud     JointKind = "gable-stud"
	HeaderKing    JointKind = "header-king"
	CripplePlate  JointKind = "cripple-plate"
	CrippleHeader JointKind = "cripple-header"
	SoleRim       JointKind = "sole-rim"
	RimGirder     JointKind = "rim-girder"
	JoistGirder   JointKind = "joist-girder"
	GirderSplice  JointKind = "girder-splice"
	BraceEnd      JointKind = "brace-end"
	BraceRod      JointKind = "brace-rod"

	HeaderTrimmer JointKind = "header-trimmer"
	TailHeader    JointKind = "tail-header"

	JoistBeam    JointKind = "joist-beam"
	JoistHung    JointKind = "joist-hung"
	JoistPlate   JointKind = "joist-plate"
	BeamSeat     JointKind = "beam-seat"
	BeamHung     JointKind = "beam-hung"
	BeamToPost   JointKind = "beam-post"
	BeamPostBase JointKind = "beam-post-base"

	DeckHung JointKind = "deck-hung"
	DeckOver JointKind = "deck-over"
	DeckPost JointKind = "deck-post"

	SillFoundation JointKind = "sill-foundation"

	GirderPlate JointKind = "girder-plate"
	JackGirder  JointKind = "jack-girder"
	JackCorner  JointKind = "jack-corner"
	ValleyTruss JointKind = "valley-truss"

	OutlookerGable  JointKind = "outlooker-gable"
	OutlookerRafter JointKind = "outlooker-rafter"
	FlyOutlooker    JointKind = "fly-outlooker"

	DormerTop   JointKind = "dormer-top"
	DormerFoot  JointKind = "dormer-foot"
	BoardRafter JointKind = "board-rafter"
)

// OnPlate tells whether joints of a kind hold rafters or trusses to the plates under them.
func (k JointKind) OnPlate() bool { return k == RafterPlate || k == GirderPlate }
