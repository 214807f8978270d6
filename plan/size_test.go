package plan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/hardware"
)

// Dressed sizes, dry: PS 20, American Softwood Lumber Standard (transcribed).
func TestParseLumberDressedSizes(t *testing.T) {
	for nominal, want := range map[string][2]float64{
		"1x4": {0.75, 3.5}, "2x4": {1.5, 3.5}, "2x6": {1.5, 5.5}, "2x8": {1.5, 7.25}, "2x10": {1.5, 9.25}, "2x12": {1.5, 11.25},
		"2x14": {1.5, 13.25}, "2x16": {1.5, 15.25}, "3x6": {2.5, 5.5}, "4x4": {3.5, 3.5}, "4x12": {3.5, 11.25},
		"5x6": {4.5, 5.5}, "6x6": {5.5, 5.5}, "8x8": {7.25, 7.25}, "12x12": {11.25, 11.25}, "16x16": {15, 15},
	} {
		l, err := plan.ParseLumber(nominal)
		require.NoError(t, err, nominal)
		require.Equal(t, want, [2]float64{l.Breadth, l.Depth}, nominal)
		require.Equal(t, 1, l.Ply)
	}
}

func TestParseLumber(t *testing.T) {
	for text, want := range map[string]plan.Lumber{
		"3-2x10":           {Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"},
		" 3 - 2 x 10":      {Ply: 3, Breadth: 1.5, Depth: 9.25, Text: "3-2x10"},
		"1.75x11.875":      {Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"},
		"2-1.75x11.875":    {Ply: 2, Breadth: 1.75, Depth: 11.875, Text: "2-1.75x11.875"},
		"1 3/4x11 7/8":     {Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1 3/4x11 7/8"},
		"12.0x12.0":        {Ply: 1, Breadth: 12, Depth: 12, Text: "12.0x12.0"},
		"1 1/8 x 11 7/8in": {Ply: 1, Breadth: 1.125, Depth: 11.875, Text: "1 1/8x11 7/8in"},
	} {
		l, err := plan.ParseLumber(text)
		require.NoError(t, err, text)
		require.Equal(t, want, l)
	}
	for _, text := range []string{"", "2", "2x", "x6", "2by6", "0x6", "2x99", "7-2x10", "-2x6", "2x-6", "a-2x6", "1e1x6.0", "2x6x8", "0.1x5.5", "2.5.5x3"} {
		_, err := plan.ParseLumber(text)
		require.Error(t, err, text)
	}
}

func TestThickness(t *testing.T) {
	for _, c := range []struct {
		text       string
		galvanized bool
		want       float64
	}{
		// Manufacturers' standard gauge and galvanized sheet gauge, four charts agree (transcribed).
		{"20 ga", false, .0359},
		{"20 ga", true, .0396},
		{"12ga", false, .1046},
		{"12 ga", true, .1084},
		{"16 ga", false, .0598},
		{"16 ga", true, .0635},
		{"22 ga", false, .0299},
		{"22 ga", true, .0336},
		{"7 ga", false, .1793},
		{"0.036in", false, .036},
		{"1/4in", true, .25},
	} {
		got, _, err := plan.Thickness(c.text, c.galvanized)
		require.NoError(t, err)
		require.InDelta(t, c.want, got, 1e-9)
	}
	_, _, err := plan.Thickness("7 ga", true)
	require.ErrorContains(t, err, "galvanized table has no 7 ga")
	_, _, err = plan.Thickness("0.036", false)
	require.ErrorContains(t, err, "write a gauge")
}

// The plain gauge is, rounded to mils, the thickness that NDS 2018, Table 12P
// names for its steel side plates (p. 112, transcribed).
func TestPlainGaugeIsThatOfTheNailTables(t *testing.T) {
	for gauge, want := range map[string]float64{"20 ga": .036, "18 ga": .048, "16 ga": .060, "14 ga": .075, "12 ga": .105, "11 ga": .120, "10 ga": .134, "7 ga": .179} {
		got, _, err := plan.Thickness(gauge, false)
		require.NoError(t, err)
		require.InDelta(t, want, got, 0.00051, gauge)
	}
}

func TestNailSize(t *testing.T) {
	for text, want := range map[string][2]float64{
		// NDS 2018, Table L4, p. 182 (transcribed).
		"8d": {0.131, 2.5}, "8d common": {0.131, 2.5}, "8d box": {0.113, 2.5}, "8d sinker": {0.113, 2.375},
		"10d": {0.148, 3}, "12d": {0.148, 3.25}, "16d": {0.162, 3.5}, "16d sinker": {0.148, 3.25}, "16d box": {0.135, 3.5},
		"20d": {0.192, 4}, "6d": {0.113, 2},
		// The short strap nail of IRC 2018 R602.6.1 (read): 0.148 by 1 1/2 in.
		"10d x 1 1/2": {0.148, 1.5}, "10d x 1 1/2in": {0.148, 1.5},
		// NDS 2018, Table L3, p. 182 (transcribed).
		"No. 6 x 1 1/4": {0.138, 1.25}, "No. 8 x 2": {0.164, 2}, "No. 10 x 2": {0.190, 2}, "No. 12 x 2": {0.216, 2}, "No. 14 x 2 1/2": {0.242, 2.5},
		"screw No. 14 x 2": {0.242, 2},
		"0.131 x 2 1/2":    {0.131, 2.5}, "bolt 5/8": {0.625, 0}, "bolt 5/8 x 8": {0.625, 8}, "screw 1/4 x 3": {0.25, 3}, "bolt 1 1/8 x 10": {1.125, 10},
	} {
		d, l, err := plan.NailSize(text)
		require.NoError(t, err, text)
		require.Equal(t, want, [2]float64{d, l}, text)
		n, err := hardware.ParseNail(text)
		require.NoError(t, err, text)
		require.Equal(t, want, [2]float64{n.Diameter, n.Length}, "the catalog must read %q the same", text)
	}
	for _, text := range []string{"", "9d", "6d sinker", "8d ring common", "10d x", "nail", "bolt", "0 x 1", "10d x 0", "No. 14", "No. 15 x 2", "bolt No. 14 x 2"} {
		_, _, err := plan.NailSize(text)
		require.Error(t, err, text)
	}
}
