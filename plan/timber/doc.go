// Package timber computes what a nailed, strapped or sheathed timber joint
// carries: yield-limit lateral values of nails, withdrawal, head
// pull-through, toe-nails, tension of steel straps and rods, bearing under
// washers, unit shear of sheathing, and the factors of segmented and
// perforated shear walls. Numbers flow in, a value with its governing mode
// and every intermediate number flows out. The package knows nothing of
// plans or houses. Forces are pounds, lengths inches, stresses psi, unit
// shears pounds per foot, unless a name says otherwise.
//
// Every table stands under the standard's own edition and table number, with
// the grade of package source: read, transcribed, second-hand or from memory.
// Values are allowable stress design (ASD) unless said.
package timber
