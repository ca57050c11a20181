package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	screwTip = &Figure{
		Name: "tip", Why: "how much wood is left before the tip of a screw at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	pocketBeyond = &Figure{
		Name: "pocket", Why: "which part of a pocket screw goes into what it joins", Basis: Memory,
		Source: "half of it, as a pocket of 15 degrees leaves it", Dim: lang.Plain, Number: 0.5,
	}
)

var screwComesThrough = &Rule{
	Name: "screw-comes-through", Group: Joints, Severity: diag.Error,
	Summary: "the tip of a screw comes out at the far face",
	Doc: `A screw as long as the two pieces are thick comes out where a hand is laid, or lifts a splinter or a veneer before it does.

Take a shorter screw, or sink its head less: of the second piece 1/8 (3 mm) is to be left before the tip. Where the drawing shows that the two
lie against each other, their sizes there count. Of two parts that are drawn by themselves the thicknesses count, and the finding is a
warning, for they may be screwed another way.`,
	Sources: `Arithmetic; see the figures.`,
	Sound: `A screw of 1 1/4 through 3/4 into 3/4; one that leaves just 1/8; a sunk head in a thick cleat; a screw through a shelf's side
into its end; a pocket screw of 1 1/4 into a side of 23/32.`,
	Bad: `screw no8 { gauge 8 ; long 1 1/4 ; head flat }
part cleat { size 12 x 2 x 3/4 }
part panel { size 24 x 12 x 1/2 }
fix cleat to panel { screw no8 x 3 }
`,
	Good: `screw no8 { gauge 8 ; long 1 ; head flat }
part cleat { size 12 x 2 x 3/4 }
part panel { size 24 x 12 x 1/2 }
fix cleat to panel { screw no8 x 3 }
`,
	Figures: []*Figure{screwTip, pocketBeyond},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range screws(p) {
			if !d.of.Long.Known() || !d.counterbore.Known() || !d.through.thick.Known() || !d.into.thick.Known() {
				continue
			}
			left := d.through.thick.Length + d.into.thick.Length - d.of.Long.Length - d.counterbore.Length
			least := pass.Length(screwTip, d.subject)
			if !wood.Under(left, least) {
				continue
			}
			paper := p.Paper().Start(d.through.thick.Length, titled(&d.through.Item)).Plus(d.into.thick.Length, titled(&d.into.Item)).
				Minus(d.of.Long.Length, "the screw")
			if d.counterbore.Length != 0 {
				paper.Minus(d.counterbore.Length, "its head is sunk")
			}
			f := diag.Finding{
				Subject: d.subject, Span: d.span,
				Message: fmt.Sprintf("a screw %s long through %s into %s of %s %s", p.ShowSaid(d.of.Long), p.Show(d.through.thick.Length),
					titled(&d.into.Item), p.Show(d.into.thick.Length), comesOut(p, left)),
				Working: paper.Equals("left before its tip").Versus(least, "wanted").Working(),
				Notes:   screwNotes(d.of),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("take a screw %s long at most", p.Show(p.Tape.Floor(d.of.Long.Length-least+left)))}},
			}
			if !d.drawn || wood.Over(left, 0) {
				f.Severity = diag.Warning
			}
			pass.Report(f)
		}
		for t := range joinedBy(p, plan.Pocket) {
			of, mate, subject := t.Joint.Hardware.To, t.MateSize(), t.subject
			if of == nil || !of.Long.Known() || !mate.Known() {
				continue
			}
			beyond := fraction(of.Long.Length, pass.Number(pocketBeyond, subject))
			if !wood.Over(beyond, mate.Length) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: subject, Span: fastenerSpan(t.Joint), Severity: diag.Warning,
				Message: fmt.Sprintf("a pocket screw %s long goes about %s into what it joins, which is %s thick", p.ShowSaid(of.Long), p.Show(beyond), p.Show(mate.Length)),
				Working: p.Paper().Start(mate.Length, titled(&t.Mates[0].Item)).Minus(beyond, "about half of the screw").Equals("left before its tip").Working(),
				Notes:   screwNotes(of),
			})
		}
	},
}

// comesOut says what becomes of a tip before which so much wood is left.
func comesOut(p *plan.Plan, left wood.Length) string {
	switch {
	case wood.Over(left, 0):
		return fmt.Sprintf("leaves only %s before its tip", p.Show(left))
	case wood.Same(left, 0):
		return "reaches the far face"
	}
	return fmt.Sprintf("comes out %s at the far face", p.Show(-left))
}

// screwNotes says where the plan states the length of a screw.
func screwNotes(of *plan.Fastener) []diag.Note {
	if !of.Long.Span.Known() {
		return nil
	}
	return []diag.Note{{Span: of.Long.Span, Message: "the length of the " + of.Word}}
}
