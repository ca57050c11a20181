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
	lipPlain = &Figure{
		Name: "mitred", Why: "up to what width a lipping is mitred at its corners without anything let in", Basis: Practice,
		Source: "3/4, about as wide as a board is thick", Dim: lang.Length, Length: wood.Inch * 3 / 4, Metric: 20 * wood.Millimetre,
	}
	lipWide = &Figure{
		Name: "wide", Why: "beyond what width a lipping moves as a frame does", Basis: Practice,
		Source: "1 1/2, twice a usual lipping", Dim: lang.Length, Length: wood.Inch * 3 / 2, Metric: 40 * wood.Millimetre,
	}
)

var lippingTooWide = &Rule{
	Name: "lipping-too-wide", Group: Movement, Severity: diag.Warning,
	Summary: "a wide lipping of solid wood moves round a core of sheet stock, which does not",
	Doc: `A lipping of 1/4 goes with its core unnoticed. A frame 3 wide round a sheet is solid wood: through the year it grows and shrinks across its
width, its mitres open, and its ends push past the next side.

Keep a lipping to 3/4, up to 1 1/2 with splines in its mitres ("splined"); make what is wider a frame with the sheet floating in a groove. Where it
is faced, lay the veneer over the core and the lipping together, or under a thin one.`,
	Sources: movementSource + `
That a band of solid wood round a core shows its own grain and movement: Architectural Woodwork Standards, 1st ed., 2009, p. 267. The widths
are common practice, no source.`,
	Sound: `A lipping of 3/4 that is mitred, one of 1 1/4 that is splined at its mitres, one of 1 1/4 on a front edge alone, and a wide edge
glued along the grain of a solid board.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
part slab { of fibre ; size 48 x 24 x 3/4 ; edging front oak 3 mitred }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
part slab { of fibre ; size 48 x 24 x 3/4 ; edging front oak 3/4 mitred }
`,
	Figures: []*Figure{lipPlain, lipWide},
	Check: func(pass *Pass) {
		for m, thing := range boardsOf(pass.Plan) {
			core := m.Of.Material.To
			if core == nil || core.Kind != plan.Sheet && !(core.Kind == plan.Layup && hasSheet(core)) {
				continue
			}
			checkLips(pass, m, plan.PathOf(thing))
		}
	},
}

// checkLips reports the widest lipping of a board that is too wide; the others are the same slip.
func checkLips(pass *Pass, m *plan.Member, subject string) {
	p := pass.Plan
	var lip *plan.Edging
	for _, e := range m.Edging {
		wide := e.Of.Thick()
		limit := pass.Length(lipWide, subject)
		if e.Mitred.On && !e.Splined.On {
			limit = pass.Length(lipPlain, subject)
		}
		if _, _, moves := p.Seasons(e.Of.Material.To); !moves || !wide.Known() || !wood.Over(wide.Length, limit) {
			continue
		}
		if lip == nil || wide.Length > lip.Of.Thick().Length {
			lip = e
		}
	}
	if lip == nil {
		return
	}
	of, wide := lip.Of.Material.To, lip.Of.Thick()
	t, change := travel(p, of, wide.Length)
	paper := p.Paper().Start(wide.Length, "width of the lipping")
	moves(paper, wide.Length, of, change)
	paper.Equals("it would be").Start(t, "it moves past its core")
	f := diag.Finding{
		Subject: subject, Span: standing(m.Span, lip.Edge.Span), Notes: fromMemory(of, change),
		Message: fmt.Sprintf("a lipping %s wide round %s moves by %s, and its core does not", p.ShowSaid(wide), titled(&m.Item), exact(p, t)),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make it no wider than %s, or a frame in whose groove the sheet floats", p.Show(pass.Length(lipPlain, subject)))}},
	}
	if lip.Mitred.On {
		paper.Start(wood.Length(float64(t)*math.Sqrt2), "its mitres open: 2 x cos 45deg x that")
		if !lip.Splined.On && !wood.Over(wide.Length, pass.Length(lipWide, subject)) {
			f.Message = fmt.Sprintf("a mitred lipping %s wide round %s moves by %s, and nothing is let into its corners", p.ShowSaid(wide), titled(&m.Item), exact(p, t))
			f.Fixes = append([]diag.Fix{{Title: "let splines into its mitres, and write `splined`"}}, f.Fixes...)
		}
	}
	f.Working = paper.Working()
	pass.Report(f)
}
