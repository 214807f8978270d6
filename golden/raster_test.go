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

// dpi of the pictures that renderers are compared at: one pixel is 0.42 mm,
// so a line of any pen marks at most two of them.
const dpi = 60

// tolerance between two renderers, after a blur of 5 by 5 pixels that takes
// away their different smoothing and kerning: share of pixels that may differ
// by more than a third of black. A missing label circle of 6 mm on ARCH D is
// 150 pixels of three million, 5e-5.
const (
	differs   = 85
	tolerance = 4e-5
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

// alike returns the share of pixels that differ, and where the worst is.
func alike(a, b image.Image) (share float64, at image.Point) {
	w := min(a.Bounds().Dx(), b.Bounds().Dx())
	h := min(a.Bounds().Dy(), b.Bounds().Dy())
	pa, pb := blurred(a, w, h), blurred(b, w, h)
	n, worst := 0, 0
	for i := range pa {
		d := pa[i] - pb[i]
		if d < 0 {
			d = -d
		}
		if d > differs {
			n++
		}
		if d > worst {
			worst, at = d, image.Pt(i%w, i/w)
		}
	}
	return float64(n) / float64(w*h), at
}

// blurred returns the grey of each pixel averaged over 5 by 5, 0 = black.
func blurred(m image.Image, w, h int) []int {
	sum := make([]int, (w+1)*(h+1)) // summed area table
	o := m.Bounds().Min
	for y := range h {
		row := 0
		for x := range w {
			row += int(color.GrayModel.Convert(m.At(o.X+x, o.Y+y)).(color.Gray).Y)
			sum[(y+1)*(w+1)+x+1] = sum[y*(w+1)+x+1] + row
		}
	}
	out := make([]int, w*h)
	for y := range h {
		for x := range w {
			x0, x1, y0, y1 := max(x-2, 0), min(x+3, w), max(y-2, 0), min(y+3, h)
			s := sum[y1*(w+1)+x1] - sum[y0*(w+1)+x1] - sum[y1*(w+1)+x0] + sum[y0*(w+1)+x0]
			out[y*w+x] = s / ((x1 - x0) * (y1 - y0))
		}
	}
	return out
}

func requireAlike(t *testing.T, what string, a, b image.Image) {
	require.InDelta(t, a.Bounds().Dx(), b.Bounds().Dx(), 1, what)
	require.InDelta(t, a.Bounds().Dy(), b.Bounds().Dy(), 1, what)
	share, at := alike(a, b)
	require.LessOrEqual(t, share, tolerance, "%s: worst at %v of %v", what, at, a.Bounds().Max)
}

// TestRenderersDrawTheSamePicture compares every sheet of the demo set as SVG
// through librsvg with its page of the PDF through poppler, and one sheet of
// each series with Chromium.
func TestRenderersDrawTheSamePicture(t *testing.T) {
	need(t, "rsvg-convert")
	need(t, "pdftoppm")
	d := writeSet(t, draw(t, build(t, demo), "arch-d"))
	series := map[byte]bool{}
	for i, s := range d.set.Sheets {
		t.Run(s.Title.Sheet, func(t *testing.T) {
			a := d.rsvg(t, s)
			requireAlike(t, "SVG and PDF", a, d.reader(t, s, i+1))
			if c := s.Title.Sheet[2]; !series[c] {
				series[c] = true
				requireAlike(t, "SVG and browser", a, d.browser(t, s))
			}
		})
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
	d := writeSet(t, set)
	for i, s := range set.Sheets {
		requireAlike(t, s.Title.Sheet, d.rsvg(t, s), d.reader(t, s, i+1))
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
