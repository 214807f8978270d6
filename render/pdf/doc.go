// Package pdf writes a drawing set as one PDF: a page for each sheet at its
// real size, vector only, with a bookmark for each sheet and links between
// sheets. A sheet set flows in, bytes flow out, the same bytes for the same
// set. It is the only package that knows the PDF library. Ink is black, white
// and two grays, so the file prints as it looks.
//
// Lettering is core Helvetica, which every reader has and whose widths the
// views measured with; symbols are drawn out where they are used.
package pdf
