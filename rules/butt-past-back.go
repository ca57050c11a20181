package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var buttPastBack = &Rule{
	Name: "butt-past-back", Group: Doors, Severity: diag.Error,
	Summary: "a butt hinge of a lid reaches past the edge of the back that it lies on",
	Doc: `The butts of a lid that lies over its chest are let into the upper edge of the back, which is as wide as the back is thick. A leaf that is wider
stands out inside, scratches what is put in, and its inner screws find no wood.

Take narrower butts, or glue a strip behind the back. Where less than 1/8 is left beside the leaf, that is a warning: the wood there breaks out with
the first screw. The pin is taken to stand half the knuckle behind the back, where the plan says nothing else.`,
	Sources: `As the figure says.`,
	Sound:   `Butts that leave 1/8 of the back; narrow ones on a thin back; a lid over sides without a back.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge wide { kind butt ; high 2 ; wide 2 1/2 ; knuckle 1/4 }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  down { lid flap { hang back ; hinge wide ends 3 } ; across { side left ; behind { front face ; open bay ; front rear } ; side right } ; bottom floor }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge narrow { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  down { lid flap { hang back ; hinge narrow ends 3 } ; across { side left ; behind { front face ; open bay ; front rear } ; side right } ; bottom floor }
}
`,
	Figures: []*Figure{gainWall},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range p.Leaves() {
			rear := d.Rear()
			if rear == nil || d.Hang.Is != "back" || plan.Neighbour(d, plan.Upper) != nil || !rear.Size.Thick.Known() || !closed(&d.Item) {
				continue
			}
			over := wood.Length(0)
			if o := d.Board.Over; o != nil {
				over = o.Back.Length
			}
			for _, use := range d.Hinges {
				pin, known := pinOf(d, use)
				if !known || use.Hinge.Kind.Is != "butt" || !use.Hinge.Wide.Known() || over+pin.Out < 0 {
					continue // or it does not turn at all
				}
				paper := p.Paper().Start(rear.Size.Thick.Length, "thickness of "+called(&rear.Item)).
					Plus(over+pin.Out, "from the back to the pin").Minus(use.Hinge.Wide.Length/2, "from the pin to the edge of the leaf")
				left := paper.Equals("left of the edge").Result()
				least := pass.Length(gainWall, plan.PathOf(d))
				if !wood.Under(left, least) {
					continue
				}
				f := diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("the leaf of hinge %s leaves %s of the upper edge of %s: %s is wanted", quote(use.Name), exact(p, left), called(&rear.Item), p.Show(least)),
					Working: paper.Versus(least, "wanted").Working(),
					Fixes:   []diag.Fix{{Title: fmt.Sprintf("take butts %s wide or less, opened flat", p.Show(p.Tape.Floor(use.Hinge.Wide.Length-2*(least-left))))}},
				}
				f.Severity = diag.Warning
				if left < 0 {
					f.Severity = diag.Error
					f.Message = fmt.Sprintf("the leaf of hinge %s reaches %s past the upper edge of %s, which is %s thick", quote(use.Name), exact(p, -left), called(&rear.Item), p.Show(rear.Size.Thick.Length))
				}
				pass.Report(f)
				break
			}
		}
	},
}
