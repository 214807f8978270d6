// Package dormer draws the elevations of each dormer, its front and both side walls, cut off
// from the house and projected, with the stations of studs and the heights that count from the
// plates under the eave. What ties its studs at head and foot is at home and counted there.
package dormer
