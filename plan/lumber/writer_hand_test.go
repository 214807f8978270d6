package lumber

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"
)

// Cuts that follow one another alike are told once with their number, in inches or millimeters.
func TestCutsInWords(t *testing.T) {
	for _, c := range []struct {
		cuts []float64
		want string
	}{
		{nil, ""},
		{[]float64{60}, `5'-0"`},
		{[]float64{60, 40}, `5'-0", 3'-4"`},
		{[]float64{60, 60, 40}, `2 of 5'-0", 3'-4"`},
		{[]float64{60, 40, 40, 40}, `5'-0", 3 of 3'-4"`},
		{[]float64{60, 40, 60}, `5'-0", 3'-4", 5'-0"`},
	} {
		assert.Equal(t, c.want, cutText(units.Imperial, c.cuts), "%v", c.cuts)
	}
	assert.Equal(t, "2 of 1524 mm", cutText(units.Metric, []float64{60, 60}))
}

// Pieces of 60 and 40 in, plates with a bevel, in two lengths of stock. 2x4: 60 + 1/8 + 40 are
// 100 1/8 of 102, 1 7/8 left; 80 take a stick of 96, 16 left: 180 of 198, 9.1 percent. Of three ply
// in 2x10 each is 50: 50 + 1/8 + 50 = 100 1/8 of 102, one of 96 leaves 46: 150 of 198, 24.2. By the
// foot: 15.0 and 16.5, 12.5 and 16.5. The least is a multiple of 6 in, the stocks' measure: 60
// and 40 share a stick of 102 and 80 has one of 96, 198; one and a half sticks of 102 hold three of 50,
// 153, so 156. A pile is driven, a rafter of 110 longer than any stock.
func TestTheListInFull(t *testing.T) {
	c := listed(units.Imperial)
	var text, rows, data bytes.Buffer
	require.NoError(t, c.Text(&text))
	assert.Equal(t, plan.Caution+"\n\n"+`LUMBER TO BUY
section  length  sticks
2x4      8'-6"   1
2x4      8'-0"   1
2x10     8'-6"   1
2x10     8'-0"   1

section  pieces  needed ft  bought ft  minimum ft  waste %
2x4      3       15.0       16.5       16.5        9.1
2x10     3       12.5       16.5       13.0        24.2
Each cut takes 1/8"; "minimum ft" is the least that any cutting of these pieces can buy.

PIECES
section  role                         length  pieces
2x4      cripple                      5'-0"   1
2x4      sill                         3'-4"   1
2x4      top plate, end cut at 22.5°  6'-8"   1
2x10     header                       4'-2"   3

CUTTING
section  stick  sticks  left over  cuts
2x4      8'-6"  1       1 7/8"     5'-0", 3'-4"
2x4      8'-0"  1       1'-4"      6'-8"
2x10     8'-6"  1       1 7/8"     2 of 4'-2"
2x10     8'-0"  1       3'-10"     4'-2"

LONGER THAN THE LONGEST STOCK: order to length, or splice over a bearing
section  role    length  pieces
2x8      rafter  9'-2"   1

BUILT UP OR DRIVEN: counted, not cut
section  role  length     pieces
8x8      pile  8'-2 3/4"  1
`, text.String())
	require.NoError(t, c.CSV(&rows))
	assert.Equal(t, `table,section,role,length_in,count,cuts_in,caution
buy,2x4,,102,1,,@
buy,2x4,,96,1,,@
buy,2x10,,102,1,,@
buy,2x10,,96,1,,@
piece,2x4,cripple,60,1,,@
piece,2x4,sill,40,1,,@
piece,2x4,"top plate, end cut at 22.5°",80,1,,@
piece,2x10,header,50,3,,@
cut,2x4,,102,1,60 40,@
cut,2x4,,96,1,80,@
cut,2x10,,102,1,50 50,@
cut,2x10,,96,1,50,@
long,2x8,rafter,110,1,,@
built up,8x8,pile,98.75,1,,@
`, strings.ReplaceAll(rows.String(), `"`+plan.Caution+`"`, "@"))
	require.NoError(t, c.JSON(&data))
	assert.Equal(t, `{
  "schema": "galewright/lumber/1",
  "caution": "@",
  "stock_in": [
    96,
    102
  ],
  "kerf_in": 0.125,
  "sections": [
    {
      "section": "2x4",
      "needed_in": 180,
      "bought_in": 198,
      "bound_in": 198,
      "pieces": [
        {
          "section": "2x4",
          "role": "cripple",
          "length_in": 60,
          "count": 1,
          "members": [
            "cripple"
          ]
        },
        {
          "section": "2x4",
          "role": "sill",
          "length_in": 40,
          "count": 1,
          "members": [
            "sill"
          ]
        },
        {
          "section": "2x4",
          "role": "top plate",
          "length_in": 80,
          "count": 1,
          "bevel_deg": 22.5,
          "members": [
            "top plate"
          ]
        }
      ],
      "sticks": [
        {
          "length_in": 102,
          "count": 1,
          "cuts_in": [
            60,
            40
          ],
          "left_in": 1.875
        },
        {
          "length_in": 96,
          "count": 1,
          "cuts_in": [
            80
          ],
          "left_in": 16
        }
      ]
    },
    {
      "section": "2x10",
      "needed_in": 150,
      "bought_in": 198,
      "bound_in": 156,
      "pieces": [
        {
          "section": "2x10",
          "role": "header",
          "length_in": 50,
          "count": 3,
          "members": [
            "header",
            "header",
            "header"
          ]
        }
      ],
      "sticks": [
        {
          "length_in": 102,
          "count": 1,
          "cuts_in": [
            50,
            50
          ],
          "left_in": 1.875
        },
        {
          "length_in": 96,
          "count": 1,
          "cuts_in": [
            50
          ],
          "left_in": 46
        }
      ]
    }
  ],
  "longer_than_stock": [
    {
      "section": "2x8",
      "role": "rafter",
      "length_in": 110,
      "count": 1,
      "members": [
        "rafter"
      ]
    }
  ],
  "made_up": [
    {
      "section": "8x8",
      "role": "pile",
      "length_in": 98.75,
      "count": 1,
      "members": [
        "pile"
      ]
    }
  ]
}
`, strings.ReplaceAll(data.String(), plan.Caution, "@"))
}

func listed(u units.System) *Cut {
	h := &framing.House{Plan: &plan.Plan{Lumber: plan.LumberYard{Stock: []float64{96, 102}}}}
	h.Plan.Project.Units = u
	for i, l := range []float64{60, 40, 80} {
		m := piece([]plan.Role{plan.Cripple, plan.Sill, plan.TopPlate}[i], "2x4", 3.5, l)
		h.Members = append(h.Members, m)
	}
	h.Members[2].Bevel = 22.46
	header, rafter, pile := piece(plan.Header, "3-2x10", 9.25, 50), piece(plan.Rafter, "2x8", 7.25, 110), piece(plan.Pile, "8x8", 7.5, 98.75)
	header.Section.Ply = 3
	h.Members = append(h.Members, header, rafter, pile)
	return List(h)
}

// The search for what goes beside one piece gives up after 400 tries. In a stick of 1,702 beside
// 100, 1,600 are left: n pieces of 1,500 and less fit there, each alone, one try each; then 800,
// and 798 with it, which leave nothing of it: two tries more, the last of which may be the 400th.
func TestTheSearchForCompanionsGivesUp(t *testing.T) {
	for n, found := range map[int]bool{10: true, 398: true, 399: false, 500: false} {
		left := []int{100}
		for i := range n {
			left = append(left, 1500-i)
		}
		left = append(left, 800, 798)
		want := []int{100, 1500}
		if found {
			want = []int{100, 800, 798}
		}
		assert.Equal(t, want, companions(left, 1702), "%d", n)
	}
}

// A length of which there are few is not cut more often than wanted: three of 20 from 100, where
// four would fit, and the shortest stock for them, 64 = 3 x 20 + 2 x 2; of 30 three fit, 94.
func TestPatternsToStartFrom(t *testing.T) {
	m := newMaster([]int{30, 20}, []int{7, 3}, []int{60, 64, 94, 100})
	assert.Equal(t, []pattern{{94, []int{3, 0}}, {64, []int{0, 3}}}, m.basis)
	assert.Equal(t, [][]float64{{1.0 / 3, 0}, {0, 1.0 / 3}}, m.inverse)
	assert.InDeltaSlice(t, []float64{7.0 / 3, 1}, m.use, 1e-12)
	// A piece of 30 costs a third of its stick of 94, one of 20 a third of 64.
	prices := m.prices()
	assert.InDeltaSlice(t, []float64{94.0 / 3, 64.0 / 3}, prices, 1e-12)
	// Worth most over its stick: 30, 20 and 20 in 74 ... of 94 are worth 74, of 30, 30 and 20 in
	// 84 84: none is worth more than its stick. 30 and 30 in 64, 62.7 worth, is not either; of 60
	// two of 20 and nothing are 42.7; 100 is worth what 94 is.
	_, worth := m.column(prices)
	assert.Zero(t, worth)
	// At 40 for a 30 three are worth 120, 26 over the stick of 94 and 20 over that of 100.
	best, worth := m.column([]float64{40, 10})
	assert.Equal(t, pattern{94, []int{3, 0}}, best)
	assert.InDelta(t, 26, worth, 1e-12)
	// At 30 and 25: 30, 20, 20, 20 in 96 are worth 105, three 20 in 64 75: 5 and 11 over.
	best, worth = m.column([]float64{30, 25})
	assert.Equal(t, pattern{64, []int{0, 3}}, best)
	assert.InDelta(t, 11, worth, 1e-12)
	// There the best sack is 75 to 64 = 1.171875 times its stick: 7 x 30 + 3 x 25 = 285 over that.
	assert.InDelta(t, 285/1.171875, m.proof([]float64{30, 25}), 1e-9)
	assert.InDelta(t, 6.0, m.proof([]float64{-1, 2}), 1e-9, "a price below nothing is none: 3 x 2, and no sack is over its stick")
}

// The basis of the patterns above, 7/3 of the first and 1 of the second. A new one of 2 and 1 takes
// 2/3 of a first and 1/3 of a second for each: the second runs out at 3, the first at 3.5. So it
// stands for the second, 3 times, and of the first 7/3 - 3 x 2/3 = 1/3 are left. Its row of the
// inverse is the second's, (0, 1/3) / (1/3); the first's is (1/3, 0) - 2/3 (0, 1).
func TestAPatternEntersForWhatRunsOutFirst(t *testing.T) {
	m := newMaster([]int{30, 20}, []int{7, 3}, []int{60, 64, 94, 100})
	in := pattern{84, []int{2, 1}}
	require.True(t, m.enter(in))
	assert.Equal(t, []pattern{{94, []int{3, 0}}, in}, m.basis)
	assert.InDeltaSlice(t, []float64{1.0 / 3, 3}, m.use, 1e-12)
	assert.InDeltaSlice(t, []float64{1.0 / 3, -2.0 / 3}, m.inverse[0], 1e-12)
	assert.InDeltaSlice(t, []float64{0, 1}, m.inverse[1], 1e-12)
	assert.False(t, m.enter(pattern{0, []int{-1, 0}}), "nothing runs out")
}

// Where two run out at once the first column of the inverse in which they differ tells.
func TestWhichPatternRunsOutSooner(t *testing.T) {
	m := &master{lengths: []int{30, 20}, use: []float64{2, 4, 3, 2}, inverse: [][]float64{{1, 5}, {2, 8}, {1, 0}, {1, 5}}}
	d := []float64{1, 2, 1, 1}
	assert.True(t, m.sooner(0, 2, d), "2 before 3")
	assert.False(t, m.sooner(2, 0, d))
	assert.False(t, m.sooner(0, 1, d), "2 and 4/2, 1 and 2/2, 5 and 8/2")
	assert.True(t, m.sooner(1, 0, d))
	assert.False(t, m.sooner(0, 3, d), "alike all through")
}

// A pattern is cut as often as it is used in whole, and no oftener than there are pieces; what is
// left is packed: of 30 five, of 20 two. 1.9 times three of 30 is once; the second one would take
// 2 and 2, and two of 30 are left and two of 20.
func TestSolutionInWholeSticks(t *testing.T) {
	r := relaxed{patterns: []pattern{{94, []int{3, 0}}, {0, []int{-1, 0}}, {106, []int{2, 2}}}, uses: []float64{1.9, 1, 2}}
	assert.Equal(t, []stick{{94, []int{30, 30, 30}}, {106, []int{30, 30, 20, 20}}}, r.rounded([]int{30, 20}, []int{5, 2}, []int{94, 106}))
	assert.Equal(t, []stick{{94, []int{30, 30, 30}}, {94, []int{30, 30, 20}}}, r.rounded([]int{30, 20}, []int{5, 1}, []int{94, 106}), "the second does not go: 5 - 3 and 1 are packed")
}
