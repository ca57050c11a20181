package rules

import (
	"fmt"
	"iter"
	"regexp"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	slipLongest = &Figure{
		Name: "longest", Why: "above which size a bare number in a plan in inches is taken for millimetres", Basis: Practice,
		Source: "240 in: 20 feet, longer than furniture and than most boards", Dim: lang.Length, Length: 240 * wood.Inch,
	}
	slipLeast = &Figure{
		Name: "least", Why: "below which size a bare number in a plan in millimetres is taken for inches", Basis: Practice,
		Source: "1 mm: thinner than any part but a veneer", Dim: lang.Length, Length: wood.Millimetre,
	}
)

var unitSlip = &Rule{
	Name: "unit-slip", Group: Hygiene, Severity: diag.Warning,
	Summary: "a size looks as if it were written in the other unit",
	Doc: `762 in a plan in inches is a table 63 feet long; 3/4 in a plan in millimetres is a sheet of paper. A size that was copied from a
drawing in the other unit spoils everything that is worked out from it.

Write the unit behind such a number: "762mm", "3/4in". Then it stands as it was meant, in either plan. The rule looks at bare numbers for
the sizes of parts and the outsides of assemblies, and at two statements of one size whose ratio is that of an inch to a millimetre.`,
	Sources: `An inch is 25.4 mm by definition (international yard and pound agreement, 1959). The limits are common practice, no source.`,
	Sound:   `A size of just 240 in, a long one that says its unit, and a veneer thinner than a millimetre.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
part rail x 2 { of oak ; size 762 x 3 x 3/4 }
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
part rail x 2 { of oak ; size 762mm x 3 x 3/4 }
`,
	Figures: []*Figure{slipLongest, slipLeast},
	Check: func(pass *Pass) {
		p := pass.Plan
		for subject, l := range outsideSizes(p) {
			text := l.Span.Text()
			if l.How != plan.Written || l.Span.File != p.File || !bareNumber.MatchString(text) {
				continue // it says its unit, or is worked out; another file has units of its own
			}
			is, meant := "in", "mm"
			switch {
			case !p.Tape.Metric && wood.Over(l.Length, pass.Length(slipLongest, subject)):
			case p.Tape.Metric && wood.Under(l.Length.Abs(), pass.Length(slipLeast, subject)):
				is, meant = meant, is
			default:
				continue
			}
			pass.Report(diag.Finding{
				Subject: subject,
				Span:    l.Span,
				Message: fmt.Sprintf("%s is read as %s %s, the unit of this plan: is it meant in %s?", text, p.Show(l.Length), is,
					map[string]string{"in": "inches", "mm": "millimetres"}[meant]),
				Fixes: []diag.Fix{{Title: fmt.Sprintf("write `%s%s`", text, meant), Edits: []diag.Edit{{Span: l.Span, Text: text + meant}}}},
			})
		}
		for s := range statements(p) {
			first, other, differ := disagree(p, s)
			if differ && inRatio(first.Length.Length, other.Length.Length) {
				pass.Report(diag.Finding{
					Subject: s.subject,
					Span:    standing(s.at, first.Span),
					Message: fmt.Sprintf("%s is %s %s by %s, and %s by %s: is one of them in inches and the other in millimetres?", s.called,
						p.ShowSaid(first.Length), s.what, first.by, p.ShowSaid(other.Length), other.by),
					Notes: []diag.Note{{Span: other.Span, Message: "the other is stated here"}},
					Fixes: []diag.Fix{{Title: "write the unit behind the number that is in the other one"}},
				})
			}
		}
	},
}

// bareNumber is a number without a unit.
var bareNumber = regexp.MustCompile(`^[0-9.][0-9./ \t]*$`)

// inRatio reports whether one size is 25.4 times the other, to a hundredth.
func inRatio(a, b wood.Length) bool {
	a, b = max(a, b), min(a, b)
	if b <= 0 {
		return false
	}
	ratio := float64(a) / float64(b) / 25.4
	return ratio > 0.99 && ratio < 1.01
}

// outsideSizes ranges over the stated sizes of parts and tops and the outsides of assemblies, by the
// path of what each belongs to.
func outsideSizes(p *plan.Plan) iter.Seq2[string, plan.Length] {
	return func(yield func(string, plan.Length) bool) {
		ok := true
		say := func(of any, sizes ...plan.Length) {
			for _, l := range sizes {
				ok = ok && yield(plan.PathOf(of), l)
			}
		}
		for _, part := range p.Parts {
			if m := part.Of.Material.To; m == nil || m.Kind != plan.Veneer {
				say(part, part.Blank.Thick, part.Thick)
			}
			say(part, part.Blank.Long, part.Blank.Wide, part.Long, part.Wide)
		}
		for _, top := range p.Tops {
			say(top, top.Long, top.Wide, top.Thick)
		}
		for _, a := range p.Assemblies {
			say(a, a.Wide, a.High, a.Deep)
		}
	}
}
