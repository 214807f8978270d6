package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"galewright/plan"

	"github.com/spf13/pflag"
)

// Exit codes.
const (
	exitDone  = 0
	exitFault = 1 // the plan has errors, links fail the check asked for, or output cannot be written
	exitUsage = 2 // wrong use
	exitCrash = 3 // a fault of the program
)

// errFault ends a command whose faults are already printed.
var errFault = errors.New("errors were printed")

// usageError is a wrong use of the command line.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func usagef(format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...)}
}

// streams is where a command writes.
type streams struct{ out, err io.Writer }

// command is one word after the program's name. setup declares its flags and
// returns what runs when they are parsed.
type command struct {
	name, args, short, long, example string
	setup                            func(*pflag.FlagSet) func(args []string, s streams) error
}

// commands lists them in the order of help.
func commands() []command {
	return []command{drawCommand, countCommand, checkCommand, loadsCommand, explainCommand, modelCommand, keysCommand, schemaCommand, versionCommand}
}

// run is the whole program: it returns the exit code.
func run(args []string, out, err io.Writer) int { return runAs(dispatch, args, out, err) }

// runAs is run with do in place of dispatch.
func runAs(do func([]string, streams) error, args []string, out, err io.Writer) int {
	out, err = &visible{w: out}, &visible{w: err}
	switch e := guarded(do, args, streams{out, err}); {
	case e == nil:
		return exitDone
	case errors.Is(e, errFault):
		return exitFault
	case errors.As(e, new(usageError)):
		fmt.Fprintf(err, "galewright: %s\n", e)
		return exitUsage
	case errors.As(e, new(crash)):
		fmt.Fprintf(err, "galewright: %s: %s\n", args[0], e)
		return exitCrash
	default:
		fmt.Fprintf(err, "galewright: %s\n", e)
		return exitFault
	}
}

func dispatch(args []string, s streams) error {
	if len(args) == 0 {
		overview(s.err)
		return usagef("say what to do")
	}
	switch args[0] {
	case "--help", "-h":
		overview(s.out)
		return nil
	case "help":
		return help(args[1:], s)
	case "--version":
		args = []string{"version"}
	}
	c, ok := find(args[0])
	if !ok {
		return usagef("there is no command %q; `galewright --help` lists them", args[0])
	}
	return c.invoke(args[1:], s)
}

func find(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func (c command) invoke(args []string, s streams) error {
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	do := c.setup(flags)
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		c.help(s.out)
		return nil
	case err != nil:
		return usagef("%s: %s; see `galewright %s --help`", c.name, err, c.name)
	}
	if want := len(strings.Fields(c.args)); flags.NArg() > want {
		return usagef("%s takes %s, and %q is one too many", c.name, orNothing(c.args), flags.Arg(want))
	}
	return do(flags.Args(), s)
}

func orNothing(args string) string {
	if args == "" {
		return "no argument"
	}
	return args
}

func help(args []string, s streams) error {
	if len(args) == 0 {
		overview(s.out)
		return nil
	}
	c, ok := find(args[0])
	if !ok {
		return usagef("there is no command %q; `galewright --help` lists them", args[0])
	}
	c.help(s.out)
	return nil
}

func (c command) help(w io.Writer) {
	fmt.Fprintf(w, "Usage: galewright %s %s\n\n%s\n", c.name, strings.TrimSpace(c.args+" [flags]"), c.long)
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SortFlags = false
	c.setup(flags)
	if use := flags.FlagUsages(); use != "" {
		fmt.Fprintf(w, "\nFlags:\n%s", use)
	}
	fmt.Fprintf(w, "\nExample:\n  %s\n\n%s\n", c.example, cautionLines())
}

// cautionLines wraps the caution for a terminal of 80 columns.
func cautionLines() string {
	var b strings.Builder
	n := 0
	for _, word := range strings.Fields(plan.Caution) {
		switch {
		case n == 0:
		case n+1+len(word) > 80:
			b.WriteByte('\n')
			n = 0
		default:
			b.WriteByte(' ')
			n++
		}
		b.WriteString(word)
		n += len(word)
	}
	return b.String()
}

func overview(w io.Writer) {
	fmt.Fprint(w, `galewright places the hardware that ties a wood-framed house into one load path
against wind, and prints the location sheets, the count and the checks.

Usage: galewright COMMAND PLAN [flags]

Commands:
`)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-9s %s\n", c.name, c.short)
	}
	fmt.Fprintf(w, `
`+"`galewright COMMAND --help`"+` prints more, with an example.
Exit codes: 0 done; 1 the plan has errors, links fail the check asked for, or
output cannot be written; 2 wrong use; 3 an error in the program.

%s
`, cautionLines())
}
