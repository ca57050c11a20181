package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var fastenerOffBoard = &Rule{
	Name: "fastener-off-board", Group: Lengths, Severity: diag.Error,
	Summary: "a fastener stands beyond the edge or the end of what it fastens",
	Doc: `A screw marked out at 40 on a board that is 20 wide has no wood to stand in: the figure is wrong, or it was counted the other way.

In a fixing "at" counts across the grain of what is fastened, from its front edge, or the left or lower one; "along" counts along its grain. Write
the figure, or the word, that is meant.`,
	Sources: `The language itself.`,
	Sound:   `Screws at the very edge of a board, screws along a runner farther than that is wide, and buttons whose places nobody says.`,
	Bad: `sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "E1" }
screw no8 { gauge 8 ; long 1 1/4 }
part side { of ply ; size 30 x 20 x 3/4 }
part cleat { of ply ; size 20 x 2 x 3/4 }
fix cleat to side { screw no8 x 2 { at 3, 17 } }
`,
	Good: `sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "E1" }
screw no8 { gauge 8 ; long 1 1/4 }
part side { of ply ; size 30 x 20 x 3/4 }
part cleat { of ply ; size 20 x 2 x 3/4 }
fix cleat to side { screw no8 x 2 { along 3, 17 } }
`,
	Check: func(pass *Pass) {
		for _, f := range pass.Plan.Fixes {
			if f.A.To == nil {
				continue
			}
			a, ok := lie(f.A.To.Is)
			if !ok || a.of == nil {
				continue
			}
			for _, w := range f.With {
				checkOnBoard(pass, f, w, a.size[a.wide], w.At, "wide", "`along`", a)
				checkOnBoard(pass, f, w, a.size[a.grain], w.Along, "long", "`at`", a)
			}
		}
	},
}

// checkOnBoard reports the first place of a fastener that lies beyond a size of what it fastens.
func checkOnBoard(pass *Pass, f *plan.Fixing, w *plan.FixingPart, size plan.Length, places []plan.Length, measure, other string, a lying) {
	p := pass.Plan
	for _, at := range places {
		if !size.Known() || !at.Known() || at.Length >= 0 && !wood.Over(at.Length, size.Length) {
			continue
		}
		pass.Report(diag.Finding{
			Subject: f.A.To.Path, Span: standing(w.Span, at.Span),
			Message: fmt.Sprintf("a %s stands at %s, but %s is %s %s", w.Word, p.ShowSaid(at), a.called, exact(p, size.Length), measure),
			Working: p.Paper().Start(size.Length, a.called).Versus(at.Length, "where it stands").Working(),
			Fixes:   []diag.Fix{{Title: "write where it stands, or " + other + " if it was counted the other way"}},
		})
		return
	}
}
