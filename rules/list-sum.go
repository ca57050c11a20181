package rules

import (
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var listSum = &Rule{
	Name: "list-sum", Group: Lengths, Severity: diag.Error,
	Summary: "what stands in a list is more, or less, than there is room for",
	Doc: `Sizes that are each true can still not all be true together: the sides, openings and dividers of a cabinet
must add up to its width. What is over by the thickness of one board is usually a board that was forgotten; what is over by
half of it, a size measured to a middle line.

Change the size that is wrong, or leave one opening without a number: it then takes what is left. "space" stands for a place
with nothing in it.`,
	Sources: `The sum is arithmetic. Measuring everything from one start: W. Noyes, Handwork in Wood, 1910, ch. IX, principle 1.`,
	Sound: `Sizes that add up but for less than half a mark of the tape, in three places that do not divide evenly; an opening
that takes what is left, however little.`,
	Bad: `case books {
  wide 33 ; high 36 ; deep 11
  of pine 3/4
  across { side left ; open near 15 5/8 ; divider middle ; open far 15 5/8 ; side right }
}
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
`,
	Good: `case books {
  wide 33 ; high 36 ; deep 11
  of pine 3/4
  across { side left ; open near 15 3/8 ; divider middle ; open far 15 3/8 ; side right }
}
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for l := range plan.AllOf[*plan.List](p) {
			over := l.Sum.Fixed - l.Sum.Whole
			where := along(l)
			f := diag.Finding{Subject: plan.PathOf(l), Span: l.Span}
			switch l.Sum.State {
			case plan.TooMuch:
				f.Message = fmt.Sprintf("what stands %s adds up to %s, %s more than there is room for",
					where, p.Show(l.Sum.Fixed), exact(p, over))
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("take %s off one of these sizes, or leave an opening without a number", p.Show(over))}}
			case plan.TooLittle:
				f.Message = fmt.Sprintf("what stands %s adds up to %s, %s less than there is room for",
					where, p.Show(l.Sum.Fixed), exact(p, -over))
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("add %s to one of these sizes, leave an opening without a number, or say `space` where nothing stands", p.Show(-over))}}
			case plan.NothingLeft:
				f.Message = fmt.Sprintf("nothing is left for %s: the rest of what stands %s takes %s of %s",
					waiting(l), where, p.Show(l.Sum.Fixed), p.Show(l.Sum.Whole))
			default:
				continue
			}
			if l.Sum.State != plan.NothingLeft && agree(p, over, 0) {
				continue
			}
			f.Working, f.Notes = sumOf(p, l), wholeAt(l)
			pass.Report(f)
		}
	},
}

// along says which list is meant: `across books`.
func along(l *plan.List) string {
	return [...]string{"across ", "down ", "front to back in "}[l.Axis] + plan.PathOf(l.In)
}

// waiting names what would share what is left.
func waiting(l *plan.List) string {
	const most = 3
	var names []string
	for _, n := range l.Items {
		it := plan.It(n)
		if !it.Shared || slices.Contains(names, called(it)) {
			continue
		}
		if len(names) == most {
			names = append(names, "others")
			break
		}
		names = append(names, called(it))
	}
	return strings.Join(names, ", ")
}

// sumOf shows how a list's room comes about, unless that is one size, and what stands in it.
func sumOf(p *plan.Plan, l *plan.List) diag.Working {
	const name = "room for this list"
	paper := room(p, l, l.Axis, name)
	label := name
	if lines := paper.Working(); len(lines) == 1 {
		paper, label = p.Paper(), lines[0].Label
	}
	first := true
	for s := range sizesIn(l) {
		switch {
		case s.shared:
		case first:
			paper.Start(s.size, s.label)
			first = false
		default:
			paper.Plus(s.size, s.label)
		}
	}
	return paper.Equals("in all").Versus(l.Sum.Whole, label).Working()
}

// wholeAt points at where a list's room is stated.
func wholeAt(l *plan.List) []diag.Note {
	said := l.Along
	if l.Parent == nil {
		said = [...]plan.Length{l.In.Wide, l.In.High, l.In.Deep}[l.Axis]
	}
	if !said.Span.Known() || !wood.Same(said.Length, l.Sum.Whole) {
		return nil
	}
	return []diag.Note{{Span: said.Span, Message: "the room is stated here"}}
}
