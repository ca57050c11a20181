package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var lapsNothing = &Rule{
	Name: "laps-nothing", Group: Doors, Severity: diag.Warning,
	Summary: "a lap is stated at an edge that laps nothing",
	Doc: `A lap is how far a door or a front lies over what stands at that edge of its opening. Where nothing stands there it ends with the
case, where the next front meets it the gap between them is its "reveal", and an inset door lies over nothing at all: the lap that
somebody wrote down comes out nowhere, and the leaf is cut to another size than they thought.

Draw what it is to lap, say how wide the gap to the next front is ("reveal 3/32"), or take the lap out. What "each" says of all doors may
suit some of them alone, and is not asked about.`,
	Sources: `Geometry.`,
	Sound: `A lap at each edge where something stands; "latch" said of each door, of which two meet; a lap of nought, for a leaf that ends
with its opening.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit overlay 5/8 top 1/8 ; hang left } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; down { top head ; door only { leaf ply ; fit overlay 5/8 top 1/8 ; hang left } } ; side right }
}
`,
	Check: func(pass *Pass) {
		var found onePer[drawerAt]
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			each, _ := d.In.Each["door"].(*plan.Door)
			if each == nil {
				each = new(plan.Door)
			}
			hung, turns := d.Hung()
			checkLaps(&found, d, lapsOf{&d.Fit, &each.Fit, d.Edges, hung, turns})
		}
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			each, _ := d.In.Each["drawer"].(*plan.Drawer)
			if each == nil {
				each = new(plan.Drawer)
			}
			checkLaps(&found, d, lapsOf{fit: &d.Fit, each: &each.Fit, edges: d.Edges})
		}
		found.report(pass)
	},
}

// lapsOf is what a door or a front says of its laps, and what `each` says of all, beside what became of them.
type lapsOf struct {
	fit, each *plan.Fit
	edges     [4]plan.Edge
	hung      plan.Side
	turns     bool
}

// checkLaps holds the laps that a door or a front states against the edges that make use of them. One line
// speaks for all of a row, of which some meet.
func checkLaps(found *onePer[drawerAt], n plan.Node, of lapsOf) {
	it, own, each := plan.It(n), &of.fit.Laps, &of.each.Laps
	if it.Row != "" {
		return
	}
	for _, said := range []struct {
		name      string
		lap, each plan.Length
		side      plan.Side
	}{
		{"", own.All, each.All, 0},
		{"top", own.Top, each.Top, plan.Upper},
		{"bottom", own.Bottom, each.Bottom, plan.Lower},
		{"left", own.Left, each.Left, plan.Left},
		{"right", own.Right, each.Right, plan.Right},
		{"hinge", own.Hinge, each.Hinge, of.hung},
		{"latch", own.Latch, each.Latch, of.hung.Opposite()},
	} {
		f := diag.Finding{Subject: plan.PathOf(n), Span: said.lap.Span, Fixes: []diag.Fix{{Title: "take it out"}}}
		switch edge := of.edges[said.side]; {
		case !said.lap.Said():
			continue
		case of.fit.Kind.Is != "overlay":
			f.Message = fmt.Sprintf("%s is inset, and laps nothing", it.Called())
			f.Fixes = append(f.Fixes, diag.Fix{Title: "write `fit overlay` if it is to lie over the edges of its opening"})
		case said.name == "" || said.lap.Span == said.each.Span || edge.Less.Span == said.lap.Span:
			continue
		case (said.name == "hinge" || said.name == "latch") && !of.turns:
			f.Message = fmt.Sprintf("%s has no %s edge, since nothing says on which edge it is hung", it.Called(), said.name)
			f.Fixes = []diag.Fix{{Title: "write `hang left` or `hang right`, or name the edge as `left` or `right`"}}
		case plan.Neighbour(n, said.side) == nil:
			f.Message = fmt.Sprintf("nothing stands at the %s of %s, which ends there with its case: it laps nothing", sideOf(said.side), it.Called())
			f.Fixes = []diag.Fix{{Title: "draw what it is to lap, or take the lap out"}}
		case edge.Shared:
			f.Message = fmt.Sprintf("%s laps nothing at the %s, where the next front meets it: the gap there is its `reveal`", it.Called(), sideOf(said.side))
		default:
			f.Message = fmt.Sprintf("the lap of %s at the %s is said twice, and `%s` does not count", it.Called(), sideOf(said.side), said.name)
		}
		found.add(drawerAt{span: f.Span, build: it.In.Build}, f)
		if of.fit.Kind.Is != "overlay" {
			return // of all its laps the first is enough
		}
	}
}
