package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	eyeSees = &Figure{
		Name: "eye", Why: "one in how many of its span a shelf sags where the eye sees it", Basis: Published,
		Source: "1/32 in in a foot: Miller, 2006", Dim: lang.Plain, Number: 384,
	}
	creepWood = &Figure{
		Name: "wood", Why: "how many times its first sag a board of solid wood comes to in years of load", Basis: SecondHand,
		Source: "1.5, seasoned and kept dry: National Design Specification for Wood Construction, 3.5.2", Dim: lang.Plain, Number: 1.5,
	}
	creepDamp = &Figure{
		Name: "damp", Why: "the same in the damp or out of doors", Basis: SecondHand,
		Source: "2: the same; and that years of load about double the first sag: Wood Handbook, chapter 5", Dim: lang.Plain, Number: 2,
	}
	creepPly = &Figure{
		Name: "plywood", Why: "the same of plywood", Basis: Memory,
		Source: "1.64: k_def of 0.8, EN 1995-1-1, Table 3.2, driest class, for the 0.8 of stored goods that stays, EN 1990; the National Design Specification takes 2",
		Dim:    lang.Plain, Number: 1.64,
	}
	creepStrands = &Figure{
		Name: "osb", Why: "the same of osb", Basis: Memory,
		Source: "2.2: k_def of 1.5, likewise", Dim: lang.Plain, Number: 2.2,
	}
	creepBoard = &Figure{
		Name: "board", Why: "the same of mdf, particleboard and hardboard", Basis: Memory,
		Source: "2.8: k_def of 2.25, likewise", Dim: lang.Plain, Number: 2.8,
	}
)

var shelfCreeps = &Rule{
	Name: "shelf-creeps", Group: Structure, Severity: diag.Warning,
	Summary: "a shelf that is straight enough when it is loaded sags in years until the eye sees it",
	Doc: `Wood and its boards go on bending under a load that stays: solid wood and plywood half as far again as on the first day, mdf and
particleboard to nearly three times as far. A shelf of mdf full of books is straight on Sunday, and a hammock when the children have grown up.

The rule takes the first sag, as shelf-sags works it out, times what the stuff comes to, and holds it against 1/32 in a foot (1 in 384),
which the eye sees. It asks that of fine work alone: of what holds books, or says "sag fine". The limits of casework and of kitchens are set for the
day of loading, and there it is silent; so it is where shelf-sags speaks. Of a layup each ply counts by how much of the stiffness it is. Where books are
taken to weigh 50 psf since the plan does not say, this is a word of advice: say what they weigh, "load 20lb/ft sag fine", and it is judged by that.

Make it thicker or of stiffer stuff, let a divider carry it, or glue a rail of solid wood on edge under its front.`,
	Sources: `As the figures say. What really comes spreads from nothing to twice the first sag, and half of it stays when the load is gone: commentary to the
National Design Specification, second-hand. That the added sag is half of the first or more: Miller, 2006.`,
	Sound: `A shelf of oak that is within the limit of fine work; one of mdf that is short; one of mdf for which casework is asked.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case rack {
  of fibre
  wide 19 1/2 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { holds books } ; open lower ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case rack {
  of fibre
  wide 17 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { holds books } ; open lower ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{eyeSees, creepWood, creepDamp, creepPly, creepStrands, creepBoard},
	Check: func(pass *Pass) {
		for b, l := range loaded(pass.Plan) {
			s := sagOf(pass, b, l)
			later, sees := wood.Length(float64(s.sags)*s.creeps.times), wood.Length(float64(s.span.long)/eyeSees.Number)
			if l.sag == "fine" && !s.over() && later > sees && small(s.plan, later) != small(s.plan, sees) {
				reportCreep(pass, s, later, sees)
			}
		}
	},
}

func reportCreep(pass *Pass, s *sagging, later, sees wood.Length) {
	p := pass.Plan
	var severity diag.Severity
	if s.taken {
		severity = diag.Advice
	}
	s.report(pass, diag.Finding{
		Severity: severity,
		Message: fmt.Sprintf("%s sags %s when it is loaded, and about %s in years: over %s the eye sees %s", titled(&s.Item), small(p, s.sags), small(p, later),
			exact(p, s.span.long), small(p, sees)),
		Working: append(s.working(),
			diag.Step{Op: diag.Equals, Value: small(p, s.sags), Label: sagSum},
			diag.Step{Op: diag.Times, Value: number(s.creeps.times), Label: "in years of load: " + s.creeps.says},
			diag.Step{Op: diag.Equals, Value: small(p, later), Label: "about"},
			diag.Step{Op: diag.Versus, Value: small(p, sees), Label: "1 in 384 of the span, which the eye sees"}),
	})
}

// creep is how many times its first sag a beam comes to in years.
type creep struct {
	times float64
	says  string
}

// creepOf is that of a beam. Of a layup, each ply counts by its part of the stiffness.
func creepOf(pass *Pass, b *beam) creep {
	subject := plan.PathOf(b.Member)
	damp := pass.Plan.Exposure.Or("inside")
	if b.In != nil {
		damp = b.In.Exposure.Or(damp)
	}
	of := func(m *plan.Material) creep {
		c := creep{pass.Number(creepWood, subject), "solid wood, kept dry"}
		switch {
		case m.Grainless():
			return creep{pass.Number(creepBoard, subject), stuffNamed(m) + ", from memory, check it"}
		case m.SheetKind.Is == "osb":
			c = creep{pass.Number(creepStrands, subject), stuffNamed(m) + ", from memory, check it"}
		case m.Kind == plan.Sheet:
			c = creep{pass.Number(creepPly, subject), stuffNamed(m) + ", from memory, check it"}
		}
		if wet := pass.Number(creepDamp, subject); damp != "inside" && c.times < wet {
			c = creep{wet, "in the damp"}
		}
		return c
	}
	if b.of.Kind != plan.Layup {
		return of(b.of)
	}
	layup, _ := pass.Plan.Pressed(b.of)
	var stiff, after float64
	from := -b.thick.Metres() / 2 // the middle of the board is nought
	for i, ply := range layup {
		moduli, _ := wood.Layup{ply}.Moduli()
		e := moduli.BendAlong
		if !b.along {
			e = moduli.BendAcross
		}
		to := from + ply.Thick.Metres()
		part := e * (math.Pow(to, 3) - math.Pow(from, 3))
		stiff += part
		after += part / of(b.of.Plies[i].Of.To).times
		from = to
	}
	return creep{stiff / after, "its plies, each by its part of the stiffness"}
}
