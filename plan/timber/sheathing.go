package timber

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan/source"
)

// Panel is one row of the sheathed shear wall table: nominal unit shears at
// edge nailing of 6, 4, 3 and 2 in, lb/ft.
type Panel struct {
	Grade     string // "structural I" or "sheathing"
	Thickness string // "7/16"
	Nail      string // penny size of a common nail
	Nailing   float64
	Wind      [4]float64
	Seismic   [4]float64
	// OSB and Plywood are the apparent shear stiffness Ga with either, kip/in; 0
	// where it was not read.
	OSB, Plywood [4]float64
}

// edges are the columns of the table, in.
var edges = [4]float64{6, 4, 3, 2}

// panels is SDPWS 2008/2015 Table 4.3A for framing of G 0.50 or more, wood
// structural panels (read; two transcriptions agree where the scan is
// blurred). Nailing is the least penetration into framing, in. The 2021
// edition was not read; its single column is the wind column here by two
// transcriptions. Ga is of the same table (transcribed), its rows for 3/8 in
// sheathing not seen.
var panels = []Panel{
	{"structural I", "5/16", "6d", 1.25, [4]float64{560, 840, 1090, 1430}, [4]float64{400, 600, 780, 1020}, [4]float64{13, 18, 23, 35}, [4]float64{10, 13, 16, 22}},
	{"structural I", "3/8", "8d", 1.375, [4]float64{645, 1010, 1290, 1710}, [4]float64{460, 720, 920, 1220}, [4]float64{19, 24, 30, 43}, [4]float64{14, 17, 20, 24}},
	{"structural I", "7/16", "8d", 1.375, [4]float64{715, 1105, 1415, 1875}, [4]float64{510, 790, 1010, 1340}, [4]float64{16, 21, 27, 40}, [4]float64{13, 16, 19, 24}},
	{"structural I", "15/32", "8d", 1.375, [4]float64{785, 1205, 1540, 2045}, [4]float64{560, 860, 1100, 1460}, [4]float64{14, 18, 24, 37}, [4]float64{11, 14, 17, 23}},
	{"structural I", "15/32", "10d", 1.5, [4]float64{950, 1430, 1860, 2435}, [4]float64{680, 1020, 1330, 1740}, [4]float64{22, 29, 36, 51}, [4]float64{16, 20, 22, 28}},
	{"sheathing", "5/16", "6d", 1.25, [4]float64{505, 755, 980, 1260}, [4]float64{360, 540, 700, 900}, [4]float64{13, 18, 24, 37}, [4]float64{9.5, 12, 14, 18}},
	{"sheathing", "3/8", "6d", 1.25, [4]float64{560, 840, 1090, 1430}, [4]float64{400, 600, 780, 1020}, [4]float64{}, [4]float64{}},
	{"sheathing", "3/8", "8d", 1.375, [4]float64{615, 895, 1150, 1485}, [4]float64{440, 640, 820, 1060}, [4]float64{}, [4]float64{}},
	{"sheathing", "7/16", "8d", 1.375, [4]float64{670, 980, 1260, 1640}, [4]float64{480, 700, 900, 1170}, [4]float64{15, 22, 28, 42}, [4]float64{11, 14, 17, 21}},
	{"sheathing", "15/32", "8d", 1.375, [4]float64{730, 1065, 1370, 1790}, [4]float64{520, 760, 980, 1280}, [4]float64{13, 19, 25, 39}, [4]float64{10, 13, 15, 20}},
	{"sheathing", "15/32", "10d", 1.5, [4]float64{870, 1290, 1680, 2155}, [4]float64{620, 920, 1200, 1540}, [4]float64{22, 30, 37, 52}, [4]float64{14, 17, 19, 23}},
	{"sheathing", "19/32", "10d", 1.5, [4]float64{950, 1430, 1860, 2435}, [4]float64{680, 1020, 1330, 1740}, [4]float64{19, 26, 33, 48}, [4]float64{13, 16, 18, 22}},
}

// Sheathing asks for a unit shear.
type Sheathing struct {
	Grade     string // "" = "sheathing"
	Thickness string
	Nail      string  // "8d", "8d common"
	Edge      float64 // nailing of the panel edges, on center, in
	G         float64 // specific gravity of the framing
	BothFaces bool    // the same sheathing on both faces
	Seismic   bool
	Edition   int // of SDPWS: 2008, 2015 or 2021
}

// UnitShear is an allowable unit shear and what it is made of.
type UnitShear struct {
	Nominal float64 // of one face, lb/ft
	Species float64 // factor for framing of lower specific gravity
	Faces   float64 // 1 or 2
	Divisor float64 // of the edition, nominal to allowable
	Allow   float64 // lb/ft
	Row     Panel
	Column  float64 // edge nailing of the column used, in
	Table   string  // "SDPWS 2015 Table 4.3A"
	Source  string  // the same with the column, the grade, and what was not read
}

// UnitShear looks up and adjusts the allowable unit shear. An edge spacing
// between two columns takes the wider spacing's value; wider than 6 in is an
// error.
func (s Sheathing) UnitShear() (UnitShear, error) {
	row, err := s.row()
	if err != nil {
		return UnitShear{}, err
	}
	col := -1
	for i, e := range edges {
		if s.Edge <= e+1e-9 {
			col = i
		}
	}
	if col < 0 {
		return UnitShear{}, fmt.Errorf("edge nailing of %s in is wider than the table's 6 in", trim(s.Edge))
	}
	u := UnitShear{Nominal: row.Wind[col], Row: row, Column: edges[col], Species: SpeciesFactor(s.G), Faces: 1, Divisor: 2}
	column := "wind"
	if s.Seismic {
		column, u.Nominal = "seismic", row.Seismic[col]
		if s.Edition >= 2021 {
			column, u.Nominal, u.Divisor = "wind", row.Wind[col], 2.8
		}
	}
	u.Table, u.Source = s.cite(column)
	if s.BothFaces {
		u.Faces = 2
	}
	u.Allow = u.Nominal * u.Species * u.Faces / u.Divisor
	return u, nil
}

// cite names the table by the edition that was read.
func (s Sheathing) cite(column string) (table, from string) {
	table = "SDPWS 2015 Table 4.3A"
	from = fmt.Sprintf("%s, %s column (%s", table, column, source.Read)
	if s.Edition >= 2021 {
		from += fmt.Sprintf("; %d not read", s.Edition)
	}
	return table, from + ")"
}

func (s Sheathing) row() (Panel, error) {
	grade := s.Grade
	if grade == "" {
		grade = "sheathing"
	}
	penny, kind, _ := strings.Cut(strings.TrimSpace(s.Nail), " ")
	var have []string
	for _, p := range panels {
		if !strings.EqualFold(p.Grade, grade) {
			continue
		}
		if p.Thickness == strings.TrimSuffix(strings.TrimSpace(s.Thickness), "in") && p.Nail == penny && (kind == "" || kind == "common") {
			return p, nil
		}
		have = append(have, p.Thickness+" with "+p.Nail)
	}
	return Panel{}, fmt.Errorf("no unit shear is tabulated for %s %s with %s nails; there are %s",
		grade, s.Thickness, s.Nail, strings.Join(have, ", "))
}

// SpeciesFactor returns the specific gravity adjustment of sheathed walls and
// diaphragms, 1 - (0.5 - G), at most 1 (SDPWS 2021
// Table 4.3A footnote, transcribed).
func SpeciesFactor(g float64) float64 { return math.Min(1, 1-(0.5-g)) }
