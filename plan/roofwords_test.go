package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTextsFollowWhatTheRoofIsMadeOf(t *testing.T) {
	rafters, trusses := &Roof{}, &Roof{Trusses: true}
	for _, c := range []struct{ text, all, some string }{
		{"Rafters to plates", "Trusses to plates", "Rafters or trusses to plates"},
		{"over the rafter that a panel ends on", "over the truss that a panel ends on", "over the rafter or truss that a panel ends on"},
		{"gable rafters to plates", "gable trusses to plates", "gable rafters or trusses to plates"},
		{"the end rafter or gable truss along it", "the gable truss along it", "the end rafter or gable truss along it"},
		{"Outlookers and fly rafters", "Outlookers and fly rafters", "Outlookers and fly rafters"},
		{"rafter to ridge, hip rafter", "truss to ridge, hip rafter", "rafter or truss to ridge, hip rafter"},
		{"1 rafter-clip at rafter-plate", "1 rafter-clip at rafter-plate", "1 rafter-clip at rafter-plate"},
	} {
		assert.Equal(t, c.text, (&Plan{}).InRoofWords(c.text))
		assert.Equal(t, c.text, (&Plan{Roofs: []*Roof{rafters}}).InRoofWords(c.text))
		assert.Equal(t, c.all, (&Plan{Roofs: []*Roof{trusses, trusses}}).InRoofWords(c.text))
		assert.Equal(t, c.some, (&Plan{Roofs: []*Roof{rafters, trusses}}).InRoofWords(c.text))
	}
}
