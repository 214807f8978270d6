package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// HungOnJacks is the demo's plan as if its headers were clipped to their jacks
// alone, not to the kings.
func HungOnJacks(t *testing.T, src []byte) []byte {
	t.Helper()
	text := string(src)
	for _, x := range [][2]string{
		{`where = { level = "second", role = ["stud", "king", "post"] }`, `where = { level = "second" }`},
		{"use = \"header-clip\"\nface = \"outside\"\nwhere = { wall = [\"2S\", \"2N\"] }", "use = \"header-clip\"\nface = \"outside\"\nwhere = { wall = \"1S\" }"},
	} {
		require.Contains(t, text, x[0])
		text = strings.Replace(text, x[0], x[1], 1)
	}
	return []byte(text)
}
