package placement

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// placedFile places the hardware of a plan in a file, or of its text with more
// written under it.
func placedFile(t *testing.T, file, more string) (*Placement, plan.Diagnostics) {
	t.Helper()
	p, ds, err := placeFile(file, more)
	require.NoError(t, err)
	return p, ds
}

func placeFile(file, more string) (*Placement, plan.Diagnostics, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, nil, err
	}
	beside := func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), name)) }
	p, ds := read.Plan(filepath.Base(file), append(src, more...), beside)
	if ds.Errors() {
		return nil, nil, fmt.Errorf("%s: %v", file, ds)
	}
	h, ds := framing.Frame(p)
	if ds.Errors() {
		return nil, nil, fmt.Errorf("%s: %v", file, ds)
	}
	c, ds := hardware.New(p.Items)
	if ds.Errors() {
		return nil, nil, fmt.Errorf("%s: %v", file, ds)
	}
	out, ds := Place(h, c)
	return out, ds, nil
}

// Every piece of every plan has all that its kind needs.
func TestEveryLieIsWhole(t *testing.T) {
	n := 0
	for file, p := range placedPlans(t) {
		for _, q := range p.Pieces {
			n++
			whole(t, file+" "+q.Tag, q)
		}
	}
	assert.Greater(t, n, 3000)
}

func whole(t *testing.T, name string, q *Piece) {
	t.Helper()
	w := want{joint: q.Joint, item: q.Item}
	assert.Empty(t, w.lacks(&q.Lie), name)
	assert.LessOrEqual(t, q.Z0, q.Z1, name)
	assert.False(t, math.IsInf(q.Z0, 0) || math.IsNaN(q.Station), name)
	require.Len(t, q.Ends, len(q.Item.Ends()), name)
	for _, e := range q.Ends {
		require.NotNil(t, q.Laid[e.Laid].Member, name)
		for _, s := range e.Starts {
			require.NotEmpty(t, q.Strip(s), name)
		}
	}
	for _, x := range q.Laid {
		assert.False(t, x.Lap < 0 || x.Room < 0 || math.IsNaN(x.Room), "%s: %v on the %s", name, x, x.Member.Role)
	}
	for _, p := range q.plates() {
		assert.InDelta(t, 1, p.N.Len(), 1e-9, name)
		assert.InDelta(t, 0, p.N.Dot(p.B.Sub(p.A).Unit()), 1e-6, "%s: the normal is square to the steel", name)
		assert.Equal(t, q.Item.Thickness, p.Thickness, name)
		assert.Positive(t, p.Len(), name)
	}
	if q.Item.Kind.Strap {
		steel := 0.0
		for _, b := range q.Bands {
			steel += b.Len()
		}
		assert.InDelta(t, q.Length(), steel, 0.5, "%s: its plates are as long as its steel", name)
	}
}

// What is as long as a street has no room at any joint that a strap belongs
// to: every piece of it is told.
func TestNoStrapIsLongerThanItsMembers(t *testing.T) {
	done, all := map[plan.JointKind]bool{}, map[plan.JointKind]bool{}
	for _, k := range hardware.Kinds {
		for _, j := range k.On {
			if !k.Strap || !hasHut(j) {
				continue
			}
			all[j] = true
			t.Run(fmt.Sprintf("%s at %s", k.Name, j), func(t *testing.T) {
				coil := ""
				if k.Name == plan.CoilStrapItem {
					coil = "coil = \"400'\"\n"
				}
				p, ds := placedFile(t, "testdata/long-straps.plan", fmt.Sprintf(
					"[[item]]\nmark = \"street\"\nkind = %q\nlength = \"100'\"\n%swidth = \"1 3/8in\"\nthickness = \"19 ga\"\nnails = { type = \"10d x 1 1/2\", each_end = 5 }\n"+
						"[[rule]]\nat = %q\nuse = \"street\"\n", k.Name, coil, j))
				require.NotEmpty(t, p.Pieces)
				told := 0
				for _, d := range ds {
					if d.Code == "strap-past-member" {
						told++
					}
				}
				assert.Positive(t, told)
				for _, q := range p.Pieces {
					over := 0.0
					for _, x := range q.ties() {
						over = max(over, x.Lap-x.Room)
					}
					assert.Greater(t, over, 12.0, q.Tag)
				}
				done[j] = true
			})
		}
	}
	assert.Equal(t, all, done, "all kinds of joint that the plan has and a strap belongs to")
}

// hasHut tells whether the plan of these tests has joints of a kind.
func hasHut(j plan.JointKind) bool {
	return j != plan.PostBase && j != plan.RafterLedger && j != plan.GirderPlate && j != plan.DormerTop && j != plan.DormerFoot
}

// The legs of a clip at a rafter: on the plates' edges below the seat, and up
// the rafter's side over the plates.
func TestLegsOfAClip(t *testing.T) {
	h, m := seated(top2 + 4)
	p, ds := placed(t, h.with(plan.Rule{Name: "c", At: "rafter-plate", Use: "plate-clip", Face: "right"}), func(i map[string]*plan.Item) {
		i["plate-clip"].Legs = [2]float64{2.75, 1.5}
	})
	require.Empty(t, ds)
	q := one(t, p)
	require.Len(t, q.Bands, 1)
	want := geom.Band{
		{A: geom.Vec3{X: 33.5625, Z: top2 - 1.5}, B: geom.Vec3{X: 33.5625, Z: top2}, N: geom.Vec3{Y: -1}, Width: 1.625, Thickness: .0538},
		{A: geom.Vec3{X: 32.75, Y: 0.8125, Z: top2}, B: geom.Vec3{X: 32.75, Y: 0.8125, Z: top2 + 2.75}, N: geom.Vec3{X: 1}, Width: 1.625, Thickness: .0538},
	}
	for i, p := range q.Bands[0] {
		assert.InDelta(t, 0, p.A.Sub(want[i].A).Len()+p.B.Sub(want[i].B).Len()+p.N.Sub(want[i].N).Len(), 1e-9, "leg %d: %v", i, p)
	}
	assert.Same(t, m, q.Laid[0].Member)
	assert.Equal(t, plan.UpperPlate, q.Laid[1].Member.Role)
	// "to stud" names neither: the first end is on the member held, from the leg's head.
	assert.Equal(t, []EndAt{{Laid: 0, Starts: []Start{{Band: 0, Far: true}}}}, q.Ends)
}

// The legs of a clip at a stud: on its side, and turned under or onto the plate.
func TestLegsOfAStudClip(t *testing.T) {
	for kind, z := range map[plan.JointKind]float64{plan.StudTop: top1 - 3, plan.StudBase: floor1 + 1.5} {
		up := 1.0
		if kind == plan.StudTop {
			up = -1
		}
		p, ds := placed(t, standard().with(plan.Rule{Name: "c", At: kind, Use: "plate-clip", Face: "right", Where: plan.Where{Level: []string{"first"}, From: 31, To: 33}}))
		require.Empty(t, ds)
		legs := one(t, p).Bands[0]
		require.Len(t, legs, 2)
		assert.InDelta(t, 0, legs[0].A.Sub(geom.Vec3{X: 32.75 + 2.1875, Y: 2.75, Z: z}).Len(), 1e-9, kind)
		assert.Equal(t, geom.Vec3{Z: up}, legs[0].N, "on the plate, out of its wood")
		assert.InDelta(t, 0, legs[1].B.Sub(geom.Vec3{X: 32.75, Y: 2.75, Z: z + up*2.1875}).Len(), 1e-9, kind)
		assert.Equal(t, geom.Vec3{X: 1}, legs[1].N)
	}
}

// Eleven nails are meant for two flanges and seven for each of two others: where one
// flange of the first finds no wood, it is the five of the lesser half that go in.
func TestNailsOfAFlangeWithoutWoodAreNotDriven(t *testing.T) {
	it := &hardware.Item{Item: &plan.Item{Fasteners: []plan.Fasteners{{Part: "to rafter", Count: 7, Parts: 1}, {Part: "to ridge", Count: 11, Parts: 1}}}}
	two, one := []Start{{Band: 0}, {Band: 1}}, []Start{{Band: 2}}
	for _, c := range []struct {
		on   EndAt
		left int
	}{{EndAt{Starts: two}, 0}, {EndAt{Starts: two, Of: 2}, 0}, {EndAt{Starts: one, Of: 2}, 6}, {EndAt{Starts: one}, 0}} {
		p := &Piece{Item: it, Lie: Lie{Ends: []EndAt{{Starts: two}, c.on}}}
		assert.Equal(t, c.left, p.LeftOut(1))
		assert.Zero(t, p.LeftOut(0))
		assert.Zero(t, p.LeftOut(2), "no such end")
		assert.Equal(t, []int{7, 11 - c.left}, p.Driven())
	}
}
