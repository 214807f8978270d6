package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write what the commands print into the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"galewright": func() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) },
		"faulty":     func() { os.Exit(runAs(faulty, os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

// faulty prints the head of a list and then meets a fault of the program.
func faulty(args []string, s streams) error {
	fmt.Fprintln(s.out, "no.  mark  pieces")
	_ = args[len(args)]
	return nil
}

// TestScripts runs testdata/*.txtar: every command, exit code and message as
// a builder meets it at the prompt. $EXAMPLES is the folder of examples.
func TestScripts(t *testing.T) {
	examples, err := os.Getwd()
	require.NoError(t, err)
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples+"/../../examples")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

// exits N CMD ARG...: runs a command and holds it to exit code N.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N CMD ARG...")
	}
	err := ts.Exec(args[1], args[2:]...)
	if got := code(err); got != args[0] {
		ts.Fatalf("exit code %s, want %s", got, args[0])
	}
}

func code(err error) string {
	if err == nil {
		return "0"
	}
	if e, ok := err.(interface{ ExitCode() int }); ok {
		return string(rune('0' + e.ExitCode()))
	}
	return err.Error()
}

// TestHelpExamplesRun runs the example that each command's help gives, from
// the top of the tree as a reader would, and holds it to exit code 0 or, for
// a check, 1.
func TestHelpExamplesRun(t *testing.T) {
	t.Chdir("../..")
	for _, c := range commands() {
		words := strings.Fields(strings.Split(c.example, " > ")[0])
		require.Equal(t, "galewright", words[0])
		for i, w := range words {
			if w == "out" && words[i-1] == "--out" {
				words[i] = t.TempDir()
			}
		}
		var out, err strings.Builder
		got := run(words[1:], &out, &err)
		require.True(t, got == exitDone || got == exitFault && c.name == "check", "%s: exit code %d\n%s", c.example, got, err.String())
		require.NotEmpty(t, out.String(), c.example)
	}
}
