package capacity

import (
	"math"

	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// grouped takes what bolts or lags of one end hold down by their distances in
// the wood and by group action: the least geometry factor of any rules all, and
// a row shares its load unevenly (NDS 2018 11.3.6 and 12.5.1, transcribed).
func (a *Allowables) grouped(h *Held, b *steel.Body, list []steel.Fastener, dir Direction) {
	least := timber.Placed{Cdelta: 1}
	for _, f := range list {
		if p := a.steel.Cdelta(b, f); p.Cdelta < least.Cdelta {
			least = p
		}
	}
	if least.Cdelta == 0 {
		h.Value, h.Why, h.None = 0, least.Unmet[0].String(), h.Count
		h.Terms = append(h.Terms, Term{"they hold nothing: " + h.Why, 0, "lb"})
		return
	}
	g, row := group(a.units, b, list, dir)
	cg, err := g.Value()
	if err != nil {
		h.Value, h.Why, h.None = 0, err.Error(), h.Count
		return
	}
	h.Value *= least.Cdelta * cg.Cg
	why := ""
	if least.Rules != "" {
		why = ", " + least.Rules
	}
	h.Terms = append(h.Terms, Term{a.units.Sprintf("Cdelta %.2f%s; Cg %.3f for %s, wood %.1f in² at E %.1f million psi from memory, steel %.2f in² (NDS 2018 11.3.6, transcribed)",
		least.Cdelta, why, cg.Cg, row, g.Am, g.Em/1e6, g.As), h.Value, "lb"})
}

// woodModulus is E taken for the wood of every species, psi: the least of the
// usual ones for No. 2, spruce-pine-fir (south) (NDS 2018 Supplement, second-hand).
// Less E lowers Cg beside steel.
const woodModulus = 1_100_000

// group is the row of bolts that a force along it meets, and says which.
func group(u units.System, b *steel.Body, list []steel.Fastener, dir Direction) (timber.Group, string) {
	f := list[0]
	m, p := f.Runs[0].Member, b.Pattern(f.End)
	rows := max(p.Rows, 1)
	n := (len(list) + rows - 1) / rows
	d := f.Diameter
	g := timber.Group{
		N: n, S: p.Spacing, D: d, Am: m.Section.Width() * m.Section.Depth, As: b.Piece.Item.Across() * baseThickness(b.Piece.Item),
		Em: woodModulus, Es: timber.SteelModulus, Metal: true,
	}
	if grain := steel.Grain(m); math.Abs(force(b, f, dir).Dot(grain)) < 0.7 { // across the grain: as wide as the group
		g.Am = f.Runs[0].Len() * math.Max(3*d, spread(list, grain))
	}
	return g, u.Sprintf("%d in a row %.2f in apart", n, p.Spacing)
}

// spread returns how far apart the outermost of some fasteners are along an
// axis, in.
func spread(list []steel.Fastener, axis geom.Vec3) float64 {
	lo := list[0].Head.Dot(axis)
	hi := lo
	for _, f := range list {
		at := f.Head.Dot(axis)
		lo, hi = min(lo, at), max(hi, at)
	}
	return hi - lo
}
