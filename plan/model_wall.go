package plan

import "galewright/plan/geom"

// Wall is one straight wall. Its line From–To is the outside face of its
// studs (for an interior wall: the face on the viewing side); somebody on
// that side sees From at his left. Stations are measured along it from where the
// framer's tape hooks: From, or the first stud of a wall that runs through past
// From at an inside corner.
type Wall struct {
	Name     string
	Level    *Level
	ToLevel  *Level // the level whose top the studs reach: Level, or above for a balloon wall
	From, To geom.Vec2
	Exterior bool
	Studs    Lumber  // one ply; Depth is the wall's depth
	Spacing  float64 // on center
	Layout   float64 // station where the module starts, default 0
	Height   float64 // subfloor of Level to top of top plate of ToLevel; 0 = the levels' own
	Top      WallTop
	Start    End
	End      End
	Openings []*Opening
	Shear    []*Shear
	Posts    []*WallPost
	// Sheathing is the panels outside of the shear segments; nil where the plan says nothing of them.
	Sheathing *Sheathing
	Breaks    *PlateBreaks // where its plates are spliced; nil = by rule
	Stock     float64      // longest plate stock
	Bearing   bool
	Through   bool      // runs through where another interior wall crosses it
	Under     UnderWall // what goes under it where it stands along joists; "" = as the level says
	// Hook is how far before From the tape hooks, in. The reader leaves it 0: what
	// a plan writes of openings, shear segments and layout is measured from From.
	// Framing finds it, and counts all stations from there.
	Hook float64
	// Past is how far past To its last stud ends, where it runs through at an inside corner,
	// in. Framing finds it.
	Past float64
	Pos  Pos
}

// End says how a wall's end is framed.
type End struct {
	Join Join // "" lets the corner decide
	Post int  // studs in the corner post, 0 = default for the corner
	Pos  Pos
}

// Balloon tells whether the studs pass a floor.
func (w *Wall) Balloon() bool { return w.ToLevel != nil && w.ToLevel != w.Level }

// Depth returns the depth of the wall's studs.
func (w *Wall) Depth() float64 { return w.Studs.Depth }

// TopHeight returns the height of a wall from its subfloor to the top of its
// double top plate, in; of a rake wall, at its eaves.
func (w *Wall) TopHeight() float64 {
	if w.Height > 0 || w.Level == nil || w.ToLevel == nil {
		return w.Height
	}
	return w.ToLevel.Top() - w.Level.Floor
}

// On tells whether the wall's studs pass through level l.
func (w *Wall) On(l *Level) bool {
	return l != nil && w.Level != nil && w.Level.Index <= l.Index && l.Index <= w.TopLevel().Index
}

// Opening is a rough opening.
type Opening struct {
	Name   string
	Kind   OpeningKind
	At     float64 // station of the left jack's inside face
	Width  float64
	Height float64
	Sill   float64 // height of the rough sill's top above the subfloor; 0 = to the floor
	Header Lumber
	Jacks  int // each side; 0 = by rule (see framing), AutoCount = from the code table
	Kings  int // each side; 0 = by rule, AutoCount = from the code table
	Pos    Pos
}

// AutoCount is the value of Jacks and Kings that asks for the code's table.
const AutoCount = -1

// Shear is a sheathed segment of a wall that resists lateral load.
type Shear struct {
	Name       string
	From, To   float64 // stations
	Panel      string  // "15/32"
	Nail       string  // nail of the sheathing, "8d common"
	Edge       float64 // edge nailing, on center
	Field      float64 // field nailing, on center
	BothFaces  bool
	Perforated bool
	Posts      int // studs nailed together at each end; 0 reads as 1
	Pos        Pos
}

// WallPost is studs tight beside each other that a plan adds to a wall: under a
// beam's end, behind a fixture.
type WallPost struct {
	At    float64 // station of its middle
	Studs int
	Pos   Pos
}
