package pdf

import (
	"fmt"
	"io"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"

	"galewright/render/sheet"
)

// Options says how a set is written.
type Options struct {
	// Date is the date of the file, ISO ("2026-03-02"): that of the plan, not
	// of the clock. "" takes 2000-01-01, so that a file without a date stays
	// the same too.
	Date string
	// Layers puts the marks of each layer into an optional layer, which a
	// reader can hide.
	Layers bool
}

// Write writes all sheets of the set, in order, as one file.
func Write(w io.Writer, set *sheet.Set, o Options) error {
	if len(set.Sheets) == 0 {
		return fmt.Errorf("pdf: the set has no sheets")
	}
	out, err := newWriter(set, o)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	for _, sh := range set.Sheets {
		out.page(sh)
	}
	if out.err != nil {
		return fmt.Errorf("pdf: %w", out.err)
	}
	if err := out.pdf.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// writer writes one set; err is its first fault.
type writer struct {
	pdf     *fpdf.Fpdf
	latin   func(string) string // to the encoding of the core fonts
	symbols map[string]sheet.Symbol
	links   map[string]int // sheet number -> link
	layers  []int          // by sheet.Layer; nil without layers
	pen     sheet.Style    // pen and fill that are set on this page, zero: none yet
	scale   float64        // of the pen that is set
	err     error
	on      string // the sheet being written, for messages
}

func newWriter(set *sheet.Set, o Options) (*writer, error) {
	date := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	if o.Date != "" {
		d, err := time.Parse(time.DateOnly, o.Date)
		if err != nil {
			return nil, fmt.Errorf("the date %q is not written as 2026-03-02", o.Date)
		}
		date = d
	}
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCreationDate(date)
	f.SetModificationDate(date)
	f.SetCatalogSort(true)
	f.SetProducer("galewright", true)
	f.SetCreator("galewright", true)
	t := set.Sheets[0].Title
	f.SetTitle(t.Project, true)
	f.SetSubject(t.Site, true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetLineJoinStyle("round")
	w := &writer{pdf: f, latin: f.UnicodeTranslatorFromDescriptor(""), symbols: set.Map(), links: map[string]int{}}
	for i, sh := range set.Sheets {
		id := f.AddLink()
		f.SetLink(id, 0, i+1)
		w.links[sh.Title.Sheet] = id
	}
	if o.Layers {
		for l := sheet.LayerFrame; l <= sheet.LayerRevision; l++ {
			w.layers = append(w.layers, f.AddLayer(l.String(), true))
		}
	}
	return w, f.Error()
}

func (w *writer) fail(format string, args ...any) {
	if w.err == nil {
		w.err = fmt.Errorf("sheet %s: %s", w.on, fmt.Sprintf(format, args...))
	}
}

// page writes one sheet. The page has the paper's own width and height, so no
// turning is asked of the library.
func (w *writer) page(sh *sheet.Sheet) {
	w.on, w.pen = sh.Title.Sheet, sheet.Style{}
	w.pdf.AddPageFormat("P", fpdf.SizeType{Wd: w.num(sh.Paper.W), Ht: w.num(sh.Paper.H)})
	w.pdf.Bookmark(outlineText(sh.Title.Sheet+"  "+sh.Title.SheetTitle), 0, 0)
	ms := sh.Marks
	for len(ms) > 0 {
		layer := sheet.StyleOf(ms[0]).Layer
		n := 1
		for n < len(ms) && sheet.StyleOf(ms[n]).Layer == layer {
			n++
		}
		w.layer(layer, ms[:n])
		ms = ms[n:]
	}
}

// layer writes a run of marks of one layer.
func (w *writer) layer(l sheet.Layer, ms []sheet.Mark) {
	if w.layers != nil && int(l) < len(w.layers) {
		w.pdf.BeginLayer(w.layers[l])
		defer w.pdf.EndLayer()
	}
	for _, m := range ms {
		w.mark(m, identity)
	}
}

// outlineText encodes a bookmark: plain when it is ASCII, else UTF-16 with a
// byte order mark, as PDF text strings are (ISO 32000-1, 7.9.2.2: from memory).
func outlineText(s string) string {
	ascii := true
	for _, r := range s {
		ascii = ascii && r >= 0x20 && r < 0x7f
	}
	if ascii {
		return s
	}
	b := []byte{0xfe, 0xff}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}
