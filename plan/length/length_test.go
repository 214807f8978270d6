package length_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan/length"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		in   float64
	}{
		{`12' 3 1/2"`, 147.5},
		{`12'-3 1/2"`, 147.5},
		{`12'3 1/2"`, 147.5},
		{`12' 3-1/2"`, 147.5},
		{`12' 3.5"`, 147.5},
		{`12ft 3 1/2in`, 147.5},
		{`12′ 3½″`, 147.5},
		{`12' 3''`, 147},
		{`147.5in`, 147.5},
		{`9' 1 1/8"`, 109.125},
		{`12 7/8in`, 12.875},
		{`1/2in`, 0.5},
		{`1/2"`, 0.5},
		{`28'`, 336},
		{`0'`, 0},
		{`-0'`, 0},
		{` 5' 4" `, 64},
		{`3744mm`, 3744 / 25.4},
		{`3.744m`, 3744 / 25.4},
		{`374.4 cm`, 3744 / 25.4},
		{`25.4mm`, 1},
		{`2.54cm`, 1},
		{`0.0254m`, 1},
		{`1.5'`, 18},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := length.Parse(c.text)
			require.NoError(t, err)
			require.InDelta(t, c.in, got, 1e-9)
			require.False(t, math.Signbit(got))
		})
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ text, why string }{
		{`12`, "has no unit; write 12', 12in or 12mm"},
		{`3 1/2`, "has no unit"},
		{``, "is not a length"},
		{`-3'`, "is negative"},
		{`12' 3`, "lacks the inch mark"},
		{`12' 14"`, "carry them over"},
		{`3/2in`, "not less than 1"},
		{`1/0in`, "is not a length"},
		{`3" 4"`, "is not a length"},
		{`3" 4'`, "is not a length"},
		{`3mm 4in`, "is not a length"},
		{`5' 4" 3"`, "is not a length"},
		{`1.5 1/2in`, "is not a length"},
		{`1..5in`, "is not a length"},
		{`5 furlong`, "unknown unit"},
		{`two feet`, "is not a length"},
		{`1e9in`, "unknown unit"},
		{`99999999999in`, "longer than any house"},
		{`--3in`, "is not a length"},
		{`nan in`, "is not a length"},
	} {
		t.Run(c.text, func(t *testing.T) {
			_, err := length.Parse(c.text)
			require.ErrorContains(t, err, c.why)
		})
	}
}

func TestParseSignedTakesCoordinatesWestAndSouth(t *testing.T) {
	got, err := length.ParseSigned(`-5' 4"`)
	require.NoError(t, err)
	require.Equal(t, -64.0, got)
}

func TestFeet(t *testing.T) {
	for _, c := range []struct {
		in   float64
		text string
	}{
		{147.5, `12'-3 1/2"`},
		{7.25, `7 1/4"`},
		{0.5, `1/2"`},
		{0, `0"`},
		{12, `1'-0"`},
		{336, `28'-0"`},
		{12.0625, `1'-0 1/16"`},
		{11.99, `1'-0"`},            // carries into feet
		{109.125, `9'-1 1/8"`},      // three plates on a 104 5/8 in stud
		{0.03125, `1/16"`},          // half a mark goes up
		{0.031, `0"`},               // less than half goes down
		{-64, `-5'-4"`},             // left of the start
		{-0.01, `0"`},               // no minus nought
		{111.12, `9'-3 1/8"`},       // worked rafter, run 8 ft at 7 in 12: NAVEDTRA 14044, fig. 2-17; read
		{92.625 + 4.5, `8'-1 1/8"`}, // 92 5/8 in precut stud and three 1 1/2 in plates
	} {
		require.Equal(t, c.text, length.Feet(c.in))
	}
}

func TestMM(t *testing.T) {
	require.Equal(t, "3747 mm", length.MM(147.5)) // 147.5 × 25.4 = 3746.5
	require.Equal(t, "0 mm", length.MM(-0.001))
	require.Equal(t, "-25 mm", length.Print(-1, true))
	require.Equal(t, `1'-0"`, length.Print(12, false))
}

func TestSnap(t *testing.T) {
	require.Equal(t, 7.25, length.Snap(7.26))
	require.Equal(t, 7.3125, length.Snap(7.29))
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-16*12*10000, 16*12*10000).Draw(t, "sixteenths")
		in := float64(n) / 16
		got, err := length.ParseSigned(length.Feet(in))
		require.NoError(t, err)
		require.Equal(t, in, got)
		got, err = length.ParseSigned(length.MM(in))
		require.NoError(t, err)
		require.InDelta(t, in, got, 0.5/25.4+1e-9)
	})
}

// A running dimension must not add up its rounding: printing the true sum
// stays within half a mark of it however many bays are summed.
func TestRunningDimensionsNeverDrift(t *testing.T) {
	sum := 0.0
	for i := range 200 {
		sum += 19.2
		got, err := length.Parse(length.Feet(sum))
		require.NoError(t, err)
		require.InDelta(t, 19.2*float64(i+1), got, length.Tape/2+1e-9)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{`12' 3 1/2"`, "147.5in", "3744mm", "3.744m", "-1/2in", "12", "½″", "1/0'"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := length.ParseSigned(s)
		if err != nil {
			return
		}
		require.False(t, math.IsNaN(v) || math.Abs(v) > length.Limit)
		back, err := length.ParseSigned(length.Feet(v))
		require.NoError(t, err)
		require.InDelta(t, v, back, length.Tape/2+1e-9)
	})
}

func ExampleParse() {
	in, err := length.Parse(`9' 1 1/8"`)
	fmt.Println(in, err)
	_, err = length.Parse("12")
	fmt.Println(err)
	// Output:
	// 109.125 <nil>
	// "12" has no unit; write 12', 12in or 12mm
}

func ExampleFeet() {
	fmt.Println(length.Feet(147.5))
	// Output: 12'-3 1/2"
}
