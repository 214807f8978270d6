package render

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFilterOfSheets(t *testing.T) {
	for _, x := range []struct {
		filter, number string
		want           bool
	}{
		{"2xx", "S-201", true},
		{"2xx", "S-301", false},
		{"S-2xx", "S-215", true},
		{"S-201", "S-201", true},
		{"201", "S-201", true},
		{"s-201", "S-201", true},
		{"S-2*", "S-209", true},
		{"S-20", "S-201", false},
		{"[", "S-201", false},
	} {
		assert.Equal(t, x.want, matches(x.filter, x.number), "%s on %s", x.filter, x.number)
	}
}
