package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var clampBeside = &Figure{
	Name: "beside", Why: "how far the middle of a rail may lie beside that of its stile, as a part of the stile's thickness", Basis: WorkedOut,
	Source: "a quarter: statics; a rail half as thick and flush with the face lies just so far out", Dim: lang.Plain, Number: 0.25,
}

var offCentreClamping = &Rule{
	Name: "off-centre-clamping", Group: Making, Severity: diag.Advice,
	Summary: "a clamp in the middle of a stile presses beside its rail",
	Doc: `A clamp across a thick stile or leg presses in the middle of it, and a thin rail that lies near its face takes the
pressure beside that line. The stile rolls, its shoulder opens on one side, and the frame dries in a twist.

Put pads under the jaws that bring the pressure into the line of the rail, or turn every second clamp to the other face and look
along the frame before the glue sets.`,
	Sources: `Statics: a force beside the line of what bears it turns the joint. The part of the thickness stands with its figure.`,
	Sound: `A rail half as thick as its stile and flush with the face; a thin rail in the middle of a thick stile; a thin rail at the
face that is not glued; slats, which bear no clamp; a head rail against the flat of a side rail.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 1 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 { thick 3/4 ; flush front } ; space middle ; rail foot 3 { thick 3/4 ; flush front } }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 1 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 { thick 7/8 ; flush front } ; space middle ; rail foot 3 { thick 7/8 ; flush front } }
    stile right 2 1/4
  }
}
`,
	Figures: []*Figure{clampBeside},
	Check: func(pass *Pass) {
		p := pass.Plan
		met := make(map[clampedSo][]*plan.Member) // alike joints of one assembly are one piece of advice
		var order []clampedSo
		for e := range ends(p) {
			m, so, ok := clamped(e)
			if !ok || !wood.Over(so.beside.Abs(), fraction(so.stile, pass.Number(clampBeside, plan.PathOf(m)))) {
				continue
			}
			if len(met[so]) == 0 {
				order = append(order, so)
			}
			if of := met[so]; len(of) == 0 || of[len(of)-1] != m { // its two ends follow each other
				met[so] = append(of, m)
			}
		}
		for _, so := range order {
			m := met[so][0]
			subject := plan.PathOf(m)
			lies := titled(&m.Item) + " lies"
			if more := len(met[so]) - 1; more > 0 {
				lies = fmt.Sprintf("%s and %d more lie", titled(&m.Item), more)
			}
			face := plan.Side(m.Flat * 2) // the nearer one
			if so.beside > 0 {
				face = face.Opposite()
			}
			middle := so.stile/2 - so.beside.Abs()
			pass.Report(diag.Finding{
				Subject: subject,
				Span:    m.Span,
				Message: fmt.Sprintf("%s %s beside the middle of the %s: clamps there press past the joint and twist it",
					lies, p.Show(so.beside.Abs()), so.mate),
				Working: p.Paper().Start(so.stile, "thickness of the "+so.mate).Over(2, "half").
					Minus(middle, fmt.Sprintf("from its %s face to the middle of the %s", face, so.word)).Equals("beside each other").
					Versus(fraction(so.stile, pass.Number(clampBeside, subject)), "allowed").Working(),
				Fixes: []diag.Fix{{Title: fmt.Sprintf("put pads under the jaws that press %s from the %s face, in line with the %s", exact(p, middle), face, so.word)}},
			})
		}
	},
}

// clampedSo is how a stick lies beside the middle of what it is clamped to.
type clampedSo struct {
	in          *plan.Assembly
	word, mate  string
	flat        plan.Axis
	stile, rail wood.Length // how thick they are
	beside      wood.Length // from the middle of the one to that of the other; below zero towards the left, the top or the front
}

// clamped says how an end that is glued up under clamps lies in what it meets; ok is false where it
// is not clamped, or where its place is not known.
func clamped(e *plan.End) (m *plan.Member, so clampedSo, ok bool) {
	m, ok = e.Of.(*plan.Member)
	if !ok || !racked[m.Word] || len(e.Mates) != 1 || e.Joint.Dry.On {
		return m, so, false
	}
	switch e.Joint.Kind.Is {
	case plan.Tenon, plan.LooseTenon, plan.Stub, plan.Tongue, plan.Bridle, plan.Dowel, plan.BiscuitJoint:
	default:
		return m, so, false
	}
	mate := e.Mates[0]
	rail, stile := m.Body[m.Flat], mate.Body[m.Flat]
	if mate.Board() || mate.In != m.In || mate.Grain == m.Flat || !rail.Known() || !stile.Known() {
		return m, so, false
	}
	return m, clampedSo{
		in: m.In, word: m.Word, mate: mate.Word, flat: m.Flat, stile: stile.Size, rail: rail.Size,
		beside: rail.From + rail.Size/2 - stile.From - stile.Size/2,
	}, true
}
