package folder

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheets are the names of the sets in these tests: the second has fewer and one
// that the first lacks.
var sheets = map[string][]string{
	"one": {"S-001.svg", "S-101.svg", "S-201.svg", "sheets.pdf"},
	"two": {"S-001.svg", "S-102.svg"},
}

// write commits the whole set of a state, or only the sheets named.
func write(dir, state string, only ...string) ([]string, error) {
	s, err := Begin(dir, state)
	if err != nil {
		return nil, err
	}
	defer s.Discard()
	names := only
	if names == nil {
		names = sheets[state]
	}
	for _, name := range names {
		if err := s.Add(name, []byte(state+" "+name)); err != nil {
			return nil, err
		}
	}
	return s.Commit("caution", only == nil)
}

func must(t *testing.T, dir, state string, only ...string) []string {
	stale, err := write(dir, state, only...)
	require.NoError(t, err)
	return stale
}

// content is what lies in dir: names to texts, folders to "/".
func content(t *testing.T, dir string) map[string]string {
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	got := map[string]string{}
	for _, e := range entries {
		if e.IsDir() {
			got[e.Name()] = "/"
			continue
		}
		b, err := os.ReadFile(filepath.Join(dir, e.Name()))
		require.NoError(t, err)
		got[e.Name()] = string(b)
	}
	return got
}

// whole is the content of a folder with the set of a state and what the user has there.
func whole(state string, users map[string]string) map[string]string {
	want := map[string]string{}
	list := "# caution\n"
	for _, name := range sheets[state] {
		want[name] = state + " " + name
		list += name + "  " + state + "\n"
	}
	want[manifest] = list
	for name, text := range users {
		want[name] = text
	}
	return want
}

// alone asserts that nothing but the folder is beside it.
func alone(t *testing.T, dir string) {
	entries, err := os.ReadDir(filepath.Dir(dir))
	require.NoError(t, err)
	require.Len(t, entries, 1, entries)
}

// without has folders change places by two renames, as where no system call does both.
func without(t *testing.T) {
	was := exchange
	exchange = func(_, _ string) error { return errors.ErrUnsupported }
	t.Cleanup(func() { exchange = was })
}

// users puts a note and a folder of the user's into dir.
func users(t *testing.T, dir string) map[string]string {
	require.NoError(t, os.WriteFile(filepath.Join(dir, "notes.txt"), []byte("call the yard"), 0o600))
	require.NoError(t, os.Mkdir(filepath.Join(dir, "photos"), 0o700))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "photos", "pile.jpg"), nil, 0o600))
	return map[string]string{"notes.txt": "call the yard", "photos": "/"}
}

// bothWays runs a test with the exchange and with two renames.
func bothWays(t *testing.T, test func(*testing.T)) {
	t.Run("exchange", test)
	t.Run("renames", func(t *testing.T) {
		without(t)
		test(t)
	})
}

func TestASetTakesThePlaceOfTheLast(t *testing.T) {
	bothWays(t, func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "deep", "out")
		require.Empty(t, must(t, dir, "one"))
		require.Equal(t, whole("one", nil), content(t, dir))
		mine := users(t, dir)
		require.Empty(t, must(t, dir, "two"))
		require.Equal(t, whole("two", mine), content(t, dir))
		require.FileExists(t, filepath.Join(dir, "photos", "pile.jpg"))
		alone(t, dir)
	})
}

func TestAPartLeavesTheOthersAndTellsWhichAreOlder(t *testing.T) {
	bothWays(t, func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "out")
		must(t, dir, "one")
		require.Empty(t, must(t, dir, "one", "S-101.svg"), "of the same state")
		require.Equal(t, whole("one", nil), content(t, dir))
		require.Equal(t, []string{"S-001.svg", "S-201.svg", "sheets.pdf"}, must(t, dir, "two", "S-101.svg"))
		got := content(t, dir)
		require.Equal(t, "two S-101.svg", got["S-101.svg"])
		require.Equal(t, "one S-201.svg", got["S-201.svg"])
		require.Contains(t, got[manifest], "S-101.svg  two\n")
		require.NoError(t, os.Remove(filepath.Join(dir, "S-201.svg")))
		require.Equal(t, []string{"S-101.svg"}, must(t, dir, "one", "S-001.svg", "sheets.pdf"), "what the user took away is not in the set")
		require.NotContains(t, content(t, dir)[manifest], "S-201.svg")
	})
}

// TestAnOlderManifest: one that names no states is of another state.
func TestAnOlderManifest(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	require.NoError(t, os.Mkdir(dir, 0o777))
	require.NoError(t, os.WriteFile(filepath.Join(dir, manifest), []byte("# x\nS-201.svg\n../away.svg\nplan.toml\nsub/S-9.svg\n"), 0o600))
	for _, name := range []string{"S-201.svg", "plan.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("old"), 0o600))
	}
	require.Equal(t, []string{"S-201.svg"}, must(t, dir, "one", "S-001.svg"))
	must(t, dir, "two")
	require.Equal(t, whole("two", map[string]string{"plan.toml": "old"}), content(t, dir))
}

// TestEveryFailure: whichever change on the disk fails, as one does that is full,
// the earlier set stands and nothing lies beside it.
func TestEveryFailure(t *testing.T) {
	bothWays(t, func(t *testing.T) {
		t.Cleanup(func() { step = func(string) error { return nil } })
		full := errors.New("no space left on device")
		for n := 1; ; n++ {
			dir := filepath.Join(t.TempDir(), "out")
			step = func(string) error { return nil }
			must(t, dir, "one")
			mine := users(t, dir)
			left := n
			step = func(name string) error {
				if left--; left <= 0 && (left == 0 || name == "open") {
					return full
				}
				return nil
			}
			_, err := write(dir, "two", "S-001.svg", "S-102.svg")
			alone(t, dir)
			if err == nil {
				require.Greater(t, n, 8, "every step failed once")
				return
			}
			require.ErrorIs(t, err, full)
			require.Equal(t, whole("one", mine), content(t, dir))
		}
	})
}

// TestManyAtOnce: whoever is last, the folder holds one whole set.
func TestManyAtOnce(t *testing.T) {
	bothWays(t, func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "out")
		must(t, dir, "one")
		mine := users(t, dir)
		var all sync.WaitGroup
		done := make(chan error, 40)
		for i := range 40 {
			all.Go(func() {
				_, err := write(dir, []string{"one", "two"}[i%2])
				done <- err
			})
		}
		all.Wait()
		close(done)
		good := 0
		for err := range done {
			if err == nil {
				good++
			}
		}
		require.Positive(t, good)
		_, err := write(dir, "two")
		require.NoError(t, err)
		require.Equal(t, whole("two", mine), content(t, dir))
		alone(t, dir)
	})
}

// TestANoteSavedMeanwhile: what the user saves while sheets are drawn is his last word.
func TestANoteSavedMeanwhile(t *testing.T) {
	bothWays(t, func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "out")
		must(t, dir, "one")
		users(t, dir)
		t.Cleanup(func() { step = func(string) error { return nil } })
		step = func(name string) error {
			if name != "swap" {
				return nil
			}
			later := time.Now().Add(time.Second)
			for _, f := range []string{"notes.txt", "new.txt"} {
				tmp := filepath.Join(dir, f+"~")
				require.NoError(t, os.WriteFile(tmp, []byte("call again"), 0o600))
				require.NoError(t, os.Chtimes(tmp, later, later))
				require.NoError(t, os.Rename(tmp, filepath.Join(dir, f)))
			}
			return nil
		}
		must(t, dir, "two")
		require.Equal(t, whole("two", map[string]string{"notes.txt": "call again", "new.txt": "call again", "photos": "/"}), content(t, dir))
	})
}

// TestWhatIsNewerStays: a note saved into the folder after the change of places is
// not covered by what it was before.
func TestWhatIsNewerStays(t *testing.T) {
	from, dir := t.TempDir(), t.TempDir()
	for i, d := range []string{from, dir} {
		path := filepath.Join(d, "notes.txt")
		require.NoError(t, os.WriteFile(path, fmt.Append(nil, i), 0o600))
		at := time.Unix(1000+int64(i), 0)
		require.NoError(t, os.Chtimes(path, at, at))
	}
	restore(from, dir, nil)
	require.Equal(t, "1", content(t, dir)["notes.txt"])
}

func TestPlaces(t *testing.T) {
	root := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(root, "here", "below"), 0o777))
	require.NoError(t, os.WriteFile(filepath.Join(root, "file"), nil, 0o600))
	t.Chdir(filepath.Join(root, "here"))
	for dir, want := range map[string]string{
		".": "you stand in", "..": "you stand in", filepath.Join("..", "file"): "is a file", root: "you stand in",
	} {
		_, err := Begin(dir, "one")
		require.ErrorIs(t, err, ErrPlace, dir)
		require.ErrorContains(t, err, want, dir)
	}
	must(t, "below", "one")
	must(t, filepath.Join("..", "heretoo"), "one")
	require.Equal(t, whole("one", nil), content(t, "below"))
}

// TestALinkStays: a folder that is a link keeps being one.
func TestALinkStays(t *testing.T) {
	root := t.TempDir()
	real, link := filepath.Join(root, "real", "out"), filepath.Join(root, "out")
	must(t, real, "one")
	require.NoError(t, os.Symlink(real, link))
	must(t, link, "two")
	require.Equal(t, whole("two", nil), content(t, real))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink)
}

func TestNamesOfSheets(t *testing.T) {
	s, err := Begin(filepath.Join(t.TempDir(), "out"), "one")
	require.NoError(t, err)
	defer s.Discard()
	for _, name := range []string{"../S-1.svg", "a/S-1.svg", "plan.toml", manifest, ""} {
		require.Error(t, s.Add(name, nil), name)
	}
	require.NoError(t, s.Add("S-1.svg", nil))
}

// TestOthersHomesStay: what is beside the folder under another name, or belongs to
// a run that lives, is not touched.
func TestOthersHomesStay(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "out")
	living, err := Begin(dir, "one")
	require.NoError(t, err)
	require.NoError(t, living.Add("S-001.svg", []byte("a")))
	for _, name := range []string{".outer.galewright-1", ".out.notes"} {
		require.NoError(t, os.Mkdir(filepath.Join(root, name), 0o777))
	}
	must(t, dir, "two")
	require.DirExists(t, filepath.Join(root, ".outer.galewright-1"))
	require.DirExists(t, filepath.Join(root, ".out.notes"))
	_, err = living.Commit("caution", true)
	require.NoError(t, err)
	assert.Equal(t, "a", content(t, dir)["S-001.svg"])
	assert.NotContains(t, strings.Join(names(t, root), " "), ".out.galewright")
}

func names(t *testing.T, dir string) (list []string) {
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}
