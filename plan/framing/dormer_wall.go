package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// cut makes a member of a dormer's walls that ends at planes and makes room for the valley
// boards; nil where nothing is left of it.
func (f *roofFrame) cut(d *dormer, role plan.Role, id string, section plan.Lumber, box geom.Solid, planes []geom.Plane) *Member {
	body := clipTo(box, planes)
	if body.Empty() {
		return nil
	}
	parts := []geom.Solid{body}
	for _, b := range d.boards {
		parts = geom.Carve(parts, b.Planes())
	}
	if len(parts) == 0 {
		return nil
	}
	return &Member{ID: d.Name + "/" + id, Role: role, Level: f.level, Roof: d.Own, Section: section, Solid: parts}
}

// upright adds a member of a dormer's walls that stands, cut by planes at foot or head;
// nil where nothing is left of it.
func (f *roofFrame) upright(d *dormer, role plan.Role, id string, section plan.Lumber, box geom.Solid, planes ...geom.Plane) *Member {
	m := f.cut(d, role, id, section, box, planes)
	if m == nil {
		return nil
	}
	lo, hi := m.Bounds()
	mid := lo.Add(hi).Mul(0.5).Flat()
	m.Z0, m.Z1, m.Length, m.A, m.B = lo.Z, hi.Z, hi.Z-lo.Z, mid.Up(lo.Z), mid.Up(hi.Z)
	return f.member(m)
}

// flat adds a level member of a dormer, its center line along the frame (or in from the eave).
func (f *roofFrame) flat(d *dormer, role plan.Role, id string, section plan.Lumber, box geom.Solid, planes ...geom.Plane) *Member {
	m := f.cut(d, role, id, section, box, planes)
	if m == nil {
		return nil
	}
	lo, hi := m.Bounds()
	a, b := lo, hi
	if hi.X-lo.X > hi.Y-lo.Y {
		a.Y, b.Y = (lo.Y+hi.Y)/2, (lo.Y+hi.Y)/2
		m.Length = hi.X - lo.X
	} else {
		a.X, b.X = (lo.X+hi.X)/2, (lo.X+hi.X)/2
		m.Length = hi.Y - lo.Y
	}
	a.Z, b.Z = (lo.Z+hi.Z)/2, (lo.Z+hi.Z)/2
	m.A, m.B, m.Z0, m.Z1 = a, b, lo.Z, hi.Z
	return f.member(m)
}

// lyingPlate is a plate or sill of a dormer's walls: a stud laid flat.
func (d *dormer) lyingPlate() plan.Lumber { return d.Studs }

// cheekWalls stands the cheek walls on the trimmers: studs at the spacing from the front,
// cut to the main roof at their foot, and double plates beveled to it at their ends.
func (f *roofFrame) cheekWalls(d *dormer) {
	for i, k := range [2]float64{-1, 1} {
		name, out := "side"+d.cheekName(k), d.outer(k)
		in, front := out-k*d.depth, d.SetBack+d.depth
		box := func(t0, t1, z0, z1 float64) geom.Solid {
			return d.Frame.Box(min(out, in), max(out, in), t0, t1, z0, z1)
		}
		end := d.Upper + 1
		low := f.flat(d, plan.TopPlate, name+"/plate", d.lyingPlate(), box(front, end, d.top-2*plate, d.top-plate), d.onMain(0))
		d.plates[i] = f.flat(d, plan.UpperPlate, name+"/cap", d.lyingPlate(), box(d.SetBack, end, d.top-plate, d.top), d.onMain(0))
		d.lower[d.plates[i]] = low
		outsideRight(d.plates[i], d.Frame.D.Mul(k))
		for t := d.SetBack + d.Spacing; ; t += d.Spacing {
			if d.top-2*plate-d.mainAt(t+plate/2) < d.depth {
				break
			}
			m := f.upright(d, plan.Stud, fmt.Sprintf("%s/stud@%s", name, at(t-d.SetBack)), d.Studs, box(t-plate/2, t+plate/2, d.mainAt(t-plate), d.top-2*plate), d.onMain(0))
			f.standing(d, m, d.plates[i], d.Trimmers[i], name, t-d.SetBack, d.Frame.At(out-k*d.depth/2, t, d.mainAt(t)))
		}
	}
}

// outsideRight turns a plate so that its outside is at its right, as of a wall.
func outsideRight(m *Member, out geom.Vec2) {
	if m != nil && geom.With(m.B.Sub(m.A).Flat().Unit().Left(), out) {
		m.A, m.B = m.B, m.A
	}
}

// standing adds the joints at the head and the foot of a stud of a dormer's walls.
func (f *roofFrame) standing(d *dormer, m, plate, below *Member, host string, station float64, foot geom.Vec3, sole ...*Member) {
	if m == nil || plate == nil {
		return
	}
	if host != "" {
		host = "/" + host
	}
	over, head := []*Member{plate, m}, m.B
	if run := plate.B.Sub(plate.A); plate.Role == plan.Rafter { // its middle is cut lower than its high side
		head.Z -= run.Z / run.Flat().Len() * m.Section.Breadth / 2
	}
	if low := d.lower[plate]; low != nil {
		over = append(over, low)
	}
	f.joint(&Joint{Kind: plan.DormerTop, Host: d.Name + host, Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: station, Members: over, At: head, Below: true})
	if below != nil {
		j := &Joint{Kind: plan.DormerFoot, Host: d.Name + host, Level: f.level, Roof: d.Own, Dormer: d.Dormer, Station: station, Members: append([]*Member{m, below}, sole...), At: foot, Below: true}
		for _, p := range sole {
			j.Gap += p.Z1 - p.Z0
		}
		f.joint(j)
	}
}

// soleShort is what the bottom plate of a front wall on the plates under the eave leaves
// beside the trimmers for what ties those down there, in.
const soleShort = 3.0

// frontWall stands the front wall: posts of two studs over the trimmers, between them studs
// and windows on a bottom plate on the lower header, or on the plates of the wall under
// the eave; double plates over all.
func (f *roofFrame) frontWall(d *dormer) {
	t0, t1, in := d.SetBack, d.SetBack+d.depth, d.trimmer.Width()
	box := func(s0, s1, z0, z1 float64) geom.Solid { return d.Frame.Box(s0, s1, t0, t1, z0, z1) }
	base := d.eave
	if d.SetBack > 0 {
		base = d.mainAt(d.SetBack)
	}
	a, z := d.From+in, d.To-in
	clip := 0.0
	if d.SetBack == 0 {
		clip = soleShort
	}
	sole := f.flat(d, plan.BottomPlate, "sole", d.lyingPlate(), box(a+clip, z-clip, base, base+plate))
	low := f.flat(d, plan.TopPlate, "plate", d.lyingPlate(), box(d.From, d.To, d.top-2*plate, d.top-plate))
	over := d.depth // of the cheeks' upper plates, which lap over the corners
	if d.shed() {
		over = 0
	}
	upper := f.flat(d, plan.UpperPlate, "cap", d.lyingPlate(), box(d.From+over, d.To-over, d.top-plate, d.top))
	d.lower[upper] = low
	if d.shed() {
		d.plates = [2]*Member{upper, upper}
		outsideRight(upper, d.Frame.In.Mul(-1))
	}
	foot := d.mainAt(d.SetBack + d.depth/2)
	for i, k := range [2]float64{-1, 1} {
		s := d.outer(k) - k*in/2
		d.posts[i] = f.upright(d, plan.Post, fmt.Sprintf("post%s", d.cheekName(k)), d.Studs.Times(2), box(s-in/2, s+in/2, d.mainAt(t0)-1, d.top-2*plate), d.onMain(0))
		f.standing(d, d.posts[i], d.plates[i], d.Trimmers[i], "side"+d.cheekName(k), d.depth/2, d.Frame.At(s, (t0+t1)/2, foot))
	}
	w := &dormerFront{d: d, box: box, base: base + plate, head: d.top - 2*plate, lo: a, hi: z}
	for _, m := range f.frontStuds(w) {
		if m == nil {
			continue
		}
		s, _ := d.Frame.Local(m.A.Flat())
		f.standing(d, m, upper, f.underFront(d, s), "", s-d.From, m.A, sole)
	}
}

// underFront is what the bottom plate of a dormer's front wall lies on: the lower header, or
// the plate of the wall under the eave.
func (f *roofFrame) underFront(d *dormer, s float64) *Member {
	if d.SetBack > 0 {
		return d.Headers[0]
	}
	p := d.Frame.At(s, d.depth/2, 0).Flat()
	for _, w := range d.rb.sides[d.side].walls {
		if at, _ := w.Frame().Local(p); at >= 0 && at <= w.Length() {
			return f.byWall[w].plateUnder(at)
		}
	}
	return nil
}

// dormerFront is what stands between the posts of a dormer's front wall.
type dormerFront struct {
	d          *dormer
	box        func(s0, s1, z0, z1 float64) geom.Solid
	base, head float64 // top of the bottom plate, underside of the top plates
	lo, hi     float64 // between the posts
}

// frontStuds frames the windows and stands studs between, in even steps from the middle of
// the dormer no wider than the spacing; it returns those from plate to plate.
func (f *roofFrame) frontStuds(w *dormerFront) (full []*Member) {
	d := w.d
	taken := []span{}
	for _, o := range d.Openings {
		kings, around := f.dormerWindow(w, o)
		full, taken = append(full, kings...), append(taken, around)
	}
	n := math.Ceil((w.hi - w.lo) / d.Spacing)
	for k := 1.0; k < n; k++ {
		s := w.lo + (w.hi-w.lo)*k/n
		clear := true
		for _, x := range taken {
			clear = clear && !x.meets(span{s - plate/2, s + plate/2})
		}
		if clear {
			full = append(full, f.upright(d, plan.Stud, fmt.Sprintf("stud@%s", at(s-d.From)), d.Studs, w.box(s-plate/2, s+plate/2, w.base, w.head)))
		}
	}
	return full
}

// dormerWindow frames one window: a king and jacks at each side, header, sill and cripples.
// It returns the kings, and what they and all between take along the wall.
func (f *roofFrame) dormerWindow(w *dormerFront, o *plan.Opening) (kings []*Member, taken span) {
	d := w.d
	jacks := o.Jacks
	if jacks <= 0 {
		jacks = 1
		if o.Width > 72 {
			jacks = 2
		}
	}
	lo, hi := d.From+o.At, d.From+o.At+o.Width
	sill, head := d.eave+o.Sill, d.eave+o.Sill+o.Height
	out := plate * float64(jacks)
	taken = span{lo - out - plate, hi + out + plate}
	if taken.lo < w.lo-geom.Eps || taken.hi > w.hi+geom.Eps {
		f.windowFault(d, o, "dormer-opening-wide", fmt.Sprintf("window %s of dormer %s needs %s between the posts at its corners, which leave %s", o.Name, d.Name, f.inches(taken.hi-taken.lo), f.inches(w.hi-w.lo)),
			"move it to the middle, make it narrower, or the dormer wider")
		return nil, taken
	}
	if top := head + o.Header.Depth; top > w.head+geom.Eps || sill-plate < w.base-geom.Eps || o.Header.Width() > d.depth+geom.Eps {
		f.windowFault(d, o, "dormer-opening-high", fmt.Sprintf("window %s of dormer %s with its sill and header does not fit between bottom plate and top plates, %s to %s over the plates under the eave, in a wall %s deep",
			o.Name, d.Name, f.inches(w.base-d.eave), f.inches(w.head-d.eave), f.inches(d.depth)), "change its sill or height, take a smaller header, or raise plate_height")
		return nil, taken
	}
	id := func(what string, s float64) string { return fmt.Sprintf("%s %s@%s", o.Name, what, at(s-d.From)) }
	for i := range jacks {
		j := plate * float64(i)
		f.upright(d, plan.Jack, id("jack", lo-j-plate/2), d.Studs, w.box(lo-j-plate, lo-j, w.base, head))
		f.upright(d, plan.Jack, id("jack", hi+j+plate/2), d.Studs, w.box(hi+j, hi+j+plate, w.base, head))
	}
	kings = []*Member{
		f.upright(d, plan.King, id("king", taken.lo+plate/2), d.Studs, w.box(taken.lo, taken.lo+plate, w.base, w.head)),
		f.upright(d, plan.King, id("king", taken.hi-plate/2), d.Studs, w.box(taken.hi-plate, taken.hi, w.base, w.head)),
	}
	t0 := d.SetBack
	f.flat(d, plan.Header, id("header", (lo+hi)/2), o.Header, d.Frame.Box(lo-out, hi+out, t0, t0+o.Header.Width(), head, head+o.Header.Depth))
	f.flat(d, plan.Sill, id("sill", (lo+hi)/2), d.lyingPlate(), w.box(lo, hi, sill-plate, sill))
	n := math.Ceil((hi - lo) / d.Spacing)
	for k := 0.0; k <= n; k++ {
		s := lo + plate/2 + (hi-lo-plate)*k/n
		f.upright(d, plan.Cripple, id("sill cripple", s), d.Studs, w.box(s-plate/2, s+plate/2, w.base, sill-plate))
		if w.head-head-o.Header.Depth > plate {
			f.upright(d, plan.Cripple, id("cripple", s), d.Studs, w.box(s-plate/2, s+plate/2, head+o.Header.Depth, w.head))
		}
	}
	return kings, taken
}

// windowFault notes an error of a dormer's window.
func (f *roofFrame) windowFault(d *dormer, o *plan.Opening, code plan.Code, what, mend string) {
	f.fault(plan.Diagnostic{Code: code, Pos: o.Pos, Where: "dormer " + d.Name + ", window " + o.Name, Summary: what, Mend: mend})
}
