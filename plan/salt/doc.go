// Package salt says how salt air and treated wood meet the steel of a house:
// the class of place that each piece and each of its fasteners is in, from
// where its body lies; whether its coating is what the engineer takes there;
// what is blank; which metals meet in one joint; and which fasteners the code
// does not take in treated wood. It has no table of materials of its own: the
// engineer gives them.
package salt
