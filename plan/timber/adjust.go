package timber

import (
	"fmt"
	"strings"
)

// Factor is one adjustment factor, with the place it comes from.
type Factor struct {
	Name   string // "CD", "CM", "Ct", "Cg", "Cdelta", "Ceg", "Cdi", "Ctn"
	Value  float64
	Source string
}

// Adjust is a chain of adjustment factors, NDS 2018 Table 11.3.1, p.66
// (transcribed).
type Adjust []Factor

// Product returns the product of the chain.
func (a Adjust) Product() float64 {
	x := 1.0
	for _, f := range a {
		x *= f.Value
	}
	return x
}

// String shows the factors that are not 1: "CD 1.6 x Ctn 0.83".
func (a Adjust) String() string {
	var parts []string
	for _, f := range a {
		if f.Value != 1 {
			parts = append(parts, fmt.Sprintf("%s %s", f.Name, trim(f.Value)))
		}
	}
	if parts == nil {
		return "no factor"
	}
	return strings.Join(parts, " x ")
}

// Duration is a load duration, NDS 2018 Table 2.3.2, p.11 (transcribed).
type Duration float64

// The load durations; connections are capped at that of wind.
const (
	Permanent    Duration = 0.9
	TenYears     Duration = 1.0
	TwoMonths    Duration = 1.15
	SevenDays    Duration = 1.25
	WindDuration Duration = 1.6
)

// Condition is the service condition of a nailed joint.
type Condition struct {
	Duration    Duration
	WetMade     bool    // moisture over 19 % when made
	WetUse      bool    // moisture over 19 % in service
	Temperature float64 // sustained, degrees F; 0 = ordinary
	EndGrain    bool
	Diaphragm   bool // nails of a diaphragm or shear wall
	ToeNail     bool
	ForWithdraw bool // the chain of W instead of Z
}

// Chain returns the factors of a nail of diameter under 1/4 in: Cg and
// Cdelta are then 1 (NDS 2018 11.3.6, 12.5.1; transcribed).
func (c Condition) Chain() Adjust {
	a := Adjust{
		{"CD", min(float64(c.Duration), 1.6), "NDS 2018 Table 2.3.2"},
		{"CM", c.moisture(), "NDS 2018 Table 11.3.3"},
		{"Ct", c.temperature(), "NDS 2018 Table 11.3.4"},
	}
	if c.ForWithdraw {
		return append(a, Factor{"Ceg", pick(c.EndGrain, 0, 1), "NDS 2018 12.2.3.3"},
			Factor{"Ctn", pick(c.ToeNail, 0.67, 1), "NDS 2018 12.5.4"})
	}
	return append(a,
		Factor{"Cg", 1, "NDS 2018 11.3.6, D < 1/4 in"},
		Factor{"Cdelta", 1, "NDS 2018 12.5.1, D < 1/4 in"},
		Factor{"Ceg", pick(c.EndGrain, 0.67, 1), "NDS 2018 12.5.2.2"},
		Factor{"Cdi", pick(c.Diaphragm, 1.1, 1), "NDS 2018 12.5.3"},
		Factor{"Ctn", pick(c.ToeNail, 0.83, 1), "NDS 2018 12.5.4"})
}

func (c Condition) moisture() float64 {
	if c.ForWithdraw {
		return pick(c.WetMade != c.WetUse && !c.ToeNail, 0.25, 1)
	}
	return pick(c.WetMade || c.WetUse, 0.7, 1)
}

func (c Condition) temperature() float64 {
	switch {
	case c.Temperature <= 100:
		return 1
	case c.Temperature <= 125:
		return pick(c.WetUse, 0.7, 0.8)
	}
	return pick(c.WetUse, 0.5, 0.7)
}

func pick(yes bool, a, b float64) float64 {
	if yes {
		return a
	}
	return b
}
