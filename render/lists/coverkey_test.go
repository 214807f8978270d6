package lists

import (
	"strings"
	"testing"

	"galewright/plan/geom"
	"galewright/render/page/pagetest"

	"github.com/stretchr/testify/assert"
)

// A site of very many walls: the key plan says how many names found no place.
func TestKeyPlanOfManyWallsTellsWhatIsLeftOut(t *testing.T) {
	m := pagetest.TextHouse()
	one := m.House.Plan.Walls[0]
	for i := range 2000 {
		w := *one
		by := geom.Vec2{X: float64(i%50) * 200, Y: float64(i/50) * 200}
		w.Name, w.From, w.To = "w"+string(rune('A'+i%26))+string(rune('A'+i/26%26)), one.From.Add(by), one.To.Add(by)
		m.House.Plan.Walls = append(m.House.Plan.Walls, &w)
	}
	_, pages := textSet(t, m, "arch-d")
	text := strings.Join(lines(series(pages, 0)), "\n")
	assert.Regexp(t, `Key plan, first, not to scale, \d+ names left out`, text)
}
