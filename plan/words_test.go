package plan_test

import (
	"go/ast"
	"go/constant"
	"go/types"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/plantest"
	"galewright/plan/timber"
	"galewright/plan/wind"
)

// isWord tells whether a type is one of the types of words of package plan.
// A code of a fault is none: package faults has the list of those.
func isWord(t types.Type) bool {
	if name := plantest.Named(t); name == "" || name == "Code" {
		return false
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsString != 0
}

// A word is spelled in package plan alone: elsewhere no string literal stands
// for one, so that a slip of the pen does not compile.
func TestWordsAreSpelledOnce(t *testing.T) {
	program := plantest.Load(t)
	require.Greater(t, len(program.Packages), 15)
	for _, p := range program.Packages {
		if p.ImportPath == "galewright/plan" {
			continue
		}
		x := program.Typed(t, p)
		for e, tv := range x.Info.Types {
			if lit, ok := e.(*ast.BasicLit); ok && lit.Value != `""` && isWord(tv.Type) {
				t.Errorf("%s: %s is a literal of %s; use its name in package plan", x.Fset.Position(lit.Pos()), lit.Value, tv.Type)
			}
		}
	}
}

// typed returns words with their type: two types may have one word.
func typed[W ~string](words []W) (out []string) {
	for _, w := range words {
		out = append(out, reflect.TypeFor[W]().Name()+" "+string(w))
	}
	return out
}

// Every word with a name can be written in a plan, but for those that no plan
// has: they are no part of its lists.
func TestEveryNamedWordIsInItsList(t *testing.T) {
	program := plantest.Load(t)
	i := slices.IndexFunc(program.Packages, func(p plantest.Package) bool { return p.ImportPath == "galewright/plan" })
	info := program.Typed(t, program.Packages[i]).Info
	var all []string
	for _, words := range [][]string{
		typed(plan.Faces), typed(plan.ItemKinds), typed(plan.Phases), typed(plan.Actions), typed(plan.RoofKinds),
		typed(plan.GableEnds), typed(plan.BoardRuns), typed(plan.EaveBlockings), typed(plan.WallTops), typed(plan.GirderSeats), typed(plan.BraceKinds), typed(plan.BeamSets), typed(plan.UnderWalls), typed(plan.Joins), typed(plan.OpeningKinds), typed(plan.FoundationKinds),
		typed(plan.Axes), typed(plan.Sides), typed(plan.DeadParts), typed(plan.Combinations), typed(plan.Distributions), typed(plan.SegmentShares),
		typed(plan.Exposures), typed(plan.Risks), typed(plan.Editions), typed(plan.Enclosures), typed(plan.Procedures), typed(plan.Roles), typed(plan.JointKinds()),
		typed(plan.Connections()), typed(plan.Drives), typed(plan.JointHosts), typed(plan.JointSheets), typed(plan.JointLies),
		typed(plan.PanelKinds), typed(plan.RoofEdges), typed(plan.Coatings), typed(plan.SaltClasses), typed(plan.Finishes), typed(plan.Preservatives),
	} {
		all = append(all, words...)
	}
	var found, beside []string
	for _, o := range info.Defs {
		c, ok := o.(*types.Const)
		if !ok || !isWord(c.Type()) {
			continue
		}
		if w := plantest.Named(c.Type()) + " " + constant.StringVal(c.Val()); slices.Contains(all, w) {
			found = append(found, c.Name())
		} else {
			beside = append(beside, c.Name())
		}
	}
	slices.Sort(beside)
	require.Equal(t, []string{"BeveledStud", "DeckRim", "FlyRafter", "Open", "Packing", "PartiallyOpen", "RailPost", "SquashBlock"}, beside)
	require.Len(t, found, len(all), "words without a name")
}

// What the reader accepts is known where it is used; roofplan holds the kinds
// of roofs.
func TestWordsOfAPlanAreKnownWhereTheyAreUsed(t *testing.T) {
	require.Equal(t, timber.SpeciesNames(), plan.Species)
	var kinds []plan.ItemKind
	for _, k := range hardware.Kinds {
		kinds = append(kinds, k.Name)
		for _, f := range append([]plan.Face{k.Face}, k.Faces...) {
			require.True(t, f == "" || slices.Contains(plan.Faces, f), "%s on %q", k.Name, f)
		}
		for _, j := range k.On {
			require.Contains(t, plan.JointKinds(), j, k.Name)
		}
	}
	require.Equal(t, plan.ItemKinds, kinds)
	var phases []plan.Phase
	for _, p := range hardware.Phases {
		phases = append(phases, p.Name)
	}
	require.Equal(t, plan.Phases, phases)
	codes := map[string]bool{}
	for _, j := range plan.JointKinds() {
		require.Len(t, j.Code(), 2)
		require.False(t, codes[j.Code()], j)
		codes[j.Code()] = true
	}
	require.Empty(t, plan.JointKind("roof-sky").Code())
	for _, edition := range plan.Editions {
		for _, exposure := range plan.Exposures {
			for _, enclosure := range plan.Enclosures {
				b := wind.Basis{Edition: edition, Exposure: exposure, Enclosure: enclosure, Speed: 150, Height: 20, Length: 40, Width: 30}
				require.NoError(t, b.Check())
			}
		}
		for _, kind := range plan.RoofKinds {
			_, err := wind.RoofFigure(edition, kind, 20, 0.5)
			require.NoError(t, err)
		}
		for _, theta := range []float64{5, 20} {
			_, err := wind.RoofFigure(edition, "dome", theta, 0.5)
			require.ErrorContains(t, err, `"dome"`)
		}
	}
	require.ErrorContains(t, wind.Basis{Edition: plan.ASCE722, Exposure: plan.ExposureC, Enclosure: "ajar", Speed: 150, Height: 20, Length: 40, Width: 30}.Check(), `"ajar"`)
}

// An unknown word in a plan that a program made is told, with the thing that
// has it; nothing is framed by a guess.
func TestUnknownWordsAreRefused(t *testing.T) {
	house := func() *plan.Plan {
		l := &plan.Level{Name: "first", PlateHeight: 108, JoistRun: plan.AxisX}
		w := &plan.Wall{Name: "1S", Level: l, ToLevel: l, To: geom.Vec2{X: 240}, Top: plan.PlateTop, Openings: []*plan.Opening{{Name: "w1", Kind: plan.Window}}}
		r := &plan.Roof{Name: "main", Over: l, Kind: plan.GableRoof, Ridge: plan.AxisX, GableEnd: [2]plan.GableEnd{plan.RakeEnd, plan.TrussEnd}, Pos: plan.Pos{File: "plan.toml", Line: 9, Col: 1}}
		return &plan.Plan{
			File: "plan.toml", Levels: []*plan.Level{l}, Walls: []*plan.Wall{w}, Roofs: []*plan.Roof{r},
			Rules: []*plan.Rule{{Name: "clips", At: plan.StudTop}}, Places: []*plan.Place{{On: plan.StudTop}},
		}
	}
	require.Empty(t, plan.UnknownWords(house()))
	for _, c := range []struct {
		slip        func(*plan.Plan)
		word, where string
	}{
		{func(p *plan.Plan) { p.Roofs[0].Kind = "dome" }, "dome", "roof main"},
		{func(p *plan.Plan) { p.Roofs[0].GableEnd[1] = "open" }, "open", "roof main"},
		{func(p *plan.Plan) { p.Roofs[0].High = "NE" }, "NE", "roof main"},
		{func(p *plan.Plan) { p.Walls[0].Top = "sky" }, "sky", "wall 1S"},
		{func(p *plan.Plan) { p.Walls[0].Start.Join = "miter" }, "miter", "wall 1S"},
		{func(p *plan.Plan) { p.Walls[0].Openings[0].Kind = "hatch" }, "hatch", "opening w1"},
		{func(p *plan.Plan) { p.Levels[0].JoistRun = "z" }, "z", "level first"},
		{func(p *plan.Plan) { p.Foundation.Kind = "raft" }, "raft", "plan"},
		{func(p *plan.Plan) { p.Rules[0].Face = "under" }, "under", "rule clips"},
		{func(p *plan.Plan) { p.Rules[0].At = "roof-sky" }, "roof-sky", "rule clips"},
		{func(p *plan.Plan) { p.Rules[0].Where.Role = []plan.Role{"mast"} }, "mast", "rule clips"},
		{func(p *plan.Plan) { p.Places[0].Action = "paint" }, "paint", "plan"},
		{func(p *plan.Plan) { p.Site.Enclosure = plan.Open }, "open", "plan"},
	} {
		p := house()
		c.slip(p)
		h, faults := framing.Frame(p)
		require.Len(t, faults, 1, c.word)
		require.True(t, faults.Errors())
		require.Equal(t, "unknown-word", string(faults[0].Code))
		require.Contains(t, faults[0].Summary, `"`+c.word+`" is not one of `)
		require.Equal(t, c.where, faults[0].Where)
		require.Positive(t, faults[0].Pos.Line)
		require.Empty(t, h.Members)
	}
}
