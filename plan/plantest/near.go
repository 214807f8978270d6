package plantest

import "github.com/stretchr/testify/assert"

// Near asserts that two lists have as many numbers, each within tol of the one
// it is compared with. (assert.InDeltaSlice takes a list that stops short for
// the same.)
func Near(t assert.TestingT, want, got []float64, tol float64, what ...any) bool {
	if h, ok := t.(interface{ Helper() }); ok {
		h.Helper()
	}
	return assert.Len(t, got, len(want), what...) && assert.InDeltaSlice(t, want, got, tol, what...)
}
