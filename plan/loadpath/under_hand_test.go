package loadpath

import (
	"math"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
)

// The demo's girders are 11 1/4 in deep; at under 15 ft above grade, exposure D, Kz is 2.41 (15 / 1935)^(2/11.5),
// so at 150 mph 1.3 x 0.85 of 0.00256 Kz 0.85 150^2 psf blow on them (ASCE 7-22 27.3.1.1, second-hand),
// and 16 psf of the least loads. Without girders across the wind there is none.
func TestWindOnGirdersUnderTheHouse(t *testing.T) {
	m := *demoReport(t).work.model
	q := 0.00256 * 2.41 * math.Pow(15/1935., 2/11.5) * 0.85 * 150 * 150
	for ax := range 2 {
		assert.InDelta(t, 1.3*0.85*q*11.25/12*28, m.onGirders(gust{proc: plan.Directional, axis: ax, sign: 1}, 28), 1)
		assert.InDelta(t, 16*11.25/12*28, m.onGirders(gust{axis: ax, sign: 1}, 28), 1e-9)
	}
	p := *m.plan
	p.Girders = nil
	for _, g := range m.plan.Girders {
		if d := g.To.Sub(g.From); math.Abs(d.Y) < 1 { // along x: the wind along x finds their ends alone
			p.Girders = append(p.Girders, g)
		}
	}
	m.plan = &p
	assert.Zero(t, m.onGirders(gust{proc: plan.Directional, axis: 0, sign: 1}, 28))
	assert.Greater(t, m.onGirders(gust{proc: plan.Directional, axis: 1, sign: 1}, 28), 500.0)
	p.Levels = nil
	assert.Zero(t, m.onGirders(gust{proc: plan.Directional, axis: 1, sign: 1}, 28))
}
