package read_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Framing alone knows a roof's hips and valleys; the reader knows the roof.
func TestPlaceOnAHipNamesItsRoof(t *testing.T) {
	place := func(roof string) []string {
		_, ds := parse(house+"[[place]]\nuse = \"story-strap\"\naction = \"remove\"\nat = \"1'\"\nroof = \""+roof+"\"\n", nil)
		return lines(ds)
	}
	require.Empty(t, place("roof"))
	require.Empty(t, place("roof/hipNE"))
	require.Len(t, place("rof/hipNE"), 1)
	require.Contains(t, place("rof/hipNE")[0], `there is no roof "rof"`)
}
