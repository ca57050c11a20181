package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var placedSize = &Rule{
	Name: "placed-size", Group: Lengths, Severity: diag.Error,
	Summary: "a frame, a case or an assembly is not the size of the place where it stands",
	Doc: `An end frame of 23 in a cabinet 22 1/2 deep stands out at the back; a plinth that was drawn for another cabinet stands in
under it or shows all round. Each was drawn by itself, and one of the two was changed.

What is drawn elsewhere fills its place: it takes its size from there where it states none. State it in one of the two. A frame in a
list "across" turns, so that its width is measured front to back; one in a list "down" lies level.

In an "assembly", things of several heights and depths may stand side by side, and only what is larger than its place is
reported.`,
	Sources: `The sum is arithmetic.`,
	Sound: `An end frame that takes its height from the cabinet; a low and a high case side by side; a frame thinner than the frame that
it stands in; a number in the list that agrees with the case.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
case chest {
  of oak 3/4
  wide 30 ; high 24 ; deep 22 1/2
  across { frame left part end-frame ; open bay ; frame right part end-frame }
}
frame end-frame pair {
  of oak
  wide 23 ; high 24 ; thick 7/8
  across { stile front 2 ; space ; stile back 2 }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
case chest {
  of oak 3/4
  wide 30 ; high 24 ; deep 22 1/2
  across { frame left part end-frame ; open bay ; frame right part end-frame }
}
frame end-frame pair {
  of oak
  wide 22 1/2 ; high 24 ; thick 7/8
  across { stile front 2 ; space ; stile back 2 }
}
`,
	Check: func(pass *Pass) {
		seen := make(map[place]bool) // a frame that stands at both sides is reported once
		for n := range plan.AllOf[*plan.Placed](pass.Plan) {
			if n.Part.To == nil {
				continue
			}
			for own := plan.Across; own <= plan.Behind; own++ {
				if at := (place{n.Part.To, n.In, own, n.Cell[n.HostAxis(own)].Size}); !seen[at] {
					seen[at] = true
					placedOn(pass, n, own)
				}
			}
		}
	},
}

// place is what is asked of an assembly along one of its axes by where it stands.
type place struct {
	of, in *plan.Assembly
	axis   plan.Axis
	size   wood.Length
}

// placedOn reports a placed thing that is not the size of its place along one of its own axes.
func placedOn(pass *Pass, n *plan.Placed, own plan.Axis) {
	p, a, host := pass.Plan, n.Part.To, n.HostAxis(own)
	cell, size := n.Cell[host], a.Outside[own]
	if !cell.Sized || !size.Known() || agree(p, size.Length, cell.Size) {
		return
	}
	along := host == n.Parent.Axis
	if along && !n.Along.Known() || wood.Under(size.Length, cell.Size) && !along && (n.In.Kind == plan.Group || own == plan.Behind) {
		return
	}
	what := [...]string{"wide", "high", "deep"}[own]
	if a.Kind == plan.Frame && own == plan.Behind {
		what = "thick"
	}
	f := diag.Finding{
		Subject: plan.PathOf(n),
		Span:    n.Name.Span,
		Message: fmt.Sprintf("%s is %s %s, but its place in %s is %s", entitled(a), exact(p, size.Length), what,
			plan.PathOf(n.In), exact(p, cell.Size)),
		Working: room(p, n, host, "its place").Versus(size.Length, measure(a, own)).Working(),
	}
	switch {
	case size.How == plan.Written:
		f.Notes = []diag.Note{{Span: size.Span, Message: "its size is stated here"}}
	case a.Filled != nil && a.Filled != plan.Node(n):
		f.Notes = []diag.Note{{Span: plan.It(a.Filled).Span, Message: "it takes its size from here"}}
	}
	pass.Report(f)
}
