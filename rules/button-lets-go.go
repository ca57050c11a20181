package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	buttonHold = &Figure{
		Name: "hold", Why: "how far a button's tongue still reaches into its groove", Basis: Practice,
		Source: "1/8", Dim: lang.Length, Length: wood.Inch / 8,
	}
	buttonSpare = &Figure{
		Name: "spare", Why: "how much deeper than it must a button's groove is", Basis: Practice,
		Source: "1/32", Dim: lang.Length, Length: wood.Inch / 32,
	}
)

var buttonLetsGo = &Rule{
	Name: "button-lets-go", Group: Movement, Severity: diag.Error,
	Summary: "a button's tongue comes out of its groove through the year, or reaches the bottom of it",
	Doc: `A button is screwed to the top, and its tongue travels with the top in a groove of the apron. Where the tongue is short it comes
out of the groove in one season, and the top is loose; where the groove is shallow the tongue meets its bottom in another, and
pushes the apron out.

How far it travels is counted from the line where the top is held: as the fixing says ("fixed centre"), else the middle. Buttons stand "at"
places across the top, from its front or left edge; where nothing is said, at the edges of what the top lies on.

Give the tongue what it travels and 1/8 to hold by, and the groove the tongue, what it travels, and 1/32.`,
	Sources: movementSource + `
That buttons hold a top best: W. Noyes, Handwork in Wood, 1910, fig. 297. The hold and the room are common practice, no source.`,
	Sound: `Tongues of 3/8 in grooves of 9/16, which travel 0.134; short tongues near the line where the top is held.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
button oak-button { drop 1/16 }
assembly base { wide 60 ; high 28 ; deep 36 }
top slab { of cherry ; thick 1 ; boards 6 ; over base ends 2 front 2 back 2 }
fix slab to base { button oak-button x 8 { tongue 1/4 ; groove 9/16 } }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
button oak-button { drop 1/16 }
assembly base { wide 60 ; high 28 ; deep 36 }
top slab { of cherry ; thick 1 ; boards 6 ; over base ends 2 front 2 back 2 }
fix slab to base { button oak-button x 8 { tongue 3/8 ; groove 9/16 } }
`,
	Figures: []*Figure{buttonHold, buttonSpare},
	Check: func(pass *Pass) {
		p := pass.Plan
		for b, fixing := range fastened(p) {
			for _, w := range fixing.With {
				at := b.places(w)
				if len(at) == 0 {
					at = b.edges()
				}
				d, ok := b.farthest(at)
				if w.Word != "button" || !ok || !w.Tongue.Known() {
					continue
				}
				t, m := travel(p, b.of, d)
				hold, spare := pass.Length(buttonHold, b.subject), pass.Length(buttonSpare, b.subject)
				f := diag.Finding{Subject: b.subject, Span: standing(w.Span, w.Tongue.Span), Notes: fromMemory(b.of, m)}
				paper := travels(p, b.of, d, m)
				switch {
				case wood.Under(w.Tongue.Length-t, hold):
					f.Message = fmt.Sprintf("a button's tongue of %s, %s, travels %s: it holds by %s at the worst, and wants %s",
						p.ShowSaid(w.Tongue), b.distant(p, d), exact(p, t), exact(p, max(w.Tongue.Length-t, 0)), p.Show(hold))
					paper.Plus(hold, "to hold by").Equals("tongue")
					long := upTo(p, paper.Result())
					f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `tongue %s`, and make the groove %s deep", p.Show(long), p.Show(upTo(p, long+t+spare)))}}
					f.Working = paper.Versus(w.Tongue.Length, "stated").Working()
				case w.Groove.Known() && wood.Under(w.Groove.Length, w.Tongue.Length+t+spare):
					f.Span = standing(w.Span, w.Groove.Span)
					f.Message = fmt.Sprintf("a button's tongue of %s, %s, travels %s: a groove of %s is too shallow for it",
						p.ShowSaid(w.Tongue), b.distant(p, d), exact(p, t), p.ShowSaid(w.Groove))
					paper.Plus(w.Tongue.Length, "tongue").Plus(spare, "to spare").Equals("groove")
					f.Fixes = []diag.Fix{{Title: "write `groove " + p.Show(upTo(p, paper.Result())) + "`"}}
					f.Working = paper.Versus(w.Groove.Length, "stated").Working()
				default:
					continue
				}
				pass.Report(f)
			}
		}
	},
}
