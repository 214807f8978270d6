package floorplan

import (
	"fmt"
	"strings"

	"galewright/plan/deck"
	"galewright/plan/geom"
	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// DeckPages makes the plan of the roof deck for the crew, with its panels and
// nail zones, and that of the wind's zones for the engineer.
func DeckPages(c *page.Context) (pages []*page.Page) {
	d := c.Schedule.Deck
	lo, hi := roofBounds(c)
	top, left, m := openMargins(c, c.Size.Note*3, c.Size.Note*3)
	if len(d.Faces) == 0 {
		return nil
	}
	if d.Spec != nil {
		pages = planPages(c, layPlan(c, lo, hi, m, leastOpenScale(c)), planKind{
			title: "Roof deck nailing", key: "deck", top: top, left: left,
			draw:   func(v *planView, s planSheet) { v.drawDeck(d, s) },
			tables: nailTables(c),
		})
	}
	if c.Loads != nil && c.Loads.Deck != nil {
		pages = append(pages, planPages(c, layPlan(c, lo, hi, m, leastOpenScale(c)), planKind{
			title: "Roof wind zones", key: "wind zones", top: top, left: left,
			draw:   func(v *planView, s planSheet) { v.drawZones(c.Loads.Deck, s) },
			tables: zoneTables(c),
		})...)
	}
	return pages
}

// nailTables are the tables of the deck's nailing; none without a deck.
func nailTables(c *page.Context) []*table.Table {
	d := c.Schedule.Deck
	if d.Spec == nil || len(d.Faces) == 0 {
		return nil
	}
	return []*table.Table{nailKey(c, d), table.Numbered("Roof deck", deckNotes(c, d))}
}

// zoneTables are the tables of the roof's wind zones; none without loads.
func zoneTables(c *page.Context) []*table.Table {
	if c.Loads == nil || c.Loads.Deck == nil || len(c.Loads.Deck.Deck.Faces) == 0 {
		return nil
	}
	return []*table.Table{zoneTable(c), table.Numbered("Roof wind zones", zoneNotes(c))}
}

// tones are the fills of the nail zones, A first; more than these share the
// last: letters tell them apart.
var tones = []sheet.Fill{sheet.White, sheet.Pale, sheet.Mid}

func tone(zone int) sheet.Fill { return tones[min(zone, len(tones)-1)] }

// drawDeck draws panels and nail zones of what this sheet shows.
func (v *planView) drawDeck(d *deck.Deck, s planSheet) {
	v.board.Block(v.Block)
	v.drawGrid(gridOf(v.Context), s)
	for _, x := range d.Faces {
		for _, r := range d.Regions(x) {
			v.shape(sheet.Style{Fill: tone(r.Zone), Layer: sheet.LayerMember}, r.Outline...)
		}
		for _, p := range x.Pieces {
			for i, a := range p.Outline {
				v.stroke(sheet.PenDim, sheet.LayerMember, a, p.Outline[(i+1)%len(p.Outline)])
			}
		}
		for _, b := range x.Borders(d.NailReaches(), func(p geom.Vec2) string { return deck.ZoneLetter(d.ZoneAt(x, p)) }) {
			v.stroke(sheet.PenMember, sheet.LayerMember, b[0], b[1])
		}
		for _, g := range x.Gables() {
			v.stroke(sheet.PenCut, sheet.LayerMember, g[0], g[1])
		}
	}
	v.dashedWalls()
	for _, f := range v.House.Roof {
		v.faceEdges(f)
	}
	told := map[string]bool{}
	for _, x := range d.Faces {
		v.zoneNames(x.Marks(func(p geom.Vec2) string { return deck.ZoneLetter(d.ZoneAt(x, p)) }))
		for _, r := range d.NailReaches() {
			v.stripWidths(x, r, told, 0.62)
		}
	}
}

// drawZones draws the wind's zones on what this sheet shows.
func (v *planView) drawZones(w *deck.Winds, s planSheet) {
	v.board.Block(v.Block)
	v.drawGrid(gridOf(v.Context), s)
	told := map[string]bool{}
	v.dashedWalls()
	for _, f := range v.House.Roof {
		v.faceEdges(f)
	}
	for _, x := range w.Deck.Faces {
		if w.Faults[x.Roof] != nil {
			continue
		}
		zone := func(p geom.Vec2) string { return w.At(x, p).Name }
		for _, b := range x.Borders(w.Reaches(x), zone) {
			v.stroke(sheet.PenMember, sheet.LayerMember, b[0], b[1])
		}
		v.zoneNames(x.Marks(zone))
		for i, r := range w.Reaches(x) {
			v.stripWidths(x, r, told, 0.62+0.06*float64(i))
		}
	}
}

// zoneNames letters the zones of a face at their middles.
func (v *planView) zoneNames(marks []deck.Mark) {
	for _, m := range marks {
		if !v.sees(m.At) || v.vp.Len(m.Room) < 1 {
			continue
		}
		p := v.pt(m.At)
		cap := v.Size.Dim
		near := []sheet.Pt{p}
		for _, d := range []sheet.MM{0, 3, 6, 10} {
			near = append(near, aroundPoint(p, cap, cap, d)...)
		}
		v.words(m.Zone, page.Lettered{Role: "label", Cap: cap, Bold: true}, near, []sheet.Pt{p})
	}
}

// stripWidths dimensions a strip along the first edge of each kind.
func (v *planView) stripWidths(x *deck.Face, r deck.Reach, told map[string]bool, along float64) {
	d := r.Width
	for _, k := range r.Kinds {
		for _, e := range x.Strips() {
			key := fmt.Sprint(k, d)
			if e.Kind != k || told[key] || e.B.Sub(e.A).Len() < 2*d {
				continue
			}
			in := e.B.Sub(e.A).Unit().Left()
			at := e.A.Add(e.B.Sub(e.A).Mul(along))
			p, q, ok := v.stroke(sheet.PenDim, sheet.LayerDimension, at, at.Add(in.Mul(d)))
			if !ok || !v.sees(at) {
				continue
			}
			told[key] = true
			v.Tick(p)
			v.Tick(q)
			v.board.BlockLine(p, q)
			mid := sheet.Pt{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
			s := v.Length(d)
			w, h := page.TextWidth(s, v.Size.Note, false)+0.8, v.Size.Note*1.4
			var near []sheet.Pt
			for _, off := range []sheet.MM{1, 3, 6, 10} {
				near = append(near, aroundPoint(mid, w, h, off)...)
			}
			v.words(s, page.Lettered{Role: "dimension"}, near, []sheet.Pt{mid})
		}
	}
}

// nailKey is the key for the crew: zones with their nails.
func nailKey(c *page.Context, d *deck.Deck) *table.Table {
	t := &table.Table{Title: "Nailing key: " + d.Spec.Nail, Cols: []table.Column{
		{Head: "Zone", Align: sheet.Middle}, {Head: "Where", Wrap: true, Grow: true}, {Head: "Panel ends", Align: sheet.Right}, {Head: "Between", Align: sheet.Right}, {Head: "Gable", Align: sheet.Right},
	}}
	for i := range len(d.Spec.Zones) + 1 {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(deck.ZoneLetter(i), zoneWhere(c, d, i),
			c.Spacing(d.Spacing(i, deck.EndRow)), c.Spacing(d.Spacing(i, deck.FieldRow)), c.Spacing(d.Spacing(i, deck.GableRow)))})
	}
	return t
}

// zoneWhere says where a nail zone is.
func zoneWhere(c *page.Context, d *deck.Deck, i int) string {
	if i == 0 {
		return "all else"
	}
	z := d.Spec.Zones[i-1]
	var kinds []string
	for _, k := range z.Near {
		kinds = append(kinds, string(k))
	}
	if z.Corners {
		return fmt.Sprintf("within %s of two of: %s", c.Length(z.Within), strings.Join(kinds, ", "))
	}
	return fmt.Sprintf("within %s of: %s", c.Length(z.Within), strings.Join(kinds, ", "))
}

// deckNotes says how the deck is laid and nailed.
func deckNotes(c *page.Context, d *deck.Deck) []string {
	pieces, whole := d.Pieces()
	shank := "smooth shank"
	if d.Spec.Rings > 0 {
		shank = "ring shank"
	}
	notes := inRoofWords(c, []string{
		fmt.Sprintf("Panels %s in %s, %s, long side across the rafters, laid from the eave. Thin lines are the edges of panels as laid, on the slope seen from above: %d pieces, %d of them whole.", d.Spec.Panel, d.Spec.Kind, c.Units().Beside("4 by 8 ft", deck.PanelWide, deck.PanelLong), pieces, whole),
		fmt.Sprintf("Nails %s, %s. Panel ends: over the rafter that a panel ends on, and over hips and valleys, in each of the two panels. Between: over every other rafter. Gable: into the framing over an end wall (heavy line), which holds the overhang.", d.Spec.Nail, shank),
		"A letter stands in each part of a face; darker parts are nailed closer. Distances are on plan, from the edge of the roof. Pull a nail that misses its rafter and drive another; drive heads flush, not through the face (FEMA P-55 13.2.4, read).",
		"Walls below are dashed.",
	})
	if c.House.StepsUp() {
		notes = append(notes, levelTopNote)
	}
	return notes
}

// levelTopNote says what carries the deck of a hip end above its girder truss.
const levelTopNote = "At a hip end above its girder truss the deck lies on level tops that run along the eave, and is nailed to each as at panel ends; along the hips there nothing stands under it between those. The panels are drawn with their long side along the level tops: turn them, or see that they are rated to span that way, as the engineer of record says."

// inRoofWords puts notes into the words of what the roofs are made of.
func inRoofWords(c *page.Context, notes []string) []string {
	for i := range notes {
		notes[i] = c.House.Plan.InRoofWords(notes[i])
	}
	return notes
}

// zoneTable gives the suction of each zone and its worst nail.
func zoneTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Components and cladding: one nail of the deck", Cols: []table.Column{
		{Head: "Zone"}, {Head: "Suction ASD", Align: sheet.Right}, {Head: "Demand", Align: sheet.Right}, {Head: "Capacity", Align: sheet.Right}, {Head: "Ratio", Align: sheet.Right},
	}}
	for _, l := range c.Loads.DeckLinks() {
		psf, cells := "", table.Texts(strings.TrimPrefix(l.ID, "deck-"), "", c.Units().Amount(l.Demand, l.Unit, 0), "", "gap")
		if l.Zone != nil {
			psf = c.Units().Sprintf("%.0f psf", loadpath.ASD.W*l.Zone.Suction)
		}
		cells[1].S = psf
		if l.Gap == "" {
			cells[3].S, cells[4].S = c.Units().Amount(l.Capacity.Value, l.Unit, 0), fmt.Sprintf("%.2f", l.Ratio)
		}
		t.Rows = append(t.Rows, table.Row{Bold: l.Gap != "" || l.Ratio > 1, Cells: cells})
	}
	return t
}

// zoneNotes says what the zones are measured by.
func zoneNotes(c *page.Context) []string {
	notes := []string{
		"Numbers are the zones of the figure; over: outside of the walls (dashed), with wind on the underside too. Demand is 0.6 of the suction on the deck that one nail holds.",
		"Preliminary numbers for the engineer of record.",
	}
	return append(notes, c.Loads.DeckZones()...)
}
