package plan

// Dormer is a dormer on one slope of a stick-framed roof.
type Dormer struct {
	Name   string
	Kind   RoofKind // of its own roof: a gable, or a shed that slopes as the roof below but flatter
	Roof   *Roof    // that it stands on
	Side   Side     // of the slope that it stands on
	Center float64  // of its middle along the eave, from the outside face at that side's west or south end, in
	Width  float64  // between the outside faces of its cheek walls' studs, in
	// SetBack is how far the outside face of its front wall's studs stands in from that of
	// the wall under the eave, in; 0 = over it, on its plates.
	SetBack     float64
	PlateHeight float64 // top of its plates over the top of those of the wall under the eave, in
	Pitch       float64 // rise in 12 of run
	Overhang    float64 // over the walls that its rafters bear on, a gable's cheeks or a shed's front, horizontal, in
	Rake        float64 // over the other walls, a gable's front or a shed's cheeks, horizontal, in
	Rafters     Lumber
	Spacing     float64 // of the rafters and studs, on center, in
	Studs       Lumber
	Header      Lumber // across the ends of the opening in the main roof; Ply 0 leaves it to the rule
	Openings    []*Opening
	Pos         Pos
}
