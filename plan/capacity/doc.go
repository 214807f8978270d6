// Package capacity tells what the hardware at a joint holds: the maker's
// allowable load where the catalog gives one, else the least of nails, bolts,
// steel, rod and washer by the equations of package timber. It knows pieces
// and wood, and nothing of wind or of how force comes to a joint. Values are
// pounds at allowable stress level and wind duration; lengths are inches.
package capacity
