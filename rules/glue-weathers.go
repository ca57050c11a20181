package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var glueWeathers = &Rule{
	Name: "glue-weathers", Group: Layups, Severity: diag.Error,
	Summary: "a glue does not stand the damp or the weather in which the piece is used",
	Doc: `White glue softens when it is wet, and creeps under load: an outdoor bench that was glued with it falls apart in its second year, at the
joints that carry.

Out of doors take a glue of the class "exterior"; one of the class "limited" stands damp rooms and some weather, and is a warning outside. The rule looks
where the plan or an assembly says "exposure damp" or "exposure outside".`,
	Sources: `Classes of exposure: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, Table 10-2 (white and hide glue interior; cross-linked white,
epoxy and polyurethane limited exterior; resorcinol exterior). A label beats it: write "class" from it.`,
	Sound: `Resorcinol outside; epoxy in a bathroom; white glue indoors; a white glue whose label says that it is exterior; a kind whose class is not
known.`,
	Bad: `plan "Bench" { exposure outside }
glue white { kind pva }
wood oak { species "white oak" ; sawn quarter }
frame end {
  of oak ; glue white ; wide 18 ; high 24 ; thick 1
  across { stile left 2 ; space ; stile right 2 }
}
`,
	Good: `plan "Bench" { exposure outside }
glue white { kind resorcinol }
wood oak { species "white oak" ; sawn quarter }
frame end {
  of oak ; glue white ; wide 18 ; high 24 ; thick 1
  across { stile left 2 ; space ; stile right 2 }
}
`,
	Check: func(pass *Pass) {
		said := make(map[*plan.Glue]bool)
		for g := range pass.Plan.Gluings() {
			severity := weathers(g)
			if severity == 0 || said[g.Glue] {
				continue
			}
			said[g.Glue] = true
			pass.Report(diag.Finding{
				Subject:  g.Path,
				Severity: severity,
				Span:     g.Span,
				Message: fmt.Sprintf("%s is used %s, and %s is a glue for %s use%s", g.Path, map[string]string{"damp": "in the damp", "outside": "outside"}[g.Exposure],
					quote(g.Glue.Name.Text), map[string]string{"interior": "interior", "limited": "limited exterior"}[g.Glue.Stands()], classFrom(g.Glue)),
				Notes: []diag.Note{{Span: g.Glue.Name.Span, Message: "the glue stands here"}},
				Fixes: []diag.Fix{{Title: fmt.Sprintf("take a glue of the class `%s`, and write what its label says",
					map[string]string{"damp": "limited", "outside": "exterior"}[g.Exposure])}},
			})
		}
	},
}

// weathers is how bad it is that a glue is used where it is; zero where it stands it.
func weathers(g plan.Gluing) diag.Severity {
	switch stands := g.Glue.Stands(); {
	case g.Exposure != "inside" && stands == "interior":
		return diag.Error
	case g.Exposure == "outside" && stands == "limited":
		return diag.Warning
	}
	return 0
}

// classFrom says that a class is not the label's but that of its kind.
func classFrom(g *plan.Glue) string {
	if g.Class.Is == "" {
		return ", as its kind is, " + g.Kind.Is
	}
	return ""
}
