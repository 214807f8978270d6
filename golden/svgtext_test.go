package golden

import (
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
)

// TestNoLetteringLiesOnAnother reads the boxes of all lettering from the
// golden SVG files themselves, measured with Helvetica's widths, and counts
// those that lie on each other: none may.
func TestNoLetteringLiesOnAnother(t *testing.T) {
	files, err := filepath.Glob("*/*.svg")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		f, err := os.Open(file)
		require.NoError(t, err)
		sh := &sheet.Sheet{}
		for _, x := range writtenTexts(t, f) {
			sh.Marks = append(sh.Marks, x)
		}
		require.NoError(t, f.Close())
		require.NotEmpty(t, sh.Marks, file)
		for _, o := range sheet.TextOverlaps(sh, 0.2) {
			t.Errorf("%s: %q lies on %q", file, o.A.S, o.B.S)
		}
	}
}

// writtenTexts reads the lettering of a written sheet, that of symbols left
// out: they are drawings.
func writtenTexts(t *testing.T, r io.Reader) (out []sheet.Text) {
	d := xml.NewDecoder(r)
	symbol := 0
	var open *sheet.Text
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		switch e := tok.(type) {
		case xml.StartElement:
			switch e.Name.Local {
			case "symbol":
				symbol++
			case "text":
				x := textOfElement(t, e)
				open = &x
			}
		case xml.CharData:
			if open != nil {
				open.S += string(e)
			}
		case xml.EndElement:
			switch {
			case e.Name.Local == "symbol":
				symbol--
			case e.Name.Local == "text" && open != nil:
				if symbol == 0 {
					out = append(out, *open)
				}
				open = nil
			}
		}
	}
}

var turned = regexp.MustCompile(`^rotate\((-?[0-9.]+) `)

func textOfElement(t *testing.T, e xml.StartElement) (x sheet.Text) {
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "x":
			x.At.X = sheet.MM(number(a.Value))
		case "y":
			x.At.Y = sheet.MM(number(a.Value))
		case "font-size":
			x.Size = sheet.MM(number(a.Value))
		case "transform":
			m := turned.FindStringSubmatch(a.Value)
			require.NotNil(t, m, a.Value)
			x.Angle = -number(m[1])
		case "class":
			for _, c := range strings.Fields(a.Value) {
				switch c {
				case "b":
					x.Bold = true
				case "mid":
					x.Anchor = sheet.Middle
				case "end":
					x.Anchor = sheet.Right
				}
			}
		}
	}
	return x
}
