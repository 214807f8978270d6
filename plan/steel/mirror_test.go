package steel_test

import (
	"os"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// How a house is framed and where a clip goes is handed: rims lap in the way
// the walls are walked, a clip is on the right of its stud. So the mirrored
// house is made of the framed one, member by member and piece by piece, and
// its bodies must be the mirrored bodies.

func flip(v geom.Vec3) geom.Vec3 { v.X = -v.X; return v }

// mirror is a house and its pieces seen in a mirror.
type mirror struct {
	members map[*framing.Member]*framing.Member
	walls   map[*plan.Wall]*plan.Wall
	joints  map[*framing.Joint]*framing.Joint
}

func (x mirror) member(m *framing.Member) *framing.Member {
	if m == nil || x.members[m] != nil {
		return x.members[m]
	}
	c := *m
	c.A, c.B, c.Solid = flip(m.A), flip(m.B), nil
	for _, s := range m.Solid {
		var faces [][]geom.Vec3
		for _, f := range s.Faces {
			var loop []geom.Vec3
			for _, p := range slices.Backward(f) {
				loop = append(loop, flip(p))
			}
			faces = append(faces, loop)
		}
		c.Solid = append(c.Solid, geom.Solid{Faces: faces})
	}
	x.members[m] = &c
	return &c
}

func (x mirror) wall(w *plan.Wall) *plan.Wall {
	if w == nil || x.walls[w] != nil {
		return x.walls[w]
	}
	c := *w
	c.From, c.To = flip(w.To.Up(0)).Flat(), flip(w.From.Up(0)).Flat()
	x.walls[w] = &c
	return &c
}

func (x mirror) joint(j *framing.Joint) *framing.Joint {
	if x.joints[j] != nil {
		return x.joints[j]
	}
	c := *j
	c.At, c.Wall, c.Members = flip(j.At), x.wall(j.Wall), nil
	for _, m := range j.Members {
		c.Members = append(c.Members, x.member(m))
	}
	x.joints[j] = &c
	return &c
}

func (x mirror) piece(p *placement.Piece) *placement.Piece {
	c := *p
	c.Joint, c.Bands, c.Laid = x.joint(p.Joint), nil, slices.Clone(p.Laid)
	for i := range c.Laid {
		c.Laid[i].Member = x.member(c.Laid[i].Member)
	}
	for _, b := range p.Bands {
		var band geom.Band
		for _, q := range b {
			q.A, q.B, q.N = flip(q.A), flip(q.B), flip(q.N)
			band = append(band, q)
		}
		c.Bands = append(c.Bands, band)
	}
	if p.Rod != nil {
		c.Rod = &placement.Axis{A: flip(p.Rod.A), B: flip(p.Rod.B)}
	}
	return &c
}

// mirrored returns the steel of a house in the mirror.
func mirrored(p *placement.Placement) (*steel.Steel, mirror) {
	x := mirror{map[*framing.Member]*framing.Member{}, map[*plan.Wall]*plan.Wall{}, map[*framing.Joint]*framing.Joint{}}
	h := *p.House
	h.Members, h.Joints = nil, nil
	for _, m := range p.House.Members {
		h.Members = append(h.Members, x.member(m))
	}
	for _, j := range p.House.Joints {
		h.Joints = append(h.Joints, x.joint(j))
	}
	var pieces []*placement.Piece
	for _, q := range p.Pieces {
		pieces = append(pieces, x.piece(q))
	}
	return steel.New(placement.Of(&h, pieces...)), x
}

// example takes an example as far as its pieces. It goes without the stages after steel,
// whose packages would be built again for each change to this one.
func example(t *testing.T, name string) *placement.Placement {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	p, ds := read.Plan(name, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.NewIn(p.Project.Units, p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	placed, ds := placement.Place(h, c)
	require.False(t, ds.Errors(), "%v", ds)
	return placed
}

func TestAMirroredHouseHasMirroredBodies(t *testing.T) {
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"} {
		t.Run(name, func(t *testing.T) {
			placed := example(t, name)
			was := steel.New(placed)
			is, x := mirrored(placed)
			fasteners := 0
			for i, b := range was.Bodies {
				fasteners += sameBody(t, x, b, is.Bodies[i])
			}
			assert.Greater(t, fasteners, 100)
		})
	}
}

// sameBody compares a body with that in the mirror, and returns how many
// fasteners it held to one in the mirror. A pattern whose rows are not alike,
// staggered or with an odd hole, is no mirror image of itself: the same item is
// in both houses, and its fasteners must be as many at each end.
func sameBody(t *testing.T, x mirror, a, b *steel.Body) (n int) {
	tag := a.Piece.Tag
	require.Equal(t, len(a.Fasteners), len(b.Fasteners), tag)
	for i, r := range a.Rods {
		sameRod(t, x, tag, r, b.Rods[i])
	}
	for i, e := range a.Piece.Item.Ends() {
		rows := e.Rows
		if rows == 0 && a.Piece.Item.Across() >= 2 {
			rows = 2
		}
		if e.Stagger || rows > 1 && e.Count%(2*rows) != 0 {
			continue
		}
		for _, f := range a.Fasteners {
			if f.End != i {
				continue
			}
			assert.True(t, slices.ContainsFunc(b.Fasteners, func(g steel.Fastener) bool { return same(x, f, g) }), "%s: a fastener at %v", tag, f.Head)
			n++
		}
	}
	return n
}

// same tells whether g is f in the mirror: where it is and in what wood.
func same(x mirror, f, g steel.Fastener) bool {
	if flip(f.Head).Sub(g.Head).Len() > 1e-6 || flip(f.Tip).Sub(g.Tip).Len() > 1e-6 || f.End != g.End || len(f.Runs) != len(g.Runs) {
		return false
	}
	for i, r := range f.Runs {
		s := g.Runs[i]
		if d := r.Len() - s.Len(); x.members[r.Member] != s.Member || d > 1e-6 || d < -1e-6 {
			return false
		}
	}
	return true
}

func sameRod(t *testing.T, x mirror, tag string, r, s *steel.Rod) {
	assert.InDelta(t, r.Length(), s.Length(), 1e-6, tag)
	require.Equal(t, len(r.Passes), len(s.Passes), tag)
	for i, p := range r.Passes {
		assert.Same(t, x.members[p.Member], s.Passes[i].Member, tag)
	}
	for i, e := range r.Ends {
		assert.Equal(t, e.Kind, s.Ends[i].Kind, tag)
		assert.InDelta(t, e.Area, s.Ends[i].Area, 1e-6, tag)
		assert.Less(t, flip(e.At).Sub(s.Ends[i].At).Len(), 1e-6, tag)
	}
}

// What a rod passes is measured from its upper end: run by run it begins and ends
// at the faces of its members. Of the demo's hold-downs the seat stands 2 1/8 in
// off the bottom plate.
func TestWhatARodPassesIsMeasuredFromItsEnd(t *testing.T) {
	seats := 0
	for _, x := range steel.New(example(t, "marsh-wren")).Rods() {
		d := x.B.Sub(x.A).Unit()
		for _, p := range x.Passes {
			if p.Member.Role == plan.Pile { // notched for its girder
				continue
			}
			lo, hi := p.Member.Solid[0].Along(d)
			assert.InDelta(t, lo, x.A.Dot(d)+p.From, 1e-6, "%s in %s", x.For.Tag, p.Member.ID)
			assert.InDelta(t, hi, x.A.Dot(d)+p.To, 1e-6, "%s in %s", x.For.Tag, p.Member.ID)
		}
		if x.For.Item.Mark == "hold-down-heavy" {
			seats++
			assert.InDelta(t, 2.125, x.Ends[0].At.Z-(x.A.Z-x.Passes[0].From), 1e-6, x.For.Tag)
		}
	}
	assert.Equal(t, 20, seats)
}
