package page

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
	"galewright/plan/salt"
	"galewright/plan/schedule"
	"galewright/render/sheet"
)

// Model is everything the sheets show.
type Model struct {
	House     *framing.House
	Placement *placement.Placement
	Schedule  *schedule.Schedule
	// Loads is the load path of the house; nil leaves its sheet out.
	Loads *loadpath.Report
	// Storms are the curves of wind speeds at which links are overtaken, the
	// plan's own first; none leaves their sheet out.
	Storms []Storm
	// Salt is the class of place of each piece; nil leaves its tables out.
	Salt *salt.Report
}

// Storm is the speeds at which the links of one set of hardware are overtaken.
type Storm struct {
	Name string
	List []loadpath.Overtaken
}

// Options chooses what is drawn and on what.
type Options struct {
	Paper  string   // name of a paper; "" = arch-d
	Sheets []string // "2xx", "S-201", "S-2*"; none = all
}

// Context is what every view may read while it lays out and draws.
type Context struct {
	*Model
	Options Options
	Paper   sheet.Paper
	Size    Lettering        // capital heights on that paper, mm
	Pages   []*Page          // all pages of the set, numbered; empty while views lay out
	Diags   plan.Diagnostics // what was found wrong so far
	// Foreseen holds the sheets of the set for the cover to list: all others,
	// and the cover's own as far as they are known.
	Foreseen Outlook
	// reading is the capital height of text sheets, mm; 0 = the paper's own.
	reading sheet.MM
}

// Tell adds a diagnostic.
func (c *Context) Tell(d plan.Diagnostic) { c.Diags = append(c.Diags, d) }

// SheetsOf returns the numbers of the pages that carry the key, in order. Use
// it in Draw only. Keys by agreement: "wall 1S" for a wall's elevation,
// "line 1S/2S" for a line's, "level first" for a plan, "roof" for the roof
// plan, "foundation", "mark story-strap" for a detail, "schedule", "check 1S".
func (c *Context) SheetsOf(key string) (numbers []string) {
	for _, p := range c.Pages {
		if slices.Contains(p.Keys, key) {
			numbers = append(numbers, p.Number)
		}
	}
	return numbers
}

// Legend returns the legend number of a piece.
func (c *Context) Legend(pc *placement.Piece) int { return c.Schedule.Number(pc.Item.Mark) }

// PieceMark returns what ties marks to a piece. home is set for the one
// instance in the set that stands for the piece.
func (c *Context) PieceMark(pc *placement.Piece, home bool) *sheet.Piece {
	return &sheet.Piece{
		Tag:    pc.Tag,
		Legend: c.Legend(pc),
		Mark:   pc.Item.Mark,
		Title:  c.pieceTitle(pc),
		Home:   home,
	}
}

// pieceTitle says what a browser shows for a piece: legend number, mark,
// host, station, face.
func (c *Context) pieceTitle(pc *placement.Piece) string {
	j := pc.Joint
	where := j.Host
	if j.Wall != nil {
		where = "wall " + where
	}
	s := c.legendText(pc) + " " + pc.Item.Mark + ", " + where + " at " + c.Length(pc.Station)
	if pc.Face != "" {
		s += ", " + string(pc.Face)
	}
	return s
}

// NewContext starts a set on the paper of the options. It returns false, and a
// diagnostic is told, when there is no such paper.
func NewContext(m *Model, o Options) (*Context, bool) {
	c := &Context{Model: m, Options: o}
	name := o.Paper
	if name == "" {
		name = "arch-d"
	}
	paper, ok := sheet.PaperNamed(name)
	if !ok {
		c.Tell(plan.Diagnostic{
			Code: "unknown-paper", Summary: fmt.Sprintf("there is no paper %q", name),
			Mend: "take one of " + strings.Join(sheet.PaperNames(), ", "), Pos: m.House.Plan.Project.Pos,
		})
		return c, false
	}
	c.Paper, c.Size = paper, LetteringFor(paper)
	return c, true
}
