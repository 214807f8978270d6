package golden

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"galewright/plan/pipeline"
	"galewright/render"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

// wholeWay takes a plan's text through every stage, as far as its faults let it:
// nothing panics, every fault has a place and is one line, no number of the load
// path is none (JSON refuses those), what is drawn is what is counted, and the
// writer (which refuses them too) takes every sheet.
func wholeWay(t *testing.T, src string) {
	r, faults := pipeline.Run("plan.toml", []byte(src), load)
	for _, d := range faults {
		require.Positive(t, d.Pos.Line, d)
		require.NotContains(t, d.String(), "\n")
	}
	if faults.Errors() {
		return
	}
	loads, more := r.Loads()
	if loads != nil {
		var b bytes.Buffer
		_, err := loads.WriteCheck(&b, 1, "json")
		require.NoError(t, err)
		require.NoError(t, loads.WriteWind(&b, "json"))
	}
	for _, d := range more {
		require.NotContains(t, d.String(), "\n")
	}
	require.NoError(t, r.Lumber().Write(&bytes.Buffer{}, "json"))
	drawnIsCounted(t, r)
}

// drawnIsCounted reads all sheets back: each piece is at home once.
func drawnIsCounted(t *testing.T, r *pipeline.Result) {
	loads, _ := r.Loads()
	m := &render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt, Loads: loads}
	set, faults := render.Draw(m, render.Options{Paper: "arch-d"})
	if faults.Errors() {
		return
	}
	homes := map[string]int{}
	for i, s := range set.Sheets {
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, set, i, svg.Options{}))
		for _, in := range instances(t, s.Title.Sheet, &b) {
			if in.home {
				homes[in.tag]++
			}
		}
	}
	for _, p := range r.Placement.Pieces {
		require.Equal(t, 1, homes[p.Tag], "piece %s", p.Tag)
	}
	require.Len(t, homes, len(r.Placement.Pieces))
	n := 0
	for _, line := range r.Schedule.Lines {
		n += len(line.Pieces)
	}
	require.Equal(t, n, len(homes), "drawn and counted")
}

// choices hands out what a string of bytes decides.
type choices struct{ left []byte }

// of returns a number from 0 to n−1; 0 when no byte is left.
func (c *choices) of(n int) int {
	if len(c.left) == 0 {
		return 0
	}
	b := int(c.left[0])
	c.left = c.left[1:]
	return b * n >> 8
}

var (
	aNumber = regexp.MustCompile(`\d+(\.\d+)?`)
	aWord   = regexp.MustCompile(`"[^"]*"`)
)

// slips are what a pen does to a plan: each changes its lines.
var slips = []func(lines []string, c *choices) []string{
	func(l []string, c *choices) []string { i := c.of(len(l)); return slices.Delete(l, i, i+1) },
	func(l []string, c *choices) []string { i := c.of(len(l)); return slices.Insert(l, i, l[i]) },
	func(l []string, c *choices) []string {
		i, k := c.of(len(l)), c.of(len(l))
		l[i], l[k] = l[k], l[i]
		return l
	},
	func(l []string, c *choices) []string { // a number is off
		return rewritten(l, c, aNumber, func(string) string {
			return []string{"0", "1", "3", "7", "11", "16", "24", "40", "99", "0.5", "1000"}[c.of(11)]
		})
	},
	func(l []string, c *choices) []string { // a number is a little off
		return rewritten(l, c, aNumber, func(was string) string {
			x, _ := strconv.ParseFloat(was, 64)
			return strconv.FormatFloat(x+[]float64{-2, -1, -0.5, 0.5, 1, 2}[c.of(6)], 'f', -1, 64)
		})
	},
	func(l []string, c *choices) []string { // one word for another
		all := aWord.FindAllString(strings.Join(l, "\n"), -1)
		if len(all) == 0 {
			return l
		}
		return rewritten(l, c, aWord, func(string) string { return all[c.of(len(all))] })
	},
}

// rewritten changes one place of a pattern in one of the lines.
func rewritten(lines []string, c *choices, what *regexp.Regexp, with func(string) string) []string {
	i := c.of(len(lines))
	found := what.FindAllStringIndex(lines[i], -1)
	if len(found) == 0 {
		return lines
	}
	at := found[c.of(len(found))]
	lines[i] = lines[i][:at[0]] + with(lines[i][at[0]:at[1]]) + lines[i][at[1]:]
	return lines
}

// slipped is a plan after the slips that the bytes decide, four at most.
func slipped(src string, c *choices) string {
	lines := strings.Split(src, "\n")
	for n := 1 + c.of(4); n > 0 && len(lines) > 1; n-- {
		lines = slips[c.of(len(slips))](lines, c)
	}
	return strings.Join(lines, "\n")
}

// FuzzSlips draws the shed with slips of the pen.
// fuzz: 400x
func FuzzSlips(f *testing.F) {
	b, err := os.ReadFile("../examples/shed.toml")
	require.NoError(f, err)
	shed := string(b)
	for i := range 40 {
		f.Add([]byte{byte(i * 7), byte(i * 41), byte(i * 97), byte(i * 61), byte(i * 13), byte(i * 29)})
	}
	f.Fuzz(func(t *testing.T, edits []byte) { wholeWay(t, slipped(shed, &choices{edits})) })
}

// FuzzHouses draws houses that the bytes make up.
// fuzz: 200x
func FuzzHouses(f *testing.F) {
	for i := range 24 {
		seed := make([]byte, 40)
		for k := range seed {
			seed[k] = byte((i*53 + k*k*31 + k*i*17) * 7)
		}
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed []byte) { wholeWay(t, madeUp(&choices{seed})) })
}

// footprint is an outline of unit squares, counterclockwise from the southwest, and
// the areas of its wings: low and high corners.
type footprint struct {
	outline [][2]int
	wings   [][4]int
}

var footprints = []footprint{
	{[][2]int{{0, 0}, {2, 0}, {2, 2}, {0, 2}}, [][4]int{{0, 0, 2, 2}}},
	{[][2]int{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, [][4]int{{0, 0, 2, 1}, {0, 0, 1, 2}}},
	{[][2]int{{0, 0}, {3, 0}, {3, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 1}, {0, 1}}, [][4]int{{0, 0, 3, 1}, {1, 0, 2, 2}}},
	{[][2]int{{0, 0}, {3, 0}, {3, 2}, {2, 2}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, [][4]int{{0, 0, 3, 1}, {0, 0, 1, 2}, {2, 0, 3, 2}}},
}

// maker writes the plan of a house as its bytes decide.
type maker struct {
	*choices
	strings.Builder
	shape   footprint
	w, d    int // of a unit square, ft
	stories int
	spacing int
	shed    bool
}

func (m *maker) say(format string, args ...any) { fmt.Fprintf(m, format+"\n", args...) }

// madeUp writes the plan of a house: outline, stories, roofs, openings, rules and
// wind as the bytes decide; most can be built.
func madeUp(c *choices) string {
	m := &maker{choices: c, shape: footprints[c.of(len(footprints))], w: 8 + c.of(16), d: 8 + c.of(16), stories: 1 + c.of(2), spacing: []int{12, 16, 24}[c.of(3)]}
	m.shed = len(m.shape.wings) == 1 && c.of(3) == 0
	m.say("catalog = \"hardware.toml\"\n[project]\nname = \"Made-up house\"\ndate = 2026-03-02")
	m.say("[site]\nwind_speed = \"%d mph\"\nexposure = %q", 90+10*c.of(11), []string{"B", "C", "D"}[c.of(3)])
	for l := range m.stories {
		m.say("[[level]]\nname = \"l%d\"\nplate_height = \"%d' 1in\"\nstuds = \"2x%d @ %din\"", l, 8+c.of(3), 4+2*c.of(2), m.spacing)
		for i := range m.shape.outline {
			m.wall(l, i)
		}
	}
	pitch := 3 + c.of(8)
	for i := range m.shape.wings {
		m.roof(i, pitch+c.of(10)/9)
	}
	m.rules()
	return m.String()
}

// wall writes a wall of a story, maybe with a segment at its start and a window.
func (m *maker) wall(l, i int) {
	all := m.shape.outline
	p, q := all[i], all[(i+1)%len(all)]
	m.say("[[wall]]\nname = \"%d%c\"\nlevel = \"l%d\"\nfrom = [\"%d'\", \"%d'\"]\nto = [\"%d'\", \"%d'\"]", l, 'A'+i, l, p[0]*m.w, p[1]*m.d, q[0]*m.w, q[1]*m.d)
	if m.shed && l == m.stories-1 && i > 0 {
		m.say("top = \"rake\"")
	}
	if m.of(2) == 1 {
		m.say("opening = [{ name = \"o%d%d\", at = \"%d' %din\", width = \"%din\", height = \"%din\", sill = \"2'\" }]", l, i, 3+m.of(2), m.of(12), 20+m.of(28), 40+m.of(16))
	}
	if m.of(2) == 0 {
		m.say("shear = [{ from = \"0'\", to = \"2' %din\", edge = \"4in\" }]", m.of(9))
	}
}

// roof writes the roof of a wing.
func (m *maker) roof(i, pitch int) {
	a := m.shape.wings[i]
	kind := []string{"gable", "hip"}[m.of(2)]
	if m.shed {
		kind = "shed"
	}
	m.say("[[roof]]\nname = \"r%d\"\nover = \"l%d\"\nkind = %q\npitch = \"%d:12\"\nrafters = \"2x%d @ %din\"\noverhang = \"%din\"\narea = [[\"%d'\", \"%d'\"], [\"%d'\", \"%d'\"]]",
		i, m.stories-1, kind, pitch, 8+2*m.of(2), m.spacing, 6*m.of(4), a[0]*m.w, a[1]*m.d, a[2]*m.w, a[3]*m.d)
	switch {
	case kind == "gable" && len(m.shape.wings) == 1 && m.of(3) == 0:
		m.say("trusses = true")
	case kind == "shed":
		m.say("high = \"N\"")
	}
}

// rules write most of what a house needs.
func (m *maker) rules() {
	for _, r := range [][3]string{
		{"rafter-plate", "rafter-clip", ""},
		{"stud-top", "stud-clip", `where = { role = "stud" }`},
		{"rafter-ridge", "ridge-strap", `where = { role = "rafter", against = "ridge" }`},
		{"rafter-ridge", "jack-hanger", `where = { role = "rafter", against = "hip rafter" }`},
		{"stud-stud", "floor-strap", `where = { role = ["stud", "king", "post"] }`},
		{"opening-head", "opening-strap", ""},
		{"sill-foundation", "sill-bolt", ""},
		{"wall-end", "cast-in-rod", ""},
		{"plate-splice", "splice-strap", ""},
		{"header-king", "header-clip", ""},
	} {
		if m.of(4) > 0 {
			m.say("[[rule]]\nat = %q\nuse = %q\n%s", r[0], r[1], r[2])
		}
	}
}
