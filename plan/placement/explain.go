package placement

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// Verdicts returns what became of every rule and place that speaks of the
// joint: rules of its kind in the order written, then places.
func (p *Placement) Verdicts(j *framing.Joint) (out []Verdict) {
	for _, r := range p.House.Plan.Rules {
		if r.At != j.Kind {
			continue
		}
		v := Verdict{Rule: r, Joint: j}
		if a := p.askOf(j, func(a *ask) bool { return a.rule == r }); a != nil {
			v.Won, v.Why = a.why == "", a.why
		} else if v.Why = p.world.whyNot(r, j); v.Why == "" {
			v.Why = fmt.Sprintf("its item %q cannot be used here", r.Use)
		}
		out = append(out, v)
	}
	for _, a := range p.asks[j] {
		if a.place != nil {
			out = append(out, Verdict{Place: a.place, Joint: j, Won: a.why == "", Why: a.why})
		}
	}
	return out
}

func (p *Placement) askOf(j *framing.Joint, is func(*ask) bool) *ask {
	for _, a := range p.asks[j] {
		if is(a) {
			return a
		}
	}
	return nil
}

// Explain tells the whole story of a tag or a joint: the joint and its
// members, the piece and who asked for it, and every rule that matched or
// lost there, with file and line.
func (p *Placement) Explain(id string) (string, error) {
	piece := p.byTag[id]
	j := p.world.byID[id]
	if piece != nil {
		j = piece.Joint
	}
	if j == nil {
		return "", fmt.Errorf("no piece or joint %q; %s", id, p.likely(id))
	}
	var b strings.Builder
	if piece != nil {
		p.tellPiece(&b, piece)
	}
	p.tellJoint(&b, j)
	if piece == nil {
		if at := p.At(j); len(at) == 0 {
			b.WriteString("  nothing is placed here\n")
		} else {
			for _, q := range at {
				p.tellPiece(&b, q)
			}
		}
	}
	p.tellVerdicts(&b, j)
	return b.String(), nil
}

// likely suggests the tag or joint that was meant.
func (p *Placement) likely(id string) string {
	var names []string
	for _, q := range p.Pieces {
		names = append(names, q.Tag)
	}
	for _, j := range p.House.Joints {
		names = append(names, j.ID)
	}
	if n := plan.Nearest(id, names); n != "" {
		return fmt.Sprintf("did you mean %q?", n)
	}
	return "tags are on the sheets"
}

func (p *Placement) tellPiece(b *strings.Builder, q *Piece) {
	fmt.Fprintf(b, "%s\n  %s, %s: %s\n", q.Tag, q.Item.Mark, q.Item.Kind.Name, q.Item.Kind.Doc)
	where := fmt.Sprintf("on the %s face", q.Face)
	if q.Face == plan.Through {
		where = "through the " + throughText(q.Joint)
	}
	fmt.Fprintf(b, "  %s at %s, %s above grade\n", where, q.Units().Length(q.Station), heightText(q))
	if q.Moved != "" {
		fmt.Fprintf(b, "  %s\n", q.Moved)
	}
	if q.Item.Rod > 0 && q.Item.Bodies == 0 {
		fmt.Fprintf(b, "  %s\n", boltText(q))
	}
	if q.Item.Kind.Strap {
		fmt.Fprintf(b, "  %s of steel: %s\n", q.Units().Length(q.Length()), lapText(q))
	} else if q.Cut > 0 {
		fmt.Fprintf(b, "  rod cut to %s\n", q.Units().Length(q.Cut))
	}
	fmt.Fprintf(b, "  install %s\n", q.Item.Phase.Name)
	for i, f := range q.Item.Fasteners {
		fmt.Fprintf(b, "  %s: %s\n", fastenerWord(q.Item.Nails[i]), fastenerText(f, q.Item.Nails[i]))
	}
	name, pos := q.By()
	if q.Rule != nil {
		name = fmt.Sprintf("rule %q", name)
	} else if q.Place.Note != "" {
		name += " (" + q.Place.Note + ")"
	}
	fmt.Fprintf(b, "  placed by %s, %s\n", name, line(pos))
}

// heightText says from where to where a piece reaches; a level bolt has one height.
func heightText(q *Piece) string {
	lo, hi := q.Units().Length(q.Z0), q.Units().Length(q.Z1)
	if lo == hi {
		return lo
	}
	return lo + " to " + hi
}

// throughText names what a bolt goes through: the plate it holds, or both members.
func throughText(j *framing.Joint) string {
	var roles []string
	for _, m := range j.Members {
		if m.Role == plan.SillPlate || m.Role == plan.BottomPlate {
			return string(m.Role)
		}
		if len(roles) < 2 {
			roles = append(roles, string(m.Role))
		}
	}
	return strings.Join(roles, " and ")
}

// boltText says what a bolt or rod is made of and the hole it takes.
func boltText(q *Piece) string {
	it := q.Item
	s := fmt.Sprintf("%s diameter", q.Units().Bought(it.Rod))
	switch {
	case it.Length > 0:
		s += fmt.Sprintf(", %s long", q.Units().Bought(it.Length))
	case q.Cut > 0:
		s += fmt.Sprintf(", cut to %s", q.Units().Length(q.Cut))
	}
	washer := "a cut washer"
	if it.Washer > 0 {
		washer = fmt.Sprintf("a %s square plate washer", q.Units().Bought(it.Washer))
	}
	return fmt.Sprintf("%s; nut on %s; hole in the wood %s at most (NDS 2018 12.1.3.2, transcribed)", s, washer, q.Units().Bought(hardware.RodHole(it.Rod)))
}

// fastenerWord names a fastener's sort.
func fastenerWord(n hardware.Nail) string {
	switch {
	case n.Screw():
		return "screws"
	case n.Bolt():
		return "bolts"
	}
	return "nails"
}

// fastenerText says how many go where: "27 No. 12 x 1 1/2", "11 10d common each end (22 in all)".
func fastenerText(f plan.Fasteners, n hardware.Nail) string {
	s := fmt.Sprintf("%d of %s", f.Count, strings.TrimPrefix(strings.TrimPrefix(n.Name, "screw "), "bolt "))
	if f.Part != "" && f.Part != "all" {
		s += " " + f.Part
	}
	if f.Total() != f.Count {
		s += fmt.Sprintf(", %d in all", f.Total())
	}
	return s
}

// lapText says where the steel of a strap lies.
func lapText(q *Piece) string {
	laps := q.Laps()
	a, b := q.Units().Length(laps[0]), q.Units().Length(laps[1])
	over := q.Joint.Kind.Lies() == plan.LiesToPlate
	switch {
	case over && len(q.plates()) == 3:
		return fmt.Sprintf("%s on each face of the %s, %s over the plates", a, roleOf(q, 0), q.Units().Length(q.Gap))
	case over:
		return fmt.Sprintf("%s on the %s, the rest on the plates", a, roleOf(q, 0))
	case q.Gap < touch:
		return fmt.Sprintf("%s on the %s, %s on the %s", a, roleOf(q, 0), b, roleOf(q, 1))
	}
	return fmt.Sprintf("%s on the %s, %s between, %s on the %s", a, roleOf(q, 0), q.Units().Length(q.Gap), b, roleOf(q, 1))
}

func roleOf(q *Piece, i int) string {
	if m := q.ties()[i].Member; m != nil {
		return string(m.Role)
	}
	return "member"
}

// tellGap tells what the straps of a joint bridge: each as it is placed, for its
// rule may send it past the next member; where there is none, what one would
// bridge to the next.
func (p *Placement) tellGap(b *strings.Builder, j *framing.Joint) {
	seen := map[string]bool{}
	for _, q := range p.At(j) {
		if !q.Item.Kind.Strap || j.Kind.Lies() == plan.LiesToPlate { // its gap is the plates it is nailed to
			continue
		}
		text := fmt.Sprintf("  %s between the members a strap laps\n", j.Units.Length(q.Gap))
		if math.Abs(q.Gap-j.Gap) > touch {
			text = fmt.Sprintf("  %s between the %s and the %s that %s laps\n", j.Units.Length(q.Gap), roleOf(q, 0), roleOf(q, 1), q.Item.Mark)
		}
		if q.Gap > touch && !seen[text] {
			b.WriteString(text)
		}
		seen[text] = true
	}
	if len(seen) == 0 && j.Gap > 0 {
		fmt.Fprintf(b, "  %s between the members a strap laps\n", j.Units.Length(j.Gap))
	}
}

// seated says how a girder's seat is cut into its own pile and what it leaves of it:
// ": notch 4 1/2" deep and 9 1/4" high, which leaves 4 3/4" of the pile's 9 1/4"".
func (p *Placement) seated(j *framing.Joint) string {
	pile := j.Members[len(j.Members)-1]
	if j.Seat == framing.OnTop || j.Seat == framing.Clear || j.Seat == framing.Apart || !strings.HasPrefix(pile.ID, j.Host+"/") {
		return ""
	}
	for _, g := range p.House.Plan.Girders {
		if g.Name == j.Host {
			return g.SeatWords(p.House.Plan.Foundation.Pile.Depth, j.Units.Length)
		}
	}
	return ""
}

func (p *Placement) tellJoint(b *strings.Builder, j *framing.Joint) {
	fmt.Fprintf(b, "joint %s: %s, %s\n", j.ID, j.Kind, JointPlace(j))
	for _, m := range j.Members {
		fmt.Fprintf(b, "  %s %s (%s)\n", m.Role, m.ID, m.Section.Text)
	}
	p.tellGap(b, j)
	if j.Seat != "" {
		fmt.Fprintf(b, "  the girder sits %s%s\n", j.Seat, p.seated(j))
	}
	if j.Kind == plan.StudStud {
		switch {
		case !j.Below:
			b.WriteString("  no stud below\n")
		case j.Offset != 0:
			fmt.Fprintf(b, "  the stud below is offset %s\n", j.Units.Length(j.Offset))
		default:
			b.WriteString("  the studs line up\n")
		}
	}
}

func (p *Placement) tellVerdicts(b *strings.Builder, j *framing.Joint) {
	vs := p.Verdicts(j)
	if len(vs) == 0 {
		fmt.Fprintf(b, "no rule covers %s joints\n", j.Kind)
		return
	}
	b.WriteString("rules and places here:\n")
	for _, v := range vs {
		var who string
		if v.Rule != nil {
			who = fmt.Sprintf("rule %q (%s), %s", v.Rule.Name, line(v.Rule.Pos), v.Rule.Use)
		} else {
			who = fmt.Sprintf("engineer's place (%s), %s", line(v.Place.Pos), v.Place.Use)
		}
		if v.Won {
			fmt.Fprintf(b, "  used      %s\n", who)
		} else {
			fmt.Fprintf(b, "  not used  %s: %s\n", who, v.Why)
		}
	}
}

// ExplainWall lists the joints of a wall, roof, girder or porch that have
// nothing, and why.
func (p *Placement) ExplainWall(name string) (string, error) {
	var b strings.Builder
	bare, all := 0, 0
	for _, j := range p.House.Joints {
		if j.Host != name {
			continue
		}
		all++
		if len(p.At(j)) > 0 {
			continue
		}
		bare++
		fmt.Fprintf(&b, "  %-14s %-12s at %-12s %s\n", j.ID, j.Kind, p.House.Plan.Project.Units.Length(j.Station), p.bareWhy(j))
	}
	if all == 0 {
		return "", fmt.Errorf("no wall, roof, girder or porch %q has joints; %s", name, meant(name, p.world.hosts))
	}
	return fmt.Sprintf("%s: %d of %d joints have no hardware\n%s", name, bare, all, b.String()), nil
}

// bareWhy says in one clause why a joint has nothing.
func (p *Placement) bareWhy(j *framing.Joint) string {
	vs := p.Verdicts(j)
	if len(vs) == 0 {
		return "no rule covers such joints"
	}
	v := vs[len(vs)-1]
	who := "engineer's place"
	if v.Rule != nil {
		who = fmt.Sprintf("rule %q", v.Rule.Name)
	}
	return who + ": " + v.Why
}
