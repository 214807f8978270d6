package model

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// jsonMember and the types below fix the JSON form; the schema says what each
// key means.
type jsonMember struct {
	ID      string      `json:"id"`
	Role    string      `json:"role"`
	Wall    string      `json:"wall,omitempty"`
	Level   string      `json:"level,omitempty"`
	Roof    string      `json:"roof,omitempty"`
	Opening string      `json:"opening,omitempty"`
	Section jsonSection `json:"section"`
	Species string      `json:"species"`
	Length  inch        `json:"length_in"`
	Axis    [2]point    `json:"axis_in"`
	Solids  []jsonSolid `json:"solids"`
}

type jsonSection struct {
	Text    string `json:"text"`
	Plies   int    `json:"plies"`
	Breadth inch   `json:"breadth_in"`
	Depth   inch   `json:"depth_in"`
}

// jsonSolid is a convex part: its corners each once, its faces by their
// numbers.
type jsonSolid struct {
	Vertices []point `json:"vertices_in"`
	Faces    [][]int `json:"faces"`
}

type jsonJoint struct {
	ID      string     `json:"id"`
	Kind    string     `json:"kind"`
	Host    string     `json:"host"`
	Wall    string     `json:"wall,omitempty"`
	Level   string     `json:"level,omitempty"`
	Roof    string     `json:"roof,omitempty"`
	Station inch       `json:"station_in"`
	At      point      `json:"at_in"`
	Members []string   `json:"members"`
	Below   bool       `json:"below"`
	Gap     inch       `json:"gap_in"`
	Offset  inch       `json:"offset_in"`
	Seat    string     `json:"seat,omitempty"`
	Share   inch       `json:"share_in"`
	Roofed  *jsonShare `json:"roof_share,omitempty"`
}

type jsonShare struct {
	Run   inch `json:"run_in"`
	Rise  inch `json:"rise_over_run"`
	Width inch `json:"width_in"`
}

func membersOf(h *framing.House) []jsonMember {
	out := make([]jsonMember, len(h.Members))
	for i, m := range h.Members {
		out[i] = jsonMember{
			ID: m.ID, Role: string(m.Role), Wall: wallName(m.Wall), Level: levelName(m.Level), Roof: roofName(m.Roof),
			Section: jsonSection{m.Section.Text, max(m.Section.Ply, 1), inch(m.Section.Breadth), inch(m.Section.Depth)},
			Species: h.Plan.Lumber.Species, Length: inch(m.Length), Axis: [2]point{at(m.A), at(m.B)}, Solids: []jsonSolid{},
		}
		if m.Opening != nil {
			out[i].Opening = m.Opening.Name
		}
		for _, s := range m.Solid {
			if !s.Empty() {
				out[i].Solids = append(out[i].Solids, solidOf(s))
			}
		}
	}
	return out
}

// solidOf numbers the corners of a solid; those within a hair of each other
// are one.
func solidOf(s geom.Solid) jsonSolid {
	out := jsonSolid{Vertices: []point{}, Faces: make([][]int, len(s.Faces))}
	var seen []geom.Vec3
	number := func(p geom.Vec3) int {
		for i, q := range seen {
			if p.Sub(q).Len() < geom.Eps {
				return i
			}
		}
		seen = append(seen, p)
		out.Vertices = append(out.Vertices, at(p))
		return len(seen) - 1
	}
	for i, loop := range s.Faces {
		for _, p := range loop {
			out.Faces[i] = append(out.Faces[i], number(p))
		}
	}
	return out
}

func jointsOf(h *framing.House) []jsonJoint {
	out := make([]jsonJoint, len(h.Joints))
	for i, j := range h.Joints {
		out[i] = jsonJoint{
			ID: j.ID, Kind: string(j.Kind), Host: j.HostName(), Wall: wallName(j.Wall), Level: levelName(j.Level), Roof: roofName(j.Roof),
			Station: inch(j.Station), At: at(j.At), Members: ids(j.Members), Below: j.Below, Gap: inch(j.Gap), Offset: inch(j.Offset),
			Seat: string(j.Seat), Share: inch(j.Tributary),
		}
		if s := j.Share; s != nil {
			out[i].Roofed = &jsonShare{inch(s.Run), inch(s.Tan), inch(s.Width)}
		}
	}
	return out
}

func ids(members []*framing.Member) []string {
	out := make([]string, len(members))
	for i, m := range members {
		out[i] = m.ID
	}
	return out
}

func wallName(w *plan.Wall) string {
	if w == nil {
		return ""
	}
	return w.Name
}

func levelName(l *plan.Level) string {
	if l == nil {
		return ""
	}
	return l.Name
}

func roofName(r *plan.Roof) string {
	if r == nil {
		return ""
	}
	return r.Name
}
