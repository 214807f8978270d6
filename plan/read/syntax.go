package read

import (
	"cmp"
	"errors"
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"galewright/plan"
	"galewright/plan/pos"
)

// decode parses TOML and indexes its places.
func (r *reader) decode(src []byte) (m map[string]any, ok bool) {
	if i := badUTF8(src); i >= 0 {
		r.add(plan.Diagnostic{Code: "encoding", Summary: "the file is not UTF-8", Mend: notUTF8(src), Pos: placeOf(r.file, string(src), i)})
		return nil, false
	}
	_, err := toml.Decode(string(src), &m)
	if e, is := errors.AsType[toml.ParseError](err); is {
		r.syntax(e, string(src))
		return nil, false
	}
	if err == nil {
		r.index, err = pos.NewIndex(string(src))
	}
	if err != nil {
		r.add(plan.Diagnostic{Code: "syntax", Summary: oneLine(err.Error()), Pos: plan.Pos{File: r.file, Line: 1, Col: 1}})
	}
	return m, err == nil
}

// placeOf returns the place of a byte of src.
func placeOf(file, src string, i int) plan.Pos {
	return plan.Pos{File: file, Line: 1 + strings.Count(src[:i], "\n"), Col: i - strings.LastIndexByte(src[:i], '\n')}
}

// syntax reports a fault of TOML itself.
func (r *reader) syntax(e toml.ParseError, src string) {
	d := plan.Diagnostic{Code: "syntax", Summary: cmp.Or(oneLine(e.Message), oneLine(e.Error()))}
	d.Summary = strings.ToLower(d.Summary[:1]) + d.Summary[1:]
	// The decoder's own line and column are off where a line breaks off.
	at := min(max(e.Position.Start, 0), len(src))
	d.Pos = placeOf(r.file, src, at)
	line, _, _ := strings.Cut(src[strings.LastIndexByte(src[:at], '\n')+1:], "\n")
	d.Mend = syntaxMend(d.Summary, strings.TrimRight(line, "\r"))
	r.add(d)
}

var (
	// innerMark is an inch mark that closes its string: "5' 4"".
	innerMark = regexp.MustCompile(`"[^"]*'[^"]*"\s*[^,\]}#\s]`)
	// bareMeasure is a number with its unit that stands outside of quotes.
	bareMeasure = regexp.MustCompile(`[=\[,]\s*[0-9][-0-9 ./]*('|"|[A-Za-z:@])`)
	// bareWord is a word that stands outside of quotes.
	bareWord = regexp.MustCompile(`[=\[,]\s*[A-Za-z]`)
)

// syntaxMends give the mend for what the decoder's message has in it, the
// particular before the general; a line must fit when one is given.
var syntaxMends = []struct {
	message string
	line    *regexp.Regexp
	mend    string
}{
	{"already been defined", nil, "write it once; of what there can be several, each begins with two brackets: [[wall]]"},
	{"cannot be used as an array", nil, "write every one of its tables with two brackets: [[wall]]"},
	{"cannot contain newlines", nil, `close the quotes in the same line; the inch mark inside is written \" or in: "5' 4in"`},
	{"invalid escape", nil, `only the inch mark takes a backslash: "5' 4 1/2\"", or write in: "5' 4 1/2in"`},
	{"to end table", nil, "close it like [project], or [[wall]] with two brackets"},
	{"key separator", nil, "a line is key = value, a [table] or a # comment"},
	{"expected '.' or '='", nil, "a line is key = value, a [table] or a # comment"},
	{"", innerMark, `inside quotes write the inch mark as \" or as in: "5' 4in"`},
	{"", bareMeasure, `put a value with a unit in quotes: "5' 4in", "2x6 @ 16in"`},
	{"expected value", bareWord, `put text in quotes: kind = "clip"`},
	{"expected value", nil, "write the value after the ="},
	{"terminator", nil, "put a comma between two values, and close what is open"},
	{"to end with a newline", nil, "one key = value in a line; text and lengths stand in quotes"},
	{"end of file", nil, "close what is open: quotes, brackets or braces"},
}

// syntaxMend says how to mend a fault of TOML in a line.
func syntaxMend(message, line string) string {
	for _, m := range syntaxMends {
		if strings.Contains(message, m.message) && (m.line == nil || m.line.MatchString(line)) {
			return m.mend
		}
	}
	return ""
}

// badUTF8 returns the place of the first byte that is not UTF-8 text, or −1.
// TOML knows no other encoding; the decoder would drop a UTF-16 mark silently.
func badUTF8(src []byte) int {
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		if c == utf8.RuneError && n <= 1 {
			return i
		}
		i += n
	}
	return -1
}

func oneLine(s string) string { return strings.TrimSuffix(strings.Join(strings.Fields(s), " "), ".") }

// notUTF8 says how to mend a file in another encoding.
func notUTF8(src []byte) string {
	if len(src) > 1 && (src[0] == 0xff && src[1] == 0xfe || src[0] == 0xfe && src[1] == 0xff) {
		return "it looks like UTF-16: save it as UTF-8 text"
	}
	return "save it as UTF-8 text"
}
