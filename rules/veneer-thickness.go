package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	veneerThinnest = &Figure{
		Name: "thinnest", Why: "the thinnest leaf that is laid as a veneer", Basis: Published,
		Source: "veneers of 1/100 to over 1/4 in: Forest Products Laboratory Report 543", Dim: lang.Length, Length: wood.Inch / 100, Metric: wood.Millimetre / 4,
	}
	veneerThickest = &Figure{
		Name: "thickest", Why: "the thickest leaf that is laid as a veneer", Basis: Practice,
		Source: "that report has them to over 1/4 in; where they end is ours", Dim: lang.Length, Length: wood.Inch / 4,
	}
	veneerUsual = &Figure{
		Name: "usual", Why: "between this and the next are the faces that are bought, sliced or peeled", Basis: Published,
		Source: "0.508 to 0.706 mm (0.020 to 0.028 in): Burnard and others, 2019, abstract", Dim: lang.Length, Length: wood.Inch / 50, Metric: wood.Millimetre / 2,
	}
	veneerUsualMost = &Figure{
		Name: "usual-most", Why: "see usual", Basis: Published,
		Source: "Burnard and others, 2019, abstract", Dim: lang.Length, Length: 28 * wood.Inch / 1000, Metric: 7 * wood.Millimetre / 10,
	}
)

var veneerThickness = &Rule{
	Name: "veneer-thickness", Group: Layups, Severity: diag.Warning,
	Summary: "a veneer is thinner or thicker than veneers are",
	Doc: `A leaf of 0.6 in is a board, and one of 0.006 in is paper: most often a point or a unit has slipped (0.6 mm was meant), and every size that
is worked out from the layup is wrong with it. A leaf that really is so thin lets the glue through and is gone at the first sanding; one that
is so thick is no veneer, and wants the room to move that a board does.

Measure the leaf and write that: faces that are bought are 0.020 to 0.028 in (0.5 to 0.7 mm), and a leaf sawn in the shop may well be 1/16.`,
	Sources: "See the figures.",
	Sound:   `Leaves of 1/42 and of 0.6 mm; a core's crossband of 1/16; a sawn leaf of 1/8; one of just 1/4.`,
	Bad: `veneer skin { species "black walnut" ; thick 0.6 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 30 ; wide 4 }
`,
	Good: `veneer skin { species "black walnut" ; thick 0.6mm }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 30 ; wide 4 }
`,
	Figures: []*Figure{veneerThinnest, veneerThickest, veneerUsual, veneerUsualMost},
	Check: func(pass *Pass) {
		for _, m := range pass.Plan.Materials {
			if m.Kind == plan.Veneer && m.Name.Text != "" && m.Thick.Known() {
				checkVeneer(pass, m)
			}
		}
	},
}

func checkVeneer(pass *Pass, m *plan.Material) {
	p, subject := pass.Plan, m.Name.Text
	thick := m.Thick.Length
	thinnest, thickest := pass.Length(veneerThinnest, subject), pass.Length(veneerThickest, subject)
	than := "over " + p.Show(thickest)
	switch {
	case wood.Under(thick, thinnest):
		than = "under " + p.Show(thinnest)
	case !wood.Over(thick, thickest):
		return
	}
	pass.Report(diag.Finding{
		Subject: subject,
		Span:    standing(m.Name.Span, m.Thick.Span),
		Message: fmt.Sprintf("veneer %s is %s thick, %s: those that are bought are %s to %s", quote(m.Name.Text), p.ShowSaid(m.Thick), than,
			p.Show(pass.Length(veneerUsual, subject)), p.Show(pass.Length(veneerUsualMost, subject))),
		Fixes: []diag.Fix{{Title: "measure the leaf, and see whether a point or a unit has slipped"}},
	})
}
