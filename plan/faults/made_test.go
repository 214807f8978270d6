package faults_test

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
	"galewright/plan/placement"
)

// made are faults that the reader leaves no way for: those of a plan that a
// program makes. Each spoils the plan of the base.
var made = map[plan.Code]func(*plan.Plan){
	"bad-number":       func(p *plan.Plan) { p.Items[1].Length = math.NaN() },
	"bad-pattern":      func(p *plan.Plan) { p.Items[1].Fasteners[0].Rows = -1 },
	"bad-roof":         func(p *plan.Plan) { p.Roofs[0].Area[1] = p.Roofs[0].Area[0] },
	"floor-heights":    func(p *plan.Plan) { p.Levels[1].Floor += 2 },
	"girder-too-short": func(p *plan.Plan) { p.Girders[0].To = p.Girders[0].From },
	"beam-post-no-room": func(p *plan.Plan) {
		p.Beams = []*plan.FloorBeam{{Name: "B1", Level: p.Levels[0], From: geom.Vec2{Y: 96}, To: geom.Vec2{X: 288, Y: 96}, Posts: []float64{96}, Member: plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 100}, Post: plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 3.5}}}
	},
	"header-missing":      func(p *plan.Plan) { p.Walls[0].Openings[0].Header = plan.Lumber{} },
	"load-without-source": func(p *plan.Plan) { p.Items[1].Load = plan.Load{Uplift: 523} },
	"mark-twice":          func(p *plan.Plan) { p.Items = append(p.Items, p.Items[0]) },
	"no-mark":             func(p *plan.Plan) { p.Items[0].Mark = "" },
	"opening-no-size":     func(p *plan.Plan) { p.Walls[0].Openings[0].Width = 0 },
	"pile-off-girder":     func(p *plan.Plan) { p.Girders[0].Piles = []float64{999} },
	"post-size":           func(p *plan.Plan) { p.Walls[0].Start.Post = 7 },
	"porch-no-size": func(p *plan.Plan) {
		p.Porches = []*plan.Porch{{Name: "south", From: geom.Vec2{Y: -96}, To: geom.Vec2{X: 1, Y: -96}, Top: 108}}
	},
	"post-off-beam": func(p *plan.Plan) {
		p.Porches = []*plan.Porch{{
			Name: "south", From: geom.Vec2{Y: -96}, To: geom.Vec2{X: 96, Y: -96}, Top: 108, Posts: []float64{99},
			Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5},
		}}
	},
	"unknown-gauge": func(p *plan.Plan) { p.Items[1].Thickness, p.Items[1].Gauge = 0, "99 ga" },
	"unknown-nail":  func(p *plan.Plan) { p.Items[1].Fasteners[0].Nail, p.Items[1].Fasteners[0].Diameter = "spike", 0 },
	"wall-too-short": func(p *plan.Plan) {
		w := *p.Walls[0]
		w.Name, w.From, w.To = "1A", geom.Vec2{X: 96, Y: 96}, geom.Vec2{X: 98, Y: 96}
		w.Exterior, w.Openings, w.Shear = false, nil, nil
		p.Walls = append(p.Walls, &w)
	},
	"walls-clockwise": func(p *plan.Plan) {
		for _, w := range p.Walls[4:] {
			w.From, w.To = w.To, w.From
		}
	},
	"no-joints": func(p *plan.Plan) {
		p.Walls, p.Roofs, p.Girders, p.Rules, p.Items = nil, nil, nil, nil, nil
	},
	"bad-wind-basis": func(p *plan.Plan) { p.Site.WindSpeed = -1 },
}

// ofMade tells what the stages tell of a plan made by a program.
func ofMade(p *plan.Plan) plan.Diagnostics {
	r, ds := pipeline.From(p)
	_, more := r.Loads()
	return append(ds, more...)
}

// bare are faults of houses that no plan frames to: each takes from the house
// of the base, with edits, what framing gives it.
var bare = map[plan.Code]struct {
	edit string // of the base plan
	bend func(*framing.House)
}{
	"joint-without-member":   {"", stripped(plan.StudBase)},
	"corner-of-one":          {oneMore(plan.WallCorner, "foot-strap"), oneWalled},
	"nothing-below":          {oneMore(plan.SoleRim, "foot-strap"), stripped(plan.SoleRim, plan.BottomPlate)},
	"stud-none-below":        {oneMore(plan.StudStud, "foot-strap"), noneBelow},
	"no-rafter":              {overRidge, stripped(plan.RafterRidge, plan.Ridge)},
	"header-without-king":    {"", stripped(plan.OpeningHead, plan.Header)},
	"rafter-without-support": {"", func(h *framing.House) { h.Joints = without(h.Joints, plan.RafterPlate) }},
}

// overRidge is an edit that straps the ridge.
const overRidge = `
+ [[item]]
+ mark = "over-ridge"
+ kind = "ridge strap"
+ length = "24in"
+ width = "1 3/8in"
+ thickness = "19 ga"
+ nails = { type = "10d x 1 1/2", each_end = 7 }
+ [[rule]]
+ at = "rafter-ridge"
+ use = "over-ridge"
`

// oneMore is an edit that adds a rule.
func oneMore(at plan.JointKind, use string) string {
	return "+ [[rule]]\n+ at = \"" + string(at) + "\"\n+ use = \"" + use + "\"\n"
}

// stripped leaves each joint of a kind the first of its members that has one
// of the roles, or none.
func stripped(kind plan.JointKind, roles ...plan.Role) func(*framing.House) {
	return func(h *framing.House) {
		for _, j := range h.Joints {
			if j.Kind != kind {
				continue
			}
			if i := slices.IndexFunc(j.Members, func(m *framing.Member) bool { return slices.Contains(roles, m.Role) }); i >= 0 {
				j.Members = j.Members[i : i+1]
			} else {
				j.Members = nil
			}
		}
	}
}

// oneWalled leaves each corner the members of its own wall.
func oneWalled(h *framing.House) {
	for _, j := range h.Joints {
		if j.Kind == plan.WallCorner {
			j.Members = slices.DeleteFunc(slices.Clone(j.Members), func(m *framing.Member) bool { return m.Wall != j.Wall })
		}
	}
}

// noneBelow takes the wall below from each stud.
func noneBelow(h *framing.House) {
	for _, j := range h.Joints {
		j.Below = j.Below && j.Kind != plan.StudStud
	}
}

// without leaves joints of a kind out.
func without(joints []*framing.Joint, kind plan.JointKind) []*framing.Joint {
	return slices.DeleteFunc(slices.Clone(joints), func(j *framing.Joint) bool { return j.Kind == kind })
}

// ofBare tells what the stages from placement on tell of a house.
func ofBare(p *plan.Plan, bend func(*framing.House)) plan.Diagnostics {
	h, ds := framing.Frame(p)
	bend(h)
	c, more := hardware.New(p.Items)
	ds = append(ds, more...)
	placed, more := placement.Place(h, c)
	ds = append(ds, more...)
	if ds.Errors() {
		return ds
	}
	_, more = loadpath.Run(placed)
	return append(ds, more...)
}
