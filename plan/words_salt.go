package plan

// Words of salt air and of treated wood.

// Coating is what keeps the steel of an item or fastener from rust: its zinc,
// or the metal itself.
type Coating string

// The coatings. G60 to G185 are zinc on sheet steel, in hundredths of an ounce
// a square foot, both sides together (ASTM A653/A653M-15 Table 1, read).
const (
	Bare          Coating = "bare"
	Electroplate  Coating = "electroplate"
	G60           Coating = "G60"
	G90           Coating = "G90"
	G185          Coating = "G185"
	HotDip        Coating = "hot-dip zinc" // ASTM A153, its class by the size of the part; A123 where it is not spun
	Mechanical    Coating = "mechanical zinc"
	Mechanical55  Coating = "mechanical zinc class 55" // ASTM B695
	SiliconBronze Coating = "silicon bronze"
	CopperMetal   Coating = "copper"
	Stainless304  Coating = "stainless 304"
	Stainless316  Coating = "stainless 316"
)

// Coatings are the coatings that an item may have.
var Coatings = []Coating{
	Bare, Electroplate, G60, G90, G185, HotDip, Mechanical, Mechanical55, SiliconBronze, CopperMetal, Stainless304, Stainless316,
}

// FastenerCoatings are those of nails, screws, bolts and rods: G60 to G185 are
// of sheet steel.
var FastenerCoatings = []Coating{
	Bare, Electroplate, HotDip, Mechanical, Mechanical55, SiliconBronze, CopperMetal, Stainless304, Stainless316,
}

// Stainless tells whether the metal is stainless steel.
func (c Coating) Stainless() bool { return c == Stainless304 || c == Stainless316 }

// Metal names what lies at the surface: two pieces of one joint should have
// the same.
func (c Coating) Metal() string {
	switch {
	case c.Stainless():
		return "stainless steel"
	case c == SiliconBronze || c == CopperMetal:
		return "copper alloy"
	case c == Bare:
		return "bare steel"
	}
	return "zinc"
}

// heavier are the coatings of one kind from less to more: zinc on sheet steel
// by its weight (ASTM A653/A653M-15 Table 1, read), and the two stainless
// steels (from memory). Between kinds there is no order: the engineer names each that he
// takes.
var heavier = [][]Coating{{G60, G90, G185}, {Mechanical, Mechanical55}, {Stainless304, Stainless316}}

// AtLeast tells whether the coating is the one asked for, or a heavier one of
// its kind.
func (c Coating) AtLeast(least Coating) bool {
	for _, row := range heavier {
		from := -1
		for i, x := range row {
			if x == least {
				from = i
			}
			if x == c && from >= 0 {
				return true
			}
		}
	}
	return c == least
}

// SaltClass is a class of places by how salt air reaches the steel there. The
// classes are those of NFIP Technical Bulletin 8, June 2019 (second-hand: a
// course that reprints it).
type SaltClass string

// The classes, the worst first. The bulletin counts partially sheltered among
// the worst, since no rain rinses the salt off.
const (
	PartiallySheltered SaltClass = "partially sheltered"
	OpenExposed        SaltClass = "open exposed"
	VentedEnclosed     SaltClass = "vented enclosed"
	UnventedEnclosed   SaltClass = "unvented enclosed"
	InteriorLiving     SaltClass = "interior living space"
)

// SaltClasses are the classes in their order.
var SaltClasses = []SaltClass{PartiallySheltered, OpenExposed, VentedEnclosed, UnventedEnclosed, InteriorLiving}

// Finish says how a part of the house is closed when all is done, and so which
// class the steel behind it is in.
type Finish string

// The finishes.
const (
	OpenFinish      Finish = "open"
	SidingFinish    Finish = "siding"    // over the outside of walls
	SheathingFinish Finish = "sheathing" // under the joists of the lowest floor
	VentedFinish    Finish = "vented"    // an attic or a crawl space with vents
	UnventedFinish  Finish = "unvented"  // an attic or a crawl space without
	SoffitFinish    Finish = "soffit"    // under the eaves
)

// Finishes are all finishes; each key takes some of them.
var Finishes = []Finish{OpenFinish, SidingFinish, SheathingFinish, VentedFinish, UnventedFinish, SoffitFinish}

// Preservative is what lumber is treated with.
type Preservative string

// The preservatives. Treated is one that the plan does not name.
const (
	Untreated Preservative = "none"
	Treated   Preservative = "treated"
	ACQ       Preservative = "ACQ"
	CAC       Preservative = "CA-C"
	MCAC      Preservative = "mCA-C"
	CuNW      Preservative = "CuN-W"
	Borate    Preservative = "borate" // SBX/DOT, zinc borate
)

// Preservatives are the preservatives that a plan may name.
var Preservatives = []Preservative{Untreated, Treated, ACQ, CAC, MCAC, CuNW, Borate}
