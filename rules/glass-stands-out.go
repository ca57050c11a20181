package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var paneLip = &Figure{
	Name: "lip", Why: "how thick the lip before a pane is at least", Basis: Practice,
	Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var glassStandsOut = &Rule{
	Name: "glass-stands-out", Group: Lengths, Severity: diag.Error,
	Summary: "the rabbet of a pane is not deep enough for the glass, or leaves no lip before it",
	Doc: `A pane lies in its rabbet with a bead, a strip or points behind it. One that stands out of the back of its frame cannot be held by any of them, and
strikes what is behind the door. A rabbet that goes nearly through leaves a lip that breaks off when the bead is pressed in, or none.

A rabbet is written into the thickness x from the edge. Into the thickness it goes as deep as the glass is thick, and as the bead is; what it leaves
before the pane is 1/8 or more, and less than that is a warning.`,
	Sources: `Geometry. The lip is common practice, no source.`,
	Sound:   `A pane that is level with the back of its frame, under strips that are screwed there; a lip of 3/16.`,
	Bad:     glazed("glass pane { thick 1/4 ; kind tempered ; joint rabbet 3/16 x 3/8 }"),
	Good:    glazed("glass pane { thick 1/4 ; kind tempered ; joint rabbet 1/2 x 3/8 }"),
	Figures: []*Figure{paneLip},
	Check: func(pass *Pass) {
		var said onePer[diag.Span]
		for g := range plan.AllOf[*plan.Glass](pass.Plan) {
			checkPaneDeep(pass, &said, g)
		}
		said.report(pass)
	},
}

// checkPaneDeep holds the depth of the rabbets against the glass, and against the wood that they are cut into.
func checkPaneDeep(pass *Pass, said *onePer[diag.Span], g *plan.Glass) {
	p, subject, glass := pass.Plan, plan.PathOf(g), g.Size.Thick
	least := pass.Length(paneLip, subject)
	for r := range rebates(g) {
		if !r.into.Known() {
			continue
		}
		f := diag.Finding{Subject: subject, Span: standing(g.Name.Span, r.into.Span)}
		lip := r.thick.Length - r.into.Length
		switch {
		case glass.Known() && wood.Under(r.into.Length, glass.Length-p.Tape.Tolerance()):
			f.Message = fmt.Sprintf("the rabbet of %s goes %s into the thickness, and the glass is %s thick: it stands %s out at the back", titled(&g.Item),
				p.ShowSaid(r.into), p.ShowSaid(glass), exact(p, glass.Length-r.into.Length))
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("cut the rabbet %s into the thickness, and as much more as its bead is thick", p.Show(upTo(p, glass.Length)))}}
		case !r.thick.Known() || !wood.Under(lip, least-p.Tape.Tolerance()):
			continue
		default:
			f.Message = fmt.Sprintf("the rabbet of %s goes %s into wood %s thick, and leaves a lip of %s before the glass", titled(&g.Item),
				p.ShowSaid(r.into), p.Show(r.thick.Length), exact(p, lip))
			if lip <= 0 {
				f.Message = fmt.Sprintf("the rabbet of %s goes %s into wood %s thick, and leaves no lip before the glass", titled(&g.Item), p.ShowSaid(r.into), p.Show(r.thick.Length))
			} else {
				f.Severity = diag.Warning
			}
			f.Working = p.Paper().Start(r.thick.Length, "thickness").Minus(r.into.Length, "rabbet").Equals("lip").Versus(least, "wanted at least").Working()
			if write := p.Tape.Floor(r.thick.Length - least); write > 0 {
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("cut the rabbet %s into the thickness, or less", p.Show(write))}}
			}
		}
		said.add(f.Span, f)
		return
	}
}
