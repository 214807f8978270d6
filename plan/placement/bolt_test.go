package placement_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// placedFrom takes a plan as far as its pieces. It goes without the stages after them,
// whose packages would be built again for each change to this one.
func placedFrom(t *testing.T, file string, src []byte) *placement.Placement {
	t.Helper()
	p, ds := read.Plan(file, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), n)) })
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.NewIn(p.Project.Units, p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	placed, ds := placement.Place(h, c)
	require.False(t, ds.Errors(), "%v", ds)
	return placed
}

// example takes one file as far as its pieces.
func example(t *testing.T, file string) *placement.Placement {
	t.Helper()
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	return placedFrom(t, file, src)
}

// examples takes every example, and some plans besides, as far as its pieces.
func examples(t *testing.T, more ...string) map[string]*placement.Placement {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.toml")
	require.NoError(t, err)
	out := map[string]*placement.Placement{}
	for _, file := range append(files, more...) {
		if !strings.HasSuffix(file, "hardware.toml") {
			out[filepath.Base(file)] = example(t, file)
		}
	}
	return out
}

// A bolt stands in the plate it holds, with its washer on it and clear of
// every member that stands there: not in a doorway, where the plate is cut,
// and not where a king or a corner's second post is.
func TestBoltsStandOnTheirPlateClearOfMembers(t *testing.T) {
	bolts := 0
	for file, r := range examples(t, "testdata/bolt-too-short.toml") {
		for _, p := range r.Pieces {
			if p.Item.Kind.Name != "anchor bolt" || p.Joint.Wall == nil {
				continue
			}
			bolts++
			half, z := p.Item.Washer/2-0.05, p.Path[0].Z-hardware.Past(p.Item.Rod, p.Item.Washer) // the plate's top
			on := false
			for _, m := range r.House.Members {
				if m.Wall != p.Joint.Wall || m.Role == plan.Rim { // the rim stands on the sill's edge, beside the washer
					continue
				}
				switch {
				case (m.Role == plan.SillPlate || m.Role == plan.BottomPlate) && m.S0 <= p.Station-half && p.Station+half <= m.S1:
					on = on || m.Z1 > z-0.01 && m.Z1 < z+0.01
				case m.Z0 < z+0.5 && m.Z1 > z+2:
					assert.False(t, m.S0 < p.Station+half && p.Station-half < m.S1, "%s: %s at %.2f stands in %s", file, p.Tag, p.Station, m.ID)
				}
			}
			assert.True(t, on, "%s: %s at %.2f is on no plate at %.2f", file, p.Tag, p.Station, z)
		}
	}
	assert.Greater(t, bolts, 50)
}

// A sill bolt keeps clear of the rod under a hold-down at its post: two nuts
// need a washer and an inch between their middles.
func TestSillBoltsKeepClearOfHoldDownRods(t *testing.T) {
	r := example(t, "../../examples/curlew-row.toml")
	rods := 0
	for _, p := range r.Pieces {
		if p.Item.Mark != "cast-in-rod" {
			continue
		}
		rods++
		for _, q := range r.Pieces {
			if q.Item.Mark == "sill-bolt" && q.Joint.Wall == p.Joint.Wall && q.Joint.First() == p.Joint.First() {
				assert.GreaterOrEqual(t, math.Abs(p.Station-q.Station), 4-1e-9, "%s and %s", p.Tag, q.Tag)
			}
		}
	}
	assert.Greater(t, rods, 20)
}

// A hold-down's body and rod stand on the wall, beside their post, in no other
// stud.
func TestHoldDownsStandOnTheWallClearOfMembers(t *testing.T) {
	holdDowns := 0
	for file, r := range examples(t) {
		for _, p := range r.Pieces {
			if p.Item.Bodies == 0 {
				continue
			}
			holdDowns++
			reach := p.Item.Center - 0.05
			assert.True(t, p.Station-reach >= 0 && p.Station+reach <= p.Joint.Wall.Length(), "%s: %s at %.2f is off the wall", file, p.Tag, p.Station)
			for _, m := range r.House.Members {
				if m.Wall != p.Joint.Wall || !m.Role.FullHeight() || m.Z0 > p.Z1-1 || m.Z1 < p.Z1 {
					continue
				}
				assert.False(t, m.S0 < p.Station+reach && p.Station-reach < m.S1, "%s: %s at %.2f stands in %s", file, p.Tag, p.Station, m.ID)
			}
		}
	}
	assert.Greater(t, holdDowns, 50)
}

// Bolts asked for at every stud stand at least a washer and an inch apart,
// also where a king stands against its jack.
func TestNoTwoBoltsTakeOnePlace(t *testing.T) {
	src, err := os.ReadFile("../../examples/shed.toml")
	require.NoError(t, err)
	each := strings.Replace(string(src), `, at_most = "3' 6in"`, "", 1)
	require.NotEqual(t, string(src), each)
	r := placedFrom(t, "../../examples/shed.toml", []byte(each))
	bolts := map[string][]float64{}
	for _, p := range r.Pieces {
		if p.Item.Mark != "sill-bolt" {
			continue
		}
		for _, s := range bolts[p.Joint.Host] {
			assert.GreaterOrEqual(t, math.Abs(s-p.Station), 4-1e-9, p.Tag)
		}
		bolts[p.Joint.Host] = append(bolts[p.Joint.Host], p.Station)
	}
	assert.Len(t, bolts, 4)
}
