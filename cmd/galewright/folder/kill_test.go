//go:build unix

package folder

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// A test that kills runs this program again with these set: as a run that commits
// the second set and dies before its n-th change on the disk (0: that writes both
// sets by turns until it is killed).
const (
	childDir   = "GALEWRIGHT_TEST_DIR"
	childStep  = "GALEWRIGHT_TEST_STEP"
	childTwice = "GALEWRIGHT_TEST_TWICE"
)

func TestMain(m *testing.M) {
	if dir := os.Getenv(childDir); dir != "" {
		child(dir)
	}
	os.Exit(m.Run())
}

func child(dir string) {
	if os.Getenv(childTwice) != "" {
		exchange = func(_, _ string) error { return unix.ENOTSUP }
	}
	left, _ := strconv.Atoi(os.Getenv(childStep))
	for left == 0 {
		for _, state := range []string{"one", "two"} {
			if _, err := write(dir, state); err != nil {
				panic(err)
			}
		}
	}
	step = func(string) error {
		if left--; left == 0 {
			_ = unix.Kill(os.Getpid(), unix.SIGKILL)
			select {}
		}
		return nil
	}
	if _, err := write(dir, "two"); err != nil {
		panic(err)
	}
	os.Exit(0)
}

func start(t *testing.T, dir string, n int, twice bool) (*exec.Cmd, *bytes.Buffer) {
	var errs bytes.Buffer
	c := exec.Command(os.Args[0])
	c.Stderr = &errs
	c.Env = append(os.Environ(), childDir+"="+dir, fmt.Sprintf("%s=%d", childStep, n))
	if twice {
		c.Env = append(c.Env, childTwice+"=1")
	}
	require.NoError(t, c.Start())
	return c, &errs
}

// killed tells whether the command ended by the kill, not by itself.
func killed(t *testing.T, c *exec.Cmd, errs *bytes.Buffer) bool {
	err := c.Wait()
	if err == nil {
		return false
	}
	status, ok := c.ProcessState.Sys().(interface{ Signaled() bool })
	require.True(t, ok && status.Signaled(), "%s: %s", err, errs)
	return true
}

// TestKilledBeforeEveryStep: the folder holds the earlier or the new set, whole,
// with what is the user's; where folders cannot be exchanged it may be away until
// the next run, which brings it back first.
func TestKilledBeforeEveryStep(t *testing.T) {
	for _, twice := range []bool{false, true} {
		for n := 1; ; n++ {
			dir := filepath.Join(t.TempDir(), "out")
			must(t, dir, "one")
			mine := users(t, dir)
			c, errs := start(t, dir, n, twice)
			if !killed(t, c, errs) {
				require.Greater(t, n, 5)
				require.Equal(t, whole("two", mine), content(t, dir))
				alone(t, dir)
				break
			}
			if !twice {
				require.Equal(t, whole("one", mine), content(t, dir), "step %d", n)
			}
			s, err := Begin(dir, "one")
			require.NoError(t, err)
			require.Equal(t, whole("one", mine), content(t, dir), "step %d, healed", n)
			s.Discard()
			alone(t, dir)
		}
	}
}

// TestKilledAtAnyMoment kills 200 runs at times that a seed gives: after each the
// folder holds one of the two sets whole, the next run heals what is beside it, and
// the user's files are there.
func TestKilledAtAnyMoment(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	must(t, dir, "one")
	mine := users(t, dir)
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 200 {
		c, errs := start(t, dir, 0, false)
		time.Sleep(time.Duration(r.IntN(20_000)) * time.Microsecond)
		require.NoError(t, c.Process.Kill())
		require.True(t, killed(t, c, errs))
		got := content(t, dir)
		for name := range mine { // a folder is moved after the sets changed places
			delete(got, name)
		}
		require.Contains(t, []map[string]string{whole("one", nil), whole("two", nil)}, got, "kill %d", i)
		s, err := Begin(dir, "x")
		require.NoError(t, err)
		s.Discard()
		for name, text := range mine {
			require.Equal(t, text, content(t, dir)[name], "kill %d", i)
		}
		alone(t, dir)
	}
}

// TestUmask: files and folder have the rights that the user's mask leaves them, and
// a folder that he gave others keeps them.
func TestUmask(t *testing.T) {
	was := unix.Umask(0o027)
	defer unix.Umask(was)
	dir := filepath.Join(t.TempDir(), "out")
	must(t, dir, "one")
	mode := func(path string) os.FileMode {
		info, err := os.Stat(path)
		require.NoError(t, err)
		return info.Mode().Perm()
	}
	require.Equal(t, os.FileMode(0o750), mode(dir))
	require.Equal(t, os.FileMode(0o640), mode(filepath.Join(dir, "S-001.svg")))
	require.NoError(t, os.Chmod(dir, 0o700))
	must(t, dir, "two")
	require.Equal(t, os.FileMode(0o700), mode(dir))
}
