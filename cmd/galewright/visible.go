package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// visible is a writer that has what would steer a terminal, or turn the direction
// of what stands beside it, written out as \u001b or \u202e: a plan is text from
// anywhere. The form is also that of JSON.
type visible struct {
	w    io.Writer
	rest []byte // the beginning of a character whose end is still to come
}

func (v *visible) Write(p []byte) (int, error) {
	text := append(v.rest, p...)
	whole := len(text)
	for n := 1; n < utf8.UTFMax && n <= len(text); n++ {
		if tail := text[len(text)-n:]; utf8.RuneStart(tail[0]) {
			if !utf8.FullRune(tail) {
				whole -= n
			}
			break
		}
	}
	v.rest = append([]byte(nil), text[whole:]...)
	if _, err := io.WriteString(v.w, shown(string(text[:whole]))); err != nil {
		return 0, err
	}
	return len(p), nil
}

// shown returns text with what steers written out.
func shown(text string) string {
	if strings.IndexFunc(text, steers) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if steers(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// steers tells whether a terminal would do something at r instead of showing it:
// controls but for tab and new line, and the marks that give text a direction.
func steers(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\t' || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' || r == '\ufeff'
}
