package steel_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/plantest"
	"galewright/plan/read"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var lays = map[string]plan.Lay{
	"mirrored": plan.MirrorX, "mirrored, north for south": plan.MirrorY,
	"turned to the left": plan.Turned(1), "turned around": plan.Turned(2), "turned to the right": plan.Turned(3),
	"mirrored and turned": plan.MirrorX.Then(plan.Turned(1)),
}

// laid takes an example, put where it lies, as far as its pieces.
func laid(t *testing.T, name string, lay plan.Lay) (*placement.Placement, plan.Diagnostics) {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	p, ds := read.Plan(name, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	p.LieBy(lay, geom.Vec2{X: 37, Y: -11})
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	c, ds := hardware.NewIn(p.Project.Units, p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	return placement.Place(h, c)
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

func hundredths(x float64) float64 { return math.Floor(x*100+0.37)/100 + 0 }

// steelOf lists the pieces of a house with the wood under them, each where it would be in the house as
// written, and its bodies.
func steelOf(p *placement.Placement, lay plan.Lay) (pieces, bodies []string) {
	c := middle(p.House.Plan)
	at := func(v geom.Vec3) string {
		q := lay.Back(v.Flat().Sub(c))
		return fmt.Sprintf("%.2f %.2f %.2f", hundredths(q.X), hundredths(q.Y), hundredths(v.Z))
	}
	for _, q := range p.Pieces {
		s := fmt.Sprintf("%s at %s of %.4s on %s:", q.Item.Mark, q.Joint.Kind, q.Joint.Host, at(q.Joint.At))
		var plates []string
		for _, band := range q.Bands {
			for _, b := range band {
				ends := []string{at(b.A), at(b.B)}
				slices.Sort(ends)
				plates = append(plates, fmt.Sprint(ends))
			}
		}
		slices.Sort(plates)
		for _, l := range q.Laid {
			lo, hi := l.Member.Bounds()
			s += fmt.Sprintf(" %s %s lap %.2f room %.2f,", l.Member.Role, at(lo.Add(hi).Mul(0.5)), hundredths(l.Lap), hundredths(l.Room))
		}
		if q.Rod != nil {
			s += " rod " + at(q.Rod.A) + " to " + at(q.Rod.B)
		}
		pieces = append(pieces, s+fmt.Sprint(plates))
	}
	for _, b := range steel.New(p).Bodies {
		s := fmt.Sprintf("%s at %s:", b.Piece.Item.Mark, at(b.Piece.Joint.At))
		wood := map[string]int{}
		for _, f := range b.Fasteners {
			k := ""
			for _, r := range f.Runs {
				lo, hi := r.Member.Bounds()
				k += fmt.Sprintf(" %s %s %.1f", r.Member.Role, at(lo.Add(hi).Mul(0.5)), math.Floor(r.Len()*10+0.37)/10)
			}
			wood[fmt.Sprintf("end %d%s", f.End, k)]++
		}
		for _, r := range b.Rods {
			s += fmt.Sprintf(" rod %.2f %s %s", hundredths(r.Length()), at(r.Ends[0].At), at(r.Ends[1].At))
		}
		bodies = append(bodies, s+fmt.Sprint(wood))
	}
	return pieces, bodies
}

// Pieces go to the same faces of the same wood wherever a house lies, in the mirror too, with as many
// fasteners in it.
func TestALaidHouseHasItsSteelAlike(t *testing.T) {
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"} {
		p, ds := laid(t, name, plan.Lay{})
		pieces, bodies := steelOf(p, plan.Lay{})
		for how, lay := range lays {
			t.Run(name+" "+how, func(t *testing.T) {
				q, es := laid(t, name, lay)
				if !assert.Len(t, es, len(ds)) {
					for _, d := range es {
						if d.Severity == plan.Error {
							t.Log(d)
						}
					}
				}
				a, b := steelOf(q, lay)
				plantest.Alike(t, "pieces", pieces, a)
				plantest.Alike(t, "bodies", bodies, b)
			})
		}
	}
}
