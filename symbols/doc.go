// Package symbols is the drawing set's own family of marks: one small shape
// for each kind of hardware, and the few drafting marks that plans need. No
// model flows in; sheet.Symbols in millimeters about their origin flow out.
//
// The family has one grammar. Steel is solid black. Nails are white dots in
// it. Wood and floors are thin outlines, shown only where the piece has no
// meaning without them. Nothing is told by color, and no symbol is another
// one turned: straps lie as they lie in the wall, so a symbol must still be
// itself upside down. Table gives the reason of each shape, and the tests
// hold the family to reading at 3 mm in black.
package symbols
