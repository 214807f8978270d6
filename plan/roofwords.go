package plan

import (
	"regexp"
	"slices"
	"strings"
)

// rafterWord finds the word rafter and what it is part of: hips, valleys and
// jacks are rafters under any roof, and so are the fly rafters of an overhang.
var rafterWord = regexp.MustCompile(`((?:fly|hip|valley|jack|end) |-)?\b([Rr])after(s)?\b(-)?`)

// Trussed tells whether a roof of the plan is made of trusses.
func (p *Plan) Trussed() bool {
	return slices.ContainsFunc(p.Roofs, func(r *Roof) bool { return r.Trusses })
}

// InRoofWords returns a text of the program that speaks of rafters in the words
// of the plan's roofs: trusses where all of them are made of trusses, rafters or
// trusses where some are.
func (p *Plan) InRoofWords(text string) string {
	trusses := 0
	for _, r := range p.Roofs {
		if r.Trusses {
			trusses++
		}
	}
	if trusses == 0 {
		return text
	}
	all := trusses == len(p.Roofs)
	if all {
		text = strings.ReplaceAll(text, "end rafter or gable truss", "gable truss")
	}
	return rafterWord.ReplaceAllStringFunc(text, func(s string) string {
		m := rafterWord.FindStringSubmatch(s)
		if m[1] != "" || m[4] != "" {
			return s
		}
		truss, or := map[string]string{"R": "Truss", "r": "truss"}[m[2]], " or truss"
		if m[3] != "" {
			truss, or = truss+"es", or+"es"
		}
		if all {
			return truss
		}
		return s + or
	})
}
