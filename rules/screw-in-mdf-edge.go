package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var screwInMdfEdge = &Rule{
	Name: "screw-in-mdf-edge", Group: Layups, Severity: diag.Warning,
	Summary: "screws hold in the raw edge of fibreboard",
	Doc: `Fibreboard is dense at its faces and loose in the middle. A screw in its edge splits the board or turns the middle to dust, and what
hangs on it works loose: the first to go is the upper hinge of a door.

Lip the edge with solid wood and screw into that; hang the door on cup hinges, which hold in the face; join ends by dowels, housings or
barrel-nut bolts instead. The rule looks at ends of fibreboard, or of a layup with a core of it, that are held by screws, and at butt hinges let into such a
leaf with no lipping.`,
	Sources: `From memory, unverified.`,
	Sound: `Screws through fibreboard into solid wood; a leaf of fibreboard on cup hinges; a leaf lipped in ash on butt hinges; ends of plywood that are
screwed; a shelf of fibreboard in a housing.`,
	Bad: `screw no8 { gauge 8 ; long 2 }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet birch { kind plywood ; thick 3/4 ; actual 23/32 ; emission "TSCA Title VI" }
case box {
  of birch
  wide 20 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { of fibre ; joint screw no8 count 3 } ; open lower ; bottom floor } ; side right }
}
`,
	Good: `sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet birch { kind plywood ; thick 3/4 ; actual 23/32 ; emission "TSCA Title VI" }
case box {
  of birch
  wide 20 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { of fibre } ; open lower ; bottom floor } ; side right }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for m := range p.Members() {
			for _, e := range m.Ends {
				if e == nil || e.Free || e.Joint == nil || e.Joint.Kind.Is != plan.ScrewJoint || !fibreEdge(m.Of.Material.To) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(m),
					Span:    standing(m.Name.Span, e.Joint.Span),
					Message: fmt.Sprintf("the screws of %s go into its raw edge, which is fibreboard: from memory, they do not hold there", titled(&m.Item)),
					Fixes:   []diag.Fix{{Title: "house it, or join it with dowels"}},
				})
				break
			}
		}
		for d := range plan.AllOf[*plan.Door](p) {
			checkHungEdge(pass, d)
		}
	},
}

// checkHungEdge reports a leaf whose butt hinges go into fibreboard.
func checkHungEdge(pass *Pass, d *plan.Door) {
	of := d.Leaf.Material
	if part := d.Leaf.Part; part != nil {
		of = part.Of.Material.To
		for _, e := range part.Edging {
			if e.Edge.Is == d.Hang.Is || e.Edge.Is == "ends" {
				return
			}
		}
	}
	if !fibreEdge(of) {
		return
	}
	for _, use := range d.Hinges {
		if use.Hinge == nil || use.Hinge.Kind.Is != "butt" {
			continue
		}
		pass.Report(diag.Finding{
			Subject: plan.PathOf(d),
			Span:    use.Span,
			Message: fmt.Sprintf("the screws of hinge %s go into the raw edge of %s's leaf, which is fibreboard: from memory, they do not hold there", quote(use.Name), plan.PathOf(d)),
			Notes:   []diag.Note{{Span: of.Name.Span, Message: "what the leaf is of stands here"}},
			Fixes:   []diag.Fix{{Title: "lip the leaf on its hinge side with solid wood, or hang it on cup hinges"}},
		})
		return
	}
}

// fibreEdge reports whether the edge of a material is fibreboard: a sheet of it, or a layup
// whose thickest ply is.
func fibreEdge(m *plan.Material) bool {
	if m == nil {
		return false
	}
	var thickest *plan.Ply
	for _, ply := range m.Plies {
		if thickest == nil || ply.Thickness().Length > thickest.Thickness().Length {
			thickest = ply
		}
	}
	if thickest != nil {
		return thickest.Of.To != nil && thickest.Of.To.SheetKind.Is == "mdf"
	}
	return m.SheetKind.Is == "mdf"
}
