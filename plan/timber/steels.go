package timber

// Steels beyond A653 SS Gr 33 and A36, psi.
var (
	// Gr50 is ASTM A653 SS Grade 50 class 1 (from memory).
	Gr50 = Steel{"ASTM A653 SS Gr 50 class 1", 50_000, 65_000}
	// A240 is ASTM A240 304 and 316, sheet of stainless steel: Fy from memory; Fu,
	// which is 75 ksi (from memory), is taken no higher than that of Gr33.
	A240 = Steel{"ASTM A240 304 or 316", 30_000, 45_000}
	// A307 is ASTM A307, bolts of its lower grade: Fu 60 ksi (second-hand). It has no yield
	// strength by its name; 36 ksi is from memory.
	A307 = Steel{"ASTM A307", 36_000, 60_000}
	// F1554 are the three grades of anchor rods, ASTM F1554 (from memory).
	F1554Gr36  = Steel{"ASTM F1554 Gr 36", 36_000, 58_000}
	F1554Gr55  = Steel{"ASTM F1554 Gr 55", 55_000, 75_000}
	F1554Gr105 = Steel{"ASTM F1554 Gr 105", 105_000, 125_000}
)
