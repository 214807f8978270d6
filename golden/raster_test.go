package golden

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	_ "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"galewright/render"
	"galewright/render/pdf"
	"galewright/render/sheet"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

// dpi of the pictures that renderers are compared at: the thinnest pen,
// 0.18 mm, is 0.7 pixels, so that a line of it darkens one pixel at least to
// faint, wherever it falls.
const dpi = 100

// Renderers differ in how they smooth and snap lines, so what is compared is
// where the ink is: a pixel that is dark in one picture must have ink in the
// other within reach. tolerance is the share of pixels without. A missing
// label circle of 6 mm on ARCH D is 300 pixels of 8.6 million, 3.5e-5.
const (
	dark      = 170 // gray, 0 = black
	inkless   = 230
	reach     = 2
	tolerance = 1e-5
)

// need returns the path of a program, or skips the test where it is not
// installed; in CI it must be.
func need(t *testing.T, name string) string {
	bin, err := exec.LookPath(name)
	if err != nil {
		require.Empty(t, os.Getenv("CI"), "%s must be installed in CI", name)
		t.Skip(name + " is not installed")
	}
	return bin
}

func do(t *testing.T, name string, args ...string) {
	out, err := exec.Command(need(t, name), args...).CombinedOutput()
	require.NoError(t, err, "%s %v\n%s", name, args, out)
}

// drawn is a set written in both formats into a folder.
type drawn struct {
	dir string
	set *sheet.Set
}

func writeSet(t *testing.T, set *sheet.Set) drawn {
	d := drawn{t.TempDir(), set}
	for i, s := range set.Sheets {
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, set, i, svg.Options{}))
		require.NoError(t, os.WriteFile(d.file(s, ".svg"), b.Bytes(), 0o644))
	}
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, set, pdf.Options{Date: set.Sheets[0].Title.Date}))
	require.NoError(t, os.WriteFile(d.dir+"/set.pdf", b.Bytes(), 0o644))
	return d
}

func (d drawn) file(s *sheet.Sheet, ext string) string {
	return filepath.Join(d.dir, s.Title.Sheet+ext)
}

// rsvg, reader and browser rasterise one sheet, each with its own renderer.
func (d drawn) rsvg(t *testing.T, s *sheet.Sheet) image.Image {
	out := d.file(s, "-rsvg.png")
	do(t, "rsvg-convert", "-d", fmt.Sprint(dpi), "-p", fmt.Sprint(dpi), d.file(s, ".svg"), "-o", out)
	return decode(t, out)
}

func (d drawn) reader(t *testing.T, s *sheet.Sheet, page int) image.Image {
	out := d.file(s, "-pdf")
	n := fmt.Sprint(page)
	do(t, "pdftoppm", "-png", "-singlefile", "-r", fmt.Sprint(dpi), "-f", n, "-l", n, d.dir+"/set.pdf", out)
	return decode(t, out+".png")
}

func (d drawn) browser(t *testing.T, s *sheet.Sheet) image.Image {
	out, page := d.file(s, "-web.png"), d.file(s, ".html")
	w, h := pixels(s.Paper.W), pixels(s.Paper.H)
	html := fmt.Sprintf(`<body style="margin:0"><img src=%q style="display:block;width:%dpx;height:%dpx">`, s.Title.Sheet+".svg", w, h)
	require.NoError(t, os.WriteFile(page, []byte(html), 0o644))
	do(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--hide-scrollbars",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(),
		fmt.Sprintf("--window-size=%d,%d", w, h), "--screenshot="+out, "file://"+page)
	return decode(t, out)
}

func pixels(mm sheet.MM) int { return int(math.Round(float64(mm) / 25.4 * dpi)) }

func decode(t *testing.T, file string) image.Image {
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	img, _, err := image.Decode(f)
	require.NoError(t, err)
	return img
}

// alike returns the share of pixels of one picture whose ink the other lacks,
// the larger of both ways, and where the first is. Pixels that an edge of one
// of the windows crosses are not asked.
func alike(a, b image.Image, windows ...sheet.Rect) (share float64, at image.Point) {
	w := min(a.Bounds().Dx(), b.Bounds().Dx())
	h := min(a.Bounds().Dy(), b.Bounds().Dy())
	pa, pb := pixelsOf(a, w, h), pixelsOf(b, w, h)
	share, at = lacking(pa, pb, w, h, windows)
	if other, where := lacking(pb, pa, w, h, windows); other > share {
		return other, where
	}
	return share, at
}

func lacking(a, b []uint8, w, h int, windows []sheet.Rect) (share float64, at image.Point) {
	n := 0
	for i, v := range a {
		if v <= dark && !inked(b, i%w, i/w, w, h) && !onEdge(i%w, i/w, windows) {
			if n == 0 {
				at = image.Pt(i%w, i/w)
			}
			n++
		}
	}
	return float64(n) / float64(w*h), at
}

// onEdge tells whether the edge of a window crosses the pixel. A PDF reader
// (poppler) clips by whole pixels: what such a pixel shows of a mark does not
// depend on how little of the pixel lies in the window, while librsvg shows
// that share. Where an edge falls just past the start of a pixel, the one
// prints a row that the other leaves white.
func onEdge(x, y int, windows []sheet.Rect) bool {
	at := func(mm sheet.MM) int { return int(math.Floor(float64(mm) / 25.4 * dpi)) }
	for _, r := range windows {
		if x == at(r.X) || x == at(r.X+r.W) || y == at(r.Y) || y == at(r.Y+r.H) {
			return true
		}
	}
	return false
}

// inked tells whether there is ink within reach of the pixel.
func inked(p []uint8, x, y, w, h int) bool {
	for v := max(y-reach, 0); v <= min(y+reach, h-1); v++ {
		for u := max(x-reach, 0); u <= min(x+reach, w-1); u++ {
			if p[v*w+u] < inkless {
				return true
			}
		}
	}
	return false
}

// pixelsOf returns the gray of every pixel, row by row.
func pixelsOf(m image.Image, w, h int) []uint8 {
	gray := grays(m)
	out := make([]uint8, w*h)
	for i := range out {
		out[i] = uint8(gray(i%w, i/w))
	}
	return out
}

// grays returns how to read the gray of a pixel: on black and white sheets
// its green. The two kinds that the renderers write are read directly.
func grays(m image.Image) func(x, y int) int {
	switch m := m.(type) {
	case *image.NRGBA:
		return func(x, y int) int { return int(m.Pix[y*m.Stride+4*x+1]) }
	case *image.RGBA:
		return func(x, y int) int { return int(m.Pix[y*m.Stride+4*x+1]) }
	case *image.Gray:
		return func(x, y int) int { return int(m.Pix[y*m.Stride+x]) }
	}
	return func(x, y int) int { return int(color.GrayModel.Convert(m.At(x, y)).(color.Gray).Y) }
}

func requireAlike(t *testing.T, what string, a, b image.Image, windows ...sheet.Rect) {
	require.InDelta(t, a.Bounds().Dx(), b.Bounds().Dx(), 1, what)
	require.InDelta(t, a.Bounds().Dy(), b.Bounds().Dy(), 1, what)
	share, at := alike(a, b, windows...)
	require.LessOrEqual(t, share, tolerance, "%s: first at %v of %v", what, at, a.Bounds().Max)
}

// unlettered returns the set without its lettering.
func unlettered(set *sheet.Set) *sheet.Set {
	out := &sheet.Set{Symbols: set.Symbols}
	for _, s := range set.Sheets {
		c := *s
		c.Marks = withoutText(s.Marks)
		out.Sheets = append(out.Sheets, &c)
	}
	return out
}

func withoutText(ms []sheet.Mark) (out []sheet.Mark) {
	for _, m := range ms {
		switch m := m.(type) {
		case sheet.Text:
		case sheet.Window:
			m.Marks = withoutText(m.Marks)
			out = append(out, m)
		default:
			out = append(out, m)
		}
	}
	return out
}

// TestRenderersDrawTheSamePicture compares every drawing of the demo set, and
// one sheet of each series of tables, as SVG through librsvg with its page of
// the PDF through poppler, without lettering, since librsvg kerns whatever it
// is told.
func TestRenderersDrawTheSamePicture(t *testing.T) {
	need(t, "rsvg-convert")
	need(t, "pdftoppm")
	d := writeSet(t, unlettered(draw(t, build(t, demo), "arch-d")))
	tables := map[byte]bool{}
	for i, s := range d.set.Sheets {
		if c := s.Title.Sheet[2]; strings.IndexByte("067", c) >= 0 {
			if tables[c] {
				continue
			}
			tables[c] = true
		}
		t.Run(s.Title.Sheet, func(t *testing.T) {
			requireAlike(t, "SVG and PDF", d.rsvg(t, s), d.reader(t, s, i+1))
		})
	}
}

// TestBrowserDrawsTheSamePicture compares one sheet of each series in Chromium
// and in the PDF. Their faces for lettering differ; letters are compared as
// text.
func TestBrowserDrawsTheSamePicture(t *testing.T) {
	need(t, "chromium")
	need(t, "pdftoppm")
	d := writeSet(t, unlettered(draw(t, build(t, demo), "arch-d")))
	series := map[byte]bool{}
	for i, s := range d.set.Sheets {
		if c := s.Title.Sheet[2]; !series[c] {
			series[c] = true
			requireAlike(t, s.Title.Sheet, d.browser(t, s), d.reader(t, s, i+1))
		}
	}
}

// TestPosterPagesDrawTheSamePicture does it for pages that show part of a
// sheet through a window.
func TestPosterPagesDrawTheSamePicture(t *testing.T) {
	need(t, "rsvg-convert")
	need(t, "pdftoppm")
	r := build(t, demo)
	set, faults := render.Poster(model(r), r.Plan.Walls[0].Name, "arch-d", render.Options{Paper: "letter"})
	require.False(t, faults.Errors(), "%v", faults)
	d := writeSet(t, unlettered(set))
	for i, s := range set.Sheets {
		requireAlike(t, s.Title.Sheet, d.rsvg(t, s), d.reader(t, s, i+1), s.Marks[0].(sheet.Window).Rect)
	}
}

// TestADifferenceIsSeen: the comparison must see a label that is missing.
func TestADifferenceIsSeen(t *testing.T) {
	need(t, "rsvg-convert")
	set := draw(t, build(t, demo), "arch-d")
	s := *set.Sheets[0]
	without := &sheet.Set{Symbols: set.Symbols, Sheets: []*sheet.Sheet{&s}}
	for i, m := range s.Marks {
		if x, ok := m.(sheet.Text); ok && x.Role == "title" && len(x.S) > 6 {
			s.Marks = append(append([]sheet.Mark{}, s.Marks[:i]...), s.Marks[i+1:]...)
			break
		}
	}
	a, b := writeSet(t, &sheet.Set{Symbols: set.Symbols, Sheets: set.Sheets[:1]}), writeSet(t, without)
	share, _ := alike(a.rsvg(t, set.Sheets[0]), b.rsvg(t, &s))
	require.Greater(t, share, tolerance)
}

// TestPDFCarriesTheSameText compares the words of every sheet: pdftotext
// against the text of the SVG.
func TestPDFCarriesTheSameText(t *testing.T) {
	need(t, "pdftotext")
	d := writeSet(t, draw(t, build(t, demo), "arch-d"))
	for i, s := range d.set.Sheets {
		n := fmt.Sprint(i + 1)
		out, err := exec.Command("pdftotext", "-f", n, "-l", n, "-raw", d.dir+"/set.pdf", "-").Output()
		require.NoError(t, err)
		require.Equal(t, letters(textOf(s)), letters(string(out)), s.Title.Sheet)
	}
}

func textOf(s *sheet.Sheet) string {
	var b strings.Builder
	for _, m := range s.Marks {
		if x, ok := m.(sheet.Text); ok {
			b.WriteString(sheet.Latin(x.S) + "\n")
		}
	}
	return b.String()
}

// letters counts each rune but blanks: order and line breaks are the
// reader's own.
func letters(s string) map[rune]int {
	n := map[rune]int{}
	for _, r := range s {
		if r > ' ' {
			n[r]++
		}
	}
	return n
}
