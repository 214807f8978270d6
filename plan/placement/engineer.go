package placement

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// place asks for the engineer's item at each of its stations.
func (x *placer) place(e *plan.Place) {
	host := cmp.Or(e.Wall, e.Roof, e.Girder, e.Porch)
	where := "place of " + e.Use + " on " + host
	x.used[e.Use] = true // also when the place itself is at fault
	if !x.placeKnown(e, host, where) {
		return
	}
	var it *hardware.Item
	if e.Use != "" || e.Action != plan.Remove {
		if it = x.item(e.Use, e.Pos, where); it == nil {
			return
		}
	}
	kinds := x.kindsOf(e, it, where)
	if kinds == nil {
		return
	}
	for i, s := range e.At {
		pos := e.Pos
		if i < len(e.AtPos) {
			pos = e.AtPos[i]
		}
		hits := x.bothSides(x.hit(host, kinds, s))
		if len(hits) == 0 {
			x.missed(e, pos, host, kinds, s)
		}
		for _, j := range hits {
			if e.Action == plan.Remove {
				x.remove(e, pos, j, it)
			} else {
				x.put(e, j, it)
			}
		}
	}
}

// bothSides returns the joint that a station means, and with a jack at a hip or valley the one
// that meets it there from the other side: no station tells the two apart.
func (x *placer) bothSides(j *framing.Joint) []*framing.Joint {
	if j == nil {
		return nil
	}
	out := []*framing.Joint{j}
	if j.Kind != plan.RafterRidge || len(j.Members) < 2 || j.Members[1].Role != plan.HipRafter && j.Members[1].Role != plan.ValleyRafter {
		return out
	}
	for _, o := range x.byHost[hostKind{j.Host, j.Kind}] {
		if o != j && len(o.Members) > 1 && o.Members[1].Role == j.Members[1].Role && math.Abs(o.Station-j.Station) < 1.0/16 {
			out = append(out, o)
		}
	}
	return out
}

// placeKnown tells whether host and action of a place mean anything.
func (x *placer) placeKnown(e *plan.Place, host, where string) bool {
	if e.Action != "" && !slices.Contains(plan.Actions, e.Action) {
		x.raise(plan.Diagnostic{
			Code: "unknown-word", Pos: e.Pos, Where: where,
			Summary: fmt.Sprintf("%q is not an action of a place", e.Action), Mend: meant(e.Action, plan.Actions),
		})
		return false
	}
	if x.isHost[host] {
		return true
	}
	x.raise(plan.Diagnostic{
		Code: "unknown-host", Pos: e.Pos, Where: where,
		Summary: fmt.Sprintf("%q is not a wall, roof, girder or porch with joints", host), Mend: meant(host, x.hosts),
	})
	return false
}

// kindsOf returns the joint kinds a place may hit, the likeliest first.
func (x *placer) kindsOf(e *plan.Place, it *hardware.Item, where string) []plan.JointKind {
	if e.On == "" {
		if it != nil && len(it.Kind.On) > 0 {
			return it.Kind.On
		}
		return plan.JointKinds()
	}
	k := e.On
	if k.Row() == nil {
		x.raise(plan.Diagnostic{
			Code: "unknown-word", Pos: e.Pos, Where: where,
			Summary: fmt.Sprintf("%q is not a kind of joint", e.On), Mend: meant(e.On, plan.JointKinds()),
		})
		return nil
	}
	if it != nil && (!x.belongs(it, k, e.Pos, where) || !x.faced(it, cmp.Or(e.Face, it.Face), e.Pos, where)) {
		return nil
	}
	return []plan.JointKind{k}
}

// hit returns the joint that a station means: of the first kind that has one
// within half the member and 1 in.
func (x *placer) hit(host string, kinds []plan.JointKind, s float64) *framing.Joint {
	for _, k := range kinds {
		if j, d := x.nearest(host, []plan.JointKind{k}, s); j != nil && d <= half(j)+1+touch {
			return j
		}
	}
	return nil
}

// half returns half the breadth along the host of the member a joint holds.
func half(j *framing.Joint) float64 {
	m := j.First()
	switch {
	case m == nil:
		return 0.75
	case m.S1 > m.S0 && m.S1-m.S0 < 12:
		return (m.S1 - m.S0) / 2
	}
	return m.Section.Width() / 2
}

// nearest returns the joint of the host nearest to station s and its distance.
func (x *placer) nearest(host string, kinds []plan.JointKind, s float64) (best *framing.Joint, d float64) {
	d = math.Inf(1)
	for _, k := range kinds {
		for _, j := range x.byHost[hostKind{host, k}] {
			if m := math.Abs(x.house.AsWritten(j) - s); m < d-geomTie {
				best, d = j, m
			}
		}
	}
	return best, d
}

// geomTie keeps equal distances from changing with rounding, in.
const geomTie = 1e-9

// missed tells that no member stands where the engineer wants his item.
func (x *placer) missed(e *plan.Place, pos plan.Pos, host string, kinds []plan.JointKind, s float64) {
	d := plan.Diagnostic{
		Code: "place-off-member", Pos: pos,
		Summary: fmt.Sprintf("no %s joint at %s for %s", list(kinds), x.units().Length(s), cmp.Or(e.Use, "what is to go")),
		Where:   fmt.Sprintf("%s at %s", host, x.units().Length(s)), Mend: "the host has no such joint",
	}
	if j, off := x.nearest(host, kinds, s); j != nil {
		name := "the nearest"
		if m := j.First(); m != nil {
			name = fmt.Sprintf("the nearest is the %s", m.Role)
		}
		d.Mend = fmt.Sprintf("%s at %s (%s), %s off: write that station", name, x.units().Length(x.house.AsWritten(j)), j.ID, x.units().Length(off))
	}
	x.raise(d)
}

// put adds the engineer's ask; unless it is an addition it beats what serves
// the same purpose.
func (x *placer) put(e *plan.Place, j *framing.Joint, it *hardware.Item) {
	a := &ask{place: e, joint: j, item: it, purpose: it.Kind.Purpose, face: cmp.Or(e.Face, it.Face), count: max(e.Count, 1)}
	if e.Action != plan.Add {
		for _, old := range x.p.asks[j] {
			if old.why == "" && old.purpose == a.purpose {
				old.lose(fmt.Sprintf("overridden by %s for the same purpose (%s)", a.by(), a.purpose))
			}
		}
	}
	x.p.asks[j] = append(x.p.asks[j], a)
}

// remove takes away what stands at a joint: the item named, or everything.
func (x *placer) remove(e *plan.Place, pos plan.Pos, j *framing.Joint, it *hardware.Item) {
	gone := false
	for _, old := range x.p.asks[j] {
		if old.why == "" && (it == nil || old.item == it) {
			old.lose(fmt.Sprintf("removed by the engineer's place (%s)", line(e.Pos)))
			gone = true
		}
	}
	if gone {
		return
	}
	x.raise(plan.Diagnostic{
		Severity: plan.Warning, Code: "place-without-effect", Pos: pos,
		Summary: fmt.Sprintf("there is no %s to remove", cmp.Or(e.Use, "hardware")), Where: jointName(j),
		Mend: "take the place out, or correct its station",
	})
}
