package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/pflag"
)

var versionCommand = command{
	name: "version", short: "print the version, or the licenses of what is linked in",
	long: `Prints the version of the program and of the Go it was built with; with
--notices the license, whole, of everything linked into it.`,
	example: "galewright version --notices",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		all := f.Bool("notices", false, "print the licenses of the program and of what is linked into it")
		return func(_ []string, s streams) error {
			if *all {
				return writeNotices(s.out)
			}
			version, golang := "(unknown)", ""
			if info, ok := debug.ReadBuildInfo(); ok {
				version, golang = info.Main.Version, info.GoVersion
			}
			_, err := fmt.Fprintf(s.out, "galewright %s %s\n", version, golang)
			return err
		}
	},
}
