package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var tenonTooWide = &Rule{
	Name: "tenon-too-wide", Group: Tenons, Severity: diag.Error,
	Summary: "a tenon is wider than its mortise takes, or is square where the mortise has round ends",
	Doc: `A router leaves a mortise with round ends, as round as the bit. A square tenon as wide as the slot is long stops with its corners on
the rounds, and hammered in it splits the stile.

Round the edges of the tenon and say so ("rounded"); or square the ends of the mortise with a chisel and leave "round-ended" out; or make the
tenon narrower by the width of the slot, so that it goes between the rounds. How long the slot is stands behind the mortise,
"mortise round-ended wide 1 1/2"; unsaid, it is as long as the tenon is wide.`,
	Sources: `Geometry.`,
	Sound: `A rounded tenon as wide as its round-ended slot is long; a square one 1 1/8 wide in a slot 1 1/2 long of a cutter of 3/8; a square
one in a mortise that is chopped.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 3/8 wide 1 1/2 long 1 1/4 mortise round-ended wide 1 1/2
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 3/8 wide 1 1/8 long 1 1/4 mortise round-ended wide 1 1/2
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			m, wide, across := t.Joint.Mortise, t.wide(p.Cuts()), t.slotWide()
			if m == nil || !wide.Known() {
				continue
			}
			long := m.Wide
			if long.How == plan.Unknown {
				long = wide
			}
			square := m.RoundEnded.On && !t.Joint.Rounded.On
			if !long.Known() || square && !across.Known() {
				continue
			}
			paper := p.Paper().Start(long.Length, "length of the slot")
			f := diag.Finding{
				Subject: t.subject,
				Span:    t.at(m.Wide),
				Message: fmt.Sprintf("a %s %s wide does not go into a mortise that is %s there", t.called(), p.Show(wide.Length), p.Show(long.Length)),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("make the mortise as long as the tenon is wide, or the tenon %s at most", p.Show(long.Length))}},
			}
			if square {
				f.Span = m.RoundEnded.Span
				paper.Minus(across.Length, "its round ends").Equals("between the rounds")
				f.Message = fmt.Sprintf("a square %s %s wide does not go into a slot with round ends, %s long: %s is the most", t.called(),
					p.Show(wide.Length), p.Show(long.Length), p.Show(max(paper.Result(), 0)))
				f.Fixes = []diag.Fix{{Title: "round the tenon's edges, `rounded`, or square the ends of the slot and leave `round-ended` out"}}
			}
			if !wood.Over(wide.Length, paper.Result()) {
				continue
			}
			f.Working = paper.Versus(wide.Length, "the tenon").Working()
			pass.Report(f)
		}
	},
}
