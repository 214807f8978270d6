package read

import "strings"

// A plan's tables lie four deep; what is far deeper is no plan and would have the
// decoder take memory without end.
const mostNested = 16

// tooDeep returns the place of the first bracket or brace that opens more than
// mostNested inside each other, and of a key of more parts, or −1. It knows strings
// and comments as far as it must to leave out what is in them.
func tooDeep(src string) int {
	depth, dots := 0, 0
	for i := 0; i < len(src); {
		switch c := src[i]; c {
		case '#':
			i += lineEnd(src[i:])
			continue
		case '"', '\'':
			i += stringEnd(src[i:])
			continue
		case '[', '{':
			if depth++; depth > mostNested {
				return i
			}
		case ']', '}':
			depth = max(depth-1, 0)
		case '.':
			if dots++; dots > mostNested {
				return i
			}
		case '\n', '=', ',':
			dots = 0
		}
		i++
	}
	return -1
}

// lineEnd is how many bytes are before the line's end.
func lineEnd(s string) int {
	if i := strings.IndexByte(s, '\n'); i >= 0 {
		return i
	}
	return len(s)
}

// stringEnd is the length of the string that s begins with: of one line, or of
// several between three quotes.
func stringEnd(s string) int {
	quote, escapes := s[:1], s[0] == '"'
	many := strings.HasPrefix(s, quote+quote+quote)
	if many {
		quote += quote + quote
	}
	for i := len(quote); i < len(s); i++ {
		switch {
		case escapes && s[i] == '\\':
			i++
		case !many && s[i] == '\n':
			return i // not closed: the decoder tells
		case strings.HasPrefix(s[i:], quote):
			return i + len(quote)
		}
	}
	return len(s)
}
