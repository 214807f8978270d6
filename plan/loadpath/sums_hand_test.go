package loadpath

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The calculation sheets are read here as a plan checker reads them, with a pocket
// calculator: every product, sum, share and lever is done again from the figures on the
// sheet itself, and what comes out is what the link or the line is asked for.

// sheetOf is a line of a sheet with the lines that stand under it.
type sheetOf struct {
	text  string
	under []*sheetOf
}

// sheetLines reads the lines of a sheet by how far in they stand, two spaces a step.
func sheetLines(lines []string) (top []*sheetOf) {
	open := []*sheetOf{{}}
	for _, s := range lines {
		text := strings.TrimLeft(s, " ")
		depth := (len(s) - len(text)) / 2
		open = open[:min(depth+1, len(open))]
		x, above := &sheetOf{text: text}, open[len(open)-1]
		above.under = append(above.under, x)
		open = append(open, x)
	}
	return open[0].under
}

// figures returns what the groups of an expression hold in a text, as numbers; ok tells
// whether it is there.
func figures(re *regexp.Regexp, text string) (out []float64, ok bool) {
	m := re.FindStringSubmatch(text)
	if m == nil {
		return nil, false
	}
	for _, s := range m[1:] {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			if x, err = length.ParseSigned(s); err != nil {
				x = math.NaN()
			}
		}
		out = append(out, x)
	}
	return out, true
}

var (
	bandLine   = regexp.MustCompile(`^(?:walls|roofs).*, [xy] = (.+?) to (.+?): (-?[\d.]+) psf on ([\d.]+) ft high, (-?[\d.]+) plf on ([\d.]+) ft: (-?\d+) lb;`)
	wallWhy    = regexp.MustCompile(`G ([\d.]+) x \(windward wall Cp ([\d.]+) x mean q Kd ([\d.]+) psf .* - leeward wall Cp (-[\d.]+) x qh Kd ([\d.]+) psf\)$`)
	slopeWhy   = regexp.MustCompile(`qh Kd ([\d.]+) psf x \(windward slope G Cp (-?[\d.]+) - leeward slope G Cp (-?[\d.]+)\)`)
	deckLine   = regexp.MustCompile(`^from the diaphragm over story .*: (-?\d+) lb(?: of)?$`)
	upperLine  = regexp.MustCompile(`^from line .*: (-?\d+) lb x (-?[\d.]+) = (-?\d+) lb$`)
	headLine   = regexp.MustCompile(`^line .*, story .*: (\d+) lb at strength level, `)
	patchLine  = regexp.MustCompile(`^from (.+) to (.+) up the plan: .*G?Cp[f]? (-?[\d.]+), from below ([+-][\d.]+) \(.*\): wind (-?\d+) lb, dead (-?\d+) lb$`)
	stripLine  = regexp.MustCompile(`^\S.*, (\S.*) wide.*; qh Kd ([\d.]+) psf`)
	beyondLine = regexp.MustCompile(`^of the width (.+) lies beyond the gable wall, where (-?[\d.]+) acts`)
	seatLine   = regexp.MustCompile(`^the pair, .+ the first of it, bears at the middle of its seats, (.+) and (.+) up the plan and (.+) apart; the ridge lies (.+) from the first and (.+) up$`)
	momentLine = regexp.MustCompile(`^moment about the first's plate: wind (-?\d+), dead (-?\d+) lb-in; the other's about its own: wind (-?\d+), dead (-?\d+) lb-in`)
	acrossLine = regexp.MustCompile(`^their difference over the span goes across the ridge: wind (-?\d+), dead (-?\d+) lb;`)
	moreLine   = regexp.MustCompile(`^hips, valleys .* bring it wind (-?\d+), dead (-?\d+) lb more: times (-?[\d.]+) to the first plate, (-?[\d.]+) to the other, and across the ridge times (-?[\d.]+),`)
	highLine   = regexp.MustCompile(`^the feet stand at different heights: the ridge is (.+) over the first and (.+) over the other, and the height above is both, each weighed by the other's distance$`)
	pullLine   = regexp.MustCompile(`^horizontal tension at the ridge.*: wind (-?\d+), dead (-?\d+) lb$`)
	broughtBy  = regexp.MustCompile(`^from \S.*: wind (-?\d+), dead (-?\d+) lb(?:, times (-?[\d.]+) by lever arm.*)?$`)
	ceilingBy  = regexp.MustCompile(`^from ceiling joist .*: dead (-?\d+) lb of ceiling, times ([\d.]+) by lever arm$`)
	ownWall    = regexp.MustCompile(`^its length of wall: (.+) long, (.+) high, ([\d.]+) psf`)
	ownFloor   = regexp.MustCompile(`^floor on its plates: ([\d.]+) psf on (.+) of joists$`)
	endPull    = regexp.MustCompile(`^.*, (low|high) end, wind from ([NESW]): ([\d.]+) of (\d+) lb of tension and (-?\d+) lb of the shear's couple.*, times (-?[\d.]+) by lever arm.*: (\d+) lb$`)
	chordEnd   = regexp.MustCompile(`^ends (-?\d+) and (-?\d+) lb; moment here (\d+) lb-ft, over the depth ([\d.]+) ft: (\d+) lb$`)
	dragHead   = regexp.MustCompile(`^collector force along the line.*; at [xy] = (.+) it is (-?\d+) lb$`)
	dragAt     = regexp.MustCompile(`^at (.+): (-?\d+) lb$`)
	shareFeet  = regexp.MustCompile(`^segment .*: ([\d.]+) of ([\d.]+) ft counted length of the line, share ([\d.]+);`)
	shareStiff = regexp.MustCompile(`^segment .*: stiffness (\d+) of (\d+) lb/in of the line, share ([\d.]+);`)
	reliefLine = regexp.MustCompile(`^dead load left at .* after uplift: (\d+) lb ASD, half of it at each end$`)
	bayHead    = regexp.MustCompile(`^deck over story .*, [xy] = (.+) to (.+), a (.+): (-?\d+) lb to the line .* of$`)
	tieLine    = regexp.MustCompile(`^([\d.]+) of ([\d.]+) lb from .*: dead load ([\d.]+) lb on the first, its moment about the plate ([\d.]+) lb-ft less what passes the ridge by the lever ([\d.]+) ft, over the rise ([\d.]+) ft$`)
	fromNails  = regexp.MustCompile(`: (\d+) lb ASD$`)
)

// sheetExamples are houses of all kinds of path, in US units: piles and two stories with a
// gable, a hip on a slab under both procedures, ledgers and porches.
var sheetExamples = []string{"marsh-wren.toml", "curlew-row.toml", "sanderling.toml", "shed.toml"}

// eachSheet hands out the examples' reports; what each told is counted, and a kind of line
// that no example has fails.
func eachSheet(t *testing.T, kinds []string, f func(t *testing.T, r *Report, seen map[string]int)) {
	seen := map[string]int{}
	for _, name := range sheetExamples {
		t.Run(name, func(t *testing.T) { f(t, exampleReport(t, name), seen) })
	}
	t.Run("porch", func(t *testing.T) { f(t, reportOf(placed(t, porchHouse)), seen) })
	for _, k := range kinds {
		assert.Positive(t, seen[k], "no sheet has a line of %s", k)
	}
}

// bandsOf does the stretches under a heading again and returns their sum, lb, and how far
// it may be off for rounding.
func bandsOf(t *testing.T, under []*sheetOf, seen map[string]int) (sum, off float64) {
	for _, x := range under {
		b, ok := figures(bandLine, x.text)
		if !ok {
			continue
		}
		seen["band"]++
		lo, hi, psf, high, plf, long, lb := b[0], b[1], b[2], b[3], b[4], b[5], b[6]
		assert.InDelta(t, (hi-lo)/12, long, 0.011, x.text)
		assert.InDelta(t, psf*high, plf, 0.05+0.005*(math.Abs(psf)+high), x.text)
		assert.InDelta(t, plf*long, lb, 0.6+0.05*long+0.005*math.Abs(plf), x.text)
		if w, ok := figures(wallWhy, x.text); ok {
			seen["wall pressure"]++
			assert.InDelta(t, w[0]*(w[1]*w[2]-w[3]*w[4]), psf, 0.05, x.text)
		}
		if w, ok := figures(slopeWhy, x.text); ok {
			seen["slope pressure"]++
			assert.InDelta(t, w[0]*(w[1]-w[2]), psf, 0.07, x.text)
		}
		sum, off = sum+lb, off+0.5
	}
	return sum, off
}

// branch adds up what stands under a line: what its deck brings by its stretches, and each
// line above by its own sum.
func branch(t *testing.T, under []*sheetOf, byStiffness bool, seen map[string]int) (sum, off float64) {
	for _, x := range under {
		if d, ok := figures(deckLine, x.text); ok {
			bands, o := bandsOf(t, x.under, seen)
			if !byStiffness {
				assert.InDelta(t, bands, d[0], o+0.6, x.text)
			}
			sum, off = sum+d[0], off+0.5
		}
		if u, ok := figures(upperLine, x.text); ok {
			seen["upper"]++
			assert.InDelta(t, u[0]*u[1], u[2], 0.6+0.0005*math.Abs(u[0])+0.5*math.Abs(u[1]), x.text)
			s, o := branch(t, x.under, byStiffness, seen)
			assert.InDelta(t, math.Abs(s), math.Abs(u[0]), o+0.6, x.text)
			sum, off = sum+u[2], off+0.5
		}
	}
	return sum, off
}

// A line's force is the sum of what its deck and the lines above bring, each stretch of the
// deck its pressure by its height by its length, each line above its force by its lever.
func TestSheetsOfLinesAddUp(t *testing.T) {
	eachSheet(t, []string{"band", "wall pressure", "slope pressure", "upper", "line"}, func(t *testing.T, r *Report, seen map[string]int) {
		for _, x := range r.Lines {
			top := sheetLines(r.LineWorkings(x))
			require.Len(t, top, 1, x.Name)
			h, ok := figures(headLine, top[0].text)
			require.True(t, ok, top[0].text)
			seen["line"]++
			sum, off := branch(t, top[0].under, r.work.plan.Loads.Distribution == plan.Stiffness, seen)
			assert.InDelta(t, h[0], math.Abs(sum), off+0.6, top[0].text)
			assert.InDelta(t, x.Force, h[0], 0.51, top[0].text)
			assert.Contains(t, top[0].text, x.Case)
		}
	})
}

// rafterSheet is what a rafter's sheet says of it: its own force, and its moment about its plate.
type rafterSheet struct {
	name                    string
	width, q, beyond, below float64
	from, to, top, under    []float64
	wind, dead              []float64
}

// rafterSides reads the rafters of a sheet.
func rafterSides(lines []*sheetOf) (out []*rafterSheet) {
	for _, x := range lines {
		h, ok := figures(stripLine, x.text)
		if !ok {
			continue
		}
		s := &rafterSheet{name: strings.Split(x.text, ",")[0], width: h[0], q: h[1]}
		for _, y := range x.under {
			if p, ok := figures(patchLine, y.text); ok {
				s.from, s.to, s.top, s.under = append(s.from, p[0]), append(s.to, p[1]), append(s.top, p[2]), append(s.under, p[3])
				s.wind, s.dead = append(s.wind, p[4]), append(s.dead, p[5])
			} else if !strings.HasPrefix(y.text, "the ceiling") && !strings.HasPrefix(y.text, "rests ") {
				s.q = math.NaN() // a stretch of another kind: only sums are taken of it
			}
			if b, ok := figures(beyondLine, y.text); ok {
				s.beyond, s.below = s.beyond+b[0], b[1]
				s.q = h[1]
			}
		}
		out = append(out, s)
	}
	return out
}

// pressed does the force of each stretch again: the pressure on top and below by its area,
// beyond a gable wall what acts from below there.
func (s *rafterSheet) pressed(t *testing.T, what string) {
	for i := range s.wind {
		area := (s.to[i] - s.from[i]) / 144
		want := s.q * area * ((s.width-s.beyond)*(s.under[i]-s.top[i]) + s.beyond*(s.below-s.top[i]))
		off := 1 + s.q*area*s.width*0.0055 + s.q*area*s.width*0.011*2 // of figures with two decimals
		assert.InDelta(t, want, s.wind[i], off, "%s: %+v", what, s)
	}
}

// turning is the moment of the side about a place up the plan, lb-in, of its winds or weights.
func (s *rafterSheet) turning(list []float64, seat float64) (m, off float64) {
	for i, lb := range list {
		arm := (s.from[i]+s.to[i])/2 - seat
		m, off = m+lb*arm, off+0.55*math.Abs(arm)+0.1*math.Abs(lb)
	}
	return m, off
}

// The sheet of two rafters that lean on each other: the pressures by the areas, the moments
// about the plates by the places of the stretches, what goes across by the span, the pull by
// the height; and the joints at the plates and at the ridge are asked for just that.
func TestSheetsOfRaftersAddUp(t *testing.T) {
	eachSheet(t, []string{"pressed", "moment", "plate", "ridge", "more", "uneven"}, func(t *testing.T, r *Report, seen map[string]int) {
		e := r.Explainer()
		for _, l := range r.Links {
			if l.Check.ID != "rafter-uplift" && l.Check.ID != "ridge-tie" {
				continue
			}
			lines := sheetLines(e.Workings(l))
			sides := rafterSides(lines)
			for _, s := range sides {
				if !math.IsNaN(s.q) {
					seen["pressed"]++
					s.pressed(t, l.ID)
				}
			}
			i := slices.IndexFunc(lines, func(x *sheetOf) bool { return seatLine.MatchString(x.text) })
			if i < 0 || len(sides) != 2 {
				continue
			}
			at := i
			require.GreaterOrEqual(t, len(lines), i+4, l.ID)
			seat, _ := figures(seatLine, lines[i].text)
			m, ok1 := figures(momentLine, lines[i+1].text)
			high, uneven := figures(highLine, lines[i+2].text)
			if uneven {
				seen["uneven"]++
				i++
			} else {
				high = []float64{seat[4], seat[4]}
			}
			over, ok2 := figures(acrossLine, lines[i+2].text)
			pull, ok3 := figures(pullLine, lines[i+3].text)
			require.True(t, ok1 && ok2 && ok3, l.ID)
			own := sides[0]
			if x := r.work.stripsAt(l.Joint)[0]; x != x.pair.a {
				slices.Reverse(sides)
			}
			require.Contains(t, lines[at].text, ", "+sides[0].name+" the first of it", l.ID)
			more := make([]float64, 5)
			if i+4 < len(lines) {
				more, ok1 = figures(moreLine, lines[i+4].text)
				require.True(t, ok1, lines[i+4].text)
				seen["more"]++
				assert.InDelta(t, 1, more[2]+more[3], 0.0011, lines[i+4].text)
				assert.InDelta(t, more[3]*(seat[2]-seat[3])/seat[4], more[4], 0.003*seat[2]/seat[4], lines[i+4].text)
			}
			pairSheet(t, r, l, own, sides, seat, high, m, over, pull, more, seen)
		}
	})
}

func pairSheet(t *testing.T, r *Report, l *Link, own *rafterSheet, sides []*rafterSheet, seat, high, m, over, pull, more []float64, seen map[string]int) {
	for k, s := range sides {
		w, off := s.turning(s.wind, seat[k])
		d, offD := s.turning(s.dead, seat[k])
		slope := 1 + math.Pow(r.Main.Pitch/12, 2)
		if len(r.work.plan.Roofs) == 1 && !math.IsNaN(s.q) {
			seen["moment"]++
			assert.InDelta(t, w*slope, m[2*k], off*slope+1, "%s: %+v", l.ID, s)
			assert.InDelta(t, d, m[2*k+1], offD+1, "%s: %+v", l.ID, s)
		}
	}
	// The pull by the statics of a three-hinged arch; what goes across as if on level feet.
	span, apex, rise := seat[2], seat[3], seat[4]
	assert.InDelta(t, (high[0]*(span-apex)+high[1]*apex)/span, rise, 0.1, l.ID)
	for k := range 2 { // wind, then dead load
		assert.InDelta(t, (m[k]-m[2+k])/span, over[k], 0.6, l.ID)
		assert.InDelta(t, (m[k]*(span-apex)+m[2+k]*apex)/(rise*span), pull[k], 0.7+0.6*apex/rise+0.1*math.Abs(pull[k])/rise, l.ID)
	}
	switch {
	case l.Joint == r.work.stripsAt(l.Joint)[0].pair.joint:
		seen["ridge"]++
		off := 0.6 + 0.0006*(math.Abs(more[0])+math.Abs(more[1])) + 0.6*more[4]
		assert.InDelta(t, l.Force.W, pull[0]+more[0]*more[4], off, l.ID)
		assert.InDelta(t, l.Force.D, pull[1]+more[1]*more[4], off, l.ID)
	default:
		seen["plate"]++
		sign, k := -1.0, more[2]
		if own == sides[1] {
			sign, k = 1, more[3]
		}
		off := 0.55*float64(len(own.wind)) + 1.2 + 0.0006*(math.Abs(more[0])+math.Abs(more[1]))
		assert.InDelta(t, l.Force.W, added(own.wind)+sign*over[0]+k*more[0], off, l.ID)
		assert.InDelta(t, l.Force.D, added(own.dead)+sign*over[1]+k*more[1], off, l.ID)
	}
}

// brought adds up what a sheet says comes to a joint.
func brought(lines []*sheetOf) (f Force, off float64, n int) {
	for _, x := range lines {
		b, ok := figures(broughtBy, x.text)
		c, hung := figures(ceilingBy, x.text)
		switch {
		case ok && math.IsNaN(b[2]):
			b[2] = 1
			fallthrough
		case ok:
			f, n = f.add(Force{b[0] * b[2], b[1] * b[2]}), n+1
			off += 0.5*math.Abs(b[2]) + 0.0005*(math.Abs(b[0])+math.Abs(b[1])) + 0.01
		case hung:
			f, n = f.add(Force{D: c[0] * c[1]}), n+1
			off += 0.5*c[1] + 0.0005*c[0] + 0.01
		}
	}
	return f, off, n
}

// What the sheet of a stud's top, a header's end, a stud's foot, a pile or a post says it
// gets from above, with its own length of wall and floor, is what its link is asked for.
func TestSheetsOfStudsPilesAndPostsAddUp(t *testing.T) {
	eachSheet(t, []string{"stud-top", "opening-head", "stud-base", "girder-pile", "floor", "post-base", "ceiling"}, func(t *testing.T, r *Report, seen map[string]int) {
		e := r.Explainer()
		for _, l := range r.Links {
			if l.Joint == nil || !l.uplift {
				continue
			}
			lines := sheetLines(e.Workings(l))
			f, off, n := brought(lines)
			if n == 0 {
				continue
			}
			weight, offD := 0.0, off
			for _, x := range lines {
				if ceilingBy.MatchString(x.text) {
					seen["ceiling"]++
				}
			}
			switch l.Joint.Kind {
			case plan.StudTop, plan.OpeningHead:
			case plan.StudBase, plan.StudStud:
				w, o := footWeight(t, lines, seen)
				weight, offD = w, off+o
			case plan.GirderPile:
				weight = pileWeight(r.work, l)
			case plan.PostCap, plan.PostBase:
				if l.Check.ID != "rafter-uplift" && l.Joint.Kind == plan.PostBase {
					offD += 1e9 // the post's own weight is on no line
				}
			default:
				continue
			}
			seen[string(l.Joint.Kind)]++
			assert.InDelta(t, l.Force.W, f.W, off+0.6, "%s %s wind", l.Check.ID, l.ID)
			assert.InDelta(t, l.Force.D, f.D+weight, offD+0.6, "%s %s weight", l.Check.ID, l.ID)
		}
	})
}

// footWeight is the weight of a stud's own length of wall and of the floor on its plates.
func footWeight(t *testing.T, lines []*sheetOf, seen map[string]int) (lb, off float64) {
	share := 0.0
	for _, x := range lines {
		if w, ok := figures(ownWall, x.text); ok {
			share = w[0]
			lb, off = lb+w[0]*w[1]/144*w[2], off+w[0]*w[1]/144*0.006+0.04*w[1]/144*w[2]+0.1
		}
		if f, ok := figures(ownFloor, x.text); ok {
			seen["floor"]++
			require.Positive(t, share, "a floor is told under its wall")
			lb, off = lb+f[0]*f[1]*share/144, off+0.006*f[1]*share/144+f[0]*(f[1]+share)*0.04/144
		}
	}
	return lb, off
}

// pileWeight is what of floor and girder rests at a pile, which its sheet leaves out.
func pileWeight(a *analysis, l *Link) (lb float64) {
	for _, g := range a.piles.girders {
		for _, p := range g.piles {
			if p.joint == l.Joint {
				lb += p.weight
			}
		}
	}
	return lb
}
