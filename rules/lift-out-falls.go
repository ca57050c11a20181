package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var keepsLeast = &Figure{
	Name: "keeps", Why: "how far a leaf that stands in its lower groove is still in the upper one, at least", Basis: Practice,
	Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var liftOutFalls = &Rule{
	Name: "lift-out-falls", Group: Doors, Severity: diag.Warning,
	Summary: "a leaf that is lifted out is hardly held at its top when it stands in its lower groove",
	Doc: `A leaf that is let down into its lower groove is kept from falling out by what of it is still in the upper one. Where that is a hair, it tips out on
whoever shuts a drawer above it; when the wood is driest there is less.

Let the leaf keep 1/8 or more in the upper groove, and make that groove deeper by as much, so that the leaf still comes out. Where it keeps nothing, that is an error.
A leaf that stands in a lower groove alone wants a catch, a lock or a bolt at its top, or a strip that comes off or a key that is drawn ("held strip",
"held key").`,
	Sources: `The 1/8 is common practice, no source. ` + movementSource,
	Sound: `A leaf that keeps 1/8 when it is driest; one in a lower groove, with a catch at its top, or behind a strip that
comes off.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 3/8 bottom 1/4 } ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 1/2 bottom 1/4 } ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{keepsLeast},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			if l, ok := inGrooves(d); ok {
				checkKeeps(pass, l)
				continue
			}
			if g := d.Grooves; g != nil && g.Bottom.Known() && g.Top.How == plan.Unknown && len(d.Latches) == 0 && d.Held.Is == "" && d.Hang.Is == "lift-out" {
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: g.Span,
					Message: fmt.Sprintf("%s stands in a lower groove, and nothing holds its top", titled(&d.Item)),
					Fixes:   []diag.Fix{{Title: "give it a catch, a lock or a bolt at its top, or a groove above; or say what holds it: `held strip`, `held key`"}},
				})
			}
		}
	},
}

// checkKeeps holds what of a leaf is in its upper groove against what keeps it there, as it is made and when it is driest.
func checkKeeps(pass *Pass, l lift) {
	p, least := pass.Plan, pass.Length(keepsLeast, plan.PathOf(l.Door))
	if wood.Over(l.keeps.Length+l.bottom.Length, l.top.Length) {
		return // it does not go in
	}
	paper := p.Paper().Start(l.keeps.Length, "of it in the upper groove")
	keeps := l.keeps.Length
	if keeps > 0 {
		keeps += l.grows(p, false, paper)
	}
	if !wood.Under(keeps, least) {
		return
	}
	f := diag.Finding{
		Subject: plan.PathOf(l.Door), Span: l.Grooves.Span,
		Message: fmt.Sprintf("%s is %s in its upper groove when it stands in the lower one: %s is wanted", titled(&l.Item), exact(p, keeps), p.Show(least)),
		Working: paper.Equals("kept in it").Versus(least, "wanted").Working(),
	}
	if keeps != l.keeps.Length {
		f.Message = fmt.Sprintf("%s is %s in its upper groove when it is driest: %s is wanted", titled(&l.Item), exact(p, keeps), p.Show(least))
	}
	if keeps <= 0 {
		f.Severity = diag.Error
		f.Message = fmt.Sprintf("%s comes out of its upper groove as it is let down into the lower one: it falls out", titled(&l.Item))
		if l.keeps.Length > 0 {
			f.Message = fmt.Sprintf("%s shrinks out of its upper groove when it is driest: it falls out", titled(&l.Item))
		}
	}
	wants := upTo(p, l.keeps.Length+least-keeps)
	top := max(l.top.Length, upTo(p, wants+l.bottom.Length+max(p.Tape.Finest(), l.grows(p, true, p.Paper()))))
	f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let it keep %s, and make the upper groove %s deep: `top %s keeps %s`", p.Show(wants), p.Show(top), p.Show(top), p.Show(wants))}}
	pass.Report(f)
}
