package plantest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// deaf is a test that only remembers whether it failed.
type deaf struct{ failed bool }

func (d *deaf) Errorf(string, ...any) { d.failed = true }

func TestNear(t *testing.T) {
	for name, c := range map[string]struct {
		want, got []float64
		same      bool
	}{
		"the same":         {[]float64{1, 2}, []float64{1, 2.05}, true},
		"one is off":       {[]float64{1, 2}, []float64{1, 2.15}, false},
		"it stops short":   {[]float64{1, 2}, []float64{1}, false},
		"it goes on":       {[]float64{1}, []float64{1, 2}, false},
		"nothing is there": {[]float64{1}, nil, false},
		"nothing is asked": {nil, nil, true},
	} {
		d := &deaf{}
		Near(d, c.want, c.got, 0.1)
		assert.Equal(t, c.same, !d.failed, name)
	}
}
