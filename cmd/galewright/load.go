package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
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
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, nil, nil, usagef("cannot read the plan: %s", err)
	}
	src := sources{file: string(text)}
	r, faults := pipeline.Run(file, text, func(name string) ([]byte, error) {
		path := filepath.Join(filepath.Dir(file), name)
		b, err := os.ReadFile(path)
		src[name], src[path] = string(b), string(b)
		return b, err
	})
	return r, faults, src, nil
}

// print writes the diagnostics, each in one line with the line of the plan
// shown below it, or all as one JSON object.
func (src sources) print(w io.Writer, faults plan.Diagnostics, asJSON bool) error {
	if asJSON {
		return src.printJSON(w, faults)
	}
	lines := map[string][]string{}
	for _, d := range faults {
		text, ok := src[d.Pos.File]
		if ok && lines[d.Pos.File] == nil {
			lines[d.Pos.File] = strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
		}
		if _, err := fmt.Fprintf(w, "%s\n%s", d, excerpt(lines[d.Pos.File], d.Pos)); err != nil {
			return err
		}
	}
	return nil
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
	lead := strings.Map(func(r rune) rune {
		if r == '\t' {
			return r
		}
		return ' '
	}, line[:min(max(pos.Col-1, 0), len(line))])
	return fmt.Sprintf("%5d | %s\n      | %s^\n", pos.Line, line, lead)
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
