package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// The checks of pieces in each other's way.
var (
	faceTaken = newCheck("face-taken", plan.Error, "two pieces on one face of one member",
		"Two straps or bodies take the same place on the same face.", func(x *placer, c *Check) {
			x.clashes(c, func(a, b *Piece) bool { return !clip(a) && !clip(b) && a.Item.Phase == b.Item.Phase })
		})
	overNails = newCheck("over-nails", plan.Warning, "a piece over another's nails",
		"A piece installed later lies on the nail heads of an earlier one and does not seat.", func(x *placer, c *Check) {
			x.clashes(c, func(a, b *Piece) bool { return !under(a, b) && (clip(a) || clip(b) || a.Item.Phase != b.Item.Phase) })
		})
	underClip = newCheck("under-clip", plan.Warning, "hardware under a clip",
		"A strap lies where a clip is installed after it: the clip's nails hit the strap's steel.", func(x *placer, c *Check) {
			x.clashes(c, under)
		})
	faceCovered = newCheck("face-covered", plan.Error, "a piece on a face that another member covers",
		"Another member stands against the face there, such as the next stud of a post, a wall that butts, or a joist: nothing can be nailed.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Face == plan.Top || p.Face == plan.Through {
					continue
				}
				if m, face := x.coverOf(p); m != nil {
					x.about(c, p, p.Tag, fmt.Sprintf("a %s stands against the %s face of the %s", m.Role, face, p.ties()[0].Member.Role),
						x.freeFace(p, "no face of the member is free there: leave the joint out with except, or ask for an item of another kind"))
				}
			}
		})
	strapSkipped = newCheck("strap-skipped", plan.Warning, "a strap of a rule where another wall covers the face",
		"At an inside corner, and where a wall meets another one, a stud's face is covered and nothing can be nailed to it. Nothing is placed for a rule; the load path has a gap unless the stud is tied otherwise. By [[place]] it is an error.", nil)
	noRoomOnFace = newCheck("no-room-on-face", plan.Error, "a piece whose nails miss the member",
		"The pieces asked for do not fit side by side on the face: the middle line of one lies nearer than 3/8 in to the member's edge; or less than half of a clip's leg finds wood.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if off := p.offWood(); off != nil {
					x.about(c, p, p.Tag, fmt.Sprintf("a leg of %s finds %s of the %s", x.units().Length(off.Lap), x.units().Length(off.Room), off.Member.Role),
						x.freeFace(p, "no face of the member is free there: leave the joint out with except, or ask for an item of another kind"))
					continue
				}
				if len(p.Laid) == 0 || len(p.plates()) == 0 || p.Face != plan.Outside && p.Face != plan.Inside || p.Joint.Kind.Lies() == plan.LiesAtRafter {
					continue
				}
				m := p.ties()[0].Member
				if b := m.S1 - m.S0; m.Wall != nil && m.Wall == p.Joint.Wall && standing(m) && math.Abs(p.Station-m.Mid()) > b/2-edge+touch {
					x.about(c, p, p.Tag, fmt.Sprintf("the %s is %s wide, too narrow for the pieces beside each other", m.Role, x.units().Length(b)),
						`put one on each face with face = "both", or take a wider member`)
				}
			}
		})
	strapAcrossOpening = newCheck("strap-across-opening", plan.Error, "a strap across an opening",
		"The strap crosses a rough opening, where there is nothing to nail to and where the window goes.", (*placer).acrossOpening)
)

// edge is the least distance of a line of nails from a member's edge (common
// practice, no published source), in.
const edge = 0.375

func clip(p *Piece) bool { return p.Item.Kind.Name == plan.ClipItem }

// under tells whether a strap lies under a clip that goes on no earlier.
func under(a, b *Piece) bool {
	if clip(a) == clip(b) {
		return false
	}
	if clip(a) {
		a, b = b, a
	}
	return b.Item.Phase.Order() >= a.Item.Phase.Order()
}

// clash is two pieces that overlap, the later of the list second.
type clash struct {
	a, b *Piece
	deep float64 // how long they overlap, in
}

// bucket is the width of the strips into which a face is cut to find
// neighbors, in.
const bucket = 32

type strip struct {
	plane plane
	n     int32
}

// space is an index of the steel on all faces of the house.
type space struct {
	strips map[strip][]spot
}

type spot struct {
	piece *Piece
	rect  rect
}

// fill makes the index of all pieces and the list of those that overlap.
func (x *placer) fill() {
	x.space = &space{strips: map[strip][]spot{}}
	x.overlaps = nil
	seen := map[[2]*Piece]bool{}
	for _, p := range x.p.Pieces {
		for _, b := range p.nailed() {
			pl, r := flat(b)
			x.space.near(pl, r, func(q spot) {
				if k := [2]*Piece{q.piece, p}; q.piece != p && !seen[k] {
					seen[k] = true
					deep := max(min(r.u1, q.rect.u1)-max(r.u0, q.rect.u0), min(r.v1, q.rect.v1)-max(r.v0, q.rect.v0))
					x.overlaps = append(x.overlaps, clash{q.piece, p, deep})
				}
			})
		}
		x.space.add(p)
	}
}

// add puts a piece's steel into the index.
func (s *space) add(p *Piece) {
	for _, b := range p.nailed() {
		pl, r := flat(b)
		for k := int32(math.Floor(r.u0 / bucket)); k <= int32(math.Floor(r.u1/bucket)); k++ {
			key := strip{pl, k}
			s.strips[key] = append(s.strips[key], spot{p, r})
		}
	}
}

// near calls f with each piece on the face that overlaps r.
func (s *space) near(pl plane, r rect, f func(spot)) {
	for k := int32(math.Floor(r.u0 / bucket)); k <= int32(math.Floor(r.u1/bucket)); k++ {
		for _, on := range pl.beside() {
			for _, q := range s.strips[strip{on, k}] {
				if q.rect.overlaps(r) {
					f(q)
				}
			}
		}
	}
}

// clashes tells the overlaps that kind picks.
func (x *placer) clashes(c *Check, kind func(a, b *Piece) bool) {
	for _, k := range x.overlaps {
		if !kind(k.a, k.b) {
			continue
		}
		a, b := k.a, k.b
		_, pos := a.By()
		if _, other := b.By(); pos.File == other.File && pos.Line > other.Line {
			a, b, pos = b, a, other // told at what is written later
		}
		where := fmt.Sprintf("%s with %s at joint %s", b.Tag, a.Tag, b.Joint.ID)
		what := fmt.Sprintf("overlaps %s for %s on the %s face", a.Item.Mark, x.units().Length(k.deep), cleared(b.Face, a.Face))
		x.about(c, b, where, what, x.freeFace(b, "no face of the member is free there: take one of the two out with except, or combine them in one item"), pos)
	}
}

func cleared(a, b plan.Face) plan.Face {
	if a == plan.Top || a == plan.Through {
		return b
	}
	return a
}

// freeFace suggests where a piece could go instead, or says none when every
// face is taken. A band on a stud's side would have to pass the plates there.
func (x *placer) freeFace(p *Piece, none string) string {
	if p.Joint.Wall == nil || len(p.Laid) == 0 || p.Joint.Kind.Lies() == plan.LiesAtRafter {
		return "move one of them, or change its face"
	}
	faces := []plan.Face{plan.Outside, plan.Inside, plan.Left, plan.Right}
	if p.Item.Kind.Shape == hardware.Band {
		faces = faces[:2]
	}
	for _, face := range faces {
		if (face != p.Face || p.around()) && x.fits(p, face) {
			return fmt.Sprintf(`the %s face is free there: face = "%s"`, face, face)
		}
	}
	return none
}

// around tells whether the piece goes down both faces of its member.
func (p *Piece) around() bool {
	return p.Item.Kind.Shape == hardware.Over && p.Joint.Kind != plan.RafterRidge && len(p.plates()) > 2
}

// coverOf returns a member that stands against a face where the piece lies,
// and which face that is; nil when none does. A strap that lies flat on a
// plate's top goes on before anything covers it.
func (x *placer) coverOf(p *Piece) (m *framing.Member, face plan.Face) {
	for _, b := range p.plates() {
		if geom.LiesFlat(b.N) && p.Item.Kind.Strap {
			continue
		}
		if m := x.cover(b, p.reach(), p.Members()...); m != nil {
			return m, p.faceOf(b)
		}
	}
	return nil, ""
}

// reach returns how far the piece stands off its face at least: the body of a
// hold-down as far past its rod as the rod stands off.
func (p *Piece) reach() float64 {
	if p.Item.Bodies > 0 {
		return 2*p.Item.Center - probeNear
	}
	return probeFar
}

// faceOf names the face of the wall or member that a stretch of the piece's
// steel lies on.
func (p *Piece) faceOf(b geom.Plate) plan.Face {
	if !p.around() || p.Joint.Wall == nil {
		return p.Face
	}
	f := p.Joint.Wall.Frame()
	switch n := b.N.Flat(); {
	case geom.Toward(n, f.In):
		return plan.Inside
	case geom.Toward(n, f.In.Mul(-1)):
		return plan.Outside
	case n.Dot(f.D) < 0:
		return plan.Left
	}
	return plan.Right
}

// offWood returns the member of which less than half a clip's leg finds wood,
// as past its end; nil for none and for what is no clip.
func (p *Piece) offWood() *Laid {
	if p.Item.Kind.Name != plan.ClipItem {
		return nil
	}
	for i, t := range p.Laid {
		if t.Room < t.Lap/2 {
			return &p.Laid[i]
		}
	}
	return nil
}

// covered tells whether a member stands against a face where the piece lies.
func (x *placer) covered(p *Piece) bool {
	m, _ := x.coverOf(p)
	return m != nil
}

// fits tells whether the piece could lie on another face.
func (x *placer) fits(p *Piece, face plan.Face) bool {
	lie, fault := x.shape(want{joint: p.Joint, item: p.Item, face: face, n: 1, to: p.to()})
	if fault != nil || lie.Face != face {
		return false
	}
	q := &Piece{Joint: p.Joint, Item: p.Item, Lie: lie}
	if x.covered(q) || q.offWood() != nil {
		return false
	}
	free := true
	for _, b := range q.nailed() {
		pl, r := flat(b)
		x.space.near(pl, r, func(s spot) { free = free && s.piece == p })
	}
	return free
}

// acrossOpening tells of steel on a wall's faces over a rough opening.
func (x *placer) acrossOpening(c *Check) {
	told := map[*Piece]bool{}
	for _, w := range x.house.Plan.Walls {
		for _, o := range w.Openings {
			for _, face := range []plan.Face{plan.Outside, plan.Inside} {
				g := facingOf(w.Frame(), o.At, o.End(), w.Depth(), face)
				z := w.Level.Floor + o.Sill
				pl, r := flat(geom.Plate{A: g.at(z, 0), B: g.at(z+o.Height, 0), N: g.n, Width: o.Width})
				x.space.near(pl, r, func(s spot) {
					if !told[s.piece] && s.piece.Item.Kind.Strap {
						told[s.piece] = true
						x.about(c, s.piece, s.piece.Tag, fmt.Sprintf("the strap crosses opening %s of wall %s", o.Name, w.Name),
							"leave this joint out with except, or end the strap at the header", o.Pos)
					}
				})
			}
		}
	}
}
