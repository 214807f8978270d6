package timber

// DoubleShear evaluates the four modes of a dowel through two equal side
// members, NDS 2018 Table 12.3.1A, equations 12.3-7 to 12.3-10 (transcribed):
// Ls and Fes are those of one side member.
func (d Dowel) DoubleShear() Yield {
	y := d.SingleShear()
	var modes []Mode
	for _, m := range y.Modes {
		switch m.Name {
		case "Im":
			modes = append(modes, m)
		case "Is", "IIIs", "IV":
			modes = append(modes, Mode{m.Name, 2 * m.Z})
		}
	}
	y.Modes = modes
	return y.govern()
}
