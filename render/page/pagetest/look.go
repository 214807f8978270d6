package pagetest

import (
	"testing"

	"galewright/render/page"
	"galewright/render/sheet"
)

// NoOverlaps asks that nothing lettered lies on anything else.
func NoOverlaps(t *testing.T, s *sheet.Sheet, paper string) {
	t.Helper()
	for i, a := range s.Boxes {
		for _, b := range s.Boxes[i+1:] {
			if a.Kind == "piece" && b.Kind == "piece" {
				continue
			}
			if a.Inset(0.05).Overlaps(b.Inset(0.05)) {
				t.Errorf("%s %s: %s lies on %s at %.0f, %.0f", paper, s.Title.SheetTitle, a.What, b.What, a.X, a.Y)
			}
		}
	}
}

// OnPaper asks that nothing leaves the border.
func OnPaper(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	frame := page.FrameOf(s.Paper)
	for _, m := range s.Marks {
		if b := sheet.Bounds(m, nil); !frame.Holds(b, 0.1) {
			t.Errorf("%s: %T at %.0f, %.0f, %.0f by %.0f is over the border", s.Title.SheetTitle, m, b.X, b.Y, b.W, b.H)
		}
	}
}
