package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	hingeEnds = &Figure{
		Name: "ends", Why: "how far from the ends of a door the middles of its outer hinges may stand in any case", Basis: Practice,
		Source: "4 (100 mm), as most doors of cupboards have them", Dim: lang.Length, Length: 4 * wood.Inch, Metric: 100 * wood.Millimetre,
	}
	hingePart = &Figure{
		Name: "part", Why: "the same, as a part of the height of the door", Basis: Practice,
		Source: "a fifth", Dim: lang.Plain, Number: 1.0 / 5,
	}
)

var hingesClose = &Rule{
	Name: "hinges-close", Group: Doors, Severity: diag.Advice,
	Summary: "the outer hinges of a door stand nearer together than the door is wide",
	Doc: `A door hangs from its upper hinge and leans on its lower one. The pull on the screws of the upper one is the weight of the door, times half its
width, over how far the two are apart: half of the weight where they are as far apart as the door is wide, all of it where they are half
as far apart. Then it sags in time, and drags.

Move the outer hinges apart. Where they are less than half the width of the door apart, that is a warning. Hinges within 4, or
a fifth of the height, of both ends are left as they are, and so are those in line with the rails, and a door that is wider than high, on
which no place would do; a wide and low one hangs better at its top or its bottom.`,
	Sources: `The outer hinges farther apart than the door is wide: one hardware maker's chart. The pull is statics. How near to the ends they may stand in
any case is common practice, no source.`,
	Sound: `Hinges as far apart as the door is wide; hinges near the ends of a door that is nearly square; a wide low door on three; a flap.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 1/4 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 3/32 ; hang left ; hinge brass at 9, 20 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 1/4 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 3/32 ; hang left ; hinge brass at 4, 26 } ; side right }
}
`,
	Figures: []*Figure{hingeEnds, hingePart},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			hung, turns := d.Hung()
			wide, high := d.Size[plan.Across], d.Size[plan.Down]
			if !turns || hung.Axis() != plan.Across || !wide.Known() || !high.Known() || wood.Over(wide.Length, high.Length) {
				continue
			}
			at, known := hingesAt(d, hung)
			if !known || len(at) < 2 {
				continue
			}
			first, last := at[0], at[len(at)-1]
			room := max(pass.Length(hingeEnds, plan.PathOf(d)), fraction(high.Length, pass.Number(hingePart, plan.PathOf(d))))
			if !wood.Under(last-first, wide.Length) || !wood.Over(first, room) && !wood.Over(high.Length-last, room) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d), Span: d.Span,
				Message: fmt.Sprintf("the outer hinges of %s stand %s apart, and it is %s wide: they pull out of the wood the more, the nearer they are", called(&d.Item),
					exact(p, last-first), p.Show(wide.Length)),
				Working: p.Paper().Start(high.Length-first, "from the lower end to the middle of the highest hinge").
					Minus(high.Length-last, "to the middle of the lowest").Equals("apart").Versus(wide.Length, "width of the door").Working(),
				Fixes: []diag.Fix{{Title: "move the outer hinges nearer to the ends of the door"}},
			}
			if wood.Under(last-first, wide.Length/2) {
				f.Severity = diag.Warning
			}
			pass.Report(f)
		}
	},
}

// hingesAt are the middles of the hinges of a door from the upper or left end of its leaf, in order; false
// where the place of one is not known, or it hangs in line with its rails.
func hingesAt(d *plan.Door, hung plan.Side) ([]wood.Length, bool) {
	var at []wood.Length
	for _, use := range d.Hinges {
		places := d.Along(use, hung)
		if use.Hinge == nil || use.InLine.On || len(places) != use.Number() {
			return nil, false
		}
		for _, e := range places {
			if !e.Known() {
				return nil, false
			}
			at = append(at, e.From+e.Size/2)
		}
	}
	slices.Sort(at)
	return at, true
}
