package salt_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/salt"
	"galewright/plan/steel"
)

// edit is a run of text and what takes its place.
type edit struct{ old, with string }

// house runs an example whose text is changed, and returns what salt air has
// to tell of it: the example itself has nothing.
func house(t *testing.T, name string, edits ...edit) (*pipeline.Result, []plan.Diagnostic) {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	src := string(b)
	for _, e := range edits {
		if e.old == "" {
			src += e.with
			continue
		}
		require.Contains(t, src, e.old)
		src = strings.Replace(src, e.old, e.with, 1)
	}
	r, ds := pipeline.Run(name+".toml", []byte(src), func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	return r, ds
}

// told are the codes with the start of each summary.
func told(ds []plan.Diagnostic) (out []string) {
	for _, d := range ds {
		s, _, _ := strings.Cut(d.Summary, ",")
		out = append(out, string(d.Code)+" | "+s)
	}
	return out
}

// Every planted fault is found, and nothing else with it. The shed stands on a
// slab: its sill plates are taken as treated.
func TestPlantedFaultsAreFoundAndNoOther(t *testing.T) {
	const (
		clip  = `thickness = "17 ga", coating = "G185",`
		nails = `to_plate = 7, coating = "hot-dip zinc"`
		bolt  = `rod = "1/2in", washer = "3in", coating = "hot-dip zinc"`
		takes = `unvented_enclosed = ["G185", "hot-dip zinc"]`
	)
	// The shed writes its items and rules as arrays: what is added must stand in them.
	footItem := edit{"item = [", `item = [ { mark = "foot-clip", kind = "clip", thickness = "17 ga", length = "6in", width = "1 1/2in", coating = "G185", nails = { type = "No. 8 x 1 1/2", to_stud = 3, to_plate = 3, coating = "COATING" } },`}
	footRule := edit{"rule = [", `rule = [ { at = "stud-base", use = "foot-clip" },`}
	of := func(c string) []edit {
		return []edit{{footItem.old, strings.Replace(footItem.with, "COATING", c, 1)}, footRule}
	}
	all := edit{takes, `unvented_enclosed = ["G185", "hot-dip zinc", "electroplate", "bare", "mechanical zinc", "stainless 304"]`}
	for name, c := range map[string]struct {
		edits []edit
		want  []string
	}{
		"nothing":                      {nil, nil},
		"a screw as the code takes it": {of("hot-dip zinc"), nil},
		"a plain screw in a treated sill": {
			append(of("electroplate"), all),
			[]string{"not-for-treated-wood | foot-clip: its screws No. 8 x 1 1/2"},
		},
		"a screw with mechanical zinc of class 55 is still a wood screw": {
			append(of("mechanical zinc class 55"), all),
			[]string{"not-for-treated-wood | foot-clip: its screws No. 8 x 1 1/2"},
		},
		"the same screw, and the engineer does not take it": {
			of("electroplate"),
			[]string{"coating-falls-short | foot-clip: its screws No. 8 x 1 1/2", "not-for-treated-wood | foot-clip: its screws No. 8 x 1 1/2"},
		},
		"the same screw in borate, inside and dry": {
			append(of("electroplate"), all, edit{"[project]", "[[treated]]\nmembers = \"sill plate\"\npreservative = \"borate\"\n[project]"}), nil,
		},
		"the same screw in a sill that is not treated": {
			append(of("electroplate"), all, edit{"[project]", "[[treated]]\nmembers = \"sill plate\"\npreservative = \"none\"\n[project]"}), nil,
		},
		"a plain bolt of 1/2 in is exempt in treated wood, not in salt air": {
			[]edit{{bolt, strings.Replace(bolt, "hot-dip zinc", "electroplate", 1)}},
			[]string{"coating-falls-short | sill-bolt: its rod"},
		},
		"a plain bolt of 3/8 in is not": {
			[]edit{{bolt, strings.NewReplacer("hot-dip zinc", "electroplate", "1/2in", "3/8in").Replace(bolt)}, all},
			[]string{"not-for-treated-wood | sill-bolt: its rod"},
		},
		"a thin bolt with mechanical zinc of class 55 is": {
			[]edit{{bolt, strings.NewReplacer("hot-dip zinc", "mechanical zinc class 55", "1/2in", "3/8in").Replace(bolt)}, all}, nil,
		},
		"with mechanical zinc of no class it is not": {
			[]edit{{bolt, strings.NewReplacer("hot-dip zinc", "mechanical zinc", "1/2in", "3/8in").Replace(bolt)}, all},
			[]string{"not-for-treated-wood | sill-bolt: its rod"},
		},
		"a stainless clip with zinc nails": {
			[]edit{{clip, strings.Replace(clip, "G185", "stainless 316", 1)}, all, {`vented_enclosed = ["G185",`, `vented_enclosed = ["G185", "stainless 304",`}},
			[]string{"two-metals | eave-clip: its steel"},
		},
		"a clip of less zinc, in two classes": {
			[]edit{{clip, strings.Replace(clip, "G185", "G90", 1)}},
			[]string{"coating-falls-short | eave-clip: its steel", "coating-falls-short | eave-clip: its steel"},
		},
		"nails without a coating":  {[]edit{{nails, "to_plate = 7"}}, []string{"no-coating | eave-clip: the coating of its nails 8d x 1 1/2 is a blank"}},
		"a clip without a coating": {[]edit{{clip, `thickness = "17 ga",`}}, []string{"no-coating | eave-clip: the coating of its steel is a blank"}},
		"a bolt without a coating": {[]edit{{bolt, `rod = "1/2in", washer = "3in"`}}, []string{"no-coating | sill-bolt: the coating of its rod"}},
		"a class without material": {[]edit{{takes, ""}}, []string{"no-salt-material | no material is given where there is steel: unvented enclosed (37 pieces)"}},
		"treated wood that is not there": {
			[]edit{{"[project]", "[[treated]]\nmembers = [\"girder\", \"pile\"]\npreservative = \"ACQ\"\n[project]"}},
			[]string{"idle-treated | the house has no such member: girder"},
		},
		"no distance":            {[]edit{{`shore = "4 mi"`, ""}}, []string{"no-shore | the distance of salt water is a blank"}},
		"an override of nothing": {[]edit{{`walls = "siding"`, "walls = \"siding\"\noverride = [{ class = \"open exposed\", at = \"girder-pile\" }]"}}, []string{"idle-salt-override | no piece is at a joint that the override names"}},
		"walls without siding": {
			[]edit{{`walls = "siding"`, ""}},
			[]string{"no-salt-material | no material is given where there is steel: open exposed (20 pieces)"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			_, ds := house(t, "shed", c.edits...)
			assert.Equal(t, c.want, told(ds))
		})
	}
}

// heavyStrap is marsh-wren's pile strap of stainless steel.
const heavyStrap = "mark = \"pile-strap-heavy\"\noverride = true\nwidth = \"3 3/8in\" # of four rows of nails\ncoating = \"stainless 316\"\nnails = { type = \"16d\", each_end = 38, rows = 4, hand_only = true, coating = \"stainless 316\" }"

// A strap of G90 under a house on piles: the engineer does not take it there,
// the code not outdoors on treated piles, and its zinc meets the stainless
// bolt of the joint.
func TestALightStrapUnderTheHouse(t *testing.T) {
	light := edit{heavyStrap, strings.NewReplacer("coating = \"stainless 316\"\n", "coating = \"G90\"\n", "coating = \"stainless 316\" }", "coating = \"hot-dip zinc\" }").Replace(heavyStrap)}
	_, ds := house(t, "marsh-wren", light)
	require.Equal(t, []string{
		"coating-falls-short | pile-strap-heavy: its steel", "not-for-treated-wood | pile-strap-heavy: its steel", "not-for-treated-wood | pile-strap-heavy: its steel",
		"two-metals | pile-strap-heavy",
	}, told(ds))
	straps, joints := heavyStraps(t)
	assert.Equal(t, listed(straps), ds[0].Where)
	assert.Contains(t, ds[0].Summary, "G90, is partially sheltered, where the engineer takes hot-dip zinc or stainless 316")
	assert.Equal(t, listed(joints), ds[3].Where, "of the joints, each once")
	// Between sheathed joists and vented piers it is another class, and the wood
	// of the girders is another's to say.
	_, ds = house(t, "marsh-wren", light, edit{`underside = "open"`, `underside = "vented"`}, edit{`"hot-dip zinc", "stainless 316"]`, `"hot-dip zinc", "stainless 316", "G60"]`})
	assert.NotContains(t, told(ds), "not-for-treated-wood | pile-strap-heavy: its steel", "not outdoors")
}

// heavyStraps lists marsh-wren's heavy pile straps, two at a joint, and of their
// joints those with a stainless bolt through the pile.
func heavyStraps(t *testing.T) (straps, joints []string) {
	for _, p := range bodies(t).Placed.Pieces {
		if p.Item.Mark == "pile-strap-heavy" {
			straps = append(straps, p.Tag)
			bolted := slices.ContainsFunc(bodies(t).Placed.At(p.Joint), func(o *placement.Piece) bool { return o.Item.Mark == "pile-bolt" })
			if bolted && !slices.Contains(joints, p.Joint.ID) {
				joints = append(joints, p.Joint.ID)
			}
		}
	}
	require.Greater(t, len(joints), 4)
	require.Greater(t, len(straps), 2*len(joints)-1)
	return straps, joints
}

// listed is how check lists more than three tags.
func listed(tags []string) string {
	return fmt.Sprintf("%d pieces: %s and %d more", len(tags), strings.Join(tags[:3], ", "), len(tags)-3)
}

// source is marsh-wren's text, bodies its steel, made once.
func source(t *testing.T) string {
	b, err := os.ReadFile("../../examples/marsh-wren.toml")
	require.NoError(t, err)
	return string(b)
}

func catalog(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) }

var made *steel.Steel

func bodies(t *testing.T) *steel.Steel {
	if made == nil {
		r, ds := pipeline.Run("marsh-wren.toml", []byte(source(t)), catalog)
		require.Empty(t, ds)
		made = steel.New(r.Placement)
	}
	return made
}

// resalted looks at marsh-wren's steel with what an edited plan says of salt.
func resalted(t *testing.T, edits ...edit) *salt.Report {
	src := source(t)
	for _, e := range edits {
		require.Contains(t, src, e.old)
		src = strings.Replace(src, e.old, e.with, 1)
	}
	p, ds := read.Plan("marsh-wren.toml", []byte(src), catalog)
	require.False(t, ds.Errors(), "%v", ds)
	bodies(t).Placed.House.Plan.Salt = p.Salt
	r, _ := salt.Run(bodies(t))
	return r
}

// classes returns the classes of one part of a piece.
func classes(t *testing.T, r *salt.Report, tag, part string) (out []plan.SaltClass) {
	for _, x := range r.Of(bodies(t).Placed.Piece(tag)).Parts {
		if strings.HasPrefix(x.Name, part) {
			for _, a := range x.In {
				out = append(out, a.Class)
			}
		}
	}
	return out
}

// The class is of the place, not of the item: one mark has several.
func TestTheClassIsOfThePlace(t *testing.T) {
	siding := edit{`walls = "siding"`, `walls = "open"`}
	under := func(f string) edit { return edit{`underside = "open"`, `underside = "` + f + `"`} }
	attic := edit{`attic = "vented"`, `attic = "unvented"`}
	for _, c := range []struct {
		name, tag, part string
		edits           []edit
		want            []plan.SaltClass
	}{
		{"under the house", "GS-11-GP-strap", "steel", nil, []plan.SaltClass{plan.PartiallySheltered}},
		{"its nails too", "GS-11-GP-strap", "nails", nil, []plan.SaltClass{plan.PartiallySheltered}},
		{"sheathing under the joists closes nothing below them", "GS-11-GP-strap", "steel", []edit{under("sheathing")}, []plan.SaltClass{plan.PartiallySheltered}},
		{"a vented crawl space does", "GS-11-GP-strap", "steel", []edit{under("vented")}, []plan.SaltClass{plan.VentedEnclosed}},
		{"and one without vents", "GS-11-GP-anchor", "rod", []edit{under("unvented")}, []plan.SaltClass{plan.UnventedEnclosed}},
		{"behind siding", "2S-64-SS-strap", "steel", nil, []plan.SaltClass{plan.UnventedEnclosed}},
		{"the same before siding", "2S-64-SS-strap", "steel", []edit{siding}, []plan.SaltClass{plan.OpenExposed}},
		{"from the girder up over the rim it is in both", "1S-64-SB-strap", "steel", nil, []plan.SaltClass{plan.PartiallySheltered, plan.UnventedEnclosed}},
		{"and before siding", "1S-64-SB-strap", "steel", []edit{siding}, []plan.SaltClass{plan.PartiallySheltered, plan.OpenExposed}},
		{"over the story's floor", "2S-64-SS-strap", "nails", []edit{siding}, []plan.SaltClass{plan.OpenExposed}},
		{"under the roof", "main-16-RR-ridge", "steel", nil, []plan.SaltClass{plan.VentedEnclosed}},
		{"under a roof without vents", "main-16-RR-ridge", "steel", []edit{attic}, []plan.SaltClass{plan.UnventedEnclosed}},
		{"a rod from the wall down through the girder is in both", "1S-1-WE-hold-down", "rod", nil, []plan.SaltClass{plan.PartiallySheltered, plan.UnventedEnclosed}},
		{"its body is in the wall alone", "1S-1-WE-hold-down", "steel", []edit{siding}, []plan.SaltClass{plan.UnventedEnclosed}},
		{"the engineer's own class", "GS-11-GP-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"open exposed\", on = \"GS\", why = \"rinsed\" }]"}}, []plan.SaltClass{plan.OpenExposed}},
		{"on that girder alone", "GN-11-GP-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"open exposed\", on = \"GS\" }]"}}, []plan.SaltClass{plan.PartiallySheltered}},
		{"by kind of joint", "GN-11-GP-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"open exposed\", at = [\"girder-pile\"] }]"}}, []plan.SaltClass{plan.OpenExposed}},
		{"by level", "2S-64-SS-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"interior living space\", level = \"second\" }]"}}, []plan.SaltClass{plan.InteriorLiving}},
		{"all conditions must hold", "2S-64-SS-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"interior living space\", level = \"second\", on = \"2N\" }]"}}, []plan.SaltClass{plan.UnventedEnclosed}},
		{"a later one goes before an earlier", "GN-11-GP-strap", "steel", []edit{{`source = "S1 note 7"`, "override = [{ class = \"open exposed\", on = \"GN\" }, { class = \"vented enclosed\", on = \"GN\" }]"}}, []plan.SaltClass{plan.VentedEnclosed}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := resalted(t, c.edits...)
			require.NotNil(t, r.Of(bodies(t).Placed.Piece(c.tag)), c.tag)
			assert.Equal(t, c.want, classes(t, r, c.tag, c.part))
		})
	}
}

// On a slab what is in the concrete has no class; porch posts stand under a
// roof that no rain rinses.
func TestSlabAndPorch(t *testing.T) {
	r, _ := house(t, "turnstone")
	for _, p := range r.Salt.Pieces {
		switch {
		case p.Joint.Host == "porch":
			assert.Equal(t, plan.PartiallySheltered, p.Class, p.Tag)
		case p.Item.Mark == "sill-bolt":
			assert.Equal(t, plan.UnventedEnclosed, p.Class, p.Tag)
		}
	}
}

// What the order list would buy without a coating, check tells: nothing that
// is bought is a blank where nothing is told.
func TestNoBlankIsBoughtUntold(t *testing.T) {
	for _, name := range []string{"marsh-wren", "sanderling", "turnstone", "curlew-row", "dunlin", "shed"} {
		r, _ := house(t, name)
		_, ds := salt.Run(steel.New(r.Placement))
		require.Empty(t, ds, name)
		for _, row := range r.Schedule.Orders(0) {
			assert.NotContains(t, row.Material(), "blank", "%s: %s", name, row.Name)
		}
	}
}

// Without siding the wall behind the porch is as bad as what no rain rinses, up
// to the ledger of its roof, 103 in high at its top; the other walls are open.
func TestBehindAPorchNoRainRinses(t *testing.T) {
	r, _ := house(t, "turnstone", edit{`walls = "siding"`, `walls = "open"`})
	seen := map[string]bool{}
	for _, p := range r.Salt.Pieces {
		for _, x := range p.Parts {
			for _, a := range x.In {
				if strings.HasPrefix(a.Where, "on the outside of walls") && (a.On != "wall S" || p.Z0 < 103) {
					seen[a.On+" "+string(a.Class)] = true
				}
			}
		}
	}
	assert.True(t, seen["wall S partially sheltered"])
	assert.False(t, seen["wall S open exposed"])
	assert.True(t, seen["wall N open exposed"])
	assert.False(t, seen["wall N partially sheltered"])
}

// Each piece is in one row, and rows add up to the house.
func TestRowsAddUp(t *testing.T) {
	for _, name := range []string{"marsh-wren", "sanderling", "turnstone", "curlew-row", "dunlin", "shed"} {
		r, _ := house(t, name)
		_, ds := salt.Run(steel.New(r.Placement))
		assert.Empty(t, ds, name)
		n := 0
		for _, row := range r.Salt.Rows() {
			n += len(row.Pieces)
			assert.NotEmpty(t, row.Where, row.Class)
			assert.NotEmpty(t, row.Materials, row.Class)
		}
		assert.Equal(t, len(r.Placement.Pieces), n, name)
	}
}

// 3,000 ft is as far as the source goes: beyond nothing is said, and no
// material follows from it.
func TestNearShore(t *testing.T) {
	assert.Contains(t, salt.NearShore(plan.Site{Shore: 3000}), "FEMA")
	assert.Empty(t, salt.NearShore(plan.Site{Shore: 3001}))
	assert.Empty(t, salt.NearShore(plan.Site{}))
}

func TestHeavierOfAKind(t *testing.T) {
	for _, c := range []struct {
		has, least plan.Coating
		want       bool
	}{
		{plan.G185, plan.G90, true},
		{plan.G90, plan.G90, true},
		{plan.G60, plan.G90, false},
		{plan.HotDip, plan.G90, false},
		{plan.Stainless316, plan.Stainless304, true},
		{plan.Stainless304, plan.Stainless316, false},
		{plan.Stainless316, plan.G185, false},
		{plan.Mechanical55, plan.Mechanical, true},
		{plan.Mechanical, plan.Mechanical55, false},
		{"", plan.Bare, false},
	} {
		assert.Equal(t, c.want, c.has.AtLeast(c.least), "%s for %s", c.has, c.least)
	}
}

func TestExplainGivesSources(t *testing.T) {
	r, _ := house(t, "marsh-wren")
	text := r.Salt.Explain(r.Placement.Piece("GS-11-GP-strap"))
	for _, want := range []string{
		"steel: stainless 316", "partially sheltered, under the house; the engineer takes hot-dip zinc or stainless 316", "pile treated with CA-C",
		"NFIP Technical Bulletin 8, June 2019 (second-hand)", "900 ft away", "materials: S1 note 7", "IBC 2018 2304.10.5.1, read",
	} {
		assert.Contains(t, text, want)
	}
}
