package pdf_test

import (
	"bytes"
	"encoding/xml"
	"image"
	_ "image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"

	"galewright/plan/pipeline"
	"galewright/render"
	"galewright/render/pdf"
	"galewright/render/sheet"
	"galewright/render/svg"
)

// drawn returns the set of an example on a paper.
func drawn(t testing.TB, example, paper string) *sheet.Set {
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, example))
	require.NoError(t, err)
	r, faults := pipeline.Run(example, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, faults.Errors(), "%v", faults)
	set, faults := render.Draw(&render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt}, render.Options{Paper: paper})
	require.False(t, faults.Errors(), "%v", faults)
	require.NoError(t, sheet.Check(set))
	return set
}

func need(t *testing.T, name string) string {
	bin, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed")
	}
	return bin
}

func svgOf(t *testing.T, set *sheet.Set, i int) []byte {
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, set, i, svg.Options{}))
	return b.Bytes()
}

// svgText returns the lettering of an SVG as a PDF can show it, in order of
// letters, blanks left out: readers join and part words as they like.
func svgText(t *testing.T, src []byte) string {
	d := xml.NewDecoder(bytes.NewReader(src))
	var b strings.Builder
	in := false
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		switch k := tok.(type) {
		case xml.StartElement:
			in = k.Name.Local == "text"
		case xml.EndElement:
			in = false
		case xml.CharData:
			if in {
				b.WriteString(string(k))
			}
		}
	}
	return letters(sheet.Latin(b.String()))
}

func letters(s string) string {
	r := []rune(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.IsControl(r) {
			return -1
		}
		return r
	}, s))
	slices.Sort(r)
	return string(r)
}

func TestPDFAndSVGLetterTheSame(t *testing.T) {
	bin := need(t, "pdftotext")
	for _, paper := range []string{"letter", "arch-d"} {
		set := drawn(t, "shed.toml", paper)
		// what symbols letter (the north point) is drawn out in a PDF and
		// defined once in an SVG, so it is compared without them
		for _, sh := range set.Sheets {
			sh.Marks = slices.DeleteFunc(sh.Marks, func(m sheet.Mark) bool { _, use := m.(sheet.Use); return use })
		}
		file := filepath.Join(t.TempDir(), "set.pdf")
		var b bytes.Buffer
		require.NoError(t, pdf.Write(&b, set, pdf.Options{}))
		require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
		for i, sh := range set.Sheets {
			n := strconv.Itoa(i + 1)
			out, err := exec.Command(bin, "-enc", "UTF-8", "-f", n, "-l", n, file, "-").Output()
			require.NoError(t, err)
			require.Equal(t, svgText(t, svgOf(t, set, i)), letters(string(out)), "%s %s", paper, sh.Title.Sheet)
		}
	}
}

// pictureSet returns some sheets of an example without their lettering: one
// SVG renderer kerns whatever the file says, and where letters stand is tested
// by their boxes.
func pictureSet(t *testing.T) *sheet.Set {
	set := drawn(t, "shed.toml", "letter")
	set.Sheets = slices.DeleteFunc(set.Sheets, func(sh *sheet.Sheet) bool {
		return !slices.Contains([]string{"S-101", "S-201", "S-501"}, sh.Title.Sheet)
	})
	require.GreaterOrEqual(t, len(set.Sheets), 2)
	for _, sh := range set.Sheets {
		sh.Marks = slices.DeleteFunc(sh.Marks, func(m sheet.Mark) bool { _, text := m.(sheet.Text); return text })
	}
	return set
}

// rsvgPicture draws sheet i at 150 dots an inch.
func rsvgPicture(t *testing.T, bin string, set *sheet.Set, i int) image.Image {
	cmd := exec.Command(bin, "-d", "150", "-p", "150")
	cmd.Stdin = bytes.NewReader(svgOf(t, set, i))
	png, err := cmd.Output()
	require.NoError(t, err)
	return decode(t, png)
}

func decode(t *testing.T, png []byte) image.Image {
	m, _, err := image.Decode(bytes.NewReader(png))
	require.NoError(t, err)
	return m
}

// alike is how much of two pictures may differ: hairlines that fall between
// two rows of dots.
const alike = 0.00005

// Renderers that share no code draw the same picture: at 150 dots an inch each
// dot of one has its like, give or take a dot, in the other.
func TestPDFAndSVGLookTheSame(t *testing.T) {
	rsvg, ppm := need(t, "rsvg-convert"), need(t, "pdftoppm")
	set := pictureSet(t)
	dir := t.TempDir()
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, set, pdf.Options{}))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "set.pdf"), b.Bytes(), 0o644))
	require.NoError(t, exec.Command(ppm, "-r", "150", "-png", filepath.Join(dir, "set.pdf"), filepath.Join(dir, "p")).Run())
	pages, err := filepath.Glob(filepath.Join(dir, "p-*.png"))
	require.NoError(t, err)
	require.Len(t, pages, len(set.Sheets))
	for i, sh := range set.Sheets {
		png, err := os.ReadFile(pages[i])
		require.NoError(t, err)
		a, p := rsvgPicture(t, rsvg, set, i), decode(t, png)
		require.Less(t, max(unlike(a, p), unlike(p, a)), alike, sh.Title.Sheet)
	}
}

func TestABrowserDrawsTheSameSVG(t *testing.T) {
	if testing.Short() {
		t.Skip("a browser takes seconds to start")
	}
	rsvg, chromium := need(t, "rsvg-convert"), need(t, "chromium")
	set := pictureSet(t)
	dir := t.TempDir()
	sh := set.Sheets[1]
	file, shot := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "shot.png")
	require.NoError(t, os.WriteFile(file, svgOf(t, set, 1), 0o644))
	px := func(mm sheet.MM) string { return strconv.Itoa(int(float64(mm)/25.4*96 + 0.5)) }
	out, err := exec.Command(chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir="+filepath.Join(dir, "profile"),
		"--force-device-scale-factor=1.5625", "--window-size="+px(sh.Paper.W)+","+px(sh.Paper.H), "--screenshot="+shot, "file://"+file).CombinedOutput()
	require.NoError(t, err, "%s", out)
	png, err := os.ReadFile(shot)
	require.NoError(t, err)
	a, p := rsvgPicture(t, rsvg, set, 1), decode(t, png)
	require.InDelta(t, a.Bounds().Dx(), p.Bounds().Dx(), 2)
	require.Less(t, max(unlike(a, p), unlike(p, a)), alike, sh.Title.Sheet)
}

// unlike returns the part of a's dots that are dark or light where b has
// nothing of the kind within a dot.
func unlike(a, b image.Image) float64 {
	pa, pb, w, h := grays(a), grays(b), a.Bounds().Dx(), a.Bounds().Dy()
	wb, hb := b.Bounds().Dx(), b.Bounds().Dy()
	bad := 0
	for y := 1; y < min(h, hb)-1; y++ {
		for x := 1; x < min(w, wb)-1; x++ {
			v := pa[y*w+x]
			lo, hi := 255, 0
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					q := pb[(y+dy)*wb+x+dx]
					lo, hi = min(lo, q), max(hi, q)
				}
			}
			if v < lo-150 || v > hi+150 {
				bad++
			}
		}
	}
	return float64(bad) / float64(w*h)
}

func grays(m image.Image) []int {
	r := m.Bounds()
	out := make([]int, 0, r.Dx()*r.Dy())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			cr, cg, cb, _ := m.At(x, y).RGBA()
			out = append(out, int((cr+cg+cb)/3>>8))
		}
	}
	return out
}

// The whole set of the two-story house, as files and as one file.
func BenchmarkWriters(b *testing.B) {
	set := drawn(b, "marsh-wren.toml", "arch-d")
	count := func(b *testing.B, write func(w io.Writer) error) {
		size := 0
		for b.Loop() {
			var out bytes.Buffer
			if err := write(&out); err != nil {
				b.Fatal(err)
			}
			size = out.Len()
		}
		b.ReportMetric(float64(len(set.Sheets)*b.N)/b.Elapsed().Seconds(), "sheets/s")
		b.ReportMetric(float64(size)/1024, "KiB")
	}
	b.Run("svg", func(b *testing.B) {
		count(b, func(w io.Writer) error {
			for i := range set.Sheets {
				if err := svg.Write(w, set, i, svg.Options{}); err != nil {
					return err
				}
			}
			return nil
		})
	})
	b.Run("pdf", func(b *testing.B) {
		count(b, func(w io.Writer) error { return pdf.Write(w, set, pdf.Options{Date: "2026-03-02"}) })
	})
}
