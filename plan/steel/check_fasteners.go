package steel

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/timber"
)

// holesOffSteel is the check of hole patterns against the steel they are in.
var holesOffSteel = &Check{
	ID: "holes-off-steel", Severity: plan.Error, Title: "holes that do not fit on the steel",
	Doc: "The rows, spacing and end distance that the catalog gives lay holes past the end of the steel or of the leg they are in.",
	run: func(s *Steel, tell func(finding)) {
		told := map[*hardware.Item]bool{}
		for _, b := range s.Bodies {
			it := b.Piece.Item
			if len(b.Off) == 0 || told[it] {
				continue
			}
			told[it] = true
			o := b.Off[0]
			pos := it.Pos
			if f := it.Ends()[o.End].Fasteners; f.Pos.Line > 0 {
				pos = f.Pos
			}
			tell(finding{
				piece: b.Piece, pos: &pos, cause: "its holes do not fit on its steel",
				detail: fmt.Sprintf("the last of %d fasteners %s is %s from the end and there are %s of steel", it.Ends()[o.End].Count, it.Ends()[o.End].Part, b.Piece.Units().Length(o.Need), b.Piece.Units().Length(o.Have)),
				mend:   "closer spacing, more rows, fewer fasteners, or longer steel or legs",
			})
		}
	},
}

// fastenersInAir is the check of fasteners that hold nothing.
var fastenersInAir = &Check{
	ID: "fastener-in-no-wood", Severity: plan.Warning, Title: "fasteners that find no wood",
	Doc: "Holes of the piece lie over a gap, past the end or beside the edge of the member: what is driven there holds nothing, and is not counted in the piece's capacity.",
	run: func(s *Steel, tell func(finding)) {
		for _, b := range s.Bodies {
			n := len(b.Loose())
			if n == 0 {
				continue
			}
			f := finding{piece: b.Piece, count: n, cause: "fasteners that find no wood", mend: "take a piece whose holes are on the wood, give the catalog's hole pattern, or leave those holes open"}
			if !patterned(b.Piece.Item.Ends()[b.Loose()[0].End]) {
				f.detail = "the catalog gives no spacing of its holes: they may lie elsewhere"
			}
			tell(f)
		}
	},
}

// fastenersCovered is the check of fasteners that another member stands before.
var fastenersCovered = &Check{
	ID: "fastener-covered", Severity: plan.Warning, Title: "fasteners that another member covers",
	Doc: "Another member, such as the tail of a rafter, stands right against the outer side of the steel: what goes in there cannot be driven once that member is up, and is not counted in the piece's capacity. Steel that lies flat on a plate is installed before what bears on it.",
	run: func(s *Steel, tell func(finding)) {
		for _, b := range s.Bodies {
			n, by := b.covered()
			if n == 0 {
				continue
			}
			if m, _ := s.inside(b); m != nil { // told as steel inside of that
				continue
			}
			tell(finding{
				piece: b.Piece, count: n, cause: "fasteners that another member covers", detail: "first the " + name(by),
				mend: "put it on another face, take an item with a shorter leg, or leave the joint out with except and tie the member otherwise",
			})
		}
	},
}

// covered counts the fasteners in standing steel whose head lies in or against
// a member that the piece is not for, and returns the first of those members.
func (b *Body) covered() (n int, by *framing.Member) {
	for _, f := range b.Fasteners {
		if len(f.Runs) == 0 || geom.LiesFlat(b.PlateOf(f).N) {
			continue
		}
		r := f.Runs[0]
		if r.From > b.PlateOf(f).Thickness/2 || slices.Contains(b.Piece.Members(), r.Member) {
			continue
		}
		if n++; by == nil {
			by = r.Member
		}
	}
	return n, by
}

// fastenersTooNear is the check of distances in the wood.
var fastenersTooNear = &Check{
	ID: "fastener-distance", Severity: plan.Warning, Title: "fasteners too near to an edge, an end or each other",
	Doc: "For bolts and lags of 1/4 in and more the standard gives least distances to the edge and end of the wood and to each other; for smaller nails and screws its commentary gives advice, so that the wood does not split.",
	run: (*Steel).tellDistances,
}

// nearness is what the fasteners of one item have not.
type nearness struct {
	worst   map[string]timber.Unmet // by rule
	rules   []string
	bodies  []*Body
	count   int
	hard    bool // against the standard itself
	guessed bool // laid by the rule for catalogs without a pattern
}

func (n *nearness) add(b *Body, f Fastener, list []timber.Unmet) {
	if k := len(n.bodies); k == 0 || n.bodies[k-1] != b {
		n.bodies = append(n.bodies, b)
	}
	n.count++
	n.guessed = n.guessed || !patterned(b.Piece.Item.Ends()[f.End])
	for _, u := range list {
		n.hard = n.hard || !u.Advisory
		old, ok := n.worst[u.Rule]
		if !ok {
			n.rules = append(n.rules, u.Rule)
		}
		if !ok || u.Have-u.Want < old.Have-old.Want {
			n.worst[u.Rule] = u
		}
	}
}

// text tells the worst of each rule.
func (n *nearness) text() string {
	slices.Sort(n.rules)
	var parts []string
	from := ""
	for _, r := range n.rules {
		u := n.worst[r]
		parts = append(parts, n.bodies[0].Piece.Units().Sprintf("%s down to %.2f in where %.2f in is wanted", r, u.Have, u.Want))
		from = u.Source
	}
	return strings.Join(parts, ", ") + " (" + from + ")"
}

// distances gathers what the fasteners of each item have not, in the order of
// the pieces.
func (s *Steel) distances() (order []*hardware.Item, by map[*hardware.Item]*nearness) {
	by = map[*hardware.Item]*nearness{}
	for _, b := range s.Bodies {
		for _, f := range b.Fasteners {
			list := s.Unmet(b, f)
			if len(list) == 0 {
				continue
			}
			it := b.Piece.Item
			if by[it] == nil {
				by[it] = &nearness{worst: map[string]timber.Unmet{}}
				order = append(order, it)
			}
			by[it].add(b, f, list)
		}
	}
	return order, by
}

// tellDistances tells of each item whose pattern the catalog gives, or whose
// bolts are against the standard. Where its holes are taken by rule their distances
// are the rule's, not the item's: details and explain say so.
func (s *Steel) tellDistances(tell func(finding)) {
	order, by := s.distances()
	for _, it := range order {
		n := by[it]
		if n.guessed && !n.hard {
			continue
		}
		f := finding{pos: &it.Pos, detail: n.text(), cause: "fasteners nearer to the wood's edge or end, or to each other, than is advised", mend: "other rows, spacing or end_distance, fewer or thinner fasteners"}
		if n.hard {
			f.cause = "bolts or lags nearer to the wood's edge or end, or to each other, than the standard allows"
		}
		tellOf(n, f, tell)
	}
}

// tellOf tells one finding of all bodies of an item.
func tellOf(n *nearness, f finding, tell func(finding)) {
	for i, b := range n.bodies {
		f.piece, f.count = b.Piece, 0
		if i == 0 {
			f.count = n.count
		}
		tell(f)
	}
}

// fastenersMeet is the check of fasteners in each other's way.
var fastenersMeet = &Check{
	ID: "fasteners-meet", Severity: plan.Warning, Title: "fasteners that meet in the wood",
	Doc: "Two fasteners driven from two faces, or from two pieces, take the same place: the second bends, splits the wood or cannot be driven. Neither counts beyond the place where they meet.",
	run: func(s *Steel, tell func(finding)) {
		for _, m := range Meetings(s.Bodies) {
			other := m.A.Piece.Item.Mark
			tell(finding{
				piece: m.B.Piece, cause: "fasteners meet those of " + other, count: 1,
				detail: fmt.Sprintf("first with %s", m.A.Piece.Tag),
				mend:   "move one of the two pieces, take shorter fasteners, or leave those holes open",
			})
		}
	},
}
