package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"strings"
)

// crash is a panic that ended a command: a fault of the program.
type crash struct {
	what  any
	place string // file:line of the program's own code
}

func (c crash) Error() string {
	what, _, _ := strings.Cut(fmt.Sprint(c.what), "\n")
	return fmt.Sprintf("an error in the program, not in the plan (%s, %s); nothing was written: send the plan and this line to the maintainers", what, c.place)
}

// guarded runs do and turns a panic into a crash. What do prints to out comes
// out only when it ended without one: half a list would be taken for a whole.
func guarded(do func([]string, streams) error, args []string, s streams) (err error) {
	var held bytes.Buffer
	defer func() {
		if r := recover(); r != nil {
			err = crash{r, panicPlace()}
			return
		}
		if _, e := io.Copy(s.out, &held); e != nil && err == nil {
			err = fmt.Errorf("cannot write the output: %w", e)
		}
	}()
	return do(args, streams{&held, s.err})
}

// panicPlace returns where in the program the panic that is being recovered
// from came up: the innermost of its own frames below the runtime's.
func panicPlace() string {
	pc := make([]uintptr, 64)
	frames := runtime.CallersFrames(pc[:runtime.Callers(1, pc)])
	panicking := false
	for {
		f, more := frames.Next()
		panicking = panicking || f.Function == "runtime.gopanic"
		own := strings.HasPrefix(f.Function, "galewright/") || strings.HasPrefix(f.Function, "main.")
		if panicking && own {
			return fmt.Sprintf("%s:%d", filepath.Base(f.File), f.Line)
		}
		if !more {
			return "place unknown"
		}
	}
}
