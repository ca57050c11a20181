package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var tenonWidest = &Figure{
	Name: "widest", Why: "how wide one tenon is at most that is glued in its whole width", Basis: Practice,
	Source: "4 (100 mm)", Dim: lang.Length, Length: 4 * wood.Inch, Metric: 100 * wood.Millimetre,
}

var wideTenonGlued = &Rule{
	Name: "wide-tenon-glued", Group: Tenons, Severity: diag.Warning,
	Summary: "a wide tenon is glued across the grain of its mate, which does not move with it",
	Doc: `A tenon grows and shrinks across its width with the seasons; the stile that it is glued into runs the other way, and does
not. What the tenon wants to move and cannot, it takes out of the glue, then of the stile: one of them cracks.

Make two tenons of a wide one, with a haunch between ("count 2 apart 1 1/2"); or glue the middle alone ("glue centre"), or peg it
dry ("dry"). From the day it is glued to the season that moves it most, up to 1/32 is given by wood and glue; above that is a warning, and
above 1/16 an error. Up to 4 (100 mm) the trade glues tenons whole, and the rule speaks one step milder. A tenon whose mate moves the same way, as
a shelf's in the side of a case, may be as wide as it likes. It does not judge the creep of the glue, nor how slowly the joint takes up moisture.`,
	Sources: movementSource + `
Twin tenons for wide rails: W. Fairham, Woodwork Joints; W. Noyes, Handwork in Wood, 1910, joint no. 41. The limits are common practice, no source.`,
	Sound: `A tenon of 4 glued full that moves less than 1/32; one of 6 that is glued in the middle, one that is dry, two of 2 with
a haunch between; a shelf's wide tenon in the side of a case.`,
	Bad: `climate { shop 7% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn flat }
frame gate {
  of oak
  wide 30 ; high 40 ; thick 1
  joint tenon thick 5/16 long 1 1/2
  across { stile left 3 ; down { space 4 ; rail lock 6 ; space } ; stile right 3 }
}
`,
	Good: `climate { shop 7% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn flat }
frame gate {
  of oak
  wide 30 ; high 40 ; thick 1
  joint tenon thick 5/16 long 1 1/2 count 2 apart 2
  across { stile left 3 ; down { space 4 ; rail lock 6 ; space } ; stile right 3 }
}
`,
	Figures: []*Figure{heldGives, heldSplits, tenonWidest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			of, wide := t.of.Of.Material.To, t.wide(p.Cuts())
			if !wide.Known() || of == nil || of.Kind != plan.Solid || t.Joint.Dry.On || t.Joint.GlueAt.Is == "centre" || !t.crosses(p.Cuts(), wide.Length) {
				continue
			}
			f := diag.Finding{Subject: t.subject, Span: standing(t.of.Span, wide.Span)}
			_, _, moves := p.Seasons(of)
			if moves && t.Joint.Kind.Is == plan.Tenon { // of what wood a loose one is, nothing says
				checkHeldTenon(pass, t, wide, &f)
			}
			if f.Message == "" && wood.Over(wide.Length, pass.Length(tenonWidest, t.subject)) {
				f.Message = fmt.Sprintf("the %s of %s, %s wide, is glued across its whole width: %s is the most", t.called(), titled(&t.of.Item),
					p.ShowSaid(wide), p.Show(pass.Length(tenonWidest, t.subject)))
			}
			if f.Message == "" {
				continue
			}
			f.Fixes = []diag.Fix{{Title: "make two tenons of it, with a haunch between, or glue its middle alone: `glue centre`"}}
			pass.Report(f)
		}
	},
}

// checkHeldTenon finds a tenon that wants to move further in its width than what holds it gives.
func checkHeldTenon(pass *Pass, t tenon, wide plan.Length, f *diag.Finding) {
	p, of := pass.Plan, t.of.Of.Material.To
	moved, m := travel(p, of, wide.Length)
	severity := heldFast(pass, moved, t.subject)
	if severity == 0 {
		return
	}
	f.Severity = severity
	if !wood.Over(wide.Length, pass.Length(tenonWidest, t.subject)) { // the trade glues such tenons
		f.Severity = milder(severity)
	}
	f.Message = fmt.Sprintf("the tenon of %s, %s wide, moves %s, and is glued across its whole width", titled(&t.of.Item), p.ShowSaid(wide), exact(p, moved))
	paper := p.Paper().Start(wide.Length, "width of the tenon")
	moves(paper, wide.Length, of, m)
	f.Working = paper.Equals("it would be").Start(moved, "it moves").Versus(pass.Length(heldGives, t.subject), "what wood and glue give").Working()
	f.Notes = fromMemory(of, m)
}

// milder is one step less severe.
func milder(s diag.Severity) diag.Severity {
	if s == diag.Error {
		return diag.Warning
	}
	return diag.Advice
}

// crosses reports whether a tenon's width, so wide, lies along the grain of what it goes into, which
// then holds it.
func (t tenon) crosses(cuts *plan.Cuts, wide wood.Length) bool {
	for _, c := range cuts.Of(t.End) {
		if c.Kind != plan.CutMortise || c.In == cuts.In(t.of) {
			continue
		}
		along := c.At[plan.Long]
		if slot := t.Joint.Mortise; slot != nil && slot.Wide.Known() {
			wide = slot.Wide.Length
		}
		return along.Sized && wood.Same(along.Size, wide)
	}
	return false
}
