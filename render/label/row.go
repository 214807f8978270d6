package label

import "galewright/render/sheet"

// Row spreads boxes along a line: at[i] is where box i wants its middle, in
// rising order, and no two middles come nearer than pitch. It returns the
// middles with the least sum of squared shifts, inside lo..hi when they fit
// there at all; ok is false when they do not.
//
// This is isotonic regression on at[i] − i·pitch by pooling neighbors that
// violate the order.
func Row(at []sheet.MM, pitch, lo, hi sheet.MM) (mid []sheet.MM, ok bool) {
	type pool struct {
		sum sheet.MM
		n   int
	}
	var pools []pool
	for i, x := range at {
		pools = append(pools, pool{x - sheet.MM(i)*pitch, 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/sheet.MM(pools[k-1].n) > pools[k].sum/sheet.MM(pools[k].n); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	top := hi - sheet.MM(max(0, len(at)-1))*pitch
	for _, p := range pools {
		x := min(max(p.sum/sheet.MM(p.n), lo), max(top, lo))
		for range p.n {
			mid = append(mid, x+sheet.MM(len(mid))*pitch)
		}
	}
	return mid, top >= lo-1e-9
}

// Slots places boxes of width w along a line in their order, each as near to
// its wish as may be, none upon another or upon a closed interval. It is
// exact on a lattice of step mm: least sum of squared shifts by dynamic
// programming. ok is false when there is no room.
func Slots(wish []sheet.MM, w sheet.MM, closed [][2]sheet.MM, lo, hi, step sheet.MM) (mid []sheet.MM, ok bool) {
	n := int((hi-lo)/step) + 1
	if len(wish) == 0 {
		return nil, true
	}
	if n < 1 {
		return nil, false
	}
	open := make([]bool, n)
	for i := range open {
		x := lo + sheet.MM(i)*step
		open[i] = x-w/2 >= lo-1e-9 && x+w/2 <= hi+1e-9
		for _, c := range closed {
			if x+w/2 > c[0]+1e-9 && x-w/2 < c[1]-1e-9 {
				open[i] = false
				break
			}
		}
	}
	return slots(wish, w, open, lo, step)
}

func slots(wish []sheet.MM, w sheet.MM, open []bool, lo, step sheet.MM) ([]sheet.MM, bool) {
	const inf = sheet.MM(1e30)
	places := len(open)
	gap := int(w/step + 1 - 1e-9)
	prev := make([]sheet.MM, places) // least cost with the boxes so far, the last at or before i
	from := make([][]int, len(wish))
	for box, wished := range wish {
		cur := make([]sheet.MM, places)
		from[box] = make([]int, places)
		best, at := inf, -1
		for i := range places {
			before := sheet.MM(0)
			if box > 0 {
				before = inf
				if i >= gap {
					before = prev[i-gap]
				}
			}
			off := lo + sheet.MM(i)*step - wished
			if open[i] && before < inf && before+off*off < best {
				best, at = before+off*off, i
			}
			cur[i], from[box][i] = best, at
		}
		prev = cur
	}
	if prev[places-1] >= inf {
		return nil, false
	}
	return trace(from, gap, lo, step), true
}

// trace reads the best places back from the table of choices.
func trace(from [][]int, gap int, lo, step sheet.MM) []sheet.MM {
	mid := make([]sheet.MM, len(from))
	i := len(from[0]) - 1
	for k := len(from) - 1; k >= 0; k-- {
		at := from[k][i]
		mid[k] = lo + sheet.MM(at)*step
		i = at - gap
	}
	return mid
}
