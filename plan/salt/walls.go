package salt

import (
	"galewright/plan"
	"galewright/plan/geom"
)

// wall is a wall with its frame, which is worked out once.
type wall struct {
	*plan.Wall
	frame geom.Frame
}

// near tells whether a point of the plan is along the wall, or within its skin, and
// no deeper in it than deepest, in from its outside face.
func (w *wall) near(p geom.Vec2, deepest float64) bool {
	at, deep := w.frame.Local(p)
	return deep >= -skin && deep <= deepest && at >= w.Hook-skin && at <= w.Length()+skin
}

// walls finds the walls around a point and tells what is inside of them.
type walls struct {
	grid   *geom.Grid[*wall]
	around map[*plan.Level]*geom.Rings // the exterior walls of each level
}

func newWalls(p *plan.Plan) *walls {
	ws := &walls{grid: geom.NewGrid[*wall](), around: map[*plan.Level]*geom.Rings{}}
	for _, w := range p.Walls {
		x := &wall{w, w.Frame()}
		lo, hi := x.box()
		ws.grid.Add(x, lo, hi, geom.Slant(w.From, w.To, x.deepest()))
	}
	for _, l := range p.Levels {
		var sides [][2]geom.Vec2
		for _, w := range p.Walls {
			if w.Exterior && w.On(l) {
				sides = append(sides, [2]geom.Vec2{w.From, w.To})
			}
		}
		ws.around[l] = geom.NewRings(sides)
	}
	return ws
}

// deepest is how far from the outside face any point is looked for, in.
func (w *wall) deepest() float64 { return w.Depth() + skin }

// box returns the plan box of all points that may be near a wall, at no height.
func (w *wall) box() (lo, hi geom.Vec3) {
	reach := w.deepest() + skin + hair
	a, b := w.frame.At(0, 0, 0).Flat(), w.frame.At(w.Length(), 0, 0).Flat()
	return geom.Vec3{X: min(a.X, b.X) - reach, Y: min(a.Y, b.Y) - reach}, geom.Vec3{X: max(a.X, b.X) + reach, Y: max(a.Y, b.Y) + reach}
}

// at returns the walls around a point, in the plan's order.
func (ws *walls) at(p geom.Vec2) []*wall {
	q := geom.Vec3{X: p.X, Y: p.Y}
	return ws.grid.Within(q, q)
}
