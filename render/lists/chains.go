package lists

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/loadpath"
	"galewright/render/excerpt"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// ChainPages draws one chain for each bearing wall line, from ridge to
// foundation. Without a report there is no sheet.
func ChainPages(c *page.Context) []*page.Page {
	if c.Loads == nil || len(c.Loads.Chains) == 0 {
		return nil
	}
	places := excerpt.New(c.Model)
	pictures := map[*framing.Joint]*excerpt.Picture{}
	for _, ch := range c.Loads.Chains {
		for i, g := range ch.Links {
			if j := g.Worst.Joint; formOf(ch, i) != linkIdle && pictures[j] == nil {
				pictures[j] = places.Of(j)
			}
		}
	}
	return c.Largest(func(c *page.Context) []*page.Page { return chainsLaid(c, pictures) })
}

func chainsLaid(c *page.Context, pictures map[*framing.Joint]*excerpt.Picture) []*page.Page {
	f := c.NewFlow("Load path chains, ridge to foundation", "load path chains")
	f.ColumnsOf(min(f.Area.W, 62*c.ReadingCap()))
	f.Put(&chainKey{})
	for _, ch := range c.Loads.Chains {
		f.Put(&chainBlock{ch, pictures})
	}
	return f.Done()
}

// linkForm is how a link of a chain is drawn: form and weight say what it is,
// so that a black print does.
type linkForm uint8

const (
	linkPlain   linkForm = iota // holds its demand's ratio beside it
	linkIdle                    // nothing asked
	linkOpen                    // a gap
	linkWeakest                 // the weakest of its chain, closed
	linkWeakGap                 // the weakest of its chain, a gap
)

// formOf returns the form of link i of a chain.
func formOf(ch *loadpath.Chain, i int) linkForm {
	g := ch.Links[i]
	switch {
	case i == ch.Weak && g.Worst.Gap != "":
		return linkWeakGap
	case i == ch.Weak:
		return linkWeakest
	case g.Worst.Gap != "":
		return linkOpen
	case g.Worst.Demand == 0:
		return linkIdle
	}
	return linkPlain
}

// The room of a joint's picture, in heights of capitals.
const (
	pictureWide = 11
	pictureHigh = 12
)

// metricsOfLinks are the sizes of a chain's drawing for a lettering height.
type linkMetrics struct{ cap, axis, picture, text, gap sheet.MM }

func metricsOfLinks(c *page.Context) linkMetrics {
	h := c.ReadingCap()
	return linkMetrics{cap: h, axis: 2.6 * h, picture: 5.2 * h, text: (6.4 + pictureWide) * h, gap: 0.7 * h}
}

// chainBlock is one chain as a block of a flow.
type chainBlock struct {
	chain    *loadpath.Chain
	pictures map[*framing.Joint]*excerpt.Picture
}

// Wanted is the width at which the chain is best read, mm.
func (b *chainBlock) Wanted(c *page.Context) sheet.MM { return 62 * c.ReadingCap() }

// Lay settles the chain at a width of w or less, mm.
func (b *chainBlock) Lay(c *page.Context, w sheet.MM) page.Laid {
	l := &laidChain{chain: b.chain, c: c, m: metricsOfLinks(c), w: w, to: len(b.chain.Links)}
	for i := range b.chain.Links {
		lines := l.linkLines(i)
		l.lines = append(l.lines, lines)
		h := max(sheet.MM(len(lines)+1)*table.Pitch(l.m.cap)+l.m.gap, 4.6*l.m.cap)
		var pic *excerpt.Picture
		if formOf(b.chain, i) != linkIdle {
			pic = b.pictures[b.chain.Links[i].Worst.Joint]
		}
		if pic != nil {
			h = max(h, pictureHigh*l.m.cap)
		}
		l.pictures = append(l.pictures, pic)
		l.highs = append(l.highs, h)
	}
	return l
}

// linkLine is one line of text beside a link.
type linkLine struct {
	s    string
	bold bool
}

// laidChain is a chain, or a part of one, whose width is settled.
type laidChain struct {
	chain    *loadpath.Chain
	c        *page.Context
	m        linkMetrics
	w        sheet.MM
	lines    [][]linkLine
	highs    []sheet.MM
	pictures []*excerpt.Picture // nil where nothing is asked, or the place is none of a joint
	from, to int
}

// linkLines says what a link is, asks and holds.
func (l *laidChain) linkLines(i int) (out []linkLine) {
	g := l.chain.Links[i]
	add := func(s string, bold bool) {
		for _, x := range table.WrapHard(s, l.m.cap, bold, l.w-l.m.text) {
			out = append(out, linkLine{x, bold})
		}
	}
	title := fmt.Sprintf("%s (%s)", upperFirst(g.Title), g.Places())
	switch formOf(l.chain, i) {
	case linkWeakest:
		title = "WEAKEST: " + title
	case linkWeakGap:
		title = "WEAKEST, GAP: " + title
	case linkOpen:
		title = "GAP: " + title
	}
	add(title, i == l.chain.Weak)
	add(linkForces(l.c, g), false)
	return out
}

// linkForces prints demand over capacity at the worst joint of a link.
func linkForces(c *page.Context, g loadpath.ChainLink) string {
	k := g.Worst
	switch {
	case k.Gap != "":
		return fmt.Sprintf("%s: %s; largest at %s, demand %s", plan.Counted(g.Gaps, "gap"), k.Gap, k.ID, force(c, k.Demand, k.Unit))
	case k.Demand == 0:
		return idleText(g)
	}
	return fmt.Sprintf("%s: demand %s / capacity %s = %s; %s", k.ID, force(c, k.Demand, k.Unit), force(c, k.Capacity.Value, k.Unit), starred(k), k.Governs())
}

// idleText says why nothing is asked at a link: weight that is greater is said
// only of a link that wind was followed to.
func idleText(g loadpath.ChainLink) string {
	if g.Followed {
		return "no net uplift: dead load is greater"
	}
	return "no wind uplift is followed to it: not checked"
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// seeKey is the key of the sheet that shows the joints of a link.
func seeKey(g loadpath.ChainLink) string {
	if g.Kind == "" {
		return "deck"
	}
	switch home := g.Kind.Place(g.Wall != nil).Home; {
	case home == plan.RoofSheet:
		return "roof"
	case home == plan.DormerSheet:
		return "dormers"
	case home == plan.FoundationSheet:
		return "foundation"
	case g.Wall != nil:
		return "wall " + g.Wall.Name
	}
	return ""
}

func (l *laidChain) titleH() sheet.MM { return table.Pitch(l.m.cap*1.4) + l.m.gap }

// Height is the height of this part of the chain, mm.
func (l *laidChain) Height() sheet.MM { return l.titleH() + table.Sum(l.highs[l.from:l.to]) }

// Split parts the chain between two links: first is no higher than h, mm.
func (l *laidChain) Split(h sheet.MM) (first, rest page.Laid) {
	if l.Height() <= h {
		return l, nil
	}
	y, n := l.titleH(), l.from
	for n < l.to && y+l.highs[n] <= h {
		y += l.highs[n]
		n++
	}
	if n < l.from+2 { // a chain of one link on a sheet is none
		return nil, l
	}
	a, b := *l, *l
	a.to, b.from = n, n
	return &a, &b
}
