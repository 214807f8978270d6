package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A sheet that changed, one that is new and one that is gone each have their
// pictures on the page; what did not change is not there.
func TestPageShowsOldBesideNew(t *testing.T) {
	t.Chdir(t.TempDir())
	sh := func(args ...string) {
		out, err := exec.Command(args[0], args[1:]...).CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	write := func(name, text string) { require.NoError(t, put("golden/shed/"+name, []byte(text))) }
	sh("git", "init", "-q")
	for _, n := range []string{"S-001", "S-002", "S-003", "S-004"} {
		write(n+".svg", "<svg>old</svg>")
		write(n+".txt", "old")
	}
	sh("git", "add", ".")
	sh("git", "-c", "user.name=t", "-c", "user.email=t@example.invalid", "commit", "-qm", "old")
	write("S-001.svg", "<svg>new</svg>")
	write("S-002.svg", "<svg>new</svg>")
	write("S-002.txt", "new")
	require.NoError(t, os.Remove("golden/shed/S-003.svg"))
	write("S-005.svg", "<svg>new</svg>")

	list, err := run("HEAD", "out/golden-diff")
	require.NoError(t, err)
	require.Equal(t, []change{
		{"shed/S-001.svg", "old/shed/S-001.svg", "new/shed/S-001.svg", "only the writing changed: its text is the same"},
		{"shed/S-002.svg", "old/shed/S-002.svg", "new/shed/S-002.svg", "the layout changed: its text differs too"},
		{"shed/S-003.svg", "old/shed/S-003.svg", "", "only the writing changed: its text is the same"},
		{"shed/S-005.svg", "", "new/shed/S-005.svg", ""},
	}, list)
	for file, want := range map[string]string{"old/shed/S-001.svg": "old", "new/shed/S-001.svg": "new", "index.html": `src="old/shed/S-003.svg"`} {
		b, err := os.ReadFile("out/golden-diff/" + file)
		require.NoError(t, err)
		require.Contains(t, string(b), want)
		require.False(t, strings.Contains(string(b), "S-004"), file)
	}
	_, err = run("no-such-commit", "out/golden-diff")
	require.Error(t, err)
}
