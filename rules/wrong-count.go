package rules

import (
	"fmt"
	"strconv"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var wrongCount = &Rule{
	Name: "wrong-count", Group: Hygiene, Severity: diag.Error,
	Summary: "more of a thing are used than are made, or fewer",
	Doc: `Three legs are milled and the table has four: the fourth comes from another board, another day and another set-up. Where more
are made than are used, wood is spent for nothing, which is advice.

"part leg x 4" makes four, "frame leaf pair" two. Uses are counted in one assembly at a time, as often as that is itself made, since two
frames that are drawn separately may share a leg. A count that is not said is worked out, and never wrong.`,
	Sources: "Arithmetic.",
	Sound: `Four legs in two long frames and, the same ones, in two short ones; a pair of leaves in two doors; a part whose count is left
to be worked out; one that is fixed on, and stands in no layout.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
part leg x 4 { of oak ; size 30 x 2 x 2 }
frame end x 3 {
  of   oak
  wide 18 ; high 30 ; thick 2
  across { leg front part leg ; space ; leg back part leg }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
part leg x 6 { of oak ; size 30 x 2 x 2 }
frame end x 3 {
  of   oak
  wide 18 ; high 30 ; thick 2
  across { leg front part leg ; space ; leg back part leg }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		parts, frames := usesOf(p)
		fixed := make(map[any]bool) // fastened on in places that nobody counts
		for _, f := range p.Fixes {
			for _, ref := range []plan.Ref[plan.Thing]{f.A, f.B} {
				if ref.To != nil {
					fixed[ref.To.Is] = true
				}
			}
		}
		for _, part := range p.Parts {
			if part.Count.Known() {
				checkCount(pass, made{plan.PathOf(part), titled(&part.Item), part.Name.Span, part.Count, part.Count.N, fixed[part]}, parts[part])
			}
		}
		for _, a := range p.Assemblies {
			if n, said := a.Said(); said {
				checkCount(pass, made{plan.PathOf(a), entitled(a), a.Name.Span, a.Count, n, fixed[a]}, frames[a])
			}
		}
	},
}

// made is a thing of which the plan says how many there are.
type made struct {
	path, called string
	at           diag.Span
	count        plan.Count // as written
	n            int
	fixed        bool
}

// uses are where a thing is used in one assembly, and how many that takes.
type uses struct {
	in *plan.Assembly
	at []diag.Span
	n  int
}

// usesOf gathers the uses of parts and of what is drawn elsewhere, assembly by assembly.
func usesOf(p *plan.Plan) (parts map[*plan.Part][]uses, frames map[*plan.Assembly][]uses) {
	parts, frames = make(map[*plan.Part][]uses), make(map[*plan.Assembly][]uses)
	pieces := p.Pieces()
	for _, a := range p.Assemblies {
		for n := range a.Nodes() {
			at := plan.It(n).Span
			switch n := n.(type) {
			case *plan.Member:
				addUse(parts, n.Part.To, a, at, pieces[a])
			case *plan.Door:
				addUse(parts, n.Leaf.Part, a, at, pieces[a])
				addUse(frames, n.Leaf.Frame, a, at, pieces[a])
			case *plan.Placed:
				addUse(frames, n.Part.To, a, at, pieces[a])
			}
		}
	}
	return parts, frames
}

func addUse[T any](to map[*T][]uses, of *T, in *plan.Assembly, at diag.Span, pieces int) {
	if of == nil {
		return
	}
	all := to[of]
	if n := len(all); n == 0 || all[n-1].in != in {
		all = append(all, uses{in: in})
	}
	u := &all[len(all)-1]
	u.at = append(u.at, at)
	u.n += pieces
	to[of] = all
}

// checkCount reports the first assembly that takes more of a thing than there are, or that all
// of them together take fewer.
func checkCount(pass *Pass, m made, all []uses) {
	total := 0
	for _, u := range all {
		total += u.n
		if u.n <= m.n {
			continue
		}
		const most = 6
		f := diag.Finding{
			Subject: m.path,
			Span:    standing(m.at, m.count.Span),
			Message: fmt.Sprintf("%d of %s are made, and %s takes %d", m.n, m.called, entitled(u.in), u.n),
		}
		if times := u.n / len(u.at); times > 1 {
			f.Message += fmt.Sprintf(": %d in each of %d", len(u.at), times)
		}
		for _, at := range u.at[:min(len(u.at), most)] {
			f.Notes = append(f.Notes, diag.Note{Span: at, Message: "used here"})
		}
		if m.count.Known() && m.n == m.count.N {
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `x %d`", u.n), Edits: []diag.Edit{{Span: m.count.Span, Text: strconv.Itoa(u.n)}}}}
		}
		pass.Report(f)
		return
	}
	if total > 0 && total < m.n && !m.fixed && !pass.Blind {
		pass.Report(diag.Finding{
			Subject:  m.path,
			Severity: diag.Advice,
			Span:     standing(m.at, m.count.Span),
			Message:  fmt.Sprintf("%d of %s are made, and only %d are used", m.n, m.called, total),
		})
	}
}
