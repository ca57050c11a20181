package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var lidBackCatches = &Rule{
	Name: "lid-back-catches", Group: Doors, Severity: diag.Error,
	Summary: "a lid that stands out behind its hinges meets the back of its chest before it is open",
	Doc: `What of a lid stands out behind the pins of its hinges goes down as the lid goes up, and lies against the back of the chest a little past
upright. That is an old way to stop a lid; but a lid that is to open farther tears its hinges out there, and one whose pins stand in front of
the back does not open at all: it turns into the top of the back.

Let it open less, let it stand out less behind ("over back 1/4"), or take hinges whose pins stand farther behind the chest and say how far
they are beyond the edge of the lid ("out 1/4"). The pin is taken to stand half the knuckle behind the back of the chest, level with the
underside of the lid, where the plan says nothing else. Lids of which nothing says how far they open are left alone.`,
	Sources: `How far it turns is geometry.`,
	Sound: `A lid that stands out as far as its pins do; one that is to open only as far as its back lets it; one that ends at the back of its
chest.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  down { lid flap { over back 1/2 ; hang back ; opens 120deg ; hinge brass ends 3 } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  down { lid flap { over back 1/2 ; hang back ; opens 105deg ; hinge brass ends 3 } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range p.Leaves() {
			opens := d.OpensTo()
			if d.Board == nil || d.Hang.Is != "back" || d.Board.Over == nil || !opens.Known() || plan.Neighbour(d, plan.Upper) != nil {
				continue
			}
			for _, use := range d.Hinges {
				pin, known := pinOf(d, use)
				if !known || pin.Out >= 0 || !d.Thick().Known() || !agree(p, pin.Proud, -d.Thick().Length) {
					continue
				}
				behind := d.Board.Over.Back.Length + pin.Out // the pin, behind the chest
				stops := backStops(-pin.Out, behind)
				if opens.Value <= stops+0.5 {
					continue
				}
				f := diag.Finding{
					Subject: plan.PathOf(d), Span: d.Span,
					Message: fmt.Sprintf("%s stands out %s behind the pins of its hinges, and meets the back of its chest at %s: it is to open by %s", titled(&d.Item),
						exact(p, -pin.Out), degrees(math.Floor(stops)), degrees(opens.Value)),
					Working: p.Paper().Start(d.Board.Over.Back.Length, "it stands out behind its chest").Minus(behind, "from the back of the chest to the pin").
						Equals("behind the pin").Remark(fmt.Sprintf("it lies against the back where sin(turned - 90deg) = %s / %s: at %s", p.Show(behind), p.Show(-pin.Out), degrees(math.Floor(stops)))).Working(),
					Fixes: []diag.Fix{
						{Title: fmt.Sprintf("let it open by %s: `opens %s`", degrees(math.Floor(stops)), degrees(math.Floor(stops)))},
						{Title: "let it stand out less behind its chest"},
					},
				}
				if behind < 0 {
					f.Message = fmt.Sprintf("%s turns about pins %s in front of the back of its chest: what is behind them turns into the back, and it does not open", titled(&d.Item), exact(p, -behind))
					f.Working = p.Paper().Start(-pin.Out, "from the pin to the back edge of the lid").Minus(d.Board.Over.Back.Length, "it stands out behind its chest").Equals("from the pin to the back of the chest").Working()
					f.Fixes = []diag.Fix{{Title: "set the pins at the back of the chest or behind it"}}
				}
				pass.Report(f)
				break
			}
		}
	},
}

// backStops is at how many degrees what a lid stands out behind its pin meets the back of the chest, where the pin stands
// so far behind that and level with the underside of the lid.
func backStops(out, behind wood.Length) float64 {
	if behind < 0 {
		return 0
	}
	return 90 + math.Asin(min(1, float64(behind)/float64(out)))*180/math.Pi
}
