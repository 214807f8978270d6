package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// slopedPlates returns the plates that run up and down with a roof, by wall,
// in the order of their stations, for each of the two rows.
func slopedPlates(h *framing.House) map[plateRow][]*framing.Member {
	rows := map[plateRow][]*framing.Member{}
	for _, m := range h.Members {
		if m.Wall == nil || m.Role != plan.TopPlate && m.Role != plan.UpperPlate {
			continue
		}
		if math.Abs(m.B.Z-m.A.Z) > touch {
			k := plateRow{m.Wall, m.Role}
			rows[k] = append(rows[k], m)
		}
	}
	for _, row := range rows {
		slices.SortStableFunc(row, func(a, b *framing.Member) int { return sign(a.S0 - b.S0) })
	}
	return rows
}

// plateRow is the lower or the upper top plates of a wall.
type plateRow struct {
	wall *plan.Wall
	role plan.Role
}

// rise returns how much m climbs for each inch of its wall's stations.
func rise(f geom.Frame, m *framing.Member) float64 {
	a, _ := f.Local(m.A.Flat())
	b, _ := f.Local(m.B.Flat())
	return (m.B.Z - m.A.Z) / (b - a)
}

// alongSlope lays a strap of a length over the row of sloping plates, its
// middle at station s, bent where two slopes meet; above is how far over the
// plates' middle it lies, square to them, and t its depth in the wall.
func alongSlope(f geom.Frame, row []*framing.Member, s, t, above, total float64) (path []geom.Vec3) {
	walk := func(dir float64) (out []geom.Vec3) {
		i, at, left := rowAt(row, s, dir), s, total/2
		for {
			m := row[i]
			k := math.Hypot(1, rise(f, m))
			end, next := m.S1, i+1
			if dir < 0 {
				end, next = m.S0, i-1
			}
			room := math.Abs(end-at) * k
			if left <= room || next < 0 || next >= len(row) {
				return append(out, slopePoint(f, m, at+dir*left/k, t, above))
			}
			if math.Abs(rise(f, m)-rise(f, row[next])) > 1e-6 {
				out = append(out, slopePoint(f, m, end, t, above))
			}
			i, at, left = next, end, left-room
		}
	}
	path = walk(-1)
	slices.Reverse(path)
	if l, r := row[rowAt(row, s, -1)], row[rowAt(row, s, 1)]; math.Abs(rise(f, l)-rise(f, r)) > 1e-6 {
		path = append(path, slopePoint(f, l, s, t, above))
	}
	return append(path, walk(1)...)
}

// rowAt returns the plate of the row that a walk from s in a direction starts
// on: at a joint of two the one ahead; past an end the last.
func rowAt(row []*framing.Member, s, dir float64) int {
	for i, m := range row {
		if m.S0-touch <= s && s <= m.S1+touch && (dir < 0 && s > m.S0+touch || dir > 0 && s < m.S1-touch) {
			return i
		}
	}
	if s < row[0].S0+touch {
		return 0
	}
	return len(row) - 1
}

// slopePoint returns the point over a sloping plate's middle line at s.
func slopePoint(f geom.Frame, m *framing.Member, s, t, above float64) geom.Vec3 {
	a, _ := f.Local(m.A.Flat())
	r := rise(f, m)
	return f.At(s, t, m.A.Z+(s-a)*r+above*math.Hypot(1, r))
}
