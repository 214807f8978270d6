package loadpath

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
)

var (
	bendsNote = regexp.MustCompile(`^deflection ([\d.]+) in at this shear: bending ([\d.]+), panel shear and nail slip ([\d.]+), anchorage ([\d.]+) \(`)
	otherNote = regexp.MustCompile(`it would be share ([\d.]+): (\d+) of (\d+) plf, ratio ([\d.]+)$`)
)

// What is noted of a segment adds up: its deflection is the sum of its parts, and that of
// the line's force by its stiffness; shared the other way, the line's force by that share
// over the counted length. A segment over 3.5 times as high as long says that it counts for
// nothing.
func TestNotesOfSegmentsAddUp(t *testing.T) {
	eachSheet(t, []string{"bends", "other", "not counted"}, func(t *testing.T, r *Report, seen map[string]int) {
		slim := sample
		slim.stories = 1
		reports := []*Report{r}
		if seen["not counted"] == 0 {
			reports = append(reports, reportOf(placed(t, strings.ReplaceAll(slim.plan(), `to = "160in"`, `to = "30in"`))))
		}
		for _, r := range reports {
			for _, l := range r.Links {
				if l.Check.ID != "unit-shear" {
					continue
				}
				x := r.LineOf(l)
				s := x.segmentOf(l)
				narrow := false
				for _, n := range l.Notes {
					if v, ok := figures(bendsNote, n); ok {
						seen["bends"]++
						assert.InDelta(t, v[1]+v[2]+v[3], v[0], 0.0066, n)
						assert.InDelta(t, ASD.W*s.V/s.Stiff, v[0], 0.0051+0.02*v[0], n)
					}
					if v, ok := figures(otherNote, n); ok {
						seen["other"]++
						assert.InDelta(t, v[1]/v[2], v[3], 0.006+0.6/v[2], n)
						assert.InDelta(t, 0.6*x.Force*v[0]/(s.Working/12), v[1], 0.6+0.001*x.Force, n)
						assert.Equal(t, x.ByLength, strings.HasPrefix(n, "by stiffness"), n)
					}
					narrow = narrow || strings.Contains(n, "exceeds 3.5: not counted")
				}
				if narrow {
					seen["not counted"]++
				}
				assert.Equal(t, s.Tallest > 3.5*s.Length && !s.Shear.Perforated, narrow, l.ID)
			}
		}
	})
}

// Small helpers, each by its table.
func TestSmallHelpersOfTheReport(t *testing.T) {
	for x, want := range map[float64]float64{0.49: 0, -0.49: 0, 0.5: 0.5, -0.5: -0.5, 3: 3, -7.25: -7.25, 0: 0} {
		assert.Equal(t, want, whole(x), "%v", x)
	}
	assert.Equal(t, []float64{0, 0, 0.25, 2}, []float64{share(5, 0), share(5, -1), share(1, 4), share(4, 2)})
	link := func(ratio, demand float64) *Link { return &Link{Ratio: ratio, Demand: demand} }
	for _, c := range []struct {
		a, b *Link
		want bool
	}{
		{link(0, 0), nil, true},
		{link(0.5, 1), link(0.4, 9), true},
		{link(0.4, 9), link(0.5, 1), false},
		{link(0.5, 9), link(0.5, 1), true},
		{link(0.5, 1), link(0.5, 9), false},
		{link(0.5, 1), link(0.5, 1), false},
		{link(math.Inf(1), 1), link(5, 9), true},
		{link(math.Inf(1), 2), link(math.Inf(1), 1), true},
	} {
		assert.Equal(t, c.want, worse(c.a, c.b), "%+v", c)
	}
	assert.Equal(t, []string{"no", "0%", "50%", "100%"}, []string{map[bool]string{true: "no"}[change(0.5, 9) == ""], percent(0), percent(0.5), percent(1)})
	assert.Equal(t, []string{" (+100%)", " (-25%)", " (+0%)"}, []string{change(50, 100), change(100, 75), change(8, 8)})
}

// A roof of no more than 7 degrees has its zones by 0.6 h and 0.2 h from the edges: of 20 ft
// 12 and 4 ft. A steeper one has them by a; a house without a roof has walls alone; in 7-22
// a word on overhangs comes to it.
func TestWidthsOfTheZonesInWords(t *testing.T) {
	p := &plan.Plan{}
	widths := func(theta float64, main *plan.Roof, e plan.Edition) string {
		r := &Report{Main: main, Placement: &placement.Placement{House: &framing.House{Plan: p}}}
		r.Basis = wind.Basis{Theta: theta, Height: 20, Length: 60, Width: 40, Edition: e}
		return strings.Join(r.zoneWidths(), "\n")
	}
	roof := &plan.Roof{}
	for _, theta := range []float64{3, 7} {
		assert.Contains(t, widths(theta, roof, plan.ASCE716), `0.6 h = 12'-0" and 0.2 h = 4'-0" from the edges`)
	}
	steep := widths(8, roof, plan.ASCE716)
	assert.Contains(t, steep, `lie within 4'-0" of eaves`, "0.1 of 40 ft, under 0.4 h")
	assert.NotContains(t, steep, "0.6 h")
	assert.Contains(t, steep, `a = 4'-0"`)
	bare := widths(8, nil, plan.ASCE716)
	assert.Contains(t, bare, `a = 4'-0"`)
	assert.NotContains(t, bare, "roof")
	assert.NotContains(t, steep, "7-22")
	assert.Contains(t, widths(8, roof, plan.ASCE722), "in 7-22 roof zones are laid out from the outer edge")
}
