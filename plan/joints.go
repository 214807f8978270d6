package plan

// JointHost is what the stations of a joint run along.
type JointHost string

// The hosts.
const (
	WallHost    JointHost = "wall"
	RoofHost    JointHost = "roof"
	GirderHost  JointHost = "girder"
	PorchHost   JointHost = "porch"
	OpeningHost JointHost = "floor opening"
	BeamHost    JointHost = "beam"
	DormerHost  JointHost = "dormer"
)

// JointHosts are the hosts of joints.
var JointHosts = []JointHost{WallHost, RoofHost, GirderHost, PorchHost, OpeningHost, BeamHost, DormerHost}

// JointSheet is a kind of sheet on which pieces are drawn.
type JointSheet string

// The sheets.
const (
	ElevationSheet  JointSheet = "elevation"
	FloorSheet      JointSheet = "floor plan"
	RoofSheet       JointSheet = "roof plan"
	DormerSheet     JointSheet = "dormer elevation"
	FoundationSheet JointSheet = "foundation plan"
)

// JointSheets are the sheets that may show a piece and be its home, where it is
// counted; a floor plan is that of pieces within its floor.
var JointSheets = []JointSheet{ElevationSheet, FloorSheet, RoofSheet, DormerSheet, FoundationSheet}

// JointLie is how hardware lies on the wood at a joint: placement has one way
// for each to lay a flat band, a strap that goes over something and a body.
type JointLie string

// The ways to lie.
const (
	LiesUpright    JointLie = "upright"    // on an upright, over what is below it
	LiesToPlate    JointLie = "to plate"   // on an upright, up on the plates over it
	LiesAlong      JointLie = "along"      // level along the wall
	LiesRound      JointLie = "round"      // level round a corner of two walls
	LiesAtRafter   JointLie = "at rafter"  // beside or over a rafter on its plate
	LiesOverRidge  JointLie = "over ridge" // down the slope on both sides
	LiesStandalone JointLie = "standalone" // upright beside a beam and what carries it, off the walls
	LiesOver       JointLie = "over"       // upright at one place of a long member that lies over another
	LiesAgainst    JointLie = "against"    // through two members that lie face to face
	LiesOnSlope    JointLie = "on slope"   // in the angle between an outlooker and what lies across it, in the roof's slope
)

// JointLies are the ways to lie.
var JointLies = []JointLie{LiesUpright, LiesToPlate, LiesAlong, LiesRound, LiesAtRafter, LiesOverRidge, LiesStandalone, LiesOver, LiesAgainst, LiesOnSlope}

// JointPlace is one host of a kind of joint, and the sheet that counts the
// pieces there.
type JointPlace struct {
	Host JointHost
	Home JointSheet
}

// JointRow is what all packages know of one kind of joint.
type JointRow struct {
	Kind      JointKind
	Code      string // two letters for it in a tag
	One, Many string // in a framer's words, one and several
	Doc       string // where it is, one clause
	// Places are its hosts. A wall is the host where the joint names one,
	// else the next is.
	Places []JointPlace
	Shown  JointSheet // the plan that shows its pieces beside their home, "" for none
	Lies   JointLie
	// Demand names the parts of the force at it, in their order in package
	// loadpath; "" for a part that it has not.
	Demand []string
	// Check is the ID of the load check that looks at it. Where there is none,
	// Unchecked says why: it is printed with what was not checked.
	Check, Unchecked string
}

// Lacks tells what a row leaves out, "" when it is whole.
func (r *JointRow) Lacks() string {
	switch {
	case r.Kind == "" || len(r.Code) != 2 || r.Doc == "":
		return "kind, two letters and a clause"
	case r.One == "" || r.Many == "":
		return "its words, one and several"
	case len(r.Places) == 0:
		return "a host with its home sheet"
	case r.Lies == "":
		return "how hardware lies there"
	case (r.Check == "") == (r.Unchecked == ""):
		return "either a load check or the reason for none"
	}
	return ""
}

// Row returns what is known of k, or nil for an unknown kind.
func (k JointKind) Row() *JointRow {
	for _, r := range Joints {
		if r.Kind == k {
			return r
		}
	}
	return nil
}

// Code returns the two letters of k, or "" for an unknown kind.
func (k JointKind) Code() string {
	if r := k.Row(); r != nil {
		return r.Code
	}
	return ""
}

// Lies returns how hardware lies at a joint of kind k, or "" for an unknown
// kind.
func (k JointKind) Lies() JointLie {
	if r := k.Row(); r != nil {
		return r.Lies
	}
	return ""
}

// Shown returns the plan that shows pieces at joints of kind k beside their
// home.
func (k JointKind) Shown() JointSheet {
	if r := k.Row(); r != nil {
		return r.Shown
	}
	return ""
}

// Place returns the host of a joint of kind k and its home sheet: a wall's
// where the joint has one. It is empty for an unknown kind, and where a kind
// that has walls alone for hosts has none.
func (k JointKind) Place(onWall bool) JointPlace {
	if r := k.Row(); r != nil {
		for _, p := range r.Places {
			if p.Host != WallHost || onWall {
				return p
			}
		}
	}
	return JointPlace{}
}

// At returns the place of joints of kind k on a host, and whether they stand there.
func (k JointKind) At(h JointHost) (JointPlace, bool) {
	if r := k.Row(); r != nil {
		for _, p := range r.Places {
			if p.Host == h {
				return p, true
			}
		}
	}
	return JointPlace{}, false
}

// JointKinds returns the kinds of joints in the order of Joints.
func JointKinds() []JointKind {
	out := make([]JointKind, len(Joints))
	for i, j := range Joints {
		out[i] = j.Kind
	}
	return out
}
