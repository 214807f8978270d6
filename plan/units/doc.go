// Package units owns the words in which outputs give a number: feet and
// inches, pounds and pounds per square foot in one system; millimeters, meters,
// kilonewtons and kilopascals in the other. Inside, every number keeps its US
// unit (in, ft, lb, psf, plf, psi, mph); a System turns it into the plan's
// words once, at print, from the number itself and never from printed text.
//
// System.Sprintf is fmt.Sprintf that knows units. In the format
//
//	"%.0f lb, wind %.1f{psf} of %.2f psf"
//
// a floating-point verb followed by a unit, or by a unit in braces that is not
// printed, is a quantity; {+psi} is printed in the metric system alone. In the US system the text comes out as it is written,
// less the braces; in the metric one the quantities are converted. In braces
// alone stands a unit ({psf}: the word) or a quantity that the text fixes
// ({16 psf}).
//
// What is bought by a US size keeps it, with millimeters beside it: Bought,
// Lumber and Nail. Values of a standard that is written in US units, and the
// words of a source, stay as they are written there.
package units
