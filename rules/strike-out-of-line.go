package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	strikeOff = &Figure{
		Name: "off", Why: "how far a keeper may stand from the height of its bolt", Basis: Practice,
		Source: "1/32 (1 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: wood.Millimetre,
	}
	boltPlay = &Figure{
		Name: "play", Why: "how much higher than its bolt a keeper's opening is at least", Basis: Practice,
		Source: "1/32 (1 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: wood.Millimetre,
	}
)

var strikeOutOfLine = &Rule{
	Name: "strike-out-of-line", Group: Doors, Severity: diag.Error,
	Summary: "a bolt and its keeper do not meet: one is higher than the other, or the keeper is too small or too shallow",
	Doc: `A bolt that is laid out from the floor of the case and a keeper that is laid out from the lower end of the door miss each other by the gap. The key
turns, and the bolt stops at the plate.

Lay both out from the lower end of the door; "at" and "keeper" both count from there. A door keeps its height along the grain all
year, so that nothing is allowed for that. Give the keeper's opening 1/32 more than the bolt is high, and room for all of its throw.`,
	Sources: `Bolt and keeper must meet: arithmetic. The play is common practice, no source.`,
	Sound:   `A keeper at the height of its bolt, 1/32 higher than it and just deep enough for the throw less the gap; a latch of which the keeper is not said.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
lock till { kind mortise ; throw 3/8 }
case cupboard {
  wide 20 ; high 70 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; lock till at 34 keeper 34 1/4 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
lock till { kind mortise ; throw 3/8 }
case cupboard {
  wide 20 ; high 70 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; lock till at 34 keeper 34 } ; side right }
}
`,
	Figures: []*Figure{strikeOff, boltPlay},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			for _, use := range d.Latches {
				if use.Latch != nil {
					checkStrike(pass, d, use)
				}
			}
		}
	},
}

// checkStrike holds a keeper against the bolt that goes into it: how high it sits, how high it is, and how deep. The
// first that is wrong is said.
func checkStrike(pass *Pass, d *plan.Door, use *plan.HardwareUse) {
	p, l, subject := pass.Plan, use.Latch, plan.PathOf(d)
	called := use.Word + " " + quote(use.Name)
	f := diag.Finding{Subject: subject, Span: use.Span}
	if len(use.At) == 1 && use.At[0].Known() && use.Keeper.Known() {
		off := use.Keeper.Length - use.At[0].Length
		if wood.Over(off.Abs(), pass.Length(strikeOff, subject)) {
			f.Message = fmt.Sprintf("the keeper of %s sits at %s, and its bolt at %s: they miss each other by %s", called, p.ShowSaid(use.Keeper), p.ShowSaid(use.At[0]), p.Show(off.Abs()))
			f.Working = p.Paper().Start(use.Keeper.Length, "keeper").Minus(use.At[0].Length, "bolt").Equals("out of line").Working()
			f.Fixes = []diag.Fix{{
				Title: fmt.Sprintf("set the keeper at %s", p.ShowSaid(use.At[0])),
				Edits: []diag.Edit{{Span: use.Keeper.Span, Text: cutTo(p, use.Keeper.Span, use.At[0].Length)}},
			}}
			pass.Report(f)
			return
		}
	}
	if l.Bolt.Known() && l.KeeperHigh.Known() {
		paper := p.Paper().Start(l.Bolt.Length, "height of the bolt").Plus(pass.Length(boltPlay, subject), "play").Equals("wanted")
		if wood.Under(l.KeeperHigh.Length, paper.Result()) {
			f.Message = fmt.Sprintf("the keeper of %s is %s high, and its bolt %s: %s is wanted", called, p.ShowSaid(l.KeeperHigh), p.ShowSaid(l.Bolt), p.Show(paper.Result()))
			f.Working = paper.Versus(l.KeeperHigh.Length, "height of the keeper").Working()
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make the keeper %s high", p.Show(paper.Result()))}}
			pass.Report(f)
			return
		}
	}
	edge, ok := latchedAt(d, use)
	gap, bounded := freeGap(d, edge)
	if !ok || !bounded || gap < 0 || !l.KeeperDeep.Known() {
		return
	}
	paper, when := p.Paper(), ""
	if grows, known := yearly(p, d, edge, true, p.Paper()); known && grows > 0 && !binds(pass, d, edge.Axis()) {
		yearly(p, d, edge, true, paper.Start(gap, "gap"))
		when = " at its most humid"
		gap = max(0, paper.Equals("gap"+when).Result())
	}
	room := paper.Start(gap, "gap"+when).Plus(l.KeeperDeep.Length, "depth of the keeper").Equals("room for the bolt").Result()
	if wood.Over(l.Throw.Length, room) {
		f.Message = fmt.Sprintf("the bolt of %s comes out by %s, and there is room for %s%s: it meets the bottom of its keeper", called, p.ShowSaid(l.Throw), exact(p, room), when)
		f.Working = paper.Versus(l.Throw.Length, "throw").Working()
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make the keeper %s deep", p.Show(upTo(p, l.KeeperDeep.Length+l.Throw.Length-room)))}}
		pass.Report(f)
	}
}
