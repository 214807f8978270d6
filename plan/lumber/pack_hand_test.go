package lumber

import (
	"bytes"
	"encoding/csv"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No cutting from sticks of 60 and 100 sixteenths, 2 lost in each cut, can buy less than
// this. What is over half of 100 takes a stick of its own, the shortest that holds it; what
// is not fits beside those first; and all that is bought is a multiple of 20.
func TestBoundByHand(t *testing.T) {
	for _, c := range []struct {
		pieces []int
		want   int
	}{
		{nil, 0},
		{[]int{70}, 100},
		{[]int{60}, 60},
		{[]int{61}, 100},
		{[]int{50}, 60},              // two of 50 and a cut are 102
		{[]int{50, 50}, 120},         // one each
		{[]int{49, 49}, 100},         // two of 49 and a cut are 100: 98, so 100
		{[]int{30}, 40},              // a multiple of 20
		{[]int{70, 30}, 100},         // beside it
		{[]int{70, 35}, 120},         // 5 more than that
		{[]int{70, 55, 20}, 160},     // 100 + 60; 20 fits in the 30 + 5 left over
		{[]int{70, 49, 2}, 140},      // 51, of which 30 fit: 21 more
		{[]int{70, 70, 40, 40}, 220}, // 200, and 80 - 60 more
	} {
		assert.Equal(t, c.want, bound(c.pieces, []int{60, 100}), "%v", c.pieces)
	}
	for _, c := range [][3]int{{0, 20, 0}, {1, 20, 20}, {20, 20, 20}, {21, 20, 40}} {
		assert.Equal(t, c[2], multiple(c[0], []int{60, 100}), "%v", c)
	}
	assert.Equal(t, 192, multiple(100, []int{192}))
	assert.Equal(t, 6, gcd(18, 24))
	assert.Equal(t, 7, gcd(0, 7))
}

// The sack takes what is worth most: from 100 and the cut after it, 102, pieces of 30 take
// 32 and are worth 10, one of 45 takes 47 and is worth 16, no more of either than there are.
func TestTheSackTakesWhatIsWorthMost(t *testing.T) {
	for _, c := range []struct {
		demand []int
		top    int
		want   []int
		worth  float64
	}{
		{[]int{3, 1}, 102, []int{3}, 30},    // 96 in all, over 26 for one of each
		{[]int{2, 1}, 102, []int{1, 1}, 26}, // 79; two of 30 are worth 20
		{[]int{9, 1}, 102, []int{3}, 30},
		{[]int{3, 1}, 79, []int{1, 1}, 26},
		{[]int{3, 1}, 78, []int{2}, 20},
		{[]int{3, 1}, 31, []int{0}, 0},
		{[]int{1, 1}, 102, []int{1, 1}, 26},
	} {
		m := &master{lengths: []int{30, 45}, demand: c.demand, stock: []int{60, 100}}
		k := m.knapsack([]float64{10, 16})
		assert.InDelta(t, c.worth, k.value[c.top], 1e-9, "%v in %d", c.demand, c.top)
		got := k.counts(c.top, 2)
		for len(got) > 1 && got[len(got)-1] == 0 {
			got = got[:len(got)-1]
		}
		assert.Equal(t, c.want, got, "%v in %d", c.demand, c.top)
	}
	m := &master{lengths: []int{30, 45}, demand: []int{3, 1}, stock: []int{100}}
	assert.Zero(t, m.knapsack([]float64{0, -1}).value[102], "what is worth nothing is not taken")
}

// Over 4,000 pieces only first fit is tried: each piece as long as the stick has one.
func TestManyPiecesAsLongAsTheStick(t *testing.T) {
	pieces := slices.Repeat([]int{100}, searchPieces+1)
	assert.Len(t, heuristic(pieces, []int{60, 100}), searchPieces+1)
	assert.Nil(t, heuristic(nil, []int{100}))
	// Of 40 and 58 one stick of 100; of 70 and 40 one of 100 and one of 60.
	assert.Equal(t, []stick{{100, []int{58, 40}}}, heuristic([]int{58, 40}, []int{60, 100}))
	assert.Equal(t, 160, cost(heuristic([]int{70, 40}, []int{60, 100})))
	// First fit puts 44 with 42 and needs three sticks; 44, 30 and 22 with two cuts are 100, and
	// so are 42, 32 and 22.
	assert.Equal(t, 200, cost(heuristic([]int{44, 42, 32, 30, 22, 22}, []int{60, 100})))
	a, b := []stick{{100, nil}, {100, nil}}, []stick{{200, nil}}
	assert.Equal(t, b, better(a, b), "as long in fewer sticks")
	assert.Equal(t, b, better(b, a))
	assert.Equal(t, a, better(nil, a))
	assert.Equal(t, a, better(a, []stick{{201, nil}}), "the cheaper one")
}

// A length is cut at the next sixteenth, unless it is one but for the last digits.
func TestLengthsOnTheTape(t *testing.T) {
	for in, want := range map[float64]float64{92.625: 92.625, 92.6250001: 92.625, 92.626: 92.6875, 41.51: 41.5625, 0: 0, 0.01: 0.0625} {
		assert.InDelta(t, want, tape(in), 1e-9, "%v", in)
	}
}

// The head of the CSV names each column with its unit; a metric plan's lengths are in
// millimeters to the tenth: 92 5/8 in are 2,352.7 mm (2,352.675), 16 ft 4,876.8.
func TestCSVInBothSystems(t *testing.T) {
	for _, c := range []struct {
		u         units.System
		length    string
		cut, long string
	}{{units.Imperial, "length_in", "92.625", "192"}, {units.Metric, "length_mm", "2352.7", "4876.8"}} {
		h := &framing.House{Plan: &plan.Plan{Lumber: plan.LumberYard{Stock: []float64{192}}}, Members: []*framing.Member{piece(plan.Stud, "2x4", 3.5, 92.625), piece(plan.Stud, "2x4", 3.5, 92.625)}}
		h.Plan.Project.Units = c.u
		var b bytes.Buffer
		require.NoError(t, List(h).CSV(&b))
		rows, err := csv.NewReader(&b).ReadAll()
		require.NoError(t, err)
		assert.Equal(t, [][]string{
			{"table", "section", "role", c.length, "count", "cuts" + c.length[6:], "caution"},
			{"buy", "2x4", "", c.long, "1", "", plan.Caution},
			{"piece", "2x4", "stud", c.cut, "2", "", plan.Caution},
			{"cut", "2x4", "", c.long, "1", c.cut + " " + c.cut, plan.Caution},
		}, rows, c.u)
	}
}
