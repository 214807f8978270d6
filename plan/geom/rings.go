package geom

import "math"

// Rings tells which places of the plan lie inside outlines that sides make,
// in time independent of how many outlines there are: a ray to the east from a
// place crosses a closed outline an even number of times, unless the place is in
// its box, so that only outlines around the place are asked.
type Rings struct {
	grid *Grid[[][2]Vec2] // closed outlines by their boxes
	open [][2]Vec2        // sides that close nothing: every ray may cross them
}

// ringsCell is the side of a cell of the grid of outlines, in: about a house's.
const ringsCell = 480

// NewRings sorts sides, in any order and either way around, into outlines: sides
// that share ends, to the last bit. An outline is closed where at each of its ends
// an even number of sides meet.
func NewRings(sides [][2]Vec2) *Rings {
	r := &Rings{grid: NewGridOf[[][2]Vec2](ringsCell)}
	for _, ring := range chained(sides) {
		if !closed(ring) {
			r.open = append(r.open, ring...)
			continue
		}
		lo, hi := boxOf(ring)
		r.grid.Add(ring, lo, hi, nil)
	}
	return r
}

// Inside tells whether a ray to the east from p crosses an odd number of sides.
func (r *Rings) Inside(p Vec2) bool {
	in := odd(r.open, p)
	at := Vec3{X: p.X, Y: p.Y}
	r.grid.Each(at, at, func(_ int, ring [][2]Vec2) bool {
		in = in != odd(ring, p)
		return true
	})
	return in
}

func odd(sides [][2]Vec2, p Vec2) (in bool) {
	for _, s := range sides {
		in = in != CrossesEast(s[0], s[1], p)
	}
	return in
}

// CrossesEast tells whether the side from a to b crosses the ray from p to the
// east.
func CrossesEast(a, b, p Vec2) bool {
	return (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
}

// chained parts sides into groups that share ends, each in the sides' order.
func chained(sides [][2]Vec2) (out [][][2]Vec2) {
	at := map[Vec2][]int{}
	for i, s := range sides {
		at[s[0]], at[s[1]] = append(at[s[0]], i), append(at[s[1]], i)
	}
	met := make([]bool, len(sides))
	for i := range sides {
		var group [][2]Vec2
		for todo := []int{i}; len(todo) > 0; {
			n := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			if met[n] {
				continue
			}
			met[n] = true
			group = append(group, sides[n])
			todo = append(append(todo, at[sides[n][0]]...), at[sides[n][1]]...)
		}
		if len(group) > 0 {
			out = append(out, group)
		}
	}
	return out
}

func closed(ring [][2]Vec2) bool {
	ends := map[Vec2]int{}
	for _, s := range ring {
		ends[s[0]]++
		ends[s[1]]++
	}
	for _, n := range ends {
		if n%2 == 1 {
			return false
		}
	}
	return true
}

// boxOf returns the box of an outline, an inch wider than it: where a ray from
// outside of it crosses a side is rounded.
func boxOf(ring [][2]Vec2) (lo, hi Vec3) {
	lo, hi = Vec3{X: math.Inf(1), Y: math.Inf(1)}, Vec3{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range ring {
		for _, p := range s {
			lo.X, lo.Y = min(lo.X, p.X-1), min(lo.Y, p.Y-1)
			hi.X, hi.Y = max(hi.X, p.X+1), max(hi.Y, p.Y+1)
		}
	}
	return lo, hi
}
