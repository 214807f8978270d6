package plan

import "fmt"

// Line returns the width of what lies side by side without a pile between, in: the
// girder's own, or half of it on each of two faces.
func (g *Girder) Line() float64 {
	if g.Seat == SeatAstride {
		return g.Member.Width() / 2
	}
	return g.Member.Width()
}

// Cut returns how deep the seat is cut into a pile from one side, in: as given, else of a
// notch the girder's width.
func (g *Girder) Cut() float64 {
	if g.Seat == SeatNotch && g.Notch == 0 {
		return g.Member.Width()
	}
	return g.Notch
}

// Left returns what a seat leaves of a pile so thick across the girder, in.
func (g *Girder) Left(pile float64) float64 {
	if g.Seat == SeatAstride {
		return pile - 2*g.Cut()
	}
	return pile - g.Cut()
}

// Behind returns how far up from the seat the pile's wood goes that the girder is bolted
// to, in: as given, else the girder's depth; 0 under a girder on top.
func (g *Girder) Behind() float64 {
	switch {
	case g.Seat == SeatTop || g.Seat == "":
		return 0
	case g.NotchHeight > 0:
		return g.NotchHeight
	}
	return g.Member.Depth
}

// SeatWords says how a girder's seat is cut into a pile so thick across it and what is
// left of that, and what of the girder hangs on its bolts; "" where nothing is cut.
func (g *Girder) SeatWords(pile float64, length func(float64) string) string {
	cut := g.Cut()
	over := ""
	if hang := g.Line() - cut; hang > 1e-6 && cut > 0 {
		over = fmt.Sprintf("; %s of its %s stands out past the seat and hangs on what it is bolted with", length(hang), length(g.Line()))
	}
	switch {
	case g.Seat == SeatNotch:
		return fmt.Sprintf(": notch %s deep and %s high, which leaves %s of the pile's %s%s", length(cut), length(g.Behind()), length(g.Left(pile)), length(pile), over)
	case g.Seat == SeatAstride && cut > 0:
		return fmt.Sprintf(": a seat %s deep in each of two faces, %s of the pile's %s between them, %s high%s", length(cut), length(g.Left(pile)), length(pile), length(g.Behind()), over)
	case g.Seat == SeatAstride:
		return fmt.Sprintf(": flat on both faces, the pile's %s between them %s high; nothing of it bears on wood, it hangs on what it is bolted with", length(pile), length(g.Behind()))
	case g.Seat == SeatBeside:
		return ": against the pile's side; nothing of it bears on wood, it hangs on what it is bolted with"
	}
	return ""
}
