package plantest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWordingSeesWhatIsNotOurs(t *testing.T) {
	for _, s := range []string{
		"upper storey", "Centre line", "by catalogue", "walk round the house", "it is safe", "ratio OK", "meets the code", "Not looked at: drift", "the weakest ring",
		"Goes on before sheathing", "Seen by", "they settle nothing", "without a way down", "cheek of the pile", "and how to mend it", "1 gaps", "0 gap", "12 joint held", "2 box of 5 lb",
	} {
		assert.NotEmpty(t, Wording(s), s)
	}
	for _, s := range []string{"upper story", "centered", "1 gap", "0 gaps", "21 joints", "boundary", `3" round`, "2-2x10 header", "1 1/2 in", "screw No. 12 x 1 1/2", "S-12 piece"} {
		assert.Empty(t, Wording(s), s)
	}
}
