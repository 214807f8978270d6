package placement_test

import (
	"os"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/plantest"
	"galewright/plan/read"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// demoWith places the demo house after changes of its text, old and new by turns.
func demoWith(t *testing.T, edits ...string) (*placement.Placement, plan.Diagnostics) {
	t.Helper()
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, "marsh-wren.toml"))
	require.NoError(t, err)
	p, ds := read.Plan("marsh-wren.toml", plantest.Edit(t, src, edits...), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.New(p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	return placement.Place(h, c)
}

// coded returns the diagnostics of a code.
func coded(ds plan.Diagnostics, code plan.Code) (out plan.Diagnostics) {
	for _, d := range ds {
		if d.Code == code {
			out = append(out, d)
		}
	}
	return out
}

// Of a strap to a girder by hand: 13.469 in between stud and girder (sole plate
// 1.5, subfloor 23/32, rim 11.25), 7 in on the girder and 6.5 on the stud for 9
// nails at 3/4 in: 26.97 in. The house's own has 10 nails, and 7 3/4 in. One of 24 in is some 3 in too short, and is told so.
func TestAStrapToTheGirderIsLongEnough(t *testing.T) {
	placed, ds := demoWith(t)
	require.Empty(t, ds)
	n := 0
	for _, p := range placed.Pieces {
		if p.Item.Mark != "base-strap" {
			continue
		}
		n++
		require.Equal(t, plan.GirderBeam, p.Laid[1].Member.Role, p.Tag)
		require.Len(t, p.Bands[0], 1, "it lies flat")
		require.InDelta(t, p.Laid[1].Member.Z1, p.Z0+7.75, 1e-9, p.Tag)
	}
	require.Equal(t, 33+22+34+23+12, n, "one at each full stud, as the hand count of walls 1S, 1E, 1N and 1W has them, and at the second stud of the 8 ends of shear segments within them and of 4 at the ends of 1E and 1W")

	_, ds = demoWith(t, `use = "base-strap"`, `use = "short-strap"`, "[[rule]]\nname = \"rafter clips\"\n", `[[item]]
mark = "short-strap"
kind = "strap"
length = "24in"
width = "1 3/8in"
thickness = "17 ga"
nails = { type = "10d x 1 1/2", each_end = 9 }

[[rule]]
name = "rafter clips"
`)
	short := coded(ds, "strap-too-short")
	require.NotEmpty(t, short)
	assert.Contains(t, short[0].Mend, `take a strap of at least 2'-3"`)
}

// A girder whose face is not that of the studs is told, with how far it is.
func TestAStrapToAGirderLiesFlat(t *testing.T) {
	_, ds := demoWith(t, `"2 1/4in"`, `"2 3/4in"`)
	off := coded(ds, "faces-not-flush")
	require.NotEmpty(t, off)
	assert.Contains(t, off[0].Summary, `the outside face of the girder lies 1/2" behind the stud's`)
	assert.Contains(t, off[0].Mend, `pack it out (packing = "1/2in" of the girder)`)
}

// Packed out by as much, the straps lie flat, and their nails pass 1/2 in of packing
// that holds nothing: of 1 1/2 in, less 0.056 in of 17 ga steel, 0.944 in is in the
// girder, and as much less than in the stud.
func TestAStrapLiesFlatOnPacking(t *testing.T) {
	placed, ds := demoWith(t, "name = \"GS\"\nfrom = [\"0'\", \"2 1/4in\"]\nto = [\"44'\", \"2 1/4in\"]",
		"name = \"GS\"\npacking = \"1/2in\"\nfrom = [\"0'\", \"2 3/4in\"]\nto = [\"44'\", \"2 3/4in\"]")
	require.Empty(t, coded(ds, "faces-not-flush"))
	boards := 0
	for _, m := range placed.House.Members {
		if m.Role == plan.Packing {
			boards++
			require.InDelta(t, 0.25, m.A.Y, 1e-9, "between the studs' face at 0 and the girder's at 1/2 in")
			require.Equal(t, `1/2" x 11 1/4"`, m.Section.Text)
		}
	}
	assert.Equal(t, 3, boards, "one a piece of the girder")
	p := placed.Piece("1S-160-SB-strap")
	require.NotNil(t, p)
	require.Len(t, p.Bands[0], 1)
	for _, f := range steel.New(placed).Body(p).Fasteners {
		require.Len(t, f.Runs, 1)
		deep := f.Runs[0].To - f.Runs[0].From
		switch f.Runs[0].Member.Role {
		case plan.GirderBeam:
			require.InDelta(t, 1.5-0.5, deep, 0.07)
		default:
			require.InDelta(t, 1.5, deep, 0.07)
		}
	}
}

// In a notch the pile runs up behind the girder: straps go on the outside, two at
// the edges of the pile; on its head they bend over a step, and are told so.
func TestStrapsOfAGirderInANotch(t *testing.T) {
	placed, _ := demoWith(t)
	j := placed.Piece("GS-103-GP-strap")
	require.NotNil(t, j)
	require.Len(t, j.Bands[0], 1)
	assert.Equal(t, framing.Notched, j.Joint.Seat)
	// Pile 9.25 in wide, strap 3.375: middles 9.25/2 - 3.375/2 - 0.25 = 2.6875 out.
	assert.InDelta(t, 102.5-2.6875, j.Path[0].X, 1e-9)
	assert.InDelta(t, 102.5+2.6875, placed.Piece("GS-103-GP-strap-2").Path[0].X, 1e-9)

	_, ds := demoWith(t, "face = \"outside\"\ncount = 2 # at the edges", "face = \"both\"\ncount = 2 # at the edges")
	refused := coded(ds, "no-way-to-lie")
	require.NotEmpty(t, refused)
	assert.Contains(t, refused[0].Summary, "the pile runs up against the inside face of the girder")

	_, ds = demoWith(t, `seat = "notch"`, `seat = "top"`)
	assert.NotEmpty(t, coded(ds, "strap-over-step"))
}

// A bolt across a girder in a notch: under its head lies the washer, 1/4 in, on the
// girder's face, and the rest comes out behind the pile: of 9.25 in of wood and
// 12 in of bolt 12 - 0.25 - 9.25 = 2.5 in, for washer, nut and thread.
func TestBoltOfAGirderInANotch(t *testing.T) {
	placed, _ := demoWith(t)
	p := placed.Piece("GS-103-GP-anchor")
	require.NotNil(t, p)
	assert.InDelta(t, -0.25, p.Rod.A.Y, 1e-9)
	assert.InDelta(t, p.Item.Length-0.25, p.Rod.B.Y, 1e-9)
	assert.GreaterOrEqual(t, p.Rod.B.Y-9.25, 0.25+p.Item.Rod, "washer, nut and thread")
	assert.InDelta(t, 4.5, p.Laid[0].Lap, 1e-9, "in the girder")
	assert.InDelta(t, 4.75, p.Laid[1].Lap, 1e-9, "in the pile")
}

// The strap to the girder bridges 13.469 in, 1'-1 1/2" on a tape (see above); to
// the rim, the next below, it would be 1.5 + 23/32 = 2.219 in, 2 1/4". A joint is
// told by the strap that is there.
func TestAJointSaysWhatItsStrapBridges(t *testing.T) {
	placed, _ := demoWith(t)
	text, err := placed.Explain("1N-328-SB")
	require.NoError(t, err)
	assert.Contains(t, text, "  1'-1 1/2\" between the king and the girder that base-strap laps\n")
	assert.NotContains(t, text, "2 1/4\" between")
	text, err = placed.Explain("2E-232-OH")
	require.NoError(t, err)
	assert.NotContains(t, text, "upper plate that header-strap laps", "what is on the plates is nailed, not bridged")

	placed, _ = demoWith(t, "to = \"girder\"\nwhere = { level = \"first\", ext", "to = \"girder\"\nwhere = { level = \"second\", ext")
	text, err = placed.Explain("1N-328-SB")
	require.NoError(t, err)
	assert.Contains(t, text, "  2 1/4\" between the members a strap laps\n", "with none placed, the next below")
}

// A roof's ledger is bolted over the sheathing, and straps of the studs behind it go
// on first, under the sheathing: none is in the other's way (common practice, no
// published source). The demo's walls have 15/32 in of it.
func TestStrapsLieUnderALedgersSheathing(t *testing.T) {
	placed, ds := demoWith(t, "# ---- roof deck", `[[porch]]
name = "veranda"
from = ["0'", "-8'"]
to = ["44'", "-8'"]
beam = "3-2x10"
post = "6x6"
posts = ["3in", "14'", "29'", "43' 9in"]
base = "10'"
top = "17'"

[[roof]]
name = "lean"
over = "first"
kind = "shed"
area = [["0'", "-8'"], ["44'", "0'"]]
high = "N"
pitch = "3:12"
overhang = "1'"
rafters = "2x8 @ 16in"

# ---- roof deck`)
	require.False(t, ds.Errors(), "%v", ds)
	behind := 0
	for _, j := range placed.House.Joints {
		if j.Kind == plan.LedgerWall && j.Roof != nil {
			require.InDelta(t, 15.0/32, j.Gap, 1e-9, j.ID)
			require.InDelta(t, -15.0/32-1.5/2, j.First().A.Y, 1e-9)
		}
		if j.Kind != plan.StudStud || j.Host != "2S" {
			continue
		}
		for _, p := range placed.At(j) {
			require.Equal(t, plan.Outside, p.Face, p.Tag)
			behind++
		}
	}
	assert.Equal(t, 33, behind, "a strap at each of 2S's 33 full studs, down over the ledger's height")
}
