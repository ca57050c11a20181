package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slotSpare = &Figure{
	Name: "spare", Why: "how much longer than it must a slot is", Basis: Practice,
	Source: "1/16, for a screw that does not stand quite in the middle", Dim: lang.Length, Length: wood.Inch / 16,
}

var screwCannotTravel = &Rule{
	Name: "screw-cannot-travel", Group: Movement, Severity: diag.Error,
	Summary: "a solid board is screwed down so that it cannot move",
	Doc: `A solid top that is screwed down hard splits along a line of screws in its first dry winter, or pulls its base apart in summer.

The board may be held along one line; every other screw must travel with it, the farther from the line the more. The line is what
the fixing says ("fixed front"), else where it is glued, else the middle of the width. "at" counts across the board, from its front or left
edge. A batten or a runner that crosses a board is screwed "along" its own length, and the board moves beneath it. The screw stands in the middle of its slot on the day that it is put in, and must travel both ways.

Make the slots as long as the working says, across the grain, under a washer or a pan head; or use buttons.`,
	Sources: movementSource + `
Slots for screws: W. Fairham, Woodwork Joints; that buttons and clips hold a top best: W. Noyes, Handwork in Wood, 1910, fig. 297. What wood
gives that is held fast, and the room in a slot, are common practice, no source.`,
	Sound: `Screws 18 from the middle of a top of cherry in slots of 1/2; screws in round holes near the line where it is held; a batten
across the top, slotted towards its ends; a top of sheet stock screwed down.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
screw no8 { gauge 8 ; long 1 1/4 ; head pan }
assembly base { wide 60 ; high 28 ; deep 38 }
top slab { of cherry ; thick 1 ; boards 6 ; over base ends 1 front 1 back 1 }
fix slab to base { screw no8 x 8 { round ; at 2, 38 } }
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
screw no8 { gauge 8 ; long 1 1/4 ; head pan }
assembly base { wide 60 ; high 28 ; deep 38 }
top slab { of cherry ; thick 1 ; boards 6 ; over base ends 1 front 1 back 1 }
fix slab to base { screw no8 x 8 { slotted 1/2 ; at 2, 38 } }
`,
	Figures: []*Figure{heldGives, heldSplits, slotSpare},
	Check: func(pass *Pass) {
		p := pass.Plan
		for b, fixing := range fastened(p) {
			for _, w := range fixing.With {
				if w.Word == "button" {
					continue
				}
				d, ok := b.farthest(b.places(w))
				if !ok {
					continue
				}
				t, m := travel(p, b.of, d)
				f := diag.Finding{Subject: b.subject, Span: w.Span, Notes: fromMemory(b.of, m)}
				thick := fastenerThick(w.Of.To)
				paper := slot(travels(p, b.of, d, m), thick.Length, t)
				if !w.Slotted.Known() {
					f.Severity = heldFast(pass, t, b.subject)
					if f.Severity == 0 {
						continue
					}
					f.Message = fmt.Sprintf("a %s %s moves %s with %s, and its hole is round", w.Word, b.distant(p, d), exact(p, t), titled(&b.Item))
				} else {
					needed := 2*t + thick.Length
					if !thick.Known() || !wood.Under(w.Slotted.Length, needed+pass.Length(slotSpare, b.subject)) {
						continue
					}
					if !wood.Under(w.Slotted.Length, needed) {
						f.Severity = diag.Warning
					}
					f.Message = fmt.Sprintf("a %s %s needs a slot of %s, but has one of %s", w.Word, b.distant(p, d),
						exact(p, needed+pass.Length(slotSpare, b.subject)), p.ShowSaid(w.Slotted))
				}
				if thick.Known() {
					paper.Plus(pass.Length(slotSpare, b.subject), "to spare").Equals("slot")
					long := p.Show(upTo(p, paper.Result()))
					if w.Slotted.Known() {
						paper.Versus(w.Slotted.Length, "stated")
					}
					f.Working = paper.Working()
					f.Fixes = []diag.Fix{{Title: "write `slotted " + long + "`"}}
				}
				pass.Report(f)
			}
		}
	},
}

// fastenerThick is how thick a fastener's shank is; unknown where nothing says it.
func fastenerThick(of *plan.Fastener) plan.Length {
	switch {
	case of == nil:
		return plan.Length{}
	case of.Thick.Known():
		return of.Thick
	case of.Gauge.Known():
		return plan.Length{Length: wood.ScrewDiameter(of.Gauge.N), How: plan.Derived}
	}
	return plan.Length{}
}
