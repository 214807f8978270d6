package page

import (
	"strings"

	"galewright/render/sheet"
)

// Wrap breaks s at blanks into lines no wider than w. A figure stays with its
// fraction, its unit and its name ("No. 12", "Table L3") unless they are wider
// than w by themselves.
func Wrap(s string, capHeight sheet.MM, bold bool, w sheet.MM) (lines []string) {
	blank := TextWidth(" ", capHeight, bold)
	var words []string
	for _, word := range Unparted(s) {
		if TextWidth(word, capHeight, bold) > w {
			words = append(words, parted(word, capHeight, bold, w)...)
		} else {
			words = append(words, word)
		}
	}
	from, width := 0, sheet.MM(0) // the words of the line so far
	for i, word := range words {
		wide := TextWidth(word, capHeight, bold)
		if i > from && width+blank+wide > w {
			lines = append(lines, strings.Join(words[from:i], " "))
			from, width = i, 0
		}
		if i > from {
			width += blank
		}
		width += wide
	}
	if from < len(words) {
		lines = append(lines, strings.Join(words[from:], " "))
	}
	return lines
}

// parted breaks what is joined but too wide for a line, after an "x" if that
// is enough: 3'-2 1/2" x | 5'-2 1/2".
func parted(s string, capHeight sheet.MM, bold bool, w sheet.MM) (out []string) {
	for part := range strings.SplitSeq(strings.ReplaceAll(s, " x ", " x\n"), "\n") {
		if TextWidth(part, capHeight, bold) > w {
			out = append(out, strings.Fields(part)...)
		} else {
			out = append(out, part)
		}
	}
	return out
}

// Unparted returns the words of s, each figure together with what a line may
// not part it from.
func Unparted(s string) (out []string) {
	last := "" // word of s
	for _, w := range strings.Fields(s) {
		if n := len(out); n > 0 && joined(last, w) {
			out[n-1] += " " + w
		} else {
			out = append(out, w)
		}
		last = w
	}
	return out
}

// unitWords are the words that a figure before them keeps beside it.
var unitWords = set("in ft lb lb-in lb-ft psf plf psi ksi pcf mph m/s ga gauge mm cm m m² mm² in² ft² in³ lb/in3 kg/m³ kN kN/m kN·m N kPa Pa MPa GPa kg degrees o.c. dia. hours % q")

// named are the words that keep the figure after them.
var named = set("No. Table Tables Fig. Figs. Eq. Gr Grade Exposure Appendix")

func set(words string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(words) {
		out[w] = true
	}
	return out
}

// joined tells whether the blank between two words holds a figure together:
// 4 | 1/2", 16" | o.c., 415 | lb, 10d | x | 2 1/2, No. | 12.
func joined(a, b string) bool {
	a, b = strings.TrimLeft(a, "("), strings.TrimRight(b, ".,;:)")
	if b == "o.c" || b == "dia" {
		b += "."
	}
	switch {
	case b == "":
		return false
	case named[a]:
		return true
	case a == "x":
		return isDigit(b[0])
	case a == "" || !figure(a):
		return false
	}
	return unitWords[b] || b == "x" || fraction(b)
}

// figure tells whether a word ends as a figure does: 12, 1/2, 16", 4'-0, 10d.
func figure(w string) bool {
	w = strings.TrimRight(w, `"'`)
	if n := len(w); n > 1 && w[n-1] == 'd' {
		w = w[:n-1]
	}
	return w != "" && isDigit(w[len(w)-1])
}

// fraction tells whether a word begins as the fraction of a figure: 1/2, 15/16".
func fraction(w string) bool {
	top, bottom, ok := strings.Cut(w, "/")
	return ok && top != "" && bottom != "" && strings.Trim(top, "0123456789") == "" && isDigit(bottom[0])
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }
