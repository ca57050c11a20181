package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var ringsFrom = &Figure{
	Name: "wide", Why: "from what width on the direction of the rings is worth saying", Basis: Practice,
	Source: "3, below which both directions move about alike", Dim: lang.Length, Length: 3 * wood.Inch, Metric: 75 * wood.Millimetre,
}

var ringsUnsaid = &Rule{
	Name: "rings-unsaid", Group: Movement, Severity: diag.Advice,
	Summary: "wide boards of a wood move as flat-sawn ones, since the plan does not say how they are sawn",
	Doc: `A board sawn flat, its rings along the width, moves about twice as much across its grain as one sawn quarter. Where a plan does not say
which, plancheck takes the greater: every gap comes out on the wide side, and some findings would not stand for quartered boards.

Look at the ends of the boards, and say "sawn flat", "sawn quarter" or "sawn rift" once for the wood. This is said once for each wood of which
something wider than 3 must move freely, a panel, an inset door or front, a top or a board that is fastened, with the figures of the widest.`,
	Sources: movementSource + `
From what width on it is worth saying is common practice, no source.`,
	Sound: `A wood that says how it is sawn, one of which only sticks are made, and a wide board that nothing holds.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" }
frame leaf {
  of oak
  wide 16 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 16 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{ringsFrom},
	Check: func(pass *Pass) {
		p := pass.Plan
		widest := widestMoving(p)
		for _, m := range p.Materials {
			wide, subject := widest[m], plan.PathOf(m)
			if m.Kind != plan.Solid || m.Sawn.Is != "" || m.Species == nil || !wide.Known() || !wood.Over(wide.Length, pass.Length(ringsFrom, subject)) {
				continue
			}
			flat, change := travel(p, m, wide.Length)
			quarter, ok := m.Species.Moves(wood.Quarter, change.From, change.To)
			if !ok || quarter.Worse || quarter.Change(wide.Length).Abs() >= flat {
				continue
			}
			less := quarter.Change(wide.Length)
			over := fmt.Sprintf("from %s to %s", wood.Percent(change.From), wood.Percent(change.To))
			pass.Report(diag.Finding{
				Subject: subject, Span: m.Name.Span, Notes: fromMemory(m, change),
				Message: fmt.Sprintf("wood %s does not say how it is sawn: its widest board moves %s if flat, as is taken, and %s if quarter",
					quote(m.Name.Text), exact(p, flat), exact(p, less.Abs())),
				Working: p.Paper().Start(wide.Length, "the widest thing of "+quote(m.Name.Text)).
					Start(flat, fmt.Sprintf("sawn flat, %s: %.3g for each 1%%", over, change.Rate)).
					Start(less.Abs(), fmt.Sprintf("sawn quarter: %.3g for each 1%%", quarter.Rate)).Working(),
				Fixes: []diag.Fix{{Title: "look at the ends of the boards, and write `sawn flat`, `sawn quarter` or `sawn rift`"}},
			})
		}
	},
}

// widestMoving is the widest thing of each wood whose movement is worked out: panels, what closes an
// opening, and boards that are fastened.
func widestMoving(p *plan.Plan) map[*plan.Material]plan.Length {
	widest := make(map[*plan.Material]plan.Length)
	add := func(of *plan.Material, wide plan.Length) {
		if of != nil && wide.Known() && wide.Length > widest[of].Length {
			widest[of] = wide
		}
	}
	for w := range p.Workpieces() {
		switch thing := w.Thing.(type) {
		case *plan.Panel:
			add(w.Of, w.Size.Wide)
		case *plan.Door:
			if thing.Fit.Kind.Is == "inset" {
				add(w.Of, w.Size.Wide)
			}
		case *plan.BoxPart:
			if thing == thing.Drawer.Front && thing.Drawer.Fit.Kind.Is == "inset" {
				add(w.Of, w.Size.Wide)
			}
		}
	}
	for m := range boardsOf(p) {
		if m.Breadboard != nil {
			add(m.Of.Material.To, m.Size.Wide)
		}
	}
	for _, f := range p.Fixes {
		for _, s := range seamsOf(f) {
			add(s.moves.of, s.moves.size[s.axis])
		}
	}
	return widest
}
