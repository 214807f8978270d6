package folder

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/gofrs/flock"
)

// ErrPlace is what Begin's error wraps when the folder named cannot be one.
var ErrPlace = errors.New("a set lives in a folder of its own")

// Set is a set of files that is being written for a folder.
type Set struct {
	dir   string // the folder asked for
	home  string // where this run keeps what is its own, beside dir
	lock  *flock.Flock
	state string
	files map[string]string // what is written, with the state it shows
}

// The names in a run's home.
const (
	nextName = "set"      // the set being written; after the change of places the earlier one
	backName = "back"     // the earlier set between two renames, where one step cannot do both
	bringing = "bringing" // names that are the user's, to be brought along
	lockName = "lock"
)

// step is called before each change on the disk, with its name; tests fail or
// kill there.
var step = func(string) error { return nil }

// Begin starts a set for dir that shows state (a word without two spaces), and
// clears away what dead runs left beside it. Nothing in dir changes until
// Commit; Discard must be called in any case.
func Begin(dir, state string) (*Set, error) {
	dir, err := placeOf(dir)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(dir), 0o777); err != nil {
		return nil, fmt.Errorf("cannot make the folder: %w", err)
	}
	turn, err := wait(dir)
	if err != nil {
		return nil, fmt.Errorf("cannot write beside %s: %w", dir, err)
	}
	defer turn.end()
	heal(dir)
	s := &Set{dir: dir, state: state, files: map[string]string{}}
	if err := s.open(); err != nil {
		s.Discard()
		return nil, fmt.Errorf("cannot write beside %s: %w", dir, err)
	}
	return s, nil
}

// placeOf returns dir as what it is on the disk. It refuses a file, the folder
// that the user stands in and those above it: they cannot change places.
func placeOf(dir string) (string, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	if real, err := filepath.EvalSymlinks(dir); err == nil {
		dir = real
	}
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return "", fmt.Errorf("%s is a file: %w; name another", dir, ErrPlace)
	}
	here, err := os.Getwd()
	if err != nil {
		return "", err
	}
	if real, err := filepath.EvalSymlinks(here); err == nil {
		here = real
	}
	if within(here, dir) {
		return "", fmt.Errorf("you stand in %s, or below it: %w; name another, such as out", dir, ErrPlace)
	}
	return dir, nil
}

// within tells whether path is dir or below it.
func within(path, dir string) bool {
	rel, err := filepath.Rel(dir, path)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// open makes the run's home, locked as long as the run lives.
func (s *Set) open() error {
	if err := step("open"); err != nil {
		return err
	}
	home, err := os.MkdirTemp(filepath.Dir(s.dir), homePrefix(s.dir)+"*")
	if err != nil {
		return err
	}
	s.home, s.lock = home, flock.New(filepath.Join(home, lockName))
	if ok, err := s.lock.TryLock(); err != nil || !ok {
		return errors.Join(err, errors.New("the folder beside it cannot be locked"))
	}
	return os.Mkdir(s.next(), 0o777)
}

// homePrefix begins the names of all that runs have beside dir.
func homePrefix(dir string) string { return "." + filepath.Base(dir) + ".galewright-" }

func (s *Set) next() string { return filepath.Join(s.home, nextName) }

// Add writes a file of the set.
func (s *Set) Add(name string, data []byte) error {
	if !plain(name) {
		return fmt.Errorf("%q is no name of a sheet", name)
	}
	if err := s.write(name, data); err != nil {
		return err
	}
	s.files[name] = s.state
	return nil
}

func (s *Set) write(name string, data []byte) error {
	if err := step("write"); err != nil {
		return fmt.Errorf("cannot write %s: %w", name, err)
	}
	if err := os.WriteFile(filepath.Join(s.next(), name), data, 0o666); err != nil {
		return fmt.Errorf("cannot write %s: %w", name, err)
	}
	return nil
}

// Len is the number of files added.
func (s *Set) Len() int { return len(s.files) }

// Commit puts the set in its place, under a manifest with head in its first
// line. A set that is not whole leaves the earlier files that it does not have
// itself; Commit returns those of them that show another state.
func (s *Set) Commit(head string, whole bool) (stale []string, err error) {
	defer s.Discard()
	turn, err := wait(s.dir)
	if err != nil {
		return nil, err
	}
	defer turn.end()
	was := read(s.dir)
	if !whole {
		if stale, err = s.keep(was); err != nil {
			return nil, err
		}
	}
	if err := s.bring(was); err != nil {
		return nil, err
	}
	if err := s.write(manifest, listing(head, s.files)); err != nil {
		return nil, err
	}
	if err := s.swap(); err != nil {
		return nil, fmt.Errorf("cannot put the set in its place, %s: %w; close what is open there, or name a folder in it", s.dir, err)
	}
	restore(s.next(), s.dir, was)
	return stale, nil
}

// keep takes over the files of the earlier set that this one lacks.
func (s *Set) keep(was map[string]string) (stale []string, err error) {
	for _, name := range sorted(was) {
		if _, ok := s.files[name]; ok {
			continue
		}
		if err := s.take(name); errors.Is(err, os.ErrNotExist) {
			continue
		} else if err != nil {
			return nil, fmt.Errorf("cannot keep %s: %w", name, err)
		}
		s.files[name] = was[name]
		if was[name] != s.state {
			stale = append(stale, name)
		}
	}
	return stale, nil
}

// bring takes along what is in the folder and not of the earlier set, as far as
// a file can be in two folders at once, and notes the names for a run that finds
// this one dead.
func (s *Set) bring(was map[string]string) error {
	rest, err := others(s.dir, was)
	if err != nil && !os.IsNotExist(err) {
		return fmt.Errorf("cannot read %s: %w", s.dir, err)
	}
	var names []string
	for _, e := range rest {
		if _, ours := s.files[e.Name()]; ours {
			continue
		}
		names = append(names, e.Name())
		if e.Type().IsRegular() {
			_ = os.Link(filepath.Join(s.dir, e.Name()), filepath.Join(s.next(), e.Name())) // else it is moved after the change of places
		}
	}
	if err := step("bring"); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(s.home, bringing), []byte(strings.Join(names, "\x00")), 0o666)
}

// others returns what is in dir beside a set's files and its manifest.
func others(dir string, set map[string]string) ([]os.DirEntry, error) {
	entries, err := os.ReadDir(dir)
	return slices.DeleteFunc(entries, func(e os.DirEntry) bool {
		_, in := set[e.Name()]
		return in || e.Name() == manifest
	}), err
}

// take has a file of the folder in the next set too.
func (s *Set) take(name string) error {
	from, to := filepath.Join(s.dir, name), filepath.Join(s.next(), name)
	if err := step("keep"); err != nil {
		return err
	}
	if os.Link(from, to) == nil {
		return nil
	}
	return copyFile(from, to)
}

func copyFile(from, to string) (err error) {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

// Discard gives up what is not committed, and clears the run's home away.
func (s *Set) Discard() {
	if s.home == "" {
		return
	}
	removeHome(s.home, s.lock)
	s.home = ""
}
