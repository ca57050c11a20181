package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var thinWall = &Rule{
	Name: "thin-wall", Group: Cuts, Severity: diag.Warning,
	Summary: "a cut leaves too little wood between itself and a face",
	Doc: `The cheek beside a mortise bows out under the clamps and cracks; a dowel driven near an edge splits it off; behind a
shallow floor a hole shows through the finish. A mortise a third of the stick leaves walls as strong as the tenon.

Set the joint nearer to the middle of the wood, make it thinner or shallower, or take thicker wood. The rule places every mortise, groove,
housing and hole in its piece of wood, recesses and the joints' own settings counted in, and measures what is left at each face. In thin
stuff a quarter of it is enough beside a mortise or a slot. What a housing, a hinge and a screw's tip leave behind them has
rules of its own; so has a tenon that is too thick for its stick.`,
	Sources: `That thirds give walls as strong as the tenon: W. Fairham, Woodwork Joints, The Mortise and Tenon Joint. The figures are
as they say.`,
	Sound: `Mortises with just 3/16 beside them; one of a half in a thin stick; a dowel just its radius from the face; a blind hole
1/8 short of the face; a threaded insert with 3/16 at both sides; a groove that is a step along an edge; a cup with 2.5 mm behind it; a hinge with 1/8 behind its leaf.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 1/16
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{
		mortiseWallLeast, mortiseWallBreaks, wallThin, holeWallLeast, holeWallBreaks, holeFloor, biscuitWallLeast, lipLeast, lipBreaks,
		cupRimLeast, cupFloor, barrelWall, gainWall, lockFloor,
	},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[thinAt]
		for w := range walls(p) {
			least, breaks := w.wanted(pass)
			if !wood.Over(w.left, 0) || !wood.Under(w.left, least) || !w.asked() {
				continue
			}
			f := diag.Finding{
				Subject: cutSubject(w.cut),
				Span:    wallSpan(w.cut),
				Message: fmt.Sprintf("%s leaves %s at the %s of %s: %s is wanted", cutName(w.cut), p.Show(w.left),
					w.cut.FaceName(w.face), blankName(w.cut.In), p.Show(least)),
				Working: w.working(p).Versus(least, "wanted").Working(),
				Notes:   []diag.Note{{Span: blankSpan(w.cut.In), Message: "it is cut into " + blankName(w.cut.In)}},
				Fixes:   []diag.Fix{w.mend(p, least)},
			}
			if wood.Under(w.left, breaks) {
				f.Severity = diag.Error
			}
			said.add(w.at(least), f)
		}
		said.report(pass)
	},
}

// thinAt is a wall as one line of the plan makes it: it is said once for all that the line speaks of.
type thinAt struct {
	span        diag.Span
	build       *plan.Build
	kind        plan.CutKind
	left, least wood.Length
}

func (w *wall) at(least wood.Length) thinAt {
	return thinAt{w.cut.Span(), buildOf(w.cut), w.cut.Kind, w.left, least}
}

// wallSpan is where a plan says what a wall follows from: how far the joint is set from the face,
// where it says so.
func wallSpan(c *plan.Cut) diag.Span {
	if j := c.Joint(); j != nil && j.Set.Span.Known() {
		return j.Set.Span
	}
	return c.Span()
}

// mend says what would give a wall what it lacks.
func (w *wall) mend(p *plan.Plan, least wood.Length) diag.Fix {
	lacks := upTo(p, least-w.left)
	c, face := w.cut, w.cut.FaceName(w.face)
	if w.below {
		return diag.Fix{Title: fmt.Sprintf("make it %s shallower", p.Show(lacks))}
	}
	if other := c.Wall(w.face.Opposite()); c.Open[w.face.Opposite()] || other.Known() && !wood.Under(other.Length-lacks, least) {
		if fix, ok := w.setBy(p, lacks); ok {
			return fix
		}
		return diag.Fix{Title: fmt.Sprintf("move it %s away from the %s", p.Show(lacks), face)}
	}
	how := "make it narrower, or %s wider"
	if w.face.Dimension() == plan.Thick {
		how = "make it thinner, or %s thicker"
	}
	return diag.Fix{Title: fmt.Sprintf(how, blankName(c.In))}
}

// setBy moves a joint that is set from its face so far away from the face of a wall.
func (w *wall) setBy(p *plan.Plan, by wood.Length) (diag.Fix, bool) {
	c, j := w.cut, w.cut.Joint()
	if j == nil || j.Set.How != plan.Written {
		return diag.Fix{}, false
	}
	m, ok := c.For.End.Of.(*plan.Member)
	side := c.Side(w.face)
	if !ok || c.Use.In != m.In || m.In.Build != nil || side.Axis() != m.Flat {
		return diag.Fix{}, false
	}
	if side.Far() != (m.Flat == plan.Down) { // what lies level is measured from its lower face
		by = -by
	}
	set := j.Set.Length + by
	write := cutTo(p, j.Set.Span, set)
	return diag.Fix{Title: "write `set " + write + "`", Edits: []diag.Edit{{Span: j.Set.Span, Text: write}}}, set >= 0
}
