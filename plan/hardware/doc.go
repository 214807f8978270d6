// Package hardware turns catalog entries as written into checked items:
// kinds, true thickness, nails with their sizes, what goes on when. A plan's
// items flow in, a Catalog flows out. It knows the steel, never where it goes.
//
// Invariant: every item of a Catalog has a kind, a phase, a mark of its own
// and fasteners whose diameter and length are known.
package hardware
