package rules

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var clampsOffEarly = &Rule{
	Name: "clamps-off-early", Group: Layups, Severity: diag.Error,
	Summary: "a glued joint is let go, or worked on, before its glue has set",
	Doc: `The clamps come off, the joint springs open by a hair, and nobody closes it again; or the saw shakes a joint that was hardly
held. A pressed panel that leaves the press too soon lifts at its edges.

Leave it in the clamps for as long as the glue's label says, longer in a cold shop. The rule looks at each step that says how long it
lasts ("press slab for 12h", "glue leaf with resin for 4h"), and, where a step does not say it, at how long the work rests before it goes on ("rest slab
for 4h").`,
	Sources: glueTimes + ` Hide glue, which the chart leaves open, is clamped for 6 h (W. Noyes, Handwork in Wood, 1910) or for 1 to 4 h (W. Fairham,
Woodwork Joints): write which, the rule does not guess.`,
	Sound: `Twelve hours for a glue that wants twelve; a rest that makes up the time; a glue that needs no clamps; a step that says nothing of time.`,
	Bad: `glue resin { kind urea ; coldest 60F ; clamp-time 12h }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 6 }
steps { glue slab with resin for 4h ; rip slab }
`,
	Good: `glue resin { kind urea ; coldest 60F ; clamp-time 12h }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 6 }
steps { glue slab with resin for 12h ; rip slab }
`,
	Check: func(pass *Pass) {
		for _, steps := range pass.Plan.Steps {
			for i, step := range steps.Steps {
				if step.Verb == "glue" || step.Verb == "press" {
					checkClampTime(pass, step, steps.Steps[i+1:])
				}
			}
		}
	},
}

func checkClampTime(pass *Pass, step *plan.Step, after []*plan.Step) {
	glue, _ := step.Glue()
	on := step.First()
	if glue == nil || on == nil {
		return
	}
	wants, ok := glue.ClampFor()
	held, next, known := heldFor(step, after)
	if !ok || !known || held >= wants {
		return
	}
	path := on.Path
	f := diag.Finding{
		Subject: path,
		Span:    step.Span,
		Message: fmt.Sprintf("%s is held for %s, and %s wants %s%s", path, timed(held), quote(glue.Name.Text), timed(wants), usualFor(glue, glue.ClampTime)),
		Notes:   []diag.Note{{Span: glue.Name.Span, Message: "the glue stands here"}},
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("leave it in the clamps: `for %s`, longer where it is cold", timed(wants))}},
	}
	if next != nil {
		f.Notes = append(f.Notes, diag.Note{Span: next.Span, Message: "the work goes on here"})
	}
	pass.Report(f)
}

// heldFor is how long what a step glues is left alone: as the step says; else for as long as it
// rests until the next step takes it up. It is unknown where something that says no time comes between.
func heldFor(step *plan.Step, after []*plan.Step) (seconds float64, next *plan.Step, known bool) {
	known = step.For.Known()
	seconds = step.For.Or(0)
	for _, later := range after {
		mine := touches(step, later)
		resting := later.Verb == "rest" || later.Verb == "store"
		switch {
		case mine && !resting:
			return seconds, later, known
		case step.For.Known():
		case later.For.Known():
			seconds += later.For.Value
			known = known || mine
		default:
			return 0, nil, false
		}
	}
	return seconds, nil, step.For.Known()
}

// touches reports whether a later step is done to what an earlier one was done to, or to a part
// of it, or to what it is part of.
func touches(step, later *plan.Step) bool {
	for _, a := range step.On {
		for _, b := range later.On {
			if a.To != nil && b.To != nil && (a.To.Path == b.To.Path ||
				strings.HasPrefix(a.To.Path, b.To.Path+".") || strings.HasPrefix(b.To.Path, a.To.Path+".")) {
				return true
			}
		}
	}
	return false
}
