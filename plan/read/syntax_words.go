package read

import (
	"regexp"
	"strings"
	"unicode"
)

// A fault of TOML is told in words of our own: what is wrong by what the decoder
// says, how to mend it by that and by the line.

// summaries are tried in their order; $1 is what the pattern found. What none fits
// is told as the decoder does.
var summaries = []struct {
	message *regexp.Regexp
	summary string
}{
	{expr(`control characters: '0x(..)'`), "a character that cannot be seen (0x$1) stands here"},
	{expr(`NULL bytes`), "a byte of no text (0x00) stands here"},
	{expr(`^Key '(.*)' has already been defined$`), "$1 is written a second time"},
	{expr(`^Key '(.*)' was already created and cannot be used as an array$`), "[[$1]] stands here, and $1 is already written another way"},
	{expr(`^Key '(.*)' was already created as a hash$`), "$1 has a value already and cannot hold keys"},
	{expr(`^"(.*)" is not a table$`), "$1 has a value already and cannot hold keys"},
	{expr(`cannot contain newlines`), "the quotes are not closed in this line"},
	{expr(`table names cannot be empty`), "a part of the table's name is empty"},
	{expr(`to end table name|table array name delimiter`), "the brackets around the table's name are not closed"},
	{expr(`key name appears blank`), "nothing stands before the ="},
	{expr(`keys cannot start with a '\.'`), "the key begins with a dot"},
	{expr(`^expected '\.' or '=', but got '\\n'`), "the line has no ="},
	{expr(`^expected '\.' or '=', but got (.*) instead$`), "$1 stands where an = belongs"},
	{expr(`^expected value but found '\\n' instead$`), "the value is missing"},
	{expr(`^expected value but found (.*) instead$`), "$1 is no value"},
	{expr(`^expected a top-level item to end .* got (.*) instead$`), "$1 stands behind the value"},
	{expr(`terminator.*got end of file`), "a list or brace is still open where the file ends"},
	{expr(`array terminator.*got (.*)$`), "in a list stands $1 where a comma or the closing ] belongs"},
	{expr(`inline table terminator.*got (.*) instead$`), "between braces stands $1 where a comma or the closing } belongs"},
	{expr(`^unexpected comma`), "there is a comma too many"},
	{expr(`^(.*) is out of (?:range|the .* range)`), "$1 is too large a number"},
	{expr(`^invalid datetime: (.*)$`), "$1 is no date"},
	{expr(`(?i)^invalid (?:float|integer)(?: value)?:? ["']([^"']*)["']`), "$1 is no number"},
	{expr(`^not an? (?:binary|octal|hexadecimal) number: '(.*)'$`), "$1 is no number"},
	{expr(`expected a digit|floats must start`), "this is no number"},
	{expr(`^invalid escape in string '\\(.)'$`), `\$1 in quotes stands for nothing`},
	{expr(`hexadecimal digits after '(.*)', but`), `$1 in quotes lacks its digits`},
	{expr(`^Escaped character '(.*)' is not valid`), "$1 in quotes is no character"},
	{expr(`^unexpected ['"]`), "there are quotes too many"},
	{expr(`^unexpected EOF; expected ['"]`), "the file ends inside quotes"},
	{expr(`^unexpected EOF`), "the file ends here"},
}

var (
	// innerMark is an inch mark that closes its string: "5' 4"".
	innerMark = expr(`"[^"]*'[^"]*"\s*[^,\]}#\s]`)
	// bareMeasure is a number with its unit that stands outside of quotes.
	bareMeasure = expr(`[=\[,]\s*[0-9][-0-9 ./]*('|"|[A-Za-z:@])`)
	// bareWord is a word that stands outside of quotes.
	bareWord = expr(`[=\[,]\s*[A-Za-z]`)
	// header is a line that begins a table.
	header = expr(`^\s*\[`)
	// another is a key and its = behind a value.
	another = expr(`=.*\s[A-Za-z_]+\s*=`)
)

// mends are tried in their order, the particular before the general; a line must
// fit where one is given. The last fits everything.
var mends = []struct {
	message, line *regexp.Regexp
	mend          string
}{
	{expr(`control characters`), nil, "take it out: delete the space around it and type that again"},
	{expr(`NULL bytes|invalid UTF-8`), nil, "save the file as UTF-8 text"},
	{expr(`^Key '(.*)' has already been defined$`), header, "write it once; where there can be several, each begins with [[$1]]"},
	{expr(`has already been defined$`), nil, "take one of the two out"},
	{expr(`^Key '(.*)' was already created and cannot be used as an array$`), nil, "write all of them one way: each under its own [[$1]], or all inside one $1 = [ ]"},
	{expr(`already created as a hash|is not a table`), nil, "write it as a table alone, or as a value alone"},
	{expr(`(?i)invalid escape`), nil, `only the inch mark takes a backslash: "5' 4 1/2\"", or write in: "5' 4 1/2in"`},
	{expr(`hexadecimal digits after|^Escaped character`), nil, "write the character itself"},
	{expr(`cannot contain newlines`), nil, `close the quotes in the same line; the inch mark inside is written \" or in: "5' 4in"`},
	{expr(`table name|table array name|to end table`), nil, "close it like [project], or [[wall]] with two brackets"},
	{expr(`expected '\.' or '='|key name appears|keys cannot start`), nil, aLine},
	{expr(`out of range|out of the .* range`), nil, "write a number that a house can have"},
	{expr(`invalid datetime`), nil, "write a date like 2026-03-02, and a value with a unit in quotes"},
	{expr(`(?i)invalid float|invalid integer|^not an? |expected a digit|floats must`), nil, "write numbers like 4, 1.5 or -2; a value with a unit stands in quotes"},
	{nil, innerMark, `inside quotes write the inch mark as \" or as in: "5' 4in"`},
	{expr(`top-level item`), another, "begin a new line before it"},
	{expr(`inline table`), expr(`[\d"']\s+[A-Za-z_]+\s*=`), "put a comma between two values"},
	{nil, bareMeasure, `put a value with a unit in quotes: "5' 4in", "2x6 @ 16in"`},
	{expr(`expected value`), bareWord, `put text in quotes: kind = "clip"`},
	{expr(`expected value`), nil, "write the value after the ="},
	{expr(`^unexpected comma`), nil, "take one comma out"},
	{expr(`^unexpected ['"]`), nil, "take the last of them out"},
	{expr(`terminator.*end of file`), nil, "close it: ] or }"},
	{expr(`terminator`), nil, "put a comma between two values, and close what is open"},
	{expr(`top-level item`), nil, "one key = value in a line; text and lengths stand in quotes"},
	{expr(`EOF`), nil, "close what is open: quotes, brackets or braces"},
	{nil, nil, aLine},
}

const aLine = "a line is key = value, a [table] or a # comment"

// expr is a pattern of what the decoder says, or of a line.
func expr(s string) *regexp.Regexp { return regexp.MustCompile(s) }

// ownWords says what is wrong with a line, and how to mend it, from what the
// decoder says.
func ownWords(message, line string) (summary, mend string) {
	message = strings.ReplaceAll(message, `'\''`, `"'"`)
	summary = lowered(message)
	for _, s := range summaries {
		if m := s.message.FindStringSubmatchIndex(message); m != nil {
			summary = string(s.message.ExpandString(nil, s.summary, message, m))
			break
		}
	}
	for _, x := range mends {
		if x.line != nil && !x.line.MatchString(line) {
			continue
		}
		if x.message == nil {
			return summary, x.mend
		}
		if m := x.message.FindStringSubmatchIndex(message); m != nil {
			return summary, string(x.message.ExpandString(nil, x.mend, message, m))
		}
	}
	return summary, aLine
}

// lowered begins a sentence small, but for a word of capitals.
func lowered(s string) string {
	r := []rune(s)
	if len(r) < 2 || unicode.IsUpper(r[1]) {
		return s
	}
	return strings.ToLower(string(r[:1])) + string(r[1:])
}
