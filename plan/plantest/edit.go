package plantest

import (
	"strings"

	"github.com/stretchr/testify/require"
)

// Edit returns a plan's text with strings of it replaced, old before new; each old one
// must stand in it.
func Edit(t require.TestingT, src []byte, edits ...string) []byte {
	for i := 0; i < len(edits); i += 2 {
		require.Contains(t, string(src), edits[i])
	}
	return []byte(strings.NewReplacer(edits...).Replace(string(src)))
}

// Slotted are edits of examples/marsh-wren.toml that put long straps where they pass
// plates: on the sides of posts that the house ties through the floor by rods, and of
// single studs at the ends of the gable walls, which the plates of 2S and 2N pass.
var Slotted = []string{
	`edge = "6in", posts = 2`, `edge = "6in"`,
	`use = "hold-down-pair"
wall = "2S"
on = "wall-end"
at = "37' 4in"
`, `use = "floor-strap"
face = "right"
wall = "2S"
on = "wall-end"
at = "37' 4in"
`,
	`use = "hold-down-pair"
wall = "2N"
on = "wall-end"
at = ["8'", "36'"]
`, `use = "floor-strap"
face = "left"
wall = "2N"
on = "wall-end"
at = "8'"

[[place]]
use = "floor-strap"
face = "right"
wall = "2N"
on = "wall-end"
at = "36'"
`,
	`use = "hold-down-pair"
wall = "2W"
on = "wall-end"
`, `use = "floor-strap"
face = "right"
wall = "2W"
on = "wall-end"
`,
	"wall = \"2E\"\non = \"wall-end\"\nat = \"6in\"\nface = \"inside\"", "wall = \"2E\"\non = \"wall-end\"\nat = \"6in\"\nface = \"left\"",
	"wall = \"2E\"\non = \"wall-end\"\nat = \"27' 6in\"\nface = \"inside\"", "wall = \"2E\"\non = \"wall-end\"\nat = \"27' 6in\"\nface = \"right\"",
	"wall = \"2W\"\non = \"wall-end\"\nat = \"6in\"\nface = \"inside\"", "wall = \"2W\"\non = \"wall-end\"\nat = \"6in\"\nface = \"left\"",
	"wall = \"2W\"\non = \"wall-end\"\nat = \"27' 6in\"\nface = \"inside\"", "wall = \"2W\"\non = \"wall-end\"\nat = \"27' 6in\"\nface = \"right\"",
}
