package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	threadSolid = &Figure{
		Name: "solid", Why: "how much thread goes into the second piece at least, where it is of solid wood", Basis: SecondHand,
		Source: "1 to 1 1/2 in (25 mm): a page on wood screws", Dim: lang.Length, Length: wood.Inch, Metric: 25 * wood.Millimetre,
	}
	threadSheet = &Figure{
		Name: "sheet", Why: "how much thread goes into the second piece at least, where it is of sheet stock", Basis: Practice,
		Source: "5/8 (16 mm)", Dim: lang.Length, Length: 5 * wood.Inch / 8, Metric: 16 * wood.Millimetre,
	}
	threadTimes = &Figure{
		Name: "times", Why: "how many times as far as through the first piece a screw needs to go into the second at most", Basis: Practice,
		Source: "twice: the screw is then three times as long as the first piece is thick", Dim: lang.Plain, Number: 2,
	}
	screwStep = &Figure{
		Name: "step", Why: "in which steps of length screws are sold", Basis: Practice,
		Source: "1/4 (5 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 5 * wood.Millimetre,
	}
)

var shortScrew = &Rule{
	Name: "short-screw", Group: Joints, Severity: diag.Warning,
	Summary: "a screw has too little thread in the second piece",
	Doc: `A screw holds by what of its thread is in the second piece; what is in the first holds nothing. In side grain it may be pulled, by
a handbook's formula, with 2850 times the square of the wood's specific gravity times its diameter, in pounds for each inch: a number 8 in wood
of 0.60 with 168 lb, in end grain with nothing.

Let an inch (25 mm) of thread go into solid wood, and 5/8 (16 mm) into sheet stock; or make the screw three times as long as the first piece is
thick, if that is less. The rule says nothing where a screw of the next length would come through, nor of tops, nor where glue holds and
the screw is only its clamp.`,
	Sources: `What a screw may be pulled with: a structural handbook, ch. 6, and an engineering reference. The other figures are as they say.`,
	Sound: `#8 x 1 1/4 through 3/4 into 3/4, for which a longer one would come through; a thin back with screws of 3/4; a runner
that is glued and screwed; two inches through a side into a shelf.`,
	Bad: `screw no8 { gauge 8 ; long 1 1/4 ; head flat }
wood oak { species "white oak" ; sawn quarter }
part cleat { of oak ; size 12 x 2 x 3/4 }
part post  { of oak ; size 30 x 2 x 2 }
fix cleat to post { screw no8 x 3 }
`,
	Good: `screw no8 { gauge 8 ; long 1 3/4 ; head flat }
wood oak { species "white oak" ; sawn quarter }
part cleat { of oak ; size 12 x 2 x 3/4 }
part post  { of oak ; size 30 x 2 x 2 }
fix cleat to post { screw no8 x 3 }
`,
	Figures: []*Figure{threadSolid, threadSheet, threadTimes, screwStep},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range screws(p) {
			through, into := d.through, d.into
			if d.end == nil && through.thick.Known() && into.thick.Known() && into.thick.Length < through.thick.Length {
				through, into = into, through // it may as well come from the other side
			}
			first, second, of := through.thick, into.thick, into.Of.Material.To
			if d.glued || of == nil || !d.of.Long.Known() || !d.counterbore.Known() || !first.Known() {
				continue
			}
			long := d.of.Long.Length
			goes := long + d.counterbore.Length - first.Length
			least := pass.Length(threadSheet, d.subject)
			if of.Kind == plan.Solid {
				least = pass.Length(threadSolid, d.subject)
			}
			least = min(least, fraction(first.Length-d.counterbore.Length, pass.Number(threadTimes, d.subject)))
			holds := min(goes, d.of.Thread.Or(long).Length)
			longer := goes + pass.Length(screwStep, d.subject) + screwTip.Length
			if !wood.Under(holds, least) || goes > 0 && (into.Over != nil || second.Known() && wood.Over(longer, second.Length)) {
				continue
			}
			f := diag.Finding{Subject: d.subject, Span: d.span, Notes: screwNotes(d.of)}
			paper := p.Paper().Start(long, "the screw")
			if d.counterbore.Length != 0 {
				paper.Plus(d.counterbore.Length, "its head is sunk")
			}
			paper.Minus(first.Length, "the first piece").Equals("goes into the second").Versus(least, "wanted")
			switch {
			case !wood.Over(goes, 0):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a screw %s long does not come out of the first piece, which is %s thick", p.ShowSaid(d.of.Long), p.Show(first.Length))
			case goes > holds:
				f.Message = fmt.Sprintf("a screw with %s of thread holds little in %s: %s is wanted", p.ShowSaid(d.of.Thread), titled(&into.Item), p.Show(least))
				paper.Versus(d.of.Thread.Length, "is threaded")
			default:
				f.Message = fmt.Sprintf("a screw %s long goes only %s into %s: %s is wanted", p.ShowSaid(d.of.Long), p.Show(goes), titled(&into.Item), p.Show(least))
			}
			if s := of.Species; of.Kind == plan.Solid && s != nil && s.SG.Known() && !d.endGrain && goes > 0 && d.of.Diameter().Known() {
				paper.Remark(pulled(p, s.SG.Value, d.of.Diameter().Length))
			}
			f.Working = paper.Working()
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("take a screw %s long at least", p.Show(upTo(p, least-goes+long)))}}
			if goes >= least {
				f.Fixes[0].Title = "take a screw with a longer thread"
			}
			pass.Report(f)
		}
	},
}

// pulled says with how much a screw may be pulled for so much of thread in side grain.
func pulled(p *plan.Plan, sg float64, thick wood.Length) string {
	perMetre := wood.Withdrawal(sg, thick)
	if p.Tape.Metric {
		return fmt.Sprintf("for each millimetre of thread in side grain it may be pulled with %.0f N", perMetre/1000)
	}
	return fmt.Sprintf("for each inch of thread in side grain it may be pulled with %.0f lb", perMetre*wood.Inch.Metres()/wood.PoundForce)
}
