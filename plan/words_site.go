package plan

// Words of the wind basis, as ASCE 7 has them.

// Exposure is an exposure category.
type Exposure string

// The exposure categories.
const (
	ExposureB Exposure = "B"
	ExposureC Exposure = "C"
	ExposureD Exposure = "D"
)

// Exposures are the exposure categories that a plan may name.
var Exposures = []Exposure{ExposureB, ExposureC, ExposureD}

// Risk is a risk category.
type Risk string

// The risk categories.
const (
	RiskI   Risk = "I"
	RiskII  Risk = "II"
	RiskIII Risk = "III"
	RiskIV  Risk = "IV"
)

// Risks are the risk categories that a plan may name.
var Risks = []Risk{RiskI, RiskII, RiskIII, RiskIV}

// Edition is an edition of ASCE 7.
type Edition string

// The editions.
const (
	ASCE716 Edition = "7-16"
	ASCE722 Edition = "7-22"
)

// Editions are the editions that a plan may name.
var Editions = []Edition{ASCE716, ASCE722}

// Enclosure is an enclosure class.
type Enclosure string

// The enclosure classes of a house, that a plan may name.
const (
	Enclosed          Enclosure = "enclosed"
	PartiallyEnclosed Enclosure = "partially enclosed"
)

// The enclosure classes that are no house's: package wind alone knows them.
const (
	Open          Enclosure = "open"
	PartiallyOpen Enclosure = "partially open"
)

// Enclosures are the enclosure classes that a plan may name.
var Enclosures = []Enclosure{Enclosed, PartiallyEnclosed}

// Procedure is a procedure of ASCE 7 for the wind on the whole building.
type Procedure string

// The procedures.
const (
	Directional Procedure = "directional" // chapter 27
	Envelope    Procedure = "envelope"    // chapter 28
)

// Procedures are the procedures that a plan may ask for.
var Procedures = []Procedure{Directional, Envelope}
