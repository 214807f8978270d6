package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Sprintf is fmt.Sprintf in the words of the system; the package says how quantities are
// marked in the format. Verbs with [] are not for it, and a verb with * is no quantity.
func (s System) Sprintf(format string, args ...any) string {
	var out strings.Builder
	var plain []any // arguments of what of the format is fmt's
	n := 0
	for rest := format; rest != ""; {
		i := strings.IndexAny(rest, "%{")
		if i < 0 {
			out.WriteString(rest)
			break
		}
		out.WriteString(rest[:i])
		rest = rest[i:]
		if word, tail, ok := braced(rest); ok {
			out.WriteString(escape(s.fixed(word)))
			rest = tail
			continue
		}
		verb := verbOf(rest)
		rest = rest[len(verb):]
		if strings.HasSuffix(verb, "%") || verb == "{" {
			out.WriteString(verb)
			continue
		}
		own := args[min(n, len(args)):min(n+1+strings.Count(verb, "*"), len(args))]
		text, tail := s.quantity(verb, rest, own)
		if text == "" {
			out.WriteString(verb)
			plain = append(plain, own...)
		}
		out.WriteString(escape(text))
		rest = tail
		n += len(own)
	}
	return fmt.Sprintf(out.String(), append(plain, args[min(n, len(args)):]...)...)
}

// Words is Sprintf of a text without verbs, where a percent sign is one.
func (s System) Words(text string) string { return s.Sprintf(escape(text)) }

func escape(text string) string { return strings.ReplaceAll(text, "%", "%%") }

// verbOf returns the verb that a format begins with: %-9.3f, %%; or its first
// byte where that begins none.
func verbOf(format string) string {
	if format[0] != '%' {
		return format[:1]
	}
	for i := 1; i < len(format); i++ {
		if !strings.ContainsRune("+-# 0123456789.*", rune(format[i])) {
			return format[:i+1]
		}
	}
	return format
}

// braced cuts a unit or a quantity in braces off the front.
func braced(format string) (word, rest string, ok bool) {
	if format[0] != '{' {
		return "", format, false
	}
	word, rest, ok = strings.Cut(format[1:], "}")
	return word, rest, ok && known(strings.TrimPrefix(word, "+"))
}

// known tells whether a word in braces is a unit, or a number with one.
func known(word string) bool {
	if _, ok := find(word); ok {
		return true
	}
	number, unit, _ := strings.Cut(word, " ")
	_, err := parse(number)
	_, ok := find(unit)
	return ok && err == nil
}

// fixed is a unit or a quantity that the text itself gives: "psf", "16 psf".
func (s System) fixed(word string) string {
	if _, ok := find(word); ok {
		return s.Unit(word)
	}
	number, unit, _ := strings.Cut(word, " ")
	v, err := parse(number)
	if err != nil || !s.Is() {
		return word
	}
	_, part, _ := strings.Cut(number, ".")
	return s.Amount(v, unit, len(part))
}

// parse reads 16, 0.25 or 1/8.
func parse(number string) (float64, error) {
	a, b, ok := strings.Cut(number, "/")
	n, err := strconv.ParseFloat(a, 64)
	if !ok || err != nil {
		return n, err
	}
	d, err := strconv.ParseFloat(b, 64)
	return n / d, err
}

// quantity prints a verb with the unit that follows it, and returns what
// follows the unit; "" when it is no quantity. In the US system it is left to
// fmt, but braces are taken away.
func (s System) quantity(verb, rest string, args []any) (text, tail string) {
	if verb[len(verb)-1] != 'f' || len(args) != 1 {
		return "", rest
	}
	v, ok := args[0].(float64)
	unit, tail, shown := unitOf(rest)
	unit, own := strings.CutPrefix(unit, "+")
	switch {
	case !ok || unit == "":
		return "", rest
	case !s.Is() && shown:
		return "", rest
	case !s.Is():
		return "", tail
	}
	text = s.padded(verb, v, unit)
	if shown || own {
		text += " " + s.Unit(unit)
	}
	return text, tail
}

// unitOf returns the unit that a text begins with, after a blank or in braces, and
// what follows; shown, whether it is printed.
func unitOf(text string) (unit, tail string, shown bool) {
	if text != "" && text[0] == '{' {
		word, tail, ok := braced(text)
		if _, unit := find(strings.TrimPrefix(word, "+")); ok && unit {
			return word, tail, false
		}
	}
	for _, k := range kinds {
		if tail, ok := strings.CutPrefix(text, " "+k.us); ok && ends(tail) {
			return k.us, tail, true
		}
	}
	return "", text, false
}

// ends tells whether no word goes on there.
func ends(tail string) bool {
	return tail == "" || !strings.ContainsAny(tail[:1], "abcdefghijklmnopqrstuvwxyz0123456789/-")
}

// padded prints a quantity with the sign and the width that its verb asks for.
func (s System) padded(verb string, v float64, unit string) string {
	flags := strings.TrimLeft(verb[1:len(verb)-1], "+- ")
	width, decimals, _ := strings.Cut(flags, ".")
	d, err := strconv.Atoi(decimals)
	if err != nil {
		d = 6
	}
	text := s.Number(v, unit, d)
	if strings.Contains(verb, "+") && !math.Signbit(v) {
		text = "+" + text
	}
	w, _ := strconv.Atoi(width)
	if strings.Contains(verb, "-") {
		w = -w
	}
	return fmt.Sprintf("%*s", w, text)
}
