package model

import (
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/schedule"
	"galewright/plan/steel"
)

type jsonPiece struct {
	Tag       string         `json:"tag"`
	Number    int            `json:"number"`
	Mark      string         `json:"mark"`
	Kind      string         `json:"kind"`
	Joint     string         `json:"joint"`
	Phase     string         `json:"phase"`
	Face      string         `json:"face"`
	By        string         `json:"by"`
	Cut       inch           `json:"cut_in"`
	Plates    []jsonPlate    `json:"plates"`
	Ends      []jsonEnd      `json:"ends"`
	Fasteners []jsonFastener `json:"fasteners"`
	Rods      []jsonRod      `json:"rods"`
	Over      []string       `json:"over"`
	Slots     []jsonSlot     `json:"slots"`
}

type jsonPlate struct {
	Band      int     `json:"band"`
	Corners   []point `json:"corners_in"`
	Normal    point   `json:"normal"`
	Thickness inch    `json:"thickness_in"`
}

type jsonEnd struct {
	Part     string `json:"part"`
	Fastener string `json:"fastener"`
	Count    int    `json:"count"`
	Driven   int    `json:"driven"` // less than count where a flange has no wood
}

type jsonFastener struct {
	End      int       `json:"end"`
	Plate    int       `json:"plate"`
	Head     point     `json:"head_in"`
	Tip      point     `json:"tip_in"`
	Diameter inch      `json:"diameter_in"`
	Stop     inch      `json:"stop_in,omitempty"` // from its head to where another one is in its way
	Runs     []jsonRun `json:"in"`
}

type jsonRun struct {
	Member string `json:"member"`
	Length inch   `json:"length_in"`
}

type jsonRod struct {
	Axis     [2]point       `json:"axis_in"`
	Diameter inch           `json:"diameter_in"`
	Cut      inch           `json:"cut_in"`
	Need     inch           `json:"needed_in,omitempty"`
	Passes   []jsonPass     `json:"passes"`
	Ends     [2]jsonBearing `json:"bearings"`
}

type jsonPass struct {
	Member string `json:"member"`
	Length inch   `json:"length_in"`
	Hole   inch   `json:"hole_in"`
}

// jsonSlot is a hole of a strap in a member that it passes.
type jsonSlot struct {
	Member string  `json:"member"`
	At     point   `json:"at_in"`
	Length inch    `json:"length_in"`
	Along  inch    `json:"along_in"`
	Across inch    `json:"across_in"`
	Left   [2]inch `json:"left_in"`
}

type jsonBearing struct {
	Kind    string `json:"kind"`
	At      point  `json:"at_in"`
	Member  string `json:"member,omitempty"`
	Area    inch   `json:"area_in2"`
	Nuts    int    `json:"nuts"`
	Washers int    `json:"washers"`
	Side    inch   `json:"washer_side_in,omitempty"`
}

func piecesOf(s *steel.Steel, count *schedule.Schedule) []jsonPiece {
	out := make([]jsonPiece, len(s.Bodies))
	for i, b := range s.Bodies {
		p := b.Piece
		by, pos := p.By()
		out[i] = jsonPiece{
			Tag: p.Tag, Number: count.Number(p.Item.Mark), Mark: p.Item.Mark, Kind: string(p.Item.Kind.Name), Joint: p.Joint.ID,
			Phase: phase(p.Item), Face: string(p.Face), By: by + ", " + pos.String(), Cut: inch(p.Cut),
			Plates: platesOf(b), Ends: endsOf(b), Fasteners: fastenersOf(b), Rods: []jsonRod{}, Over: ids(b.Over), Slots: []jsonSlot{},
		}
		for _, x := range b.Slots {
			out[i].Slots = append(out[i].Slots, jsonSlot{x.Member.ID, at(x.At), inch(x.Deep), inch(x.Size[0]), inch(x.Size[1]), [2]inch{inch(x.Left[0]), inch(x.Left[1])}})
		}
		for _, r := range b.Rods {
			out[i].Rods = append(out[i].Rods, rodOf(r))
		}
	}
	return out
}

func phase(it *hardware.Item) string {
	if it.Phase == nil {
		return ""
	}
	return string(it.Phase.Name)
}

func platesOf(b *steel.Body) []jsonPlate {
	out := []jsonPlate{}
	for i, band := range b.Bands {
		for _, p := range band {
			c := p.Corners()
			out = append(out, jsonPlate{i, points(c[:]), at(p.N), inch(p.Thickness)})
		}
	}
	return out
}

func endsOf(b *steel.Body) []jsonEnd {
	out := []jsonEnd{}
	for i, e := range b.Piece.Item.Ends() {
		out = append(out, jsonEnd{e.Part, e.Size.Name, e.Count, e.Count - b.Piece.LeftOut(i)})
	}
	return out
}

// fastenersOf writes a body's fasteners, the plate of each by its number among
// those of all bands.
func fastenersOf(b *steel.Body) []jsonFastener {
	first := make([]int, len(b.Bands)+1)
	for i, band := range b.Bands {
		first[i+1] = first[i] + len(band)
	}
	out := make([]jsonFastener, len(b.Fasteners))
	for i, f := range b.Fasteners {
		out[i] = jsonFastener{f.End, first[f.Band] + f.Plate, at(f.Head), at(f.Tip), inch(f.Diameter), inch(f.Stop), []jsonRun{}}
		for _, r := range f.Runs {
			out[i].Runs = append(out[i].Runs, jsonRun{r.Member.ID, inch(r.Len())})
		}
	}
	return out
}

func rodOf(r *steel.Rod) jsonRod {
	out := jsonRod{Axis: [2]point{at(r.A), at(r.B)}, Diameter: inch(r.Diameter), Cut: inch(r.Length()), Need: inch(r.Need), Passes: []jsonPass{}}
	for _, p := range r.Passes {
		// What lies deeper on the rod's line than it is cut is not passed.
		if l := min(p.To, r.Length()) - p.From; l > geom.Eps {
			out.Passes = append(out.Passes, jsonPass{p.Member.ID, inch(l), inch(r.Hole())})
		}
	}
	for i, e := range r.Ends {
		out.Ends[i] = jsonBearing{Kind: string(e.Kind), At: at(e.At), Member: idOf(e.Member), Area: inch(e.Area), Nuts: e.Nuts, Side: inch(e.Washer)}
		if e.Kind == steel.OnWasher {
			out.Ends[i].Washers = 1
		}
	}
	return out
}

func idOf(m *framing.Member) string {
	if m == nil {
		return ""
	}
	return m.ID
}
