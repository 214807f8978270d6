package loadpath

// shape fills in the geometry of a pair from where its rafters rest.
func (p *pair) shape() {
	left, right := p.a.foot(), p.b.foot()
	p.apex = p.a.run - left
	p.span = p.apex + p.b.run - right
	p.rise = (p.a.tan*p.apex + p.b.tan*(p.b.run-right)) / 2
}

// foot returns u of the lowest support, or of the outside face of the wall
// where there is none.
func (s *strip) foot() float64 {
	if len(s.ends) > 0 {
		return s.ends[0].u
	}
	return s.inside[0]
}

// side gathers the loads of one rafter of a pair: their sum and their moment
// about its own plate. Pressure is square to the slope, so its level part,
// at the height of the place, turns the pair too: W(x + z tan).
type side struct{ sum, moment Force }

func (a *analysis) sideLoads(s *strip, c windCase, rc roofCase) (out side) {
	u0 := s.foot()
	a.roofLoads(s, c, rc, func(p patch) {
		x, f := p.mid()-u0, p.force
		out.sum.take(f)
		out.moment.take(Force{W: f.W * x * (1 + s.tan*s.tan), D: f.D * x})
	})
	return out
}

// pairLoads takes the load of both rafters as of one stiff piece on two
// plates: what each plate holds, and the pull across the ridge from the
// moment about one plate.
func (a *analysis) pairLoads(p *pair, c windCase) {
	l, r := a.sideLoads(p.a, c, a.roofCase(c, p.a.roof)), a.sideLoads(p.b, c, a.roofCase(c, p.b.roof))
	over := l.moment.add(r.moment.times(-1)).times(1 / p.span) // passes the ridge from a to b
	p.react(a, l.sum.add(over.times(-1)), r.sum.add(over))
	if p.rise > 1 {
		p.pull.take(l.moment.add(over.times(-p.apex)).times(1 / p.rise))
	}
}

// react hands the reactions of a pair to its lowest supports.
func (p *pair) react(a *analysis, left, right Force) {
	for i, s := range []*strip{p.a, p.b} {
		f := []Force{left, right}[i]
		if len(s.ends) == 0 {
			a.unheld += max(0, f.net(ASD))
			continue
		}
		a.react(s.ends[0], f)
	}
}

// lift takes a force brought to the ridge of the pair.
func (p *pair) lift(a *analysis, f Force) {
	k := p.apex / p.span
	p.react(a, f.times(1-k), f.times(k))
	if p.rise > 1 {
		p.pull.take(f.times(k * (p.span - p.apex) / p.rise))
	}
}
