package placement

import (
	"regexp"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// only returns the diagnostics of one code.
func only(ds plan.Diagnostics, code string) (out plan.Diagnostics) {
	for _, d := range ds {
		if string(d.Code) == code {
			out = append(out, d)
		}
	}
	return out
}

func rule(name string, at plan.JointKind, use string) plan.Rule {
	return plan.Rule{Name: name, At: at, Use: use}
}

// first limits a rule to the stud at the start of its walls.
func first(r plan.Rule) plan.Rule { r.Where.To = 4; return r }

func TestConsequences(t *testing.T) {
	offset := func(d float64) *hand {
		h := newHand()
		h.column(16, 16+d)
		h.Joints = append(h.held(0), h.held(1)...)
		return h
	}
	alone := func() *hand {
		h := newHand()
		h.member(0, plan.Stud, 0, 1.5, floor1+1.5, top1-3)
		h.member(1, plan.Stud, 47.25, 48.75, floor2+1.5, top2-3)
		h.Joints = append(h.held(0), h.held(1)...)
		return h
	}
	opened := func() *hand {
		h := standard()
		h.walls[1].Openings = []*plan.Opening{{Name: "w1", At: 14, Width: 20, Height: 40, Sill: 0}}
		return h
	}
	set := func(mark string, f func(*plan.Item)) func(map[string]*plan.Item) {
		return func(m map[string]*plan.Item) { f(m[mark]) }
	}
	free := func() *hand {
		h := standard()
		cap := h.member(0, plan.TopPlate, 0, 96, top1-1.5, top1)
		j := h.joint(h.walls[0], plan.Collector, 96, top1, cap)
		j.ID = "1S-96-CO"
		h.Joints = append(h.Joints, j)
		return h
	}
	for name, c := range map[string]struct {
		house    *hand
		edit     func(map[string]*plan.Item)
		code     string
		count    int
		contains []string
	}{
		// 9 nails in one row at the least pitch of 0.75 after 0.5: 0.5 + 8*0.75 =
		// 6.5 each end; 2*6.5 + 17.375 = 30.375 is needed, 24 there: 6.375 missing.
		"strap too short for its nails": {
			house: standard().with(first(rule("s", "stud-stud", "short-strap"))),
			code:  "strap-too-short", count: 1, contains: []string{`short by 6 3/8"`, "2S-1-SS", "t.toml:100", `at least 2'-6 3/8"`},
		},
		// A lap of 18 is asked for: 36 + 17.375 = 53.375, 42 there: 11.375 missing.
		"strap too short for its lap": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap"))),
			edit:  set("story-strap", func(i *plan.Item) { i.Lap = 18 }), code: "strap-too-short", count: 1, contains: []string{`short by 11 3/8"`},
		},
		// 15 nails: 0.5 + 14*0.75 = 11 on the rim's 11.25: they fit. 17: 12.5 do not.
		"rim too shallow for the nails": {
			house: standard().with(first(rule("s", "stud-base", "base-strap"))),
			edit:  set("base-strap", func(i *plan.Item) { i.Fasteners[0].Count = 17 }), code: "strap-too-short", count: 1, contains: []string{`rim gives 11 1/4"`, `take 1'-0 1/2"`},
		},
		// 240 - 17.375 = 222.625, half is 111.3125; the stud above is 97.125 - 4.5
		// = 92.625 long, the one below 109.125 - 4.5 = 104.625. Over by 18.6875 at
		// one end, so by 37.375 in all.
		"strap past both studs": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap"))),
			edit:  set("story-strap", func(i *plan.Item) { i.Length = 240 }), code: "strap-past-member", count: 2, contains: []string{`9'-3 5/16"`, `3'-1 3/8" shorter`},
		},
		"two straps on one face": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap")),
				plan.Rule{Name: "t", At: "stud-stud", Use: "story-strap", Purpose: "more", Where: plan.Where{To: 4}}),
			code: "face-taken", count: 1, contains: []string{"2S-1-SS-strap", "2S-1-SS-strap-2", "joint 2S-1-SS", "the inside face is free"},
		},
		// The story strap reaches 12.3125 down the lower stud from 226.125, that
		// is to 213.8125; a base strap of 120 reaches from 108 to 228.
		"base and story strap meet": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap")), first(rule("b", "stud-base", "base-strap"))),
			edit:  set("base-strap", func(i *plan.Item) { i.Length = 116 }), code: "face-taken", count: 1, contains: []string{"1S-1-SB-strap", "2S-1-SS-strap"},
		},
		"clip over a strap": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap")),
				plan.Rule{Name: "c", At: "stud-top", Use: "plate-clip", Face: "outside", Where: plan.Where{Level: []string{"first"}, To: 4}}),
			code: "under-clip", count: 1, contains: []string{"1S-1-ST-clip", "2S-1-SS-strap"},
		},
		"strap over a clip's nails": {
			house: standard().with(first(rule("s", "stud-stud", "story-strap")),
				plan.Rule{Name: "c", At: "stud-top", Use: "plate-clip", Face: "outside", Where: plan.Where{Level: []string{"first"}, To: 4}}),
			edit: set("story-strap", func(i *plan.Item) { i.Phase = "after sheathing" }), code: "over-nails", count: 1, contains: []string{"1S-1-ST-clip"},
		},
		// The opening's left edge is 14; the strap at 16 is 1.375 wide and its upper
		// lap, 243.5 to 255.8125, is over an opening from 242 to 282. So is that at 32.
		"strap across an opening": {
			house: opened().with(rule("s", "stud-stud", "story-strap")),
			code:  "strap-across-opening", count: 1, contains: []string{"opening w1 of wall 2S", "2 joints"},
		},
		"no stud below": {
			house: alone().with(rule("s", "stud-stud", "story-strap")),
			code:  "stud-none-below", count: 1, contains: []string{"2S-48-SS", "lines_up"},
		},
		// Two studs 1.5 wide, 1 apart, share 0.5 in; 0.75 is needed.
		"studs out of line": {
			house: offset(1).with(rule("s", "stud-stud", "story-strap")),
			code:  "studs-out-of-line", count: 1, contains: []string{`is offset 1"`},
		},
		"pair out of line": {
			house: offset(0.5).with(plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: []float64{16.5}}),
			code:  "pair-out-of-line", count: 1, contains: []string{`1/2" out of line`, "t.toml:200"},
		},
		"pair without a post": {
			house: alone().with(plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: []float64{48}}),
			code:  "pair-without-post", count: 1, contains: []string{"2S-48-SS"},
		},
		"collector to nothing": {
			house: free().with(plan.Place{Use: "coil", Wall: "1S", On: "collector", At: []float64{96}}),
			code:  "collector-to-nothing", count: 1, contains: []string{"1S-96-CO", "t.toml:200"},
		},
		"place off every member": {
			house: standard().with(plan.Place{Use: "floor-strap", Wall: "2S", At: []float64{24}}),
			code:  "place-off-member", count: 1, contains: []string{`nearest is the stud at 1'-4"`, `8" off`, "2S-16-SS"},
		},
		"removal without effect": {
			house: standard().with(plan.Place{Use: "story-strap", Wall: "2S", On: "stud-stud", At: []float64{16}, Action: "remove"}),
			code:  "place-without-effect", count: 1, contains: []string{"2S-16-SS"},
		},
		"rule that matches nothing": {
			house: standard().with(plan.Rule{Name: "third", At: "stud-base", Use: "base-strap", Where: plan.Where{Level: []string{"third"}}}),
			code:  "rule-matched-nothing", count: 1, contains: []string{`rule "third"`, "level = third does not hold, it is first"},
		},
		"rule that is beaten everywhere": {
			house: standard().with(rule("old", "stud-base", "base-strap"), rule("new", "stud-base", "coil")),
			code:  "without-effect", count: 1, contains: []string{`rule "old"`, "t.toml:101", "its 7 joints"},
		},
		"place that another place beats": {
			house: standard().with(plan.Place{Use: "coil", Wall: "2S", At: []float64{16}}, plan.Place{Use: "floor-strap", Wall: "2S", At: []float64{16}}),
			code:  "without-effect", count: 1, contains: []string{"t.toml:200", "overridden by the engineer's place (t.toml:201)"},
		},
		// Two straps of 1.375 with 0.125 between them: each middle line is 0.75 off
		// the middle of a stud 1.5 wide, on its very edge.
		"no room for two": {
			house: standard().with(plan.Rule{Name: "s", At: "stud-stud", Use: "story-strap", Count: 2, Where: plan.Where{To: 4}}),
			code:  "no-room-on-face", count: 1, contains: []string{"2 joints", "2S-1-SS-strap-2", `face = "both"`},
		},
		// A 10d of 3 in through 0.0418 of steel into a rim 1.5 thick: 1.458 comes out.
		"nail through the rim": {
			house: standard().with(first(rule("b", "stud-base", "base-strap"))),
			edit:  set("base-strap", func(i *plan.Item) { i.Fasteners[0].Nail = "10d common" }), code: "nail-tip-through", count: 1, contains: []string{`1 7/16" through the rim`, `no longer than 1 9/16"`},
		},
		// The clip's 1 1/2 in nail into the 1.5 in side of a stud stays in it; 2 1/2 does not.
		"nail through the stud's side": {
			house: standard().with(plan.Rule{Name: "c", At: "stud-top", Use: "plate-clip", Where: plan.Where{Level: []string{"first"}, To: 4}}),
			edit:  set("plate-clip", func(i *plan.Item) { i.Fasteners[0].Nail = "8d common" }), code: "nail-tip-through", count: 1, contains: []string{`15/16" through the stud`},
		},
		"unknown mark": {house: standard().with(rule("b", "stud-base", "bass-strap")), code: "unknown-mark", count: 1, contains: []string{`did you mean "base-strap"`}},
		"item at a joint it does not fit": {
			house: standard().with(rule("b", "stud-base", "wrap-strap")),
			code:  "item-not-for-joint", count: 1, contains: []string{"stud-top, rafter-plate, girder-plate, opening-head and others"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			var edits []func(map[string]*plan.Item)
			if c.edit != nil {
				edits = append(edits, c.edit)
			}
			_, ds := placed(t, c.house, edits...)
			found := only(ds, c.code)
			require.Len(t, found, c.count, "%v", ds)
			var all []string
			for _, d := range found {
				all = append(all, d.String())
				assert.NotContains(t, d.String(), "\n", "one line")
				assert.NotEmpty(t, d.Mend, "how to fix it")
				assert.NotZero(t, d.Pos.Line, "where in the file")
			}
			for _, want := range c.contains {
				assert.Contains(t, strings.Join(all, "\n"), want)
			}
		})
	}
}

func TestUnusedMarkIsTold(t *testing.T) {
	h := standard().with(rule("b", "stud-base", "base-strap"))
	h.Plan.Items = items()
	p, _ := placed(t, h)
	_, ds := Place(h.House, p.Catalog)
	assert.Len(t, only(ds, "unused-mark"), 7, "eight items, one used")
}

func TestChecksAreDescribed(t *testing.T) {
	seen := map[plan.Code]bool{}
	word := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	for _, c := range Checks {
		assert.Regexp(t, word, c.ID)
		assert.False(t, seen[c.ID], "%s twice", c.ID)
		seen[c.ID] = true
		assert.NotEmpty(t, c.Title)
		assert.NotEmpty(t, c.Doc)
	}
}

func TestClipsKeepClearOfWrapsAndStraps(t *testing.T) {
	// Clips by default go on a stud's side, so a clip at each stud's top and a
	// strap or wrap on each face do not meet.
	_, ds := placed(t, standard().with(rule("c", "stud-top", "plate-clip"), rule("s", "stud-stud", "story-strap"),
		plan.Rule{Name: "w", At: "stud-top", Use: "wrap-strap", Where: plan.Where{Level: []string{"second"}}}))
	assert.Empty(t, ds)
}
