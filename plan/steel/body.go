package steel

import (
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// Body is one piece as the solid thing it is.
type Body struct {
	Piece     *placement.Piece
	Bands     []geom.Band
	Fasteners []Fastener // by end, those nearest to the end's start first
	Rods      []*Rod
	// Over are the members that a bend of the steel lies on top of and so holds
	// down without a fastener: a strap over the plates, over a rafter, the ridge.
	Over []*framing.Member
	// Slots are what its steel takes out of the members that it passes.
	Slots []Slot
	// Open are the holes that take no fastener.
	Open []OpenHole
	// Off are the holes of ends whose pattern goes past the steel, by end.
	Off []OffSteel

	patterns map[int]Pattern // by end
}

// Pattern returns how the holes of an end are laid out, from its first start.
func (b *Body) Pattern(end int) Pattern { return b.patterns[end] }

// OpenHole is a hole that stays empty.
type OpenHole struct {
	At          geom.Vec3 // on the steel's outer side
	Diameter    float64   // of the fastener that it would take, in
	Band, Plate int
}

// OffSteel is a hole that an end's pattern puts where there is no steel.
type OffSteel struct {
	End  int
	Need float64 // steel that the pattern takes, in
	Have float64 // steel there is, in
}

// Seat is where the fasteners of one end start: on which band and at which
// of its ends.
type Seat struct {
	Band   int
	Back   bool // at the band's far end
	Flange int  // which of those that share the end's fasteners, from 0
	// Other says that the pattern lies the other way round: in a mirrored house a piece is
	// turned over, or taken in its other hand.
	Other bool
}

// fasten drives the fasteners of an end through a band, from the seat on; lap is
// how far it lies on the wood that it is meant for, in.
func (w *Wood) fasten(b *Body, end int, e hardware.End, at Seat, width, lap float64) {
	band := b.Bands[at.Band]
	if at.Back {
		band = band.Turned()
	}
	have := room(band)
	p := PatternOf(e, width, Room{Steel: have, Wood: math.Min(lap, have)})
	if b.patterns == nil {
		b.patterns = map[int]Pattern{}
	}
	if _, ok := b.patterns[end]; !ok {
		b.patterns[end] = p
	}
	p.Odd = at.Flange*p.Rows%2 == 1
	if need := p.Need(); need > have+geom.Eps {
		b.Off = append(b.Off, OffSteel{end, need, have})
	}
	for _, h := range p.Lay(width) {
		if at.Other {
			h.Across = -h.Across
		}
		if h.Filled {
			w.nail(b, band, at, h, end, e)
		} else {
			b.Open = append(b.Open, openHole(band, at, h, e))
		}
	}
}

// room returns the steel that an end's holes may take: a strap's whole length,
// but of a clip, whose two legs are bent apart by its ends, the first leg.
func room(b geom.Band) float64 {
	if len(b) == 2 {
		return b[0].Len()
	}
	return b.Len()
}

// openHole is a hole of a band where it stays empty.
func openHole(band geom.Band, s Seat, h Hole, e hardware.End) OpenHole {
	n, along := band.At(h.Along)
	p := band[n]
	if s.Back {
		n = len(band) - 1 - n
	}
	return OpenHole{At: p.At(along, h.Across).Add(p.N.Mul(p.Thickness)), Diameter: e.Size.Diameter, Band: s.Band, Plate: n}
}

// nail drives one fastener through a hole of a band. A bolt without a length
// goes through the member it meets.
func (w *Wood) nail(b *Body, band geom.Band, s Seat, h Hole, end int, e hardware.End) {
	n, along := band.At(h.Along)
	p := band[n]
	length := e.Size.Length
	at := p.At(along, h.Across)
	if length == 0 {
		length = w.through(p, at)
	}
	f := w.Drive(p, at, length)
	f.Diameter, f.End, f.Band, f.Plate, f.Back = e.Size.Diameter, end, s.Band, n, s.Back
	if s.Back {
		f.Plate = len(band) - 1 - n
	}
	b.Fasteners = append(b.Fasteners, f)
}

// boltReach is how far a bolt without a length is followed, in.
const boltReach = 24.0

// through returns the length of a bolt that goes through steel and the first
// member behind it, nut and thread included, in.
func (w *Wood) through(p geom.Plate, at geom.Vec3) float64 {
	runs := w.Through(at.Add(p.N.Mul(p.Thickness)), at.Sub(p.N.Mul(boltReach)))
	if len(runs) == 0 {
		return 0
	}
	return runs[0].To
}

// Holds returns the fasteners of the body that hold m: those whose first
// wood it is.
func (b *Body) Holds(m *framing.Member) (out []Fastener) {
	for _, f := range b.Fasteners {
		if len(f.Runs) > 0 && f.Runs[0].Member == m {
			out = append(out, f)
		}
	}
	return out
}

// Members returns the members that fasteners of the body hold, in the order
// of the fasteners.
func (b *Body) Members() (out []*framing.Member) {
	seen := map[*framing.Member]bool{}
	for _, f := range b.Fasteners {
		if len(f.Runs) > 0 && !seen[f.Runs[0].Member] {
			seen[f.Runs[0].Member] = true
			out = append(out, f.Runs[0].Member)
		}
	}
	return out
}

// Loose returns the fasteners that find no wood.
func (b *Body) Loose() (out []Fastener) {
	for _, f := range b.Fasteners {
		if len(f.Runs) == 0 {
			out = append(out, f)
		}
	}
	return out
}

// Steel returns the thickness of the body's plates, in.
func (b *Body) Steel() float64 {
	for _, band := range b.Bands {
		for _, p := range band {
			return p.Thickness
		}
	}
	return 0
}

// PlateOf returns the plate that a fastener passes.
func (b *Body) PlateOf(f Fastener) geom.Plate { return b.Bands[f.Band][f.Plate] }

// Punched is a hole that a fastener fills, on the developed steel of its band:
// along from the band's start, across from its middle line, in.
type Punched struct {
	Band                    int
	Along, Across, Diameter float64
}

// Holes returns the filled holes of the body on its developed bands.
func (b *Body) Holes() (out []Punched) {
	for _, f := range b.Fasteners {
		p := b.PlateOf(f)
		before := 0.0
		for _, q := range b.Bands[f.Band][:f.Plate] {
			before += q.Len()
		}
		v := f.Head.Sub(p.A)
		out = append(out, Punched{f.Band, before + v.Dot(p.B.Sub(p.A).Unit()), v.Dot(p.Across()), f.Diameter})
	}
	return out
}
