package framing

import "galewright/plan"

// inWalls finds the members of walls in a list of members.
type inWalls struct {
	n     int // members in the list
	first *Member
	of    map[*plan.Wall][]*Member
}

// indexWalls sorts the members by wall, once all are there.
func (h *House) indexWalls() {
	if len(h.Members) == 0 {
		return
	}
	h.walls = &inWalls{len(h.Members), h.Members[0], map[*plan.Wall][]*Member{}}
	for _, m := range h.Members {
		if m.Wall != nil {
			h.walls.of[m.Wall] = append(h.walls.of[m.Wall], m)
		}
	}
}

// In returns the members of a wall in the order of the house; they are only to be read.
func (h *House) In(w *plan.Wall) (out []*Member) {
	if x := h.walls; x != nil && x.n == len(h.Members) && x.first == h.Members[0] {
		return x.of[w]
	}
	for _, m := range h.Members { // of a house that Frame did not make, or from which a member was taken
		if m.Wall == w {
			out = append(out, m)
		}
	}
	return out
}
