package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// linked returns the folders of the modules that the program links, by path.
func linked(t *testing.T) map[string]string {
	out, err := exec.Command("go", "list", "-deps", "-json=Module,Standard", ".").Output()
	require.NoError(t, err)
	dirs := map[string]string{}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			Module *struct {
				Path, Dir string
				Main      bool
			}
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return dirs
		} else {
			require.NoError(t, err)
		}
		if p.Module != nil && !p.Module.Main {
			dirs[p.Module.Path] = p.Module.Dir
		}
	}
}

// TestNoticesAreAllThatIsLinked: nothing linked lacks its license, and none
// is told of what is not linked.
func TestNoticesAreAllThatIsLinked(t *testing.T) {
	want := linked(t)
	require.NotEmpty(t, want)
	got := map[string]bool{}
	for _, n := range notices {
		got[n.module] = true
		if n.module != "" && n.module != "std" {
			require.Contains(t, want, n.module, "told but not linked")
		}
	}
	for path := range want {
		require.True(t, got[path], "%s is linked, and its license is not told", path)
	}
	require.True(t, got["std"])
	require.True(t, got[""])
}

// TestNoticesAreTheModulesOwn compares each module's first text with the
// license file of the module, the program's with its own.
func TestNoticesAreTheModulesOwn(t *testing.T) {
	dirs := linked(t)
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	dirs[""], dirs["std"] = "../..", strings.TrimSpace(string(root))
	for _, n := range notices {
		text, err := noticeTexts.ReadFile("notices/" + n.files[0])
		require.NoError(t, err)
		own := license(t, dirs[n.module])
		require.Equal(t, string(own), string(text), n.name)
	}
}

func license(t *testing.T, dir string) []byte {
	for _, name := range []string{"LICENSE", "COPYING"} {
		if b, err := os.ReadFile(filepath.Join(dir, name)); err == nil {
			return b
		}
	}
	t.Fatalf("%s has no license file", dir)
	return nil
}

func TestNoticesArePrinted(t *testing.T) {
	var out bytes.Buffer
	require.Equal(t, exitDone, run([]string{"version", "--notices"}, &out, &out))
	used := map[string]bool{}
	for _, n := range notices {
		require.Contains(t, out.String(), n.name+": "+n.license)
		for _, f := range n.files {
			used[f] = true
			text, err := noticeTexts.ReadFile("notices/" + f)
			require.NoError(t, err)
			require.Contains(t, out.String(), strings.TrimSpace(string(text)))
		}
	}
	files, err := noticeTexts.ReadDir("notices")
	require.NoError(t, err)
	for _, f := range files {
		require.True(t, used[f.Name()], "%s is never printed", f.Name())
	}
}
