package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// coldSlack is by how many degrees Celsius a shop may be under a glue's coldest: the tables are
// rounded, 70 F to 21 C.
const coldSlack = 0.5

var glueTooCold = &Rule{
	Name: "glue-too-cold", Group: Layups, Severity: diag.Error,
	Summary: "a glue is used in air that is colder than it cures in",
	Doc: `Glue that sets too cold turns to chalk: it looks dry, holds until it is loaded, and parts with white powder on both faces. The wood
and the clamps must be warm too, not only the air.

Warm the shop and the wood, press in a warm room, or take a glue that cures in the cold. The rule looks at what a step says ("glue leaf with
resin at 55F"), else at the shop's air in "climate".`,
	Sources: `The coldest for each kind: a woodworking article of 2009 (white 60 F, yellow 55 F, urea, epoxy and contact 70 F, polyurethane 50 F). A label
beats it: write "coldest" from it.`,
	Sound: `Urea at 70 F, and at 55 F where its label says that it cures there; a cold shop whose step is warm; a shop of which only the moisture is
known; a kind of which no figure is known.`,
	Bad: `climate { shop 55F 50% ; dry 68F 25% ; humid 77F 62% }
glue resin { kind urea }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 6 }
steps { glue slab with resin }
`,
	Good: `climate { shop 70F 50% ; dry 68F 25% ; humid 77F 62% }
glue resin { kind urea }
wood ash { species "white ash" ; sawn flat }
part slab { of ash ; size 48 x 30 x 7/8 ; boards 6 }
steps { glue slab with resin }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		warmed := warmed(p)
		cold := make(map[*plan.Glue]bool) // in the shop's air, which is said once
		for g := range p.Gluings() {
			air := p.Climate.Shop.Temperature
			ofStep := g.Step != nil && g.Step.At.Known()
			switch {
			case ofStep:
				air = g.Step.At
			case cold[g.Glue] || warmed[g.Path]:
				continue
			}
			if coldest, ok := g.Glue.ColdestIn(); ok && air.Known() && air.Value < coldest-coldSlack {
				cold[g.Glue] = cold[g.Glue] || !ofStep
				reportCold(pass, g, air, coldest)
			}
		}
	},
}

// warmed are the paths of what is glued or pressed in a step that says how warm it is, and of
// what that is made of.
func warmed(p *plan.Plan) map[string]bool {
	said := make(map[string]bool)
	for g := range p.Gluings() {
		if g.Step == nil || !g.Step.At.Known() {
			continue
		}
		for _, on := range g.Step.On {
			if on.To == nil {
				continue
			}
			said[on.To.Path] = true
			if m := plan.MaterialOf(on.To.Is); m != nil {
				said[m.Name.Text] = true
			}
			if a := plan.AssemblyOf(on.To.Is); a != nil {
				said[plan.PathOf(a)] = true
			}
		}
	}
	return said
}

func reportCold(pass *Pass, g plan.Gluing, air plan.Figure, coldest float64) {
	p, glue := pass.Plan, g.Glue
	f := diag.Finding{
		Subject: g.Path,
		Span:    g.Span,
		Message: fmt.Sprintf("%s is glued at %s, and %s does not cure below %s%s", g.Path, warmth(p, air.Value), quote(glue.Name.Text), warmth(p, coldest), usualFor(glue, glue.Coldest)),
		Notes:   []diag.Note{{Span: glue.Name.Span, Message: "the glue stands here"}},
		Fixes:   []diag.Fix{{Title: "warm the shop and the wood, or take a glue that cures in the cold: write the `coldest` of its label"}},
	}
	if g.Step == nil || !g.Step.At.Known() {
		f.Notes = append(f.Notes, diag.Note{Span: p.Climate.Shop.Span, Message: "the air of the shop stands here"})
	}
	pass.Report(f)
}
