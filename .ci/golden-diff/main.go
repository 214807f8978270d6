// Golden-diff writes a page that shows every changed golden sheet as it was
// beside what it is now, and the one laid over the other.
//
//	go run ./.ci/golden-diff [-from HEAD] [-out out/golden-diff]
//
// What was comes from git, what is from the working tree; the pictures are
// copied, so that the page stays when the tree moves on.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"html/template"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

func main() {
	from := flag.String("from", "HEAD", "the commit to compare with")
	out := flag.String("out", "out/golden-diff", "the folder that is written anew")
	flag.Parse()
	if flag.NArg() > 0 {
		flag.Usage()
		os.Exit(2)
	}
	list, err := run(*from, *out)
	if err != nil {
		fmt.Fprintln(os.Stderr, "golden-diff:", err)
		os.Exit(1)
	}
	fmt.Printf("%d sheets changed since %s: %s\n", len(list), *from, filepath.Join(*out, "index.html"))
}

// change is one sheet; Old or New is "" where it is not there. Flat tells
// whether the text of its flat sheet changed as well: "" where none is kept.
type change struct{ Name, Old, New, Flat string }

func run(from, out string) ([]change, error) {
	names, err := changed(from)
	if err != nil {
		return nil, err
	}
	if err := os.RemoveAll(out); err != nil {
		return nil, err
	}
	var list []change
	for _, name := range names {
		c, err := copies(from, out, name)
		if err != nil {
			return nil, err
		}
		c.Flat = flat(name, names)
		if strings.HasSuffix(name, ".svg") {
			list = append(list, c)
		}
	}
	return list, writePage(from, out, list)
}

// changed lists the files below golden that differ from a commit, new ones
// included.
func changed(from string) ([]string, error) {
	differ, err := git("diff", "--name-only", "--no-renames", "-z", from, "--", "golden")
	if err != nil {
		return nil, err
	}
	fresh, err := git("ls-files", "--others", "--exclude-standard", "-z", "--", "golden")
	if err != nil {
		return nil, err
	}
	names := strings.FieldsFunc(string(differ)+string(fresh), func(r rune) bool { return r == 0 })
	slices.Sort(names)
	return slices.Compact(names), nil
}

func git(args ...string) ([]byte, error) {
	var fault bytes.Buffer
	cmd := exec.Command("git", args...)
	cmd.Stderr = &fault
	b, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("git %s: %s", args[0], strings.TrimSpace(fault.String()))
	}
	return b, nil
}

// flat tells what became of the text of a sheet's flat sheet.
func flat(name string, names []string) string {
	text := strings.TrimSuffix(name, ".svg") + ".txt"
	if slices.Contains(names, text) {
		return "the layout changed: its text differs too"
	}
	if _, err := os.Stat(text); err == nil {
		return "only the writing changed: its text is the same"
	}
	return ""
}

// copies puts both states of a sheet into the folder.
func copies(from, out, name string) (c change, err error) {
	c.Name = strings.TrimPrefix(name, "golden/")
	if !strings.HasSuffix(name, ".svg") {
		return c, nil
	}
	if old, err := git("show", from+":"+name); err == nil {
		c.Old = "old/" + c.Name
		if err := put(filepath.Join(out, c.Old), old); err != nil {
			return c, err
		}
	}
	now, err := os.ReadFile(name)
	switch {
	case os.IsNotExist(err):
		return c, nil
	case err != nil:
		return c, err
	}
	c.New = "new/" + c.Name
	return c, put(filepath.Join(out, c.New), now)
}

func put(file string, b []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, b, 0o644)
}

func writePage(from, out string, list []change) error {
	var b bytes.Buffer
	if err := page.Execute(&b, map[string]any{"From": from, "List": list}); err != nil {
		return err
	}
	return put(filepath.Join(out, "index.html"), b.Bytes())
}

// page shows old, new and both: laid over each other, what is the same turns
// black and what differs stays light.
var page = template.Must(template.New("page").Parse(`<!doctype html>
<meta charset="utf-8">
<title>Golden sheets changed since {{.From}}</title>
<style>
body{font:14px sans-serif;margin:1em}
section{display:grid;grid-template-columns:1fr 1fr 1fr;gap:4px;margin-bottom:2em}
h2,p{grid-column:1/4;margin:0}
img{width:100%;border:1px solid #999;box-sizing:border-box;background:#fff}
.both{position:relative;isolation:isolate}
.both img+img{position:absolute;left:0;top:0;mix-blend-mode:difference}
</style>
<h1>{{len .List}} golden sheets changed since {{.From}}</h1>
<ul>{{range .List}}<li><a href="#{{.Name}}">{{.Name}}</a> {{.Flat}}</li>{{end}}</ul>
{{range .List}}<section id="{{.Name}}"><h2>{{.Name}}</h2><p>{{.Flat}}</p>
<div>{{if .Old}}<a href="{{.Old}}"><img loading="lazy" src="{{.Old}}" alt="old"></a>{{else}}new{{end}}</div>
<div>{{if .New}}<a href="{{.New}}"><img loading="lazy" src="{{.New}}" alt="new"></a>{{else}}gone{{end}}</div>
<div class="both">{{if and .Old .New}}<img loading="lazy" src="{{.Old}}" alt="old"><img loading="lazy" src="{{.New}}" alt="new">{{end}}</div>
</section>
{{end}}`))
