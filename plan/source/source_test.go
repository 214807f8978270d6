package source

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEveryGradeHasItsMeaning(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range Grades() {
		assert.NotEmpty(t, g.Meaning(), g)
		assert.False(t, seen[g.Meaning()], g)
		seen[g.Meaning()] = true
	}
	assert.Len(t, meanings, len(Grades()))
	assert.Empty(t, Grade("read somewhere").Meaning())
}

func TestKeyExplainsWhatATextUses(t *testing.T) {
	assert.Empty(t, Key("a plan is read, and nothing else: spread out"))
	assert.Equal(t, "source transcribed: "+Transcribed.Meaning()+"\nsource from memory: "+FromMemory.Meaning()+"\n",
		Key("bolt, from memory; nail (transcribed); nail (transcribed)"))
	for _, g := range Grades() {
		assert.Contains(t, Key("Table 1 ("+string(g)+"; 2021 not read)"), g.Meaning())
	}
}
