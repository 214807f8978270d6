package read

import "galewright/plan"

// speeds are the units of wind speed, in mph: 1 mile = 1609.344 m exactly.
var speeds = []unit{{"mph", 1}, {"m/s", 3600 / 1609.344}, {"km/h", 1000 / 1609.344}}

// siteKeys fill the wind basis.
var siteKeys = []binding[plan.Site]{
	field("wind_speed", "speed", `"150 mph"`, "basic wind speed V, 3 s gust, in mph, m/s or km/h",
		func(v value) (float64, bool) { return v.quantity(speeds) }, func(s *plan.Site) *float64 { return &s.WindSpeed }).within(50, 300).usual(90, 200).must(),
	choiceKey("exposure", plan.Exposures, "exposure category", func(s *plan.Site) *plan.Exposure { return &s.Exposure }).must(),
	choiceKey("risk", plan.Risks, "risk category", func(s *plan.Site) *plan.Risk { return &s.Risk }).orWord(string(plan.RiskII)),
	choiceKey("edition", plan.Editions, "edition of ASCE 7", func(s *plan.Site) *plan.Edition { return &s.Edition }).orWord(string(plan.ASCE722)),
	choiceKey("enclosure", plan.Enclosures, "enclosure class; a window broken in a storm makes a house partially enclosed",
		func(s *plan.Site) *plan.Enclosure { return &s.Enclosure }).orWord(string(plan.Enclosed)),
	choiceKey("procedure", plan.Procedures, "wind procedure of ASCE 7: directional (chapter 27) or envelope (chapter 28, low-rise buildings only)",
		func(s *plan.Site) *plan.Procedure { return &s.Procedure }).otherwise("what the building allows; where it allows both, the larger of both at each joint"),
	numberKey("kzt", "1.0", 1, 3, "topographic factor", func(s *plan.Site) *float64 { return &s.Kzt }).or(1.0, "1.0"),
	custom("elevation", "length", `"8'"`, "height of grade above sea level", func(v value, s *plan.Site) {
		if in, ok := v.length(); ok {
			s.Elevation = in / 12
		}
	}).within(-1200, 180000).or("0'", `"0'"`),
	field("shore", "distance", `"1800 ft"`, "distance of salt water, in ft, mi, m or km; left out, it is reported as a blank",
		value.distance, func(s *plan.Site) *float64 { return &s.Shore }),
}

// distance reads a distance of more than 0, ft.
func (v value) distance() (float64, bool) {
	ft, ok := v.quantity(distances)
	if ok && ft <= 0 {
		v.bad("out-of-range", "", "must be more than 0")
	}
	return ft, ok && ft > 0
}

// distances are the units of a distance, in ft: 1 mile = 5,280 ft and 1 ft =
// 0.3048 m exactly.
var distances = []unit{{"ft", 1}, {"mi", 5280}, {"m", 1 / 0.3048}, {"km", 1000 / 0.3048}}

// assume notes which keys of the site the plan left out.
func assume(s *plan.Site, given func(key string) bool) {
	for _, k := range siteKeys {
		if !given(k.Name) && k.fallback != nil {
			s.Assumed = append(s.Assumed, plan.Assumption{Key: k.Name, Value: k.Default})
		}
	}
}
