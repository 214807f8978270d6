package loadpath

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// hardwareText is a small invented catalog with a rule for every joint of
// the uplift path.
const hardwareText = `
[[item]]
mark = "clip"
kind = "clip"
thickness = "17 ga"
nails = { type = "8d x 1 1/2", to_rafter = 4, to_plate = 7 }
[[item]]
mark = "strap"
kind = "strap"
length = "60in"
width = "1 3/8in"
thickness = "19 ga"
nails = { type = "10d x 1 1/2", each_end = 9 }
[[rule]]
at = "rafter-plate"
use = "clip"
[[rule]]
at = "stud-stud"
use = "strap"
`

// box is a generated rectangular house; lengths in inches, north is y.
type box struct {
	length, width float64 // along x, along y
	stories       int
	kind          string
	ridge         string
	pitch         float64
	overhang      float64
	rake          float64
	spacing       int
	piles         bool
	windows       int
	shear         bool
	wind          string // keys of [site]
	loads         string // [loads] and its tables
	beam          bool   // the ridge is a bearing beam
	trusses       bool
	floor         float64
}

// plan writes the house as a plan file.
func (b box) plan() string {
	var s strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&s, format+"\n", args...) }
	p("[project]\nname = \"generated\"\ndate = 2026-01-05\n[site]\n%s", b.wind)
	if b.piles {
		p("[foundation]\nkind = \"piles\"\npile = \"10x10\"\npile_top = \"8'\"")
	}
	names := []string{"first", "second"}[:b.stories]
	for i, n := range names {
		floor := b.floor + 121*float64(i)
		p("[[level]]\nname = %q\nfloor = \"%gin\"\nplate_height = \"109in\"", n, floor)
		if i > 0 || b.piles {
			p("floor_depth = \"12in\"\njoists = \"2x12 @ 16in\"\njoist_run = \"y\"")
		}
	}
	for i, n := range names {
		b.walls(p, i, n)
	}
	p("[[roof]]\nname = \"main\"\nover = %q\nkind = %q\npitch = \"%g:12\"\noverhang = \"%gin\"\nrafters = \"2x8 @ %din\"", names[b.stories-1], b.kind, b.pitch, b.overhang, b.spacing)
	switch b.kind {
	case "gable":
		p("ridge = %q\nrake = \"%gin\"", b.ridge, b.rake)
	case "shed":
		p("high = \"N\"\nrake = \"%gin\"", b.rake)
	case "hip":
		p("ridge = %q", b.ridge)
	}
	if b.beam {
		p("ridge_member = \"3.5x14\"\nridge_beam = true")
	} else if b.trusses {
		p("trusses = true")
	}
	if b.piles {
		for i, y := range []float64{2.75, b.width / 2, b.width - 2.75} {
			p("[[girder]]\nname = \"G%d\"\nfrom = [\"0in\", \"%gin\"]\nto = [\"%gin\", \"%gin\"]\nmember = \"3-2x12\"\npiles = \"@ 8'\"", i+1, y, b.length, y)
		}
	}
	s.WriteString(b.loads)
	s.WriteString(hardwareText)
	return s.String()
}

func (b box) walls(p func(string, ...any), i int, level string) {
	at := [][2]float64{{0, 0}, {b.length, 0}, {b.length, b.width}, {0, b.width}}
	for k, side := range []string{"S", "E", "N", "W"} {
		from, to := at[k], at[(k+1)%4]
		long := b.length
		if k%2 == 1 {
			long = b.width
		}
		p("[[wall]]\nname = \"%d%s\"\nlevel = %q\nfrom = [\"%gin\", \"%gin\"]\nto = [\"%gin\", \"%gin\"]\nstuds = \"2x6 @ 16in\"", i+1, side, level, from[0], from[1], to[0], to[1])
		if side := []string{"S", "E", "N", "W"}[k]; b.kind == "shed" && i == b.stories-1 && side != "S" {
			p("top = \"rake\"")
		}
		if b.shear {
			p("shear = [{ name = \"A\", from = \"6in\", to = \"%gin\", panel = \"15/32\", nail = \"8d common\", edge = \"4in\" }]", long/3)
		}
		for w := range b.windows {
			lo := long/3 + 24
			step := (long - lo - 24) / float64(b.windows)
			if width := step - 30; width > 12 {
				p("[[wall.opening]]\nname = \"w%d\"\nat = \"%gin\"\nwidth = \"%gin\"\nheight = \"48in\"\nsill = \"24in\"\nheader = \"2-2x10\"", w+1, lo+step*float64(w), min(width, 96))
			}
		}
	}
}

// drawBox draws a house.
func drawBox(t *rapid.T) box {
	feet := func(lo, hi int, label string) float64 { return 12 * float64(rapid.IntRange(lo, hi).Draw(t, label)) }
	b := box{
		length: feet(24, 56, "length"), width: feet(18, 36, "width"),
		stories: rapid.IntRange(1, 2).Draw(t, "stories"),
		kind:    rapid.SampledFrom([]string{"gable", "gable", "hip", "shed"}).Draw(t, "kind"),
		ridge:   "x", pitch: float64(rapid.IntRange(3, 12).Draw(t, "pitch")),
		overhang: 2 * float64(rapid.IntRange(0, 12).Draw(t, "overhang")), rake: 2 * float64(rapid.IntRange(0, 9).Draw(t, "rake")),
		spacing: rapid.SampledFrom([]int{12, 16, 24}).Draw(t, "spacing"),
		piles:   rapid.Bool().Draw(t, "piles"), windows: rapid.IntRange(0, 3).Draw(t, "windows"), shear: true,
		wind: fmt.Sprintf("wind_speed = \"%d mph\"\nexposure = %q\nedition = %q\nenclosure = %q", rapid.IntRange(90, 190).Draw(t, "speed"),
			rapid.SampledFrom([]string{"B", "C", "D"}).Draw(t, "exposure"), rapid.SampledFrom([]string{"7-16", "7-22"}).Draw(t, "edition"),
			rapid.SampledFrom([]string{"enclosed", "partially enclosed"}).Draw(t, "enclosure")),
		beam: rapid.Bool().Draw(t, "beam"),
	}
	if b.kind == "shed" {
		b.pitch = float64(rapid.IntRange(1, 4).Draw(t, "shed pitch"))
	}
	if b.kind != "gable" {
		b.beam = false
	}
	b.trusses = b.kind != "shed" && !b.beam && rapid.Bool().Draw(t, "trusses")
	if b.kind == "hip" && b.width > b.length || b.kind == "gable" && rapid.Bool().Draw(t, "ridge along y") {
		b.ridge = "y"
	}
	if b.piles {
		b.floor = 120
	}
	if rapid.Bool().Draw(t, "stiffness") {
		b.loads = "[loads]\ndistribution = \"stiffness\"\n"
	}
	return b
}

func TestGeneratedPlansAreSound(t *testing.T) {
	b := box{
		length: 480, width: 288, stories: 2, kind: "gable", ridge: "x", pitch: 6, overhang: 12, rake: 12, spacing: 16, piles: true, windows: 2, shear: true,
		wind: "wind_speed = \"150 mph\"\nexposure = \"D\"", floor: 120,
	}
	a := analyzed(t, b.plan())
	require.NotEmpty(t, a.rafters)
	require.NotEmpty(t, a.piles.girders)
	require.NotEmpty(t, a.lateral.lines)
	require.Zero(t, sumOf(a.unheld))
	require.Zero(t, sumOf(a.ridgeLost))
}

// sumOf adds up what is lost at each of some things, lb.
func sumOf[K comparable](lost map[K]float64) (lb float64) {
	for _, x := range lost {
		lb += x
	}
	return lb
}
