package plan

// Salt is what the plan says of salt air: how the house is closed, and the
// engineer's materials for each class of place.
type Salt struct {
	Walls     Finish // of the outside walls: OpenFinish or SidingFinish
	Underside Finish // of the lowest floor: OpenFinish, SheathingFinish, VentedFinish, UnventedFinish; "" = by the foundation
	Attic     Finish // VentedFinish or UnventedFinish
	Eaves     Finish // OpenFinish or SoffitFinish
	// The materials that the engineer takes in each class; none is a blank.
	PartiallySheltered, OpenExposed, VentedEnclosed, UnventedEnclosed, Interior []Coating
	// Nailing is the coating of the nails that no item of the catalog brings:
	// those of sheathing, of the roof's deck and of the nailing schedule.
	Nailing   Coating
	Source    string // the engineer's own note
	Overrides []*SaltPlace
	Pos       Pos // of the table; zero where the plan has none
}

// Materials returns what the engineer takes in a class.
func (s *Salt) Materials(c SaltClass) []Coating {
	switch c {
	case PartiallySheltered:
		return s.PartiallySheltered
	case OpenExposed:
		return s.OpenExposed
	case VentedEnclosed:
		return s.VentedEnclosed
	case UnventedEnclosed:
		return s.UnventedEnclosed
	}
	return s.Interior
}

// SaltPlace is the engineer's own class for some joints: all its conditions
// must hold.
type SaltPlace struct {
	Class SaltClass
	Level []string    // names of levels
	On    []string    // names of walls, roofs, girders and porches
	At    []JointKind // kinds of joints
	Why   string
	Pos   Pos
}

// TreatedWood says what some members are treated with.
type TreatedWood struct {
	Members      []Role
	Level        string // of one level alone; "" = of all
	Preservative Preservative
	Pos          Pos
}

// OpenUnderside tells whether the lowest floor stands over open air: on piles, and the
// plan closes nothing under the joists.
func (p *Plan) OpenUnderside() bool {
	return p.Foundation.Kind == Piles && (p.Salt.Underside == "" || p.Salt.Underside == OpenFinish)
}
