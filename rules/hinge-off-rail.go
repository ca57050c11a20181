package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var railNear = &Figure{
	Name: "near", Why: "how near to the inner edge of a rail the end of a hinge looks as if it were meant to be level with it", Basis: Practice,
	Source: "1/4 (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
}

var hingeOffRail = &Rule{
	Name: "hinge-off-rail", Group: Doors, Severity: diag.Advice,
	Summary: "a hinge is nearly in line with the rail of its door, and not quite",
	Doc: `On a framed door a butt is let in with its end level with the inner edge of the rail: the eye runs along that line. One that misses it by a
little looks like a slip.

Say "in-line", which sets the outer ends of the hinges so; or move the hinge well away from the rail. A hinge that stands more than 1/4 off is
taken to be meant there.`,
	Sources: `The ends of the hinges in line with the inside of the rails: W. Fairham, Woodwork Joints, the hinged joint; Building Trades Pocketbook,
"Doors". How near is near is common practice, no source.`,
	Sound: `Hinges in line with the rails; hinges well away from them; a door without rails; a cup hinge.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 }
frame leaf-frame {
  of oak
  thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across { stile near 2 1/4 ; down { rail head 2 1/4 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 2 1/4 } ; stile far 2 1/4 }
}
case cupboard {
  wide 18 ; high 30 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf leaf-frame ; fit inset ; reveal 3/32 ; hang left ; hinge brass ends 2 1/8 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 }
frame leaf-frame {
  of oak
  thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across { stile near 2 1/4 ; down { rail head 2 1/4 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 2 1/4 } ; stile far 2 1/4 }
}
case cupboard {
  wide 18 ; high 30 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf leaf-frame ; fit inset ; reveal 3/32 ; hang left ; hinge brass in-line } ; side right }
}
`,
	Figures: []*Figure{railNear},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			hung, turns := d.Hung()
			if turns && hung.Axis() == plan.Across {
				checkRails(pass, d, hung)
			}
		}
	},
}

// checkRails holds the outer ends of a door's butts against the inner edges of its rails.
func checkRails(pass *Pass, d *plan.Door, hung plan.Side) {
	p := pass.Plan
	upper, lower := d.InsideRails()
	near := pass.Length(railNear, plan.PathOf(d))
	for _, use := range d.Hinges {
		if use.Hinge == nil || use.Hinge.Kind.Is != "butt" || use.InLine.On || !use.Hinge.High.Known() {
			continue
		}
		for _, e := range d.Along(use, hung) {
			for _, end := range []struct {
				at   wood.Length
				rail plan.Length
				of   string
			}{{e.From - use.Hinge.High.Length/2, upper, "upper"}, {e.From + use.Hinge.High.Length/2, lower, "lower"}} {
				off := (end.at - end.rail.Length).Abs()
				if !e.Known() || !end.rail.Known() || agree(p, end.at, end.rail.Length) || wood.Over(off, near) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("hinge %s of %s ends %s off the inner edge of its %s rail", quote(use.Name), called(&d.Item), exact(p, off), end.of),
					Working: p.Paper().Start(end.at, "from the upper end of the door to the end of the hinge").Versus(end.rail.Length, "to the inner edge of the rail").Working(),
					Fixes:   []diag.Fix{{Title: "say `in-line`, or move it well away from the rail"}},
				})
				return
			}
		}
	}
}
