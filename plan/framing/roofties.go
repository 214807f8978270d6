package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// tieLumber is a ceiling tie: a 2x6 beside each pair of rafters on the plates
// (common practice, no published source).
var tieLumber = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5, Text: "2x6"}

// ties adds ceiling ties beside each opposing pair of common rafters that
// bear on plates of one height, on the side toward the middle of the ridge.
// A tie longer than the longest stock is made of equal pieces.
func (f *roofFrame) ties() {
	row := map[*roofBody]map[int][]*roofRafter{} // by station in inches
	for _, r := range f.rafters {
		if rb := r.owner; rb.CeilingTies && !rb.Trusses && rb.Kind != plan.ShedRoof && tied(r) {
			if row[rb] == nil {
				row[rb] = map[int][]*roofRafter{}
			}
			k := int(math.Floor(r.run.Station))
			row[rb][k] = append(row[rb][k], r)
		}
	}
	done := map[*roofRafter]bool{}
	for _, a := range f.rafters {
		done[a] = true
		k := int(math.Floor(a.run.Station))
		for _, c := range slices.Concat(row[a.owner][k-1], row[a.owner][k], row[a.owner][k+1]) {
			if !done[c] && tied(a) && math.Abs(a.run.Station-c.run.Station) < near && geom.Against(c.dir, a.dir) {
				f.tie(a.owner, a, c)
			}
		}
	}
}

// tied tells whether a rafter takes a tie: a common rafter on a plate.
func tied(r *roofRafter) bool {
	_, body, _ := r.run.Bearing()
	return body != nil && r.run.HighEnd.Kind == roofplan.Ridge && !r.run.Flush
}

// tie adds the tie of one pair.
func (f *roofFrame) tie(rb *roofBody, a, c *roofRafter) {
	pa, _, sa := a.run.Bearing()
	pc, _, sc := c.run.Bearing()
	z := rb.sides[sa].plate
	if math.Abs(z-rb.sides[sc].plate) > 0.01 {
		return
	}
	side := a.dir.Left()
	mid := rb.body.Lo.Add(rb.body.Hi).Mul(0.5)
	if side.Dot(mid.Sub(pa)) < 0 {
		side = side.Mul(-1)
	}
	shift := side.Mul(rb.Rafters.Width()/2 + tieLumber.Breadth/2)
	r := bar{at: pa.Add(shift), dir: a.dir, top: z + tieLumber.Depth, depth: tieLumber.Depth, half: tieLumber.Breadth / 2}
	length := math.Abs(pc.Sub(pa).Dot(a.dir))
	planes := []geom.Plane{below(a), below(c)}
	n := math.Ceil(length / longest(f.plan))
	for k := 0.0; k < n; k++ {
		u0, u1 := length*k/n, length*(k+1)/n
		parts := r.cut(u0, u1, planes, nil)
		m := &Member{ID: fmt.Sprintf("%s/tie@%s", rb.Name, at(rb.station(r.at))), Role: plan.Joist, Roof: rb.Roof, Section: tieLumber}
		if len(parts) > 0 && f.clear(parts) {
			f.addStick(m, r, parts, u0, u1)
		}
	}
}

// below returns the half space below the roof plane of a rafter.
func below(r *roofRafter) geom.Plane { return underside(r.run.Face.Plane, 0) }

// clear tells whether nothing stands where parts would.
func (f *roofFrame) clear(parts []geom.Solid) bool {
	for _, s := range parts {
		lo, hi := s.Bounds()
		for _, m := range f.index.Within(lo, hi) {
			for _, t := range m.Solid {
				if geom.Overlap(s, t, 0.01) {
					return false
				}
			}
		}
	}
	return true
}
