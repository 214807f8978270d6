package piling

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
)

// pileLine is a row of piles that is drawn: those of a girder, or two that are braced
// across from it.
type pileLine struct {
	title    string
	frame    geom.Frame // along it, as seen
	len, top float64    // from its start to its end; the girder's top above grade, in
	deep     [2]float64 // of what is shown, across its frame
	piles    []station
	bays     []bayNote
	heights  []float64 // that are lettered at its side, rising
	walls    []panel
	lines    []project.Line
	view     project.View
}

// station is a pile on a line and what is lettered under it.
type station struct {
	at   float64 // along the line
	text string
}

// bayNote is lettered under the middle of a bay.
type bayNote struct {
	at   float64
	text string
}

// panel is a breakaway wall in one bay.
type panel struct{ u0, u1, v0, v1 float64 }

// linesOf finds the lines of piles that there is something to draw of.
func linesOf(c *page.Context) (out []*pileLine) {
	h := scene.New(c.House)
	for _, g := range c.House.Plan.Girders {
		if l := alongGirder(c, g); l != nil {
			out = append(out, l)
		}
		out = append(out, acrossFrom(c, g)...)
	}
	for _, l := range out {
		l.project(c, h)
	}
	return out
}

// joints returns a girder's joints of a kind, in order along it.
func joints(c *page.Context, host string, kind plan.JointKind) (out []*framing.Joint) {
	for _, j := range c.House.Joints {
		if j.Host == host && j.Kind == kind {
			out = append(out, j)
		}
	}
	return out
}

// aside is how far beside the piles' faces a line shows what is there, in.
const aside = 3

// alongGirder is the line of a girder's piles, or nil where nothing stands between them.
func alongGirder(c *page.Context, g *plan.Girder) *pileLine {
	f := geom.NewFrame(g.From, g.To)
	l := &pileLine{title: "Piles of girder " + g.Name + ", from outside", frame: f, len: g.To.Sub(g.From).Len(), deep: [2]float64{math.Inf(1), math.Inf(-1)}}
	for _, j := range joints(c, g.Name, plan.GirderPile) {
		l.piles = append(l.piles, station{j.Station, c.Length(j.Station)})
		l.hold(j.Members...)
		l.heights = append(l.heights, j.At.Z)
	}
	notes := map[int][]string{}
	for _, x := range c.House.Plan.Braces {
		if x.Girder == g.Name && x.Across == "" {
			l.braced(c, x, notes)
		}
	}
	for _, x := range c.House.Plan.Breakaways {
		if x.Girder == g.Name {
			l.closed(c, x, notes)
		}
	}
	l.note(notes)
	if len(l.bays) == 0 {
		return nil
	}
	return l
}

// note letters what is in each bay, with its number.
func (l *pileLine) note(notes map[int][]string) {
	for i := 1; i < len(l.piles); i++ {
		if len(notes[i]) > 0 {
			l.bays = append(l.bays, bayNote{(l.piles[i-1].at + l.piles[i].at) / 2, fmt.Sprintf("bay %d: %s", i, strings.Join(notes[i], ", "))})
		}
	}
}

// acrossFrom are the bays that are braced across from a girder's piles.
func acrossFrom(c *page.Context, g *plan.Girder) (out []*pileLine) {
	for _, x := range c.House.Plan.Braces {
		if x.Girder != g.Name || x.Across == "" {
			continue
		}
		for _, p := range pairs(c, x) {
			a, b := p[0].A.Flat(), p[1].A.Flat()
			l := &pileLine{title: fmt.Sprintf("Brace %s, from girder %s to girder %s", x.Name, x.Girder, x.Across), frame: geom.NewFrame(a, b), len: b.Sub(a).Len(), deep: [2]float64{math.Inf(1), math.Inf(-1)}}
			l.piles = []station{{0, x.Girder}, {l.len, x.Across}}
			l.bays = []bayNote{{l.len / 2, x.Name + ": " + words(x)}}
			l.hold(p[0], p[1])
			for _, j := range c.House.Joints {
				if j.Kind == plan.GirderPile && slices.Contains(j.Members, p[0]) {
					l.heights = append(l.heights, j.At.Z)
				}
			}
			l.heights = append(l.heights, x.Bottom, l.heights[len(l.heights)-1]-x.Top)
			out = append(out, l)
		}
	}
	return out
}

// pairs returns the piles that a brace across ties, each two once.
func pairs(c *page.Context, x *plan.Brace) (out [][2]*framing.Member) {
	add := func(a, b *framing.Member) {
		if p := [2]*framing.Member{a, b}; !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	for _, j := range c.House.Joints {
		if j.Brace != nil && j.Brace.Name == x.Name && j.Kind == plan.BraceRod {
			add(j.Members[0], j.Members[1])
		}
	}
	ends := map[*framing.Member][]*framing.Member{}
	var order []*framing.Member
	for _, j := range c.House.Joints {
		if j.Brace == nil || j.Brace.Name != x.Name || j.Kind != plan.BraceEnd {
			continue
		}
		pile := j.Members[len(j.Members)-1]
		for _, m := range j.Members[:len(j.Members)-1] {
			if ends[m] == nil {
				order = append(order, m)
			}
			ends[m] = append(ends[m], pile)
		}
	}
	for _, m := range order {
		if p := ends[m]; len(p) == 2 {
			if p[0].A.Sub(m.A).Len() > p[1].A.Sub(m.A).Len() {
				p[0], p[1] = p[1], p[0]
			}
			add(p[0], p[1])
		}
	}
	return out
}

// words say what a brace is made of.
func words(x *plan.Brace) string {
	if x.Kind == plan.RodBrace {
		return string(x.Kind)
	}
	return string(x.Kind) + " " + x.Member.Text
}

// hold widens what is shown to piles and girders, with their bracing on both faces.
func (l *pileLine) hold(members ...*framing.Member) {
	for _, m := range members {
		lo, hi := m.Bounds()
		for _, p := range []geom.Vec2{lo.Flat(), hi.Flat()} {
			_, t := l.frame.Local(p)
			l.deep = [2]float64{min(l.deep[0], t-aside), max(l.deep[1], t+aside)}
		}
		l.top = max(l.top, hi.Z)
	}
}

// braced notes the bays of a brace and the heights of its ends.
func (l *pileLine) braced(c *page.Context, x *plan.Brace, notes map[int][]string) {
	for _, j := range c.House.Joints {
		if j.Brace == nil || j.Brace.Name != x.Name {
			continue
		}
		if j.Kind == plan.BraceRod {
			l.heights = append(l.heights, j.Brace.A.Z, j.Brace.B.Z)
		} else {
			l.heights = append(l.heights, j.At.Z)
		}
	}
	for i := 1; i < len(l.piles); i++ {
		if plan.In(x.Bays, i) {
			notes[i] = append(notes[i], x.Name+" "+words(x))
		}
	}
}

// closed notes the bays of a breakaway wall and its outline between the piles.
func (l *pileLine) closed(c *page.Context, x *plan.Breakaway, notes map[int][]string) {
	half := c.House.Plan.Foundation.Pile.Width() / 2
	for i := 1; i < len(l.piles); i++ {
		if plan.In(x.Bays, i) {
			notes[i] = append(notes[i], x.Name+" breakaway wall")
			l.walls = append(l.walls, panel{l.piles[i-1].at + half, l.piles[i].at - half, x.Base, l.heights[0]})
		}
	}
}

// project looks at the line from outside.
func (l *pileLine) project(c *page.Context, h *scene.House) {
	slices.Sort(l.heights)
	l.heights = slices.CompactFunc(l.heights, func(a, b float64) bool { return math.Abs(b-a) < 0.5 })
	in, d := l.frame.In.Up(0), l.frame.D.Up(0)
	const end = 12
	half := [3]float64{(l.len + 2*end) / 2, (l.deep[1] - l.deep[0]) / 2, (l.top + end) / 2}
	mid := l.frame.At(l.len/2, (l.deep[0]+l.deep[1])/2, (l.top-end)/2)
	planes := project.Box(mid, [3]geom.Vec3{d, in, {Z: 1}}, half)
	lo, hi := mid, mid
	for _, s := range []float64{-end, l.len + end} {
		for _, t := range l.deep {
			p := l.frame.At(s, t, 0)
			lo = geom.Vec3{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: -end}
			hi = geom.Vec3{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: l.top}
		}
	}
	var bodies []*steel.Body
	for _, pc := range c.Placement.Pieces {
		switch pc.Joint.Kind {
		case plan.BraceEnd, plan.BraceRod, plan.GirderPile:
			if b := c.Schedule.Steel.Body(pc); b != nil {
				bodies = append(bodies, b)
			}
		}
	}
	l.view = project.Looking(in, geom.Vec3{Z: 1})
	l.lines = project.Project(h.Around(planes, lo, hi, bodies...), l.view).Lines()
}

// at is where on a line a point of its picture is: along it, and its height.
func (l *pileLine) at(p geom.Vec2) geom.Vec2 {
	return geom.Vec2{X: p.X - l.view.At(l.frame.Origin.Up(0)).X, Y: p.Y}
}
