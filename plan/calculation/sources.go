package calculation

import (
	"regexp"
	"slices"
	"strings"

	"galewright/plan/source"
)

// Source is one document, with its clause or table, that a number comes from.
type Source struct {
	Name  string
	Grade string // a word of package source
}

// cited finds a document and clause with its grade in a text: "NDS 2018 12.2
// (transcribed)", "SDPWS 2021 4.3.6.1, second-hand".
var cited = regexp.MustCompile(`((?:ASCE|NDS|SDPWS|AISI|ASTM|IBC|APA|FEMA|NFIP)\b[^();:]*?)(?: \(|, )(` + gradesOr() + `)\b`)

// gradesOr is the words of all grades, for a regular expression.
func gradesOr() string {
	var list []string
	for _, g := range source.Grades() {
		list = append(list, regexp.QuoteMeta(string(g)))
	}
	return strings.Join(list, "|")
}

// sources gathers what is cited in the set's own texts, each once, by name.
func sources(s *Set) (out []Source) {
	seen := map[Source]bool{}
	put := func(x Source) {
		if !seen[x] {
			seen[x] = true
			out = append(out, x)
		}
	}
	for _, x := range s.given() {
		put(x)
	}
	for _, text := range s.texts() {
		for _, m := range cited.FindAllStringSubmatch(text, -1) {
			put(Source{strings.TrimSpace(strings.TrimSuffix(m[1], ",")), m[2]})
		}
	}
	slices.SortFunc(out, func(a, b Source) int {
		if c := strings.Compare(a.Name, b.Name); c != 0 {
			return c
		}
		return strings.Compare(a.Grade, b.Grade)
	})
	return out
}

// given are the sources that stand by themselves: of dead loads, and of the
// allowable loads that the catalog gives.
func (s *Set) given() (out []Source) {
	for _, d := range s.Report.Dead {
		if m := graded.FindStringSubmatch(d.Source); m != nil {
			out = append(out, Source{m[1], m[2]})
		}
	}
	for _, l := range s.Report.Links {
		if l.Capacity != nil && strings.HasPrefix(l.Capacity.Source, "maker's value") {
			out = append(out, Source{l.Capacity.Source, "the plan's catalog"})
		}
	}
	return out
}

// graded finds the grade at the end of a source.
var graded = regexp.MustCompile(`^(.*) \((` + gradesOr() + `)\)$`)

// texts is everything of the set that may cite a source.
func (s *Set) texts() (out []string) {
	for _, x := range s.Sections {
		if x.ID == "dead_loads" { // told whole
			continue
		}
		out = append(out, x.Notes...)
		for _, row := range x.Rows {
			for _, c := range row {
				out = append(out, c.Text)
			}
		}
	}
	for _, x := range s.Lines {
		out = append(append(out, x.Workings...), x.SharedBy())
	}
	for _, c := range s.Checks {
		for _, l := range c.Links {
			out = append(out, l.texts()...)
		}
	}
	return append(append(out, s.Report.Assumed...), s.Report.Unchecked...)
}

// texts is everything of a link that may cite a source.
func (l *Link) texts() (out []string) {
	out = append(slices.Clone(l.Workings), l.Notes...)
	for _, t := range l.Terms {
		out = append(out, t.Text)
	}
	if l.Capacity != nil {
		out = append(out, l.Capacity.Source, l.Capacity.Governs)
		for _, t := range l.Capacity.Terms {
			out = append(out, t.Text)
		}
	}
	return out
}
