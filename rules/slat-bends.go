package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slatFar = &Figure{
	Name: "far", Why: "how many times that a slat bends for this to be an error", Basis: Practice,
	Source: "2", Dim: lang.Plain, Number: 2,
}

var slatBends = &Rule{
	Name: "slat-bends", Group: Structure, Severity: diag.Error,
	Summary: "a slat under a mattress bends too far under a sleeper",
	Doc: `One slat takes about a third of a heavy sleeper who sits down. A thin one bows until the mattress makes a hollow, works loose at its
ends, and at last it breaks there or at a knot. How far it bends goes with the third power of its span, and of its thickness.

Take thicker or wider slats, or lay a rail under their middle that stands on a leg. The slat is taken as a beam between the two things that carry it
farthest apart, with its ends free to turn and the load in the middle. A little too much is a warning. What is arched is sprung and meant to
bend; a mattress or a board that spreads the load over several slats helps, and is not counted. Where it breaks is not judged: that hangs on
every knot.`,
	Sources: `The formula: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, equation 9-2, with Table 9-1. Stiffness of woods and sheets:
Wood Handbook, Tables 5-3a, 5-1 and 12-1. The load and the limits are common practice, no source.`,
	Sound: `Slats of pine 3/4 x 3 1/2 over 37 1/2 in a single bed; over 61 with a rail in their middle that stands on a leg, or that is deep enough without; thick ones
without any; slats of plywood with their grain along them; arched ones.`,
	Bad: doubleBed("wood pine { species \"ponderosa pine\" ; sawn flat }\n", "of pine 3/4", `space`),
	Good: doubleBed("wood pine { species \"ponderosa pine\" ; sawn flat }\n", "of pine 3/4",
		`across { space ; down 1 { rail middle 3 ; behind { space ; leg prop 2 ; space } } ; space }`),
	Figures: []*Figure{slatLoad, slatBend, slatFar, railSlats},
	Check: func(pass *Pass) {
		for c := range carriedSlats(pass) {
			if c.stiff && !c.cot {
				checkBend(pass, c)
			}
		}
	},
}

// bends is how far a slat bends under what presses on its middle, and how far it may.
func (c *carriedSlat) bends(pass *Pass) (bends, may wood.Length) {
	beam := wood.Beam{Span: c.long, Wide: c.wide, Thick: c.thick, E: c.pascals}
	subject := plan.PathOf(c.Member)
	return beam.Sag(wood.Midpoint, pass.Number(slatLoad, subject)*wood.Gravity), pass.Length(slatBend, subject)
}

func checkBend(pass *Pass, c *carriedSlat) {
	p, subject := pass.Plan, plan.PathOf(c.Member)
	kilograms := pass.Number(slatLoad, subject)
	bends, may := c.bends(pass)
	if bends <= may || may <= 0 || small(p, bends) == small(p, may) {
		return
	}
	over := float64(bends) / float64(may)
	f := diag.Finding{
		Subject: subject, Span: c.Span,
		Message: fmt.Sprintf("%s bends %s under %s in the middle of a clear span of %s, and may %s", titled(&c.Item), small(p, bends), heft(p, kilograms), exact(p, c.long), small(p, may)),
		Working: bendWorking(p, c.long, c.wide, c.thick, c.stiffness, kilograms*wood.Gravity, bends, may),
		Notes:   c.blame(pass),
	}
	thicker := "take slats " + p.Show(ladder(p, wood.Length(float64(c.thick)*math.Cbrt(over)))) + " thick"
	if over < pass.Number(slatFar, subject) {
		f.Severity = diag.Warning
		f.Fixes = []diag.Fix{{Title: thicker}, {Title: c.support()}}
	} else {
		f.Fixes = []diag.Fix{{Title: c.support()}, {Title: thicker}}
	}
	pass.Report(f)
}

// bendWorking is the sum of how far a slat, or a rail between them, bends.
func bendWorking(p *plan.Plan, long, wide, thick wood.Length, s stiffness, newtons float64, bends, may wood.Length) diag.Working {
	w := diag.Working{
		{Value: exact(p, long), Label: "clear span L"},
		{Value: p.Show(wide), Label: "wide, w"},
		{Value: p.Show(thick), Label: "thick, t"},
		{Value: modulus(p, s.pascals), Label: "stiffness E: " + s.from},
		{Value: force(p, newtons), Label: "in the middle, P"},
	}
	if s.weakness != "" {
		w = append(w, diag.Step{Label: s.weakness})
	}
	return append(w,
		diag.Step{Op: diag.Equals, Value: small(p, bends), Label: "bends at once: P L³ / (48 E I), I = w t³ / 12"},
		diag.Step{Op: diag.Versus, Value: small(p, may), Label: "at most"})
}
