package placement_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// placeAt frames an example and asks for one item at one kind of joint.
func placeAt(t *testing.T, example string, kind plan.JointKind, it *plan.Item) []*placement.Piece {
	t.Helper()
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, example))
	require.NoError(t, err)
	p, ds := read.Plan(example, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, ds.Errors(), "%v", ds)
	p.Rules, p.Places = []*plan.Rule{{Name: "one", At: kind, Use: it.Mark}}, nil
	p.Items = []*plan.Item{it}
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	placed, _ := placement.Place(h, c)
	return placed.Pieces
}

var (
	anyClip  = plan.Item{Mark: "a-clip", Kind: plan.ClipItem, Length: 4.375, Width: 1.625, Gauge: "19", Fasteners: []plan.Fasteners{{Part: "each leg", Nail: "8d x 1 1/2", Count: 5, Parts: 2}}}
	anyStrap = plan.Item{Mark: "a-strap", Kind: plan.StrapItem, Length: 17, Width: 1.375, Gauge: "19", Lap: 6, Fasteners: []plan.Fasteners{{Part: "each end", Nail: "8d x 1 1/2", Count: 6, Parts: 2}}}
	anyHang  = plan.Item{Mark: "a-hanger", Kind: plan.HangerItem, Length: 5.125, Width: 1.625, Gauge: "19", Fasteners: []plan.Fasteners{{Part: "each half", Nail: "8d x 1 1/2", Count: 5, Parts: 2}}}
	anyBolt  = plan.Item{Mark: "a-bolt", Kind: plan.AnchorBoltItem, Length: 8, Rod: 0.5, Washer: 2, Grade: "A307"}
)

// Clips, straps, hangers and bolts lie at the place of their joint, on its two
// members.
func TestHardwareLiesAtTheJointsOfFloorsAndHeaders(t *testing.T) {
	for _, c := range []struct {
		example string
		kind    plan.JointKind
		it      plan.Item
	}{
		{"marsh-wren.toml", plan.RimGirder, anyClip},
		{"marsh-wren.toml", plan.RimGirder, anyStrap},
		{"marsh-wren.toml", plan.SoleRim, anyClip},
		{"marsh-wren.toml", plan.SoleRim, anyStrap},
		{"marsh-wren.toml", plan.JoistGirder, anyClip},
		{"marsh-wren.toml", plan.GirderSplice, anyStrap},
		{"marsh-wren.toml", plan.HeaderKing, anyClip},
		{"marsh-wren.toml", plan.HeaderKing, anyStrap},
		{"marsh-wren.toml", plan.HeaderKing, anyHang},
		{"marsh-wren.toml", plan.CrippleHeader, anyClip},
		{"marsh-wren.toml", plan.CrippleHeader, anyStrap},
		{"marsh-wren.toml", plan.CripplePlate, anyClip},
		{"marsh-wren.toml", plan.CripplePlate, anyStrap},
		{"marsh-wren.toml", plan.GableStud, anyClip},
		{"marsh-wren.toml", plan.GableStud, anyStrap},
		{"marsh-wren.toml", plan.LedgerWall, anyBolt},
		{"marsh-wren.toml", plan.OutlookerGable, anyClip},
		{"marsh-wren.toml", plan.OutlookerRafter, anyClip},
		{"marsh-wren.toml", plan.FlyOutlooker, anyClip},
		{"sanderling.toml", plan.OutlookerGable, anyClip},
		{"turnstone.toml", plan.RafterLedger, anyClip},
		{"turnstone.toml", plan.RafterLedger, anyHang},
		{"turnstone.toml", plan.LedgerWall, anyBolt},
	} {
		t.Run(string(c.kind)+" "+string(c.it.Kind)+" "+c.example, func(t *testing.T) {
			pieces := placeAt(t, c.example, c.kind, &c.it)
			require.NotEmpty(t, pieces)
			for _, p := range pieces {
				j := p.Joint
				require.Len(t, p.Laid, 2, p.Tag)
				assert.Same(t, j.Members[0], p.Laid[0].Member, p.Tag)
				near := math.Inf(1)
				for _, q := range p.Path {
					near = min(near, q.Sub(j.At).Flat().Len())
				}
				assert.Less(t, near, 9.0, "%s is at %v, its joint at %v", p.Tag, p.Path, j.At)
				if c.it.Kind == plan.StrapItem && c.kind.Lies() == plan.LiesOver {
					assert.Less(t, p.Z0, j.At.Z-j.Gap/2, "%s reaches below", p.Tag)
					assert.Greater(t, p.Z1, j.At.Z+j.Gap/2, "%s reaches above", p.Tag)
					assert.InDelta(t, c.it.Length, p.Bands[0].Len(), 1e-9, p.Tag)
				}
				if c.it.Kind == plan.AnchorBoltItem {
					assert.InDelta(t, c.it.Length, p.Path[1].Sub(p.Path[0]).Len(), 1e-9)
					// A cut washer of 3/16 in, or a plate of 1/4 in, under the head.
					thick := hardware.WasherThick(c.it.Washer)
					assert.InDelta(t, j.First().Section.Breadth+j.Gap+thick, p.Path[0].Sub(j.At).Len(), 1e-6, "its head is on the ledger, which lies over the sheathing")
				}
			}
		})
	}
}

// A splice strap laid on top goes to a face that the break in a lower plate
// has, and stays on top of a break in the upper one.
func TestSpliceStrapIsOnThePlateThatBreaks(t *testing.T) {
	it := plan.Item{Mark: "a-drag", Kind: plan.CollectorStrapItem, Length: 30.25, Width: 1.375, Gauge: "17", Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 9, Parts: 2}}}
	seen := map[plan.Role]int{}
	for _, p := range placeAt(t, "marsh-wren.toml", plan.PlateSplice, &it) {
		broken := p.Joint.First()
		seen[broken.Role]++
		if broken.Role == plan.UpperPlate {
			assert.Equal(t, plan.Top, p.Face, p.Tag)
		} else {
			assert.Equal(t, plan.Outside, p.Face, p.Tag)
			for _, q := range p.Path {
				if broken.Z1-broken.Z0 < 2 { // not of a rake
					assert.InDelta(t, (broken.Z0+broken.Z1)/2, q.Z, 1e-9, p.Tag)
				}
			}
		}
	}
	assert.Positive(t, seen[plan.TopPlate])
	assert.Positive(t, seen[plan.UpperPlate])
}
