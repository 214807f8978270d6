package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode/utf8"

	"galewright/plan"
	"galewright/plan/pipeline"
)

// sources keeps the text of every file read, for showing lines of it.
type sources map[string]string

// load runs the plan named by the first argument and prints its
// diagnostics; with errors it returns errFault.
func load(args []string, asJSON bool, s streams) (*pipeline.Result, error) {
	r, _, err := loadTexts(args, asJSON, s)
	return r, err
}

// loadTexts is load with the texts that were read.
func loadTexts(args []string, asJSON bool, s streams) (*pipeline.Result, sources, error) {
	r, faults, src, err := runPlan(args)
	if err != nil {
		return nil, nil, err
	}
	if err := src.print(s.err, faults, asJSON); err != nil {
		return nil, nil, err
	}
	if faults.Errors() {
		return r, src, errFault
	}
	return r, src, nil
}

// runPlan runs the plan and returns what came of it, unprinted.
func runPlan(args []string) (*pipeline.Result, plan.Diagnostics, sources, error) {
	if len(args) == 0 {
		return nil, nil, nil, usagef("name the plan, such as examples/shed.toml")
	}
	file := args[0]
	text, err := readText(file, false)
	if err != nil {
		return nil, nil, nil, usagef("cannot read the plan: %s", err)
	}
	src := sources{file: string(text)}
	r, faults := pipeline.Run(file, text, func(name string) ([]byte, error) {
		path := filepath.Join(filepath.Dir(file), name)
		b, err := readText(path, true)
		src[name], src[path] = string(b), string(b)
		return b, err
	})
	return r, faults, src, nil
}

// mostBytes is the largest text that is read: a street of hundreds of houses, each
// written out, is smaller.
const mostBytes = 16 << 20

// readText reads a plan, or what a plan names, which must be a regular file: a plan
// may come from anywhere, and must not make the program wait for a pipe.
func readText(path string, regular bool) ([]byte, error) {
	if info, err := os.Stat(path); err == nil && regular && !info.Mode().IsRegular() {
		return nil, &os.PathError{Op: "read", Path: path, Err: errors.New("is not a regular file")}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, mostBytes+1))
	if err == nil && len(b) > mostBytes {
		err = &os.PathError{Op: "read", Path: path, Err: fmt.Errorf("is larger than %d MiB", mostBytes>>20)}
	}
	return b, err
}

// print writes the diagnostics, each in one line with the line of the plan
// shown below it, or all as one JSON object.
func (src sources) print(w io.Writer, faults plan.Diagnostics, asJSON bool) error {
	if asJSON {
		return src.printJSON(w, faults)
	}
	lines := map[string][]string{}
	first, more := foremost(faults)
	for _, d := range first {
		text, ok := src[d.Pos.File]
		if ok && lines[d.Pos.File] == nil {
			lines[d.Pos.File] = strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
		}
		if _, err := fmt.Fprintf(w, "%s\n%s", d, excerpt(lines[d.Pos.File], d.Pos)); err != nil {
			return err
		}
	}
	if more == 0 {
		return nil
	}
	_, err := fmt.Fprintf(w, "and %s more, after these; `galewright check PLAN --json` lists all\n", thousands(more))
	return err
}

// mostFaults is how many faults are printed at once: nobody mends more before he
// looks again.
const mostFaults = 100

// foremost returns the faults that are printed, in their order, and how many are
// not: of too many the errors come before the warnings.
func foremost(faults plan.Diagnostics) (first plan.Diagnostics, more int) {
	if len(faults) <= mostFaults {
		return faults, 0
	}
	errs := severities(faults)[plan.Error]
	warnings := max(mostFaults-errs, 0)
	for _, d := range faults {
		if d.Severity == plan.Error && len(first) < mostFaults {
			first = append(first, d)
		}
		if d.Severity == plan.Warning && warnings > 0 {
			first, warnings = append(first, d), warnings-1
		}
	}
	return first, len(faults) - len(first)
}

// thousands prints a count with commas.
func thousands(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// excerpt returns the line at pos with a caret below its column.
func excerpt(lines []string, pos plan.Pos) string {
	if pos.Line < 1 || pos.Line > len(lines) || len(lines) == 1 && lines[0] == "" {
		return ""
	}
	line := strings.TrimRight(lines[pos.Line-1], "\r")
	if !utf8.ValidString(line) || strings.ContainsRune(line, 0) {
		return "" // another encoding: a terminal cannot show it
	}
	at := min(max(pos.Col-1, 0), len(line))
	before, after := []rune(shown(line[:at])), []rune(shown(line[at:]))
	before, after = window(before, after)
	lead := strings.Map(func(r rune) rune {
		if r == '\t' {
			return r
		}
		return ' '
	}, string(before))
	return fmt.Sprintf("%5d | %s%s\n      | %s^\n", pos.Line, string(before), string(after), lead)
}

// A line of the plan is shown up to lineWidth characters, of which leadWidth may
// stand before the place.
const lineWidth, leadWidth = 99, 39

// window cuts a line, given before and after a place, to what a terminal shows in one.
func window(before, after []rune) (_, _ []rune) {
	if n := len(before); n > leadWidth && n+len(after) > lineWidth {
		before = append([]rune{'…'}, before[n-leadWidth+1:]...)
	}
	if room := lineWidth - len(before); len(after) > room {
		after = append(after[:room-1:room-1], '…')
	}
	return before, after
}

type jsonFault struct {
	Severity string   `json:"severity"`
	Code     string   `json:"code"`
	File     string   `json:"file"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Summary  string   `json:"summary"`
	Where    string   `json:"where,omitempty"`
	Mend     string   `json:"mend,omitempty"`
	Related  []string `json:"related,omitempty"`
}

// jsonFaults is the output of check; commands that print another JSON print
// it on standard error when the plan has faults.
type jsonFaults struct {
	plan.Head
	Errors   int         `json:"errors"`
	Warnings int         `json:"warnings"`
	Rows     []jsonFault `json:"rows"`
}

func (src sources) printJSON(w io.Writer, faults plan.Diagnostics) error {
	n := severities(faults)
	out := jsonFaults{plan.HeadOf("check", 1), n[plan.Error], n[plan.Warning], make([]jsonFault, len(faults))}
	for i, d := range faults {
		out.Rows[i] = jsonFault{d.Severity.String(), string(d.Code), d.Pos.File, d.Pos.Line, d.Pos.Col, d.Summary, d.Where, d.Mend, nil}
		for _, p := range d.Related {
			out.Rows[i].Related = append(out.Rows[i].Related, p.String())
		}
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}
