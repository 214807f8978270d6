package render

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/schedule"
	"galewright/plan/schema"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A row in the table of joints and a joint found by framing are all that a new
// kind needs: reader, schema, placement, load path and sheets take it from
// there.
func TestARowIsAllThatAKindOfJointNeeds(t *testing.T) {
	const mast plan.JointKind = "mast-step"
	for _, c := range []struct {
		place plan.JointPlace
		lies  plan.JointLie
		shown plan.JointSheet
	}{
		{plan.JointPlace{Host: plan.WallHost, Home: plan.ElevationSheet}, plan.LiesUpright, plan.FloorSheet},
		{plan.JointPlace{Host: plan.RoofHost, Home: plan.RoofSheet}, plan.LiesStandalone, ""},
		{plan.JointPlace{Host: plan.GirderHost, Home: plan.FoundationSheet}, plan.LiesStandalone, ""},
		{plan.JointPlace{Host: plan.OpeningHost, Home: plan.FloorSheet}, plan.LiesStandalone, ""},
	} {
		row := &plan.JointRow{
			Kind: mast, Code: "MS", One: "mast in its step", Many: "masts in their steps", Doc: "each mast to its step",
			Places: []plan.JointPlace{c.place}, Shown: c.shown, Lies: c.lies, Unchecked: "a row of a test",
		}
		require.Empty(t, row.Lacks())
		addRow(t, row)
		m, joints := withMasts(t, mast, c.place.Host)
		require.NotEmpty(t, joints)

		at := slices.IndexFunc(read.Keys(), func(k read.Key) bool { return k.Table == "rule" && k.Name == "at" })
		assert.Contains(t, read.Keys()[at].Values, string(mast))
		var b bytes.Buffer
		require.NoError(t, schema.Write(&b))
		assert.Contains(t, b.String(), `"mast-step"`)
		assert.True(t, slices.ContainsFunc(m.Loads.Unchecked, func(s string) bool { return s == "Masts in their steps: a row of a test." }), "%v", m.Loads.Unchecked)

		for _, j := range joints {
			ps := m.Placement.At(j)
			require.Len(t, ps, 1)
			assert.Equal(t, c.place.Home, page.HomeOf(ps[0]))
			assert.Contains(t, ps[0].Tag, "-MS-")
		}
		set, faults := Draw(m, Options{Paper: "arch-d"})
		require.False(t, faults.Errors(), "%v", faults)
		homes, again := drawnOf(set, "-MS-")
		assert.Len(t, homes, len(joints))
		for tag, title := range homes {
			assert.Contains(t, strings.ToLower(title), titled(c.place.Home), tag)
		}
		assert.Equal(t, c.shown != "", again > 0, "%d shown again", again)
		words := 0
		for _, x := range pagetest.Texts(set.Sheets) {
			if x.S == row.One {
				words++
			}
		}
		assert.Equal(t, len(joints), words, "rows of the check sheets")
	}
}

// titled is what the title of a home sheet says: that of a floor plan "Plan, first".
func titled(home plan.JointSheet) string {
	if home == plan.FloorSheet {
		return "plan, "
	}
	return string(home)
}

// addRow puts a row in the table for the time of one case.
func addRow(t *testing.T, row *plan.JointRow) {
	t.Helper()
	table := plan.Joints
	plan.Joints = append(slices.DeleteFunc(slices.Clone(table), func(r *plan.JointRow) bool { return r.Kind == row.Kind }), row)
	t.Cleanup(func() { plan.Joints = table })
}

// withMasts adds three joints of a kind to the demo house, as framing would,
// and asks for a piece at each.
func withMasts(t *testing.T, kind plan.JointKind, on plan.JointHost) (*page.Model, []*framing.Joint) {
	t.Helper()
	src := pagetest.Example(t, "marsh-wren.toml")
	p := *src.House.Plan
	p.Items = append(slices.Clone(p.Items), &plan.Item{Mark: "mast-shoe", Kind: plan.GenericItem, Length: 3.25, Width: 1.375, Gauge: "14", Fasteners: []plan.Fasteners{{Part: "each half", Nail: "8d common", Count: 3, Parts: 2}}})
	p.Rules = append(slices.Clone(p.Rules), &plan.Rule{Name: "masts", At: kind, Use: "mast-shoe"})
	if on == plan.OpeningHost { // its hangers stand where the masts would
		p.Rules = slices.DeleteFunc(p.Rules, func(r *plan.Rule) bool { return r.At == plan.HeaderTrimmer })
	}
	h := *src.House
	h.Plan, h.Joints = &p, slices.Clone(h.Joints)
	var mine []*framing.Joint
	for _, j := range h.Joints {
		model := map[plan.JointHost]plan.JointKind{plan.WallHost: plan.StudBase, plan.RoofHost: plan.RafterRidge, plan.GirderHost: plan.GirderPile, plan.OpeningHost: plan.HeaderTrimmer}[on]
		if j.Kind == model && len(mine) < 3 {
			mast := *j
			if on == plan.OpeningHost { // between two tails: there and at its ends others cover its faces
				mast.Members, mast.At = j.Members[:1], j.First().A.Add(j.First().B).Mul(0.5).Add(geom.Vec3{X: 8 + 16*float64(len(mine))})
			}
			mast.Kind, mast.ID = kind, strings.TrimSuffix(j.ID, model.Code())+kind.Code()
			mine = append(mine, &mast)
		}
	}
	h.Joints = append(h.Joints, mine...)
	catalog, ds := hardware.New(p.Items)
	require.False(t, ds.Errors(), "%v", ds)
	placed, ds := placement.Place(&h, catalog)
	require.False(t, ds.Errors(), "%v", ds)
	loads, _ := loadpath.Run(placed)
	return &page.Model{House: &h, Placement: placed, Schedule: schedule.New(steel.New(placed)), Loads: loads}, mine
}

// drawnOf returns the titles of the sheets that are home to pieces whose tags
// have a part, and how often they are drawn beside that.
func drawnOf(set *sheet.Set, part string) (homes map[string]string, again int) {
	homes = map[string]string{}
	for _, s := range set.Sheets {
		for _, mk := range s.Marks {
			pc := sheet.PieceOf(mk)
			switch {
			case pc == nil || !strings.Contains(pc.Tag, part):
			case pc.Home:
				homes[pc.Tag] = s.Title.SheetTitle
			default:
				again++
			}
		}
	}
	return homes, again
}

// beamed is a house with beams under and in its floor and one between walls, flush,
// dropped, and on posts.
func beamed(t *testing.T) *framing.House {
	t.Helper()
	p, ds := read.Plan("plan.toml", []byte(`
project = { name = "Invented house with a beam", date = 2026-03-02 }
foundation = { kind = "slab" }
level = [
  { name = "one", floor = "0'", plate_height = "8' 1 1/8in" },
  { name = "two", plate_height = "8' 1 1/8in", joists = "2x10 @ 16in", joist_run = "y" },
]
wall = [
  { name = "S", level = "one", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "E", level = "one", to = ["24'", "14'"] },
  { name = "N", level = "one", to = ["0'", "14'"] }, { name = "W", level = "one", to = ["0'", "0'"] },
  { name = "2S", level = "two", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "2E", level = "two", to = ["24'", "14'"] },
  { name = "2N", level = "two", to = ["0'", "14'"] }, { name = "2W", level = "two", to = ["0'", "0'"] },
]
beam = [
  { name = "B", level = "two", member = "2-2x8", from = ["10' 8in", "2in"], to = ["10' 8in", "13' 10in"] },
  { name = "F", level = "one", set = "flush", member = "2-2x10", from = ["0'", "6'"], to = ["16'", "6'"], posts = ["12'", "16'"] },
  { name = "D", level = "one", member = "2-2x10", from = ["2in", "10'"], to = ["23' 10in", "10'"], posts = ["10'"] },
]
lumber = { stock = ["8'", "16'", "24'"] }
roof = [{ kind = "gable", ridge = "x", pitch = "6:12" }]
`), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	return h
}

// oddHouse is one of the odd houses of framing: with the deck of a porch around it, with
// dormers, with beams that hang from beams.
func oddHouse(t *testing.T, name string) *framing.House {
	t.Helper()
	src, err := os.ReadFile("../plan/framing/testdata/odd/" + name + ".toml")
	require.NoError(t, err)
	p, ds := read.Plan("plan.toml", src, nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	return h
}

// A piece at every kind of joint that the examples have is drawn at home once,
// on the sheet that the table names, and has its words on the check sheets.
func TestPiecesAtEveryKindOfJointAreDrawn(t *testing.T) {
	seen := map[plan.JointKind]bool{}
	for _, house := range []*framing.House{pagetest.Example(t, "marsh-wren.toml").House, pagetest.Example(t, "turnstone.toml").House, pagetest.Example(t, "dunlin.toml").House, beamed(t), oddHouse(t, "porch-deck"), oddHouse(t, "dormers"), oddHouse(t, "dormers-shed"), oddHouse(t, "along"), oddHouse(t, "truss-hip"), oddHouse(t, "truss-wing")} {
		p := *house.Plan
		p.Items = append(slices.Clone(p.Items), &plan.Item{Mark: "shoe", Kind: plan.GenericItem, Length: 3.25, Width: 1.375, Gauge: "14", Fasteners: []plan.Fasteners{{Part: "each half", Nail: "8d common", Count: 3, Parts: 2}}})
		p.Rules, p.Places = nil, nil
		for _, k := range plan.JointKinds() {
			use := "shoe"
			if k == plan.BraceRod { // nothing else goes through two piles
				use = "brace-rod"
			}
			p.Rules = append(p.Rules, &plan.Rule{Name: string(k), At: k, Use: use})
		}
		h := *house
		h.Plan = &p
		catalog, _ := hardware.New(p.Items)
		placed, _ := placement.Place(&h, catalog)
		m := &page.Model{House: &h, Placement: placed, Schedule: schedule.New(steel.New(placed))}
		set, faults := Draw(m, Options{Paper: "arch-d"})
		require.False(t, faults.Errors(), "%v", faults)
		homes := map[string]string{}
		for _, s := range set.Sheets {
			for _, mk := range s.Marks {
				if u, ok := mk.(sheet.Use); ok && u.Piece != nil && u.Piece.Home {
					pc := u.Piece
					require.Empty(t, homes[pc.Tag], "%s is at home twice", pc.Tag)
					homes[pc.Tag] = strings.ToLower(s.Title.SheetTitle)
				}
			}
		}
		for _, pc := range placed.Pieces {
			k := pc.Joint.Kind
			seen[k] = true
			require.Contains(t, homes[pc.Tag], titled(k.Place(pc.Joint.Wall != nil).Home), pc.Tag)
		}
	}
	for _, k := range plan.JointKinds() {
		assert.True(t, seen[k], "%s is in none of the houses", k)
	}
}
