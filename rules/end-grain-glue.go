package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var endGrainGlue = &Rule{
	Name: "end-grain-glue", Group: Joints, Severity: diag.Error,
	Summary: "a part is held by glue on its end grain alone",
	Doc: `End grain drinks the glue and gives it nothing to grip: a butted and glued end has about a quarter of the strength of the wood,
and wet and dry seasons take the rest. A rail that is butted to its post and glued drops off.

Give the end a tenon, a dowel, a biscuit, a housing, or screws from a pocket. The rule looks at ends of solid wood that "joint butt" holds in a
piece for which the plan names a glue, or which say themselves how much of them is glued. It is silent on what is glued along an edge too, on what a line of its own
fastens, and where the end is "dry".`,
	Sources: `Wood Handbook, FPL-GTR-190, ch. 10: about a quarter of the wood's strength in tension.`,
	Sound: `Boards butted edge to edge, long grain to long grain; a kick that is glued along its edge to the bottom; a butted rail that is screwed by a
line of its own; sheet stock; an end that is only set in place, dry.`,
	Bad: `wood ash { species "white ash" ; sawn flat }
glue white { kind pva }
frame stand {
  of ash ; glue white
  wide 30 ; high 28 ; thick 1
  across { post left 2 ; down { space 2 ; rail low 2 { joint butt } ; space } ; post right 2 }
}
`,
	Good: `wood ash { species "white ash" ; sawn flat }
glue white { kind pva }
dowel peg { thick 3/8 ; long 2 }
frame stand {
  of ash ; glue white
  wide 30 ; high 28 ; thick 1
  across { post left 2 ; down { space 2 ; rail low 2 { joint dowel peg count 2 } ; space } ; post right 2 }
}
`,
	Check: func(pass *Pass) {
		fixed := mentioned(pass.Plan)
		for t := range joinedBy(pass.Plan, plan.Butt) {
			m, j := t.of, t.Joint
			glued := m.In.Glue.Said() || j.GlueAt.Is != ""
			if !glued || j.Dry.On || !isSolid(m) || fixed[m] || fixed[m.In] || m.Part.To != nil && fixed[m.Part.To] || len(t.Mates) == 0 || gluedAlong(m) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject, Span: j.Span,
				Message: fmt.Sprintf("glue on end grain does not hold %s", titled(&m.Item)),
				Notes:   []diag.Note{{Span: m.Span, Message: titled(&m.Item) + " is butted to " + matesOf(t.End)}},
				Fixes:   []diag.Fix{{Title: "give it a tenon, dowels, biscuits or pocket screws; or say `dry`, and what else holds it"}},
			})
		}
	},
}

// gluedAlong reports whether a member lies along another, edge to edge or face to face, so that glue
// can hold it there.
func gluedAlong(m *plan.Member) bool {
	for side := plan.Left; side <= plan.Back; side++ {
		if side.Axis() == m.Grain {
			continue
		}
		if n, ok := plan.Neighbour(m, side).(*plan.Member); ok && n.Grain == m.Grain {
			return true
		}
	}
	return false
}
