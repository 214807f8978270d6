package svg

import (
	"fmt"
	"strings"

	"galewright/render/sheet"
)

// fonts is the stack of Helvetica's metric twins. Helvetica itself comes
// late: font systems without it put in another face.
const fonts = `Arial,"Liberation Sans",Helvetica,sans-serif`

// penClass and fillClass are the class of each pen and fill.
var (
	penClass  = [...]string{"k0", "k-hw", "k-cut", "k-mem", "k-hid", "k-dim", "k-grid"}
	fillClass = [...]string{"f0", "f-paper", "f-ink", "f-pale", "f-mid"}
	anchors   = [...]string{"", " mid", " end"}
)

// stylesheet returns the rules of every class. All ink is the current
// color, so that a screen may color a layer and print stays black.
func stylesheet(screen bool) string {
	var b strings.Builder
	b.WriteString(".gw{color:#000;background:#fff;stroke-linecap:butt;stroke-linejoin:round;-webkit-print-color-adjust:exact;print-color-adjust:exact}\n")
	fmt.Fprintf(&b, ".gw text{font-family:%s;font-kerning:none;fill:currentColor;stroke:none}\n", fonts)
	b.WriteString(".gw .b{font-weight:bold}.gw .mid{text-anchor:middle}.gw .end{text-anchor:end}\n")
	b.WriteString(".k0{stroke:none}\n")
	for p := sheet.PenHardware; p <= sheet.PenGrid; p++ {
		fmt.Fprintf(&b, ".%s{stroke:currentColor;stroke-width:%.2f%s}\n", penClass[p], p.Width(), dashes(p))
	}
	b.WriteString(".f0{fill:none}.f-paper{fill:#fff}.f-ink{fill:currentColor}.f-pale{fill:#d9d9d9}.f-mid{fill:#999}\n")
	b.WriteString(".gw .f-paper.t{fill:#fff}\n")
	if screen {
		b.WriteString(screenRules)
	}
	return b.String()
}

// screenRules color the sheet where it is looked at and not printed. Shape
// and number tell everything without them.
const screenRules = `@media screen{
.l-hardware,.l-label{color:#7a1f1f}
.l-dimension{color:#1d4f73}
.l-hidden,.l-grid{color:#5c5c5c}
.l-revision{color:#a01050}
.gw [data-legend]{cursor:pointer}
.gw [data-legend]:hover{color:#c85a00}
.gw a:hover text{text-decoration:underline}
}
`

func dashes(p sheet.Pen) string {
	d := p.Dash()
	if len(d) == 0 {
		return ""
	}
	s := make([]string, len(d))
	for i, x := range d {
		s[i] = fmt.Sprint(float64(x))
	}
	return ";stroke-dasharray:" + strings.Join(s, " ")
}
