package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"galewright/cmd/galewright/folder"
	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/render"
	"galewright/render/pdf"
	"galewright/render/sheet"
	"galewright/render/svg"

	"github.com/spf13/pflag"
)

// drawFlags are the flags of draw.
type drawFlags struct {
	out, paper      string
	poster          string
	sheets, formats []string
	swaps           []string
	screen, storm   bool
}

var drawCommand = command{
	name: "draw", args: "PLAN", short: "draw the sheets",
	long: `Draws the set: cover with legend, plans, an elevation of every wall, details,
schedules and check sheets, at real scale on the paper named. One SVG a sheet,
or with --format pdf one PDF of the set. Papers: ` + strings.Join(sheet.PaperNames(), ", ") + `.`,
	example: "galewright draw examples/shed.toml --out out --paper letter --sheets 2xx,S-001",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		var d drawFlags
		f.StringVar(&d.out, "out", "out", "folder the sheets are written to")
		f.StringVar(&d.paper, "paper", "arch-d", "paper by name")
		f.StringSliceVar(&d.sheets, "sheets", nil, "only these: series (2xx) and sheets (S-201), with commas")
		f.StringSliceVar(&d.formats, "format", []string{"svg"}, "svg, pdf or both with a comma")
		f.BoolVar(&d.screen, "screen", false, "color and highlights for the screen; leave it out for printing")
		f.BoolVar(&d.storm, "storm", false, "add a sheet of the wind speeds at which links of the load path are overtaken")
		f.StringSliceVar(&d.swaps, "swap", nil, "with --storm: MARK=MARK, a second curve with the second in place of the first")
		f.StringVar(&d.poster, "poster", "", "put the elevations of this wall, drawn for arch-d, over many pages of --paper")
		return func(args []string, s streams) error { return draw(args, d, f, s) }
	},
}

func draw(args []string, d drawFlags, f *pflag.FlagSet, s streams) error {
	if _, ok := sheet.PaperNamed(d.paper); !ok {
		return usagef("draw: there is no paper %q; there are %s", d.paper, strings.Join(sheet.PaperNames(), ", "))
	}
	if err := d.check(f); err != nil {
		return err
	}
	if d.poster != "" && len(d.sheets) > 0 {
		return usagef("draw: --poster takes the sheets of one wall; leave --sheets out")
	}
	if d.poster != "" && !f.Changed("paper") {
		d.paper = "letter"
	}
	r, src, err := loadTexts(args, false, s)
	if err != nil {
		return err
	}
	m, err := d.model(r, s)
	if err != nil {
		return err
	}
	set, err := begin(d.out, src, d.paper)
	if err != nil {
		return err
	}
	defer set.Discard()
	n, err := d.draw(m, set, s)
	if err != nil {
		return err
	}
	if err := commit(set, d.out, len(d.sheets) == 0 && d.poster == "", s); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s in %s, on %s\n", plural(n, "sheet"), d.out, d.paper)
	return err
}

// model returns what the sheets show.
func (d drawFlags) model(r *pipeline.Result, s streams) (*render.Model, error) {
	loads, _ := r.Loads() // nil without a wind basis: no load sheets then; check --loads tells why
	m := &render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt, Loads: loads}
	if d.storm && loads != nil {
		storms, err := d.storms(r, loads, s)
		if err != nil {
			return nil, err
		}
		m.Storms = storms
	}
	return m, nil
}

// draw writes the files into out, returns how many sheets are in them, and prints
// what drawing has to tell. Where only SVG is asked for, each sheet is written as
// it is drawn and let go.
func (d drawFlags) draw(m *render.Model, out *folder.Set, s streams) (n int, err error) {
	o := render.Options{Paper: d.paper, Sheets: d.sheets}
	if d.poster == "" && !slices.Contains(d.formats, "pdf") {
		faults := render.Each(m, o, func(set *sheet.Set) bool {
			n++
			err = d.write(set, out)
			return err == nil
		})
		if err == nil {
			err = told(faults, s)
		}
		return n, err
	}
	drawn := render.Draw
	if d.poster != "" {
		drawn = func(m *render.Model, o render.Options) (*sheet.Set, plan.Diagnostics) {
			return render.Poster(m, d.poster, posterPaper, o)
		}
	}
	set, faults := drawn(m, o)
	if err := told(faults, s); err != nil {
		return 0, err
	}
	return len(set.Sheets), d.write(set, out)
}

// told prints what drawing found; its error is of use, or of the plan.
func told(faults plan.Diagnostics, s streams) error {
	for _, x := range faults {
		if x.Code == render.NoSuchSheet {
			return usagef("draw: --sheets: %s; %s", x.Summary, x.Mend)
		}
	}
	if err := (sources{}).print(s.err, faults.Sorted(), false); err != nil {
		return err
	}
	if faults.Errors() {
		return errFault
	}
	return nil
}

// check refuses flags that are given and empty: an empty list would stand for
// the whole set, or for none of it and take the old one away.
func (d drawFlags) check(f *pflag.FlagSet) error {
	for _, format := range d.formats {
		if err := oneOf("draw: --format", format, []string{"svg", "pdf"}); err != nil {
			return err
		}
	}
	for _, x := range []struct {
		flag, mend string
		empty      bool
	}{
		{"format", "write svg, pdf or both with a comma", len(d.formats) == 0},
		{"sheets", "name series (2xx) and sheets (S-201), or leave it out for all", blank(d.sheets)},
		{"poster", "name a wall", d.poster == ""},
		{"out", "name a folder", d.out == ""},
	} {
		if f.Changed(x.flag) && x.empty {
			return usagef("draw: --%s has nothing in it, or nothing between two commas; %s", x.flag, x.mend)
		}
	}
	return nil
}

// blank tells whether a list is empty or has an empty word.
func blank(list []string) bool {
	return len(list) == 0 || slices.ContainsFunc(list, func(s string) bool { return strings.TrimSpace(s) == "" })
}

// posterPaper is what a wall is drawn for before it is cut into pages.
const posterPaper = "arch-d"

// write adds the files of the set to out.
func (d drawFlags) write(set *sheet.Set, out *folder.Set) error {
	if slices.Contains(d.formats, "svg") {
		for i, sh := range set.Sheets {
			var b bytes.Buffer
			if err := svg.Write(&b, set, i, svg.Options{Screen: d.screen}); err != nil {
				return fmt.Errorf("sheet %s: %w", sh.Title.Sheet, err)
			}
			if err := out.Add(sh.Title.Sheet+".svg", b.Bytes()); err != nil {
				return err
			}
		}
	}
	if !slices.Contains(d.formats, "pdf") {
		return nil
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, set, pdf.Options{Date: set.Sheets[0].Title.Date}); err != nil {
		return err
	}
	name := "sheets.pdf"
	if d.poster != "" {
		name = "poster-" + set.Sheets[0].Title.Sheet + ".pdf"
	}
	return out.Add(name, b.Bytes())
}
