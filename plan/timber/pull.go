package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// Pull is one fastener drawn out along its axis.
type Pull struct {
	Fastener  Fastener
	Side      Part    // the part under the head
	Gap       float64 // between side and main member, in
	Main      Part    // its Thickness is the wood along the fastener
	Condition Condition
}

// PullValue is what one fastener is allowed against being drawn out.
type PullValue struct {
	PerInch    float64 // W, lb per inch
	Length     float64 // that holds, in: whole penetration of a nail, thread of a screw, rings of a nail that has them for a part of its length
	Withdrawal float64 // reference, lb
	// Head is the reference pull-through of the head, lb; 0 where it was not
	// checked: a steel side, or a head of unknown diameter.
	Head    float64
	Governs string // "withdrawal" or "head pull-through"
	Driven  Driven
	Factors Adjust // of what governs
	Allow   float64
	Nothing string // why the fastener counts for nothing; "" where it counts
}

// Value returns the allowable withdrawal. The tension of the fastener's own
// steel is not looked at.
func (p Pull) Value() (PullValue, error) {
	f := p.Fastener
	if p.Main.Steel || p.Main.G < 0.31 || p.Main.G > 0.73 {
		return PullValue{}, fmt.Errorf("%s: withdrawal is known for wood of G 0.31 to 0.73, not %.2f", f, p.Main.G)
	}
	if p.Condition.Duration <= 0 {
		return PullValue{}, fmt.Errorf("%s: the load duration is not given", f)
	}
	before := p.Side.Thickness + p.Gap
	v := PullValue{Driven: f.Drive(before, p.Main.Thickness)}
	if v.Nothing = p.nothing(v.Driven.P); v.Nothing != "" {
		return v, nil
	}
	v.PerInch, v.Length = f.perInch(p.Main.G), v.Driven.P
	if f.Kind != NailKind || f.Thread > 0 {
		v.Length = f.threadIn(before, p.Main.Thickness)
	}
	v.Withdrawal = v.PerInch * v.Length
	p.weigh(&v)
	return v, nil
}

// nothing says why the fastener holds no withdrawal, "" where it does.
func (p Pull) nothing(depth float64) string {
	f := p.Fastener
	switch least := f.LeastPenetration(); {
	case f.Kind == BoltKind:
		return "a bolt holds by its nut and washer: see Washer"
	case p.Condition.EndGrain && f.Kind == NailKind:
		return "a nail in end grain holds no withdrawal (" + cite("NDS 2018 12.2.3.3", source.Transcribed) + ")"
	case p.Condition.EndGrain && f.Kind == WoodScrew:
		return "a wood screw in end grain holds no withdrawal (" + cite("NDS 2018 12.2.2", source.Transcribed) + ")"
	case depth < least-1e-9:
		return fmt.Sprintf("%.2f in of penetration, least %.2f in (%s)", depth, least, cite("NDS 2018 "+f.penetration().clause, source.Transcribed))
	}
	return ""
}

// weigh compares withdrawal and the head, each with its own factors.
func (p Pull) weigh(v *PullValue) {
	v.Governs, v.Factors = "withdrawal", p.chain()
	v.Allow = v.Withdrawal * v.Factors.Product()
	if p.Side.Steel || p.Fastener.Head <= 0 || p.Fastener.Kind == LagScrew {
		return
	}
	v.Head = PullThrough(p.Side.G, p.Fastener.Head, p.Side.Thickness)
	a := p.headChain()
	if through := v.Head * a.Product(); through < v.Allow {
		v.Governs, v.Factors, v.Allow = "head pull-through", a, through
	}
}

// chain returns the factors of W, NDS 2018 Tables 11.3.1 and 11.3.3
// (transcribed): a nail's, with the moisture and end grain of screws.
func (p Pull) chain() Adjust {
	c := p.Condition
	c.ForWithdraw, c.ToeNail = true, false
	a := c.Chain()
	if p.Fastener.Kind == NailKind {
		return a
	}
	for i, f := range a {
		switch f.Name {
		case "CM":
			a[i].Value = pick(c.WetUse, 0.7, 1)
		case "Ceg":
			a[i] = Factor{"Ceg", pick(c.EndGrain, 0.75, 1), cite("NDS 2018 12.2.1, lag screw", source.Transcribed)}
		}
	}
	return a
}

// headChain returns the factors of head pull-through: CD, CM 0.7 in wet
// service, Ct (NDS 2018 Table 11.3.1, from memory).
func (p Pull) headChain() Adjust {
	c := p.Condition
	return Adjust{
		{"CD", math.Min(float64(c.Duration), 1.6), "NDS 2018 Table 2.3.2"},
		{"CM", pick(c.WetUse, 0.7, 1), cite("NDS 2018 Table 11.3.3", source.FromMemory)},
		{"Ct", c.temperature(), "NDS 2018 Table 11.3.4"},
	}
}

// perInch returns W, lb per inch, in side grain of specific gravity g: NDS
// 2018 equations 12.2-1 to 12.2-5, pp.76-79 (transcribed).
func (f Fastener) perInch(g float64) float64 {
	switch {
	case f.Kind == LagScrew:
		return 1_800 * math.Pow(g, 1.5) * math.Pow(f.D, 0.75)
	case f.Kind == WoodScrew:
		return 2_850 * g * g * f.D
	case f.Shank == Ring:
		return 1_800 * g * g * f.D
	case f.Shank == Stainless:
		return 465 * math.Pow(g, 1.5) * f.D
	}
	return Withdrawal(g, f.D)
}
