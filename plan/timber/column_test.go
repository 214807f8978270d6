package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Own statics by NDS 2018 3.7.1 (from memory): a 2x6 of southern pine, 104.625 in
// long: slenderness 19.02; FcE = 0.822 x 510,000 / 361.9 = 1,158.5 psi; Fc* = 1,400 x
// 1.6 = 2,240; ratio 0.5172; (1 + 0.5172) / 1.6 = 0.9482; Cp = 0.9482 − sqrt(0.8992 −
// 0.6465) = 0.4455; 998 psi.
func TestColumnOfAStud(t *testing.T) {
	pine, _ := SpeciesOf("southern pine")
	w, ok := pine.Along()
	assert.True(t, ok)
	v := Column{Along: w, Length: 104.625, Depth: 5.5, Duration: WindDuration}.Value()
	assert.InDelta(t, 1158.5, v.FcE, 0.5)
	assert.InDelta(t, 0.4455, v.Cp, 3e-4)
	assert.InDelta(t, 998, v.Stress, 1)
	// A stub does not buckle, a pole of 51 times its depth bears nothing.
	assert.InDelta(t, 1, Column{Along: w, Length: 1, Depth: 5.5, Duration: WindDuration}.Value().Cp, 1e-3)
	assert.Zero(t, Column{Along: w, Length: 51 * 5.5, Depth: 5.5, Duration: WindDuration}.Value().Stress)
}
