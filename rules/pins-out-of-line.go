package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var pinsOutOfLine = &Rule{
	Name: "pins-out-of-line", Group: Doors, Severity: diag.Error,
	Summary: "the pins of a door's hinges do not stand on one line",
	Doc: `A door turns about one line. Where one of its pins stands farther out than the others, they bend it at every opening: it creaks, and works
its screws loose.

Take hinges of one knuckle, or say the same "proud" and "out" of all of them. A pin of which nothing is said stands half its knuckle in
front of the face and over the middle of the gap; of a door that laps its opening, in line with its back and half the knuckle beyond its edge.`,
	Sources: `That all pins stand in one line: W. Fairham, Woodwork Joints, the hinged joint. The 1/64 is the tolerance of a tape.`,
	Sound:   `Three hinges of one sort; two sorts whose knuckles are alike; a thicker knuckle that is set back by what it is thicker.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge thin  { kind butt ; high 2 ; wide 1 1/4 ; knuckle 3/16 }
hinge thick { kind butt ; high 2 ; wide 1 1/4 ; knuckle 5/16 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge thin at 4 ; hinge thick at 24 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge thin  { kind butt ; high 2 ; wide 1 1/4 ; knuckle 3/16 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge thin at 4 ; hinge thin at 24 } ; side right }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range p.Leaves() {
			var first *plan.HardwareUse
			var one plan.Pin
			for _, use := range d.Hinges {
				pin, known := pinOf(d, use)
				switch {
				case !known:
					continue
				case first == nil:
					first, one = use, pin
					continue
				case !wood.Over(max((pin.Proud-one.Proud).Abs(), (pin.Out-one.Out).Abs()), p.Tape.Tolerance()):
					continue
				}
				off, where, sheet := pin.Proud-one.Proud, "in front of the face", p.Paper().Start(pin.Proud, "pin of "+use.Name+", in front of the face").Minus(one.Proud, "pin of "+first.Name)
				if (pin.Out - one.Out).Abs() > off.Abs() {
					off, where, sheet = pin.Out-one.Out, "beyond the edge", p.Paper().Start(pin.Out, "pin of "+use.Name+", beyond the edge").Minus(one.Out, "pin of "+first.Name)
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("the pin of hinge %s stands %s out of line with that of hinge %s, %s of %s", quote(use.Name), exact(p, off.Abs()), quote(first.Name), where, titled(&d.Item)),
					Working: sheet.Equals("out of line").Working(),
					Notes:   []diag.Note{{Span: first.Span, Message: "the first hinge is here"}},
					Fixes:   []diag.Fix{{Title: "use hinges of one sort, or set the pins alike with `proud` and `out`"}},
				})
				break
			}
		}
	},
}

// pinOf is where the pin of a hinge stands, as far as the hinges of one door may differ.
func pinOf(d *plan.Door, use *plan.HardwareUse) (plan.Pin, bool) {
	if use.Hinge == nil || use.Hinge.Kind.Is == "" || use.Hinge.Kind.Is == "butt" && !use.Proud.Known() && !use.Hinge.Knuckle.Known() {
		return plan.Pin{}, false
	}
	return d.Pin(use)
}
