// Package hardware turns catalogue entries as written into checked items:
// kinds, true thickness, nails with their sizes, what goes on when. A plan's
// items flow in, a Catalogue flows out. It knows the steel, never where it goes.
package hardware

import (
	"galewright/plan"
	"galewright/plan/framing"
)

// Kind is the kind of a catalogue item.
type Kind struct {
	Name   string         // as the plan writes it
	Code   string         // the word a tag ends with; short, stable
	Doc    string         // what the piece does, one clause
	On     []framing.Kind // joint kinds it belongs at, the usual first
	Symbol string         // id in package symbols
	Strap  bool           // a band with two lapped ends, drawn to length
}

// Phase says when a piece goes on.
type Phase struct {
	Name string // "before floor", "before sheathing", "after sheathing", "inside"
	Doc  string
}

// Item is one catalogue entry, checked.
type Item struct {
	*plan.Item
	Kind  *Kind
	Phase *Phase
}

// Catalogue holds the items of a plan.
type Catalogue struct {
	Items []*Item // in the order written
	mark  map[string]*Item
}

// Item returns the item with the mark, or nil.
func (c *Catalogue) Item(mark string) *Item { return c.mark[mark] }
