package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// Chain is the load path of one bearing wall line from ridge to foundation.
type Chain struct {
	Line  *framing.Line
	Name  string
	Links []ChainLink // from the ridge down
	Weak  int         // index of the weakest link, -1 when nothing is asked of any
}

// ChainLink is one step of a chain: all joints of one kind in one wall.
type ChainLink struct {
	Title  string         // "rafters to plates, wall 2S"
	Kind   plan.JointKind // "" of the roof deck
	Wall   *plan.Wall     // nil at ridge and piles
	Joints int
	Gaps   int
	Worst  *Link
	// Followed tells whether wind was followed to any of the joints: where it was
	// not, no demand is no finding.
	Followed bool
}

// followed tells whether wind was followed to a link: of uplift some, of what
// is worked out otherwise always.
func (l *Link) followed() bool { return !l.uplift || l.Demand > 0 || math.Abs(l.Force.W) > least }

// worse orders links by ratio, then by demand.
func worse(a, b *Link) bool {
	if b == nil {
		return true
	}
	if a.Ratio != b.Ratio {
		return a.Ratio > b.Ratio
	}
	return a.Demand > b.Demand
}

// chains builds one chain for each line with a bearing wall.
func (r *Report) chains(a *analysis) {
	at := r.byJoint
	over := a.ridgesOver()
	under := a.pilesUnder()
	decks := deckLinks(r.Links)
	sills, plates := map[*plan.Wall][]*Link{}, map[*plan.Wall][]*Link{}
	for _, k := range r.Links {
		switch k.Check.ID {
		case sillCheck:
			sills[k.Wall] = append(sills[k.Wall], k)
		case platesCheck:
			plates[k.Wall] = append(plates[k.Wall], k)
		}
	}
	for _, l := range a.house.Lines {
		if !slices.ContainsFunc(l.Walls, func(w *plan.Wall) bool { return w.Bearing }) {
			continue
		}
		c := &Chain{Line: l, Name: l.Name, Weak: -1}
		byWall := map[*plan.Wall]map[plan.JointKind][]*Link{}
		for _, w := range l.Walls {
			byWall[w] = map[plan.JointKind][]*Link{}
			for _, j := range a.joints[w] {
				for _, k := range at[j] {
					if ownLink(k) {
						continue // a link of its own
					}
					byWall[w][j.Kind] = append(byWall[w][j.Kind], k)
				}
			}
		}
		var ridge, piles []*Link
		for _, w := range l.Walls {
			ridge = append(ridge, linksOf(at, over[w])...)
			piles = append(piles, linksOf(at, under[w])...)
		}
		c.add("roof deck", "", nil, decks.over(a, l.Walls))
		c.add("ridge", plan.RafterRidge, nil, ridge)
		for _, w := range slices.Backward(l.Walls) {
			for _, k := range []struct {
				kind  plan.JointKind
				title string
			}{
				{plan.RafterPlate, "rafters to plate"},
				{plan.GirderPlate, "girder trusses to plate"},
				{plan.RafterLedger, "rafters to ledger"},
				{plan.StudTop, "plate to studs"},
				{plan.OpeningHead, "headers to kings"},
				{plan.StudStud, "stud to stud through the floor"},
				{plan.StudBase, "studs to floor"},
				{plan.WallEnd, "shear wall ends"},
			} {
				if k.kind == plan.StudTop {
					c.add("upper plate to top plate, wall "+w.Name, plan.RafterPlate, w, plates[w])
				}
				c.add(a.plan.InRoofWords(k.title)+", wall "+w.Name, k.kind, w, byWall[w][k.kind])
				if k.kind == plan.StudBase {
					c.add("bottom plate to foundation, wall "+w.Name, k.kind, w, sills[w])
				}
			}
		}
		c.add("girders to piles", plan.GirderPile, nil, piles)
		c.weakest()
		r.Chains = append(r.Chains, c)
	}
}

func linksOf(at map[*framing.Joint][]*Link, joints []*framing.Joint) (out []*Link) {
	for _, j := range joints {
		out = append(out, at[j]...)
	}
	return out
}

// add appends a link of the links, if there are any.
func (c *Chain) add(title string, k plan.JointKind, w *plan.Wall, links []*Link) {
	if len(links) == 0 {
		return
	}
	g := ChainLink{Title: title, Kind: k, Wall: w, Joints: len(links)}
	for _, l := range links {
		if l.Gap != "" {
			g.Gaps++
		}
		g.Followed = g.Followed || l.followed()
		if worse(l, g.Worst) {
			g.Worst = l
		}
	}
	c.Links = append(c.Links, g)
}

// Places says how many joints the link has, or zones of the roof deck.
func (g ChainLink) Places() string {
	if g.Kind == "" {
		return plan.Counted(g.Joints, "zone")
	}
	return plan.Counted(g.Joints, "joint")
}

func (c *Chain) weakest() {
	for i, g := range c.Links {
		if g.Worst.Demand > 0 && (c.Weak < 0 || worse(g.Worst, c.Links[c.Weak].Worst)) {
			c.Weak = i
		}
	}
}

// Weakest says which link is the weakest, in one line.
func (c *Chain) Weakest() string {
	if c.Weak < 0 {
		if slices.ContainsFunc(c.Links, func(g ChainLink) bool { return g.Followed }) {
			return "no net uplift"
		}
		return "no wind uplift is followed to it"
	}
	g := c.Links[c.Weak]
	return fmt.Sprintf("%s: %s, %s", g.Title, g.Worst.ID, ratioText(g.Worst))
}

// ridgesOver returns for each wall the ridge joints of the rafters it bears.
func (a *analysis) ridgesOver() map[*plan.Wall][]*framing.Joint {
	out := map[*plan.Wall][]*framing.Joint{}
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.plate == nil || e.plate.Wall == nil {
				continue
			}
			w := e.plate.Wall
			if s.pair != nil && s.pair.joint != nil {
				out[w] = append(out[w], s.pair.joint)
			}
			for _, x := range s.ends {
				if x.ridge != nil && x.joint != nil { // hips that lean on each other share no joint
					out[w] = append(out[w], x.joint)
				}
			}
		}
	}
	for _, list := range out {
		slices.SortStableFunc(list, func(x, y *framing.Joint) int { return cmpFloat(x.Station, y.Station) })
	}
	for w, list := range out {
		out[w] = slices.Compact(list)
	}
	return out
}

// pilesUnder returns for each wall the pile joints its studs go to.
func (a *analysis) pilesUnder() map[*plan.Wall][]*framing.Joint {
	out := map[*plan.Wall][]*framing.Joint{}
	for _, p := range a.paths {
		seen := map[*framing.Joint]bool{}
		for _, c := range p.carriers {
			for _, g := range c.ground {
				if j := g.pile.joint; !seen[j] {
					seen[j] = true
					out[p.w] = append(out[p.w], j)
				}
			}
		}
	}
	return out
}

// deckOf is the links of the roof deck by the roof they are on.
type deckOf map[string][]*Link

func deckLinks(links []*Link) deckOf {
	out := deckOf{}
	for _, l := range links {
		if l.Check.ID == deckCheck {
			out[l.Host] = append(out[l.Host], l)
		}
	}
	return out
}

// over returns the links of the roofs whose rafters bear on the walls.
func (d deckOf) over(a *analysis, walls []*plan.Wall) (out []*Link) {
	seen := map[*plan.Roof]bool{}
	for _, w := range walls {
		for _, j := range a.joints[w] {
			if r := j.Roof; r != nil && bears(j.Kind) && !seen[r] {
				seen[r] = true
				out = append(out, d["roof "+r.Name]...)
			}
		}
	}
	return out
}
