package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slatGap = &Figure{
	Name: "gap", Why: "how far apart the slats under a mattress stand at most", Basis: SecondHand,
	Source: "3 in (75 mm): several pages of mattress makers, as what they want for their guarantee", Dim: lang.Length, Length: 3 * wood.Inch, Metric: 75 * wood.Millimetre,
}

// singleBed is a bed for a mattress of 38 x 75, with what carries its slats.
func singleBed(supplies, deck string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
` + supplies + `assembly bed {
  wide 41 ; high 14 ; deep 78
  across {
    rail left 1 { wide 6 }
    behind {
      rail head 1
      down {
        space inside 10 { holds mattress 38 x 75 }
        ` + deck + `
      }
      rail foot 1
    }
    rail right 1
  }
}
`
}

var slatsApart = &Rule{
	Name: "slats-apart", Group: Structure, Severity: diag.Warning,
	Summary: "the slats under a mattress stand so far apart that it sinks between them",
	Doc: `A mattress sags into wide gaps, its springs poke through and its foam wears; makers of mattresses do not stand by one that lay on such slats.

Lay more slats, or wider ones. The rule looks at slats that lie level right under what "holds mattress", in a row ("slat lath 3 count 13") or one by one
with a "space" between. A board or a panel laid over them carries the mattress itself. What the maker of the mattress wants goes before this figure.`,
	Sources: `See the figure.`,
	Sound:   `Slats just 3 apart; slats laid from head to foot; wide gaps under a sheet of plywood, and in the headboard.`,
	Bad: singleBed("", `behind 3/4 { slat lath 3 { thick 3/4 ; count 12 } }
        space`),
	Good: singleBed("", `behind 3/4 { slat lath 3 { thick 3/4 ; count 14 } }
        space`),
	Figures: []*Figure{slatGap},
	Check: func(pass *Pass) {
		for d := range decks(pass.Plan) {
			checkGaps(pass, d)
		}
	},
}

// checkGaps looks for the widest gap between two slats of a row.
func checkGaps(pass *Pass, d *deck) {
	p := pass.Plan
	var last, after *plan.Member
	var before, gap plan.Node // the empty place before a slat, and the one in the widest gap
	var widest wood.Length
	for _, n := range d.list.Items {
		at := plan.It(n).Cell[d.list.Axis]
		switch n := n.(type) {
		case *plan.Space:
			before = n
			continue
		case *plan.Member:
			if n.Word == "slat" {
				if last != nil && wood.Over(at.From-last.Cell[d.list.Axis].To(), widest) {
					widest, after, gap = at.From-last.Cell[d.list.Axis].To(), n, before
				}
				last = n
				continue
			}
		}
		last = nil
	}
	if after == nil {
		return
	}
	subject := plan.PathOf(after)
	most := pass.Length(slatGap, subject)
	if !wood.Over(widest, most) || agree(p, widest, most) {
		return
	}
	f := diag.Finding{
		Subject: subject, Span: after.Span,
		Message: fmt.Sprintf("%s stands %s from the one before it, and a mattress sinks into gaps of more than %s", titled(&after.Item), exact(p, widest), p.Show(most)),
		Working: p.Paper().Start(widest, "between two slats").Versus(most, "at most").Working(),
	}
	if gap != nil && wood.Same(plan.It(gap).Cell[d.list.Axis].Size, widest) {
		f.Working = room(p, gap, d.list.Axis, "between two slats").Versus(most, "at most").Working()
	}
	if n := d.enough(most); n > 0 {
		f.Message = fmt.Sprintf("the slats %s lie %s apart, and a mattress sinks into gaps of more than %s", quote(after.Row), exact(p, widest), p.Show(most))
		fix := diag.Fix{Title: fmt.Sprintf("write `count %d`", n)}
		if d.list.In.Build == nil {
			fix.Edits = []diag.Edit{{Span: after.Count.Span, Text: itoa(n)}}
		}
		f.Fixes = []diag.Fix{fix}
	}
	pass.Report(f)
}

// enough is how many slats leave no gap of more than so much, where all are of one row; 0 where they are not, or
// their own widths leave no room.
func (d *deck) enough(most wood.Length) int {
	first := plan.It(d.slats[0].Node)
	slats, gaps := 0, 0
	var wide, free wood.Length
	for _, n := range d.list.Items {
		it := plan.It(n)
		switch n.(type) {
		case *plan.Member:
			if it.Row == "" || it.Row != first.Row {
				continue
			}
			slats, wide = slats+1, it.Cell[d.list.Axis].Size
		case *plan.Space:
			if it.Span != first.Span {
				return 0
			}
			gaps, free = gaps+1, free+it.Cell[d.list.Axis].Size
		}
	}
	if first.Row == "" || slats != first.Count.N || wide <= 0 || most <= 0 {
		return 0
	}
	const many = 100 // more is no bed
	for n := slats + 1; n <= many && free >= wide*wood.Length(n-slats); n++ {
		if !wood.Over((free-wide*wood.Length(n-slats))/wood.Length(gaps+n-slats), most) {
			return n
		}
	}
	return 0
}
