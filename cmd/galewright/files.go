package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"galewright/plan"
)

// file is one output file, whole, before it is written.
type file struct {
	name string
	data []byte
}

// manifest lists the files the last run wrote, so that the next one takes
// away sheets that are no longer in the set: a stale sheet must not be posted.
const manifest = "sheets.txt"

// replace writes the files into dir, each to a temporary file that is then
// renamed. With whole set the files stand for the whole set: those of an
// earlier run that are not among them are removed.
func replace(dir string, files []file, whole bool) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder: %w", err)
	}
	old := listed(dir)
	names := make([]string, 0, len(files))
	for _, f := range files {
		if err := writeFile(filepath.Join(dir, f.name), f.data); err != nil {
			return err
		}
		names = append(names, f.name)
	}
	for _, name := range old {
		switch {
		case slices.Contains(names, name):
		case !whole:
			names = append(names, name)
		default:
			if err := os.Remove(filepath.Join(dir, name)); err != nil && !os.IsNotExist(err) {
				return fmt.Errorf("cannot remove a sheet of an earlier run: %w", err)
			}
		}
	}
	slices.Sort(names)
	return writeFile(filepath.Join(dir, manifest), []byte("# "+plan.Caution+"\n"+strings.Join(names, "\n")+"\n"))
}

// listed returns the plain file names in dir's manifest, past its caution.
func listed(dir string) (names []string) {
	b, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		return nil
	}
	for line := range strings.Lines(string(b)) {
		name := strings.TrimSpace(line)
		if name != "" && name == filepath.Base(name) && (strings.HasSuffix(name, ".svg") || strings.HasSuffix(name, ".pdf")) {
			names = append(names, name)
		}
	}
	return names
}

// writeFile writes data to path by way of a temporary file beside it.
func writeFile(path string, data []byte) (err error) {
	tmp, err := os.CreateTemp(filepath.Dir(path), ".galewright-*")
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	defer func() {
		if err != nil {
			os.Remove(tmp.Name())
		}
	}()
	if _, err = tmp.Write(data); err == nil {
		err = tmp.Chmod(0o644)
	}
	if e := tmp.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(tmp.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return nil
}
