package render

import (
	"testing"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var planExamples = []string{"marsh-wren", "curlew-row", "shed", "dunlin", "sanderling", "turnstone"}

// planSet is the plans and details of an example on a paper.
type planSet struct {
	m   *Model
	set *sheet.Set
	ds  plan.Diagnostics
}

var planSets = map[string]planSet{}

// planSheets draws the plans and details of an example, once.
func planSheets(t *testing.T, name, paper string) planSet {
	t.Helper()
	key := name + " on " + paper
	if p, ok := planSets[key]; ok {
		return p
	}
	p := planSet{m: pagetest.Example(t, name+".toml")}
	p.set, p.ds = Draw(p.m, Options{Paper: paper, Sheets: []string{"1xx", "5xx"}})
	require.NotNil(t, p.set)
	planSets[key] = p
	return p
}

func TestNothingLetteredLiesOnAnythingOnPlansAndDetails(t *testing.T) {
	for _, name := range planExamples {
		for _, paper := range pagetest.Papers {
			drawn := planSheets(t, name, paper)
			set, ds := drawn.set, drawn.ds
			pagetest.Dump(t, name+"-"+paper, set.Sheets)
			for _, s := range set.Sheets {
				pagetest.NoOverlaps(t, s, name+" "+paper)
				pagetest.OnPaper(t, s)
			}
			for _, d := range ds {
				assert.NotEqual(t, "no-room-on-sheet", string(d.Code), "%s on %s: %s", name, paper, d.Summary)
			}
			assert.NoError(t, sheet.Check(set), "%s on %s", name, paper)
		}
	}
}

func TestRoofAndFoundationPiecesAreAtHomeOnceAndNoOthers(t *testing.T) {
	for _, name := range planExamples {
		for _, paper := range pagetest.Papers {
			drawn := planSheets(t, name, paper)
			m, set := drawn.m, drawn.set
			homes := map[string]int{}
			for _, s := range set.Sheets {
				for _, mk := range s.Marks {
					if pc := sheet.PieceOf(mk); pc != nil && pc.Home {
						homes[pc.Tag]++
					}
				}
			}
			for _, pc := range m.Placement.Pieces {
				want := 0
				if page.HomeOf(pc) != page.OnElevation {
					want = 1
				}
				assert.Equal(t, want, homes[pc.Tag], "%s on %s: %s", name, paper, pc.Tag)
			}
		}
	}
}
