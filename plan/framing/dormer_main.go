package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// hardBy is how near a trimmer a rafter on the module is left out, in: the doubled one is
// there in its stead.
const hardBy = 1.0

// dormerAt returns the dormer whose opening or trimmers a run of the main roof meets, and
// whether the run is one that is left out, for a trimmer, or the rafter across the ridge
// from one, stands there.
func (f *roofFrame) dormerAt(run *roofplan.Run) (cut *dormer, gone bool) {
	wide := f.ownerOf(run).Rafters.Width() / 2
	for _, d := range f.dormers {
		for _, t := range d.runs {
			room := d.trimmer.Width()/2 + hardBy
			opposite := f.acrossRidge(t)
			if (run.Face == d.face || opposite != nil && run.Face == opposite.Face) && math.Abs(run.Station-t.Station) < room+wide-geom.Eps {
				return d, true
			}
		}
		if lo, hi := min(d.runs[0].Station, d.runs[1].Station), max(d.runs[0].Station, d.runs[1].Station); run.Face == d.face && run.Station > lo && run.Station < hi {
			cut = d
		}
	}
	return cut, false
}

// acrossRidge returns the run that comes up to the ridge against another, nil for none
// that goes down to an eave.
func (f *roofFrame) acrossRidge(run *roofplan.Run) *roofplan.Run {
	for _, face := range f.roof.Faces {
		if !geom.Against(face.Uphill(), run.Face.Uphill()) {
			continue
		}
		for _, o := range f.roof.RunsAt(face, run.Station) {
			if _, body, _ := o.Bearing(); body != nil && o.HighEnd.Kind == roofplan.Ridge && o.High.Sub(run.High).Len() < near {
				return o
			}
		}
	}
	return nil
}

// trimmers adds the doubled rafters under the cheeks, and across the ridge from each a
// double one that it leans on there.
func (f *roofFrame) trimmers() {
	for _, d := range f.dormers {
		for i, run := range d.runs {
			r := &roofRafter{bar: d.rb.barOf(run), run: run, owner: d.rb, trims: d}
			r.half = d.trimmer.Width() / 2
			d.Trimmers[i] = f.wholeRafter(r, "trimmer", d.trimmer)
			if o := f.acrossRidge(run); o != nil {
				f.oppositeTrimmer(d, o)
			}
		}
	}
}

// oppositeTrimmer adds the double rafter across the ridge from a trimmer: in two pieces
// where another dormer's opening is there, none where that one's own trimmer is.
func (f *roofFrame) oppositeTrimmer(d *dormer, run *roofplan.Run) {
	owner := f.ownerOf(run)
	r := &roofRafter{bar: owner.barOf(run), run: run, owner: owner, trims: d}
	r.half = d.trimmer.Width() / 2
	for _, o := range f.dormers {
		if o == d || o.face != run.Face {
			continue
		}
		lo, hi := min(o.runs[0].Station, o.runs[1].Station), max(o.runs[0].Station, o.runs[1].Station)
		room := (d.trimmer.Width() + o.trimmer.Width()) / 2
		if math.Abs(run.Station-lo) < room || math.Abs(run.Station-hi) < room {
			return
		}
		if run.Station > lo && run.Station < hi {
			u0, u1, planes := f.rafterEnds(r, run.High.Sub(run.Low).Len())
			f.cutRafter(r, o, "trimmer", d.trimmer, u0, u1, planes)
			return
		}
	}
	f.wholeRafter(r, "trimmer", d.trimmer)
}

// wholeRafter adds a rafter from its plate to the ridge.
func (f *roofFrame) wholeRafter(r *roofRafter, name string, section plan.Lumber) *Member {
	u0, u1, planes := f.rafterEnds(r, r.run.High.Sub(r.run.Low).Len())
	return f.pieceOf(r, name, section, u0, u1, planes)
}

// pieceOf adds the rafter, or a piece of one, that planes leave of its run.
func (f *roofFrame) pieceOf(r *roofRafter, name string, section plan.Lumber, u0, u1 float64, planes []geom.Plane) *Member {
	lo, hi := r.extent(u0, u1, planes)
	bounds := append([]geom.Plane{r.after(u0), r.before(u1)}, planes...)
	seats := f.bearings(r.bar, bounds)
	parts := r.cut(u0, u1, planes, f.less(r.bar, bounds, seats))
	if len(parts) == 0 || hi-lo < minJack {
		return nil
	}
	side := roofplan.SideNames[r.run.Face.Side]
	r.member = f.addStick(&Member{
		ID:   fmt.Sprintf("%s/%s/%s@%s", r.owner.Name, side, name, at(r.owner.across(r.run))),
		Role: plan.Rafter, Roof: r.owner.Roof, Section: section, Ref: f.ref(),
	}, r.bar, parts, lo, hi)
	f.rafters, f.takes[r.member] = append(f.rafters, r), append(r.space(), planes...)
	if p, body, s := r.run.Bearing(); body != nil {
		if !f.plateJoint(r.member, r.bar, seats, r.owner, false) {
			f.noPlate(f.of[body], s, p)
		}
		f.checkSeat(r, seats)
	}
	return r.member
}

// cutRafter adds what a dormer's opening leaves of a rafter: its lower piece from the plate
// to the lower header, its upper one from the upper header to the ridge.
func (f *roofFrame) cutRafter(r *roofRafter, d *dormer, name string, section plan.Lumber, u0, u1 float64, planes []geom.Plane) {
	u := func(t float64) float64 { return r.u(d.Frame.At(d.c, t, 0).Flat()) }
	if d.SetBack > 0 {
		low, cut := *r.run, u(d.SetBack)
		low.High, low.HighEnd = r.at.Add(r.dir.Mul(cut)), roofplan.End{}
		piece := &roofRafter{bar: r.bar, run: &low, owner: r.owner, headed: true}
		if m := f.pieceOf(piece, name, section, u0, u1, append(planes[:len(planes):len(planes)], r.before(cut))); m != nil {
			d.cut = append(d.cut, headed{m, 0, cut, r.bar})
		}
	}
	high, cut := *r.run, u(d.Upper+d.header.Width())
	high.Low, high.LowEnd = r.at.Add(r.dir.Mul(cut)), roofplan.End{}
	piece := &roofRafter{bar: r.bar, run: &high, owner: r.owner}
	if m := f.pieceOf(piece, name, section, u0, u1, append(planes[:len(planes):len(planes)], r.after(cut))); m != nil {
		d.cut = append(d.cut, headed{m, 1, cut, r.bar})
	}
}

// headed is a piece of a rafter that ends at a header: 0 the lower one, 1 the upper one.
type headed struct {
	member *Member
	header int
	u      float64
	bar    bar
}

// headers adds the headers of a dormer's opening, plumb: the lower one level on top, for
// the front wall stands on it, the upper one beveled to the roof, and their joints.
func (f *roofFrame) headers(d *dormer) {
	in := d.trimmer.Width()
	s0, s1, wide := d.From+in, d.To-in, d.header.Width()
	var both [2]*Member
	if d.SetBack > 0 {
		z := d.mainAt(d.SetBack)
		both[0] = f.roofHeader(d, "lower", s0, s1, d.SetBack, z, d.Frame.Box(s0, s1, d.SetBack, d.SetBack+wide, z-d.header.Depth, z))
	}
	z := d.mainAt(d.Upper + wide)
	both[1] = f.roofHeader(d, "upper", s0, s1, d.Upper, z, d.Frame.Box(s0, s1, d.Upper, d.Upper+wide, z-d.header.Depth, z).Clip(underside(d.main, 0)))
	for i, h := range both {
		if h == nil {
			continue
		}
		d.Headers = append(d.Headers, h)
		for j, s := range [2]float64{s0, s1} {
			f.dormerRidge(d, s, []*Member{h, d.Trimmers[j]}, d.Frame.At(s, []float64{d.SetBack, d.Upper}[i]+wide/2, h.B.Z))
		}
	}
	for _, c := range d.cut {
		p := c.bar.point(c.u)
		s, _ := d.Frame.Local(p.Flat())
		f.dormerRidge(d, s, []*Member{c.member, both[c.header]}, p)
	}
}

// roofHeader adds one header.
func (f *roofFrame) roofHeader(d *dormer, name string, s0, s1, t, z float64, body geom.Solid) *Member {
	mid := t + d.header.Width()/2
	lo, hi := body.Bounds()
	return f.member(&Member{
		ID: fmt.Sprintf("%s/%s header", d.Name, name), Role: plan.RoofHeader, Level: f.level, Roof: d.rb.Roof, Section: d.header, Length: s1 - s0,
		A: d.Frame.At(s0, mid, z), B: d.Frame.At(s1, mid, z), Z0: lo.Z, Z1: hi.Z, Solid: []geom.Solid{body}, Ref: f.ref(),
	})
}

// dormerRidge adds a joint of what ends at a header or valley board of a dormer, or at the
// trimmers, in the way of jacks at their hip: its host is the dormer.
func (f *roofFrame) dormerRidge(d *dormer, station float64, members []*Member, p geom.Vec3) {
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterRidge, Host: d.Name + "/opening", Level: f.level, Roof: members[0].Roof, Dormer: d.Dormer, Station: station - d.From, Members: members, At: p,
	}))
}
