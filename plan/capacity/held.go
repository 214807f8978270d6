package capacity

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/steel"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// Held is what the fasteners of a body hold of one member, each with the wood
// it finds.
type Held struct {
	Member *framing.Member
	Value  float64 // lb, ASD at wind duration
	Count  int     // fasteners in the member
	None   int     // of them, those that count for nothing
	Why    string  // why the first of those does
	Mode   string  // yield mode of most of them
	Terms  []Term  // fasteners alike, one term
}

// alike is all that the value of a fastener depends on.
type alike struct {
	end      int
	deep     float64 // in the member, hundredths of an inch
	air      float64
	endGrain bool
	pull     float64 // angle of the force to the fastener's side, degrees: 0 square to it
	grain    float64 // of the force to the grain, degrees
	wet      bool    // the member is wet when nailed or in service
	role     plan.Role
	out      bool // its shank comes out of the wood's edge or end, or splits it
	met      bool // another fastener is in its way
}

// Of returns what the body's fasteners hold of a member against a force along
// the direction.
func (x Fastening) Of(b *steel.Body, m *framing.Member, force geom.Vec3) Held {
	return x.hold(b, m, b.Holds(m), func(steel.Fastener) geom.Vec3 { return force })
}

// hold is Of for some fasteners in a member, each with the force's direction
// where it is.
func (x Fastening) hold(b *steel.Body, m *framing.Member, list []steel.Fastener, force func(steel.Fastener) geom.Vec3) Held {
	h := Held{Member: m}
	groups := map[alike]int{}
	var order []alike
	for _, f := range list {
		k := x.alike(b, f, force(f))
		if groups[k] == 0 {
			order = append(order, k)
		}
		groups[k]++
		h.Count++
	}
	slices.SortFunc(order, func(a, b alike) int {
		return cmp.Or(cmp.Compare(a.end, b.end), cmp.Compare(a.role, b.role), -cmp.Compare(a.deep, b.deep))
	})
	most := 0
	for _, k := range order {
		n := groups[k]
		one := x.one(b, k)
		if one.nothing != "" {
			h.None += n
			if k.met {
				one.nothing += ", for it meets another fastener there"
			}
			h.Why = cmp.Or(h.Why, one.nothing)
			h.Terms = append(h.Terms, Term{fmt.Sprintf("%d of %s in the %s: nothing, %s", n, x.name(b, k.end), k.role, one.nothing), 0, "lb"})
			continue
		}
		if k.met {
			one.behind += ", as far as where it meets another fastener"
		}
		v := one.value * float64(n)
		h.Value += v
		if n > most {
			most, h.Mode = n, one.mode
		}
		h.Terms = append(h.Terms, Term{x.Units.Sprintf("%d of %s in the %s, %.2f in deep%s: %s", n, x.name(b, k.end), k.role, k.deep, one.behind, one.text), v, "lb"})
	}
	return h
}

// Damp tells which members are taken as wet when nailed or in service: a house does.
type Damp interface {
	Wet(m *framing.Member) bool
}

// Fastening is the wood and the steel that fasteners join.
type Fastening struct {
	Species timber.Species
	Wet     Damp // members taken as wet; nil = those of plan.WetRoles
	Units   units.System

	singles map[lone]single // worked out so far; nil keeps none
}

// lone is a fastener of an item in its wood.
type lone struct {
	item *hardware.Item
	alike
}

// wet tells whether a member is taken as wet when nailed or in service.
func (x Fastening) wet(m *framing.Member) bool {
	if x.Wet == nil {
		return slices.Contains(plan.WetRoles, m.Role)
	}
	return x.Wet.Wet(m)
}

func (x Fastening) name(b *steel.Body, end int) string {
	return b.Piece.Item.Ends()[end].Size.Name
}

// alike returns what a fastener's value depends on.
func (x Fastening) alike(b *steel.Body, f steel.Fastener, force geom.Vec3) alike {
	_, deep, air, _ := f.Bite(b.Steel())
	axis := f.Tip.Sub(f.Head).Unit()
	k := alike{role: f.Runs[0].Member.Role, end: f.End, deep: round(deep, 100), air: round(air, 1000), endGrain: f.Runs[0].EndGrain(), wet: x.wet(f.Runs[0].Member)}
	k.out, k.met = steel.SplitsOut(f), f.Stop > 0
	k.pull = round(degrees(math.Abs(axis.Dot(force))), 1)
	if across := force.Sub(axis.Mul(axis.Dot(force))); across.Len() > 0.01 {
		k.grain = round(90-degrees(math.Abs(across.Unit().Dot(steel.Grain(f.Runs[0].Member)))), 1)
	}
	return k
}

// degrees returns the angle whose sine is s.
func degrees(s float64) float64 { return math.Asin(math.Min(1, s)) * 180 / math.Pi }

func round(v, per float64) float64 { return math.Round(v*per) / per }

// single is what one fastener is worth.
type single struct {
	value                       float64
	mode, text, behind, nothing string
}

// one works out one fastener, once for all that are alike.
func (x Fastening) one(b *steel.Body, k alike) single {
	key := lone{b.Piece.Item, k}
	s, ok := x.singles[key]
	if !ok {
		s = x.work(b, k)
		if x.singles != nil {
			x.singles[key] = s
		}
	}
	return s
}

// work works out one fastener: across its shank, along it, or both.
func (x Fastening) work(b *steel.Body, k alike) single {
	if k.out {
		return single{nothing: "nearer to the wood's edge or end than its own diameter, which is taken to split out (assumed)"}
	}
	f, err := fastener(b.Piece.Item.Ends()[k.end].Size)
	if err != nil {
		return single{nothing: err.Error()}
	}
	if b.Piece.Item.Ends()[k.end].Coating.Stainless() && f.Kind == timber.NailKind {
		f.Shank = timber.Stainless
	}
	side := timber.Part{Thickness: baseThickness(b.Piece.Item), Steel: true}
	if side.Thickness == 0 {
		return single{nothing: "the catalog gives no thickness of the steel"}
	}
	s := x.across(f, side, k)
	if k.pull > square {
		s = x.along(f, side, k, s)
	}
	if k.air > 0 {
		s.behind = x.Units.Sprintf(", %.3f in of sheathing, packing or air under the steel", k.air)
	}
	return s
}

// square is the angle of a force to the plane across a fastener up to which
// it is taken as square to it, degrees.
const square = 5

// across is the lateral value.
func (x Fastening) across(f timber.Fastener, side timber.Part, k alike) single {
	v, err := timber.Lateral{
		Fastener: f, Side: side, Gap: k.air, Main: timber.Part{Thickness: k.deep, G: x.Species.G}, MainAngle: k.grain,
		Condition: timber.Condition{Duration: timber.WindDuration, EndGrain: k.endGrain, WetUse: k.wet},
	}.Value()
	switch {
	case err != nil:
		return single{nothing: err.Error()}
	case v.Nothing != "":
		return single{nothing: v.Nothing}
	}
	return single{value: v.Allow, mode: "mode " + v.Mode, text: x.Units.Sprintf("Z %.1f lb (mode %s, %s), %s: %.1f lb each", v.Z, v.Mode, v.Way, v.Factors, v.Allow)}
}

// along puts withdrawal beside the lateral value s: alone where the force
// runs along the fastener, else both by the standard's interaction.
func (x Fastening) along(f timber.Fastener, side timber.Part, k alike, s single) single {
	w, err := timber.Pull{
		Fastener: f, Side: side, Gap: k.air, Main: timber.Part{Thickness: k.deep, G: x.Species.G},
		Condition: timber.Condition{Duration: timber.WindDuration, EndGrain: k.endGrain, WetUse: k.wet},
	}.Value()
	switch {
	case err != nil:
		return single{nothing: err.Error()}
	case w.Nothing != "":
		return single{nothing: w.Nothing}
	}
	if k.pull > 90-square {
		return single{value: w.Allow, mode: "withdrawal", text: x.Units.Sprintf("%s %.1f lb an inch%s, %s: %.1f lb each", w.Governs, w.PerInch, equation(f), w.Factors, w.Allow)}
	}
	sin, cos := math.Sincos(k.pull * math.Pi / 180)
	r := timber.Together(f.Kind, s.value, w.Allow, cos, sin)
	return single{value: r.Allow, mode: "lateral with withdrawal", text: x.Units.Sprintf("lateral %.1f{lb} and withdrawal %.1f lb%s at %.0f degrees (%s): %.1f lb each", s.value, w.Allow, equation(f), k.pull, r.Source, r.Allow)}
}

// equation names the equation of withdrawal where the coating chooses it.
func equation(f timber.Fastener) string {
	if f.Shank == timber.Stainless {
		return " (smooth stainless, NDS 2018 12.2-4, transcribed)"
	}
	return ""
}

// fastener returns the fastener of the tables for a size of the catalog.
func fastener(n hardware.Nail) (timber.Fastener, error) {
	for _, number := range []int{6, 8, 10, 12, 14} {
		if numbered(n) {
			if f, ok := timber.ScrewOf(number, n.Length); ok && math.Abs(f.D-n.Diameter) < 1e-6 {
				return f, nil
			}
		}
	}
	switch word(n) {
	case "bolt", "rod":
		return timber.Bolt(n.Diameter, n.Length), nil
	case "lag":
		if f, ok := timber.LagOf(n.Diameter, n.Length); ok {
			return f, nil
		}
	case "screw":
		f, _ := timber.FastenerOf(timber.Nail{Name: n.Name + " (root 0.75 of its size, assumed)", Length: n.Length, Diameter: n.Diameter})
		f.Kind, f.Root, f.Fyb = timber.WoodScrew, screwRoot*n.Diameter, timber.BendingYield(screwRoot*n.Diameter)
		return f, nil
	}
	f, ok := timber.FastenerOf(timber.Nail{Name: n.Name, Length: n.Length, Diameter: n.Diameter})
	if !ok {
		return f, fmt.Errorf("no bending yield strength is known for %s", n.Name)
	}
	return f, nil
}
