package main

import (
	"fmt"
	"os"
	"path/filepath"
	"sort"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render"
	"galewright/render/svg"
)

func main() {
	f := os.Args[1]
	src, _ := os.ReadFile(f)
	p, ds := plan.Read(f, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(f), n)) })
	show(ds)
	if ds.Errors() {
		return
	}
	h, ds := framing.Frame(p)
	show(ds)
	n := map[string]int{}
	for _, j := range h.Joints {
		n[string(j.Kind)]++
	}
	pr(n)
	if len(os.Args) > 3 {
		for _, j := range h.Joints {
			if j.Kind == "rafter-plate" && j.Host == os.Args[3] {
				fmt.Print(j.ID, " ", j.Station, " ")
				for _, m := range j.Members { fmt.Print(m.ID, "(", m.Role, ") ") }
				fmt.Println()
			}
		}
	}
	c, ds := hardware.New(p.Items)
	show(ds)
	pl, ds := placement.Place(h, c)
	show(ds)
	m := map[string]int{}
	for _, x := range pl.Pieces {
		m[x.Item.Mark]++
	}
	pr(m)
	if len(os.Args) > 2 && os.Args[2] == "loads" {
		rep, ds := loadpath.Run(pl)
		show(ds)
		if rep != nil { rep.WriteCheck(os.Stdout, 1, "text") }
		return
	}
	if len(os.Args) > 2 {
		set, ds := render.Draw(&render.Model{House: h, Placement: pl, Schedule: schedule.New(pl)}, render.Options{})
		show(ds)
		os.MkdirAll(os.Args[2], 0o755)
		for i := range set.Sheets {
			w, _ := os.Create(filepath.Join(os.Args[2], set.Sheets[i].Title.Sheet+".svg"))
			fmt.Println(set.Sheets[i].Title.Sheet, svg.Write(w, set, i, svg.Options{}))
			w.Close()
		}
	}
}
func show(ds plan.Diagnostics) {
	for i, d := range ds.Sorted() {
		if i > 60 { fmt.Println("...", len(ds)); break }
		fmt.Println(d)
	}
}
func pr(m map[string]int) {
	var k []string
	for x := range m {
		k = append(k, x)
	}
	sort.Strings(k)
	for _, x := range k {
		fmt.Printf("%s=%d ", x, m[x])
	}
	fmt.Println()
}
