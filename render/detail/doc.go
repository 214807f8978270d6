// Package detail draws the 5xx sheets: each mark as it lies on members of their
// sizes, large, from two or more sides and slanted. A model goes in through
// page.Context, pages come out. Every view is a projection of what stands there;
// holes are the fasteners in space, lengths the body's own.
package detail
