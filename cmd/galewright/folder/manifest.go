package folder

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// manifest lists the files of a set, each with the state it shows, so that the
// next run takes away sheets that are no longer in it: a stale sheet must not
// be posted.
const manifest = "sheets.txt"

// read returns the plain file names in dir's manifest with the state of each,
// "" where it names none; empty where there is no manifest.
func read(dir string) map[string]string {
	b, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		return nil
	}
	files := map[string]string{}
	for line := range strings.Lines(string(b)) {
		name, state, _ := strings.Cut(strings.TrimSpace(line), "  ")
		if plain(name) {
			files[name] = strings.TrimSpace(state)
		}
	}
	return files
}

// plain tells whether name is that of a sheet in the folder itself: a manifest
// that somebody changed must not make anything else go away.
func plain(name string) bool {
	return name == filepath.Base(name) && (strings.HasSuffix(name, ".svg") || strings.HasSuffix(name, ".pdf"))
}

// listing is the manifest's text, below its head line.
func listing(head string, files map[string]string) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", head)
	for _, name := range sorted(files) {
		fmt.Fprintf(&b, "%s  %s\n", name, files[name])
	}
	return []byte(b.String())
}

func sorted(files map[string]string) []string {
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
