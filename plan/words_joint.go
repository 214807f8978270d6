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
)

// Joints lists all joint kinds in the order of the load path, with the two
// letters that stand for each in a tag.
var Joints = []struct {
	Kind JointKind
	Code string
	Doc  string
}{
	{RafterRidge, "RR", "each rafter pair, or single rafter, at the ridge; each jack rafter at its hip or valley"},
	{RafterPlate, "RP", "each rafter over each bearing plate"},
	{StudTop, "ST", "each full stud, king and jack or header bearing to its top plate"},
	{OpeningHead, "OH", "each end of each header, king to header to plate"},
	{OpeningSill, "OS", "each end of each sill"},
	{PlateSplice, "PS", "each break in a top plate"},
	{Collector, "CO", "where a shear wall's line continues past its end"},
	{WallCorner, "WC", "where walls meet"},
	{StudStud, "SS", "a stud over the stud below, through the floor"},
	{WallEnd, "WE", "each end of each shear wall segment, each level"},
	{StudBase, "SB", "each full stud, king and jack to the floor or stringer below"},
	{PostCap, "PC", "each porch post to its beam"},
	{PostBase, "PB", "each porch post to its footing or pile"},
	{GirderPile, "GP", "each girder or stringer over a pile"},
}

// Code returns the two letters of k, or "" for an unknown kind.
func (k JointKind) Code() string {
	for _, x := range Joints {
		if x.Kind == k {
			return x.Code
		}
	}
	return ""
}

// JointKinds are the kinds of joints in the order of Joints.
var JointKinds = jointKinds()

func jointKinds() []JointKind {
	out := make([]JointKind, len(Joints))
	for i, j := range Joints {
		out[i] = j.Kind
	}
	return out
}
