package plan

// Connection is where members are nailed to each other; the word is its key
// under [nailing].
type Connection string

// The connections, from the roof down.
const (
	RafterToRidge     Connection = "rafter_to_ridge"
	BoardToRafter     Connection = "valley_board_to_rafter"
	RafterToPlate     Connection = "rafter_to_plate"
	RafterAlongPlate  Connection = "rafter_along_plate"
	DeckToBlocking    Connection = "deck_to_blocking"
	BlockingToRafter  Connection = "blocking_to_rafter"
	BlockingToPlate   Connection = "blocking_to_plate"
	RafterToJoist     Connection = "rafter_to_joist"
	CeilingSplice     Connection = "ceiling_splice"
	LedgerToWall      Connection = "ledger_to_wall"
	TopPlates         Connection = "top_plates"
	TopPlateSplice    Connection = "top_plate_splice"
	TopPlateLap       Connection = "top_plate_lap"
	TopPlateToStud    Connection = "top_plate_to_stud"
	BuiltUpStuds      Connection = "built_up_studs"
	CornerStuds       Connection = "corner_studs"
	JackToKing        Connection = "jack_to_king"
	HeaderToKing      Connection = "header_to_king"
	HeaderPlies       Connection = "header_plies"
	CrippleToPlate    Connection = "cripple_to_plate"
	CrippleToHeader   Connection = "cripple_to_header"
	CrippleToSill     Connection = "cripple_to_sill"
	SillToJack        Connection = "sill_to_jack"
	SoleToStud        Connection = "sole_to_stud"
	SoleToFloor       Connection = "sole_to_floor"
	SoleAtShearWall   Connection = "sole_at_shear_wall"
	RimToJoist        Connection = "rim_to_joist"
	RimToSupport      Connection = "rim_to_support"
	JoistToSupport    Connection = "joist_to_support"
	JoistAlongSupport Connection = "joist_along_support"
	JoistPlies        Connection = "joist_plies"
	TrimmerToHeader   Connection = "trimmer_to_header"
	BlockingToJoist   Connection = "blocking_to_joist"
	HeaderToTail      Connection = "header_to_tail"
	BlockingToStud    Connection = "blocking_to_stud"
	GirderPlies       Connection = "girder_plies"
)

// Drive is how a nail goes in.
type Drive string

// The drives.
const (
	FaceNail Drive = "face" // square through one member into the side of the other
	EndNail  Drive = "end"  // square through one member into the end of the other
	ToeNail  Drive = "toe"  // slanting through the end of one member into the other
)

// Drives are the ways a nail may go in.
var Drives = []Drive{FaceNail, EndNail, ToeNail}

// Connections are all connections, in the order of their table.
func Connections() []Connection {
	out := make([]Connection, len(NailedConnections))
	for i, r := range NailedConnections {
		out[i] = r.Connection
	}
	return out
}
