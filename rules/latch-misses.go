package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	boltBite = &Figure{
		Name: "bite", Why: "how far a bolt reaches into its keeper at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	ballBite = &Figure{
		Name: "ball-bite", Why: "how far a ball, a bullet or a roller reaches into its keeper at least", Basis: Practice,
		Source: "1/16 (1.5 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
	}
	biteLost = &Figure{
		Name: "lost", Why: "below which a bolt holds nothing", Basis: Practice,
		Source: "1/32 (1 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: wood.Millimetre,
	}
)

var latchMisses = &Rule{
	Name: "latch-misses", Group: Doors, Severity: diag.Error,
	Summary: "the bolt of a latch or a lock does not reach its keeper through the gap",
	Doc: `A bolt must cross the gap before it holds anything. A door that is fitted in summer shrinks away from its keeper in winter: a throw of 3/16 over
a gap of 1/16 that opens by 0.055 has 0.070 left to hold with, and a throw of 1/8 has nothing.

Take a latch with more throw, make the gap narrower, set the keeper proud, or use wood that moves less. What the door loses from the
day it is made to the driest air that the plan states is counted at the latch's edge, since the hinges hold the other. A bolt that holds
nothing is an error; less than 1/8 is a warning, and of balls and rollers, which are round, less than 1/16.

The edge of a leaf that laps its case lies before the case. A bolt or a bullet that is let into that edge comes out where nothing stands: such a
leaf is held from its back, by a catch within the case, a cam or a turn; or by the leaf that it meets.`,
	Sources: `What is left is arithmetic. ` + movementSource + `
What it must be is common practice, no source.`,
	Sound: `A throw of 1/4 over the same gap; a ball with just 1/16 left; a latch on the upper edge, along which a framed door keeps its length; a door
that laps over its opening, and is held by a roller at its back.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 10% }
wood oak { species "red oak" ; sawn flat }
latch ball { kind mortise ; throw 1/8 }
case cupboard {
  wide 9 5/8 ; high 30 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left ; latch ball at 13 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 5% ; humid 10% }
wood oak { species "red oak" ; sawn flat }
latch ball { kind mortise ; throw 3/8 }
case cupboard {
  wide 9 5/8 ; high 30 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left ; latch ball at 13 } ; side right }
}
`,
	Figures: []*Figure{boltBite, ballBite, biteLost},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			for _, use := range d.Latches {
				if !checkBefore(pass, d, use) {
					checkBite(pass, d, use)
				}
			}
		}
	},
}

// checkBefore looks whether a bolt comes out of an edge of a leaf that lies before its case.
func checkBefore(pass *Pass, d *plan.Door, use *plan.HardwareUse) bool {
	edge, ok := latchEdge(d, use)
	if !ok || d.Fit.Kind.Is != "overlay" || d.Edges[edge].Shared || use.Latch.Kind.Is != "mortise" && use.Latch.Kind.Is != "bullet" {
		return false
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(d), Span: use.Span,
		Message: fmt.Sprintf("%s %s comes out of the %s edge of %s, which laps its case: nothing stands there for it to go into", use.Word, quote(use.Name),
			[...]string{"left", "right", "upper", "lower"}[edge], titled(&d.Item)),
		Fixes: []diag.Fix{{Title: "hold it from its back, by a catch or a magnet within the case, or a lock with a cam"}},
	})
	return true
}

// checkBite holds a throw against the gap that it crosses: on the day that the door is hung, and at its
// driest.
func checkBite(pass *Pass, d *plan.Door, use *plan.HardwareUse) {
	p, subject := pass.Plan, plan.PathOf(d)
	edge, ok := latchedAt(d, use)
	gap, bounded := freeGap(d, edge)
	if !ok || !bounded || gap < 0 {
		return
	}
	least := pass.Length(boltBite, subject)
	if slices.Contains([]string{"ball", "bullet", "roller"}, use.Latch.Kind.Is) {
		least = pass.Length(ballBite, subject)
	}
	paper, when := p.Paper(), ""
	if shrinks, known := yearly(p, d, edge, false, p.Paper()); known && shrinks < 0 {
		yearly(p, d, edge, false, paper.Start(gap, "gap"))
		when = " at its driest"
		gap = paper.Equals("gap" + when).Result()
	}
	left := paper.Start(use.Latch.Throw.Length, "throw").Minus(gap, "gap"+when).Equals("left in the keeper").Result()
	if !wood.Under(left, least) {
		return
	}
	f := diag.Finding{
		Subject: subject, Span: use.Span,
		Message: fmt.Sprintf("%s %s has %s left of its throw of %s to hold %s with%s: %s is wanted", use.Word, quote(use.Name),
			exact(p, max(0, left)), p.ShowSaid(use.Latch.Throw), titled(&d.Item), when, p.Show(least)),
		Working: paper.Versus(least, "wanted").Working(),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("take one with a throw of %s or more, or make the gap narrower", p.Show(upTo(p, use.Latch.Throw.Length+least-left)))}},
	}
	switch lost := pass.Length(biteLost, subject); {
	case !wood.Under(left, lost):
		f.Severity = diag.Warning
	case left <= 0:
		f.Message = fmt.Sprintf("%s %s does not reach its keeper%s: its throw is %s, and the gap %s", use.Word, quote(use.Name), when,
			p.ShowSaid(use.Latch.Throw), exact(p, gap))
	}
	pass.Report(f)
}

// latchedAt is the edge of a leaf out of which the bolt of a latch comes; false where its throw is not
// known.
func latchedAt(d *plan.Door, use *plan.HardwareUse) (plan.Side, bool) {
	edge, ok := latchEdge(d, use)
	return edge, ok && use.Latch.Throw.Known()
}

// latchEdge is the edge of a leaf at which a latch sits.
func latchEdge(d *plan.Door, use *plan.HardwareUse) (plan.Side, bool) {
	hung, turns := d.Hung()
	if !turns || use.Latch == nil {
		return 0, false
	}
	switch use.On.Is {
	case "head":
		return plan.Upper, true
	case "foot":
		return plan.Lower, true
	}
	return hung.Opposite(), true
}
