package timber

import "galewright/plan/source"

// Sheet is one thickness of cold-formed sheet steel, in, without zinc.
type Sheet struct {
	Mil     int          // name by minimum thickness, thousandths of an inch
	Gauge   int          // of the trade; 0 = none
	Design  float64      // for strength
	Minimum float64      // least that may be delivered: 95 % of Design
	Grade   source.Grade // of the copy that the row was taken from
}

// sheets are the design thicknesses of structural sheet by its mil name. The
// name is the minimum thickness (AISI S400 A2.1, transcribed); minimum at
// least 95 % of design (AISI S220 A5.1.1, second-hand; a sheet-steel trade
// table prints the same rule, read).
var sheets = []Sheet{
	{18, 25, 0.0188, 0.0179, source.SecondHand},
	{27, 22, 0.0283, 0.0269, source.SecondHand},
	{30, 0, 0.0312, 0.0296, source.SecondHand},
	{33, 20, 0.0346, 0.0329, source.Transcribed},
	{43, 18, 0.0451, 0.0428, source.Transcribed},
	{54, 16, 0.0566, 0.0538, source.Transcribed},
	{68, 14, 0.0713, 0.0677, source.FromMemory},
	{97, 12, 0.1017, 0.0966, source.FromMemory},
	{118, 10, 0.1242, 0.1180, source.FromMemory},
}

// SheetOf returns the sheet of a mil name, or of a structural gauge (the
// gauges of 18 and 27 mil are from memory).
func SheetOf(mil, gauge int) (Sheet, bool) {
	for _, s := range sheets {
		if mil == s.Mil || mil == 0 && gauge != 0 && gauge == s.Gauge {
			return s, true
		}
	}
	return Sheet{}, false
}
