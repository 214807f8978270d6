package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"galewright/plan/length"
)

// sheet is one gauge of sheet steel; 0 is not in the table.
type sheet struct {
	gauge             int
	plain, galvanized float64 // in
}

// gauges gives the thickness of sheet steel, in. Plain: Manufacturers'
// Standard Gauge for Sheet Steel, without coating. Galvanized: galvanized
// sheet gauge, zinc included. Four charts agree (transcribed).
var gauges = []sheet{
	{7, .1793, 0},
	{8, .1644, .1681},
	{9, .1495, .1532},
	{10, .1345, .1382},
	{11, .1196, .1233},
	{12, .1046, .1084},
	{13, .0897, .0934},
	{14, .0747, .0785},
	{15, .0673, .0710},
	{16, .0598, .0635},
	{17, .0538, .0575},
	{18, .0478, .0516},
	{19, .0418, .0456},
	{20, .0359, .0396},
	{22, .0299, .0336},
	{24, .0239, .0276},
	{26, .0179, .0217},
}

// Thickness returns the thickness, in, of steel written as a gauge ("20 ga")
// or as a length ("0.036in"), and the gauge when there is one. The plain
// table is the default even for zinc-coated hardware: strength comes from the
// steel, and the plain gauge is the thickness under the zinc.
func Thickness(text string, galvanized bool) (in float64, gauge string, err error) {
	number, ok := strings.CutSuffix(strings.TrimSpace(text), "ga")
	if !ok {
		in, err = length.Parse(text)
		if err != nil {
			return 0, "", fmt.Errorf(`%q is not a thickness; write a gauge like "20 ga" or a length like "0.036in"`, text)
		}
		if in <= 0 || in > 2 {
			return 0, "", fmt.Errorf("%q is not a thickness of hardware: it is more than 0 and up to 2 in", text)
		}
		return in, "", nil
	}
	n, err := strconv.Atoi(strings.TrimSpace(number))
	i := slices.IndexFunc(gauges, func(g sheet) bool { return g.gauge == n })
	if err != nil || i < 0 {
		return 0, "", fmt.Errorf("%q is not a gauge in the table: 7 to 20, 22, 24, 26 ga", text)
	}
	in = gauges[i].plain
	if galvanized {
		in = gauges[i].galvanized
	}
	if in == 0 {
		return 0, "", fmt.Errorf("the galvanized table has no %d ga; give the thickness in inches", n)
	}
	return in, strconv.Itoa(n), nil
}
