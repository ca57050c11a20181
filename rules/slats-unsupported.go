package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slatReach = &Figure{
	Name: "clear", Why: "over how much a slat reaches in one span where nobody can tell how stiff it is", Basis: Practice,
	Source: "40 in (1 m): more than the slats of a single bed", Dim: lang.Length, Length: 40 * wood.Inch, Metric: wood.Metre,
}

// doubleBed is a bed for a mattress of 60 x 80: its slats, what lies under their middle, and what that stands on.
func doubleBed(supplies, slats, middle string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
` + supplies + `assembly bed {
  wide 63 ; high 14 ; deep 83
  across {
    rail left 1 { wide 6 }
    behind {
      rail head 1
      down {
        space inside 10 { holds mattress 60 x 80 }
        behind 3/4 { slat lath 3 { ` + slats + ` ; count 15 } }
        ` + middle + `
      }
      rail foot 1
    }
    rail right 1
  }
}
`
}

var slatsUnsupported = &Rule{
	Name: "slats-unsupported", Group: Structure, Severity: diag.Warning,
	Summary: "the slats under a mattress, or a rail between them, reach far with nothing under their middle",
	Doc: `Slats that reach across a wide bed in one span bow, creep and let go at their ends, and the mattress makes a trough.

Lay a rail under their middle and stand it on a leg. Or say what the slats are of, and how thick: how far they bend is then worked out
(slat-bends), and this rule leaves them alone. It looks at the widest stretch between what the slats lie on and what their ends meet. A rail under their
middle counts where something carries it between its own ends, such as a leg, or where it is stiff enough for six slats that are pressed on; so does a rail at
which two rows of slats meet.`,
	Sources: `See the figures.`,
	Sound: `Slats over just 40; over 61 with a rail in their middle that stands on a leg; a rail on a leg that is fastened to its side; arched slats, which are
sprung.`,
	Bad: doubleBed("", "thick 3/4", `across { space ; rail middle 1 { wide 3 } ; space }
        space`),
	Good:    doubleBed("", "thick 3/4", `across { space ; down 1 { rail middle 3 ; behind { space ; leg prop 2 ; space } } ; space }`),
	Figures: []*Figure{slatReach, slatLoad, slatBend, railSlats},
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range carriedSlats(pass) {
			subject := plan.PathOf(c.Member)
			most := pass.Length(slatReach, subject)
			if c.stiff || !wood.Over(c.long, most) || agree(p, c.long, most) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: subject, Span: c.Span,
				Message: fmt.Sprintf("%s reaches over %s in one span, and nothing tells how stiff it is: %s at most is wanted", titled(&c.Item), exact(p, c.long), p.Show(most)),
				Notes:   c.blame(pass),
				Fixes:   []diag.Fix{{Title: c.support()}, {Title: "say what the slats are of: how far they bend is then worked out"}},
			})
		}
		for b := range beamsBetween(pass) {
			checkBeam(pass, b)
		}
	},
}

// checkBeam holds a rail at which two rows of slats meet, and which stands on nothing, to what a rail under their middle
// may bend.
func checkBeam(pass *Pass, b *beamBetween) {
	p, subject := pass.Plan, plan.PathOf(b.Member)
	f := diag.Finding{
		Subject: subject, Span: b.Span,
		Message: titled(&b.Item) + " carries the ends of slats on both its sides, and stands on nothing between its own",
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("stand %s on a leg, under its middle", titled(&b.Item))}},
	}
	if b.bends == 0 {
		most := pass.Length(slatReach, subject)
		if !wood.Over(b.long, most) || agree(p, b.long, most) {
			return
		}
		f.Message += "; nothing tells how stiff it is"
		f.Working = p.Paper().Start(b.long, "from end to end").Versus(most, "without a leg, at most").Working()
		pass.Report(f)
		return
	}
	may := pass.Length(slatBend, subject)
	f.Message += fmt.Sprintf(": it bends %s under the load of %s slats in its middle, and may %s", small(p, b.bends), number(pass.Number(railSlats, subject)), small(p, may))
	f.Working = bendWorking(p, b.long, b.wide, b.thick, b.stiffness, b.newtons, b.bends, may)
	pass.Report(f)
}

// support is how to carry a slat better.
func (c *carriedSlat) support() string {
	if c.idle != nil {
		return fmt.Sprintf("stand %s on a leg, under its middle", titled(&c.idle.Item))
	}
	return "lay a rail under the middle of the slats, and stand it on a leg"
}

// blame points at a rail that lies under a slat and does not carry it.
func (c *carriedSlat) blame(pass *Pass) []diag.Note {
	if c.idle == nil {
		return nil
	}
	note := diag.Note{Span: c.idle.Item.Span, Message: fmt.Sprintf("%s lies under it, and stands on nothing between its ends", titled(&c.idle.Item))}
	if c.idleBends > 0 {
		note.Message += fmt.Sprintf("; it would bend %s under the load of %s slats", small(pass.Plan, c.idleBends), number(pass.Number(railSlats, plan.PathOf(c.idle))))
	}
	return []diag.Note{note}
}
