package golden

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"galewright/plan/schedule"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// vague are ways to name a source that nobody could look up, and grades by
// letter; the words are those of package source. Written in pieces, so that
// this file does not hold them.
var vague = regexp.MustCompile(`(?i)stored ` + `(copy|public)|\bat ` + `hand\b|public ` + `(calculator|validation|copy|program)|analysis ` + `program|tuto` + `rial|notes used ` + `in practice|published ` + `(chart|weight table)|spread` + `sheet of` +
	`|\bgrade ` + `(?-i:[A-DPS])\+?(?:[^a-zA-Z]|$)|\(gra` + `de `)

// bare finds a standard's table or clause without the edition.
var bare = regexp.MustCompile(`\b(?:NDS|SDPWS|ASCE 7|AISC 360|AISI S100|IRC|IBC) (?:Table|Tables|Fig\.|Figs\.|Eq\.|Eqs\.|equation|Appendix|Supplement|R?[0-9]{2,}\.|R[0-9]{3}|4\.3)`)

// excused is said soon after a standard without an edition: why there is none.
var excused = regexp.MustCompile(`from memory|edition`)

// joined puts a text's comments on one line each.
var joined = regexp.MustCompile(`\n\s*// ?`)

// requireSources holds a text to sources that can be looked up.
func requireSources(t *testing.T, name, text string) {
	assert.Empty(t, vague.FindString(text), "%s: name the document, edition and table, and one of the four grades in words", name)
	text = joined.ReplaceAllString(text, " ")
	for _, at := range bare.FindAllStringIndex(text, -1) {
		after := text[at[0]:min(at[1]+200, len(text))]
		assert.Regexp(t, excused, after, "%s: %q names no edition", name, text[at[0]:at[1]])
	}
}

// TestSourcesInTheCode reads every Go file and page of the tree.
func TestSourcesInTheCode(t *testing.T) {
	read := 0
	require.NoError(t, filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		if ext := filepath.Ext(path); ext == ".go" || ext == ".md" {
			b, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			read++
			requireSources(t, path, string(b))
		}
		return nil
	}))
	require.Greater(t, read, 300)
}

// TestSourcesInTheOutputs reads every list and JSON of every example.
func TestSourcesInTheOutputs(t *testing.T) {
	for _, name := range examples(t) {
		r := build(t, name)
		texts := documents(t, r)
		put := func(file string, write func(io.Writer) error) {
			var b bytes.Buffer
			require.NoError(t, write(&b))
			texts[file] = b.Bytes()
		}
		put("order.txt", func(w io.Writer) error { return schedule.Order(w, r.Schedule, 0.05, "table") })
		if report := model(r).Loads; report != nil {
			put("loads.txt", func(w io.Writer) error { return report.WriteWind(w, "text") })
			put("check-loads.txt", func(w io.Writer) error { _, err := report.WriteCheck(w, 1, "text"); return err })
			told := map[string]int{}
			for _, l := range report.Links {
				if told[l.Check.ID]++; told[l.Check.ID] <= 3 { // the wording is that of the check
					requireSources(t, name+" "+l.ID, report.Explain(l.ID))
				}
			}
		}
		for file, b := range texts {
			requireSources(t, name+" "+file, string(b))
		}
	}
}

// TestVagueSourcesAreFound: the test above can fail.
func TestVagueSourcesAreFound(t *testing.T) {
	for _, bad := range []string{"table 3 (grade" + " S+)", "Grade" + " B: two agree", "by a public" + " calculator", "not at" + " hand"} {
		require.NotEmpty(t, vague.FindString(bad), bad)
	}
	for _, good := range []string{"grade of the steel", "A653 SS Grade 33", "8 ft above grade", "feet from grade a little", strings.Repeat("on hand ", 2)} {
		require.Empty(t, vague.FindString(good), good)
	}
	for _, bad := range []string{"NDS" + " Table L4", "(ASCE 7" + " 26.2)", "IRC" + " R602.3"} {
		require.NotEmpty(t, bare.FindString(bad), bad)
	}
	require.Empty(t, bare.FindString("NDS 2018 Table L4, ASCE 7-22 Fig. 28.3-1"))
}
