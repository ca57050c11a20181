package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	dowelThird = &Figure{
		Name: "third", Why: "how thick a dowel is at least, as a part of the thinner of its two parts", Basis: Practice,
		Source: "a third; half is the most", Dim: lang.Plain, Number: 1.0 / 3,
	}
	dowelStep = &Figure{
		Name: "step", Why: "in which steps dowels are sold", Basis: Practice,
		Source: "1/8 (2 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 2 * wood.Millimetre,
	}
)

var thinDowel = &Rule{
	Name: "thin-dowel", Group: Joints, Severity: diag.Warning,
	Summary: "a dowel is thin for the wood that it joins",
	Doc: `A dowel that is thin beside its parts has little glued surface and little wood to bend: the joint snaps there first.

Take dowels between a third and a half of the thinner part. They come in steps of 1/8 (2 mm): the rule speaks where one that is a
step thicker would still be no more than a third. One that is too thick leaves thin walls, which "thin-wall" says.`,
	Sources: `That a dowel is at most half as thick as the wood: a trade answer, after an architectural woodwork standard. The third is common
practice, no source.`,
	Sound: `Dowels of just a third; a dowel of 3/8 in a rail of 1 1/4, for which half an inch would be more than a third; a face frame of 3/4
with dowels of 1/4.`,
	Bad: `dowel peg { thick 1/4 ; long 2 }
frame leaf {
  wide 18 ; high 24 ; thick 1 1/8
  joint dowel peg count 2
  across { stile left 3 ; down { rail head 3 ; space ; rail foot 3 } ; stile right 3 }
}
`,
	Good: `dowel peg { thick 3/8 ; long 2 }
frame leaf {
  wide 18 ; high 24 ; thick 1 1/8
  joint dowel peg count 2
  across { stile left 3 ; down { rail head 3 ; space ; rail foot 3 } ; stile right 3 }
}
`,
	Figures: []*Figure{dowelThird, dowelStep},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Dowel) {
			dowel := t.Joint.Hardware.To
			if dowel == nil || !dowel.Thick.Known() {
				continue
			}
			thin, ok := thinner(p.Cuts().Of(t.End))
			third := fraction(thin, pass.Number(dowelThird, t.subject))
			if !ok || wood.Over(dowel.Thick.Length+pass.Length(dowelStep, t.subject), third) {
				continue
			}
			f := diag.Finding{
				Subject: t.subject,
				Span:    fastenerSpan(t.Joint),
				Message: fmt.Sprintf("a dowel %s thick is less than a third of wood %s thick: take one from %s to %s", p.ShowSaid(dowel.Thick), p.Show(thin),
					p.Show(upTo(p, third-p.Tape.Tolerance())), p.Show(p.Tape.Floor(thin/2))),
				Working: p.Paper().Start(third, "wanted at least in wood "+p.Show(thin)+" thick").
					Versus(dowel.Thick.Length, "thickness of the dowel").Working(),
			}
			if dowel.Thick.Span.Known() {
				f.Notes = []diag.Note{{Span: dowel.Thick.Span, Message: "the dowel's thickness"}}
			}
			pass.Report(f)
		}
	},
}

// thinner is how thick the thinner of the parts is that dowels go into, seen along the dowel; ok is
// false where one of them is not known.
func thinner(cuts []*plan.Cut) (thin wood.Length, ok bool) {
	for _, c := range cuts {
		for d := plan.Long; d <= plan.Thick; d++ {
			size := c.In.Size[d]
			switch {
			case c.Kind != plan.CutDowel || d == c.Enters.Dimension():
				continue
			case !size.Known():
				return 0, false
			}
			if !ok || size.Length < thin {
				thin, ok = size.Length, true
			}
		}
	}
	return thin, ok
}
