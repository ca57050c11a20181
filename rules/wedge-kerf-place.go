package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	kerfNearest = &Figure{
		Name: "nearest", Why: "how far from the edge of its tenon a wedge's saw cut is at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	kerfFarthest = &Figure{
		Name: "farthest", Why: "how far from the edge of its tenon a wedge's saw cut is at most", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, The Mortise and Tenon Joint: 3/16 in from the edge", Dim: lang.Length, Length: 3 * wood.Inch / 16, Metric: 5 * wood.Millimetre,
	}
)

var wedgeKerfPlace = &Rule{
	Name: "wedge-kerf-place", Group: Tenons, Severity: diag.Warning,
	Summary: "the saw cut for a wedge is too near to the edge of its tenon, or too far from it",
	Doc: `The wedge bends the strip of tenon between its saw cut and the edge outwards, against the flared end of the mortise. A strip
that is too thin breaks off; one that is too thick does not bend, and the tenon splits instead.

Saw 1/8 to 3/16 (3 to 5 mm) in from the edge. A single wedge stands in the middle of a narrow tenon, and bends both halves of it.`,
	Sources: `See the figures.`,
	Sound:   `Saw cuts just 1/8 and just 3/16 from the edge; a single one in the middle of its tenon.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 from-edge 1/16
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 from-edge 3/16
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{kerfNearest, kerfFarthest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			w := t.Joint.Wedged
			if w == nil || !w.FromEdge.Known() {
				continue
			}
			least, most := pass.Length(kerfNearest, t.subject), pass.Length(kerfFarthest, t.subject)
			f := diag.Finding{Subject: t.subject, Span: w.FromEdge.Span}
			switch {
			case wood.Under(w.FromEdge.Length, least):
				f.Message = fmt.Sprintf("a saw cut %s from the edge of the tenon leaves a strip that breaks off when the wedge is driven: %s is wanted",
					p.ShowSaid(w.FromEdge), p.Show(least))
			case wood.Over(w.FromEdge.Length, most) && w.Count.Or(2) > 1:
				f.Message = fmt.Sprintf("a saw cut %s from the edge of the tenon leaves a strip too stiff for its wedge to bend: %s is the most",
					p.ShowSaid(w.FromEdge), p.Show(most))
			default:
				continue
			}
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("saw between %s and %s from the edge: write `from-edge %s`", p.Show(least), p.Show(most), cutTo(p, w.FromEdge.Span, most))}}
			pass.Report(f)
		}
	},
}
