// Package page is what all views share: the context of a set (model, paper,
// lettering, what sheets there are), the page with its border, title block and
// drawing verbs, scales and viewports that map inches of the house to
// millimeters of paper, and the flow of blocks down columns. A model and
// options flow in; pages to lay out and to draw on flow out. The invariant:
// a page is laid out before any sheet has its number and drawn after all have,
// and it knows no view.
package page
