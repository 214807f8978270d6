package render

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/render/sheet"
)

var _ = register(view{Series: 3, Order: 10, Name: "load path chains", Pages: chainPages})

// chainPages draws one chain for each bearing wall line, from ridge to
// foundation. Without a report there is no sheet.
func chainPages(c *context) []*page {
	if c.Loads == nil || len(c.Loads.Chains) == 0 {
		return nil
	}
	return c.largest(chainsLaid)
}

func chainsLaid(c *context) []*page {
	f := c.newFlow("Load path chains, ridge to foundation", "load path chains")
	f.columnsOf(min(f.area.W, 58*c.readingCap()))
	f.put(&chainKey{})
	for _, ch := range c.Loads.Chains {
		f.put(&chainBlock{ch})
	}
	return f.done()
}

// ringForm is how a ring of a chain is drawn: form and weight say what it is,
// so that a black print does.
type ringForm uint8

const (
	ringPlain   ringForm = iota // holds its demand's ratio beside it
	ringIdle                    // nothing asked
	ringOpen                    // a gap
	ringWeakest                 // the weakest of its chain, closed
	ringWeakGap                 // the weakest of its chain, a gap
)

// formOf returns the form of ring i of a chain.
func formOf(ch *loadpath.Chain, i int) ringForm {
	g := ch.Rings[i]
	switch {
	case i == ch.Weak && g.Worst.Gap != "":
		return ringWeakGap
	case i == ch.Weak:
		return ringWeakest
	case g.Worst.Gap != "":
		return ringOpen
	case g.Worst.Demand == 0:
		return ringIdle
	}
	return ringPlain
}

// ringMetrics are the sizes of a chain's drawing for a lettering height.
type ringMetrics struct{ cap, axis, picture, text, gap sheet.MM }

func (c *context) ringMetrics() ringMetrics {
	h := c.readingCap()
	return ringMetrics{cap: h, axis: 2.6 * h, picture: 5.2 * h, text: 10.6 * h, gap: 0.7 * h}
}

// chainBlock is one chain as a block of a flow.
type chainBlock struct{ chain *loadpath.Chain }

func (b *chainBlock) wanted(c *context) sheet.MM { return 58 * c.readingCap() }

func (b *chainBlock) lay(c *context, w sheet.MM) laid {
	l := &laidChain{chain: b.chain, c: c, m: c.ringMetrics(), w: w, to: len(b.chain.Rings)}
	for i := range b.chain.Rings {
		lines := l.ringLines(i)
		l.lines = append(l.lines, lines)
		l.highs = append(l.highs, max(sheet.MM(len(lines)+1)*pitch(l.m.cap)+l.m.gap, 4.6*l.m.cap))
	}
	return l
}

// ringLine is one line of text beside a ring.
type ringLine struct {
	s    string
	bold bool
}

// laidChain is a chain, or a part of one, whose width is settled.
type laidChain struct {
	chain    *loadpath.Chain
	c        *context
	m        ringMetrics
	w        sheet.MM
	lines    [][]ringLine
	highs    []sheet.MM
	from, to int
}

// ringLines says what a ring is, asks and holds.
func (l *laidChain) ringLines(i int) (out []ringLine) {
	g := l.chain.Rings[i]
	add := func(s string, bold bool) {
		for _, x := range wrapHard(s, l.m.cap, bold, l.w-l.m.text) {
			out = append(out, ringLine{x, bold})
		}
	}
	title := fmt.Sprintf("%s (%s)", upperFirst(g.Title), jointCount(g.Joints))
	switch formOf(l.chain, i) {
	case ringWeakest:
		title = "WEAKEST: " + title
	case ringWeakGap:
		title = "WEAKEST, GAP: " + title
	case ringOpen:
		title = "GAP: " + title
	}
	add(title, i == l.chain.Weak)
	add(ringForces(g), false)
	return out
}

// ringForces prints demand over capacity at the worst joint of a ring.
func ringForces(g loadpath.Ring) string {
	k := g.Worst
	switch {
	case k.Gap != "":
		return fmt.Sprintf("%s: %s; largest at %s, demand %s", gapCount(g.Gaps), k.Gap, k.ID, force(k.Demand, k.Unit))
	case k.Demand == 0:
		return "no net uplift asked"
	}
	return fmt.Sprintf("%s: demand %s / capacity %s = %s; %s", k.ID, force(k.Demand, k.Unit), force(k.Capacity.Value, k.Unit), ratio(k.Ratio), k.Governs())
}

func jointCount(n int) string {
	if n == 1 {
		return "1 joint"
	}
	return fmt.Sprintf("%d joints", n)
}

func gapCount(n int) string {
	if n == 1 {
		return "1 gap"
	}
	return fmt.Sprintf("%d gaps", n)
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// seeKey is the key of the sheet that shows the joints of a ring.
func seeKey(g loadpath.Ring) string {
	switch {
	case g.Kind == plan.RafterRidge:
		return "roof"
	case g.Kind == plan.GirderPile:
		return "foundation"
	case g.Wall != nil:
		return "wall " + g.Wall.Name
	}
	return ""
}

func (l *laidChain) titleH() sheet.MM { return pitch(l.m.cap*1.4) + l.m.gap }

func (l *laidChain) height() sheet.MM { return l.titleH() + sum(l.highs[l.from:l.to]) }

func (l *laidChain) split(h sheet.MM) (first, rest laid) {
	if l.height() <= h {
		return l, nil
	}
	y, n := l.titleH(), l.from
	for n < l.to && y+l.highs[n] <= h {
		y += l.highs[n]
		n++
	}
	if n < l.from+2 { // a chain of one ring on a sheet is none
		return nil, l
	}
	a, b := *l, *l
	a.to, b.from = n, n
	return &a, &b
}
