package folder

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/gofrs/flock"
)

// removeHome takes a run's home away, before and, where the system keeps an open file
// in its folder, after the lock is let go.
func removeHome(home string, lock *flock.Flock) {
	_ = os.RemoveAll(home)
	_ = lock.Unlock()
	_ = os.RemoveAll(home)
}

// heal finishes or takes away what runs that are dead left beside dir.
func heal(dir string) {
	parent := filepath.Dir(dir)
	entries, _ := os.ReadDir(parent)
	for _, e := range entries {
		if !e.IsDir() || !strings.HasPrefix(e.Name(), homePrefix(dir)) {
			continue
		}
		home := filepath.Join(parent, e.Name())
		lock := flock.New(filepath.Join(home, lockName))
		if ok, err := lock.TryLock(); err != nil || !ok {
			continue // alive
		}
		mend(home, dir)
		removeHome(home, lock)
	}
}

// mend brings back what a dead run had taken out of dir.
func mend(home, dir string) {
	from, back := filepath.Join(home, nextName), filepath.Join(home, backName)
	if _, err := os.Lstat(back); err == nil {
		if os.Rename(back, dir) == nil {
			return // between two renames: the earlier set stands again
		}
		from = back
	}
	note, err := os.ReadFile(filepath.Join(home, bringing))
	if err != nil {
		return
	}
	for name := range strings.SplitSeq(string(note), "\x00") {
		if name != "" && name == filepath.Base(name) {
			moveBack(from, dir, name)
		}
	}
}

// restore moves what is the user's from an earlier set, of the files was, back
// into the folder.
func restore(from, dir string, was map[string]string) {
	rest, _ := others(from, was)
	for _, e := range rest {
		moveBack(from, dir, e.Name())
	}
}

// moveBack moves a user's file or folder into dir, where it is not there, or is
// there as it was before he saved it again.
func moveBack(from, dir, name string) {
	a, err := os.Lstat(filepath.Join(from, name))
	if err != nil {
		return
	}
	b, err := os.Lstat(filepath.Join(dir, name))
	if os.IsNotExist(err) || err == nil && a.ModTime().After(b.ModTime()) && !os.SameFile(a, b) {
		_ = os.Rename(filepath.Join(from, name), filepath.Join(dir, name))
	}
}
