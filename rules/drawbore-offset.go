package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	drawLeast = &Figure{
		Name: "least", Why: "how much nearer to the shoulder a drawbored hole is at least", Basis: Memory,
		Source: "1/32 (0.8 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: 800 * wood.Micrometre,
	}
	drawMost = &Figure{
		Name: "most", Why: "how much nearer to the shoulder it is at most in furniture", Basis: Memory,
		Source: "1/16 (1.6 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 1600 * wood.Micrometre,
	}
	drawHeavy = &Figure{
		Name: "heavy", Why: "how much nearer to the shoulder it is at most in heavy sticks", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, The Mortise and Tenon Joint: 1/8 nearer, with holes of 3/8", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	heavyStick = &Figure{
		Name: "heavy-stick", Why: "from which thickness on a stick is heavy", Basis: Practice,
		Source: "1 1/2 (38 mm), as the sticks of gates, benches and house doors are", Dim: lang.Length, Length: 3 * wood.Inch / 2, Metric: 38 * wood.Millimetre,
	}
)

var drawboreOffset = &Rule{
	Name: "drawbore-offset", Group: Tenons, Severity: diag.Warning,
	Summary: "a drawbored peg draws too little or too much",
	Doc: `The peg bends as it goes through both holes, and keeps the shoulder drawn up for good. Too little offset is lost in the play of the
holes; too much, and the peg breaks or the wood behind it in the tenon shears out.

Bore the tenon 1/32 to 1/16 (0.8 to 1.6 mm) nearer to the shoulder in furniture, and up to 1/8 in heavy sticks with thick pegs. Point
the pegs, and choose straight-grained ones.`,
	Sources: `See the figures.`,
	Sound:   `Offsets of just 1/32 and 1/16; one of 1/8 in a gate 1 3/4 thick.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/2 peg pin at 1/2 draw 1/8
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/2 peg pin at 1/2 draw 1/16
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Figures: []*Figure{drawLeast, drawMost, drawHeavy, heavyStick},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			d, ok := t.drawn()
			if !ok || !wood.Over(d.offset, 0) {
				continue // bored through both, or the wrong way round
			}
			least, most := pass.Length(drawLeast, t.subject), pass.Length(drawMost, t.subject)
			in := ""
			if len(t.Mates) > 0 {
				thick := t.Mates[0].Size.Thick
				if !thick.Known() {
					continue
				}
				if !wood.Under(thick.Length, pass.Length(heavyStick, t.subject)) {
					most = drawHeavy.Length
				}
				in = fmt.Sprintf(" in a stick %s thick", p.Show(thick.Length))
			}
			f := diag.Finding{Subject: t.subject, Span: d.said.Span}
			switch {
			case wood.Under(d.offset, least):
				f.Message = fmt.Sprintf("a peg that draws %s draws nothing: the play of its holes takes that up, %s is wanted", p.Show(d.offset), p.Show(least))
			case wood.Over(d.offset, most):
				f.Message = fmt.Sprintf("a peg that draws %s%s breaks, or tears out of the tenon: %s is the most", p.Show(d.offset), in, p.Show(most))
			default:
				continue
			}
			f.Working = d.working(p).Working()
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let it draw between %s and %s", p.Show(least), p.Show(most))}}
			pass.Report(f)
		}
	},
}

// drawn is how a drawbored peg stands: in the mate, in the tenon, and how much nearer to the shoulder there.
type drawn struct {
	mate, tenon, offset wood.Length
	said                plan.Length // draw, or in-tenon
}

// drawn is how a tenon is drawbored; false where it is not, or the plan does not say. Where there are several
// pegs, it is that of the first.
func (t tenon) drawn() (drawn, bool) {
	peg := t.Joint.Peg
	if peg == nil || len(peg.At) == 0 || !peg.At[0].Known() {
		return drawn{}, false
	}
	d := drawn{mate: peg.At[0].Length}
	switch {
	case peg.InTenon.Known():
		d.said, d.tenon = peg.InTenon, peg.InTenon.Length
	case peg.Draw.Known():
		d.said, d.tenon = peg.Draw, d.mate-peg.Draw.Length
	default:
		return drawn{}, false
	}
	d.offset = d.mate - d.tenon
	return d, true
}

// working is how much it draws.
func (d drawn) working(p *plan.Plan) *plan.Paper {
	return p.Paper().Start(d.mate, "shoulder to the hole in the mate").Minus(d.tenon, "shoulder to the hole in the tenon").Equals("it draws")
}
