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
year, so that nothing is allowed for that. Give the keeper's opening 1/32 more than the bolt is high, and room for all of its throw.

A catch holds a leaf that laps its case from within: the other half of it is on the inside of a side, a top or a shelf. One that sits nearer to the
end of the leaf than that laps there comes before the edge of the case instead. A magnet may be let into that edge, and is not asked about.`,
	Sources: `Bolt and keeper must meet: arithmetic. The play is common practice, no source.`,
	Sound: `A keeper at the height of its bolt, 1/32 higher than it and just deep enough for the throw less the gap; a latch of which the keeper is not said; a
catch on a leaf that laps its case, a little farther from the end than the lap.`,
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
	if checkWithin(pass, d, use) {
		return
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

// checkWithin holds where a catch sits on a leaf that laps its case against the case behind it.
func checkWithin(pass *Pass, d *plan.Door, use *plan.HardwareUse) bool {
	p := pass.Plan
	edge, ok := latchEdge(d, use)
	if !ok || d.Fit.Kind.Is != "overlay" || use.Latch.Kind.Is == "magnet" || d.Edges[edge].Shared { // one may be latched to the other
		return false
	}
	axis := plan.Down - edge.Axis() // along the edge
	size := d.Size[axis]
	for _, at := range d.Along(use, edge) {
		for _, end := range [2]plan.Side{plan.Side(axis * 2), plan.Side(axis*2) + 1} {
			from, lap := at.From, d.Edges[end].Lap()
			if end.Far() {
				from = size.Length - at.From
			}
			over, stands := plan.Neighbour(d, end).(*plan.Member)
			if !at.Placed || !size.Known() || !lap.Known() || !stands || !wood.Under(from, lap.Length-p.Tape.Tolerance()) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(d), Span: use.Span,
				Message: fmt.Sprintf("%s %s sits %s from the %s of %s, which laps %s by %s there: it comes before the edge of that, and not within the case", use.Word, quote(use.Name),
					exact(p, from), sideOf(end), titled(&d.Item), called(&over.Item), exact(p, lap.Length)),
				Working: p.Paper().Start(from, "to the middle of it, from the "+sideOf(end)+" of the leaf").Versus(lap.Length, edgeOf(d.Edges[end], d.Hang.Is)).Working(),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("set it farther from the %s than %s", sideOf(end), exact(p, lap.Length))}},
			})
			return true
		}
	}
	return false
}
