package detail

import (
	"testing"

	"galewright/plan/steel"
	"galewright/render/page/pagetest"
	"galewright/render/scene"
)

// What the details of the demo house take: its scene and projection, and all
// pages drawn.
func BenchmarkDetails(b *testing.B) {
	m := pagetest.Example(b, "marsh-wren.toml")
	b.Run("projected", func(b *testing.B) {
		st, house := steel.New(m.Placement), scene.New(m.House)
		for b.Loop() {
			for _, l := range m.Schedule.Lines {
				for _, x := range conditionsOf(l, st) {
					newShot(x, house)
				}
			}
		}
	})
	b.Run("pages", func(b *testing.B) {
		for b.Loop() {
			Pages(pagetest.Context(b, m, "arch-d"))
		}
	})
}
