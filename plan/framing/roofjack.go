package framing

import (
	"cmp"
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// jackJoints adds a rafter-ridge joint at each end of a jack that is cut to a
// hip or valley, and at each end of a hip or valley that another one or the
// end of a ridge carries: there is no plate under that end, so what holds it
// down is the tie to the stick it leans on. Each jack has its own joint, for
// it needs its own piece, also where two of them meet across a hip. Hosts are
// the sticks, stations run along their plan line from the low end.
func (f *roofFrame) jackJoints() {
	hosts := f.lineHosts()
	for _, r := range f.rafters {
		tie := func(end roofplan.End, p geom.Vec2, at geom.Vec3) {
			if l := f.lineFor(end.Line, r, p); l != nil && l.line.Kind != roofplan.Ridge && hosts[l] != "" {
				f.lineJoint(l, hosts[l], r.member, at)
			}
		}
		if _, body, _ := r.run.Bearing(); body == nil { // else it is a tail: the plate beside holds it
			tie(r.run.LowEnd, r.run.Low, r.member.A)
		}
		tie(r.run.HighEnd, r.run.High, r.member.B)
	}
	for i, o := range f.lines {
		if o.line.Kind == roofplan.Ridge || o.member == nil {
			continue
		}
		for _, p := range []geom.Vec3{o.line.A, o.line.B} {
			if l := f.carrierOf(i, p); l != nil && hosts[l] != "" {
				f.lineJoint(l, hosts[l], o.member, p)
			}
		}
	}
}

// lineJoint ties member m, whose end is at p, to the line l. Where no board of a
// ridge reaches there is nothing to tie it to: the load path tells that it hangs free.
func (f *roofFrame) lineJoint(l *roofLine, host string, m *Member, p geom.Vec3) {
	station, on := min(max(l.u(p.Flat()), 0), l.line.Run()), l.member
	if l.line.Kind == roofplan.Ridge {
		station = l.owner.station(p.Flat())
		on = cmp.Or(f.ridgePiece(l, p.Flat()), on) // the one of a long ridge's pieces that it leans on
	}
	if on == nil {
		return
	}
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterRidge, Host: host, Level: f.level, Roof: m.Roof,
		Station: station, Members: []*Member{m, on}, At: p,
		Peak: m.Role == plan.HipRafter && l.member.Role == plan.HipRafter && l.endsAt(p),
	}))
}

// endsAt tells whether p is the upper end of a hip or valley.
func (l *roofLine) endsAt(p geom.Vec3) bool { return l.u(p.Flat()) > l.line.Run()-1 }

// lineHosts names the lines that carry. A ridge is its roof, a hip or valley
// its roof and the way it runs down, such as "main/hipSW"; a second one of a
// name gets a number.
func (f *roofFrame) lineHosts() map[*roofLine]string {
	hosts, count := map[*roofLine]string{}, map[string]int{}
	for _, l := range f.lines {
		name, second := l.owner.Name+"/"+string(l.line.Kind)+quarter(l.dir.Mul(-1)), "%s%d"
		if l.line.Kind == roofplan.Ridge {
			name, second = l.owner.Name, "%s/ridge%d"
		}
		count[name]++
		if n := count[name]; n > 1 {
			name = fmt.Sprintf(second, name, n)
		}
		hosts[l] = name
	}
	return hosts
}

// quarter names the quarter of the compass that d looks into.
func quarter(d geom.Vec2) string {
	name, east := plan.North, plan.East
	if d.Y < 0 {
		name = plan.South
	}
	if d.X < 0 {
		east = plan.West
	}
	return string(name + east)
}

// carrierOf returns the line that carries end p of hip or valley i: one that
// runs on past p, else a ridge that ends there, else an earlier hip or valley
// that leans on the same place. A top at a ridge is not asked for here: the
// ridge's own joints have it.
func (f *roofFrame) carrierOf(i int, p geom.Vec3) (on *roofLine) {
	me, top := f.lines[i], p == f.lines[i].line.B
	for k, l := range f.lines {
		if k == i || l.member == nil || geom.Same(l.dir, me.dir) || !l.holds(p.Flat()) {
			continue
		}
		u, ridge := l.u(p.Flat()), l.line.Kind == roofplan.Ridge
		switch inside := u > 1 && u < l.line.Run()-1; {
		case ridge && top:
			return nil
		case inside:
			return l
		case ridge || top && on == nil && k < i:
			on = l
		}
	}
	return on
}
