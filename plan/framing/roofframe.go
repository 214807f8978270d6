package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// roofFrame frames one group of roof bodies that meet over one level.
type roofFrame struct {
	*builder
	level   *plan.Level
	bodies  []*roofBody
	of      map[*roofplan.Body]*roofBody
	roof    *roofplan.Roof
	beds    []bed
	bedsAt  *geom.Grid[*bed]
	rakes   []*rakeBed
	rakesAt *geom.Grid[*rakeBed]
	lines   []*roofLine
	linesAt *geom.Grid[*roofLine]
	rafters []*roofRafter
	sticks  []*Member                // rafters, hips, valleys, ridges and ties
	takes   map[*Member][]geom.Plane // the room that ridges, hips, valleys, rafters and fly rafters take
	runs    []*roofplan.Run
	pockets map[pocketKey][][]geom.Plane // where outlookers lie in a rafter
	ladders []*ladder                    // outlookers of the gable overhangs
	ledgers map[*roofBody][]*Member      // of a shed against a wall, parted by rake walls
	shared  []*rafterFault               // faults of rafters, told together
	bare    map[string]*bareSide         // rafters that found no plate, by side
	joints  []*Joint                     // of this roof, for their tributary lengths
	dormers []*dormer
	wings   []*wingGirder

	houseFace map[*roofplan.Face]*Face
}

// bed is a level top that rafters may bear on: the plates of a wall or the
// beam of a porch.
type bed struct {
	wall   *framedWall
	porch  *plan.Porch
	frame  geom.Frame
	column geom.Solid // its plan, as bar.column has it
	z      float64
}

// roofOver frames the bodies of a group over a level's walls.
func (b *builder) roofOver(l *plan.Level, group []*roofBody) {
	f := &roofFrame{
		builder: b, level: l, bodies: group, of: map[*roofplan.Body]*roofBody{},
		pockets: map[pocketKey][][]geom.Plane{}, bare: map[string]*bareSide{}, ledgers: map[*roofBody][]*Member{}, takes: map[*Member][]geom.Plane{},
		houseFace: map[*roofplan.Face]*Face{},
	}
	var bodies []*roofplan.Body
	for _, rb := range group {
		f.of[rb.body] = rb
		bodies = append(bodies, rb.body)
	}
	roof, faults := roofplan.New(bodies)
	for _, x := range faults {
		b.fault(plan.Diagnostic{
			Severity: plan.Error, Code: x.Code, Summary: x.Summary,
			Where: "roof " + x.Body.Name, Mend: x.Mend, Pos: f.of[x.Body].Pos,
		})
	}
	f.roof, f.runs = roof, roof.Runs()
	f.faces()
	if !f.checkTrusses() {
		return
	}
	f.findBeds()
	f.makeLines()
	f.findDormers()
	f.gables()
	f.makeRafters()
	f.trimmers()
	f.wingGirders()
	f.gableTrusses()
	f.trussRow()
	f.trussHips()
	f.valleySets()
	f.ties()
	f.eaveBlocks()
	f.ridgeJoints()
	f.jackJoints()
	f.rafterLedgers()
	f.rakeJoints()
	f.frameDormers()
	f.tributaries()
	f.tellBare()
	f.tellShared()
	f.checkStock()
	f.checkBeam()
	f.checkHigh()
	f.checkTurns()
}

// faces adds the roof's surfaces to the house.
func (f *roofFrame) faces() {
	for _, face := range f.roof.Faces {
		out := &Face{Roof: f.of[face.Body].Roof, Slope: face.Uphill().Mul(-1)}
		for i, p := range face.Outline {
			out.Outline = append(out.Outline, p.Up(face.Plane.At(p)))
			out.Edges = append(out.Edges, FaceEdge{Kind: face.Edges[i]})
		}
		f.house.Roof = append(f.house.Roof, out)
		f.houseFace[face] = out
	}
}

// findBeds gathers the plates and porch beams under the roof.
func (f *roofFrame) findBeds() {
	for _, w := range f.wallGrid()(f.extent()) {
		if !carries(w.Wall, f.level) || !f.under(w.From, w.To) {
			continue
		}
		z, level := w.top, w.Top != plan.RakeTop
		if !level {
			z, level = f.highBed(w)
		}
		if !level {
			f.rakes = append(f.rakes, &rakeBed{w, column(w.frame, w.Hook, w.Length(), 0, w.Depth())})
		} else {
			s0, s1 := min(w.s0, orElse(w.caps, w.c0, w.s0)), max(w.s1, orElse(w.caps, w.c1, w.s1))
			f.beds = append(f.beds, bed{
				wall: w, frame: w.frame, z: z,
				column: column(w.frame, s0, s1, 0, w.Depth()),
			})
		}
	}
	for _, p := range f.plan.Porches {
		if f.under(p.From, p.To) {
			fr := geom.NewFrame(p.From, p.To)
			f.beds = append(f.beds, bed{
				porch: p, frame: fr, z: p.Top,
				column: column(fr, 0, p.To.Sub(p.From).Len(), 0, p.Beam.Width()),
			})
		}
	}
	f.bedsAt = geom.NewGrid[*bed]()
	for i := range f.beds {
		b := &f.beds[i]
		lo, hi := b.column.Bounds()
		f.bedsAt.Add(b, lo, hi, nil)
	}
	f.rakesAt = geom.NewGrid[*rakeBed]()
	for _, r := range f.rakes {
		lo, hi := r.column.Bounds()
		f.rakesAt.Add(r, lo, hi, nil)
	}
}

// extent returns the rectangle that holds all bodies with their overhangs.
func (f *roofFrame) extent() (lo, hi geom.Vec2) {
	lo, hi = f.bodies[0].reach()
	for _, rb := range f.bodies[1:] {
		a, z := rb.reach()
		lo = geom.Vec2{X: min(lo.X, a.X), Y: min(lo.Y, a.Y)}
		hi = geom.Vec2{X: max(hi.X, z.X), Y: max(hi.Y, z.Y)}
	}
	return lo, hi
}

// orElse returns a when there are caps, b otherwise.
func orElse(caps []*Member, a, b float64) float64 {
	if len(caps) > 0 {
		return a
	}
	return b
}

// highBed returns the level top of a shed's high wall.
func (f *roofFrame) highBed(w *framedWall) (z float64, ok bool) {
	for _, rb := range f.bodies {
		for i := range rb.sides {
			if rb.isHigh(i) && onSide(rb.body, i, w.From, w.To) {
				return rb.highPlate(), true
			}
		}
	}
	return 0, false
}

// under tells whether the segment lies under one of the bodies, overhangs
// included.
func (f *roofFrame) under(a, b geom.Vec2) bool {
	for _, rb := range f.bodies {
		lap := max(rb.Overhang, rb.Rake) + near
		if max(a.X, b.X) >= rb.Area[0].X-lap && min(a.X, b.X) <= rb.Area[1].X+lap &&
			max(a.Y, b.Y) >= rb.Area[0].Y-lap && min(a.Y, b.Y) <= rb.Area[1].Y+lap {
			return true
		}
	}
	return false
}

// bearing is one seat of a bar on a bed.
type bearing struct {
	notch
	bed *bed
}

// bearings returns the seats of a bar cut by planes, in order of the beds.
func (f *roofFrame) bearings(r bar, planes []geom.Plane) (out []bearing) {
	lo, hi := r.box(planes)
	for _, b := range f.bedsAt.Within(lo, hi) {
		if n, ok := r.notchOver(b.column, b.z, planes); ok {
			out = append(out, bearing{n, b})
		}
	}
	return out
}

// rakeBed is the top of a rake wall.
type rakeBed struct {
	wall   *framedWall
	column geom.Solid
}

// less returns what seats, and rake walls under it, take from a bar.
func (f *roofFrame) less(r bar, planes []geom.Plane, seats []bearing) (out [][]geom.Plane) {
	for _, s := range seats {
		out = append(out, s.notch.planes(r))
	}
	from, to := r.box(planes)
	for _, w := range f.rakesAt.Within(from, to) {
		if lo, hi, ok := r.over(w.column, planes); ok {
			out = append(out, append([]geom.Plane{r.after(lo), r.before(hi)}, w.wall.seat...))
		}
	}
	return out
}

// bareSide counts rafters that have no plate under them on one side.
type bareSide struct {
	rb    *roofBody
	side  int
	count int
	first float64
}

// noPlate notes a rafter without a plate at place p.
func (f *roofFrame) noPlate(rb *roofBody, side int, p geom.Vec2) {
	key := rb.Name + string(roofplan.SideNames[side])
	s := f.bare[key]
	along := p.X - rb.body.Lo.X
	if side == roofplan.East || side == roofplan.West {
		along = p.Y - rb.body.Lo.Y
	}
	if s == nil {
		s = &bareSide{rb: rb, side: side, first: along}
		f.bare[key] = s
	}
	s.count++
	s.first = min(s.first, along)
}

// tellBare reports the rafters that have no plate, one fault a side.
func (f *roofFrame) tellBare() {
	for _, rb := range f.bodies {
		for i, name := range roofplan.SideNames {
			s := f.bare[rb.Name+string(name)]
			if s == nil {
				continue
			}
			end := "west"
			if i == roofplan.East || i == roofplan.West {
				end = "south"
			}
			f.fault(plan.Diagnostic{
				Severity: plan.Error, Code: "rafter-without-plate",
				Summary: fmt.Sprintf("%s of roof %s %s no plate under %s", number(s.count, "rafter"), rb.Name, haveHas(s.count), themIt(s.count)),
				Where:   fmt.Sprintf("roof %s, %s side, from %s off its %s end", rb.Name, name, f.inches(s.first), end),
				Mend:    "put a wall of level " + rb.Over.Name + " or a porch beam under that side, or give the roof the area of its walls",
				Pos:     rb.Pos,
			})
		}
	}
}

func haveHas(n int) string {
	if n == 1 {
		return "has"
	}
	return "have"
}

func themIt(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

// ref returns the next number of the roof plan.
func (f *roofFrame) ref() string {
	f.refs++
	return fmt.Sprint(f.refs)
}

// addStick adds a member made of the parts of a bar.
func (f *roofFrame) addStick(m *Member, r bar, parts []geom.Solid, u0, u1 float64) *Member {
	m.Level, m.Solid, m.Length = f.level, parts, r.span(parts)
	m.A, m.B = r.point(u0), r.point(u1)
	lo, hi := m.Bounds()
	m.Z0, m.Z1 = lo.Z, hi.Z
	f.sticks = append(f.sticks, m)
	return f.member(m)
}

// tributaries gives each joint of the roof the length of its host that it
// serves: half the way to its neighbor of the same kind on either side, at the
// ends no more than half a spacing, and none beyond the ends of its wall.
func (f *roofFrame) tributaries() {
	type key struct {
		host string
		kind plan.JointKind
	}
	groups := map[key][]*Joint{}
	for _, j := range f.joints {
		k := key{j.Host, j.Kind}
		groups[k] = append(groups[k], j)
	}
	for _, list := range groups {
		for _, j := range list {
			j.Tributary = j.between(list)
		}
	}
}

// between returns the length of its host that a joint of a roof serves among
// those of its kind, in.
func (j *Joint) between(list []*Joint) float64 {
	lo, hi := j.Roof.Spacing, j.Roof.Spacing
	for _, o := range list {
		if d := o.Station - j.Station; d > near {
			hi = min(hi, d)
		} else if d < -near {
			lo = min(lo, -d)
		}
	}
	lo, hi = lo/2, hi/2
	if j.Wall != nil {
		lo, hi = min(lo, max(0, j.Station-j.Wall.Hook)), min(hi, max(0, j.Wall.Length()-j.Station))
	}
	return max(0, lo+hi)
}
