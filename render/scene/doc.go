// Package scene gathers what is around a place of a house as solids that can be
// looked at: wood, the steel of pieces with its thickness, rods with what turns
// on them, concrete under a sill. Members and bodies go in, a project.Scene
// comes out; nothing is moved, widened or left out to make a picture. Lengths
// are inches.
package scene
