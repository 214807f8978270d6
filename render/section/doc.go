// Package section draws a section across each line of bearing walls, from the ridge to
// the foundation: what one stretch of wall as long as its studs are apart holds, cut open
// and looked at along the wall, with each joint's demand, capacity and ratio beside it.
package section
