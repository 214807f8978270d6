// Package roofplan turns roof bodies over one level into the geometry that a
// roof plan shows: faces with their edges, the lines (ridge, hip, valley)
// between them, and the rafter lines on each face. Bodies flow in, a Roof
// flows out. The roof is the upper envelope of its bodies: where two meet,
// the higher plane is the roof, and a lower ridge runs on until it dies in
// the other body's plane. Faces tile the plan of all bodies with their
// overhangs without gap or overlap. All is plane geometry in inches; the
// package knows no lumber: a line has no thickness here. Of package plan it
// takes the words alone: kinds of roofs, axes, sides.
//
// A kind of roof is a function that says which sides of a rectangle slope;
// each kind of package plan is a file of its own (gable.go, hip.go, shed.go),
// and any other is an error.
package roofplan
