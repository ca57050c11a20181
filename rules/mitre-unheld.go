package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var mitreUnheld = &Rule{
	Name: "mitre-unheld", Group: Joints, Severity: diag.Warning,
	Summary: "a mitre is held by glue alone",
	Doc: `Both faces of a mitre are half end grain, and glue alone holds them poorly: the corner opens at its heel, and a picture that is heavy
drops out of its frame.

Let in a spline ("spline thick 1/8"), keys across the corner ("key 2"), a dowel or a biscuit. In a case that carries a load it is an error. The rule
is silent where "mitre-opens" speaks, on frames that a glued sheet ties together, on mouldings and battens that lie on something, on what a line of its own fastens, and where the mitre is "dry".`,
	Sources: `W. Noyes, Handwork in Wood, 1910, on the joints of frames.`,
	Sound:   `A frame with a spline, one with keys, one with biscuits; one round a glued panel of plywood; a moulding mitred round a case.`,
	Bad: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre
  across { stile left 3 ; down { rail head 3 ; space sight ; rail foot 3 } ; stile right 3 }
}
`,
	Good: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8
  across { stile left 3 ; down { rail head 3 ; space sight ; rail foot 3 } ; stile right 3 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		fixed, quiet := mentioned(p), make(map[*plan.Assembly]bool)
		for panel := range plan.AllOf[*plan.Panel](p) {
			if gluedSheet(panel) {
				quiet[panel.In] = true
			}
		}
		for c := range mitres(p) {
			if c.opens(p) && wood.Over(c.gap, pass.Length(mitreShows, plan.PathOf(c.a))) {
				quiet[c.a.In] = true // that it opens, and wants a spline, is said
			}
		}
		seen := make(map[saying]bool)
		for t := range joinedBy(p, plan.Mitre) {
			if !laidOn[t.of.Word] && !fixed[t.of] && len(t.Mates) > 0 && !quiet[t.of.In] && !fixed[t.of.In] {
				unheld(pass, t.of.In, t.Joint, seen)
			}
		}
		for _, a := range p.Assemblies {
			if j := ringJoint(a); a.Root == nil && j != nil && j.Kind.Is == plan.Mitre && !quiet[a] && !fixed[a] {
				unheld(pass, a, j, seen)
			}
		}
	},
}

// unheld reports a mitre of an assembly into which nothing is let, once for each line that says it.
func unheld(pass *Pass, a *plan.Assembly, j *plan.Joint, seen map[saying]bool) {
	if j.Dry.On || (&mitre{joint: j}).held() || again(seen, j.Span, a) {
		return
	}
	f := diag.Finding{
		Subject: plan.PathOf(a), Span: j.Span,
		Message: "glue alone holds this mitre: its corner opens",
		Fixes:   []diag.Fix{{Title: "add a spline, such as `spline thick 1/8`, or keys: `key 2`"}},
	}
	if pass.Plan.Tape.Metric {
		f.Fixes[0].Title = "add a spline, such as `spline thick 3`, or keys: `key 2`"
	}
	if what := carries(a); what != "" {
		f.Severity = diag.Error
		f.Message = fmt.Sprintf("glue alone holds this mitre, and %s rests on it", what)
	}
	pass.Report(f)
}

// laidOn lists the sticks that something else carries along their length.
var laidOn = map[string]bool{"moulding": true, "batten": true, "cleat": true}

// carries says what a case carries, in itself or on one of its boards; "" where nothing is said.
func carries(a *plan.Assembly) string {
	if a.Kind != plan.Case {
		return ""
	}
	if a.Load != nil || len(a.Holds) > 0 {
		return "a load"
	}
	for _, m := range a.Members {
		if m.Load != nil || len(m.Holds) > 0 {
			return "the load of " + titled(&m.Item)
		}
	}
	return ""
}
