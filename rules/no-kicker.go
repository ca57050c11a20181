package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var noKicker = &Rule{
	Name: "no-kicker", Group: Drawers, Severity: diag.Warning,
	Summary: "nothing above a drawer on wooden runners keeps it level when it is pulled out",
	Doc: `A drawer that is pulled out two thirds lies on the front ends of its runners, and its weight is before them: its back rises
and its front droops until it falls out. What keeps it down is a strip above each of its sides, the kicker; a board above it or the runners
of the next drawer do as well.

Draw a "kicker" above it, at both sides, or a board.`,
	Sources: `Runners, guides and kickers: W. Noyes, Handwork in Wood, 1910, Drawers.`,
	Sound: `A drawer under a shelf; one under strips at both sides; one under a rail that has the runners of the next drawer behind it; one
on slides, in the open.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
case stand {
  wide 21 1/2 ; high 30 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  across {
    side left
    down {
      top head
      open bay
      drawer only 6 {
        of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; long 18
        corner front dovetail slope 1:7 lap 1/4 ; corner back dado deep 1/4
        runner oak ; stop
      }
      bottom floor
    }
    side right
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
case stand {
  wide 21 1/2 ; high 30 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  across {
    side left
    down {
      top head
      open bay
      shelf middle
      drawer only 6 {
        of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; long 18
        corner front dovetail slope 1:7 lap 1/4 ; corner back dado deep 1/4
        runner oak ; stop
      }
      bottom floor
    }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			above := plan.Neighbour(d, plan.Upper)
			if !onRunners(d) || above == nil || keepsDown(above) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(d),
				Span:    d.Name.Span,
				Message: fmt.Sprintf("nothing above the sides of %s keeps it level: it droops when it is pulled out", titled(&d.Item)),
				Notes:   []diag.Note{{Span: plan.It(above).Span, Message: called(plan.It(above)) + " stands above it"}},
				Fixes:   []diag.Fix{{Title: "draw a `kicker` above it at both sides, as high as it runs, or a board"}},
			})
		}
	},
}

// keepsDown reports whether something above a drawer keeps its sides down: a board, or strips along
// them; or what is drawn elsewhere, of which that is not known. Behind a stick along the front are the
// runners of the drawer above it.
func keepsDown(above plan.Node) bool {
	for n := range nearDrawer(above) {
		switch n := n.(type) {
		case *plan.Placed:
			return true
		case *plan.Member:
			if n.Board() || n.Word == "kicker" || n.Word == "runner" || n.Word == "cleat" {
				return true
			}
			if next, ok := plan.Neighbour(n, plan.Upper).(*plan.Drawer); ok && onRunners(next) {
				return true
			}
		}
	}
	return false
}
