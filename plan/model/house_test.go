package model_test

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// house is a generated house, all on the 4 ft module so that the layout of a
// turned or mirrored wall is the turned or mirrored layout; lengths in ft.
type house struct {
	long, wide int
	stories    int
	kind       string // of the roof
	ridge      string
	pitch      int
	piles      bool
	openings   []int // along the south wall, by module
	shear      bool
	faces      bool // rules that name a left or right face
}

func drawHouse(t *rapid.T) house {
	h := house{
		long: 4 * rapid.IntRange(6, 11).Draw(t, "long"), wide: 8 * rapid.IntRange(2, 4).Draw(t, "wide"),
		stories: rapid.IntRange(1, 2).Draw(t, "stories"), pitch: rapid.IntRange(4, 12).Draw(t, "pitch"),
		kind: rapid.SampledFrom([]string{"gable", "gable", "hip"}).Draw(t, "kind"), ridge: "x",
		piles: rapid.Bool().Draw(t, "piles"), shear: rapid.Bool().Draw(t, "shear"), faces: rapid.Bool().Draw(t, "faces"),
	}
	if h.wide == h.long { // which hips of a pyramid butt at its peak is decided by the compass
		h.long += 4
	}
	if h.wide > h.long {
		h.ridge = "y"
	}
	for at := 12; at+4 < h.long; at += 8 {
		if rapid.Bool().Draw(t, "opening") {
			h.openings = append(h.openings, at)
		}
	}
	return h
}

// rules ask for hardware at every joint of the load path.
const rules = `
[[rule]]
at = "rafter-plate"
use = "rafter-clip"
where = { role = "rafter" }
%s
[[rule]]
at = "rafter-ridge"
use = "ridge-strap"
where = { role = "rafter", against = "ridge" }
[[rule]]
at = "stud-top"
use = "stud-clip"
where = { exterior = true }
[[rule]]
at = "stud-stud"
use = "story-strap"
face = "outside"
where = { exterior = true }
[[rule]]
at = "opening-head"
use = "header-strap"
face = "inside"
`

const onPiles = `
[[rule]]
at = "stud-base"
use = "base-strap"
where = { exterior = true, role = ["stud", "king", "post"] }
[[rule]]
at = "girder-pile"
use = "pile-strap"
both_faces = true
[[rule]]
at = "girder-pile"
use = "pile-bolt"
`

const onSlab = `
[[rule]]
at = "stud-base"
use = "stud-clip"
[[rule]]
at = "stud-base"
use = "sill-bolt"
at_most = "4'"
`

// toml writes the house as a plan.
func (h house) toml() string {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	p("catalog = \"hardware.toml\"\n[project]\nname = \"Generated\"\ndate = 2026-03-02\n[site]\nwind_speed = \"140 mph\"\nexposure = \"C\"")
	p("[lumber]\nplate = \"90'\"\nstud = \"20'\"\nstock = [\"90'\"]")
	if h.piles {
		p("[foundation]\nkind = \"piles\"\npile = \"10x10\"")
	} else {
		p("[foundation]\nkind = \"slab\"")
	}
	for i := range h.stories {
		p("[[level]]\nname = \"L%d\"\nplate_height = \"8' 1 1/8in\"\nstuds = \"2x6 @ 16in\"", i+1)
		if h.piles && i == 0 {
			p("floor = \"10'\"")
		}
		if h.piles || i > 0 {
			p("joists = \"2x12 @ 16in\"\njoist_run = \"y\"")
		}
	}
	for i := range h.stories {
		h.walls(p, i)
	}
	p("[[roof]]\nname = \"main\"\nover = \"L%d\"\nkind = %q\nridge = %q\npitch = \"%d:12\"\noverhang = \"1'\"\nrafters = \"2x8 @ 16in\"\nceiling_ties = false", h.stories, h.kind, h.ridge, h.pitch)
	if h.piles {
		for i, y := range []string{"2 3/4in", fmt.Sprintf("%d'", h.wide/2), fmt.Sprintf("%d' 9 1/4in", h.wide-1)} {
			p("[[girder]]\nname = \"G%d\"\nfrom = [\"0'\", %q]\nto = [\"%d'\", %q]\nmember = \"3-2x12\"\npiles = [\"6in\", \"%d'\", \"%d' 6in\"]", i, y, h.long, y, h.long/2, h.long-1)
		}
	}
	face := ""
	if h.faces {
		face = "face = \"right\""
	}
	p(rules, face)
	if h.piles {
		b.WriteString(onPiles)
	} else {
		b.WriteString(onSlab)
	}
	return b.String()
}

func (h house) walls(p func(string, ...any), i int) {
	corners := [][2]int{{0, 0}, {h.long, 0}, {h.long, h.wide}, {0, h.wide}, {0, 0}}
	for k, side := range []string{"S", "E", "N", "W"} {
		a, z := corners[k], corners[k+1]
		p("[[wall]]\nname = \"%d%s\"\nlevel = \"L%d\"\nfrom = [\"%d'\", \"%d'\"]\nto = [\"%d'\", \"%d'\"]", i+1, side, i+1, a[0], a[1], z[0], z[1])
		if h.shear {
			p("shear = [{ name = \"A\", from = \"0'\", to = \"8'\", edge = \"4in\" }]")
		}
		for n, at := range h.openings {
			if side == "S" {
				p("[[wall.opening]]\nname = \"w%d\"\nat = \"%d'\"\nwidth = \"3'\"\nheight = \"4'\"\nsill = \"2' 6in\"\nheader = \"2-2x10\"", n, at)
			}
		}
	}
}
