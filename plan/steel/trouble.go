package steel

import (
	"fmt"
	"strings"

	"galewright/plan"
)

// trouble is what one piece lacks where it is.
type trouble struct {
	code          plan.Code
	body          *Body
	summary, mend string
}

// Faults tells which fasteners find no wood where they are. What is alike of one rule or place on one
// host is told once, with every piece.
func (s *Steel) Faults() plan.Diagnostics {
	type key struct {
		code          plan.Code
		host, summary string
		pos           plan.Pos
	}
	groups := map[key]int{}
	var out plan.Diagnostics
	var tags [][]string
	for _, t := range s.troubles() {
		p := t.body.Piece
		_, pos := p.By()
		k := key{t.code, p.Joint.HostName(), t.summary, pos}
		i, ok := groups[k]
		if !ok {
			i = len(out)
			groups[k] = i
			out = append(out, plan.Diagnostic{Severity: plan.Warning, Code: t.code, Summary: p.Item.Mark + ": " + t.summary, Where: k.host, Mend: t.mend, Pos: pos})
			tags = append(tags, nil)
		}
		tags[i] = append(tags[i], p.Tag)
	}
	for i := range out {
		out[i].Where += ", " + fewOf(tags[i])
	}
	return out
}

// named is how many pieces a message names before the rest is counted.
const named = 8

// fewOf names the first of some tags, and the last.
func fewOf(tags []string) string {
	n := len(tags)
	s := strings.Join(tags[:min(n, named)], ", ")
	if n > named {
		s += fmt.Sprintf(" and %d more to %s", n-named, tags[n-1])
	}
	return s
}

// troubles finds them, in the order of the pieces.
func (s *Steel) troubles() (out []trouble) {
	for _, b := range s.Bodies {
		if n := len(b.Loose()); n > 0 {
			out = append(out, trouble{
				"fastener-without-wood", b, fmt.Sprintf("no wood behind %d of its %s", n, plan.Counted(len(b.Fasteners), "fastener")),
				"move the piece to where there is wood behind it, add blocking, or take a smaller item",
			})
		}
	}
	return out
}
