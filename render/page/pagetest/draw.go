package pagetest

import (
	"galewright/render/page"
	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
)

// Drawn numbers pages as if they were the whole set, and draws them.
func Drawn(c *page.Context, pages []*page.Page) (out []*sheet.Sheet) {
	page.Number(pages)
	c.Pages = pages
	for _, p := range pages {
		p.DrawFrame()
		p.Draw(p)
		out = append(out, p.Sheet)
	}
	return out
}

// Texts returns all lettering of the sheets, the title block's apart.
func Texts(sheets []*sheet.Sheet) (out []sheet.Text) {
	for _, s := range sheets {
		for _, m := range s.Marks {
			if x, ok := m.(sheet.Text); ok && x.Role == "note" {
				out = append(out, x)
			}
		}
	}
	return out
}

// Context returns a context on a paper.
func Context(t require.TestingT, m *page.Model, paper string) *page.Context {
	c, ok := page.NewContext(m, page.Options{Paper: paper})
	require.True(t, ok)
	return c
}
