package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	slenderBends = &Figure{
		Name: "bends", Why: "how many times its width a routed mortise is deep at most", Basis: Practice,
		Source: "five times, beyond which a bit bends, chatters and burns", Dim: lang.Plain, Number: 5,
	}
	slenderBreaks = &Figure{
		Name: "breaks", Why: "beyond how many times its width a mortise is an error, whatever cuts it", Basis: Practice,
		Source: "eight times", Dim: lang.Plain, Number: 8,
	}
)

var cutterSlender = &Rule{
	Name: "cutter-slender", Group: Tenons, Severity: diag.Error,
	Summary: "a mortise is many times as deep as what cuts it is wide",
	Doc: `A long thin bit bends under its own cut: the slot comes out wider at the mouth than at the floor, or the bit snaps. A chisel goes
deeper than a bit, and has its end as well.

Make the joint thicker or shorter, or let it go through and cut it from both faces. Eight times the cutter's width is an error where the plan says
which cutters there are, or that the mortise is routed ("round-ended"); five times is a warning where it is routed. A mortise that is chopped with a
chisel is often six times as deep as it is wide, and that is sound.`,
	Sources: `See the figures.`,
	Sound: `A routed mortise just five times as deep as it is wide; one chopped 1 9/16 deep with a chisel of 1/4; a through one, cut from
both faces.`,
	Bad: `shop { cutter 1/4 reach 3 }
frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 2 3/16 mortise deep 2 1/4
  across { stile left 3 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 3 }
}
`,
	Good: `shop { cutter 1/4 reach 3 }
frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 3/16 mortise deep 1 1/4
  across { stile left 3 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 3 }
}
`,
	Figures: []*Figure{slenderBends, slenderBreaks},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			for _, s := range t.mortises() {
				routed := t.Joint.Mortise.RoundEnded.On
				cutter, known := s.wide, routed
				fit, stated := cuttersFor(p, s.wide)
				if stated {
					if len(fit) == 0 || tooShort(p, s) != nil {
						continue // that is said already
					}
					known, cutter = true, 0
					for _, c := range fit {
						cutter = max(cutter, c.Wide.Length)
					}
				}
				if !known || cutter <= 0 {
					continue
				}
				f := diag.Finding{Subject: t.subject, Span: s.at}
				deeper := func(than *Figure) bool {
					return wood.Over(s.deep, fraction(cutter, pass.Number(than, t.subject)))
				}
				switch {
				case deeper(slenderBreaks):
				case routed && deeper(slenderBends):
					f.Severity = diag.Warning
				default:
					continue
				}
				from := "deep"
				if s.both {
					from = "deep from each face"
				}
				f.Message = fmt.Sprintf("a mortise %s %s is %s times as deep as its cutter of %s is wide", p.Show(s.deep), from,
					significant(float64(s.deep)/float64(cutter), 3), p.Show(cutter))
				f.Fixes = []diag.Fix{{Title: "make the joint thicker or shorter, or cut the mortise from both faces"}}
				pass.Report(f)
			}
		}
	},
}
