package plan

import (
	"fmt"
	"reflect"
	"strings"
)

// lists has the words that a plan may use of each type of words.
var lists = map[reflect.Type]func() []string{}

func init() {
	list(Faces)
	list(ItemKinds)
	list(Phases)
	list(Actions)
	list(RoofKinds)
	list(PanelKinds)
	list(RoofEdges)
	list(GableEnds)
	list(BoardRuns)
	list(EaveBlockings)
	list(WallTops)
	list(GirderSeats)
	list(BraceKinds)
	list(BeamSets)
	list(UnderWalls)
	list(Joins)
	list(OpeningKinds)
	list(FoundationKinds)
	list(Axes)
	list(Sides)
	list(DeadParts)
	list(Combinations)
	list(Distributions)
	list(SegmentShares)
	list(Exposures)
	list(Risks)
	list(Editions)
	list(Enclosures)
	list(Procedures)
	list(Roles)
	list(Drives)
	lists[reflect.TypeFor[Connection]()] = func() []string { return Words(Connections()) }
	list(Coatings)
	list(SaltClasses)
	list(Finishes)
	list(Preservatives)
	lists[reflect.TypeFor[JointKind]()] = func() []string { return Words(JointKinds()) } // of the table as it is
}

func list[W ~string](words []W) {
	all := Words(words)
	lists[reflect.TypeFor[W]()] = func() []string { return all }
}

// UnknownWords tells every word of a plan that is none of its list, as a plan
// made by a program may have; the reader refuses them in a file. What is
// empty stands for the default. Stages that switch on words ask this first,
// so that none takes an unknown word for one it knows.
func UnknownWords(p *Plan) Diagnostics {
	w := &wordCheck{seen: map[any]bool{}}
	w.look(reflect.ValueOf(p), "plan", Pos{File: p.File, Line: 1, Col: 1})
	return w.found
}

// wordCheck walks a plan.
type wordCheck struct {
	seen  map[any]bool // pointers
	found Diagnostics
}

// look checks v and what is in it; where and at are those of the thing that
// has it.
func (w *wordCheck) look(v reflect.Value, where string, at Pos) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && !w.seen[v.Interface()] {
			w.seen[v.Interface()] = true
			w.look(v.Elem(), where, at)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			w.look(v.Index(i), where, at)
		}
	case reflect.Struct:
		where, at = named(v, where, at)
		for i := range v.NumField() {
			w.look(v.Field(i), where, at)
		}
	case reflect.String:
		w.word(v, where, at)
	}
}

// named returns name and place of a thing that has its own.
func named(v reflect.Value, where string, at Pos) (string, Pos) {
	if f := v.FieldByName("Name"); f.IsValid() && f.String() != "" {
		where = strings.ToLower(v.Type().Name()) + " " + f.String()
	}
	if p, ok := v.FieldByName("Pos"), v.Type() != reflect.TypeFor[Pos](); ok && p.IsValid() {
		if pos := p.Interface().(Pos); pos.Line > 0 {
			at = pos
		}
	}
	return where, at
}

// word checks one word.
func (w *wordCheck) word(v reflect.Value, where string, at Pos) {
	list, ok := lists[v.Type()]
	if !ok || v.String() == "" {
		return
	}
	words := list()
	for _, x := range words {
		if x == v.String() {
			return
		}
	}
	w.found = append(w.found, Diagnostic{
		Code: "unknown-word", Summary: fmt.Sprintf("%q is not one of %s", v.String(), strings.Join(words, ", ")),
		Where: where, Mend: "write one of them", Pos: at,
	})
}
