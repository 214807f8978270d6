package plan

import "slices"

// ConnectionRow is what is known of one connection: how it is called, how its
// nails may go in, how they are counted.
type ConnectionRow struct {
	Connection Connection
	One        string  // on sheets: "jack to king"
	Doc        string  // which nails these are, and how they count
	Drives     []Drive // that it can take; the first is the default
	// Spaced connections take their nails at a spacing along the touch of the
	// members, the others a count at each.
	Spaced bool
	// Holds tells that its nails hold uplift: loaded across the nail, or drawn
	// out of side grain square to the face. Toe-nails and nails drawn out of
	// end grain hold none here, nor does the end of a joist that its far end
	// alone keeps down.
	Holds   bool
	Example string // the value, as a plan writes it
}

// NailedConnections lists the connections from the roof down: the order of
// nailing lines on sheets.
var NailedConnections = []*ConnectionRow{
	{RafterToRidge, "rafter to ridge, hip or valley", "each rafter's end at a ridge, hip or valley, each rafter by itself", []Drive{ToeNail, EndNail, FaceNail}, false, false, `{ nail = "16d common", count = 3 }`},
	{BoardToRafter, "valley board to rafter below", "each valley board of a dormer at each rafter of the roof it lies on, through that roof's deck", []Drive{FaceNail}, false, true, `{ nail = "16d common", count = 2 }`},
	{RafterToPlate, "rafter to plate", "each rafter or truss at each plate or beam that it bears on", []Drive{ToeNail}, false, false, `{ nail = "10d common", count = 3 }`},
	{RafterAlongPlate, "rafter along plate", "along each rafter or truss that runs over the plates of a wall under it, such as at a gable", []Drive{ToeNail, FaceNail}, true, false, `{ nail = "16d common", spacing = "6in" }`},
	{DeckToBlocking, "roof deck to eave blocking", "along each block between rafters at the eaves that the deck lies on, through the panel; these are not among the deck's own nails", []Drive{FaceNail}, true, false, `{ nail = "8d common", spacing = "6in" }`},
	{BlockingToRafter, "eave blocking to rafter", "each end of each block between rafters at the eaves", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{BlockingToPlate, "eave blocking to plate", "along each block between rafters at the eaves, into the plate or beam under it", []Drive{ToeNail}, true, false, `{ nail = "8d common", spacing = "6in" }`},
	{RafterToJoist, "rafter to ceiling joist", "each end of each ceiling joist, into the rafter beside it", []Drive{FaceNail}, false, false, `{ nail = "16d common", count = 4 }`},
	{CeilingSplice, "ceiling joist splice", "on each side of each break in a ceiling joist, through the splice piece into the joist", []Drive{FaceNail}, false, false, `{ nail = "16d common", count = 6 }`},
	{LedgerToWall, "ledger to stud or rim", "each ledger at each stud, rim or plate behind it", []Drive{FaceNail}, false, false, `{ nail = "16d common", count = 3 }`},
	{TopPlates, "upper top plate to lower", "along both top plates of a wall", []Drive{FaceNail}, true, true, `{ nail = "10d common", spacing = "16in" }`},
	{TopPlateSplice, "top plate splice, in the lap", "on each side of each break in a top plate, within 24 in of it, beside those of top_plates", []Drive{FaceNail}, false, false, `{ nail = "16d common", count = 8 }`},
	{TopPlateLap, "top plate lap at corner or wall", "where the upper plate of one wall runs over the lower of another", []Drive{FaceNail}, false, false, `{ nail = "16d common", count = 3 }`},
	{TopPlateToStud, "top plate to stud", "each full-height stud, king or post at the lower top plate", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{BuiltUpStuds, "built-up studs and posts", "along each two full-height studs of a wall that touch", []Drive{FaceNail}, true, true, `{ nail = "10d common", spacing = "12in", rows = 2 }`},
	{CornerStuds, "studs of meeting walls", "along the end stud of a wall where it meets a post of another", []Drive{FaceNail}, true, false, `{ nail = "16d common", spacing = "12in" }`},
	{JackToKing, "jack to king", "along each jack and the king, or the jack, that it touches", []Drive{FaceNail}, true, true, `{ nail = "10d common", spacing = "8in", rows = 2 }`},
	{HeaderToKing, "header to king", "each end of each header, through the king", []Drive{EndNail, ToeNail}, false, true, `{ nail = "16d common", count = 4 }`},
	{HeaderPlies, "header plies", "along a built-up header, from ply to ply", []Drive{FaceNail}, true, false, `{ nail = "16d common", spacing = "16in", rows = 2 }`},
	{CrippleToPlate, "cripple to top plate", "each cripple over a header", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{CrippleToHeader, "cripple to header", "each cripple over a header", []Drive{ToeNail}, false, false, `{ nail = "8d common", count = 4 }`},
	{CrippleToSill, "cripple to sill", "each cripple under a sill, through the sill", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{SillToJack, "sill to jack", "each end of each sill, through the jack", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{SoleToStud, "stud to bottom plate", "each stud, king, post, jack and sill cripple on the bottom plate", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{SoleToFloor, "bottom plate to floor", "along the bottom plate, through the subfloor into rim or joists, outside of shear wall segments; where joists cross, the nails of the way from joist to joist go into each", []Drive{FaceNail}, true, true, `{ nail = "16d common", spacing = "16in" }`},
	{SoleAtShearWall, "bottom plate to floor at shear walls", "the same within shear wall segments; those of sole_to_floor where this is left out", []Drive{FaceNail}, true, true, `{ nail = "16d common", spacing = "4in" }`},
	{RimToJoist, "rim to joist", "each joist's end at a rim, through the rim", []Drive{EndNail}, false, false, `{ nail = "16d common", count = 3 }`},
	{RimToSupport, "rim to plate or girder", "along each rim on the plate, sill plate or girder under it", []Drive{ToeNail}, true, false, `{ nail = "8d common", spacing = "6in" }`},
	{JoistToSupport, "joist to plate or girder", "each joist on each plate, sill plate or girder under it", []Drive{ToeNail}, false, false, `{ nail = "8d common", count = 3 }`},
	{JoistAlongSupport, "joist along plate or girder", "along each joist that runs over a plate, sill plate or girder under it", []Drive{ToeNail}, true, false, `{ nail = "8d common", spacing = "6in" }`},
	{JoistPlies, "plies of built-up joists", "along each built-up joist of a floor, such as headers and trimmers of openings, from ply to ply", []Drive{FaceNail}, true, false, `{ nail = "16d common", spacing = "12in", rows = 2 }`},
	{TrimmerToHeader, "trimmer to header in floors", "each end of each header joist of an opening in a floor, through the trimmer; where a hanger carries it, beside the hanger", []Drive{EndNail}, false, false, `{ nail = "16d common", count = 6 }`},
	{HeaderToTail, "header to tail joist", "each joist that ends at a header joist, through the header; where a hanger carries it, beside the hanger", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 3 }`},
	{BlockingToJoist, "blocking to joist", "each end of each block between joists of a floor", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{BlockingToStud, "blocking to stud", "each end of each block between studs", []Drive{EndNail, ToeNail}, false, false, `{ nail = "16d common", count = 2 }`},
	{GirderPlies, "girder and beam plies", "along a built-up girder or beam, from ply to ply", []Drive{FaceNail}, true, false, `{ nail = "16d common", spacing = "12in", rows = 3 }`},
}

// For returns the row in the words of a plan's roofs.
func (r *ConnectionRow) For(p *Plan) *ConnectionRow {
	one := p.InRoofWords(r.One)
	if one == r.One {
		return r
	}
	out := *r
	out.One = one
	return &out
}

// Row returns the connection's row, nil for a word that is none.
func (c Connection) Row() *ConnectionRow {
	i := slices.IndexFunc(NailedConnections, func(r *ConnectionRow) bool { return r.Connection == c })
	if i < 0 {
		return nil
	}
	return NailedConnections[i]
}

// NailLine is the nailing that a plan orders at one kind of connection. What
// no line orders is on no sheet and counts for nothing.
type NailLine struct {
	At      Connection
	Nail    string  // as written: "16d common"
	Size    NailDim // of it
	Count   int     // nails at each connection; 0 where they go by spacing
	Spacing float64 // along the members, in; 0 where they are counted
	Rows    int     // of nails at the spacing
	Drive   Drive
	Pos     Pos
}

// NailDim is the size of a nail, in.
type NailDim struct{ Diameter, Length float64 }

// Ordered returns the plan's line for a connection, nil where it orders none.
func (p *Plan) Ordered(c Connection) *NailLine {
	for _, l := range p.Nailing {
		if l.At == c {
			return l
		}
	}
	return nil
}
