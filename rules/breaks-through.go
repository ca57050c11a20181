package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var breaksThrough = &Rule{
	Name: "breaks-through", Group: Cuts, Severity: diag.Error,
	Summary: "a cut comes out of a face where it is not meant to",
	Doc: `A mortise that is set so far from one face that it comes out at the other is no mortise, a dowel's hole that is as deep as
the board is thick shows on the far side, and a bolt beside an edge holds nothing.

Look at the figures of the joint: how far it is set from the face, where it stands along the width, how deep it is. The rule
places every cut in its piece of wood. A mortise too deep for its stick, the tip of a screw, and the bore of a hinge have rules of their own.`,
	Sources: `Geometry.`,
	Sound: `A through tenon, a bolt that goes through its post, a rabbet and a groove that run out along an edge, a dowel whose hole stops
short of the far face.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 9/16
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[thinAt]
		for w := range walls(p) {
			if wood.Over(w.left, 0) || !w.asked() {
				continue
			}
			least, _ := w.wanted(pass)
			how := "comes out at"
			if wood.Same(w.left, 0) {
				how = "leaves nothing at"
			}
			said.add(w.at(0), diag.Finding{
				Subject: cutSubject(w.cut),
				Span:    wallSpan(w.cut),
				Message: fmt.Sprintf("%s %s the %s of %s", cutName(w.cut), how, w.cut.FaceName(w.face), blankName(w.cut.In)),
				Working: w.working(p).Working(),
				Notes:   []diag.Note{{Span: blankSpan(w.cut.In), Message: "it is cut into " + blankName(w.cut.In)}},
				Fixes:   []diag.Fix{w.mend(p, max(least, p.Tape.Finest()))},
			})
		}
		said.report(pass)
	},
}
