// Package golden holds the expected output of every plan in examples/: the
// sheets as SVG, the schedules, the lists and the reports, a folder for each
// plan. Its tests compare them byte for byte and read the sheets back against
// the schedule. `go test ./golden -update` renews the files: look at the
// change as a picture before you commit it.
package golden
