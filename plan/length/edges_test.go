package length_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan/length"
)

func TestEverySpellingOfAUnit(t *testing.T) {
	// 1 ft is 12 in, 1 in is 25.4 mm (international yard and pound agreement, 1959).
	for text, in := range map[string]float64{
		"2 feet": 24, "1 foot": 12, "3ft": 36, "3'": 36,
		"5 inches": 5, "1 inch": 1, "5in": 5, `5"`: 5,
		"254mm": 10, "25.4cm": 10, "0.254m": 10, "1 foot 2 inches": 14,
		"5’ 6”": 66, `3 ¼"`: 3.25, "3¾in": 3.75, "½in": 0.5,
	} {
		got, err := length.Parse(text)
		require.NoError(t, err, text)
		assert.InDelta(t, in, got, 1e-9, text)
	}
}

func TestInchesBesideFeetEndAtTwelve(t *testing.T) {
	got, err := length.Parse(`3' 11 15/16"`)
	require.NoError(t, err)
	assert.Equal(t, 47.9375, got)
	_, err = length.Parse(`3' 12"`)
	assert.ErrorContains(t, err, "carry them over")
}

func TestTheLongestLength(t *testing.T) {
	got, err := length.Parse("10000000in") // 158 miles
	require.NoError(t, err)
	assert.Equal(t, 1e7, got)
	_, err = length.Parse("10000001in")
	assert.ErrorContains(t, err, "longer than any house")
}

func TestWhatIsNoNumber(t *testing.T) {
	for _, text := range []string{"1/in", "/2in", "1 x/2in", "a/2in", "1/bin", "1.5/2in", "1/2.5in", ". in", "3 4in", "3-in", "in", "'", "1 1in"} {
		v, err := length.Parse(text)
		assert.Error(t, err, text)
		assert.Zero(t, v, "no length comes with a fault: %s", text)
	}
	v, err := length.ParseSigned("-3/4/in")
	assert.Error(t, err)
	assert.Zero(t, v)
	v, err = length.Parse("-1in")
	assert.Error(t, err)
	assert.Zero(t, v)
}

func TestFractionsAreProper(t *testing.T) {
	for text, ok := range map[string]bool{"0/4in": true, "3/4in": true, "4/4in": false, "5/4in": false, "3/0in": false} {
		_, err := length.Parse(text)
		assert.Equal(t, ok, err == nil, text)
	}
}
