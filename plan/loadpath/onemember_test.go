package loadpath

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The foot of sanderling's broken hip lies against the end of the wing's ridge. A
// hanger made for jacks has ends for the rafter and for the hip: here both are the
// hip, and all its nails in one member tie it to nothing.
func TestAPieceInOneMemberTiesNothing(t *testing.T) {
	r := exampleWith(t, "sanderling.toml", "[[rule]]\nname = \"short rafters of the wing\"", `[[rule]]
name = "foot of the broken hip"
at = "rafter-ridge"
use = "valley-hanger"
where = { role = "hip rafter", from = "25' 11in", to = "26' 1in" }

[[rule]]
name = "short rafters of the wing"`)
	l := demand(t, r, "wing-312b-RR", "ridge-tie")
	assert.Contains(t, l.Gap, "all its ends are for the hip rafter: it ties that to nothing")
}
