package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var doorwayRoom = &Figure{
	Name: "room", Why: "how much wider and higher a doorway is than what goes through it, for hands and blankets", Basis: Practice,
	Source: "1 (25 mm)", Dim: lang.Length, Length: wood.Inch, Metric: 25 * wood.Millimetre,
}

var doorwayTooSmall = &Rule{
	Name: "doorway-too-small", Group: Moving, Severity: diag.Error,
	Summary: "what is carried does not go through a doorway on its way",
	Doc: `A piece that is finished in the shop and does not go through its door stays in the shop. It goes through lengthwise, whichever side
is up: its two smaller sizes must be less than the doorway's, with an inch for hands. Measure the doorway between its stops, with the door
open, where the door does not come off.

Let the piece come apart ("apart by-hand" or "apart by-tools"): then each thing is judged by itself, and what is glued together stays together. What
is said to be a table, a desk, a chair or a bench may be wound through with its legs first, where a block of its size does not go: of it this is a
warning, which "allow" silences with that reason.`,
	Sources: `Geometry. The inch for hands is common practice, no source.`,
	Sound:   `A wardrobe that is too large as it stands, and comes apart; a long board through a narrow doorway, end first.`,
	Bad:     carriedThrough("doorway 24 x 78", ""),
	Good:    carriedThrough("doorway 27 x 78", ""),
	Figures: []*Figure{doorwayRoom},
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, c := range carriedOn(p) {
			if !c.sized {
				continue
			}
			for _, d := range p.Way.Doorways {
				wide, high := d.Size.Across, d.Size.Deep
				if !wide.Known() || !high.Known() {
					continue
				}
				less, more := "doorway's width", "doorway's height"
				if high.Length < wide.Length {
					wide, high, less, more = high, wide, more, less
				}
				spare := pass.Length(doorwayRoom, c.subject)
				through := []struct {
					of   plan.Length
					said string
					size wood.Length
				}{{wide, less, c.size[0]}, {high, more, c.size[1]}}
				i := 0
				if !wood.Over(c.size[0]+spare, wide.Length) {
					i = 1
				}
				if t := through[i]; wood.Over(t.size+spare, t.of.Length) {
					pass.Report(diag.Finding{
						Severity: c.windingThrough(),
						Subject:  c.subject,
						Span:     d.Span,
						Message:  fmt.Sprintf("%s, and does not go through a doorway %s x %s", c.shown(p), p.ShowSaid(d.Size.Across), p.ShowSaid(d.Size.Deep)),
						Working:  p.Paper().Start(t.of.Length, t.said).Minus(spare, "for hands").Equals("goes through").Versus(t.size, "the way it is smallest").Working(),
						Notes:    []diag.Note{{Span: c.span, Message: "it is drawn here"}},
						Fixes:    []diag.Fix{{Title: c.notApart() + ", or carry it another way"}},
					})
					break
				}
			}
		}
	},
}

// carriedThrough is a chest of 26 x 40 x 60 that is carried on a way.
func carriedThrough(way, more string) string {
	return `wood oak { species "white oak" ; sawn quarter }
` + more + `assembly chest {
  wide 60 ; high 40 ; deep 26
  across { side left 1 { of oak } ; open ; side right 1 { of oak } }
  way { ` + way + ` }
}
`
}
