package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

var openTimeUsed = &Figure{
	Name: "used", Why: "how much of a glue's open time may be used up before the last joint is closed", Basis: Practice,
	Source: "four fifths, for nothing goes as fast as it was planned", Dim: lang.Percent, Number: 80,
}

var openTimeShort = &Rule{
	Name: "open-time-short", Group: Layups, Severity: diag.Warning,
	Summary: "a glue-up takes longer than the glue stays open",
	Doc: `Glue skins over before the last clamp is on: the first joints no longer wet what they meet, and hold by half. It looks
like any other joint until a chair racks.

Glue up in two stages, each with its own dry fit; take a slower glue; or have a second pair of hands. The rule looks at each step that
says how long a joint takes ("glue leaf with resin each 45s set-up 5min"). The joints of an assembly are the ends of its members that are glued, those of a
panel of boards the edges between them, those of a layup the lines between its plies. Things that are glued in one step and are not joined are
taken one after another, and the longest counts.`,
	Sources: glueTimes + ` See the figure.`,
	Sound: `Five joints of 45 seconds in a glue that stays open for five minutes; more joints in a slower glue; one step after another; ends that
are butted or left dry; a step that does not say how long a joint takes.`,
	Bad: `glue white { kind pva }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 11 }
steps { glue slab with white each 45s }
`,
	Good: `glue white { kind pva }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 6 }
steps { glue slab with white each 45s }
`,
	Figures: []*Figure{openTimeUsed},
	Check: func(pass *Pass) {
		for _, steps := range pass.Plan.Steps {
			for _, step := range steps.Steps {
				if step.EachTime.Known() && step.EachTime.Value > 0 {
					checkOpenTime(pass, step)
				}
			}
		}
	},
}

func checkOpenTime(pass *Pass, step *plan.Step) {
	glue, _ := step.Glue()
	if glue == nil {
		return
	}
	open, ok := glue.OpenFor()
	joints, of := longestGlueUp(step)
	each, setUp := step.EachTime.Value, step.SetUp.Or(0)
	takes := float64(joints)*each + setUp
	most := open * pass.Number(openTimeUsed, of) / 100
	if !ok || joints == 0 || takes <= most {
		return
	}
	working := diag.Working{
		{Value: timed(each), Label: "for each joint"},
		{Op: diag.Times, Value: itoa(joints), Label: "joints of " + of},
	}
	if setUp > 0 {
		working = append(working, diag.Step{Op: diag.Plus, Value: timed(setUp), Label: "to set up"})
	}
	working = append(working,
		diag.Step{Op: diag.Equals, Value: timed(takes), Label: "until the last joint is closed"},
		diag.Step{Op: diag.Versus, Value: timed(most), Label: fmt.Sprintf("%s%% of %s, the open time%s", number(pass.Number(openTimeUsed, of)), timed(open), usualFor(glue, glue.OpenTime))},
	)
	pass.Report(diag.Finding{
		Subject: of,
		Span:    step.Span,
		Message: fmt.Sprintf("gluing %s takes %s, and %s stays open for %s%s", of, timed(takes), quote(glue.Name.Text), timed(open), usualFor(glue, glue.OpenTime)),
		Working: working,
		Notes:   []diag.Note{{Span: glue.Name.Span, Message: "the glue stands here"}},
		Fixes:   []diag.Fix{{Title: "glue it up in two stages, or take a glue that stays open longer"}},
	})
}

// longestGlueUp is the most joints that are closed at one go in a step, and of what. Members of
// one assembly that are named side by side are one go.
func longestGlueUp(step *plan.Step) (joints int, of string) {
	inOne := make(map[*plan.Assembly]int)
	for _, on := range step.On {
		if on.To == nil {
			continue
		}
		n, path := jointsOf(step, on.To.Is), on.To.Path
		if m, ok := on.To.Is.(*plan.Member); ok && m.In != nil && step.Verb == "glue" {
			inOne[m.In] += n
			n = inOne[m.In]
			if n > jointsOf(step, m) {
				path = plan.PathOf(m.In)
			}
		}
		if n > joints {
			joints, of = n, path
		}
	}
	return joints, of
}

// jointsOf is how many joints a step closes on one thing.
func jointsOf(step *plan.Step, thing any) int {
	if m := plan.MaterialOf(thing); step.Verb == "press" {
		if m == nil {
			return 0
		}
		return max(len(m.Plies)-1, 0)
	}
	switch t := thing.(type) {
	case *plan.Assembly:
		if t.Rail != nil {
			return t.Sides.Or(0)
		}
		n := 0
		for _, e := range t.Ends {
			if gluedEnd(e) {
				n++
			}
		}
		return n
	case *plan.Placed:
		if t.Part.To != nil {
			return jointsOf(step, t.Part.To)
		}
	case *plan.Part:
		return t.Boards.Or(1) - 1
	case *plan.Member:
		if n := t.Boards.Or(1) - 1; n > 0 {
			return n // it is glued up first
		}
		n := 0
		for _, e := range t.Ends {
			if e != nil && gluedEnd(e) {
				n++
			}
		}
		return n
	}
	return 0
}

// gluedEnd reports whether an end is held by glue in what it meets.
func gluedEnd(e *plan.End) bool {
	if e.Free || e.Joint == nil || e.Joint.Dry.On || len(e.Mates) == 0 {
		return false
	}
	switch e.Joint.Kind.Is {
	case plan.ScrewJoint, plan.Pocket, plan.BoltJoint, plan.Knob, plan.Hook, plan.Magnet, plan.WedgeJoint, plan.DropIn, plan.ShelfPin, plan.Butt, "":
		return false
	}
	return true
}
