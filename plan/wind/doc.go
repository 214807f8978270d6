// Package wind computes the wind pressures of a low-rise building by ASCE
// 7-16 and 7-22: velocity pressure, the directional (chapter 27) and the
// envelope procedure (chapter 28) for the main wind force resisting system and
// which of them a building allows, open roofs, components and cladding,
// internal pressure, overhangs and the least loads, with their limits. A
// Basis flows in, pressures flow out with every coefficient, its table and
// the grade of its source. It knows nothing of hardware or of
// framing, and of package plan the words alone: editions, exposures,
// enclosure classes, kinds of roofs.
//
// Lengths here are feet, speeds miles an hour, pressures pounds per square
// foot at strength level: the allowable stress combination takes 0.6 of them.
// A pressure is positive toward the surface.
//
// Grades are those of package source. What was read of ASCE 7-16 and 7-22 is
// transcriptions: transcribed where a published worked example comes out with
// the value, else second-hand.
package wind
