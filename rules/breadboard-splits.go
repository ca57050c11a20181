package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var breadboardSplits = &Rule{
	Name: "breadboard-splits", Group: Movement, Severity: diag.Error,
	Summary: "a breadboard end holds the boards of its top so that they cannot move",
	Doc: `The grain of a breadboard end runs across that of the top, so the end stays as long as it is while the top swells and shrinks behind
it. Where it is glued along its length, or pegged through round holes, the top splits.

Glue the end at its middle alone, a few inches of it. Every other peg stands in the end in a round hole and goes through a slot in the tongue,
the longer the farther it is from the middle. Leave the ends of the tongue short of the ends of the groove.

The edges of such a top stand out past its ends in summer and stand back in winter: that is how it is meant.`,
	Sources: movementSource + `
What wood gives that is held fast is common practice, no source.`,
	Sound: `Pegs 15 from the middle of a top of cherry in slots of 1/2, and one in the middle in a round hole; glue along 4 in the middle.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
peg pin { thick 1/4 ; long 1 }
top slab {
  of cherry ; thick 1 ; boards 6 ; long 72 ; wide 36
  breadboard 3 { tongue 3/8 x 1 ; glue centre 4 ; peg pin at 3, 18, 33 }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
peg pin { thick 1/4 ; long 1 }
top slab {
  of cherry ; thick 1 ; boards 6 ; long 72 ; wide 36
  breadboard 3 { tongue 3/8 x 1 ; glue centre 4 ; peg pin at 3, 18, 33 slotted 1/2 }
}
`,
	Figures: []*Figure{heldGives, heldSplits},
	Check: func(pass *Pass) {
		p := pass.Plan
		for m, thing := range boardsOf(p) {
			if b, ok := breadboardOf(p, m, thing); ok {
				checkBreadboardGlue(pass, b)
				checkBreadboardPegs(pass, b)
			}
		}
	},
}

// breadboardOf is the board of a top whose breadboard ends hold it in the middle of its width.
func breadboardOf(p *plan.Plan, m *plan.Member, thing any) (b board, ok bool) {
	of := m.Of.Material.To
	_, _, known := p.Seasons(of)
	if m.Breadboard == nil || !known || !m.Size.Wide.Known() {
		return b, false
	}
	half := m.Size.Wide.Length / 2
	b = board{Member: m, subject: plan.PathOf(thing), of: of, wide: m.Size.Wide.Length, line: [2]wood.Length{half, half}, held: "centre"}
	b.fast.subject = b.subject
	return b, true
}

// checkBreadboardGlue holds how far an end is glued against what the boards move in that length.
func checkBreadboardGlue(pass *Pass, b board) {
	p, glued := pass.Plan, b.Breadboard.Centre
	if !glued.Known() {
		return
	}
	t, m := travel(p, b.of, glued.Length)
	severity := heldFast(pass, t, b.subject)
	if severity == 0 {
		return
	}
	paper := p.Paper().Start(glued.Length, "glued")
	moves(paper, glued.Length, b.of, m)
	pass.Report(diag.Finding{
		Subject: b.subject, Span: standing(b.Breadboard.Span, glued.Span), Severity: severity,
		Message: fmt.Sprintf("a breadboard glued along %s of %s holds boards that move %s in that length", p.ShowSaid(glued), titled(&b.Item), exact(p, t)),
		Notes:   fromMemory(b.of, m),
		Working: paper.Equals("it would be").Working(),
		Fixes:   []diag.Fix{{Title: "glue the middle alone, such as `glue centre 4`, and peg the rest in slots"}},
	})
}

// checkBreadboardPegs holds the slots of the pegs against what the farthest of them travels.
func checkBreadboardPegs(pass *Pass, b board) {
	p, peg := pass.Plan, b.Breadboard.Peg
	if peg == nil {
		return
	}
	d, ok := b.farthest(peg.At)
	if !ok {
		return
	}
	t, m := travel(p, b.of, d)
	f := diag.Finding{Subject: b.subject, Span: peg.Span, Notes: fromMemory(b.of, m)}
	thick := fastenerThick(peg.Of.To)
	if !peg.Slotted.Known() {
		f.Severity = heldFast(pass, t, b.subject)
		f.Message = fmt.Sprintf("a peg %s travels %s with the boards of %s, and its hole is round", b.distant(p, d), exact(p, t), titled(&b.Item))
		if f.Severity == 0 {
			return
		}
	} else {
		if !thick.Known() || !wood.Under(peg.Slotted.Length, thick.Length+2*t) {
			return
		}
		f.Message = fmt.Sprintf("a peg %s needs a slot of %s, but has one of %s", b.distant(p, d), exact(p, thick.Length+2*t), p.ShowSaid(peg.Slotted))
	}
	if thick.Known() {
		paper := slot(travels(p, b.of, d, m), thick.Length, t).Equals("slot")
		f.Fixes = []diag.Fix{{Title: "write `slotted " + p.Show(upTo(p, paper.Result())) + "`"}}
		if peg.Slotted.Known() {
			paper.Versus(peg.Slotted.Length, "stated")
		}
		f.Working = paper.Working()
	}
	pass.Report(f)
}
