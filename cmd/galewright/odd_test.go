package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestOddHousesEndInWords runs every command that reads a plan on the odd
// houses of the framing tests, in wind: each ends with drawings and numbers
// or with faults of the plan, none with a fault of the program.
func TestOddHousesEndInWords(t *testing.T) {
	files, err := filepath.Glob("../../plan/framing/testdata/odd/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		if !strings.Contains(string(src), "[site]") {
			src = append(src, "[site]\nwind_speed = \"125 mph\"\nexposure = \"C\"\n"...)
		}
		dir := t.TempDir()
		plan := filepath.Join(dir, "plan.toml")
		require.NoError(t, os.WriteFile(plan, src, 0o644))
		for _, args := range [][]string{
			{"check", plan, "--loads"}, {"loads", plan}, {"count", plan, "--lumber"}, {"draw", plan, "--out", filepath.Join(dir, "out")},
		} {
			var out, errs strings.Builder
			code := run(args, &out, &errs)
			require.Contains(t, []int{exitDone, exitFault}, code, "%s of %s: %s", args[0], filepath.Base(file), errs.String())
		}
	}
}
