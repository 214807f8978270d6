package sheet

import "strings"

// inch is one inch, mm (exactly 25.4 by definition).
const inch = 25.4

// papers lists the papers a set may be drawn on, short side first, in mm.
// They are laid on the drawing board with the long side across.
var papers = []struct {
	name        string
	short, long MM
}{
	{"letter", 8.5 * inch, 11 * inch},
	{"tabloid", 11 * inch, 17 * inch},
	{"ansi-a", 8.5 * inch, 11 * inch},
	{"ansi-b", 11 * inch, 17 * inch},
	{"ansi-c", 17 * inch, 22 * inch},
	{"ansi-d", 22 * inch, 34 * inch},
	{"ansi-e", 34 * inch, 44 * inch},
	{"arch-a", 9 * inch, 12 * inch},
	{"arch-b", 12 * inch, 18 * inch},
	{"arch-c", 18 * inch, 24 * inch},
	{"arch-d", 24 * inch, 36 * inch},
	{"arch-e", 36 * inch, 48 * inch},
	{"arch-e1", 30 * inch, 42 * inch},
	{"a4", 210, 297},
	{"a3", 297, 420},
	{"a2", 420, 594},
	{"a1", 594, 841},
	{"a0", 841, 1189},
}

// PaperNamed returns the paper of that name, long side across; upper and
// lower case are alike.
func PaperNamed(name string) (Paper, bool) {
	name = strings.ToLower(strings.TrimSpace(name))
	for _, p := range papers {
		if p.name == name {
			return Paper{Name: p.name, W: p.long, H: p.short}, true
		}
	}
	return Paper{}, false
}

// PaperNames lists the names that PaperNamed knows.
func PaperNames() []string {
	names := make([]string, len(papers))
	for i, p := range papers {
		names[i] = p.name
	}
	return names
}

// Turned returns p turned by a quarter: long side up when it was across.
func (p Paper) Turned() Paper { return Paper{p.Name, p.H, p.W} }

// Rect returns the whole of the paper.
func (p Paper) Rect() Rect { return Rect{0, 0, p.W, p.H} }

// Small tells whether p comes out of an office printer: no side longer than
// 18 in. Views on small paper break over more sheets and letter smaller.
func (p Paper) Small() bool { return max(p.W, p.H) <= 18*inch }
