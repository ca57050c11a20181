package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var barefacedCorner = &Rule{
	Name: "barefaced-corner", Group: Tenons, Severity: diag.Error,
	Summary: "a tenon with one shoulder stands at the corner of a frame",
	Doc: `A bare-faced tenon has one shoulder, and nothing on its other side that closes against the stile. In the middle of a frame
the other rails keep it square to the face; at a corner it is alone, and the frame twists there.

Give the corner a tenon with two shoulders, and keep the bare-faced one for rails between. The rule looks at frames of sticks that lie
in one plane, where a rail stands level with the end of what it goes into. In a leg or a post, which is far thicker than its rails, one
shoulder serves at the end too.`,
	Sources: `That bare-faced tenons are not for corners: W. Fairham, Woodwork Joints, The Mortise and Tenon Joint. That they serve where
a rail is thinner than its stile: W. Noyes, Handwork in Wood, 1910, joint no. 44. That a leg is another matter is common practice, no source.`,
	Sound: `A bare-faced rail in the middle of a frame; a bare-faced apron at the top of a leg.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 1 1/8
  each rail thick 3/4
  joint tenon thick 3/8 long 1 1/4
  across { stile left 2 1/4 ; down { rail head 2 1/4 { joint tenon barefaced } ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 1 1/8
  each rail thick 3/4
  joint tenon thick 3/8 long 1 1/4
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail middle 2 { joint tenon barefaced } ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			if !t.Joint.Barefaced.On || t.of.In.Kind != plan.Frame {
				continue
			}
			for _, mate := range t.Mates {
				if mate.In != t.of.In || mate.Grain == t.Side.Axis() || mate.Word == "leg" || mate.Word == "post" {
					continue
				}
				near, toEnd := nearestEnd(mate, t.of.Cell[mate.Grain])
				if !near || wood.Over(toEnd, p.Tape.Tolerance()) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: t.subject,
					Span:    t.Joint.Barefaced.Span,
					Message: fmt.Sprintf("%s has a tenon with one shoulder at the corner of %s: a corner wants two", titled(&t.of.Item), entitled(t.of.In)),
					Notes:   []diag.Note{{Span: mate.Span, Message: called(&mate.Item) + " ends here"}},
					Fixes:   []diag.Fix{{Title: "give it two shoulders: leave `barefaced` out, with a tenon of about a third of the stick"}},
				})
				break
			}
		}
	},
}
