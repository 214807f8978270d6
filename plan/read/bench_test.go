package read_test

import (
	"fmt"
	"strings"
	"testing"
)

// row writes a plan of n four-walled houses side by side.
func row(n int) string {
	var b strings.Builder
	b.WriteString("[project]\nname = \"row\"\n[[level]]\nname = \"g\"\nplate_height = \"9'\"\n")
	for i := range n {
		x0, x1 := i*40, i*40+28
		corner := [][2]int{{x0, 0}, {x1, 0}, {x1, 44}, {x0, 44}, {x0, 0}}
		for k := range 4 {
			fmt.Fprintf(&b, "[[wall]]\nname = \"h%d.%d\"\nfrom = [\"%d'\", \"%d'\"]\nto = [\"%d'\", \"%d'\"]\n", i, k,
				corner[k][0], corner[k][1], corner[k+1][0], corner[k+1][1])
			b.WriteString("  [[wall.opening]]\n  name = \"w1\"\n  at = \"5' 4in\"\n  width = \"3' 2in\"\n  height = \"5'\"\n  sill = \"2'\"\n")
		}
		fmt.Fprintf(&b, "[[roof]]\nname = \"r%d\"\nkind = \"gable\"\npitch = \"7:12\"\narea = [[\"%d'\", \"0'\"], [\"%d'\", \"44'\"]]\n", i, x0, x1)
	}
	return b.String()
}

func BenchmarkRead(b *testing.B) {
	for _, n := range []int{1, 10, 100, 1000} {
		src := row(n)
		b.Run(fmt.Sprintf("houses=%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			for b.Loop() {
				if _, ds := parse(src, nil); len(ds) > 0 {
					b.Fatal(ds[0])
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*n), "µs/house")
		})
	}
}
