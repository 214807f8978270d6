// Package label finds places for labels on a sheet. Obstacles (boxes of
// pieces, dimensions and other lettering) and labels with candidate places
// flow in; a place for each label, with a leader where the near places were
// taken, flows out. No label ever lies on an obstacle or on another label,
// and no leader passes under a label; what cannot be placed is reported.
// The same input gives the same places. It knows boxes, not what they show.
package label
