package page

import (
	"fmt"
	"math"
)

// Ratio prints demand over capacity; a gap has none. A ratio that is over 1 by
// a hair must not read 1.00.
func Ratio(r float64) string {
	switch {
	case math.IsInf(r, 1):
		return "gap"
	case r > 1 && r < 1.005:
		return fmt.Sprintf("%.3f", math.Max(r, 1.001))
	}
	return fmt.Sprintf("%.2f", r)
}
