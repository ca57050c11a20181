package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	lapThin = &Figure{
		Name: "thin", Why: "how thick the lap of a half-blind dovetail is at least", Basis: Practice,
		Source: "an eighth (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	lapBreaks = &Figure{
		Name: "breaks", Why: "below which thickness such a lap is an error", Basis: Practice,
		Source: "3/32 (2.4 mm), the thinnest that is cut", Dim: lang.Length, Length: 3 * wood.Inch / 32, Metric: 2400 * wood.Micrometre,
	}
	lapUsual = &Figure{
		Name: "usual", Why: "the lap that is proposed", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, Lap-dovetailing: a quarter inch", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
)

var thinLap = &Rule{
	Name: "thin-lap", Group: Joints, Severity: diag.Error,
	Summary: "too little of the front is left before half-blind dovetails",
	Doc: `The chisel that clears the sockets goes through a thin lap, or the tails show through it as soon as the front is planed and
moves with the seasons. A lap as thick as the front leaves no tails at all.

Leave about a quarter inch (6 mm), and 1/8 at least: the tails are as long as the front is thick, less the lap. Below 3/32 it is an error.`,
	Sources: `A lap of 1/4: W. Fairham, Woodwork Joints, Lap-dovetailing. The least ones are common practice, no source.`,
	Sound:   `A lap of 3/16 on a front of 3/4, one of just 1/8, and through dovetails, which have none.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 10 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20
      corner front dovetail slope 1:7 lap 1/16 ; corner back dado deep 1/4
    }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 10 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20
      corner front dovetail slope 1:7 lap 3/16 ; corner back dado deep 1/4
    }
    side right
  }
}
`,
	Figures: []*Figure{lapThin, lapBreaks, lapUsual},
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range corners(p, plan.Dovetail) {
			if c.Lap.How != plan.Written || c.Lap.Length <= 0 || !c.mate.Known() {
				continue
			}
			thin := pass.Length(lapThin, c.subject)
			tails := c.mate.Length - c.Lap.Length
			f := diag.Finding{Subject: c.subject, Span: c.Lap.Span}
			switch {
			case !wood.Over(tails, 0):
				f.Message = fmt.Sprintf("a lap of %s leaves no tails in a board %s thick", p.ShowSaid(c.Lap), p.Show(c.mate.Length))
			case wood.Under(c.Lap.Length, pass.Length(lapBreaks, c.subject)):
				f.Message = fmt.Sprintf("a lap of %s breaks, or the tails show through it: leave %s at least", p.ShowSaid(c.Lap), p.Show(thin))
			case wood.Under(c.Lap.Length, thin):
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("a lap of %s is thin: leave %s at least", p.ShowSaid(c.Lap), p.Show(thin))
			default:
				continue
			}
			f.Working = p.Paper().Start(c.mate.Length, "thickness of the "+c.called).Minus(c.Lap.Length, "lap").Equals("tails").Working()
			if usual := pass.Length(lapUsual, c.subject); wood.Under(2*usual, c.mate.Length) {
				f.Fixes = []diag.Fix{{Title: "write `lap " + cutTo(p, c.Lap.Span, usual) + "`"}}
			}
			pass.Report(f)
		}
	},
}
