package lists

import (
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
)

func TestEveryJointKindHasAFramersWords(t *testing.T) {
	for _, k := range plan.JointKinds {
		require.NotEmpty(t, jointWords[k], k)
	}
}
