package timber

import "strings"

// Species is a species combination of framing lumber.
type Species struct {
	Name string
	G    float64 // specific gravity, oven dry
	// FcPerp is the reference compression perpendicular to grain, psi; 0
	// where it is not carried here.
	FcPerp float64
	// E is the reference modulus of elasticity of No. 2 lumber, psi; 0 where it
	// is not carried here.
	E     float64
	alias []string
}

// species is NDS 2018 Table 12.3.3A, p.87, column G (transcribed). FcPerp is NDS 2018 Supplement Tables 4A and 4B, from
// memory: for visually graded No. 2 of each combination. E is of
// the same tables, No. 2 (transcribed).
var species = []Species{
	{"Douglas fir-larch", 0.50, 625, 1.6e6, []string{"df-l", "dfl", "douglas fir", "doug fir"}},
	{"Douglas fir-larch (north)", 0.49, 625, 0, []string{"df-l (n)", "dfln"}},
	{"Douglas fir-south", 0.46, 520, 0, []string{"df-s", "dfs"}},
	{"hem-fir", 0.43, 405, 1.3e6, []string{"hf"}},
	{"hem-fir (north)", 0.46, 405, 0, []string{"hf (n)"}},
	{"spruce-pine-fir", 0.42, 425, 1.4e6, []string{"spf"}},
	{"spruce-pine-fir (south)", 0.36, 335, 1.1e6, []string{"spf (s)", "spfs"}},
	{"southern pine", 0.55, 565, 1.4e6, []string{"sp", "syp", "southern yellow pine"}},
	{"mixed southern pine", 0.51, 565, 0, []string{"mixed sp"}},
	{"western cedars", 0.36, 425, 0, nil},
	{"western woods", 0.36, 335, 0, nil},
	{"redwood", 0.37, 0, 0, nil},
	{"eastern softwoods", 0.36, 335, 0, nil},
	{"northern species", 0.35, 350, 0, nil},
}

// SpeciesOf finds a species combination by name or common abbreviation,
// whatever the case, spaces for hyphens allowed.
func SpeciesOf(name string) (Species, bool) {
	key := func(s string) string { return strings.ReplaceAll(strings.ToLower(strings.TrimSpace(s)), "-", " ") }
	want := key(name)
	for _, s := range species {
		if key(s.Name) == want {
			return s, true
		}
		for _, a := range s.alias {
			if key(a) == want {
				return s, true
			}
		}
	}
	return Species{}, false
}

// SpeciesNames lists the names that SpeciesOf knows, in the table's order.
func SpeciesNames() []string {
	names := make([]string, len(species))
	for i, s := range species {
		names[i] = s.Name
	}
	return names
}
