package golden

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/loadpath"
	"galewright/plan/lumber"
	"galewright/plan/pipeline"
	"galewright/plan/placement"
	"galewright/plan/salt"
	"galewright/plan/steel"
	"galewright/render"
	"galewright/render/pdf"
	"galewright/render/sheet"
	"galewright/render/svg"

	svgo "github.com/ajstarks/svgo/float"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// demo is the example that the figures are for.
const demo = "marsh-wren"

// row returns a plan of n houses like p's, side by side: every wall, roof,
// girder, porch and place again, renamed and moved east.
func row(p *plan.Plan, n int) *plan.Plan {
	out := *p
	out.Walls, out.Roofs, out.Girders, out.Porches, out.Places, out.FloorOpenings = nil, nil, nil, nil, nil, nil
	out.Rules = nil
	for _, r := range p.Rules {
		c := *r
		c.Where, c.Except = renamedAll(r.Where, n), nil
		for _, e := range r.Except {
			c.Except = append(c.Except, renamedAll(e, n))
		}
		out.Rules = append(out.Rules, &c)
	}
	for i := range n {
		addHouse(&out, p, i)
	}
	return &out
}

const apart = 1200 // in, from house to house

func name(i int, s string) string {
	if s == "" {
		return ""
	}
	return fmt.Sprintf("h%d-%s", i, s)
}

func renamedAll(w plan.Where, n int) plan.Where {
	all := func(list []string) (out []string) {
		for _, s := range list {
			for i := range n {
				out = append(out, name(i, s))
			}
		}
		return out
	}
	w.Wall, w.Roof = all(w.Wall), all(w.Roof)
	return w
}

func addHouse(out, p *plan.Plan, i int) {
	by := geom.Vec2{X: apart * float64(i)}
	for _, w := range p.Walls {
		c := *w
		c.Name, c.From, c.To = name(i, w.Name), w.From.Add(by), w.To.Add(by)
		out.Walls = append(out.Walls, &c)
	}
	for _, r := range p.Roofs {
		c := *r
		c.Name = name(i, r.Name)
		c.Area = [2]geom.Vec2{r.Area[0].Add(by), r.Area[1].Add(by)}
		out.Roofs = append(out.Roofs, &c)
	}
	for _, g := range p.Girders {
		c := *g
		c.Name, c.From, c.To = name(i, g.Name), g.From.Add(by), g.To.Add(by)
		out.Girders = append(out.Girders, &c)
	}
	for _, g := range p.Porches {
		c := *g
		c.Name, c.From, c.To = name(i, g.Name), g.From.Add(by), g.To.Add(by)
		out.Porches = append(out.Porches, &c)
	}
	for _, x := range p.FloorOpenings {
		c := *x
		c.Name, c.Lo, c.Hi = name(i, x.Name), x.Lo.Add(by), x.Hi.Add(by)
		out.FloorOpenings = append(out.FloorOpenings, &c)
	}
	for _, pl := range p.Places {
		c := *pl
		c.Wall, c.Roof, c.Girder = name(i, pl.Wall), name(i, pl.Roof), name(i, pl.Girder)
		out.Places = append(out.Places, &c)
	}
}

func source(b *testing.B) []byte {
	src, err := os.ReadFile("../examples/" + demo + ".toml")
	require.NoError(b, err)
	return src
}

func load(n string) ([]byte, error) { return os.ReadFile("../examples/" + n) }

// writeAll writes every sheet and returns the bytes written.
func writeAll(b *testing.B, set *sheet.Set) (n int64) {
	for i := range set.Sheets {
		c := &counter{}
		require.NoError(b, svg.Write(c, set, i, svg.Options{}))
		n += c.n
	}
	return n
}

type counter struct{ n int64 }

func (c *counter) Write(p []byte) (int, error) { c.n += int64(len(p)); return len(p), nil }

func marks(set *sheet.Set) (n int) {
	for _, s := range set.Sheets {
		n += len(s.Marks)
	}
	return n
}

// BenchmarkPlanToSVG takes the demo house from the text of its plan to the
// bytes of all its sheets.
func BenchmarkPlanToSVG(b *testing.B) {
	src := source(b)
	var bytes, elements int
	for b.Loop() {
		r, faults := pipeline.Run(demo+".toml", src, load)
		require.False(b, faults.Errors(), "%v", faults)
		set := draw(b, r, "arch-d")
		bytes, elements = int(writeAll(b, set)), marks(set)
	}
	b.ReportMetric(float64(elements)*float64(b.N)/b.Elapsed().Seconds(), "elements/s")
	b.ReportMetric(float64(bytes), "B/set")
}

// most is the longest row of houses that is measured: make bench HOUSES=100 measures
// more than fits in the gibibyte that make bench keeps to.
var most = flag.Int("houses", 30, "with -bench: houses of the longest row")

// rows measures work on rows of the demo house, from one on: set readies a row and
// returns the work. Printed are the time of one house in the row, and how the whole time
// grows from the row before: an exponent of 1 is time in step with the houses, 2 with
// their square. Where a row is done once or twice in the time given, and the machine
// does other work, the exponent is as good as that.
func rows(b *testing.B, set func(b *testing.B, n int) func()) {
	last, before := 0, 0.0 // houses and seconds of the row before
	for _, n := range slices.Compact([]int{1, min(10, *most), *most}) {
		b.Run(fmt.Sprintf("houses=%d", n), func(b *testing.B) {
			work := set(b, n)
			for b.Loop() {
				work()
			}
			took := b.Elapsed().Seconds() / float64(b.N)
			b.ReportMetric(took*1e6/float64(n), "µs/house")
			if last > 0 && last < n {
				b.ReportMetric(math.Log(took/before)/math.Log(float64(n)/float64(last)), "exponent")
			}
			last, before = n, took
		})
	}
}

// framed returns a row that is run as far as its hardware.
func framed(b *testing.B, n int) *pipeline.Result {
	r, faults := pipeline.From(row(build(b, demo).Plan, n))
	require.False(b, faults.Errors(), "%v", faults)
	return r
}

// BenchmarkRowToSVG takes a row from the read plan on to the bytes of all its sheets.
func BenchmarkRowToSVG(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		p := row(build(b, demo).Plan, n)
		return func() {
			r, faults := pipeline.From(p)
			require.False(b, faults.Errors(), "%v", faults)
			bytes := drawEach(b, r)
			b.ReportMetric(float64(bytes)/float64(n), "B/house")
		}
	})
}

// BenchmarkDraw lays out, draws and writes the sheets of a row whose loads are known.
func BenchmarkDraw(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		r := framed(b, n)
		r.Loads()
		return func() { drawEach(b, r) }
	})
}

// drawEach writes every sheet once it is drawn, and returns how many bytes that is.
func drawEach(b *testing.B, r *pipeline.Result) int64 {
	c := &counter{}
	faults := render.Each(model(r), render.Options{Paper: "arch-d"}, func(set *sheet.Set) bool {
		return assert.NoError(b, svg.Write(c, set, 0, svg.Options{}))
	})
	require.False(b, faults.Errors(), "%v", faults)
	return c.n
}

// BenchmarkFraming frames rows of houses.
func BenchmarkFraming(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		p := row(build(b, demo).Plan, n)
		return func() {
			h, faults := framing.Frame(p)
			require.False(b, faults.Errors())
			b.ReportMetric(float64(len(h.Members)), "members")
		}
	})
}

// BenchmarkPlacing places the hardware of framed rows.
func BenchmarkPlacing(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		r := framed(b, n)
		return func() {
			pl, faults := placement.Place(r.House, r.Catalog)
			require.False(b, faults.Errors())
			b.ReportMetric(float64(len(pl.Pieces)), "pieces")
		}
	})
}

// BenchmarkBodies is all hardware as bodies, every fastener a line in the wood
// it finds, and the checks of them.
func BenchmarkBodies(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		r := framed(b, n)
		return func() {
			s := steel.New(r.Placement)
			require.False(b, s.Check().Errors())
			fasteners := 0
			for _, x := range s.Bodies {
				fasteners += len(x.Fasteners)
			}
			b.ReportMetric(float64(fasteners), "fasteners")
		}
	})
}

// BenchmarkSalt finds the class of place of every piece.
func BenchmarkSalt(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		r := framed(b, n)
		return func() {
			_, faults := salt.Run(r.Steel)
			require.False(b, faults.Errors())
		}
	})
}

// BenchmarkLoads works the load path of a row out.
func BenchmarkLoads(b *testing.B) {
	rows(b, func(b *testing.B, n int) func() {
		r := framed(b, n)
		return func() {
			_, faults := loadpath.RunOn(r.Steel)
			require.False(b, faults.Errors())
		}
	})
}

// BenchmarkLumber cuts the demo house's lumber from the usual stock, and from a yard
// that has long lengths too, which leave many ways to cut.
func BenchmarkLumber(b *testing.B) {
	p := *build(b, demo).Plan
	for _, longest := range []float64{240, 480} {
		b.Run(fmt.Sprintf("longest=%.0fft", longest/12), func(b *testing.B) {
			p.Lumber.Stock = nil
			for l := 96.0; l <= longest; l += 24 {
				p.Lumber.Stock = append(p.Lumber.Stock, l)
			}
			h, faults := framing.Frame(&p)
			require.False(b, faults.Errors(), "%v", faults)
			for b.Loop() {
				lumber.List(h)
			}
		})
	}
}

// BenchmarkWriters gives sheets per second and bytes of the set for both
// writers over the drawn demo set.
func BenchmarkWriters(b *testing.B) {
	set := draw(b, build(b, demo), "arch-d")
	rate := func(b *testing.B, bytes int64) {
		b.ReportMetric(float64(len(set.Sheets))*float64(b.N)/b.Elapsed().Seconds(), "sheets/s")
		b.ReportMetric(float64(marks(set))*float64(b.N)/b.Elapsed().Seconds(), "elements/s")
		b.ReportMetric(float64(bytes), "B/set")
	}
	b.Run("svg", func(b *testing.B) {
		var n int64
		for b.Loop() {
			n = writeAll(b, set)
		}
		rate(b, n)
	})
	b.Run("pdf", func(b *testing.B) {
		c := &counter{}
		for b.Loop() {
			c.n = 0
			require.NoError(b, pdf.Write(c, set, pdf.Options{Date: set.Sheets[0].Title.Date}))
		}
		rate(b, c.n)
	})
	b.Run("plain svgo", func(b *testing.B) {
		for b.Loop() {
			plainSVG(set)
		}
		rate(b, 0)
	})
}

// plainSVG puts out the same number of primitives of each kind through svgo
// alone, without classes, rounding, escaping or piece data: the yardstick.
func plainSVG(set *sheet.Set) {
	w := bufio.NewWriter(io.Discard)
	for _, s := range set.Sheets {
		c := svgo.New(w)
		c.Start(float64(s.Paper.W), float64(s.Paper.H))
		for _, m := range s.Marks {
			plainMark(c, m)
		}
		c.End()
	}
	w.Flush()
}

func plainMark(c *svgo.SVG, m sheet.Mark) {
	switch m := m.(type) {
	case sheet.Line:
		c.Line(float64(m.A.X), float64(m.A.Y), float64(m.B.X), float64(m.B.Y), "stroke:black")
	case sheet.Polyline:
		x, y := make([]float64, len(m.Pts)), make([]float64, len(m.Pts))
		for i, p := range m.Pts {
			x[i], y[i] = float64(p.X), float64(p.Y)
		}
		if len(x) > 0 {
			c.Polyline(x, y, "stroke:black")
		}
	case sheet.Path:
		c.Path("M0 0L1 1", "stroke:black")
	case sheet.Circle:
		c.Circle(float64(m.C.X), float64(m.C.Y), float64(m.R), "stroke:black")
	case sheet.Text:
		c.Text(float64(m.At.X), float64(m.At.Y), m.S, "font-size:3")
	case sheet.Use:
		c.Use(float64(m.At.X), float64(m.At.Y), "#"+m.Symbol)
	}
}

// TestRowOfHousesIsNHouses guards the benchmark's own plan: three houses in a
// row carry three times the pieces of one.
func TestRowOfHousesIsNHouses(t *testing.T) {
	one := build(t, demo)
	three, faults := pipeline.From(row(one.Plan, 3))
	require.False(t, faults.Errors(), "%v", faults)
	require.Len(t, three.Placement.Pieces, 3*len(one.Placement.Pieces))
}
