package golden

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"galewright/plan/pipeline"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

// instance is one group of a written sheet that carries a piece.
type instance struct {
	sheet, tag, mark string
	legend, symbols  int
	home             bool
}

// readBack draws a set, writes every sheet and reads the instances of pieces
// from the bytes with an XML parser.
func readBack(t testing.TB, r *pipeline.Result, paper string) (list []instance) {
	set := draw(t, r, paper)
	for i, s := range set.Sheets {
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, set, i, svg.Options{}))
		list = append(list, instances(t, s.Title.Sheet, &b)...)
	}
	return list
}

// instances reads the groups that carry a piece, and how many symbols each
// holds.
func instances(t testing.TB, name string, r io.Reader) (list []instance) {
	d := xml.NewDecoder(r)
	var open []int // for each open element: the instance it is, or -1
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		require.NoError(t, err, name)
		switch e := tok.(type) {
		case xml.StartElement:
			at := -1
			if in, ok := pieceOf(t, e); ok {
				in.sheet, at = name, len(list)
				list = append(list, in)
			}
			if e.Name.Local == "use" {
				for _, i := range open {
					if i >= 0 {
						list[i].symbols++
					}
				}
			}
			open = append(open, at)
		case xml.EndElement:
			open = open[:len(open)-1]
		}
	}
}

func pieceOf(t testing.TB, e xml.StartElement) (in instance, ok bool) {
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "data-tag":
			in.tag, in.home, ok = a.Value, true, true
		case "data-see":
			in.tag, ok = a.Value, true
		case "data-mark":
			in.mark = a.Value
		case "data-legend":
			n, err := strconv.Atoi(a.Value)
			require.NoError(t, err)
			in.legend = n
		}
	}
	return in, ok
}

// TestSheetsAgreeWithSchedule reads every written sheet back: each piece is
// the home instance of a symbol exactly once, with its own legend number and
// mark; the numbers run from 1 without gaps; the count of each number, and
// the fasteners that follow from it, are the schedule's.
func TestSheetsAgreeWithSchedule(t *testing.T) {
	for _, name := range examples(t) {
		for _, paper := range readPapers {
			t.Run(name+" on "+paper, func(t *testing.T) {
				r := build(t, name)
				homes := map[string]instance{}
				perNumber := map[int]int{}
				for _, in := range readBack(t, r, paper) {
					piece := r.Placement.Piece(in.tag)
					require.NotNil(t, piece, "%s: no piece %s", in.sheet, in.tag)
					require.Equal(t, piece.Item.Mark, in.mark, in.tag)
					require.Equal(t, r.Schedule.Number(in.mark), in.legend, in.tag)
					if !in.home {
						continue
					}
					require.Equal(t, 1, in.symbols, "%s on %s is one instance of one symbol", in.tag, in.sheet)
					was, twice := homes[in.tag]
					require.False(t, twice, "%s is at home on %s and on %s", in.tag, was.sheet, in.sheet)
					homes[in.tag] = in
					perNumber[in.legend]++
				}
				for _, p := range r.Placement.Pieces {
					home, ok := homes[p.Tag]
					require.True(t, ok, "piece %s is on no sheet", p.Tag)
					requireSeries(t, home)
				}
				for i, line := range r.Schedule.Lines {
					require.Equal(t, i+1, line.Number, "legend numbers run without gaps")
					require.Equal(t, len(line.Pieces), perNumber[line.Number], line.Item.Mark)
					requireFasteners(t, line.Item.Mark, perNumber[line.Number], r)
				}
			})
		}
	}
}

// requireSeries holds pieces to wall elevations, or to plans for what has no
// wall.
func requireSeries(t *testing.T, in instance) {
	require.True(t, strings.HasPrefix(in.sheet, "S-2") || strings.HasPrefix(in.sheet, "S-1"), "%s is on %s", in.tag, in.sheet)
}

// requireFasteners multiplies the pieces drawn by the catalog's nails, less those
// meant for flanges that have no wood, and holds the schedule to it.
func requireFasteners(t *testing.T, mark string, drawn int, r *pipeline.Result) {
	want := 0
	for _, f := range r.Catalog.Item(mark).Fasteners {
		want += drawn * f.Count * max(f.Parts, 1)
	}
	for _, p := range r.Placement.Pieces {
		for i, at := range p.Ends {
			if n := len(at.Starts); p.Item.Mark == mark && at.Of > n {
				c := p.Item.Ends()[i].Count
				want -= c - c*n/at.Of
			}
		}
	}
	got := 0
	for _, line := range r.Schedule.Lines {
		if line.Item.Mark == mark {
			for _, n := range line.Nails {
				got += n.Count
			}
		}
	}
	require.Equal(t, want, got, "fasteners of %s", mark)
}
