package framing_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/plantest"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lays are ways for a house to lie on its lot.
var lays = map[string]plan.Lay{
	"mirrored": plan.MirrorX, "mirrored, north for south": plan.MirrorY,
	"turned to the left": plan.Turned(1), "turned around": plan.Turned(2), "turned to the right": plan.Turned(3),
	"mirrored and turned": plan.MirrorX.Then(plan.Turned(1)),
}

var examples = []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"}

// odd are houses with what the examples have not, some with faults.
var odd = []string{"odd/along", "odd/balloon", "odd/bay", "odd/bay-high", "odd/court", "odd/court-gables", "odd/dormers", "odd/dormers-shed", "odd/flat", "odd/garage", "odd/garage-faults", "odd/hip-end-past-gable", "odd/hip-ridge-across", "odd/metric", "odd/porch-around", "odd/porch-deck", "odd/rake-past-roof", "odd/shifted", "odd/steep", "odd/stem", "odd/stoop-in-wall", "odd/tee", "odd/tee-slant", "odd/walls", "large/killdeer"}

// written reads an example.
func written(t *testing.T, name string) *plan.Plan {
	t.Helper()
	file := "../../examples/" + name + ".toml"
	if strings.Contains(name, "/") {
		file = "testdata/" + name + ".toml"
	}
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	p, ds := read.Plan(name, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	return p
}

// middle is the middle of the box around a plan's walls.
func middle(p *plan.Plan) geom.Vec2 {
	lo, hi := p.Walls[0].From, p.Walls[0].From
	for _, w := range p.Walls {
		for _, q := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	return lo.Add(hi).Mul(0.5)
}

// mil rounds to hundredths, not between numbers that houses are made of.
func mil(x float64) float64 { return math.Floor(x*100+0.37)/100 + 0 }

// standing lists what stands and what meets, each where it would be in the house as written.
func standing(h *framing.House, lay plan.Lay) (members, joints []string) {
	c := middle(h.Plan)
	at := func(v geom.Vec3) string {
		q := lay.Back(v.Flat().Sub(c))
		return fmt.Sprintf("%.2f %.2f %.2f", mil(q.X), mil(q.Y), mil(v.Z))
	}
	for _, m := range h.Members {
		wood := 0.0
		for _, s := range m.Solid {
			wood += s.Volume()
		}
		lo, hi := m.Bounds()
		ends := []string{at(m.A), at(m.B)}
		slices.Sort(ends)
		name := ""
		if m.Wall != nil {
			name = m.Wall.Name
		}
		members = append(members, fmt.Sprintf("%s %s %s %.2f long, %.2f to %.2f, %.1f around %s; %v", m.Role, name, m.Section.Text, mil(m.Length), mil(m.Z0), mil(m.Z1), mil(wood), at(lo.Add(hi).Mul(0.5)), ends))
	}
	for _, j := range h.Joints {
		s := fmt.Sprintf("%s of %.3s at %s, %.2f gap %.2f", j.Kind, j.Host, at(j.At), mil(j.Tributary), j.Gap)
		for _, m := range j.Members {
			lo, hi := m.Bounds()
			s += fmt.Sprintf("; %s %s", m.Role, at(lo.Add(hi).Mul(0.5)))
		}
		if j.Share != nil {
			s += fmt.Sprintf(" %.2f", mil(j.Share.Width))
		}
		joints = append(joints, s)
	}
	slices.Sort(members)
	slices.Sort(joints)
	return members, joints
}

// A house is framed the same way wherever it lies, in the mirror too: each stick and each joint where
// its image is.
func TestALaidHouseIsFramedAlike(t *testing.T) {
	for _, name := range append(examples, odd...) {
		h, ds := framing.Frame(written(t, name))
		members, joints := standing(h, plan.Lay{})
		for how, lay := range lays {
			t.Run(name+" "+how, func(t *testing.T) {
				p := written(t, name)
				p.LieBy(lay, geom.Vec2{X: 37, Y: -11})
				g, es := framing.Frame(p)
				assert.Len(t, es, len(ds))
				m, j := standing(g, lay)
				plantest.Alike(t, "members", members, m)
				plantest.Alike(t, "joints", joints, j)
			})
		}
	}
}
