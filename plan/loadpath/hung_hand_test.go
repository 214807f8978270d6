package loadpath

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/capacity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ridgeLinks of an example, by ID, with its analysis.
func ridgeLinksOf(t *testing.T, name, text string) (*analysis, map[string]*Link) {
	t.Helper()
	a := reportOf(WorkOut(name, text).Placed).work
	links := map[string]*Link{}
	for _, c := range Checks() {
		if c.ID == "ridge-tie" {
			for _, l := range ridgeTies(c, a) {
				links[l.ID] = l
			}
		}
	}
	return a, links
}

// The rafter in line with dunlin's ridge has a strap over the ridge, which pulls it up its
// slope: what holds its end down are the nails of the two hips' hangers in it, 7 of 14
// each. The 7 in the last pair carry that and the hip: 10d x 1 1/2 in 14 gauge, 1.43 in
// deep, 197.3 lb each, 1381; less the hip's 1076 each hanger has 305 over, both 610. The
// rafter itself holds nothing of the hips: each has the 1381 of the pair's nails alone, and
// the pair, which takes all that comes to the ridge, no share again.
func TestHipsHangersHoldTheRafterInLine(t *testing.T) {
	a, links := ridgeLinksOf(t, "dunlin.toml", string(Source(t, "dunlin.toml")))
	in, one, two, pair := links["main-144b-RR"], links["main-144c-RR"], links["main-144d-RR"], links["main-144-RR"]
	for _, l := range []*Link{in, one, two, pair} {
		require.NotNil(t, l)
	}
	require.Equal(t, plan.HipRafter, one.Joint.First().Role)
	own := a.peaks[in.Joint].demand
	require.Positive(t, own)
	assert.InDelta(t, own, in.Demand, 1e-6)
	for _, hip := range []*Link{one, two} {
		assert.InDelta(t, 7*197.3, hip.Capacity.Value, 1)
		assert.InDelta(t, 1076, hip.Demand, 1)
	}
	assert.InDelta(t, 2*(7*197.3-1076), in.Capacity.Value, 3)
	assert.True(t, in.Capacity.NotMakers)
	assert.InDelta(t, a.peaks[pair.Joint].demand*a.slopedTie(pair.Joint), pair.Demand, 1e-6)
	assert.Equal(t, "a strap over the ridge pulls a rafter that has none opposite up its slope, not down", a.allowed.At(in.Joint, capacity.Upward).Unknown)
}

// With 10 nails each hanger has 5 x 197.3 = 987 lb in the pair, less than the hip's 1076: it
// fails, and nothing is over for the rafter in line. Without the hangers nothing holds either.
func TestHangersWithTooFewNailsDoNotHoldTheRafterInLine(t *testing.T) {
	text := string(Source(t, "dunlin.toml"))
	few := text + `
[[item]]
mark = "hip-end-hanger"
override = true
nails = [
  { type = "10d x 1 1/2", to_rafter = 8, rows = 1, spacing = "1 1/2in", end_distance = "1 3/8in", stagger = true, coating = "hot-dip zinc" },
  { type = "10d x 1 1/2", to_ridge = 10, rows = 2, spacing = "1 1/2in", end_distance = "2 1/8in", stagger = true, coating = "hot-dip zinc" },
]
`
	_, links := ridgeLinksOf(t, "dunlin.toml", few)
	assert.InDelta(t, 5*197.3, links["main-144c-RR"].Capacity.Value, 1)
	assert.InDelta(t, 1076/987.0, links["main-144c-RR"].Ratio, 0.005)
	assert.NotEmpty(t, links["main-144b-RR"].Gap)
	bare := strings.Replace(text, "[[rule]]\nname = \"hip hangers\"\nat = \"rafter-ridge\"\nuse = \"hip-end-hanger\"\nwhere = { role = \"hip rafter\" }\n", "", 1)
	require.NotEqual(t, text, bare)
	_, links = ridgeLinksOf(t, "dunlin.toml", bare)
	assert.NotEmpty(t, links["main-144b-RR"].Gap)
	assert.NotEmpty(t, links["main-144c-RR"].Gap)
}

// In an L the rafters beside the east hips end at the valley with one foot: what the
// hips bring to the ridge is in the forces of a pair 8 ft away, while their hangers are
// nailed to this one, and to the rafter in line, which they hold too. All three are added
// here. The feet lie 46.9 in and 142.0 in from the ridge at 6 in 12, 23.45 in and 71.0 in
// under it: moments about them give H = P a b / (h1 b + h2 a) = P / (2 tan) = (49 + 768 +
// 161 lb) / 1 = 978 lb level, and of its own (1 / 35.26 in where level feet would have 47.2)
// 229 lb; 1207 lb along the slope are 1349 lb.
func TestHipsHangOnAPairWithoutAPlate(t *testing.T) {
	a, links := ridgeLinksOf(t, "elbow.toml", string(elbow(t)))
	beside, one, two, far := links["main-336-RR"], links["main-336c-RR"], links["main-336d-RR"], links["main-240-RR"]
	for _, l := range []*Link{beside, one, two, far} {
		require.NotNil(t, l)
	}
	p := a.pairAt[beside.Joint]
	require.NotNil(t, p)
	require.False(t, p.onPlates())
	all := one.Demand + two.Demand + links["main-336b-RR"].Demand
	level := all * p.apex * (p.span - p.apex) / p.span / p.rise
	assert.InDelta(t, (a.peaks[beside.Joint].demand+level)*a.slopedTie(beside.Joint), beside.Demand, 1e-6)
	assert.InDelta(t, 1349, beside.Demand, 3)
	assert.True(t, a.takes(a.pairAt[far.Joint], two.Joint))
	assert.False(t, a.takes(p, two.Joint))
	assert.InDelta(t, a.peaks[far.Joint].demand*a.slopedTie(far.Joint), far.Demand, 1e-6, "and none is relieved")
}
