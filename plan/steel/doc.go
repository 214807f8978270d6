// Package steel makes bodies of pieces: plates on the faces they lie on,
// fasteners as lines from head to tip in the members they find, rods from
// bearing to bearing. Pieces and members go in, bodies come out; what a piece
// holds is read from its body and from nothing else. No load is known here.
package steel
