package placement_test

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"

	"github.com/stretchr/testify/require"
)

// hipHouse is 24 by 16 ft under a hip roof with rafters at 2 ft: the ridge is
// 8 ft long, and each hip has three jacks to either side, at 2, 4 and 6 ft.
const hipHouse = `
level = [{ name = "floor", plate_height = "8' 1 1/8in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "E", to = ["24'", "16'"] },
  { name = "N", to = ["0'", "16'"] }, { name = "W", to = ["0'", "0'"] },
]
roof = [{ kind = "hip", ridge = "x", pitch = "6:12", rafters = "2x8 @ 24in" }]
item = [
  { mark = "over", kind = "ridge strap", length = "30in", width = "1 3/8in", thickness = "19 ga", nails = { type = "10d x 1 1/2", each_end = 7 } },
  { mark = "hang", kind = "hanger", thickness = "17 ga", nails = { type = "10d x 1 1/2", to_rafter = 7, to_hip = 5 } },
]
project = { name = "Check", date = 2026-03-02 }
site = { wind_speed = "150 mph", exposure = "C" }
rule = [
`

func placed(t *testing.T, rules string) (*placement.Placement, plan.Diagnostics) {
	t.Helper()
	p, ds := read.Plan("plan.toml", []byte(hipHouse+rules+"]\n"), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.Empty(t, ds)
	c, ds := hardware.New(p.Items)
	require.Empty(t, ds)
	return placement.Place(h, c)
}

func TestRulesTellJacksFromRaftersAtTheRidge(t *testing.T) {
	pl, ds := placed(t, `
  { at = "rafter-ridge", use = "over", where = { role = "rafter", against = "ridge" }, except = { from = "7' 11in", to = "8' 1in" } },
  { at = "rafter-ridge", use = "hang", where = { role = "rafter", against = "hip rafter" } },
`)
	require.Empty(t, ds)
	n := map[string]int{}
	for _, x := range pl.Pieces {
		n[x.Item.Mark]++
		require.Equal(t, x.Item.Mark == "hang", strings.Contains(x.Joint.Host, "/hip"), x.Tag)
	}
	require.Equal(t, 4*2*3, n["hang"])
}

func TestARidgeStrapWhereThereIsNoRidgeIsToldWithItsMend(t *testing.T) {
	_, ds := placed(t, `
  { at = "rafter-ridge", use = "over", where = { role = "rafter", against = "hip rafter" } },
  { at = "rafter-ridge", use = "hang", where = { role = "hip rafter" } },
`)
	require.True(t, ds.Errors())
	for _, d := range ds {
		require.Equal(t, "no-ridge", string(d.Code))
		require.Contains(t, d.Mend, `against = "ridge"`)
	}
}
