package wind

import "galewright/plan/source"

// flat is Fig. 30.3-2A, roofs to 7 degrees; ASCE 7-22 (transcribed).
var flat = Figure{Name: "Fig. 30.3-2A", Grade: source.Transcribed, Zones: []Clad{
	{"1", line(0.3, 0.2, 100), line(-1.7, -1.0, 500), Curve{{10, -1.7}, {100, -1.6}, {500, -1.0}}},
	{"1'", line(0.3, 0.2, 100), Curve{{100, -0.9}, {1000, -0.4}}, Curve{{10, -1.7}, {100, -1.6}, {500, -1.0}}},
	{"2", line(0.3, 0.2, 100), line(-2.3, -1.4, 500), line(-2.3, -1.1, 500)},
	{"3", line(0.3, 0.2, 100), line(-3.2, -1.4, 500), line(-3.2, -1.1, 500)},
}}

// three builds the usual three zones over one positive curve.
func three(name string, grade source.Grade, note string, pos, one, two, corner Curve) Figure {
	return Figure{Name: name, Grade: grade, Note: note, Zones: []Clad{
		{"1", pos, one, nil}, {"2", pos, two, nil}, {"3", pos, corner, nil},
	}}
}

// gable22 returns ASCE 7-22 Figs. 30.3-2B to 2D.
func gable22(theta float64) Figure {
	switch {
	case theta <= 20:
		return three("ASCE 7-22 Fig. 30.3-2B", source.Transcribed, "", line(0.6, 0.3, 200),
			line(-2.0, -0.5, 300), line(-2.7, -1.0, 200), line(-3.6, -1.8, 100))
	case theta <= 27:
		return three("ASCE 7-22 Fig. 30.3-2C", source.SecondHand, "", line(0.6, 0.3, 200),
			line(-1.5, -0.8, 200), line(-2.5, -1.2, 100), line(-3.0, -1.4, 100))
	}
	return three("ASCE 7-22 Fig. 30.3-2D", source.SecondHand, "", line(0.9, 0.5, 200),
		line(-1.8, -0.8, 100), line(-2.0, -1.0, 200), line(-2.5, -1.0, 200))
}

// hip22 returns ASCE 7-22 Figs. 30.3-2E to 2G; between 27 and 45 degrees the
// coefficients are interpolated.
func hip22(theta float64) Figure {
	e := three("ASCE 7-22 Fig. 30.3-2E", source.Transcribed, "", line(0.7, 0.3, 100),
		line(-1.8, -0.8, 200), line(-2.4, -1.3, 200), line(-2.6, -1.4, 200))
	// The sources differ between 100 and 200 ft² for the end of zones 2 and 3;
	// 200 gives the larger suction.
	f := three("ASCE 7-22 Fig. 30.3-2F", source.SecondHand, "sources differ on the end of zones 2 and 3; the larger suction is taken", line(0.7, 0.3, 100),
		line(-1.4, -0.8, 100), line(-2.0, -1.0, 200), line(-2.0, -1.0, 200))
	g := three("ASCE 7-22 Fig. 30.3-2G", source.SecondHand, "", line(0.7, 0.3, 100),
		line(-1.5, -0.7, 100), line(-1.8, -0.8, 100), line(-2.4, -1.0, 100))
	switch {
	case theta <= 20:
		return e
	case theta <= 27:
		return f
	}
	out := blend(f, g, (theta-27)/18)
	out.Name, out.Note = "ASCE 7-22 Figs. 30.3-2F and 2G", "interpolated between 27 and 45 degrees"
	return out
}

// blend returns figure a moved by f toward b, which has the same zones.
func blend(a, b Figure, f float64) Figure {
	out := a
	out.Zones = make([]Clad, len(a.Zones))
	for i, z := range a.Zones {
		out.Zones[i] = Clad{
			Zone:     z.Zone,
			Positive: mix(z.Positive, b.Zones[i].Positive, f),
			Negative: mix(z.Negative, b.Zones[i].Negative, f),
		}
	}
	return out
}

// mix interpolates two curves; every figure has its corners at these areas.
func mix(a, b Curve, f float64) (out Curve) {
	for _, x := range []float64{2, 4, 10, 20, 50, 100, 150, 200, 250, 300} {
		out = append(out, Point{x, a.At(x) + f*(b.At(x)-a.At(x))})
	}
	return out
}

// shedFigure returns Figs. 30.3-5A and 5B, monoslope roofs of 3 to 30 degrees.
func shedFigure(theta float64) Figure {
	if theta <= 10 {
		pos := line(0.3, 0.2, 100)
		return Figure{Name: "Fig. 30.3-5A", Grade: source.SecondHand, Zones: []Clad{
			{"1", pos, Curve{{10, -1.1}}, nil},
			{"2", pos, line(-1.3, -1.2, 100), nil},
			{"2'", pos, line(-1.6, -1.5, 100), nil},
			{"3", pos, line(-1.8, -1.2, 100), nil},
			{"3'", pos, line(-2.6, -1.6, 100), nil},
		}}
	}
	return three("Fig. 30.3-5B", source.Transcribed, "", line(0.4, 0.3, 100),
		line(-1.3, -1.1, 100), line(-1.6, -1.2, 100), line(-2.9, -2.0, 100))
}
