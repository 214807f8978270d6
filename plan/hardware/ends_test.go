package hardware

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// made returns an item of a kind with fasteners, checked, and the codes told.
func made(t *testing.T, kind plan.ItemKind, fs ...plan.Fasteners) (*Item, []string) {
	t.Helper()
	for i := range fs {
		if fs[i].Nail == "" {
			fs[i].Nail = "10d x 1 1/2"
		}
	}
	src := &plan.Item{Mark: "it", Kind: kind, Width: 2.25, Gauge: "20", Rod: 0.5, Standoff: 1.25, Center: 1.3125, Fasteners: fs}
	if KindNamed(kind).Strap {
		src.Length = 33
	}
	c, ds := New([]*plan.Item{src})
	var codes []string
	for _, d := range ds {
		codes = append(codes, string(d.Code))
		require.NotEmpty(t, d.Mend)
	}
	require.Len(t, c.Items, 1)
	return c.Items[0], codes
}

func TestEnds(t *testing.T) {
	type end struct {
		role  string
		count int
	}
	for _, c := range []struct {
		name  string
		kind  plan.ItemKind
		fs    []plan.Fasteners
		want  []end
		codes []string
	}{
		{"each end", "strap", []plan.Fasteners{{Part: "each end", Count: 7, Parts: 2}}, []end{{"", 7}, {"", 7}}, nil},
		{"one count for a strap", "strap", []plan.Fasteners{{Part: "all", Count: 14, Parts: 1}}, []end{{"", 7}, {"", 7}}, []string{"count-shared"}},
		{"an odd one", "strap", []plan.Fasteners{{Part: "all", Count: 13, Parts: 1}}, nil, []string{"odd-count"}},
		{"odd holes", "strap", []plan.Fasteners{{Part: "all", Count: 12, Holes: 15, Parts: 1}}, nil, []string{"odd-count"}},
		{"one count for a pair", "hold-down pair", []plan.Fasteners{{Count: 18}}, []end{{"", 9}, {"", 9}}, []string{"count-shared"}},
		{"one count for a clip", "clip", []plan.Fasteners{{Count: 8}}, []end{{"", 4}, {"", 4}}, []string{"count-shared"}},
		{"one count for a hold-down", "hold-down", []plan.Fasteners{{Part: "all", Count: 13}}, []end{{"", 13}}, nil},
		{"two ends by name", "strap", []plan.Fasteners{{Part: "to stud", Count: 5}, {Part: "to girder", Count: 8}}, []end{{"stud", 5}, {"girder", 8}}, nil},
		{"one end of a strap", "strap", []plan.Fasteners{{Part: "to stud", Count: 5}}, nil, []string{"not-two-ends"}},
		{"three ends of a strap", "strap", []plan.Fasteners{{Part: "each end", Count: 5, Parts: 3}}, nil, []string{"not-two-ends"}},
		{"one leg of a clip", "clip", []plan.Fasteners{{Part: "to stud", Count: 5}}, []end{{"stud", 5}}, nil},
		{"both flanges of a base hold one post", "post base", []plan.Fasteners{{Part: "each flange", Count: 4, Parts: 2}}, []end{{"", 8}}, nil},
		{"both halves of a cap", "post cap", []plan.Fasteners{{Part: "to post", Count: 4}, {Part: "to beam", Count: 6}}, []end{{"post", 4}, {"beam", 6}}, nil},
		{"a bolt has no second end", "anchor bolt", nil, nil, []string{"rod-without-length"}},
	} {
		it, codes := made(t, c.kind, c.fs...)
		assert.Equal(t, c.codes, codes, c.name)
		var got []end
		sum := 0
		for _, e := range it.Ends() {
			got = append(got, end{e.Role, e.Count})
			sum += e.Count
			assert.Equal(t, e.Size, it.Nails[0], c.name)
			assert.Equal(t, 1, e.Parts, c.name)
		}
		if c.want != nil {
			assert.Equal(t, c.want, got, c.name)
		}
		total := 0
		for _, f := range it.Fasteners {
			total += f.Total()
		}
		assert.Equal(t, total, sum, "%s: the ends have all fasteners", c.name)
	}
}

func TestACountForTheWholeIsTheSameItem(t *testing.T) {
	whole, _ := made(t, "strap", plan.Fasteners{Part: "all", Count: 6, Holes: 10, Rows: 2})
	each, codes := made(t, "strap", plan.Fasteners{Part: "each end", Count: 3, Holes: 5, Rows: 2, Parts: 2})
	require.Empty(t, codes)
	require.Equal(t, each.Ends(), whole.Ends())
	require.Equal(t, each.Item, whole.Item)
}

func TestEndsOnMembers(t *testing.T) {
	stud, girder := &framing.Member{Role: plan.King}, &framing.Member{Role: plan.GirderBeam}
	hip, plate, post := &framing.Member{Role: plan.HipRafter}, &framing.Member{Role: plan.UpperPlate}, &framing.Member{Role: plan.PorchPost}
	for _, c := range []struct {
		name  string
		parts [2]string
		a, b  *framing.Member
		first int // which of the two written is on a
	}{
		{"as written", [2]string{"to stud", "to girder"}, stud, girder, 0},
		{"the other way round", [2]string{"to girder", "to stud"}, stud, girder, 1},
		{"hip or valley", [2]string{"to plate", "to hip or valley"}, hip, plate, 1},
		{"no names", [2]string{"each end", "each end"}, stud, girder, 0},
		{"names of neither", [2]string{"to joist", "to beam"}, stud, girder, 0},
		{"only the second is named", [2]string{"to girder", "to beam"}, stud, girder, 1},
		{"a porch post", [2]string{"to beam", "to post"}, post, girder, 1},
		{"members not known", [2]string{"to stud", "to girder"}, nil, nil, 0},
	} {
		it, _ := made(t, "strap", plan.Fasteners{Part: c.parts[0], Count: 4}, plan.Fasteners{Part: c.parts[1], Count: 5})
		onA, onB := it.EndsOn(c.a, c.b)
		assert.Equal(t, [2]int{4 + c.first, 5 - c.first}, [2]int{onA.Count, onB.Count}, c.name)
	}
	a, b := (&Item{Item: &plan.Item{}}).EndsOn(stud, girder)
	assert.Zero(t, a)
	assert.Zero(t, b)
}
