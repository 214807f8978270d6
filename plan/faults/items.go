package faults

// items are the faults of single items of the catalog.
var items = []row{
	{"no-mark", "An item has no mark.", "Give it one."},
	{"mark-twice", "A mark stands for two items.", "Give one of them another."},
	{"unknown-gauge", "A gauge is not in the table.", "Give the thickness in inches."},
	{"unknown-nail", "A fastener has neither a known name nor a size.", `Write it as "8d common", "10d x 1 1/2" or "0.148 x 1 1/2".`},
	{"bad-number", "A size is not a usable number.", "Give one above zero."},
	{"wrong-bodies", "A hold-down with a number of bodies that its kind does not have.", "Change kind, or take bodies out."},
	{"no-thickness", "The thickness of the steel is not known, so its strength cannot be computed.", "Add it."},
	{"load-without-source", "Allowable loads without edition and date of where they are from.", "Add source, or leave loads out to have them computed."},

	{"strap-without-length", "A strap has no length.", "Add it; one from a coil may give its lap instead."},
	{"strap-without-width", "A strap has no width.", "Add it."},
	{"laps-exceed-length", "Two laps are longer than the strap.", "Shorten lap, or take a longer strap."},
	{"legs-exceed-length", "Two legs are longer than the steel they are bent from.", "Shorten a leg, or correct length."},
	{"coil-without-roll", "A coil strap without the length of its roll.", "Add coil."},
	{"longer-than-roll", "A strap is longer than the roll it is cut from.", "Shorten it, or take a longer roll."},
	{"coil-of-no-strap", "An item that is not a strap comes on a coil.", "Take coil out, or correct kind."},
	{"panel-without-size", "Sheathing without the size of a panel.", "Add length and width."},

	{"no-nails", "An item without fasteners.", "Give their type and their count for each part."},
	{"no-count", "A fastener without its count.", "Give the number in each part."},
	{"not-two-ends", "An item has two ends, and its fasteners are given for another number.", "Give each_end, or one count for each end."},
	{"odd-count", "A count for the whole item does not divide evenly between its two ends.", "Give each_end, or one count for each end."},
	{"count-shared", "A count for the whole item is taken as half of it at each end.", "Write each_end to say so."},
	{"more-nails-than-holes", "More nails than the steel has holes.", "Lower the count, or correct holes."},
	{"bad-pattern", "A nail pattern with a number below zero.", "Rows, spacing, end distance and offset are zero or more."},
	{"rows-exceed-width", "Rows of nails do not fit beside each other on the steel.", "Take fewer rows, or wider steel."},
	{"nails-do-not-fit", "The nails of an end take more steel than there is.", "Take fewer nails, more rows, or a longer item."},

	{"no-rod", "A hold-down, bolt or rod without its diameter.", "Add rod."},
	{"no-center", "A hold-down without the distance of its rod from the wood.", "Add center."},
	{"no-standoff", "A hold-down pair without the rod length inside a body.", "Add standoff."},
	{"rod-without-length", "A rod or bolt without a length.", "Add it."},
	{"sheet-coating", "A bolt or rod has a coating of sheet steel.", "Name that of the bolt: hot-dip zinc, stainless and so on."},
	{"washer-too-small", "A washer no wider than its rod.", "Take a wider one."},
}

// loads are the faults of the load path.
var loads = []row{
	{"no-wind-basis", "The plan gives no wind speed, so no loads can be computed.", "Add [site]."},
	{"bad-wind-basis", "The wind basis or the size of the house is not usable.", "Correct the keys of [site] and the walls."},
	{"envelope-not-allowed", "The plan asks for the envelope procedure, and the building is not one it is made for.", "Leave procedure out, or ask for the directional one."},
	{"no-joints", "The house has no joints to carry load.", "Fix what keeps it from being framed."},
	{"uplift-without-path", "Uplift comes down in a wall, and there is no wall below it.", "Put a wall in line below it, or have the engineer detail the load path below."},
	{"rafter-without-support", "Roof members without a bearing have uplift with no load path.", "Give them a wall or beam to bear on."},
	{"ridge-without-support", "A ridge beam carries uplift, and nothing under it resists it.", "Put a wall or post under the ends of the ridge beam."},
	{"no-shear-wall", "No sheathed segment resists the wind along one axis of a level.", "Mark segments with [[wall.shear]]."},
}

// saltAir are what salt air and treated wood have to tell.
var saltAir = []row{
	{"no-shore", "The plan does not say how far salt water is.", "Add shore to [site]."},
	{"no-salt-material", "There is steel in a class of places for which the engineer's material is a blank.", "Add what the engineer takes to [salt]."},
	{"no-coating", "The coating of an item's steel, fasteners or rod is a blank.", "Add coating to the item, coating to its nails, rod_coating to a hold-down or post base, nailing to [salt]."},
	{"coating-falls-short", "A coating is none of those that the engineer takes in the class of place where the piece is, nor a heavier one of its kind.", "Take another, or have the engineer add it."},
	{"two-metals", "Unlike metals meet: a piece and its own fasteners or rod, or two pieces at one joint.", "Take one metal."},
	{"not-for-treated-wood", "A fastener or a connector outdoors has a coating that the code does not take in treated wood.", "Take one that it does, or say in [[treated]] what the wood is."},
	{"idle-treated", "A [[treated]] speaks of members that the house has not.", "Correct it, or take it out."},
	{"idle-salt-override", "An override of the class of places meets no joint that has a piece.", "Correct it, or take it out."},
}

// drawing are the faults of sheets.
var drawing = []row{
	{"unknown-paper", "There is no paper of that name.", "Take one of the list."},
	{"no-such-sheet", "A filter of sheets names none of the set.", "Take a series or a sheet of the set."},
	{"no-such-wall", "A poster is asked for of a wall that no elevation shows.", "Name a wall of the plan."},
	{"paper-too-small", "A wall, or a side of a porch, does not fit the paper at any of the scales.", "Take larger paper."},
	{"no-room-on-sheet", "Something found no room on a sheet of a plan and is left out there.", "Take larger paper."},
	{"label-without-place", "A label found no place on an elevation and is left out there.", "Take larger paper."},
}
