package loadpath

import (
	"bufio"
	"cmp"
	"fmt"
	"io"

	"galewright/plan"
	"galewright/plan/units"
)

// firstFew is how many of the links that are overtaken first are named.
const firstFew = 10

// WriteSpeeds prints in which order the wind overtakes the links: the first few
// in wind from any side and from each, and how many by which speed. With a second
// report, of other hardware, its numbers stand beside; name is what it is called.
func (r *Report) WriteSpeeds(w io.Writer, other *Report, name string) error {
	b := bufio.NewWriter(w)
	p := printer{b, r.Units()}
	p.opening()
	if r.Missing != "" {
		p.line("%s", r.Missing)
		return b.Flush()
	}
	p.line("Speeds are 3 s gusts, {mph}, as the plan's %.0f{mph}: of a storm on land they are its worst gusts, not its sustained wind. Demand is that of the", r.design())
	p.line("design method at another speed, capacity as it is; what has a gap at any wind, what is not checked and what flies against the house is not here.")
	any := r.Speeds("")
	r.writeFirst(p, "What wind overtakes first, from any side", any, firstFew)
	for _, side := range plan.Sides {
		r.writeFirst(p, "Wind from "+string(side), r.Speeds(side), firstFew/2)
	}
	var beside []Overtaken
	if other != nil && other.Missing == "" {
		beside = other.Speeds("")
		other.writeFirst(p, "With "+name, beside, firstFew)
	}
	writeReached(p, r.design(), any, beside, name)
	p.line("\n%s", r.gapLine())
	return b.Flush()
}

// design is the plan's wind speed, mph.
func (r *Report) design() float64 { return r.Placement.House.Plan.Site.WindSpeed }

// gapLine says how many links have no number here.
func (r *Report) gapLine() string {
	n := 0
	for _, l := range r.Links {
		if l.Gap != "" {
			n++
		}
	}
	return fmt.Sprintf("%s beside these: check --loads", plan.Counted(n, "gap"))
}

// writeFirst prints the first n of a list: speed, check, whole name of the place,
// and the mark that holds there, or what does where it is several.
func (r *Report) writeFirst(p printer, heading string, list []Overtaken, n int) {
	p.head(heading)
	first := list[:min(n, len(list))]
	title, id := 0, 0
	for _, o := range first {
		title, id = max(title, len(o.Check.Title)), max(id, len(o.ID))
	}
	for i, o := range first {
		p.line("  %2d  %s  %-*s  %-*s  %s", i+1, o.speedText(p.u), title, o.Check.Title, id, o.ID, cmp.Or(o.Capacity.Mark, o.Capacity.Governs))
	}
	if len(list) == 0 {
		p.line("  nothing that has a capacity")
	}
}

// speedText is the speed in five characters.
func (o Overtaken) speedText(u units.System) string {
	switch {
	case o.Under:
		return u.Sprintf("<%4.0f{mph}", o.Speed)
	case o.Over:
		return u.Sprintf(">%4.0f{mph}", o.Speed)
	}
	return u.Sprintf("%5.0f{mph}", o.Speed)
}

// writeReached prints how many links are overtaken by each speed.
func writeReached(p printer, design float64, as, beside []Overtaken, name string) {
	p.head("Links overtaken by a speed, of " + fmt.Sprint(len(as)))
	for _, k := range steps[2:] {
		v := design * k
		text := p.u.Sprintf("  %4.0f mph  %5d", v, Reached(as, v))
		if beside != nil {
			text += fmt.Sprintf("  %5d with %s", Reached(beside, v), name)
		}
		if k == 1 {
			text += "  design"
		}
		p.line("%s", text)
	}
}

// Reached counts the links that wind of a speed overtakes.
func Reached(list []Overtaken, mph float64) (n int) {
	for _, o := range list {
		if !o.Over && o.Speed <= mph {
			n++
		}
	}
	return n
}
