package loadpath

import (
	"bytes"
	"reflect"
	"slices"
	"sync"
	"testing"

	"galewright/plan/placement"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wholeOf prints all that a report gives out.
func wholeOf(t *testing.T, r *Report) string {
	var b bytes.Buffer
	for _, format := range []string{"text", "json"} {
		require.NoError(t, r.WriteWind(&b, format))
		_, err := r.WriteCheck(&b, 1, format)
		require.NoError(t, err)
	}
	return b.String()
}

// explained explains every joint of a report in the order of the IDs.
func explained(r *Report, ids []string) map[string]string {
	out := make(map[string]string, len(ids))
	for _, id := range ids {
		out[id] = r.Explain(id)
	}
	return out
}

func linkIDs(r *Report) (ids []string) {
	for _, l := range r.Links {
		ids = append(ids, l.ID)
	}
	return ids
}

func hipped() box {
	b := sample
	b.kind, b.stories = "hip", 1
	return b
}

func TestExplainChangesNothing(t *testing.T) {
	for name, house := range map[string]string{"gable on piles": sample.plan(), "hip": hipped().plan(), "porch": porchHouse} {
		t.Run(name, func(t *testing.T) {
			p := placed(t, house)
			touched, fresh := anew(p), anew(p)
			before, ids := wholeOf(t, touched), linkIDs(touched)
			first := explained(touched, ids)
			backward := slices.Clone(ids)
			slices.Reverse(backward)
			assert.Equal(t, first, explained(touched, ids), "a second time")
			assert.Equal(t, first, explained(touched, backward), "from the last to the first")
			assert.Equal(t, first, explained(fresh, backward), "a report that nothing was asked of before")
			assert.Equal(t, before, wholeOf(t, touched))
			assert.True(t, reflect.DeepEqual(touched.work, anew(p).work), "model and sums are those of a new report")
		})
	}
}

func TestExplainFromManySides(t *testing.T) {
	r := anew(placed(t, sample.plan()))
	ids := linkIDs(r)[:40]
	want, before := explained(r, ids), wholeOf(t, r)
	var wait sync.WaitGroup
	for i := range 4 {
		wait.Add(1)
		go func() {
			defer wait.Done()
			turned := append(slices.Clone(ids[i*10:]), ids[:i*10]...)
			assert.Equal(t, want, explained(r, turned))
		}()
	}
	wait.Wait()
	assert.Equal(t, before, wholeOf(t, r))
}

func TestCasesLeaveTheModelAlone(t *testing.T) {
	p := placed(t, sample.plan())
	m := newModel(p, fittingsOf(steel.New(p)))
	for _, c := range m.cases() {
		first := m.run(c)
		assert.True(t, reflect.DeepEqual(first, m.run(c)), "%s: a case is the same each time", c)
	}
	for _, g := range m.gusts() {
		assert.True(t, reflect.DeepEqual(m.blow(g), m.blow(g)), "%s", g)
	}
	assert.True(t, reflect.DeepEqual(newModel(p, fittingsOf(steel.New(p))), m))
}

// anew works the report of a placement out by itself.
func anew(p *placement.Placement) *Report {
	r, _ := Run(p)
	return r
}
