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
front of the face and over the middle of the gap.`,
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
		for d := range plan.AllOf[*plan.Door](p) {
			var first *plan.HardwareUse
			var proud, out wood.Length
			for _, use := range d.Hinges {
				itsProud, itsOut, known := pinOf(d, use)
				switch {
				case !known:
					continue
				case first == nil:
					first, proud, out = use, itsProud, itsOut
					continue
				case !wood.Over(max((itsProud-proud).Abs(), (itsOut-out).Abs()), p.Tape.Tolerance()):
					continue
				}
				off, where, sheet := itsProud-proud, "in front of the face", p.Paper().Start(itsProud, "pin of "+use.Name+", in front of the face").Minus(proud, "pin of "+first.Name)
				if (itsOut - out).Abs() > off.Abs() {
					off, where, sheet = itsOut-out, "beyond the edge", p.Paper().Start(itsOut, "pin of "+use.Name+", beyond the edge").Minus(out, "pin of "+first.Name)
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

// pinOf is where the pin of a butt, knife or pivot hinge stands to its leaf: in front of its face and beyond its
// edge, as far as the hinges of one door may differ.
func pinOf(d *plan.Door, use *plan.HardwareUse) (proud, out wood.Length, known bool) {
	hung, turns := d.Hung()
	h := use.Hinge
	if !turns || h == nil || !d.Edges[hung].Less.Known() {
		return 0, 0, false
	}
	out = d.Edges[hung].Less.Length / 2
	switch h.Kind.Is {
	case "butt":
		if !use.Proud.Known() && !h.Knuckle.Known() {
			return 0, 0, false
		}
		proud = use.Proud.Or(h.Knuckle.Length / 2).Length
	case "knife", "pivot":
		if !h.Pin.Across.Known() || !h.Pin.Deep.Known() {
			return 0, 0, false
		}
		proud, out = -h.Pin.Deep.Length, -h.Pin.Across.Length
	default:
		return 0, 0, false
	}
	return proud, use.Out.Or(out).Length, true
}
