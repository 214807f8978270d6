package main

import (
	"strings"

	"galewright/plan/schema"

	"github.com/spf13/pflag"
)

// planSchema is the name under which the schema of a plan is printed.
const planSchema = "plan"

// differenceSchema is that under which the schema of a plan that begins with another is.
const differenceSchema = "difference"

var schemaCommand = command{
	name: "schema", args: "NAME", short: "print the JSON Schema of an output, or of a plan",
	long: `Prints the JSON Schema (2020-12) of a JSON output, with the meaning and the unit of
each key: ` + strings.Join(schema.Outputs(), ", ") + `. Every JSON output
names its schema and version; a key is renamed or taken away only with a new
version. The name plan prints the schema (draft 7) by which a TOML editor checks
a plan, difference that of a plan which begins with another one.`,
	example: "galewright schema count",
	setup: func(*pflag.FlagSet) func([]string, streams) error {
		return func(args []string, s streams) error {
			switch {
			case len(args) == 0:
				return usagef("schema: name one of %s, %s, %s", planSchema, differenceSchema, strings.Join(schema.Outputs(), ", "))
			case args[0] == planSchema:
				return schema.Write(s.out)
			case args[0] == differenceSchema:
				return schema.WriteDifference(s.out)
			}
			text, err := schema.Output(args[0])
			if err != nil {
				return usagef("schema: %s", err)
			}
			_, err = s.out.Write(text)
			return err
		}
	},
}
