package steel

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// Explain tells where the steel of the pieces with the tag, or at the joint with
// the ID, is: what each rod bears on, which members the fasteners are in, and
// what distances they want and have not. It is "" for a tag that is none.
func (s *Steel) Explain(id string) string {
	var b strings.Builder
	for _, x := range s.Bodies {
		if x.Piece.Tag == id || x.Piece.Joint.ID == id {
			s.tell(&b, x)
		}
	}
	if b.Len() == 0 {
		return ""
	}
	return "where the steel is:\n" + b.String()
}

func (s *Steel) tell(w *strings.Builder, b *Body) {
	fmt.Fprintf(w, "%s\n", b.Piece.Tag)
	for _, r := range b.Rods {
		tellRod(w, r, r.For != b.Piece)
	}
	if len(b.Fasteners) == 0 {
		return
	}
	in := map[*framing.Member]int{}
	for _, f := range b.Fasteners {
		if len(f.Runs) > 0 {
			in[f.Runs[0].Member]++
		}
	}
	for _, m := range b.Members() {
		fmt.Fprintf(w, "  %s in the %s\n", plan.Counted(in[m], "fastener"), name(m))
	}
	if n := len(b.Loose()); n > 0 {
		fmt.Fprintf(w, "  %s in no wood\n", plan.Counted(n, "fastener"))
	}
	for i, e := range b.Piece.Item.Ends() {
		if n := b.Piece.LeftOut(i); n > 0 {
			fmt.Fprintf(w, "  %s\n", LeftOutText(n, e))
		}
	}
	for _, x := range b.Slots {
		fmt.Fprintf(w, "  it passes the %s: cut %s, %s through\n", name(x.Member), x.Words(b.Piece.Units().Length), b.Piece.Units().Length(x.Deep))
	}
	n := &nearness{worst: map[string]timber.Unmet{}}
	for _, f := range b.Fasteners {
		if list := s.Unmet(b, f); len(list) > 0 {
			n.add(b, f, list)
		}
	}
	if n.count > 0 {
		fmt.Fprintf(w, "  %s nearer than %s: %s\n", plan.Counted(n.count, "fastener"), advice(n.hard), n.text())
		if n.guessed {
			fmt.Fprintf(w, "  the catalog gives no spacing of its holes: they are taken as far apart as steel and wood are long for, up to 10 diameters\n")
		}
	}
}

// LeftOutText says that n fasteners of an end are not driven: "5 of 10 fasteners to
// ridge not driven, their flange has no wood".
func LeftOutText(n int, e hardware.End) string {
	return fmt.Sprintf("%d of %s not driven, their flange has no wood", n, strings.TrimSpace(plan.Counted(e.Count, "fastener")+" "+e.Part))
}

func advice(hard bool) string {
	if hard {
		return "the standard allows"
	}
	return "advised"
}

func tellRod(w *strings.Builder, r *Rod, others bool) {
	if r.For == nil {
		fmt.Fprintf(w, "  %s\n", r.Why)
		return
	}
	whose := ""
	if others {
		whose = " of " + r.For.Tag
	}
	fmt.Fprintf(w, "  %s rod%s, %s long: %s; %s\n", r.units().Bought(r.Diameter), whose, r.units().Length(r.Length()), r.Ends[0].words(r.units()), r.Ends[1].words(r.units()))
	if r.Why != "" {
		fmt.Fprintf(w, "  %s\n", r.Why)
	}
}

// words says what an end of a rod bears on.
func (e Bearing) words(u units.System) string {
	nut := "nut"
	if e.Nuts == 0 {
		nut = "head"
	}
	switch e.Kind {
	case OnSeat:
		return nut + " on the seat of a body"
	case OnWasher:
		washer := "cut washer"
		if e.Washer > 0 {
			washer = u.Bought(e.Washer) + " square plate"
		}
		return u.Sprintf("%s and %s on the %s, bearing on %.2f in² of wood", nut, washer, name(e.Member), e.Area)
	case CastIn:
		if e.Embed > 0 {
			return "cast " + u.Length(e.Embed) + " deep into what is below the sill plate"
		}
		return "cast in the footing"
	}
	return "nothing to bear on at " + u.Length(e.At.Z) + " above grade"
}
