package loadpath

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// At a pile the ends of segments pull in one wind at a time: 0.6 of the tension and of the
// couple by the lever, those of the worst side together, with the uplift or less the weight
// there; by the directional procedure three quarters of the worst along both axes, if that is more.
func TestSheetsOfPilePullsAddUp(t *testing.T) {
	eachSheet(t, []string{"pull", "both axes"}, func(t *testing.T, r *Report, seen map[string]int) {
		e := r.Explainer()
		for _, l := range r.Links {
			if l.Check.ID != "pile-overturning" {
				continue
			}
			by := map[string]float64{}
			for _, s := range e.Workings(l) {
				m := endPull.FindStringSubmatch(s)
				if m == nil {
					continue
				}
				seen["pull"]++
				assert.Contains(t, map[string]string{"low": "WS", "high": "EN"}[m[1]], m[2], "wind lifts the end that it comes to: %s", s)
				p, _ := figures(endPull, s)
				assert.InDelta(t, p[2]*(p[3]+p[4])*p[5], p[6], 1+0.0004*(p[3]+p[4]), s)
				by[m[2]] += p[6]
			}
			x, y := math.Max(by["W"], by["E"]), math.Max(by["S"], by["N"])
			most, from := math.Max(x, y), "wind from "
			if both := 0.75 * (x + y); both > most && r.Choice.Has(plan.Directional) {
				most, from = both, "wind on both axes, 0.75 of each (case 3) for the wall ends"
				seen["both axes"]++
			}
			assert.True(t, strings.HasPrefix(l.Case, from), "%s: %s", l.ID, l.Case)
			assert.InDelta(t, math.Max(0, most+l.Force.net(ASD)), l.Demand, 4, "%s: %v", l.ID, by)
		}
	})
}

// The sheets of the lateral path: a share is a part of a whole; half of the weight left
// relieves an end; a chord's force is the moment of the stretches about it over the depth; a
// collector's goes straight from one place to the next, from nothing to nothing.
func TestSheetsOfTheLateralPathAddUp(t *testing.T) {
	eachSheet(t, []string{"share", "relief", "chord", "drag", "bay", "cantilever", "tie"}, func(t *testing.T, r *Report, seen map[string]int) {
		e := r.Explainer()
		for _, l := range r.Links {
			lines := sheetLines(e.Workings(l))
			relief := 0.0
			for i, x := range lines {
				for _, re := range []*regexp.Regexp{shareFeet, shareStiff} {
					if s, ok := figures(re, x.text); ok {
						seen["share"]++
						assert.InDelta(t, s[0]/s[1], s[2], 0.0006+0.51/s[1], x.text)
					}
				}
				if f, ok := figures(reliefLine, x.text); ok {
					relief += f[0] / 2
				}
				if strings.HasPrefix(x.text, "chord: ") {
					seen["chord"]++
					chordSheet(t, l, x, lines[i+1:], seen)
				}
				if d, ok := figures(dragHead, x.text); ok {
					seen["drag"]++
					dragSheet(t, x, d, l)
				}
				if b, ok := figures(bayHead, x.text); ok {
					baySheet(t, l, x, b, seen)
				}
				if s, ok := figures(tieLine, x.text); ok {
					seen["tie"]++
					assert.InDelta(t, s[3]/s[5], s[1], 0.025*s[1]+0.2, "%s: what passes the ridge between unlike slopes is little", x.text)
				}
			}
			if less, ok := valueOf(l.Terms, "less 0.6 of the dead load left"); ok && l.Check.ID == "overturning" {
				seen["relief"]++
				assert.InDelta(t, relief, less, 0.3*float64(len(lines)), "%s, %s", l.ID, l.Case)
			}
			if l.Check.ID == tieCheck {
				sum := 0.0
				for _, x := range lines {
					s, ok := figures(tieLine, x.text)
					require.True(t, ok, x.text)
					sum += s[0] * s[1]
				}
				assert.InDelta(t, l.Demand, sum, 0.1*float64(len(lines))+0.001*sum, l.ID)
			}
		}
	})
}

func chordSheet(t *testing.T, l *Link, head *sheetOf, rest []*sheetOf, seen map[string]int) {
	sum, off := bandsOf(t, head.under, seen)
	i := slices.IndexFunc(head.under, func(x *sheetOf) bool { return chordEnd.MatchString(x.text) })
	require.GreaterOrEqual(t, i, 0, head.text)
	c, _ := figures(chordEnd, head.under[i].text)
	assert.InDelta(t, c[2]/c[3], c[4], 0.6+0.006*c[2]/c[3]/c[3], head.under[i].text)
	switch {
	case strings.Contains(head.text, "a cantilever past"):
		assert.InDelta(t, sum, math.Max(c[0], c[1]), off+1, head.text)
	default:
		assert.InDelta(t, sum, c[0]+c[1], off+1, head.text)
	}
}

// dragSheet reads the collector's force between the places that the sheet gives.
func dragSheet(t *testing.T, head *sheetOf, d []float64, l *Link) {
	var at, lb []float64
	for _, x := range head.under {
		f, ok := figures(dragAt, x.text)
		require.True(t, ok, x.text)
		at, lb = append(at, f[0]), append(lb, f[1])
	}
	require.GreaterOrEqual(t, len(at), 2, head.text)
	assert.InDelta(t, 0, lb[0], 0.6, head.text)
	assert.InDelta(t, 0, lb[len(lb)-1], 0.6, head.text)
	assert.IsNonDecreasing(t, at, head.text)
	for i := 1; i < len(at); i++ {
		if at[i-1] < d[0] && d[0] < at[i] {
			k := (d[0] - at[i-1]) / (at[i] - at[i-1])
			assert.InDelta(t, lb[i-1]+k*(lb[i]-lb[i-1]), d[1], 1+0.1*math.Abs(lb[i]-lb[i-1])/(at[i]-at[i-1]), "%s: %s", l.ID, head.text)
		}
	}
}

// baySheet holds a stretch of deck to its bands: a cantilever brings all of its wind to its
// line, a beam what its moment about the other line says, and never more than all.
func baySheet(t *testing.T, l *Link, head *sheetOf, b []float64, seen map[string]int) {
	sum, off := bandsOf(t, head.under, seen)
	if strings.Contains(head.text, "a cantilever past") {
		seen["cantilever"]++
		assert.InDelta(t, sum, b[3], off+1, head.text)
		return
	}
	seen["bay"]++
	low, high, slack := 0.0, 0.0, 1.0
	for _, x := range head.under {
		f, ok := figures(bandLine, x.text)
		require.True(t, ok, x.text)
		k := ((f[0]+f[1])/2 - b[0]) / (b[1] - b[0])
		low, high, slack = low+(1-k)*f[6], high+k*f[6], slack+0.5+0.001*math.Abs(f[6])
	}
	assert.True(t, math.Abs(low-b[3]) <= slack || math.Abs(high-b[3]) <= slack, "%s %s: %.0f and %.0f by lever", l.ID, head.text, low, high)
}

// A member that hangs on nails is asked for all that its sheet says comes to it.
func TestSheetsOfNailedMembersAddUp(t *testing.T) {
	eachSheet(t, []string{"nailed"}, func(t *testing.T, r *Report, seen map[string]int) {
		for _, l := range r.Links {
			if l.Check.ID != nailingCheck {
				continue
			}
			seen["nailed"]++
			sum, most := 0.0, 0.0
			lines := r.Workings(l)
			for _, s := range lines {
				f, ok := figures(fromNails, s)
				require.True(t, ok, s)
				if strings.HasPrefix(s, "the largest uplift known") {
					most = math.Max(most, f[0])
				} else {
					sum += f[0]
				}
			}
			assert.InDelta(t, l.Demand, math.Max(sum, most), 0.6*float64(len(lines)), l.ID)
		}
	})
}
