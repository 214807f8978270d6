package loadpath

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Studs at 5, 20 and 50 of a wall from 0 to 60 serve 0 to 12.5, to 35 and to 60: the first
// from the wall's end as the last to it, so that an opening in the floor at an end of the
// wall takes from both alike. One alone serves to both its sides.
func TestTheLengthOfWallThatAStudServesBegins(t *testing.T) {
	p := &wallPath{carriers: []*carrier{{station: 5, share: 12.5}, {station: 20, share: 22.5}, {station: 50, share: 25}}}
	for n, want := range []float64{0, 12.5, 35} {
		assert.InDelta(t, want, p.from(n), 1e-9)
		assert.InDelta(t, []float64{12.5, 35, 60}[n], p.from(n)+p.carriers[n].share, 1e-9)
	}
	p = &wallPath{carriers: []*carrier{{station: 10, share: 8}}}
	assert.InDelta(t, 6, p.from(0), 1e-9)
}
