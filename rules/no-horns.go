package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	hornsInAll = &Figure{
		Name: "horns", Why: "how much longer a stick is left, in all, while its end mortises are cut", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, The Mortise and Tenon Joint: stiles are left 1 to 3 inches over", Dim: lang.Length, Length: wood.Inch,
	}
	nearEnd = &Figure{
		Name: "near", Why: "how near to an end a mortise asks for a horn", Basis: Practice,
		Source: "short grain splits beside a chisel or under wedges", Dim: lang.Length, Length: 2 * wood.Inch,
	}
)

var noHorns = &Rule{
	Name: "no-horns", Group: Lengths, Severity: diag.Warning,
	Summary: "a stick that is mortised near its end is left no longer for it",
	Doc: `Between a mortise and the end of a stile there is little wood, and its grain is short: it bursts out under the
chisel, or when the joint is driven home. Makers leave horns on, and saw them off when the glue is dry.

Say a rough length that has the horns in it, or "horns" for what is left on at each end. The rule looks where the plan says
"rough" or "horns".`,
	Sources: `See the figures.`,
	Sound: `A stile with its horns on; a stile cut rough to its length whose mortises lie far from the ends; one with rails that are
dowelled.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4 { rough 24 1/2 x 2 1/2 x 1 }
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4 { rough 25 1/2 x 2 1/2 x 1 }
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Figures: []*Figure{hornsInAll, nearEnd},
	Check: func(pass *Pass) {
		p := pass.Plan
		seen := make(map[saying]bool)
		for e := range ends(p) {
			if kind := e.Joint.Kind.Is; kind != plan.Tenon && kind != plan.LooseTenon {
				continue
			}
			for _, m := range e.Mates {
				if m.In != plan.It(e.Of).In || m.Grain == e.Side.Axis() {
					continue
				}
				left, of, at := longer(m)
				near, toEnd := nearestEnd(m, plan.It(e.Of).Cell[m.Grain])
				if of == nil || !near || !wood.Under(toEnd, pass.Length(nearEnd, plan.PathOf(m))) ||
					!wood.Under(left, hornsInAll.Length-p.Tape.Tolerance()) || again(seen, at, m.In) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(m),
					Span:    standing(of.Span, at),
					Message: fmt.Sprintf("%s is mortised for %s %s from its end, and is left only %s longer in all: leave %s",
						titled(of), called(plan.It(e.Of)), p.Show(toEnd), p.Show(max(left, 0)), p.Show(hornsInAll.Length)),
					Notes: []diag.Note{{Span: plan.It(e.Of).Span, Message: called(plan.It(e.Of)) + " goes in here"}},
					Fixes: []diag.Fix{{Title: fmt.Sprintf("leave it %s longer and saw the horns off when the glue is dry", p.Show(hornsInAll.Length))}},
				})
			}
		}
	},
}

// longer is by how much, in all, a member is said to be left longer than finished; by what, the
// member or the part that it is, and where. Nobody says so where of is nil.
func longer(m *plan.Member) (left wood.Length, of *plan.Item, at diag.Span) {
	rough, horns, of := m.Rough.Long, m.Horns, &m.Item
	if part := m.Part.To; part != nil && !rough.Known() && !horns.Known() {
		rough, horns, of = part.Rough.Long, part.Horns, &part.Item
	}
	switch {
	case rough.Known() && m.Size.Long.Known():
		return rough.Length - m.Size.Long.Length, of, rough.Span
	case horns.Known():
		return 2 * horns.Length, of, horns.Span
	}
	return 0, nil, diag.Span{}
}

// nearestEnd is how far what lies in a cell is from the nearer end of a member.
func nearestEnd(m *plan.Member, cell plan.Extent) (known bool, far wood.Length) {
	own := m.Cell[m.Grain]
	if !own.Known() || !cell.Known() {
		return false, 0
	}
	return true, min(cell.From-own.From, own.To()-cell.To())
}
