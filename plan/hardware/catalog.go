package hardware

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/units"
)

// Item is one catalog entry, checked.
type Item struct {
	*plan.Item // a copy with its defaults filled in
	Kind       *Kind
	Phase      *Phase
	Nails      []Nail // sizes of Fasteners, one for each
}

// Catalog holds the items of a plan.
type Catalog struct {
	Items []*Item // in the order written
	mark  map[string]*Item
}

// Item returns the item with the mark, or nil.
func (c *Catalog) Item(mark string) *Item { return c.mark[mark] }

// Marks returns the marks in the order written.
func (c *Catalog) Marks() []string {
	out := make([]string, len(c.Items))
	for i, it := range c.Items {
		out[i] = it.Mark
	}
	return out
}

// New checks the items of a plan and fills in what their kinds imply. An item
// of an unknown kind is left out. Where a plan and a catalog file both give
// a mark, the later one counts.
func New(items []*plan.Item) (*Catalog, plan.Diagnostics) { return NewIn(units.Imperial, items) }

// NewIn is New with faults told in the words of a system.
func NewIn(u units.System, items []*plan.Item) (*Catalog, plan.Diagnostics) {
	c := &Catalog{mark: map[string]*Item{}}
	var ds plan.Diagnostics
	for _, src := range items {
		d, it := check(u, src)
		ds = append(ds, d...)
		if it == nil {
			continue
		}
		old := c.mark[it.Mark]
		if old != nil && old.Pos.File == it.Pos.File {
			ds = append(ds, twice(old, it))
			continue
		}
		if old != nil {
			c.Items[slices.Index(c.Items, old)] = it
		} else {
			c.Items = append(c.Items, it)
		}
		c.mark[it.Mark] = it
	}
	return c, ds
}

func twice(old, it *Item) plan.Diagnostic {
	return plan.Diagnostic{
		Code: "mark-twice", Pos: it.Pos, Related: []plan.Pos{old.Pos},
		Summary: fmt.Sprintf("item %q is defined twice, first at line %d", it.Mark, old.Pos.Line),
		Where:   "item " + it.Mark, Mend: "give one of them another mark, or take it out",
	}
}

// check returns the item ready to use, and all its faults; nil when its kind
// or mark cannot be known.
func check(u units.System, src *plan.Item) (plan.Diagnostics, *Item) {
	v := &checker{src: src, units: u}
	k := KindNamed(src.Kind)
	if src.Mark == "" {
		v.fault("no-mark", "an item has no mark", `add mark = "wall-strap" or the like`)
	}
	if k == nil {
		v.fault("unknown-word", fmt.Sprintf("%q is not a kind of item", src.Kind), "use "+near(src.Kind))
	}
	if k == nil || src.Mark == "" {
		return v.ds, nil
	}
	cp := *src
	cp.Fasteners = slices.Clone(src.Fasteners)
	it := &Item{Item: &cp, Kind: k}
	v.it = it
	v.defaults()
	v.run()
	return v.ds, it
}

// checker gathers the faults of one item.
type checker struct {
	src   *plan.Item
	it    *Item
	ds    plan.Diagnostics
	units units.System
}

func (v *checker) fault(code plan.Code, summary, mend string) { v.add(plan.Error, code, summary, mend) }

func (v *checker) warn(code plan.Code, summary, mend string) {
	v.add(plan.Warning, code, summary, mend)
}

func (v *checker) add(s plan.Severity, code plan.Code, summary, mend string) {
	v.ds = append(v.ds, plan.Diagnostic{
		Severity: s, Code: code, Pos: v.src.Pos,
		Summary: summary, Where: "item " + cmp.Or(v.src.Mark, "without a mark"), Mend: mend,
	})
}

// defaults fills in what kind and gauge imply.
func (v *checker) defaults() {
	it := v.it
	it.Item.Phase = cmp.Or(it.Item.Phase, it.Kind.Phase)
	if it.Phase = PhaseNamed(it.Item.Phase); it.Phase == nil {
		v.fault("unknown-word", fmt.Sprintf("%q is not a phase of the work", it.Item.Phase), "use "+strings.Join(plan.Words(plan.Phases), ", "))
		it.Phase = PhaseNamed(it.Kind.Phase)
	}
	it.Face = cmp.Or(it.Face, it.Kind.Face)
	if it.Thickness == 0 && it.Gauge != "" {
		t, _, err := plan.Thickness(strings.TrimSpace(strings.TrimSuffix(it.Gauge, "ga"))+" ga", false)
		if err != nil {
			v.fault("unknown-gauge", err.Error(), "give the thickness in inches")
		}
		it.Thickness = t
	}
	if it.Bodies == 0 {
		it.Bodies = bodies[it.Kind.Name]
	}
	for i := range it.Fasteners {
		v.fastener(&it.Fasteners[i])
	}
	v.share()
}

// fastener fills in the size and the number of parts of one kind of nail.
func (v *checker) fastener(f *plan.Fasteners) {
	n, err := ParseNail(f.Nail)
	if f.Diameter > 0 {
		n.Diameter, err = f.Diameter, nil
	}
	if f.Length > 0 {
		n.Length = f.Length
	}
	if err != nil {
		v.add(plan.Error, "unknown-nail", err.Error(), `write it as "8d common", "10d x 1 1/2" or "0.148 x 1 1/2"`)
	}
	f.Diameter, f.Length = n.Diameter, n.Length
	f.Parts, n.Coating = max(f.Parts, 1), f.Coating
	v.it.Nails = append(v.it.Nails, n)
}
