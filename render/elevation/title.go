package elevation

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/sheet"
)

// titleLines returns the name under the drawing and what it says below that.
func (p *part) titleLines() (name, under string) {
	name = p.name(p.own)
	if p.level != nil && p.stories[p.own[0]].wall.Balloon() {
		name += ", " + p.level.Name
	}
	if p.left != nil || p.right != nil {
		name += fmt.Sprintf(", %s to %s", p.Length(max(0, p.from)), p.Length(min(p.to, p.longest())))
	}
	return name, p.seenFrom() + p.hooks() + p.cuts() + "; scale " + p.scale.Name
}

// hooks says of walls that run through at an inside corner where their tape hooks.
func (p *part) hooks() (s string) {
	var order []string
	names := map[string][]string{}
	for _, i := range p.own {
		if w := p.stories[i].wall; w.Hook > 0 {
			by := p.Length(w.Hook)
			if names[by] == nil {
				order = append(order, by)
			}
			names[by] = append(names[by], w.Name)
		}
	}
	for _, by := range order {
		s += fmt.Sprintf("; tape of %s hooks %s behind the corner", strings.Join(names[by], ", "), by)
	}
	return s
}

// cuts says at what angle the plates of walls are cut that turn a corner which is no
// right angle; the plan says how.
func (p *part) cuts() (s string) {
	for _, i := range p.own {
		w, angle := p.stories[i].wall, 0.0
		for _, m := range p.House.In(w) {
			if m.Role == plan.TopPlate {
				angle = max(angle, m.Bevel)
			}
		}
		if angle > 0 {
			s += fmt.Sprintf("; plates of %s are cut at %.1f° off square", w.Name, angle)
		}
	}
	return s
}

// titleSize returns the place the title, its scale bar and the key map take:
// the bar stands beside the words, or below them where the drawing is narrow.
func (p *part) titleSize() (w, h sheet.MM) {
	w, h = p.wordsSize()
	bw, bh := p.ScaleBarSize(p.scale)
	if p.titleBeside() {
		w, h = w+6+bw, max(h, bh)
	} else {
		w, h = max(bw, w), bh+1.5+h
	}
	if kw, kh := p.keySize(); kw > 0 {
		w, h = w+6+kw, max(h, kh+1)
	}
	return w, h
}

// wordsSize returns the place of the title's two lines.
func (p *part) wordsSize() (w, h sheet.MM) {
	name, under := p.titleLines()
	w = max(page.TextWidth(name, p.Size.Head, true), page.TextWidth(under, p.Size.Note, false))
	return w, p.Size.Note*1.6 + p.Size.Head*1.35
}

// titleBeside tells whether the scale bar stands beside the words.
func (p *part) titleBeside() bool {
	w, _ := p.wordsSize()
	bw, _ := p.ScaleBarSize(p.scale)
	kw, _ := p.keySize()
	return w+bw+kw+12 <= p.plan.left+p.vp.Clip.W+p.plan.right
}

func (p *part) titleHeight() sheet.MM { _, h := p.titleSize(); return h }

// drawTitle draws the title with its scale bar and key map, its top at y.
func (p *part) drawTitle(y sheet.MM) {
	z := p.Size
	w, h := p.titleSize()
	name, under := p.titleLines()
	ww, wh := p.wordsSize()
	base := y + z.Head
	p.page.Text(page.Lettered{S: name, Cap: z.Head, At: sheet.Pt{X: p.at.X, Y: base}, Bold: true, Role: "title", Layer: sheet.LayerNote})
	base += z.Head*0.35 + z.Note*1.2
	p.page.Text(page.Lettered{S: under, At: sheet.Pt{X: p.at.X, Y: base}, Role: "note"})
	bw, bh := p.ScaleBarSize(p.scale)
	kw, kh := p.keySize()
	at := sheet.Pt{X: p.at.X, Y: y + wh + 1.5 + bh}
	if p.titleBeside() {
		at = sheet.Pt{X: p.at.X + ww + 6, Y: base}
	}
	p.page.ScaleBar(at, p.scale)
	if kw > 0 {
		p.drawKey(sheet.Rect{X: p.at.X + w - kw, Y: y + 0.5, W: kw, H: kh})
		w -= kw + 6
	}
	p.page.Box("title", "title of "+name, sheet.Rect{X: p.at.X, Y: y, W: max(w, bw), H: h})
}

func (p *part) longest() (l float64) {
	for _, s := range p.stories {
		l = max(l, s.shift+s.wall.Length())
	}
	return l
}
