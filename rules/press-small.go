package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var pressSmall = &Rule{
	Name: "press-small", Group: Layups, Severity: diag.Error,
	Summary: "a panel does not go into the press",
	Doc: `The panel is laid up with glue on it, and does not go into the bag. A bag wants room round the panel and the platen below it, so that
its seam closes.

Press it in two halves, under cauls and clamps, or make it smaller. Write as the press's size the largest panel that it takes, platen and room
taken off. What a step says is pressed under clamps ("press slab { clamp bar count 6 }") is not asked to go in.`,
	Sources: `Arithmetic. A plan states the finished size, and a panel goes into the press a little larger.`,
	Sound:   `A panel of just the size; one that goes in turned by a quarter; one that is pressed under clamps; a board that is bought.`,
	Bad: `shop { press 24 x 48 { vacuum 25inHg } }
veneer skin { species "black walnut" ; thick 1/42 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 60 ; wide 20 }
`,
	Good: `shop { press 24 x 48 { vacuum 25inHg } }
veneer skin { species "black walnut" ; thick 1/42 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 48 ; wide 20 }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		press := p.Shop.Press
		if press == nil || !press.Size.Across.Known() || !press.Size.Deep.Known() {
			return
		}
		wide, long := press.Size.Across.Length, press.Size.Deep.Length
		small, large := min(wide, long), max(wide, long)
		for w := range intoPress(p) {
			length, width := w.Size.Long.Length, w.Size.Wide.Length
			if !wood.Over(min(length, width), small) && !wood.Over(max(length, width), large) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: w.Path,
				Span:    pieceAt(w),
				Message: fmt.Sprintf("%s is %s x %s, and the press takes %s x %s", w.Path, exact(p, length), exact(p, width), p.ShowSaid(press.Size.Across), p.ShowSaid(press.Size.Deep)),
				Notes:   []diag.Note{{Span: press.Span, Message: "the press stands here"}, {Span: w.Of.Name.Span, Message: "what is pressed stands here"}},
				Fixes:   []diag.Fix{{Title: "press it under cauls and clamps, or in parts: a step may say `press " + w.Path + " { clamp … }`"}},
			})
		}
	},
}
