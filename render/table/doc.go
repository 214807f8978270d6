// Package table sets tables of text, legend numbers, symbols and boxes to tick.
// Columns and rows flow in; a block that flows down the columns of pages flows
// out. The invariant: widths are measured, never guessed, so no text leaves its
// cell however narrow the table is, and a part that goes on elsewhere repeats
// title and heads and parts no rows that belong together.
package table
