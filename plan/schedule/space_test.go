package schedule

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// example counts an example house.
func example(t *testing.T, file string) *Schedule {
	t.Helper()
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	p, ds := read.Plan(file, src, func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), name)) })
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	placed, ds := placement.Place(h, c)
	require.False(t, ds.Errors(), "%v", ds)
	return New(steel.New(placed))
}

// What is counted is what there is in space: all fasteners, rods by their
// length from end to end, nuts and washers at bearings, over all examples.
func TestTheOrderIsWhatIsInSpace(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.toml")
	require.NoError(t, err)
	rods := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		if filepath.Base(file) == "hardware.toml" || len(src) == 0 {
			continue
		}
		s := example(t, file)
		assert.False(t, s.Steel.Check().Errors(), file)
		nails := 0
		for _, n := range s.Nails() {
			nails += n.Count
		}
		driven := 0
		for _, b := range s.Steel.Bodies {
			driven += len(b.Fasteners)
		}
		assert.Equal(t, driven, nails, "%s: fasteners", file)
		want := map[string]int{}
		for _, r := range s.Steel.Rods() {
			require.True(t, r.Bears(), "%s: %s: %s", file, r.For.Tag, r.Why)
			rods++
			if r.For.Item.Kind.Shape != hardware.Rod || r.For.Item.Kind.Name == plan.BraceRodItem {
				want["rods"]++
				assert.InDelta(t, r.For.Cut, r.A.Sub(r.B).Len(), 1e-6, r.For.Tag)
			} else {
				assert.InDelta(t, r.For.Item.Length, r.A.Sub(r.B).Len(), 1e-6, r.For.Tag)
			}
			for i, e := range r.Ends {
				// Between the face and the rod's end there is washer, nut and thread, or the
				// head is no part of the bolt; what is in concrete has neither.
				out := [2]float64{e.At.Sub(r.A).Len(), e.At.Sub(r.B).Len()}[i]
				switch {
				case e.Kind == steel.CastIn:
					assert.Zero(t, e.Nuts+e.Washers)
					at := slices.IndexFunc(r.Passes, func(x steel.Run) bool { return x.Member.Role == plan.SillPlate })
					assert.GreaterOrEqual(t, r.Passes[at].Member.Z0-r.B.Z, 7-0.01, "%s: embedment", r.For.Tag)
				case e.Nuts > 0:
					assert.GreaterOrEqual(t, out, r.Diameter+0.25, "%s: nut and thread", r.For.Tag)
					fallthrough
				default:
					assert.Equal(t, 1, e.Washers, r.For.Tag)
				}
				want["nuts"] += e.Nuts
				want["washers"] += e.Washers
			}
		}
		got := map[string]int{}
		for _, o := range s.Orders(0) {
			if o.Section == "rods" || o.Section == "nuts" || o.Section == "washers" {
				got[o.Section] += o.Count
			}
		}
		assert.Equal(t, want, got, file)
	}
	assert.Greater(t, rods, 100)
}

// Where sanderling's wing ends in the corner of a valley and a hip, one flange of
// each hanger has no wood: the catalog's 14 nails "to ridge" of the hip's
// hip-end-hanger are shared by two flanges, so 7 of the 22 of that piece are not
// driven, and of the other such pieces, with both flanges on wood, none.
func TestNailsOfAFlangeWithoutWoodAreNotBought(t *testing.T) {
	s := example(t, "../../examples/sanderling.toml")
	left := map[string]int{}
	for _, l := range s.Lines {
		full := 0
		for i, f := range l.Item.Fasteners {
			full += f.Total() * len(l.Pieces)
			left[l.Item.Mark] += f.Total()*len(l.Pieces) - l.Driven[i]
		}
		sum := 0
		for _, n := range l.Nails {
			sum += n.Count
		}
		assert.Equal(t, full-left[l.Item.Mark], sum, l.Item.Mark)
		if left[l.Item.Mark] == 0 {
			delete(left, l.Item.Mark)
		}
	}
	assert.Equal(t, map[string]int{"hip-end-hanger": 7, "valley-end-hanger": 8}, left)
	p := s.Placement.Piece("wing-312b-RR-hanger")
	assert.Equal(t, []int{8, 7}, p.Driven())
	assert.Equal(t, []int{0, 7}, []int{p.LeftOut(0), p.LeftOut(1)})
}

// A bolt across a girder and its pile has a head, a nut and a washer at each;
// the anchor rod of a hold-down one nut, on the seat.
func TestWashersOfBoltsAndAnchors(t *testing.T) {
	s := example(t, "../../examples/marsh-wren.toml")
	bolts := 0
	for _, r := range s.Steel.Rods() {
		if r.For.Item.Mark == "pile-bolt" {
			bolts++
			assert.Equal(t, [4]int{0, 1, 1, 1}, [4]int{r.Ends[0].Nuts, r.Ends[0].Washers, r.Ends[1].Nuts, r.Ends[1].Washers})
		}
	}
	assert.Positive(t, bolts)
	s = example(t, "../../examples/curlew-row.toml")
	anchors := 0
	for _, p := range s.Placement.Pieces {
		if p.Item.Kind.Name != plan.HoldDownItem {
			continue
		}
		anchors++
		r := s.Steel.Body(p).Rods
		require.Len(t, r, 1)
		assert.Equal(t, plan.AnchorRodItem, r[0].For.Item.Kind.Name, "it is bought with the anchor")
		seat := p.Rod.A.Z - hardware.Past(p.Item.Rod, 0)
		assert.Greater(t, r[0].A.Z, seat+p.Item.Rod, "the rod comes up through seat and nut")
		assert.Equal(t, steel.OnSeat, r[0].Ends[0].Kind)
		assert.InDelta(t, seat, r[0].Ends[0].At.Z, 1e-9)
		assert.Equal(t, steel.CastIn, r[0].Ends[1].Kind)
	}
	assert.Positive(t, anchors)
}
