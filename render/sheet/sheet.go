// Package sheet is the contract between thinking and printing: a flat sheet
// is paper, title block data and an ordered list of marks in millimeters.
// Views write marks, the writers (svg, pdf, html) read them, and tests
// measure them. It knows nothing of houses.
//
// The origin is the top left corner of the paper, x to the right, y down.
// Numbers are exact here; writers round them once.
package sheet

// MM is a length on paper, mm.
type MM float64

// Pt is a point on paper.
type Pt struct{ X, Y MM }

// Add returns p moved by q.
func (p Pt) Add(q Pt) Pt { return Pt{p.X + q.X, p.Y + q.Y} }

// Rect is an upright rectangle: X, Y its top left corner.
type Rect struct{ X, Y, W, H MM }

// Overlaps tells whether r and s share more than a touch.
func (r Rect) Overlaps(s Rect) bool {
	return r.X < s.X+s.W && s.X < r.X+r.W && r.Y < s.Y+s.H && s.Y < r.Y+r.H
}

// Inset returns r made smaller by d on each side.
func (r Rect) Inset(d MM) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// Center returns the middle of r.
func (r Rect) Center() Pt { return Pt{r.X + r.W/2, r.Y + r.H/2} }

// Pen is a line weight by meaning.
type Pen uint8

// The pens, with their widths on paper.
const (
	NoPen       Pen = iota
	PenHardware     // 0.70 mm: the heaviest thing on the sheet
	PenCut          // 0.50 mm: cut or primary outlines, borders
	PenMember       // 0.35 mm
	PenHidden       // 0.25 mm dashed
	PenDim          // 0.18 mm: dimensions, leaders, hatching
	PenGrid         // 0.18 mm chain dashed: grid and center lines
)

// Width returns the pen's width on paper.
func (p Pen) Width() MM { return [...]MM{0, 0.70, 0.50, 0.35, 0.25, 0.18, 0.18}[p] }

// Dash returns the pen's dash pattern in mm, nil for a full line.
func (p Pen) Dash() []MM {
	switch p {
	case PenHidden:
		return []MM{2, 1}
	case PenGrid:
		return []MM{6, 1, 1, 1}
	}
	return nil
}

// Fill is what the inside of a mark shows.
type Fill uint8

// The fills. White hides what lies below.
const (
	NoFill Fill = iota
	White       // paper
	Black
	Pale // light gray, 85 % white: sheathed segments, table heads
	Mid  // gray, 60 % white
)

// Layer groups marks by meaning.
type Layer uint8

// The layers, in no drawing order: order is the order of the marks.
const (
	LayerFrame     Layer = iota // border, title block
	LayerGrid                   // grid lines, center lines, match lines
	LayerMember                 // lumber
	LayerHidden                 // lumber seen through
	LayerHardware               // pieces
	LayerDimension              // dimensions
	LayerLabel                  // labels, legend circles, leaders
	LayerNote                   // notes, tables
	LayerRevision               // clouds and triangles
)

// Names of the layers, as written into files.
var layerNames = [...]string{"frame", "grid", "member", "hidden", "hardware", "dimension", "label", "note", "revision"}

func (l Layer) String() string { return layerNames[l] }

// Style is how a mark is drawn.
type Style struct {
	Pen   Pen
	Fill  Fill
	Layer Layer
}

// Piece ties a mark to a piece of hardware.
type Piece struct {
	Tag    string // stable tag
	Legend int    // number in the circle
	Mark   string // catalog mark
	Title  string // what a browser shows: "10 story strap, wall 2S at 5'-4", outside"
	// Home is set at the one instance in the set that stands for the piece;
	// other sheets may show it again without.
	Home bool
}

// Mark is one thing on a sheet.
type Mark interface{ styled() Style }

// Line is a straight line.
type Line struct {
	Style
	A, B  Pt
	Piece *Piece // non-nil when the line is part of a piece
}

// Polyline is a chain of lines, or a polygon when Closed.
type Polyline struct {
	Style
	Pts    []Pt
	Closed bool
	Piece  *Piece
}

// Path is a chain of segments that may curve.
type Path struct {
	Style
	Segs  []Seg
	Piece *Piece
}

// Seg is one step of a Path.
type Seg struct {
	Op rune  // 'M' move, 'L' line, 'C' cubic Bézier, 'Z' close
	P  [3]Pt // M, L use P[0]; C uses control, control, end
}

// Circle is a circle.
type Circle struct {
	Style
	C     Pt
	R     MM
	Piece *Piece
}

// Anchor is where a text's point lies on its baseline.
type Anchor uint8

// The anchors.
const (
	Left Anchor = iota
	Middle
	Right
)

// Text is one line of lettering; At is on the baseline.
type Text struct {
	Style  // Pen is not used; Fill Black unless set
	At     Pt
	Size   MM // height of the em; capitals are 0.718 of it
	Anchor Anchor
	Angle  float64 // deg, counterclockwise on paper
	Bold   bool
	S      string
	Piece  *Piece
	// Role says what the text is for: "dimension", "legend", "label", "note",
	// "title"; lettering tests use it.
	Role string
	Link string // sheet number this text points to, "" for none
}

// Use is an instance of a symbol.
type Use struct {
	Style
	Symbol string  // id of a Symbol of the set
	At     Pt      // where the symbol's origin falls
	Mirror bool    // left for right, before it is turned
	Angle  float64 // deg, counterclockwise on paper
	Scale  float64 // 1 = as defined
	Piece  *Piece
}

// Window shows other marks moved by Shift, and of them only what falls inside
// Rect: a piece of a large sheet on a small one. Windows do not nest.
type Window struct {
	Style // only Layer is used
	Rect  Rect
	Shift Pt
	Marks []Mark
}

// Symbol is a drawing defined once and used many times, about its origin.
type Symbol struct {
	ID    string // letters, digits and hyphens
	Title string
	Box   Rect // extent about the origin
	Marks []Mark
}

// styled returns the style of any mark that embeds one.
func (s Style) styled() Style { return s }

// Title is the data of a title block.
type Title struct {
	Project, Number, Site string
	Sheet                 string // "S-201"
	SheetTitle            string
	Scale                 string // `1/2" = 1'-0"`, "1:25", "as noted", "none"
	Date, Revision        string
	DrawnBy, CheckedBy    string
	Index, Of             int
	Caution               string
}

// Sheet is one page.
type Sheet struct {
	Title Title
	Paper Paper
	Marks []Mark
	// Boxes are the places taken by labels, pieces and dimensions that must
	// keep clear of each other, for tests.
	Boxes []Box
}

// Box is a place on the sheet that something stands in.
type Box struct {
	Rect
	What string // "legend 3 of 1S-64-SB-strap", `dimension 5'-4"`
	Kind string // "label", "piece", "dimension", "title"
}

// Paper is a sheet of paper, as laid on the drawing board.
type Paper struct {
	Name string // "arch-d"
	W, H MM
}

// Set is a drawing set.
type Set struct {
	Sheets  []*Sheet
	Symbols []Symbol // those that are used, in order of id
}
