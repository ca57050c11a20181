package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var underRecess = &Figure{
	Name: "recess", Why: "how far the bottom lies above the edge of the sides on undermount slides, where they do not say", Basis: Memory,
	Source: "1/2 (13 mm)", Dim: lang.Length, Length: wood.Inch / 2, Metric: 13 * wood.Millimetre,
}

var bottomLow = &Rule{
	Name: "bottom-low", Group: Drawers, Severity: diag.Error,
	Summary: "the bottom of a drawer lies too low for its undermount slides",
	Doc: `Undermount slides go in between the sides, under the bottom. Where the bottom lies lower than they are high, the box stands
on its slides with its bottom, and their catches do not reach the front.

Cut the groove as far up as the slides want ("under"), or farther. Where they do not say it, this is a warning.`,
	Sources: `The figure is as it says: check it against the slide's sheet.`,
	Sound:   `A bottom that lies just as high as its slides want, and one higher; a bottom as low on side-mount slides.`,
	Bad: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 ; under 1/2 }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; bottom thin groove 1/4 x 1/4 up 3/8`),
	Good: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 ; under 1/2 }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; bottom thin groove 1/4 x 1/4 up 1/2`),
	Figures: []*Figure{underRecess},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			slide, kind := slideOf(d)
			if kind != undermount || d.BottomAs == nil || !d.BottomAs.Up.Known() {
				continue
			}
			up, under := d.BottomAs.Up, slide.Under.Or(pass.Length(underRecess, plan.PathOf(d)))
			if !under.Known() || !wood.Under(up.Length, under.Length-p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    up.Span,
				Message: fmt.Sprintf("the bottom of %s lies %s up, but its slides want %s below it", titled(&d.Item), p.ShowSaid(up), p.Show(under.Length)),
				Fixes:   []diag.Fix{rewrite(p, d, "up", bottomUp, under.Length)},
			}
			usual(&f, slide, "under", slide.Under, "a figure from memory, check it")
			said.add(drawerAt{f.Span, d.In.Build, up.Length, under.Length}, f)
		}
		said.report(pass)
	},
}
