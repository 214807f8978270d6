package plantest

import "regexp"

// wordings are what no text of the program may say, with what it says instead
// (DEVELOPERS.md, Words).
var wordings = []struct {
	re      *regexp.Regexp
	instead string
}{
	{regexp.MustCompile(`(?i)\b(storeys?|cent(re|red|res)|colours?|catalogues?|whilst|towards|grey|neighbours?|(milli|centi|kilo)?metres?)\b`), "US spelling"},
	{regexp.MustCompile(`(?i)\b(all|walk|go|goes|way) round\b`), "around"},
	{regexp.MustCompile(`(?i)\b(safe|safely|unsafe|adequate|compliant|code.approved)\b|\bOK\b|(?i:\b(pass|passes|meets) (the )?code\b)`), "demand, capacity and ratio: no verdict"},
	{regexp.MustCompile(`(?i)\b(not )?looked at\b`), "checked, not checked"},
	{regexp.MustCompile(`(?i)\bweakest rings?\b|\brings? of (a|the|each) chain`), "link"},
	{regexp.MustCompile(`(?i)\bgoes on (before|after|inside)\b`), "install"},
	{regexp.MustCompile(`(?i)\b(put on|seen) by\b`), "installed by, inspected by"},
	{regexp.MustCompile(`(?i)\b(settles?|settled) nothing\b`), "do not replace sealed calculations"},
	{regexp.MustCompile(`(?i)\b(way down|outdoes|furnish(es)?|cheek|square to the strap)\b`), "load path below; greater than; places; notched; face"},
	{regexp.MustCompile(`(?i)\bhow to mend\b|\btold but\b`), "how to fix; reported"},
	{regexp.MustCompile(`\b1 (gaps|ratios|errors|warnings|pieces|joints|nails|screws|bolts|places|segments|holes|panels|rolls|packs|boxes|bodies|sheets)\b`), "one is singular"},
	{regexp.MustCompile(`(^|[^-./\d])\b(0|[2-9]|[1-9]\d{1,2}) (gap|ratio|error|warning|piece|joint|nail|screw|bolt|place|segment|hole|panel|roll|pack|box)\b`), "none and several are plural"},
}

// Wording returns what a text says in other words than the trade's, each with
// what to say instead; nil when nothing is wrong.
func Wording(text string) (wrong []string) {
	for _, w := range wordings {
		if m := w.re.FindString(text); m != "" {
			wrong = append(wrong, m+" (write: "+w.instead+")")
		}
	}
	return wrong
}
