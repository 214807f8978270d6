package model_test

import (
	"galewright/plan"
	"galewright/plan/geom"
)

// change is a way to put a whole plan elsewhere on the ground.
type change struct {
	name string
	// at puts a point, way a direction.
	at  func(geom.Vec2) geom.Vec2
	way func(geom.Vec2) geom.Vec2
	// lie is the plan's own way to lie elsewhere; nil for what is changed here.
	lie func(*plan.Plan)
}

func same(v geom.Vec2) geom.Vec2 { return v }

// by is how far a moved house goes, in: no number that any grid likes.
var by = geom.Vec2{X: 1234.5, Y: -777.25}

func moved() change {
	return change{"moved", func(v geom.Vec2) geom.Vec2 { return v.Add(by) }, same, nil}
}

func turned() change { return change{"turned", geom.Vec2.Left, geom.Vec2.Left, nil} }

// lying is a plan that is mirrored or turned as a plan can say it: about the middle of the box around its walls.
func lying(name string, lay plan.Lay) change {
	var from, to geom.Vec2
	middle := func(p *plan.Plan) geom.Vec2 {
		lo, hi := p.Walls[0].From, p.Walls[0].From
		for _, w := range p.Walls {
			for _, q := range []geom.Vec2{w.From, w.To} {
				lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
				hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
			}
		}
		return lo.Add(hi).Mul(0.5)
	}
	return change{
		name, func(v geom.Vec2) geom.Vec2 { return lay.Way(v.Sub(from)).Add(to) }, lay.Way,
		func(p *plan.Plan) {
			from = middle(p)
			p.LieBy(lay, by)
			to = middle(p)
		},
	}
}

// vec puts a point in space.
func (c change) vec(v vec) vec {
	p := c.at(geom.Vec2{X: v[0], Y: v[1]})
	return vec{p.X, p.Y, v[2]}
}

// plan puts a plan there, in place.
func (c change) plan(p *plan.Plan) {
	if c.lie != nil {
		c.lie(p)
		return
	}
	for _, l := range p.Levels {
		l.JoistRun = c.axis(l.JoistRun)
	}
	for _, w := range p.Walls {
		w.From, w.To = c.at(w.From), c.at(w.To)
	}
	for _, r := range p.Roofs {
		c.roof(r)
	}
	for _, g := range p.Girders {
		g.From, g.To = c.at(g.From), c.at(g.To)
	}
	for _, x := range p.Porches {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.Beams {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorJoists {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorBlocks {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorOpenings {
		x.Lo, x.Hi = c.rectangle(x.Lo, x.Hi)
	}
}

// rectangle puts the two corners of a rectangle there, southwest before northeast.
func (c change) rectangle(lo, hi geom.Vec2) (geom.Vec2, geom.Vec2) {
	a, b := c.at(lo), c.at(hi)
	return geom.Vec2{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, geom.Vec2{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
}

func (c change) axis(a plan.Axis) plan.Axis {
	d := geom.Vec2{X: 1}
	if a == plan.AxisY {
		d = geom.Vec2{Y: 1}
	}
	return plan.Axes[c.way(d).MainAxis()]
}

// sides are the outward directions of the sides of a rectangle.
var sides = map[plan.Side]geom.Vec2{plan.North: {Y: 1}, plan.East: {X: 1}, plan.South: {Y: -1}, plan.West: {X: -1}}

func (c change) roof(r *plan.Roof) {
	r.Area[0], r.Area[1] = c.rectangle(r.Area[0], r.Area[1])
	along, across := geom.Vec2{X: 1}, geom.Vec2{Y: 1}
	if r.Ridge == plan.AxisY {
		along, across = across, along
	}
	r.Ridge = c.axis(r.Ridge)
	if d := c.way(along); d.X+d.Y < 0 {
		r.GableEnd[0], r.GableEnd[1] = r.GableEnd[1], r.GableEnd[0]
	}
	if d := c.way(across); d.X+d.Y < 0 && r.PitchOther > 0 {
		r.Pitch, r.PitchOther = r.PitchOther, r.Pitch
	}
	for _, s := range plan.Sides {
		if r.High != "" && sides[s] == c.way(sides[r.High]) {
			r.High = s
			return
		}
	}
}
