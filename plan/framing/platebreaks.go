package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// Breaks of plates that the plan places. What it leaves out of them is by rule; what
// it places stands, and is told where it cannot be built or is not good framing.

// breaksOf returns the plan's breaks of a wall, all by rule where it has none.
func (w *framedWall) breaksOf() plan.PlateBreaks {
	if w.Breaks == nil {
		return plan.PlateBreaks{}
	}
	return *w.Breaks
}

// breaksIn returns the stations of list inside a run.
func breaksIn(list []float64, run span) (out []float64) {
	for _, s := range list {
		if s > run.lo+geom.Eps && s < run.hi-geom.Eps {
			out = append(out, s)
		}
	}
	return out
}

// topCuts returns the cuts of the lower top plate.
func (b *builder) topCuts(w *framedWall, run span, laps []float64) []float64 {
	x := w.breaksOf()
	if x.Top != nil {
		return breaksIn(x.Top, run)
	}
	return b.splices(w, run, x.Upper, laps)
}

// upperCuts returns the cuts of one run of the upper plate.
func (b *builder) upperCuts(w *framedWall, run span, lower []float64) []float64 {
	if x := w.breaksOf(); x.Upper != nil {
		return breaksIn(x.Upper, run)
	}
	return b.splices(w, run, lower, nil)
}

// bottomCuts returns the cuts of one run of the bottom plate.
func (b *builder) bottomCuts(w *framedWall, lo, hi float64) []float64 {
	if x := w.breaksOf(); x.Bottom != nil {
		return breaksIn(x.Bottom, span{lo, hi})
	}
	return b.even(lo, hi, b.stock(w))
}

// breakFault notes a fault of the breaks that the plan gives.
func (b *builder) breakFault(w *framedWall, s plan.Severity, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Severity: s, Code: code, Pos: w.Breaks.Pos, Where: "wall " + w.Name + ", breaks", Summary: what, Mend: mend})
}

// checkRakeBreaks refuses breaks of top plates that follow a roof.
func (b *builder) checkRakeBreaks(w *framedWall) {
	x := w.breaksOf()
	if x.Top != nil || x.Upper != nil {
		b.breakFault(w, plan.Error, "rake-breaks", "the top plates of wall "+w.Name+" follow the roof and break by rule", "leave out top and upper; bottom may stay")
	}
	b.checkRow(w, "bottom plate", x.Bottom, w.bottoms)
}

// checkBreaks tells of breaks that the plan gives where they are on no plate, leave a piece
// longer than the stock, or, in the top plates, are nearer than 24 in to each other (IRC
// R602.3.2, from memory), over no stud, or at a header.
func (b *builder) checkBreaks(w *framedWall) {
	if w.Breaks == nil {
		return
	}
	x := *w.Breaks
	b.checkRow(w, "bottom plate", x.Bottom, w.bottoms)
	b.checkRow(w, "lower top plate", x.Top, w.plates)
	b.checkRow(w, "upper top plate", x.Upper, w.caps)
	if x.Top != nil && x.Upper != nil {
		b.breaksApart(w, x)
	}
	for _, s := range x.Top {
		b.checkOver(w, "lower top plate", s)
		b.checkLaps(w, s)
	}
	for _, s := range x.Upper {
		b.checkOver(w, "upper top plate", s)
	}
}

// checkRow looks at the pieces that the given breaks leave of one plate.
func (b *builder) checkRow(w *framedWall, name string, given []float64, pieces []*Member) {
	if given == nil {
		return
	}
	for _, s := range given {
		if !brokenAt(pieces, s) {
			b.breakFault(w, plan.Error, "break-off-plate", fmt.Sprintf("there is no %s to break at %s", name, b.inches(s)), "move it between the ends of the plate, clear of doors and of plates that lap over it")
		}
	}
	for _, m := range pieces {
		if stock := b.stock(w); m.S1-m.S0 > stock+geom.Eps {
			b.breakFault(w, plan.Error, "plate-over-stock", fmt.Sprintf("the %s is %s long from %s on, and the longest stock is %s", name, b.inches(m.S1-m.S0), b.inches(m.S0), b.inches(stock)),
				"add a break, or name longer plate stock")
		}
	}
}

// brokenAt tells whether two pieces meet at station s.
func brokenAt(pieces []*Member, s float64) bool {
	ends, begins := false, false
	for _, m := range pieces {
		ends = ends || math.Abs(m.S1-s) < geom.Eps
		begins = begins || math.Abs(m.S0-s) < geom.Eps
	}
	return ends && begins
}

// breaksApart refuses breaks of the two top plates that are too near to each other.
func (b *builder) breaksApart(w *framedWall, x plan.PlateBreaks) {
	for _, s := range x.Top {
		for _, u := range x.Upper {
			if d := math.Abs(s - u); d < spliceOffset-geom.Eps {
				b.breakFault(w, plan.Error, "breaks-too-near", fmt.Sprintf("the top plates break at %s and %s, %s apart", b.inches(s), b.inches(u), b.inches(d)),
					"put "+b.plan.Project.Units.Spacing(spliceOffset)+" or more between them (IRC R602.3.2, from memory)")
			}
		}
	}
}

// checkLaps warns of a break of the lower top plate near where the upper one is broken for
// the plate of a wall that meets this one.
func (b *builder) checkLaps(w *framedWall, s float64) {
	for _, c := range w.breaks {
		if s > c.lo-spliceOffset+geom.Eps && s < c.hi+spliceOffset-geom.Eps {
			b.breakFault(w, plan.Warning, "break-near-lap", fmt.Sprintf("the lower top plate breaks at %s, and the upper one from %s to %s, where the plate of another wall laps over", b.inches(s), b.inches(c.lo), b.inches(c.hi)),
				"put "+b.plan.Project.Units.Spacing(spliceOffset)+" or more between them (IRC R602.3.2, from memory)")
			return
		}
	}
}

// checkOver warns of a break of a top plate that is over no full-height stud, or over a
// header or near its end.
func (b *builder) checkOver(w *framedWall, name string, s float64) {
	for _, o := range w.openings {
		if s > o.h0-6+geom.Eps && s < o.h1+6-geom.Eps {
			b.breakFault(w, plan.Warning, "break-at-header", fmt.Sprintf("the %s breaks at %s, at the header of opening %s", name, b.inches(s), o.Name), "move it "+b.inches(6)+" or more clear of the header's ends, over a stud")
			return
		}
	}
	for _, m := range w.uprights {
		if m.Role.FullHeight() && m.S0 < s+geom.Eps && s < m.S1+geom.Eps {
			return
		}
	}
	b.breakFault(w, plan.Warning, "break-off-stud", fmt.Sprintf("the %s breaks at %s, between studs", name, b.inches(s)), "move it over a full-height stud, or add a [[wall.post]] of one stud there")
}
