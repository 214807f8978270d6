package timber

// Along is what wood bears along its grain, reference values, psi.
type Along struct {
	Ft float64 // tension
	Fv float64 // shear
}

// alongGrain is NDS 2018 Supplement Tables 4A and 4B, No. 2 lumber 2 to 4 in thick, from
// memory: of southern pine up to 2x6, deeper pieces have less; the size factor of the
// others, which is above 1 up to 2x6, is left out.
var alongGrain = map[string]Along{
	"Douglas fir-larch":       {500, 180},
	"hem-fir":                 {525, 150},
	"spruce-pine-fir":         {450, 135},
	"spruce-pine-fir (south)": {350, 135},
	"southern pine":           {600, 175},
}

// Along returns what No. 2 lumber of the species bears along its grain; ok is
// false where it is not carried here.
func (s Species) Along() (a Along, ok bool) {
	a, ok = alongGrain[s.Name]
	return a, ok
}
