package steel

// Hole returns the diameter of the hole that a rod takes in wood, in.
func (r *Rod) Hole() float64 { return r.Diameter + hole }
