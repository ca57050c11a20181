package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	midRailFrom = &Figure{
		Name: "high", Why: "above which height a framed door has a rail in its middle", Basis: Published,
		Source: "60 in: Architectural Woodwork Standards, 1st ed., 2009, p. 271", Dim: lang.Length, Length: 60 * wood.Inch,
	}
	tallThick = &Figure{
		Name: "thick", Why: "how thick the frame of such a door is at least", Basis: Published,
		Source: "3/4 in: Architectural Woodwork Standards, 1st ed., 2009, p. 271", Dim: lang.Length, Length: 3 * wood.Inch / 4, Metric: 19 * wood.Millimetre,
	}
)

var noMidRail = &Rule{
	Name: "no-mid-rail", Group: Doors, Severity: diag.Warning,
	Summary: "a tall framed door has no rail between its upper and its lower one, or is too thin for its height",
	Doc: `Two stiles of six feet that are held at their ends alone whip and twist: the door is hollow in one season, and its latch corner stands off in the next.
A rail between the panels holds the stiles at half their length.

Draw a middle rail above 60 high, and make the frame 3/4 thick or more. A door that is lower may be thinner.`,
	Sources: `Both: Architectural Woodwork Standards, 1st ed., 2009, p. 271.`,
	Sound:   `A tall door with a middle rail; one of just 60 without; a small one of 5/8; a tall leaf that is one board.`,
	Bad: `frame leaf {
  wide 20 ; high 66 ; thick 7/8
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/2
    down { rail head 2 1/2 ; space ; rail foot 4 }
    stile right 2 1/2
  }
}
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard { of ply ; wide 21 5/8 ; high 66 ; deep 12 ; across { side left ; door only { leaf leaf ; fit inset ; reveal 1/16 ; hang left } ; side right } }
`,
	Good: `frame leaf {
  wide 20 ; high 66 ; thick 7/8
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/2
    down { rail head 2 1/2 ; space ; rail middle 2 1/2 ; space ; rail foot 4 }
    stile right 2 1/2
  }
}
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard { of ply ; wide 21 5/8 ; high 66 ; deep 12 ; across { side left ; door only { leaf leaf ; fit inset ; reveal 1/16 ; hang left } ; side right } }
`,
	Figures: []*Figure{midRailFrom, tallThick},
	Check: func(pass *Pass) {
		p := pass.Plan
		seen := make(map[*plan.Assembly]bool)
		for d := range plan.AllOf[*plan.Door](p) {
			a := d.Leaf.Frame
			if a == nil || seen[a] || !a.Outside[plan.Down].Known() {
				continue
			}
			seen[a] = true
			high, from := a.Outside[plan.Down], pass.Length(midRailFrom, plan.PathOf(a))
			rails, upright := 0, 0
			for _, m := range a.Members {
				switch {
				case m.Word == "rail" && m.Grain == plan.Across:
					rails++
				case m.Word == "stile":
					upright++
				}
			}
			if rails == 0 || upright < 2 || !wood.Over(high.Length, from) {
				continue
			}
			f := diag.Finding{Subject: plan.PathOf(a), Span: a.Name.Span}
			thick, least := a.Outside[plan.Behind], pass.Length(tallThick, plan.PathOf(a))
			switch {
			case rails < 3:
				f.Message = fmt.Sprintf("frame %s is a door %s high and has no rail between its upper and its lower one", quote(a.Name.Text), p.Show(high.Length))
				f.Working = p.Paper().Start(high.Length, "height of "+a.Name.Text).Versus(from, "without a middle rail at most").Working()
				f.Fixes = []diag.Fix{{Title: "draw a middle rail"}}
			case thick.Known() && wood.Under(thick.Length, least-p.Tape.Tolerance()):
				f.Message = fmt.Sprintf("frame %s is a door %s high and %s thick: %s is wanted at that height", quote(a.Name.Text), p.Show(high.Length), p.Show(thick.Length), p.Show(least))
				f.Working = p.Paper().Start(thick.Length, "thickness of "+a.Name.Text).Versus(least, "wanted").Working()
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make it %s thick", p.Show(least))}}
			default:
				continue
			}
			pass.Report(f)
		}
	},
}
