package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var noActiveLeaf = &Rule{
	Name: "no-active-leaf", Group: Doors, Severity: diag.Warning,
	Summary: "of a pair of doors that lap each other, the plan does not say which one opens first",
	Doc: `Where two leaves are rebated or bevelled into each other at their meeting stiles, one of them must open first and shut last. Its stile carries the
outer lip or the bevel that runs out, and the other one is held by bolts. A pair of which nobody has said it is rebated the wrong way round.

Say "active" of the leaf that opens first, and of that alone.`,
	Sources: `How two leaves that lap can open is geometry.`,
	Sound:   `A rebated pair with one active leaf; a square pair, of which each leaf opens by itself.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of ply
  each door { leaf ply ; fit inset ; reveal 1/16 ; meeting rebated }
  across { side left ; door near { hang left } ; door far { hang right } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of ply
  each door { leaf ply ; fit inset ; reveal 1/16 ; meeting rebated }
  across { side left ; door near { hang left ; active } ; door far { hang right } ; side right }
}
`,
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			hung, turns := d.Hung()
			other := partner(d)
			if !turns || other == nil || partner(other) != d || hung.Far() || !lapped(d) && !lapped(other) || d.Active.On != other.Active.On {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d), Span: d.Span,
				Message: fmt.Sprintf("%s and %s lap where they meet, and neither is said to open first", titled(&d.Item), titled(&other.Item)),
				Notes:   []diag.Note{{Span: other.Span, Message: titled(&other.Item) + " stands here"}},
				Fixes:   []diag.Fix{{Title: "write `active` in the one that opens first"}},
			}
			if d.Active.On {
				f.Message = fmt.Sprintf("%s and %s lap where they meet, and both are said to open first", titled(&d.Item), titled(&other.Item))
				f.Fixes = []diag.Fix{{Title: "take `active` out of the one that opens last"}}
			}
			pass.Report(f)
		}
	},
}

// lapped reports whether a leaf is said to lap the one that it meets.
func lapped(d *plan.Door) bool { return d.Meeting.Is == "rebated" || d.Meeting.Is == "bevelled" }
