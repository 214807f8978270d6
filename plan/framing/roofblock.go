package framing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// Blocks at the eaves (common practice, no published source): a vented one ends
// ventGap under the deck, square to it; one shorter than shortBlock is left out.
const (
	ventGap    = 2
	shortBlock = 3
)

// eaveBlocks stands blocks between the rafters or trusses of each roof that asks
// for them, over the plates of exterior walls and over porch beams.
func (f *roofFrame) eaveBlocks() {
	for _, rb := range f.bodies {
		if rb.Blocking == plan.NoBlocking || rb.Blocking == "" {
			continue
		}
		for i := range f.beds {
			b := &f.beds[i]
			if b.wall != nil && !b.wall.Exterior {
				continue
			}
			on := f.bearingOn(rb, b)
			for k := 1; k < len(on); k++ {
				f.eaveBlock(rb, b, on[k-1], on[k])
			}
		}
	}
}

// bearingOn lists the joints of a roof's rafters on a bed, by station.
func (f *roofFrame) bearingOn(rb *roofBody, b *bed) (out []*Joint) {
	for _, j := range f.joints {
		on := j.Wall == nil && b.porch != nil && j.Host == b.porch.Name || b.wall != nil && j.Wall == b.wall.Wall
		if on && j.Kind.OnPlate() && j.Roof == rb.Roof {
			out = append(out, j)
		}
	}
	slices.SortStableFunc(out, func(x, y *Joint) int { return int(math.Copysign(1, x.Station-y.Station)) })
	return out
}

// eaveBlock fills the way between two rafters: what else stands there, such as a
// ceiling joist beside one of them, parts it.
func (f *roofFrame) eaveBlock(rb *roofBody, b *bed, l, r *Joint) {
	t := rb.blockAt(b)
	mid := (l.Station + r.Station) / 2
	_, face, ok := f.roof.Height(b.frame.At(mid, t, 0).Flat())
	if !ok || math.Abs(face.Uphill().Dot(b.frame.D)) > near || r.Station-l.Station > 2.5*rb.Spacing || r.Station-l.Station < shortBlock {
		return // no eave, or no rafters side by side
	}
	gap := 0.0
	if rb.Blocking == plan.VentedBlocking {
		gap = ventGap
	}
	room := b.frame.Box(l.Station, r.Station, t-plate/2, t+plate/2, b.z, b.z+1200).Clip(underside(face.Plane, gap))
	if room.Empty() {
		return
	}
	for _, s := range f.free(b, room, span{l.Station, r.Station}) {
		if s.hi-s.lo >= shortBlock && s.lo > l.Station+geom.Eps && s.hi < r.Station-geom.Eps {
			f.addBlock(rb, b, s, room, [2]*Joint{l, r})
		}
	}
}

// blockAt is how far in from the outside face of a bed the middle of its blocks
// stands.
func (rb *roofBody) blockAt(b *bed) float64 {
	if rb.BlockingSet != nil {
		return *rb.BlockingSet + plate/2
	}
	lo, hi := b.column.Along(b.frame.In.Up(0))
	return hi - lo - plate/2
}

// free returns what of a stretch of a bed nothing stands in.
func (f *roofFrame) free(b *bed, room geom.Solid, s span) []span {
	spans := []span{s}
	lo, hi := room.Bounds()
	base := b.frame.Origin.Dot(b.frame.D)
	for _, m := range f.index.Within(lo, hi) {
		for _, part := range m.Solid {
			if !meets(room, part) {
				continue
			}
			in := clipTo(part, room.Planes())
			if in.Empty() {
				continue
			}
			u0, u1 := in.Along(b.frame.D.Up(0))
			spans = without(spans, span{u0 - base, u1 - base})
		}
	}
	return spans
}

// addBlock adds one block.
func (f *roofFrame) addBlock(rb *roofBody, b *bed, s span, room geom.Solid, between [2]*Joint) {
	d := b.frame.D.Up(0)
	body := room.Clip(geom.PlaneAt(b.frame.At(s.hi, 0, 0), d)).Clip(geom.PlaneAt(b.frame.At(s.lo, 0, 0), d.Mul(-1)))
	lo, hi := body.Bounds()
	if hi.Z-lo.Z < shortBlock {
		return
	}
	mid, t := (s.lo+s.hi)/2, rb.blockAt(b)
	name, host, under := f.bedUnder(b, mid)
	if under == nil {
		return
	}
	deep := deeper(hi.Z - lo.Z - 2*geom.Eps)
	section := plan.Lumber{Ply: 1, Breadth: plate, Depth: deep, Text: nominal(plate, deep)}
	m := f.member(&Member{
		ID: fmt.Sprintf("%s/%s/block@%s", rb.Name, name, at(mid)), Role: plan.Blocking, Level: f.level, Roof: rb.Roof,
		Section: section, Length: s.hi - s.lo, Solid: []geom.Solid{body},
		A: b.frame.At(s.lo, t, lo.Z+section.Depth/2), B: b.frame.At(s.hi, t, lo.Z+section.Depth/2), Z0: lo.Z, Z1: hi.Z,
	})
	f.house.Blocks = append(f.house.Blocks, &Block{
		Member: m, Plate: under, Wall: host, Station: mid, Full: rb.Blocking == plan.FullBlocking,
		Rafters: [2]*Member{between[0].First(), between[1].First()},
	})
}

// bedUnder returns what a bed is of, and the plate or beam that lies at a station.
func (f *roofFrame) bedUnder(b *bed, station float64) (name string, w *plan.Wall, under *Member) {
	if b.wall != nil {
		return b.wall.Name, b.wall.Wall, b.wall.plateUnder(station)
	}
	return b.porch.Name, nil, f.beamOf(b.porch.Name, b.frame.At(station, 0, b.z))
}

// BlocksOf says what blocks stand at the eaves of a roof, "" where none do.
func (h *House) BlocksOf(r *plan.Roof) string {
	n := map[string]int{}
	for _, b := range h.Blocks {
		if b.Member.Roof == r {
			n[b.Member.Section.Text]++
		}
	}
	var parts []string
	for text, k := range n {
		parts = append(parts, fmt.Sprintf("%d of %s", k, text))
	}
	if len(parts) == 0 {
		return ""
	}
	slices.Sort(parts)
	how := "beveled up to the deck, which is nailed to them"
	if r.Blocking == plan.VentedBlocking {
		how = h.Plan.Project.Units.Words("their tops {2 in} under the deck for air")
	}
	return fmt.Sprintf("blocks between the rafters over the plates, %s, %s", strings.Join(parts, ", "), how)
}
