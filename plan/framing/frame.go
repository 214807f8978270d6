package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// Frame frames a checked plan. A wall or opening that cannot be framed is
// left out and an error says why; the rest of the house still stands, so
// that all faults come out at once. A plan with a word that is not known is not
// framed: any choice made of it would be a guess.
func Frame(p *plan.Plan) (*House, plan.Diagnostics) {
	if unknown := plan.UnknownWords(p); len(unknown) > 0 {
		return &House{Plan: p}, unknown.Sorted()
	}
	b := newBuilder(hooked(p))
	b.setUp()
	b.corners()
	b.frameWalls()
	b.layGirders()
	b.droppedBeams()
	b.floors()
	b.lostWells()
	b.lostJoists()
	b.squashBlocks()
	b.foundation()
	b.braces()
	b.porches()
	b.porchDecks()
	b.ceilingBeams()
	b.lostBeams()
	b.roofs()
	b.ridgePosts()
	b.checkOverlaps()
	b.lines()
	b.wallJoints()
	b.baseJoints()
	b.sillJoints()
	b.floorJoints()
	b.joistPlates()
	b.wellJoints()
	b.beamJoints()
	b.ledgerJoints()
	b.shearJoints()
	b.lineJoints()
	b.shares()
	b.finish()
	b.house.indexWalls()
	return b.house, b.faults.Sorted()
}

// finish sorts the joints by host and station and names them.
func (b *builder) finish() {
	b.knownJoints()
	for _, j := range b.house.Joints {
		j.Units = b.house.Plan.Project.Units
	}
	rank := b.hosts()
	kind := map[plan.JointKind]int{}
	for i, k := range plan.JointKinds() {
		kind[k] = i
	}
	of := func(j *Joint) int { // a hip goes with its roof
		if r, ok := rank[j.Host]; ok {
			return r
		}
		host, _, _ := strings.Cut(j.Host, "/")
		return rank[host]
	}
	slices.SortStableFunc(b.house.Joints, func(x, y *Joint) int {
		return cmp.Or(cmp.Compare(of(x), of(y)), cmp.Compare(x.Host, y.Host),
			cmp.Compare(math.Round(x.Station*1000), math.Round(y.Station*1000)), cmp.Compare(kind[x.Kind], kind[y.Kind]), cmp.Compare(math.Round(x.At.Z*1000), math.Round(y.At.Z*1000)))
	})
	taken := map[string]int{}
	for _, j := range b.house.Joints {
		station := int(math.Floor(j.Station + 0.5 + geom.Eps)) // halves go up, whatever the float's last bit
		id := fmt.Sprintf("%s-%d-%s", j.Host, station, j.Kind.Code())
		taken[id]++
		j.ID = fmt.Sprintf("%s-%d%s-%s", j.Host, station, suffix(taken[id]), j.Kind.Code())
	}
}

// knownJoints leaves out joints of a kind that the table of joints has not:
// nobody would know their sheet, their load or how hardware lies there.
func (b *builder) knownJoints() {
	b.house.Joints = slices.DeleteFunc(b.house.Joints, func(j *Joint) bool {
		if j.Kind.Row() != nil {
			return false
		}
		b.fault(plan.Diagnostic{
			Code: "unknown-word", Pos: plan.Pos{File: b.plan.File, Line: 1, Col: 1}, Where: fmt.Sprintf("%s at %s", j.Host, b.inches(j.Station)),
			Summary: fmt.Sprintf("framing found a joint of the kind %q, which has no row", j.Kind), Mend: "give the kind its row in plan.Joints",
		})
		return true
	})
}

// hosts ranks the names of walls, roofs, girders, porches, floor openings and beams as written.
func (b *builder) hosts() map[string]int {
	rank := map[string]int{}
	add := func(name string) {
		if _, ok := rank[name]; !ok {
			rank[name] = len(rank)
		}
	}
	for _, w := range b.plan.Walls {
		add(w.Name)
	}
	for _, r := range b.plan.Roofs {
		add(r.Name)
	}
	for _, d := range b.plan.Dormers {
		add(d.Name)
	}
	for _, g := range b.plan.Girders {
		add(g.Name)
	}
	for _, p := range b.plan.Porches {
		add(p.Name)
	}
	for _, x := range b.plan.FloorOpenings {
		add(x.Name)
	}
	for _, x := range b.plan.Beams {
		add(x.Name)
	}
	return rank
}
