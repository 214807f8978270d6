package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/pflag"
)

var versionCommand = command{
	name: "version", short: "print the version",
	long:    "Prints the version of the program and of the Go it was built with.",
	example: "galewright version",
	setup: func(*pflag.FlagSet) func([]string, streams) error {
		return func(_ []string, s streams) error {
			version, golang := "(unknown)", ""
			if info, ok := debug.ReadBuildInfo(); ok {
				version, golang = info.Main.Version, info.GoVersion
			}
			_, err := fmt.Fprintf(s.out, "galewright %s %s\n", version, golang)
			return err
		}
	},
}
