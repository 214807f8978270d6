package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/render/sheet"
)

// node is one element of a parsed file.
type node struct {
	Name  string
	Attr  map[string]string
	Text  string
	Nodes []*node
}

// parse reads XML into a tree and fails the test when it is not well formed.
func parse(t require.TestingT, src []byte) *node {
	d := xml.NewDecoder(bytes.NewReader(src))
	root := &node{}
	stack := []*node{root}
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err, "%s", src)
		top := stack[len(stack)-1]
		switch k := tok.(type) {
		case xml.StartElement:
			n := &node{Name: k.Name.Local, Attr: map[string]string{}}
			for _, a := range k.Attr {
				n.Attr[a.Name.Local] = a.Value
			}
			top.Nodes = append(top.Nodes, n)
			stack = append(stack, n)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			top.Text += string(k)
		}
	}
	require.Len(t, root.Nodes, 1)
	return root.Nodes[0]
}

// all returns every element of the name under n, in order.
func (n *node) all(name string) (out []*node) {
	for _, c := range n.Nodes {
		if c.Name == name {
			out = append(out, c)
		}
		out = append(out, c.all(name)...)
	}
	return out
}

func write(t require.TestingT, set *sheet.Set, o Options) []byte {
	var b bytes.Buffer
	require.NoError(t, Write(&b, set, 0, o))
	return b.Bytes()
}

// sample returns a sheet with every mark, every string set to s.
func sample(s string) *sheet.Set {
	home := &sheet.Piece{Tag: s, Legend: 3, Mark: s, Title: s, Home: true}
	again := &sheet.Piece{Tag: s, Legend: 3, Mark: s, Title: s}
	hw := sheet.Style{Pen: sheet.PenHardware, Layer: sheet.LayerHardware}
	label := sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}
	return &sheet.Set{
		Symbols: []sheet.Symbol{
			{ID: "clip", Title: s, Box: sheet.Rect{X: -1, Y: -1, W: 2, H: 2}, Marks: []sheet.Mark{sheet.Circle{Style: hw, R: 1}}},
			{ID: "unused", Title: s, Box: sheet.Rect{W: 1, H: 1}, Marks: []sheet.Mark{sheet.Line{Style: hw, B: sheet.Pt{X: 1}}}},
		},
		Sheets: []*sheet.Sheet{{
			Title: sheet.Title{Sheet: s, SheetTitle: s, Caution: s},
			Paper: sheet.Paper{Name: s, W: 279.4, H: 215.9},
			Marks: []sheet.Mark{
				sheet.Line{Style: hw, A: sheet.Pt{X: 1, Y: 2}, B: sheet.Pt{X: 30, Y: 2}, Piece: home},
				sheet.Use{Style: hw, Symbol: "clip", At: sheet.Pt{X: 15, Y: 2}, Scale: 1, Piece: home},
				sheet.Circle{Style: label, C: sheet.Pt{X: 15, Y: 12}, R: 3, Piece: home},
				sheet.Text{Style: label, At: sheet.Pt{X: 15, Y: 13}, Size: 4, Anchor: sheet.Middle, Bold: true, S: s, Role: s, Piece: home, Link: s},
				sheet.Use{Style: hw, Symbol: "clip", At: sheet.Pt{X: 90, Y: 90}, Angle: 90, Scale: 1.5, Piece: again},
				sheet.Polyline{Style: hw, Pts: []sheet.Pt{{X: 1, Y: 1}, {X: 2, Y: 5}, {X: 9, Y: 9}}, Closed: true},
				sheet.Polyline{Style: hw, Pts: []sheet.Pt{{X: 1, Y: 1}, {X: 2, Y: 5}}},
				sheet.Path{Style: hw, Segs: []sheet.Seg{{Op: 'M'}, {Op: 'L', P: [3]sheet.Pt{{X: 4, Y: 4}}}, {Op: 'C', P: [3]sheet.Pt{{X: 4, Y: 4}, {X: 5, Y: 4}, {X: 6, Y: 7}}}, {Op: 'Z'}}},
				sheet.Text{At: sheet.Pt{X: 50, Y: 50}, Size: 4, Angle: 90, S: s},
			},
		}},
	}
}

func TestPaperIsRealSize(t *testing.T) {
	root := parse(t, write(t, sample("S-201"), Options{}))
	require.Equal(t, "279.400mm", root.Attr["width"])
	require.Equal(t, "215.900mm", root.Attr["height"])
	require.Equal(t, "0 0 279.400 215.900", root.Attr["viewBox"])
	require.Len(t, root.all("style"), 1)
}

func TestSymbolsAreDefinedOnceAndOnlyWhenUsed(t *testing.T) {
	root := parse(t, write(t, sample("S-201"), Options{}))
	require.Len(t, root.all("symbol"), 1)
	require.Equal(t, "clip", root.all("symbol")[0].Attr["id"])
	uses := root.all("use")
	require.Len(t, uses, 2)
	require.Equal(t, "#clip", uses[0].Attr["href"])
	require.Equal(t, "translate(90.000 90.000) rotate(-90) scale(1.5)", uses[1].Attr["transform"])
}

func TestAPieceHasOneTagAndMayBeSeenAgain(t *testing.T) {
	root := parse(t, write(t, sample("1S-64-SB-strap"), Options{}))
	count := map[string]int{}
	for _, g := range root.all("g") {
		for _, k := range []string{"data-tag", "data-see", "data-part"} {
			if v, ok := g.Attr[k]; ok {
				require.Equal(t, "1S-64-SB-strap", v)
				require.Equal(t, "3", g.Attr["data-legend"])
				require.Equal(t, "1S-64-SB-strap", g.Nodes[0].Text, "title first")
				count[k]++
			}
		}
	}
	require.Equal(t, map[string]int{"data-tag": 1, "data-see": 1, "data-part": 1}, count)
}

// An evil string must come back as itself, characters that XML 1.0 does not
// allow as U+FFFD (W3C, Extensible Markup Language 1.0, section 2.2: from
// memory).
func TestEvilStringsComeBackAsTheyWere(t *testing.T) {
	for _, s := range []string{
		`<>&"'`, `]]><script>alert(1)</script>`, `a" onload="x`, "tab\tand\nline", "nul\x00 bell\x07 \x1b[0m", "\xff\xfe bytes", "½ ″ — 界 \uffff",
		`--><!--`, `&amp;`, `url(#x)`, `%s%n`, `k=v`,
	} {
		want := strings.Map(func(r rune) rune {
			if !allowed(r) {
				return '\ufffd'
			}
			return r
		}, strings.ToValidUTF8(s, "\ufffd\ufffd"))
		root := parse(t, write(t, sample(s), Options{Screen: true}))
		require.Equal(t, want, root.Attr["data-sheet"])
		require.Equal(t, want, root.Attr["data-paper"])
		texts := root.all("text")
		require.Len(t, texts, 2)
		require.Equal(t, want, texts[0].Text)
		require.Equal(t, want, texts[0].Attr["data-role"])
		require.Equal(t, want+".svg", root.all("a")[0].Attr["href"])
		require.Len(t, root.all("script"), 0)
		for _, g := range root.all("g") {
			if v, ok := g.Attr["data-tag"]; ok {
				require.Equal(t, want, v)
				require.Equal(t, want, g.Nodes[0].Text)
			}
		}
	}
}

func TestAnyStringIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		root := parse(t, write(t, sample(s), Options{}))
		require.Equal(t, strings.ReplaceAll(root.Attr["data-sheet"], "\ufffd", ""), strings.Map(func(r rune) rune {
			if !allowed(r) || r == '\ufffd' {
				return -1
			}
			return r
		}, s))
	})
}

func TestSameSetSameBytes(t *testing.T) {
	first := write(t, sample("S-201"), Options{Screen: true})
	for range 20 {
		require.Equal(t, string(first), string(write(t, sample("S-201"), Options{Screen: true})))
	}
}

func TestBareSheetGoesIntoAPage(t *testing.T) {
	b := write(t, sample("S-201"), Options{Bare: true, Href: func(n string) string { return "#" + n }})
	require.True(t, bytes.HasPrefix(b, []byte("<svg ")))
	require.Equal(t, "#S-201", parse(t, b).all("a")[0].Attr["href"])
}

// Whatever a mark's numbers, the written ones read back within half of the
// last decimal, have three decimals, and never show a negative zero.
func TestWrittenNumbersReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string) sheet.MM { return sheet.MM(rapid.Float64Range(-1e4, 1e4).Draw(t, name)) }
		tiny := sheet.MM(rapid.Float64Range(-0.002, 0.002).Draw(t, "tiny"))
		l := sheet.Line{A: sheet.Pt{X: n("x1"), Y: tiny}, B: sheet.Pt{X: n("x2"), Y: n("y2")}}
		set := &sheet.Set{Sheets: []*sheet.Sheet{{Paper: sheet.Paper{W: 10, H: 10}, Marks: []sheet.Mark{l}}}}
		src := write(t, set, Options{})
		require.NotContains(t, string(src), `"-0.000"`)
		got := parse(t, src).all("line")[0].Attr
		for k, want := range map[string]sheet.MM{"x1": l.A.X, "y1": l.A.Y, "x2": l.B.X, "y2": l.B.Y} {
			x, err := strconv.ParseFloat(got[k], 64)
			require.NoError(t, err)
			require.Len(t, got[k][strings.Index(got[k], ".")+1:], decimals)
			require.InDelta(t, float64(want), x, 0.0005+1e-9)
		}
	})
}

func TestNumbersThatAreNoneAreRefused(t *testing.T) {
	nan, inf := sheet.MM(math.NaN()), sheet.MM(math.Inf(1))
	for name, m := range map[string]sheet.Mark{
		"line":          sheet.Line{A: sheet.Pt{X: nan}},
		"polyline":      sheet.Polyline{Pts: []sheet.Pt{{}, {X: inf}}},
		"empty chain":   sheet.Polyline{},
		"path":          sheet.Path{Segs: []sheet.Seg{{Op: 'M', P: [3]sheet.Pt{{X: nan}}}}},
		"odd path":      sheet.Path{Segs: []sheet.Seg{{Op: 'q'}}},
		"circle":        sheet.Circle{R: nan},
		"text":          sheet.Text{Size: inf},
		"turned text":   sheet.Text{Size: 3, Angle: math.NaN()},
		"use":           sheet.Use{Symbol: "clip", Scale: math.NaN()},
		"unknown use":   sheet.Use{Symbol: "none", Scale: 1},
		"bad symbol id": nil,
	} {
		set := sample("S-201")
		if m == nil {
			set.Symbols[0].ID = `a"b`
		} else {
			set.Sheets[0].Marks = append(set.Sheets[0].Marks, m)
		}
		require.Error(t, Write(io.Discard, set, 0, Options{}), name)
	}
	require.Error(t, Write(io.Discard, sample("x"), 1, Options{}), "no such sheet")
}

// brokenDisk takes left bytes and then fails.
type brokenDisk struct{ left int }

var errDisk = errors.New("disk full")

func (d *brokenDisk) Write(p []byte) (int, error) {
	if len(p) > d.left {
		return d.left, errDisk
	}
	d.left -= len(p)
	return len(p), nil
}

func TestTheFirstWriteErrorIsTold(t *testing.T) {
	set := sample("S-201")
	for range 3000 { // more than one buffer full
		set.Sheets[0].Marks = append(set.Sheets[0].Marks, sheet.Line{B: sheet.Pt{X: 1, Y: 1}})
	}
	for _, left := range []int{0, 10, 70_000, 140_000} {
		require.ErrorIs(t, Write(&brokenDisk{left}, set, 0, Options{}), errDisk)
	}
}

func TestARendererDrawsTheSymbolsOfAUse(t *testing.T) {
	bin, err := exec.LookPath("rsvg-convert")
	if err != nil {
		t.Skip("rsvg-convert is not installed")
	}
	blank := sample("S-201")
	blank.Sheets[0].Marks = nil
	render := func(set *sheet.Set) []byte {
		cmd := exec.Command(bin, "-d", "48", "-p", "48")
		cmd.Stdin = bytes.NewReader(write(t, set, Options{}))
		out, err := cmd.Output()
		require.NoError(t, err)
		return out
	}
	one := sample("S-201")
	one.Sheets[0].Marks = []sheet.Mark{sheet.Use{Symbol: "clip", At: sheet.Pt{X: 50, Y: 50}, Scale: 3}}
	require.NotEqual(t, render(blank), render(one))
}

func BenchmarkWrite(b *testing.B) {
	set := sample("S-201")
	for range 3000 {
		set.Sheets[0].Marks = append(set.Sheets[0].Marks, sheet.Line{B: sheet.Pt{X: 1, Y: 1}},
			sheet.Text{At: sheet.Pt{X: 1, Y: 1}, Size: 3.3, S: "12'-3 1/2\""})
	}
	for b.Loop() {
		if err := Write(io.Discard, set, 0, Options{}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(set.Sheets[0].Marks))*float64(b.N)/b.Elapsed().Seconds(), "marks/s")
}
