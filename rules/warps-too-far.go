package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var warpsTooFar = &Rule{
	Name: "warps-too-far", Group: Layups, Severity: diag.Warning,
	Summary: "what is pressed of plies that are nearly alike warps more than its use allows",
	Doc: `Plies that mirror within a little are good enough for a thick board, and not for a thin one, nor for a large one: a leaf of three thin plies
whose back was pressed two points moister than its face stands open at the latch side a season later. The rule works out how far each thing that is
made of a layup would stand out of flat, over its own size, at both ends of the year, and holds that against what the thing is for: a door and a lid must
close, a drawer's front must line up with its neighbours, a shelf that lies on pins must not rock. What its neighbours hold flat, such as a panel in grooves, a
top, or a shelf in its housings, may warp more by itself.

Make the ply that is to blame like its mirror, as the finding says, or press a thicker core. The warp is an upper guide: the theory is linear
and has no creep in it, and it knows nothing of finishes. Where the layup has been flat for years, allow it, or set what its use allows.

Plies that do not mirror at all are found by unbalanced-layup, and grain that crosses wrongly by plies-not-crossed; both show the same sum.`,
	Sources: `Classical lamination theory (A. K. Kaw, Mechanics of Composite Materials, 2nd ed., 2006, chapters 2 and 4, from memory, held to its
printed examples) with the shelf's stiffness and movement; the rise over a panel's size is the geometry of a small bend. That stress and warp grow as
the moisture leaves that at which the glue set: F. L. Brouse, Forest Products Laboratory Report 1252, 1940, second-hand. See the figures.`,
	Sound: `A door of thick fibreboard with faces of cherry and walnut, or with a back two points moister; a thin leaf whose plies mirror;
a thin panel in its grooves whose faces are nearly alike; a part of which the plan does not say what it is for.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
veneer leaf { species "sugar maple" ; sawn rotary ; thick 1/16 }
layup thin { ply leaf along ; ply leaf across ; ply leaf along at 9.5% }
case box {
  wide 19 1/2 ; high 25 1/2 ; deep 8
  of ash 3/4
  joint butt
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 } ; bottom floor } ; side right }
}
wood ash { species "white ash" ; sawn quarter }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
veneer leaf { species "sugar maple" ; sawn rotary ; thick 1/16 }
layup thin { ply leaf along ; ply leaf across ; ply leaf along }
case box {
  wide 19 1/2 ; high 25 1/2 ; deep 8
  of ash 3/4
  joint butt
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 } ; bottom floor } ; side right }
}
wood ash { species "white ash" ; sawn quarter }
`,
	Figures: []*Figure{warpFree, warpHeld, warpLeast},
	Check: func(pass *Pass) {
		p := pass.Plan
		for m := range layups(p) {
			layup, ok := p.Pressed(m)
			if !ok || unlikeAtAll(pass, m) {
				continue
			}
			strains, ok := bends(p, layup)
			if !ok {
				continue
			}
			var over []bent
			for _, b := range bentOf(pass, m, strains) {
				if worst, _ := b.worst(); b.use != "" && wood.Over(worst, b.allowed) {
					over = append(over, b)
				}
			}
			if len(over) > 0 {
				reportWarp(pass, m, layup, over)
			}
		}
	},
}

// unlikeAtAll reports whether another rule finds that the plies of a layup do not mirror, or do not cross.
func unlikeAtAll(pass *Pass, m *plan.Material) bool {
	_, bare := bareSide(m)
	return bare || len(unlikePairs(pass.Plan, m, mirrorBands(pass, m))) > 0 || slantedPly(m, crossedTurned.Number) > 0
}

// reportWarp reports a layup by what is made of it and warps most for its use.
func reportWarp(pass *Pass, m *plan.Material, layup wood.Layup, over []bent) {
	p := pass.Plan
	most, _ := mostBent(over)
	off, season := most.worst()
	seasons := seasonMoisture(p)
	balance, ok := layup.Balance(wood.Panel{Length: most.long(), Width: most.wide(), Allowed: most.allowed, Moistures: seasons[:]})
	if !ok {
		return
	}
	_, how := most.warp[season].InWords()
	f := diag.Finding{
		Subject: plan.PathOf(m),
		Span:    m.Name.Span,
		Message: fmt.Sprintf("layup %s warps: %s, would stand %s out of flat %s, %s, and may %s at the most: %s", quote(m.Name.Text), most.sized(p),
			p.Tape.Nearest(off), seasonNames[season], how, most.may(p), most.use),
		Working: most.working(p, layup),
		Notes:   []diag.Note{{Span: pieceAt(most.Workpiece), Message: "what is made of it stands here"}},
	}
	if len(over) > 1 {
		f.Notes[0].Message += fmt.Sprintf("; it is the worst of %d things that warp too far", len(over))
	}
	if balance.Worst >= 0 {
		f.Span = m.Plies[balance.Worst].Of.Span
		f.Message += fmt.Sprintf("; %s is to blame", plyNamed(m, balance.Worst))
	}
	for _, step := range balance.Steps {
		f.Fixes = append(f.Fixes, diag.Fix{Title: step.InWords()})
	}
	f.Working = append(f.Working, diag.Step{Op: diag.Equals, Value: p.Tape.About(balance.Left.Worst()), Label: "left once that is mended"})
	pass.Report(f)
}
