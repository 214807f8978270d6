package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/render/sheet"
)

// sample returns a set of two sheets of different papers with every mark.
func sample(t testing.TB) *sheet.Set {
	big, ok := sheet.PaperNamed("arch-d")
	require.True(t, ok)
	small, ok := sheet.PaperNamed("letter")
	require.True(t, ok)
	hw := sheet.Style{Pen: sheet.PenHardware, Layer: sheet.LayerHardware}
	label := sheet.Style{Fill: sheet.Black, Layer: sheet.LayerLabel}
	pt := func(x, y sheet.MM) sheet.Pt { return sheet.Pt{X: x, Y: y} }
	marks := func(other string) []sheet.Mark {
		return []sheet.Mark{
			sheet.Line{Style: hw, A: pt(10, 20), B: pt(80, 20)},
			sheet.Polyline{Style: sheet.Style{Pen: sheet.PenHidden, Fill: sheet.Pale}, Pts: []sheet.Pt{pt(20, 40), pt(60, 40), pt(60, 70)}, Closed: true},
			sheet.Polyline{Style: sheet.Style{Pen: sheet.PenGrid}, Pts: []sheet.Pt{pt(20, 80), pt(60, 80), pt(60, 90)}},
			sheet.Path{Style: sheet.Style{Pen: sheet.PenCut, Fill: sheet.Mid}, Segs: []sheet.Seg{{Op: 'M', P: [3]sheet.Pt{pt(100, 40)}}, {Op: 'C', P: [3]sheet.Pt{pt(110, 30), pt(120, 50), pt(130, 40)}}, {Op: 'L', P: [3]sheet.Pt{pt(130, 60)}}, {Op: 'Z'}}},
			sheet.Circle{Style: sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}, C: pt(150, 50), R: 8},
			sheet.Text{Style: label, At: pt(150, 52), Size: 5, Anchor: sheet.Middle, Bold: true, S: "12", Role: "legend"},
			sheet.Text{Style: label, At: pt(40, 120), Size: 4, S: `See é ½" — 12′-3″ (a\b)`, Link: other},
			sheet.Text{Style: label, At: pt(90, 150), Size: 4, Angle: 90, Anchor: sheet.Middle, S: "turned left"},
			sheet.Text{Style: label, At: pt(200, 120), Size: 4, Anchor: sheet.Right, S: "flush right"},
			sheet.Use{Style: hw, Symbol: "flag", At: pt(200, 150), Angle: 90, Scale: 2},
			sheet.Use{Style: hw, Symbol: "flag", At: pt(170, 150), Scale: 1},
			sheet.Use{Style: hw, Symbol: "flag", At: pt(140, 150), Mirror: true, Angle: 30, Scale: 2},
		}
	}
	return &sheet.Set{
		Symbols: []sheet.Symbol{{ID: "flag", Title: "flag", Box: sheet.Rect{X: 0, Y: -6, W: 6, H: 6}, Marks: []sheet.Mark{
			sheet.Polyline{Style: sheet.Style{Pen: sheet.PenMember, Fill: sheet.Black}, Pts: []sheet.Pt{pt(0, -6), pt(6, -4), pt(0, -2)}, Closed: true},
			sheet.Line{Style: sheet.Style{Pen: sheet.PenMember}, A: pt(0, 0), B: pt(0, -6)},
		}}},
		Sheets: []*sheet.Sheet{
			{Paper: big, Title: sheet.Title{Project: "Invented house", Sheet: "S-201", SheetTitle: "South wall – 1S"}, Marks: marks("S-202")},
			{Paper: small, Title: sheet.Title{Project: "Invented house", Sheet: "S-202", SheetTitle: "West wall"}, Marks: marks("S-201")},
		},
	}
}

func write(t testing.TB, set *sheet.Set, o Options) []byte {
	var b bytes.Buffer
	require.NoError(t, Write(&b, set, o))
	return b.Bytes()
}

// tool runs a program of the machine on the file and returns its output, or
// skips the test.
func tool(t *testing.T, data []byte, name string, args ...string) string {
	bin, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed")
	}
	file := filepath.Join(t.TempDir(), "set.pdf")
	require.NoError(t, os.WriteFile(file, data, 0o644))
	for i, a := range args {
		args[i] = strings.ReplaceAll(a, "FILE", file)
	}
	out, err := exec.Command(bin, args...).CombinedOutput()
	require.NoError(t, err, "%s", out)
	return string(out)
}

func TestPagesHaveTheSizeOfThePaper(t *testing.T) {
	set := sample(t)
	out := tool(t, write(t, set, Options{}), "pdfinfo", "-f", "1", "-l", "9", "FILE")
	sizes := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(out, -1)
	require.Len(t, sizes, 2)
	for i, s := range sizes {
		w, _ := strconv.ParseFloat(s[1], 64)
		h, _ := strconv.ParseFloat(s[2], 64)
		require.InDelta(t, float64(set.Sheets[i].Paper.W)/25.4*72, w, 0.01)
		require.InDelta(t, float64(set.Sheets[i].Paper.H)/25.4*72, h, 0.01)
	}
}

func TestAValidatorFindsNoFault(t *testing.T) {
	for _, o := range []Options{{}, {Layers: true, Date: "2026-03-02"}} {
		require.Contains(t, tool(t, write(t, sample(t), o), "qpdf", "--check", "FILE"), "No syntax or stream encoding errors")
	}
}

func TestTextComesOutAgain(t *testing.T) {
	out := tool(t, write(t, sample(t), Options{}), "pdftotext", "-enc", "UTF-8", "FILE", "-")
	for _, s := range []string{`See é ½" — 12'-3" (a\b)`, "turned left", "flush right", "12\n\n"} {
		require.Equal(t, 2, strings.Count(out, s), "%q in\n%s", s, out)
	}
}

func TestTextStandsWhereTheSheetSays(t *testing.T) {
	set := sample(t)
	out := tool(t, write(t, set, Options{}), "pdftotext", "-bbox", "-f", "1", "-l", "1", "FILE", "-")
	word := func(s string) (x0, y0, x1, y1 float64) {
		m := regexp.MustCompile(`xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">` + s).FindStringSubmatch(out)
		require.NotNil(t, m, "%s in %s", s, out)
		var v [4]float64
		for i := range v {
			v[i], _ = strconv.ParseFloat(m[i+1], 64)
			v[i] *= 25.4 / 72
		}
		return v[0], v[1], v[2], v[3]
	}
	x0, _, x1, _ := word("12<")
	require.InDelta(t, 150, (x0+x1)/2, 0.05, "middle")
	_, _, x1, _ = word("right")
	require.InDelta(t, 200, x1, 0.05, "flush right")
	_, y0, _, _ := word("left")
	require.InDelta(t, 150-float64(sheet.TextWidth("turned left", 4, false))/2, y0, 0.05, "turned text runs up")
}

func TestSheetsAreBookmarkedAndLinked(t *testing.T) {
	data := write(t, sample(t), Options{})
	require.Contains(t, string(data), "/Type /Outlines")
	require.Equal(t, 2, bytes.Count(data, []byte("/Subtype /Link")))
	require.Contains(t, string(data), "(S-202  West wall)")
}

func TestSameSetSameBytesWhateverTheClock(t *testing.T) {
	first := write(t, sample(t), Options{Date: "2026-03-02", Layers: true})
	for range 10 {
		require.Equal(t, first, write(t, sample(t), Options{Date: "2026-03-02", Layers: true}))
	}
	require.Contains(t, string(first), "D:20260302000000")
	require.NotEqual(t, first, write(t, sample(t), Options{Date: "2026-03-03", Layers: true}))
}

func TestFaultsAreTold(t *testing.T) {
	nan := sheet.MM(math.NaN())
	for want, m := range map[string]sheet.Mark{
		"NaN is no number": sheet.Line{Style: sheet.Style{Pen: sheet.PenCut}, A: sheet.Pt{X: nan}},
		"has 0 points":     sheet.Polyline{Style: sheet.Style{Pen: sheet.PenCut}},
		"unknown step":     sheet.Path{Style: sheet.Style{Pen: sheet.PenCut}, Segs: []sheet.Seg{{Op: 'q'}}},
		`symbol "none"`:    sheet.Use{Symbol: "none", Scale: 1},
		"mark that can be": &sheet.Line{},
	} {
		set := sample(t)
		set.Sheets[1].Marks = append(set.Sheets[1].Marks, m)
		err := Write(io.Discard, set, Options{})
		require.ErrorContains(t, err, want)
		require.ErrorContains(t, err, "S-202")
	}
	require.ErrorContains(t, Write(io.Discard, sample(t), Options{Date: "2 March"}), "is not written as")
	require.Error(t, Write(io.Discard, &sheet.Set{}, Options{}))
	require.ErrorIs(t, Write(broken{}, sample(t), Options{}), errDisk)
}

type broken struct{}

var errDisk = errors.New("disk full")

func (broken) Write([]byte) (int, error) { return 0, errDisk }

// Only black, white and the two grays may stand in the file.
func TestInkIsBlackWhiteAndTwoGrays(t *testing.T) {
	out := tool(t, write(t, sample(t), Options{}), "qpdf", "--qdf", "--object-streams=disable", "FILE", "-")
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)([\d. ]+) (rg|RG|g|G|k|K)\b`).FindAllStringSubmatch(out, -1) {
		seen[strings.TrimSpace(m[1])+" "+m[2]] = true
	}
	var got []string
	for k := range seen {
		got = append(got, k)
	}
	slices.Sort(got)
	for _, k := range got {
		require.Contains(t, []string{"0.000 g", "0.000 G", "1.000 g", "0.851 g", "0.600 g"}, k, fmt.Sprint(got))
	}
}
