package loadpath

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"galewright/plan/capacity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every link of every example has a name that Explain takes, its demand ends in
// a term that is the demand, its capacity has a term that is the capacity, and
// what it comes from is told.
func TestEveryLinkIsExplained(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		r := reportOf(a.placed)
		texts := map[string]string{}
		for _, l := range r.Links {
			require.NotEmpty(t, l.ID, l.Where)
			require.Contains(t, r.Named(l.ID), l, l.ID)
			if _, done := texts[l.ID]; !done {
				texts[l.ID] = r.Explain(l.ID)
			}
			for _, s := range append(termTexts(l.Terms), l.Where, l.Check.Title) {
				assert.Contains(t, texts[l.ID], s, l.ID)
			}
			checkDemand(t, r, l)
			if c := l.Capacity; c != nil && c.Unknown == "" {
				assert.True(t, slices.ContainsFunc(c.Terms, func(x capacity.Term) bool { return math.Abs(x.Value-c.Value) < 0.5 }), "%s %s: no term is the capacity %.1f", l.Check.ID, l.ID, c.Value)
			}
		}
	})
}

func termTexts(list []Term) (out []string) {
	for _, x := range list {
		out = append(out, x.Text)
	}
	return out
}

// checkDemand holds a link's demand against its last term, and its workings.
func checkDemand(t *testing.T, r *Report, l *Link) {
	if l.Demand <= 0 {
		return
	}
	require.NotEmpty(t, l.Terms, "%s %s", l.Check.ID, l.ID)
	assert.InDelta(t, l.Demand, l.Terms[len(l.Terms)-1].Value, 0.5, "%s %s", l.Check.ID, l.ID)
	switch l.Check.ID {
	case limitCheck, deckCheck, panelCheck, sillCheck, platesCheck, liftCheck, bendingCheck, ridgeBendCheck, gableCheck: // told by their terms
	case "story-shear", twistCheck:
	default:
		assert.True(t, len(r.Workings(l)) > 0 || r.LineOf(l) != nil, "%s %s: nothing says where its demand comes from", l.Check.ID, l.ID)
	}
}

// The sum that LineWorkings tells is the force of the line, and a name stands
// for what hangs on a line.
func TestALinesForceIsToldWhole(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		r := reportOf(a.placed)
		for _, x := range r.Lines {
			if x.Force <= least {
				continue
			}
			told := r.LineWorkings(x)
			require.NotEmpty(t, told, x.Name)
			sum := 0.0
			for _, s := range told {
				switch indentOf(s) {
				case 2: // what the line's own deck and the lines above bring
					sum += lastForce(t, s)
				}
			}
			assert.InDelta(t, x.Force, sum, 4, x.Name) // kN are told to the hundredth, 2.2 lb
			assert.NotEmpty(t, r.Named("line "+x.Name))
			assert.NotEmpty(t, r.Named(x.Name))
		}
	})
}

func indentOf(s string) int { return len(s) - len(strings.TrimLeft(s, " ")) }

// lastForce is the force at the end of a told line, lb; 1 kN is 224.809 lb.
func lastForce(t *testing.T, s string) float64 {
	at := forceAtEnd.FindStringSubmatch(s)
	require.NotNil(t, at, s)
	lb, err := strconv.ParseFloat(at[1], 64)
	require.NoError(t, err)
	if at[2] == "kN" {
		return lb * 224.809
	}
	return lb
}

var forceAtEnd = regexp.MustCompile(`(-?[\d.]+) (lb|kN)$`)

// A name that stands for nothing, and one that stands for a segment with its ends.
func TestNames(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		r := reportOf(a.placed)
		assert.Empty(t, r.Explain("1S/Z, bottom plate"))
		for _, x := range r.Lines {
			for _, s := range x.Segments {
				assert.NotEmpty(t, r.Named(s.Name), s.Name)
			}
		}
	})
}
