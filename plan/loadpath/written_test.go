package loadpath

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWindJSONAgreesWithTheReport(t *testing.T) {
	r := reported(t, storm.plan())
	var b bytes.Buffer
	require.NoError(t, r.WriteWind(&b, "json"))
	var got struct {
		Uplift []struct {
			Wall    string
			Largest struct {
				Wind float64 `json:"wind_lb"`
				Dead float64 `json:"dead_lb"`
			}
			ASD float64 `json:"largest_asd_lb"`
		}
		Stories []struct {
			Story, Along string
			Total        float64 `json:"total_lb"`
			ASD          float64 `json:"asd_lb"`
			Walls        float64 `json:"walls_lb"`
			Roofs        float64 `json:"roofs_lb"`
			Above        float64 `json:"above_lb"`
		} `json:"story_shear"`
		Base []struct {
			Total float64 `json:"total_lb"`
			ASD   float64 `json:"asd_lb"`
		} `json:"foundation_shear"`
		Lines []struct {
			Story, Line, Axis string
			At                float64 `json:"at_ft"`
			Force             float64 `json:"force_lb"`
			Segments          []struct {
				Name   string
				Length float64 `json:"length_ft"`
				Share  float64
				Shear  float64 `json:"shear_lb"`
				PLF    float64 `json:"asd_plf"`
				Counts float64 `json:"counts_ft"`
			}
			Collector []struct {
				At    float64 `json:"at_ft"`
				Force float64 `json:"force_lb"`
			}
		} `json:"shear_lines"`
		Zones map[string][]struct {
			Zone     string
			External float64 `json:"external_psf"`
			Plus     float64 `json:"net_with_internal_pressure_psf"`
			Minus    float64 `json:"net_with_internal_suction_psf"`
		}
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.NotEmpty(t, got.Uplift)
	for i, u := range got.Uplift {
		assert.InDelta(t, 0.6*(u.Largest.Wind-u.Largest.Dead), u.ASD, 0.13, "each rounded to a tenth")
		assert.Equal(t, r.Uplift[i].Wall.Name, u.Wall)
	}
	require.Len(t, got.Stories, 4)
	for _, s := range got.Stories {
		assert.InDelta(t, s.Walls+s.Roofs+s.Above, s.Total, 0.31, "%s along %s", s.Story, s.Along)
		assert.InDelta(t, 0.6*s.Total, s.ASD, 0.1)
	}
	require.Len(t, got.Base, 2)
	for _, x := range got.Base {
		assert.Positive(t, x.Total)
		assert.InDelta(t, 0.6*x.Total, x.ASD, 0.1)
	}
	require.Len(t, got.Lines, 8)
	at := map[string]float64{"S": 0, "E": 40, "N": 24, "W": 0}
	for _, x := range got.Lines {
		side := x.Line[1:]
		assert.Equal(t, at[side], x.At, x.Line)
		assert.Equal(t, map[string]string{"S": "x", "N": "x", "E": "y", "W": "y"}[side], x.Axis)
		assert.Equal(t, map[string]string{"1": "first", "2": "second"}[x.Line[:1]], x.Story)
		require.Len(t, x.Segments, 1)
		g := x.Segments[0]
		want := map[string]float64{"x": (160 - 6) / 12.0, "y": (96 - 6) / 12.0}[x.Axis]
		assert.InDelta(t, want, g.Length, 0.005)
		assert.InDelta(t, want, g.Counts, 0.005)
		assert.Equal(t, 1.0, g.Share)
		assert.Equal(t, x.Force, g.Shear)
		assert.InDelta(t, 0.6*x.Force/want, g.PLF, 0.1)
		assert.InDelta(t, 0, x.Collector[0].Force, 0.1, "it starts at nothing")
		last := x.Collector[len(x.Collector)-1]
		assert.InDelta(t, 0, last.Force, 0.1, "and ends at nothing")
		assert.InDelta(t, map[string]float64{"x": 40, "y": 24}[x.Axis], last.At, 1.1, "at the deck's edge")
	}
	// Plus is with internal pressure, minus with suction: 0.18 q to each side.
	q := r.Basis.Envelope().QKd
	for name, zones := range got.Zones {
		require.NotEmpty(t, zones, name)
		for _, z := range zones {
			assert.InDelta(t, 0.18*q, z.External-z.Plus, 0.11, z.Zone)
			assert.InDelta(t, 0.18*q, z.Minus-z.External, 0.11, z.Zone)
		}
	}
}

func TestCheckJSONRoundsOnceAndKeepsGaps(t *testing.T) {
	r := reported(t, storm.plan())
	var b bytes.Buffer
	_, err := r.WriteCheck(&b, 1, "json")
	require.NoError(t, err)
	var got struct {
		Joints []struct {
			ID, Check, Unit, Governs, Gap string
			Demand                        float64
			Strength                      float64  `json:"demand_strength"`
			Capacity                      *float64 `json:"capacity"`
			Ratio                         *float64
			Above                         bool `json:"above_limit"`
			Terms                         []struct{ Value float64 }
			Holds                         []struct{ Value float64 } `json:"capacity_terms"`
		}
		Chains []struct {
			Line  string
			Links []struct {
				Joints, Gaps int
				Weakest      bool
			}
		}
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.Len(t, got.Joints, len(r.Links))
	for i, g := range got.Joints {
		l := r.Links[i]
		assert.InDelta(t, l.Demand, g.Demand, 0.05001)
		assert.InDelta(t, l.Strength, g.Strength, 0.05001)
		assert.Equal(t, l.Check.ID, g.Check)
		assert.Equal(t, l.Unit, g.Unit)
		known := l.Capacity != nil && l.Capacity.Unknown == ""
		require.Equal(t, known, g.Capacity != nil, l.ID)
		if known {
			assert.InDelta(t, l.Capacity.Value, *g.Capacity, 0.05001)
			assert.Len(t, g.Holds, len(l.Capacity.Terms))
		}
		if g.Ratio != nil {
			assert.InDelta(t, l.Ratio, *g.Ratio, 0.00501)
		}
		assert.Equal(t, l.Gap == "" && l.Ratio > 1, g.Above, l.ID)
		assert.Len(t, g.Terms, len(l.Terms))
	}
	require.Len(t, got.Chains, len(r.Chains))
	for i, c := range got.Chains {
		for k, x := range c.Links {
			assert.Equal(t, r.Chains[i].Weak == k, x.Weakest)
			assert.Equal(t, r.Chains[i].Links[k].Joints, x.Joints)
		}
	}
}

func TestRoundingOfOutput(t *testing.T) {
	for in, want := range map[float64]float64{12.34: 12.3, 12.36: 12.4, -0.04: 0, -12.36: -12.4, math.Inf(1): 0, math.Inf(-1): 0} {
		got := tenth(in)
		assert.Equal(t, want, got)
		assert.False(t, got == 0 && math.Signbit(got), "no minus nought")
	}
	assert.Zero(t, tenth(math.NaN()))
	assert.InDelta(t, 1.24, hundredth(1.2351), 1e-12)
}
