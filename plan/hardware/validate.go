package hardware

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
)

// MinPitch is the least distance of nails along one row that is taken where
// the catalog gives no pattern, in, and MinEnd the least from the steel's
// end (common practice, no published source).
const (
	MinPitch = 0.75
	MinEnd   = 0.5
)

func (v *checker) run() {
	v.sizes()
	v.numbers()
	v.names()
	v.fasteners()
	v.rods()
}

func (v *checker) sizes() {
	it := v.it
	switch {
	case it.Kind.Name == plan.CoilStrapItem || it.Kind.Strap && it.Coil > 0:
		if it.Coil <= 0 {
			v.fault("coil-without-roll", "a coil strap without the length of its roll", `add coil = "150 ft" or what the roll holds`)
		} else if it.Length > it.Coil {
			v.fault("longer-than-roll", fmt.Sprintf("a strap of %s is longer than its roll of %s", v.units.Length(it.Length), v.units.Length(it.Coil)), "shorten it, or take a longer roll")
		}
		if it.Length <= 0 && it.Lap <= 0 {
			v.fault("strap-without-length", "a strap from a coil with neither length nor lap", `add length = "48in", or lap = "15in" to have each one cut to its joint`)
		}
	case it.Coil > 0:
		v.fault("coil-of-no-strap", article(it.Kind.Name)+" does not come on a coil", "take coil out, or correct kind")
	case it.Kind.Strap && it.Length <= 0:
		v.fault("strap-without-length", article(it.Kind.Name)+" without a length", `add length = "36in" or what it measures`)
	}
	if it.Kind.Strap && it.Width <= 0 {
		v.fault("strap-without-width", article(it.Kind.Name)+" without a width", `add width = "1 1/4in" or what it measures`)
	}
	if it.Kind.Strap && it.Thickness <= 0 && it.Gauge == "" {
		v.warn("no-thickness", article(it.Kind.Name)+" without the thickness of its steel", `add thickness = "20 ga"`)
	}
	if it.Kind.Strap && it.Length > 0 && it.Lap > 0 && 2*it.Lap > it.Length {
		v.fault("laps-exceed-length", fmt.Sprintf("two laps of %s need %s, and the strap is %s long", v.units.Length(it.Lap), v.units.Length(2*it.Lap), v.units.Length(it.Length)), "shorten lap, or take a longer strap")
	}
	if legs := it.Legs[0] + it.Legs[1]; legs > 0 && it.Kind.Name != plan.HangerItem && it.Length > 0 && legs > it.Length+1e-9 {
		v.fault("legs-exceed-length", fmt.Sprintf("two legs of %s and %s need %s, it has %s", v.units.Length(it.Legs[0]), v.units.Length(it.Legs[1]),
			v.units.Length(legs), v.units.Length(it.Length)), "shorten a leg, or correct length")
	}
	if it.Kind.Shape == Sheet && (it.Length <= 0 || it.Width <= 0) {
		v.fault("panel-without-size", "sheathing without the size of a panel", `add length = "8'" and width = "4'"`)
	}
}

// numbers refuses what cannot be measured or counted.
func (v *checker) numbers() {
	it := v.it
	for _, x := range []struct {
		key string
		val float64
	}{
		{"length", it.Length},
		{"width", it.Width},
		{"thickness", it.Thickness},
		{"lap", it.Lap},
		{"rod", it.Rod},
		{"washer", it.Washer},
		{"standoff", it.Standoff},
		{"center", it.Center},
		{"coil", it.Coil},
		{"minutes", it.Minutes},
		{"pack", float64(it.Pack)},
		{"load.uplift", it.Load.Uplift},
		{"load.along", it.Load.Along},
		{"load.across", it.Load.Across},
		{"load.down", it.Load.Down},
	} {
		if !(x.val >= 0 && x.val <= math.MaxFloat64) { // nor is it NaN
			v.fault("bad-number", x.key+" is not a usable number", "give a number above zero")
		}
	}
	if l := it.Load; l.Uplift+l.Along+l.Across+l.Down > 0 && strings.TrimSpace(l.Source) == "" {
		v.warn("load-without-source", "allowable loads without edition and date of their source", "add source to load, or leave loads out to have them computed")
	}
}

func (v *checker) names() {
	it := v.it
	if it.Face != "" && !slices.Contains(plan.Faces, it.Face) {
		v.fault("unknown-word", fmt.Sprintf("%q is not a face of a member", it.Face), "use one of "+strings.Join(plan.Words(plan.Faces), ", "))
	}
	if want := bodies[it.Kind.Name]; want > 0 && it.Bodies != want {
		v.fault("wrong-bodies", fmt.Sprintf("%s has %s, not %d", article(it.Kind.Name), []string{"no body", "1 body", "2 bodies"}[want], it.Bodies), "change kind, or take bodies out")
	}
}

func (v *checker) fasteners() {
	it := v.it
	nailed := it.Kind.Strap || it.Kind.Shape == Body && it.Kind.Name != plan.GenericItem || it.Kind.Shape == Pair
	if nailed && len(it.Fasteners) == 0 {
		v.fault("no-nails", article(it.Kind.Name)+" without fasteners", `add nails = { type = "10d x 1 1/2", each_end = 9 } or a count for each part`)
	}
	for _, f := range it.Fasteners {
		if f.Count <= 0 && it.Kind.Shape != Sheet {
			v.fault("no-count", fmt.Sprintf("no count of %s for %s", f.Nail, part(f)), "give the number of nails in that part")
		}
		if f.Holes > 0 && f.Count > f.Holes {
			v.fault("more-nails-than-holes", fmt.Sprintf("%d nails for %d holes in %s", f.Count, f.Holes, part(f)), "lower the count, or correct holes")
		}
		v.pattern(f)
	}
}

// pattern refuses nails that do not fit the steel.
func (v *checker) pattern(f plan.Fasteners) {
	it := v.it
	if f.Rows < 0 || f.Spacing < 0 || f.EndDist < 0 || f.Offset < 0 {
		v.fault("bad-pattern", "a nail pattern with a negative number", "rows, spacing, end distance and offset are zero or more")
		return
	}
	if f.Rows > 1 && it.Width > 0 && float64(f.Rows)*2*f.Diameter > it.Width {
		v.fault("rows-exceed-width", fmt.Sprintf("%d rows of %s on steel %s wide", f.Rows, f.Nail, v.units.Length(it.Width)), "fewer rows, or wider steel")
	}
	if !it.Kind.Strap || it.Length <= 0 || f.Count <= 0 {
		return
	}
	room := it.Length
	if f.Parts > 1 {
		room /= float64(f.Parts)
	}
	if need := Spread(f, it.Width); need > room+1e-9 {
		v.fault("nails-do-not-fit", fmt.Sprintf("%d nails in %s need %s of steel and there are %s: short by %s", f.Count, part(f),
			v.units.Length(need), v.units.Length(room), v.units.Length(need-room)), "fewer nails, closer spacing, more rows, or a longer strap")
	}
}

// Spread returns the length of steel that the nails of one part take, in:
// end distance, the rows' length and the stagger. Where the catalog gives
// no pattern it is the least that common practice allows.
func Spread(f plan.Fasteners, width float64) float64 {
	rows, pitch, end := f.Rows, f.Spacing, f.EndDist
	if rows == 0 {
		rows = 1
		if width >= 2 {
			rows = 2
		}
	}
	if pitch == 0 {
		pitch = MinPitch
	}
	if end == 0 {
		end = MinEnd
	}
	per := math.Ceil(float64(f.Count) / float64(rows))
	need := end + (per-1)*pitch
	if f.Stagger && rows > 1 {
		off := f.Offset
		if off == 0 {
			off = pitch / 2
		}
		need += off
	}
	return need
}

// rods asks for what a rod or bolt needs.
func (v *checker) rods() {
	it := v.it
	needs := it.Kind.Shape == Rod || it.Kind.Shape == Pair || it.Kind.Name == plan.HoldDownItem
	if needs && it.Rod <= 0 {
		v.fault("no-rod", article(it.Kind.Name)+" without the diameter of its rod", `add rod = "5/8in" or what it takes`)
	}
	if (it.Kind.Shape == Pair || it.Kind.Name == plan.HoldDownItem) && it.Center == 0 {
		v.fault("no-center", article(it.Kind.Name)+" without the distance of its rod from the post", `add center = "1 7/16in" or what it measures: from the face of the post to the middle of the rod`)
	}
	if it.Kind.Shape == Pair && it.Standoff <= 0 {
		v.fault("no-standoff", "a hold-down pair without the rod length inside a body", `add standoff = "1 1/2in": from the wood the body stands on to the nut`)
	}
	if it.Kind.Shape == Rod && it.Length <= 0 && it.Kind.Name != plan.BraceRodItem { // that is cut to its bay
		v.fault("rod-without-length", article(it.Kind.Name)+" without a length", `add length = "12in"`)
	}
	if it.Kind.Shape == Rod && it.Coating != "" && !slices.Contains(plan.FastenerCoatings, it.Coating) {
		v.fault("sheet-coating", fmt.Sprintf("%s is zinc on sheet steel, not on %s", it.Coating, article(it.Kind.Name)), "use one of "+strings.Join(plan.Words(plan.FastenerCoatings), ", "))
	}
	if it.Washer > 0 && it.Rod > 0 && it.Washer <= it.Rod {
		v.fault("washer-too-small", fmt.Sprintf("a washer of %s on a rod of %s", v.units.Length(it.Washer), v.units.Length(it.Rod)), "take a washer wider than the rod")
	}
}

func part(f plan.Fasteners) string {
	if f.Part == "" {
		return "the piece"
	}
	return f.Part
}

// near names the kinds, the likeliest first when one is near.
func near(name plan.ItemKind) string {
	all := strings.Join(plan.Words(plan.ItemKinds), ", ")
	if best := plan.Nearest(string(name), plan.ItemKinds); best != "" {
		return fmt.Sprintf("%q (did you mean it?) or another of: %s", best, all)
	}
	return "one of " + all
}

// article puts a or an before the name of a kind.
func article(k plan.ItemKind) string {
	if strings.ContainsRune("aeiou", rune(k[0])) {
		return "an " + string(k)
	}
	return "a " + string(k)
}
