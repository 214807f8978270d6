package symbols

import (
	"maps"
	"slices"
	"strings"

	"galewright/render/sheet"
)

// Entry is one symbol with the reason of its shape.
type Entry struct {
	ID    string
	Title string
	// Why says what the piece does and how the shape says it.
	Why string
	// Hardware is false for drafting marks (north, revision, arrows).
	Hardware bool
	draw     func() []sheet.Mark
}

// Symbol returns the entry as a definition for a sheet set.
func (e Entry) Symbol() sheet.Symbol {
	m := e.draw()
	return sheet.Symbol{ID: e.ID, Title: e.Title, Box: Bounds(m), Marks: m}
}

// Table returns every entry in order of id.
func Table() []Entry {
	t := slices.Clone(table)
	slices.SortFunc(t, func(a, b Entry) int { return strings.Compare(a.ID, b.ID) })
	return t
}

// All returns every symbol in order of id.
func All() []sheet.Symbol {
	t := Table()
	out := make([]sheet.Symbol, len(t))
	for i, e := range t {
		out[i] = e.Symbol()
	}
	return out
}

// For returns the symbol with the id, and whether there is one.
func For(id string) (sheet.Symbol, bool) {
	for _, e := range table {
		if e.ID == id {
			return e.Symbol(), true
		}
	}
	return sheet.Symbol{}, false
}

// Used returns the symbols that the sheets use, in order of id.
func Used(sheets []*sheet.Sheet) []sheet.Symbol {
	used := map[string]bool{}
	for _, s := range sheets {
		maps.Copy(used, sheet.Uses(s.Marks))
	}
	var out []sheet.Symbol
	for _, s := range All() {
		if used[s.ID] {
			out = append(out, s)
		}
	}
	return out
}
