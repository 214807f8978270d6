package page

import (
	"testing"

	"galewright/plan/geom"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestViewportIsTrueToScaleAndUpright(t *testing.T) {
	v := NewViewport(Scale{"1:24", 24}, sheet.Pt{X: 50, Y: 200}, 10, 110, 0, 60)
	assert.InDelta(t, 50, float64(v.Pt(10, 0).X), 1e-9)
	assert.InDelta(t, 200, float64(v.Pt(10, 0).Y), 1e-9)
	assert.InDelta(t, 12*25.4/24, float64(v.Pt(22, 0).X-v.Pt(10, 0).X), 1e-9)
	assert.Less(t, float64(v.Pt(10, 12).Y), float64(v.Pt(10, 0).Y), "up the house is up the paper")
	a, b, ok := v.Segment(geom.Vec2{X: 0, Y: 30}, geom.Vec2{X: 200, Y: 30})
	require.True(t, ok)
	assert.InDelta(t, 50, float64(a.X), 1e-9)
	assert.InDelta(t, 50+100*25.4/24, float64(b.X), 1e-9)
	_, _, ok = v.Segment(geom.Vec2{X: 0, Y: 90}, geom.Vec2{X: 200, Y: 90})
	assert.False(t, ok)
}
