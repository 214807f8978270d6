package read

import (
	"cmp"
	"errors"
	"fmt"
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
	if i := tooDeep(string(src)); i >= 0 {
		r.add(plan.Diagnostic{Code: "too-deep", Summary: fmt.Sprintf("more than %d tables or lists stand inside one another", mostNested), Mend: "close those before it: a plan's tables lie four deep", Pos: placeOf(r.file, string(src), i)})
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
	// The decoder's own line and column are off where a line breaks off.
	at := min(max(e.Position.Start, 0), len(src))
	line, _, _ := strings.Cut(src[strings.LastIndexByte(src[:at], '\n')+1:], "\n")
	d := plan.Diagnostic{Code: "syntax", Pos: placeOf(r.file, src, at)}
	d.Summary, d.Mend = ownWords(cmp.Or(oneLine(e.Message), oneLine(e.Error())), strings.TrimRight(line, "\r"))
	r.add(d)
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
