package geom

// Plate is one flat stretch of steel on a face.
type Plate struct {
	// A and B are the ends of its middle line on the face it lies on, N the
	// face's normal out of the wood, unit.
	A, B, N          Vec3
	Width, Thickness float64 // in
}

// Len returns the length of the plate, in.
func (p Plate) Len() float64 { return p.B.Sub(p.A).Len() }

// Across returns the unit direction across the plate: to the right of A to B
// for somebody who looks at its outer side.
func (p Plate) Across() Vec3 { return p.B.Sub(p.A).Unit().Cross(p.N) }

// At returns the point of the face that lies along from A and across from
// the middle line, in.
func (p Plate) At(along, across float64) Vec3 {
	return p.A.Add(p.B.Sub(p.A).Unit().Mul(along)).Add(p.Across().Mul(across))
}

// Corners returns the outline on the face, counterclockwise seen from outside.
func (p Plate) Corners() [4]Vec3 {
	h := p.Width / 2
	return [4]Vec3{p.At(0, h), p.At(p.Len(), h), p.At(p.Len(), -h), p.At(0, -h)}
}

// Solid returns the steel itself, its thickness out of the face.
func (p Plate) Solid() Solid {
	u, v := p.B.Sub(p.A), p.Across().Mul(p.Width)
	return Box(p.At(0, -p.Width/2), u, v, p.N.Mul(p.Thickness))
}

// Band is a strip of steel bent over several faces: plates end to end.
type Band []Plate

// Len returns the developed length of the band, in.
func (b Band) Len() (l float64) {
	for _, p := range b {
		l += p.Len()
	}
	return l
}

// Turned returns the band from its other end.
func (b Band) Turned() Band {
	out := make(Band, len(b))
	for i, p := range b {
		p.A, p.B = p.B, p.A
		out[len(b)-1-i] = p
	}
	return out
}

// At returns which plate a developed distance from the band's start falls on,
// and how far along that plate; past the end it is on the last.
func (b Band) At(s float64) (plate int, along float64) {
	for i, p := range b {
		if l := p.Len(); s <= l || i == len(b)-1 {
			return i, s
		}
		s -= b[i].Len()
	}
	return 0, s
}

// Past returns what of the band lies past a developed distance from its start;
// nothing past its end.
func (b Band) Past(s float64) (out Band) {
	for _, p := range b {
		l := p.Len()
		if s < l-Eps {
			p.A = p.At(max(s, 0), 0)
			out = append(out, p)
		}
		s -= l
	}
	return out
}
