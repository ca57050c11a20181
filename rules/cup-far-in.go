package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var cupFarIn = &Rule{
	Name: "cup-far-in", Group: Doors, Severity: diag.Warning,
	Summary: "a cup hinge is bored farther from the edge of its door than such hinges reach",
	Doc: `The arm of a cup hinge swings the edge of the door out and round the side. Its makers let the bore begin 3 to 8 mm from the edge; farther in, the
edge reaches farther back as it swings, and may run into the side before the door is open.

Bore it between 3 and 8 mm from the edge, and choose the mounting plate by what the door is to cover. A bore that is nearer than 3 mm
is another finding (thin-wall). Where the sheet of the hinge gives another distance, say so: "covers 17mm at rim 9mm plate 0".`,
	Sources: `Makers' sheets of cup hinges of 35 mm: the middle of the bore 20.5 to 25.5 mm from the edge.`,
	Sound:   `A bore 8 mm from the edge; one farther in, as the hinge's own sheet gives it; a cup of another size.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 10mm ; plate 3mm }
case cupboard {
  wide 18 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit overlay 20mm ; hang left ; hinge cup at 4, 26 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 7mm ; plate 0 }
case cupboard {
  wide 18 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit overlay 20mm ; hang left ; hinge cup at 4, 26 } ; side right }
}
`,
	Figures: []*Figure{cupRimMost},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			for _, use := range d.Hinges {
				h := use.Hinge
				if h == nil || h.Kind.Is != "cup" || !usualCup(h) {
					continue
				}
				rim, most := known(use.Rim, h.Rim), pass.Length(cupRimMost, plan.PathOf(d))
				if c := h.Covers; c != nil && c.Rim.Known() {
					most = max(most, c.Rim.Length)
				}
				if !rim.Known() || !wood.Over(rim.Length, most) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("hinge %s is bored %s from the edge of %s, and such hinges reach %s", quote(use.Name), bored(rim.Length),
						called(&d.Item), bored(most)),
					Working: p.Paper().Start(rim.Length, "from the edge to the bore").Versus(most, "at most").Working(),
					Fixes:   []diag.Fix{{Title: fmt.Sprintf("bore it %s from the edge or less, and choose the mounting plate by what the door covers", bored(most))}},
				})
				break
			}
		}
	},
}

// usualCup reports whether the sheets of the usual cup hinges are about a hinge: its bore is 35 mm, as it
// is where nothing else is said.
func usualCup(h *plan.Hinge) bool {
	return !h.Bore.Known() || !wood.Over((h.Bore.Length-35*wood.Millimetre).Abs(), wood.Millimetre/2)
}
