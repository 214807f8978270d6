package wind

import (
	"math"

	"galewright/plan/source"
)

// provisional goes with every figure of 7-16: its one source has points read
// off the printed graphs.
const provisional = "points of the printed graph, read off by one hand, good to 0.1; provisional"

// points builds a curve at 10, 20, 50, 100 and 200 ft².
func points(g ...float64) Curve {
	c := make(Curve, len(g))
	for i := range g {
		c[i] = Point{[]float64{10, 20, 50, 100, 200}[i], g[i]}
	}
	return c
}

// gable16 returns ASCE 7-16 Figs. 30.3-2B to 2D (second-hand): zones of
// the edge e, at the ridge r, at the gable end n.
func gable16(theta float64) Figure {
	var f Figure
	switch {
	case theta <= 20:
		pos := Curve{{2, 0.7}, {10, 0.53}, {20, 0.45}, {50, 0.38}, {100, 0.3}}
		one := Clad{"1", pos, points(-2.0, -2.0, -1.17, -0.5, -0.5), line(-2.5, -1.5, 100)}
		two := Clad{"2n", pos, append(points(-3.0, -2.57, -2.0, -1.6, -1.1), Point{250, -1.0}), line(-3.5, -2.0, 250)}
		f = Figure{Name: "ASCE 7-16 Fig. 30.3-2B", Zones: []Clad{
			one, named(one, "2e"), two, named(two, "2r"),
			{"3e", pos, two.Negative, line(-4.1, -1.5, 250)},
			{"3r", pos, points(-3.6, -3.05, -2.34, -1.8, -1.8), line(-4.7, -2.3, 100)},
		}}
	case theta <= 27:
		pos := line(0.6, 0.3, 200) // of 7-22; that of 7-16 was not read
		one := Clad{"1", pos, append(points(-1.5, -1.5, -1.25, -1.06, -0.89), Point{300, -0.8}), line(-2.0, -1.8, 350)}
		two := Clad{"2n", pos, append(points(-2.5, -2.15, -1.7, -1.38), Point{150, -1.2}), line(-3.0, -2.2, 150)}
		f = Figure{Name: "ASCE 7-16 Fig. 30.3-2C", Zones: []Clad{
			one, named(one, "2e"), two, named(two, "2r"),
			{"3e", pos, two.Negative, line(-3.6, -1.7, 150)},
			{"3r", pos, Curve{{4, -3.6}, {10, -2.73}, {20, -2.35}, {50, -1.8}}, Curve{{4, -4.7}, {50, -2.4}}},
		}}
	default:
		pos := points(0.9, 0.8, 0.6, 0.5, 0.5)
		one := Clad{"1", pos, points(-1.8, -1.5, -1.1, -0.8, -0.8), nil}
		two := Clad{"2n", pos, points(-2.0, -1.77, -1.45, -1.23, -1.0), nil}
		f = Figure{Name: "ASCE 7-16 Fig. 30.3-2D", Zones: []Clad{
			one, named(one, "2e"), named(one, "2r"), two,
			{"3e", pos, Curve{{2, -3.2}, {10, -2.5}, {20, -2.2}, {50, -1.8}, {100, -1.5}, {300, -1.0}}, nil},
			named(two, "3r"),
		}}
	}
	f.Grade, f.Note = source.SecondHand, provisional
	return f
}

func named(c Clad, zone string) Clad { c.Zone = zone; return c }

// hip16 returns ASCE 7-16 Figs. 30.3-2E to 2I (second-hand): h over
// width matters to 20 degrees, the angle itself from 27 degrees on.
func hip16(theta, hOverB float64) Figure {
	pos := line(0.7, 0.3, 100) // of 7-22; that of 7-16 was not read
	set := func(name string, one, edge, ridge, corner Curve) Figure {
		return Figure{Name: "ASCE 7-16 " + name, Grade: source.SecondHand, Note: provisional, Zones: []Clad{
			{"1", pos, one, nil}, {"2e", pos, edge, nil}, {"2r", pos, ridge, nil}, {"3", pos, corner, nil},
		}}
	}
	switch {
	case theta <= 20:
		ridge := line(-2.4, -1.3, 200)
		low := set("Figs. 30.3-2E and 2F", Curve{{20, -1.3}, {100, -1.0}}, line(-1.8, -1.1, 200), ridge, line(-1.8, -1.1, 200))
		high := set("Figs. 30.3-2E and 2F", Curve{{20, -1.8}, {100, -1.0}}, line(-2.6, -1.4, 200), ridge, line(-2.6, -1.4, 200))
		return blend(low, high, math.Min(1, math.Max(0, (hOverB-0.5)/0.3)))
	case theta <= 27:
		two := line(-2.0, -1.0, 200)
		return set("Fig. 30.3-2G", line(-1.4, -0.8, 100), two, two, two)
	}
	return set("Figs. 30.3-2H and 2I",
		line(-0.6175-0.02*theta, -0.095-0.0135*theta, 100),
		line(0.2-0.067*theta, -0.8, 100), line(1.0-0.082*theta, -1.0, 100), line(1.25-0.108*theta, -1.0, 100))
}
