package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	bottomGrooveDeepest = &Figure{
		Name: "deepest", Why: "how deep the groove for a bottom is at most, as a part of the side", Basis: Practice,
		Source: "a half", Dim: lang.Plain, Number: 0.5,
	}
	bottomGrooveUp = &Figure{
		Name: "up", Why: "how much wood is left below the groove for a bottom at least", Basis: Practice,
		Source: "1/4 (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
)

var sideBreaksAtGroove = &Rule{
	Name: "side-breaks-at-groove", Group: Drawers, Severity: diag.Error,
	Summary: "the groove for a bottom leaves the sides of a drawer too weak",
	Doc: `All that lies in a drawer hangs on the strip of wood below the groove for its bottom. A groove that is too deep, or too near the
edge, leaves a strip that splits off along the grain, and the bottom goes with it.

Cut the groove 1/4 deep in sides of 1/2, and never deeper than half of them; leave at least 1/4 below it. In thinner sides glue a slip
along the inside, and groove that.`,
	Sources: `A groove of 1/4 is usual: W. Noyes, Handwork in Wood, 1910, Drawers. The figures are common practice, no source.`,
	Sound:   `A groove just half as deep as the side is thick, with just 1/4 below it.`,
	Bad: inChest(`sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom thin groove 1/4 x 3/8 up 1/2`),
	Good: inChest(`sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom thin groove 1/4 x 1/4 up 1/2`),
	Figures: []*Figure{bottomGrooveDeepest, bottomGrooveUp},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			if d.BottomAs == nil {
				continue
			}
			subject := plan.PathOf(d)
			deep, up, side := d.BottomAs.Groove.Deep, d.BottomAs.Up, d.Left.Size.Thick
			report := func(at, wants wood.Length, f diag.Finding) {
				f.Subject = subject
				said.add(drawerAt{f.Span, d.In.Build, at, wants}, f)
			}
			if deep.Known() && side.Known() {
				if most := fraction(side.Length, pass.Number(bottomGrooveDeepest, subject)); wood.Over(deep.Length, most+p.Tape.Tolerance()) {
					report(deep.Length, most, diag.Finding{
						Span: deep.Span,
						Message: fmt.Sprintf("the bottom's groove is %s deep in the sides of %s, which are %s thick: they break off below it",
							p.ShowSaid(deep), titled(&d.Item), p.ShowSaid(side)),
						Working: p.Paper().Start(side.Length, "thickness of the side").Minus(deep.Length, "groove").Equals("left behind it").
							Versus(side.Length-most, "wanted at least").Working(),
						Fixes: []diag.Fix{{Title: fmt.Sprintf("make the groove %s deep at most", p.Show(p.Tape.Floor(most)))}},
					})
				}
			}
			if least := pass.Length(bottomGrooveUp, subject); up.Known() && wood.Under(up.Length, least-p.Tape.Tolerance()) && !grooveUncovered(d) {
				report(up.Length, least, diag.Finding{
					Span:    up.Span,
					Message: fmt.Sprintf("the sides of %s have %s below the bottom's groove: less than %s breaks off", titled(&d.Item), p.ShowSaid(up), p.Show(least)),
					Fixes:   []diag.Fix{rewrite(p, d, "up", bottomUp, least)},
				})
			}
		}
		said.report(pass)
	},
}

// grooveUncovered reports whether the groove for a bottom shows outside, so that it is moved for that.
func grooveUncovered(d *plan.Drawer) bool {
	for at, j := range drawerCorners(d) {
		if _, _, _, shows := uncoveredGroove(d, at, j); shows {
			return true
		}
	}
	return false
}
