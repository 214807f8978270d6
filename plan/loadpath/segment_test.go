package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPerforatedWallOfTwoStories(t *testing.T) {
	// SDPWS 2021 4.3.6 (transcribed), a two-story perforated wall worked by
	// hand: 10 ft stories, 40 ft long; 8,000 lb above an
	// opening of 8 x 7 ft, 6,000 lb more above one of 24 x 8 ft.
	wall := func(width, height float64) *Segment {
		s := &Segment{
			Height: 120, Length: 480, Shear: &plan.Shear{From: 0, To: 480, Perforated: true},
			Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 240 - width*6, Width: width * 12, Height: height * 12}}},
		}
		s.work()
		require.Empty(t, s.Trouble)
		return s
	}
	up, low := wall(8, 7), wall(24, 8)
	assert.InDelta(t, 0.8197, up.Pierced.Co, 5e-5)
	assert.InDelta(t, 0.5435, low.Pierced.Co, 5e-5)
	low.n, low.above = 1, []*Segment{up}
	s := onOneLine(0)
	s.overturn(up, 8000)
	s.overturn(low, 14_000)
	assert.InDelta(t, 3050, s.segments[0].lifts, 0.5)
	assert.InDelta(t, 25_300, s.segments[1].lifts, 1)
	assert.InDelta(t, 305.0, 8000/(up.Working/12), 0.05)
	assert.InDelta(t, 1610, 14_000/(low.Working/12), 0.5)
}

func TestPerforatedLimits(t *testing.T) {
	narrow := &Segment{
		Height: 120, Length: 120, Shear: &plan.Shear{To: 120, Perforated: true},
		Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 20, Width: 80, Height: 84}}},
	}
	narrow.work()
	assert.NotEmpty(t, narrow.Trouble, "20 in beside an opening in a 10 ft wall counts for nothing")
	// SDPWS 2021 4.3.2.3 (transcribed): no more than 2,435 plf nominal.
	strong := &Segment{
		Height: 96, Length: 480, Shear: &plan.Shear{To: 480, Perforated: true}, Wall: &plan.Wall{},
		Unit: timber.UnitShear{Nominal: 2155, Species: 1, Faces: 2, Divisor: 2, Allow: 2155},
	}
	strong.work()
	assert.InDelta(t, 1217.5, strong.Unit.Allow, 1e-9)
	assert.Equal(t, 1.0, strong.Pierced.Co, "no opening, no loss")
	pierced := &Segment{Height: 96, Length: 96, Shear: &plan.Shear{To: 96}, Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 30, Width: 30}}}}
	pierced.work()
	assert.Contains(t, pierced.Trouble, "perforated")
}

func TestShearBetweenLinesIsLevered(t *testing.T) {
	// A line above that stands over none goes to the two beside it, by lever.
	up := &ShearLine{At: 30}
	l, r := &ShearLine{At: 0}, &ShearLine{At: 120}
	bringDown(up, []*ShearLine{l, r})
	require.Len(t, l.uppers, 1)
	assert.InDelta(t, 0.75, l.uppers[0].k, 1e-12)
	assert.InDelta(t, 0.25, r.uppers[0].k, 1e-12)
	over := &ShearLine{At: 2}
	bringDown(over, []*ShearLine{l, r})
	assert.True(t, l.uppers[1].straight)
	beyond := &ShearLine{At: 200}
	bringDown(beyond, []*ShearLine{l, r})
	assert.Equal(t, 1.0, r.uppers[1].k)
}
