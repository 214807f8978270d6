package schedule_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/plan/schedule"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// run takes an example as far as its schedule.
func run(t *testing.T, name string) *pipeline.Result {
	t.Helper()
	const dir = "../../examples/"
	src, err := os.ReadFile(dir + name)
	require.NoError(t, err)
	r, ds := pipeline.Run(name, src, func(n string) ([]byte, error) { return os.ReadFile(dir + n) })
	require.False(t, ds.Errors(), "%v", ds)
	return r
}

// TestShedCountedByHand counts the shed's whole schedule by hand.
//
// The shed is 12 by 10 ft, 2x4 at 16 in, rafters 2x6 at 16 in on its long
// walls S and N, a gable truss flush with each end.
//
// Clips, one at each rafter on each of the two bearing walls: rafters at 16 32
// 48 64 80 96 112 128, 8 of them, and 2 gable trusses: 10 a wall, 20 in all.
// Each takes 4 nails to the rafter and 7 to the plate: 20 x 11 = 220.
//
// Bolts, no more than 42 in apart along each length of sill plate: 9 in from both its
// ends, and between them in the middles of the bays of the module, 24, 40, 56 ...:
//
//	S to the door   54 long, from 9 to 45, 36 apart:            2 bolts
//	S past the door 52 long, from 101 to 135, 34 apart:         2 bolts
//	E               from 12-1/2 to 107-1/2, 95 apart: more than two times 42, and
//	                three are enough:                           4 bolts
//	N               144 long, from 9 to 135, 126 apart: the last middles within 42 are
//	                40, 72 and 104, 31 from the end:            5 bolts
//	W               as E:                                       4 bolts
//
// 17 bolts. A bolt is no nail and needs none.
func TestShedCountedByHand(t *testing.T) {
	s := run(t, "shed.toml").Schedule
	require.Len(t, s.Lines, 2)
	clip, bolt := s.Lines[0], s.Lines[1]
	assert.Equal(t, "eave-clip", clip.Item.Mark)
	assert.Len(t, clip.Pieces, 20)
	require.Len(t, clip.Nails, 1)
	assert.Equal(t, 220, clip.Nails[0].Count)
	assert.Equal(t, "sill-bolt", bolt.Item.Mark)
	assert.Len(t, bolt.Pieces, 17)
	assert.Empty(t, bolt.Nails)

	var walls []string
	for _, g := range s.By("wall") {
		walls = append(walls, g.Name)
		want := map[string]int{"S": 10 + 4, "E": 4, "N": 10 + 5, "W": 4}[g.Name]
		assert.Equal(t, want, g.Pieces(), g.Name)
	}
	assert.Equal(t, []string{"S", "E", "N", "W"}, walls)

	// Nails: 220 and 5 percent are 231. Shank pi/4 x 0.131² x 1.5 x 0.2836 =
	// 0.005734 lb, 0.95 / 0.005734 = 165 a pound: 1.40 lb, 1.4 to buy.
	//
	// The deck, by face: 14 ft with the rakes by (5 + 1 ft) x 13/12 = 78 in.
	// Course 1, 48 in: panels from the west edge to the rafter at 80 in, 92 long,
	// and on to the east edge, 76. Course 2, 30 in: 44 to the rafter at 32, a
	// whole length of 96 to that at 128, and 28. Both faces from 8 panels: 96,
	// 96, 92, 92, 76, 76, 44 + 44, 28 + 28. They are 256 for 182 ft².
	// Nails, rows of 48 in: 9 at 6 in, 13 at 4 in over the gable; rows of 30 in:
	// 6 and 9. Course 1: fly rafter 9, gable 13, four rafters 36, end 9; end 9,
	// three 27, gable 13, fly 9. Course 2: fly 6, gable 9, one 6, end 6; end 6,
	// five 30, end 6; end 6, gable 9, fly 6. With 3 outlookers of 27 1/4 in at
	// each end, 6 nails each: 67 + 58 + 27 + 42 + 21 + 36 = 251 a face.
	// Their coating is what [salt] gives for nails that no item brings.
	var b bytes.Buffer
	require.NoError(t, schedule.Order(&b, s, 0.05, "csv"))
	assert.Equal(t, strings.Join([]string{
		"section,number,name,detail,count,with_spare,order,unit,packs,pack,source,coating,caution",
		"pieces,1,eave-clip,17 ga,20,21,21,each,0,,,G185,!",
		`pieces,2,sill-bolt,"1'-0"" x 1/2"" rod",17,18,18,each,0,,,hot-dip zinc,!`,
		`nails,0,8d x 1 1/2 (0.131 x 1 1/2),by hand or gun,220,231,1.4,lb,1,box of 5 lb,"165 per lb: computed: shank at 0.2836 lb/in3, 5% for the head",hot-dip zinc,!`,
		`nails,0,8d common (0.131 x 2 1/2),by hand or gun,502,528,5.3,lb,2,box of 5 lb,100 per lb: lower of two nail charts (second-hand),` + string(s.Placement.House.Plan.Salt.Nailing) + `,!`,
		`nuts,0,"nut for 1/2"" rod",,17,18,18,each,0,,,hot-dip zinc,!`,
		`washers,0,"washer for 1/2"" rod","3"" square plate, 1/4"" thick",17,18,18,each,0,,,hot-dip zinc,!`,
		`panels,0,"7/16 in OSB, roof deck","4'-0"" x 8'-0""",8,9,9,panel,0,,"10 pieces laid, 0 of them whole, for 182 ft² of roof; cut one after the other along a panel, narrow ones in two rows: 41% waste",,!`, "",
	}, "\r\n"), strings.ReplaceAll(b.String(), `,"`+plan.Caution+`"`, ",!"))
}

func TestEveryBreakdownOfEveryExampleAddsUp(t *testing.T) {
	for _, name := range []string{"shed.toml", "marsh-wren.toml", "curlew-row.toml", "dunlin.toml", "sanderling.toml", "turnstone.toml"} {
		r := run(t, name)
		for _, by := range schedule.Keys {
			pieces, nails := 0, 0
			for _, g := range r.Schedule.By(by) {
				pieces += g.Pieces()
				for _, l := range g.Lines {
					for _, n := range l.Nails {
						nails += n.Count
					}
				}
			}
			want := 0
			for _, n := range r.Schedule.Nails() {
				want += n.Count
			}
			assert.Equal(t, len(r.Placement.Pieces), pieces, "%s by %s", name, by)
			assert.Equal(t, want, nails, "%s by %s", name, by)
		}
	}
}
