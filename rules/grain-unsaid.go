package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var grainUnsaid = &Rule{
	Name: "grain-unsaid", Group: Hygiene, Severity: diag.Advice,
	Summary: "a part's grain runs the short way, or a chest's side upright, and the plan does not say that it is meant",
	Doc: `A size is written with the grain first. A part of 9 x 14 has its grain along the 9, is weak along the 14, and moves in
the direction that nobody expects; as often as not the two figures were swapped.

The side of a case stands with its grain upright, and its ends are above and below. Between the front and the back of a chest or
a box that is seldom meant: such a side moves against boards that run level, and has no end to be dovetailed to them. Say "grain behind". The same goes for sides that run through, where the front and the back are dovetailed
or fingered to them; with other joints the rule lets such sides be.

Swap them: "size 14 x 9 x 3/4". Where the grain does run the short way, say "grain" in the part, and the advice is gone. A part
that is glued up of several boards says so with "boards", and is taken as meant.`,
	Sources: "Common practice, no source.",
	Sound: `A square part, one glued up of boards, a short wide one of sheet stock, and one that says its grain; a side between
the top and the bottom of a case.`,
	Bad: `wood cherry { species "black cherry" ; sawn flat }
part lid { of cherry ; size 9 x 14 x 3/4 }
`,
	Good: `wood cherry { species "black cherry" ; sawn flat }
part lid { of cherry ; size 14 x 9 x 3/4 }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, part := range p.Parts {
			long, wide := part.Size.Long, part.Size.Wide
			m := part.Of.Material.To
			if part.Name.Text == "" || m == nil || m.Kind != plan.Solid || part.GrainSaid.Is != "" || part.Boards.Or(1) > 1 ||
				!long.Known() || !wide.Known() || !wood.Over(wide.Length, long.Length) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(part),
				Span:    part.Name.Span,
				Message: fmt.Sprintf("part %s is %s across the grain and only %s along it: is that meant?", quote(part.Name.Text),
					p.ShowSaid(wide), p.ShowSaid(long)),
			}
			fix := diag.Fix{Title: "swap the two, since the length with the grain comes first"}
			if long.How == plan.Written && wide.How == plan.Written {
				fix.Edits = []diag.Edit{{Span: long.Span, Text: wide.Span.Text()}, {Span: wide.Span, Text: long.Span.Text()}}
			}
			f.Fixes = []diag.Fix{fix, {Title: "say `grain across` where it is meant"}}
			pass.Report(f)
		}
		for m := range p.Members() {
			if m.Word != "side" || m.GrainSaid.Is != "" || m.Part.To != nil || m.Grain != plan.Down || !betweenFronts(m) && !besideFronts(m) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(m),
				Span:    m.Name.Span,
				Message: fmt.Sprintf("the grain of %s runs upright, so that none of its ends meets the front and the back: is that meant?", titled(&m.Item)),
				Fixes:   []diag.Fix{{Title: "say `grain behind`, so that its ends are joined to them"}, {Title: "say `grain down` where it is meant"}},
			}
			pass.Report(f)
		}
	},
}

// betweenFronts reports whether a board stands in a list between the front and the back of a chest or
// a box, both drawn as fronts.
func betweenFronts(m *plan.Member) bool {
	row := m.Parent
	if row == nil || row.Axis != plan.Across || row.Parent == nil || row.Parent.Axis != plan.Behind {
		return false
	}
	for _, i := range []int{row.Index - 1, row.Index + 1} {
		if i < 0 || i >= len(row.Parent.Items) || !isFront(row.Parent.Items[i]) {
			return false
		}
	}
	return true
}

// besideFronts reports whether a board of solid wood stands beside the front or the back of a chest or a box, which is
// dovetailed or fingered to it: such joints are cut in end grain on both sides.
func besideFronts(m *plan.Member) bool {
	if of := m.Of.Material.To; of == nil || of.Kind != plan.Solid {
		return false
	}
	for _, side := range []plan.Side{plan.Left, plan.Right} {
		row, ok := plan.Neighbour(m, side).(*plan.List)
		if !ok || row.Axis != plan.Behind {
			continue
		}
		for _, n := range row.Items {
			if !isFront(n) {
				continue
			}
			for _, e := range n.(*plan.Member).Ends {
				if e != nil && e.Joint != nil && (e.Joint.Kind.Is == plan.Dovetail || e.Joint.Kind.Is == plan.BoxJoint) && slices.Contains(e.Mates, m) {
					return true
				}
			}
		}
	}
	return false
}

func isFront(n plan.Node) bool {
	m, ok := n.(*plan.Member)
	return ok && m.Word == "front"
}
