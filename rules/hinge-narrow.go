package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var hingeNarrow = &Rule{
	Name: "hinge-narrow", Group: Doors, Severity: diag.Warning,
	Summary: "a butt hinge is too narrow for the door to open clear of the trim beside it",
	Doc: `A door turns back against the wall only as far as the trim beside it lets it. Its pin must stand as far in front of the frame as the trim does, and
the leaves of the hinge must be wide enough to bring it there.

Take a hinge that measures, opened flat, twice the thickness of the door less 1/2, and what the trim stands out, up to the next half
inch, and say how far its pin then stands in front of the door: "proud 15/16". The rule is asked where the plan says how far the trim stands out ("clears 1 7/8").`,
	Sources: `The width of a butt: Building Trades Pocketbook, "Doors", before 1910.`,
	Sound:   `A hinge of just that width; a door that has no trim to clear; cup hinges.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 2 ; actual 2 ; emission "TSCA Title VI" }
hinge butt-hinge { kind butt ; high 5 ; wide 4 1/2 ; knuckle 1/2 ; carries 60lb }
case closet {
  wide 40 ; high 80 ; deep 24
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/8 ; hang left ; hinge butt-hinge ends 6 count 3 proud 15/16 ; clears 1 7/8 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 2 ; actual 2 ; emission "TSCA Title VI" }
hinge butt-hinge { kind butt ; high 5 ; wide 5 1/2 ; knuckle 1/2 ; carries 60lb }
case closet {
  wide 40 ; high 80 ; deep 24
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/8 ; hang left ; hinge butt-hinge ends 6 count 3 proud 15/16 ; clears 1 7/8 } ; side right }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			thick := d.Thick()
			for _, use := range d.Hinges {
				h := use.Hinge
				if h == nil || h.Kind.Is != "butt" || !h.Wide.Known() || !d.Clears.Known() || !thick.Known() {
					continue
				}
				paper := p.Paper().Start(thick.Length, "thickness of the door").Times(2, "leaves").Minus(wood.Inch/2, "which stays before its back and that of the frame").Plus(d.Clears.Length, "the trim stands out").Equals("wanted")
				if !wood.Under(h.Wide.Length, paper.Result()) {
					continue
				}
				const step = wood.Inch / 2 // butts are sold by it
				wants := (paper.Result() + step - 1) / step * step
				if p.Tape.Metric {
					wants = upTo(p, paper.Result())
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("hinge %s is %s wide, and %s wants %s to open clear of trim that stands out %s", quote(use.Name), p.ShowSaid(h.Wide),
						titled(&d.Item), p.Show(paper.Result()), p.ShowSaid(d.Clears)),
					Working: paper.Versus(h.Wide.Length, "it is").Working(),
					Fixes:   []diag.Fix{{Title: fmt.Sprintf("hang it on butts that are %s wide, opened flat", p.Show(wants))}},
				})
				break
			}
		}
	},
}
