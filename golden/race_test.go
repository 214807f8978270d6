//go:build race

package golden

// readPapers are those that sheets are read back from: under the race detector one, the
// largest; reading XML back has no races to find, and takes it many times as long.
var readPapers = []string{"arch-d"}
