package lumber

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/framing"
)

const ft = 12 * 16 // sixteenths in a foot

// The cases are worked by hand beside each.
func TestPackByHand(t *testing.T) {
	yard := []int{8 * ft, 10 * ft, 12 * ft, 14 * ft, 16 * ft, 18 * ft, 20 * ft}
	for _, c := range []struct {
		name                 string
		pieces               []int
		stock                []int
		bought, bound, stick int
	}{
		// 4 x 92 5/8 = 370.5 in; bought in steps of 2 ft: 384 in = 32 ft at least.
		// Two and a kerf are 185 3/8 in of a 16 ft stick: 2 sticks, 32 ft.
		{"four precut studs", []int{1482, 1482, 1482, 1482}, yard, 32 * ft, 32 * ft, 2},
		// 12 ft and 8 ft out of 20 ft leave nothing for the kerf: a 12 and an 8.
		{"the kerf counts", []int{12 * ft, 8 * ft}, yard, 20 * ft, 20 * ft, 2},
		// 12 ft less 1/8 in and 8 ft come out of 20 ft to the dot.
		{"the kerf just fits", []int{12*ft - kerf, 8 * ft}, yard, 20 * ft, 20 * ft, 1},
		// only 16 ft stock: 10 + 5, 10 + 5, 9 and 4: 3 sticks; 43 ft need 3 x 16.
		{"one stock length", []int{10 * ft, 10 * ft, 9 * ft, 5 * ft, 5 * ft, 4 * ft}, []int{16 * ft}, 48 * ft, 48 * ft, 3},
		// three of 11 ft: each over half of 20 ft, so each a 12 ft stick: 36 ft.
		{"nothing pairs", []int{11 * ft, 11 * ft, 11 * ft}, yard, 36 * ft, 36 * ft, 3},
		{"a whole stick needs no cut", []int{20 * ft}, yard, 20 * ft, 20 * ft, 1},
		{"nothing", nil, yard, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, least := pack(c.pieces, c.stock)
			require.Equal(t, c.bought, cost(got))
			require.Equal(t, c.bound, least)
			require.Len(t, got, c.stick)
		})
	}
}

// best returns the least cost of cutting the pieces, by trying every way.
func best(pieces, stock []int, bins [][]int) int {
	if len(pieces) == 0 {
		total := 0
		for _, b := range bins {
			i := slices.IndexFunc(stock, func(s int) bool { return s >= used(b) })
			if i < 0 {
				return 1 << 30
			}
			total += stock[i]
		}
		return total
	}
	least := 1 << 30
	for i := 0; i <= len(bins); i++ {
		next := make([][]int, 0, len(bins)+1)
		for _, b := range bins {
			next = append(next, slices.Clone(b))
		}
		if i == len(bins) {
			next = append(next, nil)
		}
		next[i] = append(next[i], pieces[0])
		least = min(least, best(pieces[1:], stock, next))
	}
	return least
}

func TestPackAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock := slices.Compact(slices.Sorted(slices.Values(rapid.SliceOfN(rapid.IntRange(4, 10), 1, 3).Draw(t, "stock ft / 2"))))
		for i := range stock {
			stock[i] *= 2 * ft
		}
		pieces := rapid.SliceOfN(rapid.IntRange(ft, stock[len(stock)-1]), 1, 6).Draw(t, "pieces")
		got, under := pack(pieces, stock)
		least := best(pieces, stock, nil)
		var out []int
		for _, s := range got {
			require.LessOrEqual(t, used(s.cuts), s.stock)
			require.Contains(t, stock, s.stock)
			out = append(out, s.cuts...)
		}
		slices.Sort(out)
		require.Equal(t, slices.Sorted(slices.Values(pieces)), out, "every piece once")
		require.LessOrEqual(t, under, least, "the bound holds")
		require.GreaterOrEqual(t, cost(got), least)
		require.LessOrEqual(t, cost(got), least+least/3, "near the best there is")
	})
}

// house returns members as a framed house would have them.
func house() *framing.House {
	two := func(d float64, text string) plan.Lumber {
		return plan.Lumber{Ply: 1, Breadth: 1.5, Depth: d, Text: text}
	}
	h := &framing.House{Plan: &plan.Plan{Lumber: plan.LumberYard{Stock: []float64{192, 96}}}}
	add := func(id string, r plan.Role, s plan.Lumber, l float64) {
		h.Members = append(h.Members, &framing.Member{ID: id, Role: r, Section: s, Length: l})
	}
	add("1S/stud@16", plan.Stud, two(5.5, "2x6"), 92.625)
	add("1S/stud@32", plan.Stud, two(5.5, "2x6"), 92.625)
	add("1S/header", plan.Header, plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"}, 41.51)
	add("main/ridge", plan.Ridge, plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"}, 300)
	add("main/truss@0", plan.Truss, two(3.5, "2x4"), 192)
	return h
}

func TestListCountsPlyByPly(t *testing.T) {
	c := List(house())
	require.Equal(t, []float64{96, 192}, c.Stock)
	require.Len(t, c.Sections, 2)
	six, ten := c.Sections[0], c.Sections[1]
	require.Equal(t, "2x6", six.Name)
	// 2 x 92 5/8 and a kerf are 185 3/8 in: one stick of 16 ft
	require.Equal(t, []*Stick{{Length: 192, Count: 1, Cuts: []float64{92.625, 92.625}, Left: 6.625}}, six.Sticks)
	require.Equal(t, "2x10", ten.Name)
	require.Equal(t, 3, ten.Parts[0].Count)
	require.Equal(t, 41.5625, ten.Parts[0].Length, "41.51 in is cut at the next sixteenth")
	// 3 x 41 9/16 = 124 11/16 in and 2 kerfs: one stick of 16 ft; 96 + 96 costs the same, in two
	require.Equal(t, 192.0, ten.Bought)
	require.Len(t, ten.Sticks, 1)
	require.Equal(t, 192.0, ten.Bound, "124.7 in needed, in steps of 96 in")
	require.Equal(t, plan.Ridge, c.Long[0].Role)
	require.Equal(t, plan.Truss, c.Made[0].Role)
}

func TestWritersAgree(t *testing.T) {
	c := List(house())
	var text, rows, js bytes.Buffer
	require.NoError(t, c.Text(&text))
	require.NoError(t, c.CSV(&rows))
	require.NoError(t, c.JSON(&js))
	require.Contains(t, text.String(), "LONGER THAN THE LONGEST STOCK")
	all, err := csv.NewReader(&rows).ReadAll()
	require.NoError(t, err)
	require.Equal(t, "caution", all[0][len(all[0])-1])
	count := map[string]int{}
	for _, r := range all[1:] {
		require.Equal(t, plan.Caution, r[len(r)-1])
		count[r[0]]++
	}
	require.Equal(t, map[string]int{"buy": 2, "piece": 2, "cut": 2, "long": 1, "built up": 1}, count)
	var back jsonCut
	require.NoError(t, json.Unmarshal(js.Bytes(), &back))
	require.Len(t, back.Sections, 2)
	require.Equal(t, []string{"1S/header", "1S/header", "1S/header"}, back.Sections[1].Pieces[0].Members)
}

func ExampleCut_Text() {
	_ = List(house()).Text(os.Stdout)
	// Output:
	// Placed and computed from the plan as given; not a substitute for the engineer's sealed drawings and calculations. The engineer of record, local code, the manufacturer's current data and licensed practice govern.
	//
	// LUMBER TO BUY
	// section  length  sticks
	// 2x6      16'-0"  1
	// 2x10     16'-0"  1
	//
	// section  pieces  needed ft  bought ft  minimum ft  waste %
	// 2x6      2       15.4       16.0       16.0        3.5
	// 2x10     3       10.4       16.0       16.0        35.1
	// Each cut takes 1/8"; "minimum ft" is the least that any cutting of these pieces can buy.
	//
	// PIECES
	// section  role    length      pieces
	// 2x6      stud    7'-8 5/8"   2
	// 2x10     header  3'-5 9/16"  3
	//
	// CUTTING
	// section  stick   sticks  left over   cuts
	// 2x6      16'-0"  1       6 5/8"      2 of 7'-8 5/8"
	// 2x10     16'-0"  1       5'-7 1/16"  3 of 3'-5 9/16"
	//
	// LONGER THAN THE LONGEST STOCK: order to length, or splice over a bearing
	// section      role   length  pieces
	// 1.75x11.875  ridge  25'-0"  1
	//
	// TRUSSES: ordered by shape, from the truss designer's own drawings; sizes of chords as the plan takes them
	// truss  chords  plies  span    slope    height  level top  pieces  numbers
	// truss  2x4     1      16'-0"  0 in 12  0"      -          1
}
