package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var passageHigh = &Figure{
	Name: "high", Why: "from which height a door is hung as one that people walk through", Basis: Practice,
	Source: "72 (1829 mm)", Dim: lang.Length, Length: 72 * wood.Inch,
}

// buttsSold is how high a butt is, in inches, for a door so thick at least and so wide at most: a page of sizes
// for passage doors, second-hand. Nothing stands there of thinner doors.
var buttsSold = []struct{ thick, wide, high wood.Length }{
	{2 * wood.Inch, 42 * wood.Inch, 5 * wood.Inch},
	{7 * wood.Inch / 4, 36 * wood.Inch, 9 * wood.Inch / 2},
	{7 * wood.Inch / 4, 48 * wood.Inch, 5 * wood.Inch},
	{7 * wood.Inch / 4, math.MaxInt64, 6 * wood.Inch},
	{11 * wood.Inch / 8, 32 * wood.Inch, 7 * wood.Inch / 2},
	{11 * wood.Inch / 8, 36 * wood.Inch, 4 * wood.Inch},
}

var buttShort = &Rule{
	Name: "butt-short", Group: Doors, Severity: diag.Warning,
	Summary: "a butt hinge is too short for a thick door that people walk through",
	Doc: `The longer a butt is, the more screws it has and the farther they stand apart. A passage door on butts for a cupboard works them loose.

For a door 1 3/8 thick take butts 3 1/2 high up to a width of 32, 4 up to 36; for one 1 3/4 thick 4 1/2 up to 36, 5 up to 48; for one
2 thick 5. The rule is asked of doors that are 72 high and 1 3/8 thick or more, where nothing says what each hinge carries.`,
	Sources: `The table: a page of hinge sizes for passage doors, second-hand. Of cupboard doors no table was found.`,
	Sound:   `A butt of just the height; a cupboard door on small butts; a butt that says what it carries.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 1 3/8 ; actual 1 3/8 ; emission "TSCA Title VI" }
hinge small { kind butt ; high 2 1/2 ; wide 2 1/4 ; knuckle 1/4 }
case closet {
  wide 33 ; high 80 ; deep 24
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/8 ; hang left ; hinge small ends 6 count 8 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 1 3/8 ; actual 1 3/8 ; emission "TSCA Title VI" }
hinge large { kind butt ; high 3 1/2 ; wide 2 1/4 ; knuckle 1/4 }
case closet {
  wide 33 ; high 80 ; deep 24
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/8 ; hang left ; hinge large ends 6 count 8 } ; side right }
}
`,
	Figures: []*Figure{passageHigh},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			hung, turns := d.Hung()
			thick, wide, high := d.Thick(), d.Size[plan.Across], d.Size[plan.Down]
			if !turns || hung.Axis() != plan.Across || !thick.Known() || !wide.Known() || !high.Known() ||
				wood.Under(high.Length, pass.Length(passageHigh, plan.PathOf(d))) {
				continue
			}
			wants, said := wood.Length(0), wood.Length(0)
			for _, row := range buttsSold { // beyond the widest of its thickness, that one is the least
				if thick.Length+p.Tape.Tolerance() >= row.thick && (said == 0 || said == row.thick) {
					wants, said = row.high, row.thick
					if wide.Length-p.Tape.Tolerance() <= row.wide {
						break
					}
				}
			}
			for _, use := range d.Hinges {
				h := use.Hinge
				if h == nil || h.Kind.Is != "butt" || !h.High.Known() || h.Carries.Known() || !wood.Under(h.High.Length+p.Tape.Tolerance(), wants) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("hinge %s is %s high, and %s, %s thick and %s wide, wants butts that are %s high", quote(use.Name), p.ShowSaid(h.High),
						called(&d.Item), p.Show(thick.Length), p.Show(wide.Length), p.Show(wants)),
					Working: p.Paper().Start(wants, fmt.Sprintf("height of a butt for a door %s thick or more, and so wide", p.Show(said))).Versus(h.High.Length, "it is").Working(),
					Fixes:   []diag.Fix{{Title: fmt.Sprintf("hang it on butts that are %s high, or say what each hinge carries", p.Show(wants))}},
				})
				break
			}
		}
	},
}
