package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var backInSlidesWay = &Rule{
	Name: "back-in-slides-way", Group: Drawers, Severity: diag.Warning,
	Summary: "the back of a drawer stands in the way of its undermount slides",
	Doc: `Undermount slides run the whole depth of the box, under its bottom. A back that is grooved for the bottom comes down as far as the
sides do, and the slides end at it: it is notched at both lower corners, as wide and as high as the slides' sheet says.

Say the notch ("back grooved notch 1 3/8 x 1/2"), or let the bottom pass under the back. A notch that is said and is too small is an error.`,
	Sources: `Geometry; the slide's sheet says the notch. It is checked where the slide says one.`,
	Sound:   `A back that is notched as the slides want; one that ends above the bottom; a grooved back on side-mount slides.`,
	Bad: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 ; under 1/2 ; notch 1 3/8 x 1/2 }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; bottom thin groove 1/4 x 1/4 up 1/2
back grooved`),
	Good: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 ; under 1/2 ; notch 1 3/8 x 1/2 }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; bottom thin groove 1/4 x 1/4 up 1/2
back grooved notch 1 3/8 x 1/2`),
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Drawer](p) {
			slide, kind := slideOf(d)
			if kind != undermount || !backGrooved(d) || !slide.Notch.Across.Known() || !slide.Notch.Deep.Known() {
				continue
			}
			wide, high := slide.Notch.Across.Length, slide.Notch.Deep.Length
			notch := fmt.Sprintf("%s x %s", cutTo(p, d.BackAs.Span, wide), cutTo(p, d.BackAs.Span, high))
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    d.BackAs.Span,
				Message: fmt.Sprintf("the back of %s comes down to the edge of its sides, where the slides go: they want a notch of %s at both corners", titled(&d.Item), notch),
				Notes:   []diag.Note{{Span: slide.Notch.Across.Span, Message: "the slide says its notch here"}},
				Fixes:   []diag.Fix{{Title: "write `back grooved notch " + notch + "`, or `back under`"}},
			}
			if said := d.BackAs.Notch; said.Across.How != plan.Unknown || said.Deep.How != plan.Unknown {
				tolerance := p.Tape.Tolerance()
				if !said.Across.Known() || !said.Deep.Known() || !wood.Under(said.Across.Length, wide-tolerance) && !wood.Under(said.Deep.Length, high-tolerance) {
					continue
				}
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("the back of %s is notched %s x %s, but its slides want %s", titled(&d.Item), p.ShowSaid(said.Across), p.ShowSaid(said.Deep), notch)
				f.Fixes = []diag.Fix{{Title: "write `notch " + notch + "`"}}
			}
			pass.Report(f)
		}
	},
}
