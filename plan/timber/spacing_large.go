package timber

import (
	"math"

	"galewright/plan/source"
)

// LargePlace is where a bolt or lag screw of 1/4 in or more stands; distances
// in inches, Far where there is nothing.
type LargePlace struct {
	D            float64
	InMain       float64 // length of fastener in the wood of the main member
	InSides      float64 // the same in all wood side members; Far where they are steel
	Angle        float64 // of load to grain, degrees
	Hardwood     bool
	TowardEnd    bool    // the load has a part along the grain toward the end
	End          float64 // to the end of the member, along the grain
	LoadedEdge   float64 // to the edge that the load bears toward, across the grain
	UnloadedEdge float64 // to the other edge; of a load along the grain, the nearest
	InRow        float64 // spacing in the row
	RowNeed      float64 // spacing that the attached member needs in a row across the grain; 0 = 4D
	Rows         float64 // between rows
	Spread       float64 // between the outermost fasteners, across the grain; 0 = one row
	Sawn         bool    // sawn lumber, which shrinks
	Shrinks      bool    // the joint is detailed to let it
}

// Placed is the geometry factor of one fastener. The smallest of a group
// rules the whole group.
type Placed struct {
	Cdelta float64 // 0 where a floor of the standard is not met
	Rules  string  // which distance rules the factor; "" at 1
	Source string
	Unmet  []Unmet
}

// Factor returns the geometry factor as a link of a chain.
func (p Placed) Factor() Factor { return Factor{"Cdelta", p.Cdelta, p.Source} }

// diameters are the floor and the full value of a distance, NDS 2018 Tables
// 12.5.1A and 12.5.1B, p.90 (transcribed).
type diameters struct{ floor, full float64 }

var (
	endAcross         = diameters{2, 4}
	endAway           = diameters{2, 4}
	endTowardSoftwood = diameters{3.5, 7}
	endTowardHardwood = diameters{2.5, 5}
	rowAlong          = diameters{3, 4}
)

// Check returns the geometry factor and what is not met by NDS 2018 Tables
// 12.5.1A to D, pp.90-91 (transcribed). A load between the two directions is
// held to the rules of both.
func (p LargePlace) Check() Placed {
	out := Placed{Cdelta: 1, Source: cite("NDS 2018 12.5.1", source.Transcribed)}
	r := rules{source: "NDS 2018 "}
	p.ends(&out, &r)
	p.inRow(&out, &r)
	p.edges(&r)
	p.betweenRows(&r)
	if p.Sawn && !p.Shrinks && p.Spread > 5+slack {
		r.unmet = append(r.unmet, Unmet{"outermost fasteners across the grain of sawn lumber, at most", p.Spread, 5, false, cite("NDS 2018 12.5.1.3", source.Transcribed)})
	}
	if out.Unmet = r.unmet; len(out.Unmet) > 0 {
		out.Cdelta, out.Rules = 0, out.Unmet[0].Rule
	}
	return out
}

// take lowers the factor to actual over full and tells of the floor.
func (p LargePlace) take(out *Placed, r *rules, rule string, have float64, d diameters, table string) {
	r.want(rule, have, d.floor*p.D, table)
	if c := have / (d.full * p.D); c < out.Cdelta-1e-9 {
		out.Cdelta, out.Rules, out.Source = c, rule, cite("NDS 2018 "+table, source.Transcribed)
	}
}

func (p LargePlace) ends(out *Placed, r *rules) {
	const table = "Table 12.5.1A"
	if across(p.Angle) {
		p.take(out, r, "end distance, load across the grain", p.End, endAcross, table)
	}
	switch {
	case !along(p.Angle):
	case !p.TowardEnd:
		p.take(out, r, "end distance, load away from the end", p.End, endAway, table)
	case p.Hardwood:
		p.take(out, r, "end distance, load toward the end", p.End, endTowardHardwood, table)
	default:
		p.take(out, r, "end distance, load toward the end", p.End, endTowardSoftwood, table)
	}
}

func (p LargePlace) inRow(out *Placed, r *rules) {
	const table = "Table 12.5.1B"
	if along(p.Angle) {
		p.take(out, r, "spacing in a row along the grain", p.InRow, rowAlong, table)
	}
	if across(p.Angle) {
		need := p.RowNeed / p.D
		if need == 0 {
			need = rowAlong.full
		}
		p.take(out, r, "spacing in a row across the grain", p.InRow, diameters{3, math.Max(3, need)}, table)
	}
}

// slender is l/D: the lesser of the length in the main member and in the
// sides, over D (Table 12.5.1C footnote; "lesser" in the AWC errata of July
// 2020, read).
func (p LargePlace) slender() float64 { return math.Min(p.InMain, p.InSides) / p.D }

func (p LargePlace) edges(r *rules) {
	const table = "Table 12.5.1C"
	if along(p.Angle) {
		want := 1.5 * p.D
		if p.slender() > 6 && !math.IsInf(p.Rows, 1) {
			want = math.Max(want, p.Rows/2)
		}
		r.want("edge distance, load along the grain", math.Min(p.LoadedEdge, p.UnloadedEdge), want, table)
	}
	if across(p.Angle) {
		r.want("loaded edge, load across the grain", p.LoadedEdge, 4*p.D, table)
		r.want("unloaded edge, load across the grain", p.UnloadedEdge, 1.5*p.D, table)
	}
}

func (p LargePlace) betweenRows(r *rules) {
	const table = "Table 12.5.1D"
	if along(p.Angle) {
		r.want("between rows, load along the grain", p.Rows, 1.5*p.D, table)
	}
	if across(p.Angle) {
		r.want("between rows, load across the grain", p.Rows, rowsAcross(p.slender())*p.D, table)
	}
}

// rowsAcross is the least distance between rows of a load across the grain,
// in diameters: Table 12.5.1D (transcribed).
func rowsAcross(slender float64) float64 {
	switch {
	case slender <= 2:
		return 2.5
	case slender < 6:
		return (5*slender + 10) / 8
	}
	return 5
}

// LagPulled returns what a lag screw loaded in withdrawal only has not: edge
// 1.5D, end 4D, spacing 4D, in (NDS 2018 Table 12.5.1E, p.91, transcribed).
func LagPulled(d, edge, end, spacing float64) []Unmet {
	r := rules{source: "NDS 2018 "}
	r.want("edge distance of a lag screw in withdrawal", edge, 1.5*d, "Table 12.5.1E")
	r.want("end distance of a lag screw in withdrawal", end, 4*d, "Table 12.5.1E")
	r.want("spacing of lag screws in withdrawal", spacing, 4*d, "Table 12.5.1E")
	return r.unmet
}
