package pos

import (
	"strconv"
	"strings"
)

// scanner walks accepted TOML once and notes where keys and values begin.
type scanner struct {
	src    string
	i      int
	line   int // line breaks before lineAt
	lineAt int
	sol    int // where the line of lineAt starts
	x      *Index
	tables map[string]int // [[path]] -> elements so far
}

// document reads headers and key-value lines to the end.
func (s *scanner) document() {
	path, bare := "", ""
	for {
		s.space(true)
		if s.i >= len(s.src) {
			return
		}
		if s.src[s.i] != '[' {
			s.keyValue(path, bare)
			continue
		}
		array := strings.HasPrefix(s.src[s.i:], "[[")
		s.i++
		if array {
			s.i++
		}
		s.space(false)
		p := s.here()
		parts := s.key()
		path, bare = s.resolve(parts[:len(parts)-1])
		path, bare = join(path, parts[len(parts)-1]), join(bare, parts[len(parts)-1])
		if array {
			n := s.tables[path]
			s.tables[path]++
			s.put(path, p, false)
			path += "[" + strconv.Itoa(n) + "]"
		}
		s.x.keys = append(s.x.keys, bare[1:])
		s.put(path, p, true)
		s.space(false)
		s.i += strings.Index(s.src[s.i:], "]") + 1
		if array {
			s.i++
		}
	}
}

// resolve turns header parts into a path, taking the last element of every [[array]].
func (s *scanner) resolve(parts []string) (path, bare string) {
	for _, k := range parts {
		path, bare = join(path, k), join(bare, k)
		if n := s.tables[path]; n > 0 {
			path += "[" + strconv.Itoa(n-1) + "]"
		}
	}
	return path, bare
}

// keyValue reads one key = value below path; bare is path without indexes.
func (s *scanner) keyValue(path, bare string) {
	p := s.here()
	for _, k := range s.key() {
		path, bare = join(path, k), join(bare, k)
	}
	s.put(path, p, true)
	s.x.keys = append(s.x.keys, bare[1:])
	s.space(false)
	s.i++ // '='
	s.space(false)
	s.value(path, bare)
}

// value skips a value and notes the places of what stands inside it.
func (s *scanner) value(path, bare string) {
	switch s.src[s.i] {
	case '"', '\'':
		s.str()
	case '[':
		s.array(path, bare)
	case '{':
		s.inline(path, bare)
	default:
		n := strings.IndexAny(s.src[s.i:], ",]}#\r\n")
		if n < 0 {
			n = len(s.src) - s.i
		}
		s.i += n
	}
}

// array reads [ ... ], noting each element.
func (s *scanner) array(path, bare string) {
	s.i++
	for n := 0; ; {
		s.space(true)
		switch s.src[s.i] {
		case ']':
			s.i++
			return
		case ',':
			s.i++
			n++
		default:
			elem := path + "[" + strconv.Itoa(n) + "]"
			s.put(elem, s.here(), true)
			s.value(elem, bare)
		}
	}
}

// inline reads { ... }, noting each key.
func (s *scanner) inline(path, bare string) {
	s.i++
	for {
		s.space(true)
		switch s.src[s.i] {
		case '}':
			s.i++
			return
		case ',':
			s.i++
		default:
			s.keyValue(path, bare)
		}
	}
}

// key reads a dotted key.
func (s *scanner) key() (parts []string) {
	for {
		s.space(false)
		if c := s.src[s.i]; c == '"' || c == '\'' {
			parts = append(parts, s.str())
		} else {
			n := strings.IndexAny(s.src[s.i:], " \t.=]")
			parts = append(parts, s.src[s.i:s.i+n])
			s.i += n
		}
		s.space(false)
		if s.src[s.i] != '.' {
			return parts
		}
		s.i++
	}
}

// str skips a string of any of the four kinds and returns its raw content.
func (s *scanner) str() string {
	q := s.src[s.i : s.i+1]
	if t := strings.Repeat(q, 3); strings.HasPrefix(s.src[s.i:], t) {
		q = t
	}
	s.i += len(q)
	from := s.i
	for !strings.HasPrefix(s.src[s.i:], q) {
		if q[0] == '"' && s.src[s.i] == '\\' {
			s.i++
		}
		s.i++
	}
	// Quotes may stand before the three that close: two by the format, more
	// after an escape with this decoder, which then takes the last three too.
	for len(q) == 3 && strings.HasPrefix(s.src[s.i+1:], q) {
		s.i++
	}
	text := s.src[from:s.i]
	s.i += len(q)
	if q == `"` && strings.Contains(text, `\`) {
		if u, err := strconv.Unquote(`"` + text + `"`); err == nil {
			text = u
		}
	}
	return text
}

// space skips blanks and, when lines is set, line breaks and comments.
func (s *scanner) space(lines bool) {
	for s.i < len(s.src) {
		switch c := s.src[s.i]; {
		case c == ' ' || c == '\t':
			s.i++
		case lines && (c == '\n' || c == '\r'):
			s.i++
		case lines && c == '#':
			n := strings.IndexByte(s.src[s.i:], '\n')
			if n < 0 {
				n = len(s.src) - s.i
			}
			s.i += n
		default:
			return
		}
	}
}

// here returns the place of the next byte; calls must go forward.
func (s *scanner) here() Pos {
	for ; s.lineAt < s.i; s.lineAt++ {
		if s.src[s.lineAt] == '\n' {
			s.line++
			s.sol = s.lineAt + 1
		}
	}
	return Pos{s.line + 1, s.i - s.sol + 1}
}

// put notes the place of path, over an earlier one only when replace is set.
func (s *scanner) put(path string, p Pos, replace bool) {
	if _, ok := s.x.at[path]; !ok || replace {
		s.x.at[path] = p
	}
}

func join(path, k string) string { return path + "." + k }
