package read_test

import (
	"fmt"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A measure at its bound is taken, a hair past it is not; past what is usual it is
// taken with a warning. The wind of 1,500 mph and the roof a thousand feet away that
// slips of the pen make are told.
func TestMeasuresAreBounded(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{`wind_speed = "150 mph"`, `wind_speed = "300 mph"`, "warning: wind_speed: 300 mph is unusual: most are 90 mph to 200 mph"},
		{`wind_speed = "150 mph"`, `wind_speed = "301 mph"`, "error: wind_speed: 301 mph is not between 50 mph and 300 mph"},
		{`wind_speed = "150 mph"`, `wind_speed = "1500 mph"`, "error: wind_speed: 1500 mph is not between 50 mph and 300 mph"},
		{`wind_speed = "150 mph"`, `wind_speed = "49 mph"`, "error: wind_speed: 49 mph is not between"},
		{`wind_speed = "150 mph"`, `wind_speed = "67 m/s"`, ""},
		{`plate_height = "8' 1 1/8in"`, `plate_height = "13'"`, ""},
		{`plate_height = "8' 1 1/8in"`, `plate_height = "13' 1in"`, `warning: plate_height: 13' 1in is unusual: most are 7'-0" to 13'-0"`},
		{`plate_height = "8' 1 1/8in"`, `plate_height = "300'"`, `error: plate_height: 300' is not between 4'-0" and 40'-0"`},
		{`to = ["30'", "0'"]`, `to = ["30'", "1001'"]`, `error: to: 1001' is not between -1000'-0" and 1000'-0"`},
		{`edge = "4in"`, `edge = "0.01in"`, `error: edge: 0.01in is not between 1 1/2" and 1'-0"`},
		{`edge = "3in"`, `edge = "8in"`, `warning: edge: 8in is unusual: most are 2" to 6"`},
	} {
		src := strings.Replace(typedHouse, c.from, c.to, 1)
		require.NotEqual(t, typedHouse, src, c.to)
		_, ds := read.Plan("plan.toml", []byte(src), nil)
		var told []string
		for _, d := range ds {
			if d.Code == "out-of-range" || d.Code == "unusual" {
				told = append(told, fmt.Sprint(map[bool]string{true: "error: ", false: "warning: "}[d.Severity == plan.Error], d.Summary))
			}
		}
		if c.want == "" {
			assert.Empty(t, told, c.to)
			continue
		}
		require.Len(t, told, 1, "%s: %v", c.to, told)
		assert.True(t, strings.HasPrefix(told[0], c.want), "%s: %s", c.to, told[0])
	}
}

// Bounds hang together: least under most, what is usual within them.
func TestBoundsHangTogether(t *testing.T) {
	n := 0
	for _, k := range read.Keys() {
		if b := k.Bounds; b != nil {
			n++
			assert.Less(t, b.Least, b.Most, "%s.%s", k.Table, k.Name)
			if b.High > 0 {
				assert.True(t, b.Least <= b.Low && b.Low < b.High && b.High <= b.Most, "%s.%s", k.Table, k.Name)
			}
			assert.Contains(t, k.Limits(), "from ", "%s.%s", k.Table, k.Name)
		}
	}
	assert.Greater(t, n, 30)
}
