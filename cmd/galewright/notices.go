package main

import (
	"embed"
	"fmt"
	"io"
	"strings"
)

//go:embed notices/*.txt
var noticeTexts embed.FS

// notice is the license of one thing that is linked into the program.
type notice struct {
	module  string // path of the Go module; "" for the program, "std" for Go
	name    string
	license string   // its name
	files   []string // texts below notices/, whole, as the module carries them
	note    string
}

// notices lists everything linked in. A test compares it with what the
// program's build lists, and the texts with those of the modules.
var notices = []notice{
	{"", "galewright", "MIT", []string{"galewright.txt"}, ""},
	{"std", "the Go standard library and runtime", "BSD-3-Clause", []string{"go.txt", "go-math.txt"}, ""},
	{"github.com/BurntSushi/toml", "toml", "MIT", []string{"toml.txt"}, ""},
	{
		"github.com/ajstarks/svgo", "svgo by Anthony Starks", "CC BY 4.0",
		[]string{"svgo.txt"},
		"Unchanged; its package float is used. https://creativecommons.org/licenses/by/4.0/",
	},
	{"github.com/spf13/pflag", "pflag", "BSD-3-Clause", []string{"pflag.txt"}, ""},
	{"codeberg.org/go-pdf/fpdf", "fpdf", "MIT", []string{"fpdf.txt", "fpdf-files.txt", "widths.txt"}, ""},
	{"github.com/gofrs/flock", "flock", "BSD-3-Clause", []string{"flock.txt"}, ""},
	{"golang.org/x/sys", "sys, of the Go project", "BSD-3-Clause", []string{"sys.txt", "sys-patents.txt"}, ""},
}

// writeNotices prints every license in full.
func writeNotices(w io.Writer) error {
	var b strings.Builder
	for i, n := range notices {
		if i > 0 {
			b.WriteString("\n" + strings.Repeat("-", 80) + "\n\n")
		}
		fmt.Fprintf(&b, "%s: %s\n", n.name, n.license)
		if n.note != "" {
			fmt.Fprintf(&b, "%s\n", n.note)
		}
		for _, file := range n.files {
			text, err := noticeTexts.ReadFile("notices/" + file)
			if err != nil {
				return fmt.Errorf("license of %s: %w", n.name, err)
			}
			fmt.Fprintf(&b, "\n%s\n", strings.TrimSpace(string(text)))
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
