package plantest

import (
	"slices"

	"github.com/stretchr/testify/assert"
)

// Alike compares two lists whatever their order, and tells the first that one of them has
// more often than the other.
func Alike(t interface {
	assert.TestingT
	Helper()
}, what string, want, got []string,
) {
	t.Helper()
	count := map[string]int{}
	for _, s := range want {
		count[s]++
	}
	for _, s := range got {
		count[s]--
	}
	var lost, more []string
	for s, n := range count {
		if n > 0 {
			lost = append(lost, s)
		} else if n < 0 {
			more = append(more, s)
		}
	}
	slices.Sort(lost)
	slices.Sort(more)
	if len(lost)+len(more) > 0 {
		assert.Failf(t, what, "%d gone, %d new of %d:\n- %s\n+ %s", len(lost), len(more), len(want), head(lost), head(more))
	}
}

func head(list []string) (s string) {
	for _, x := range list[:min(len(list), 20)] {
		s += x + "\n  "
	}
	return s
}
