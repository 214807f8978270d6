package capacity

import (
	"fmt"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What stands at a joint in pieces of several marks: the best mark counts, one that holds
// something before one that holds nothing, in whatever order they are; none that the use
// leaves out; a bolt through the sill at a stud's foot is none of them.
func TestTheBestMarkAtAJointCounts(t *testing.T) {
	values := map[string]Capacity{
		"weak": {Value: 300}, "strong": {Value: 500}, "off": {Unknown: "it misses"}, "gone": {Unknown: "nor does it"}, "bolt": {Value: 9000},
	}
	for _, c := range []struct {
		kind  plan.JointKind
		marks string
		skip  string
		mark  string
		want  float64
	}{
		{plan.StudStud, "weak strong", "", "strong", 500},
		{plan.StudStud, "strong weak", "", "strong", 500},
		{plan.StudStud, "weak weak strong", "", "weak", 600},
		{plan.StudStud, "off weak", "", "weak", 300},
		{plan.StudStud, "weak off", "", "weak", 300},
		{plan.StudStud, "off gone", "", "off", 0},
		{plan.StudStud, "strong weak", "strong", "weak", 300},
		{plan.StudStud, "strong", "strong", "", 0},
		{plan.StudStud, "", "", "", 0},
		{plan.StudBase, "bolt weak", "", "weak", 300},
		{plan.GirderPile, "bolt weak", "", "bolt", 9000},
	} {
		j := &framing.Joint{ID: "j", Kind: c.kind}
		a := &Allowables{bodied: map[*placement.Piece][2]Capacity{}}
		var pieces []*placement.Piece
		for _, mark := range strings.Fields(c.marks) {
			kind := plan.StrapItem
			if mark == "bolt" {
				kind = plan.AnchorBoltItem
			}
			p := &placement.Piece{Tag: mark, Joint: j, Item: &hardware.Item{Item: &plan.Item{Mark: mark}, Kind: hardware.KindNamed(kind)}}
			pieces = append(pieces, p)
			a.bodied[p] = [2]Capacity{values[mark]}
		}
		a.placed = placement.Of(&framing.House{}, pieces...)
		got := a.Of(j, Upward, func(p *placement.Piece) bool { return p.Item.Mark != c.skip })
		if c.mark == "" {
			assert.Nil(t, got, "%+v", c)
			continue
		}
		require.NotNil(t, got, "%+v", c)
		assert.Equal(t, c.mark, got.Mark, "%+v", c)
		assert.InDelta(t, c.want, got.Value, 1e-9, "%+v", c)
		assert.Equal(t, c.want == 0, got.Unknown != "", "%+v", c)
	}
}

// Two pieces of a mark add up in one more term; one alone needs none, and where none holds
// anything no sum is told.
func TestPiecesOfOneMarkAddUp(t *testing.T) {
	j := &framing.Joint{ID: "j", Kind: plan.StudStud}
	it := &hardware.Item{Item: &plan.Item{Mark: "s"}, Kind: hardware.KindNamed(plan.StrapItem)}
	base := Term{Text: "nails", Value: 300, Unit: "lb"}
	good, off := Capacity{Value: 300, Terms: []Term{base}}, Capacity{Unknown: "it misses"}
	for _, c := range []struct {
		each    []Capacity
		value   float64
		unknown string
		terms   []Term
	}{
		{[]Capacity{good}, 300, "", []Term{base}},
		{[]Capacity{good, good}, 600, "", []Term{base, {"2 pieces", 600, "lb"}}},
		{[]Capacity{off, good, good}, 600, "", []Term{base, {"p0 holds nothing: it misses", 0, "lb"}, {"3 pieces", 600, "lb"}}},
		{[]Capacity{off, off}, 0, "it misses", nil},
		{[]Capacity{off}, 0, "it misses", nil},
	} {
		a := &Allowables{bodied: map[*placement.Piece][2]Capacity{}}
		var pieces []*placement.Piece
		for i, x := range c.each {
			p := &placement.Piece{Tag: fmt.Sprintf("p%d", i), Joint: j, Item: it}
			pieces = append(pieces, p)
			a.bodied[p] = [2]Capacity{x}
		}
		a.placed = placement.Of(&framing.House{}, pieces...)
		got := a.At(j, Upward)
		require.NotNil(t, got)
		assert.InDelta(t, c.value, got.Value, 1e-9)
		assert.Equal(t, c.unknown, got.Unknown)
		assert.Equal(t, c.terms, got.Terms)
		assert.Equal(t, len(c.each), got.Pieces)
	}
}
