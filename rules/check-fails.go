package rules

import (
	"fmt"
	"strconv"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var checkFails = &Rule{
	Name: "check-fails", Group: Hygiene, Severity: diag.Error,
	Summary: "a relation that the plan asks for does not hold",
	Doc: `A "check" says what must hold for the piece to serve: the amplifier goes in, the slab stands clear of the posts. When a
size is changed somewhere else, nobody works that sum through once more.

The finding adds up both sides as they stand now. Change the size that is wrong, or the check where it asks for more than the
piece needs. Two sizes may differ by half a mark of the tape and still be "=="; "within 1/16" sets how far.`,
	Sources: "The sum is arithmetic; what must hold is the maker's own.",
	Sound: `Sums that differ by less than half a mark, one that holds by nothing to spare, and one that leans on a size that nothing
fixes yet.`,
	Bad: `let shelf = 12
let lip   = 3/4
check "records stand upright" shelf - lip >= 12 1/2
`,
	Good: `let shelf = 13 1/4
let lip   = 3/4
check "records stand upright" shelf - lip >= 12 1/2
`,
	Check: func(pass *Pass) {
		for _, c := range pass.Plan.Checks {
			if c.Known && !c.Holds {
				pass.Report(diag.Finding{
					Subject: c.Subject,
					Span:    c.Said.Span,
					Message: fmt.Sprintf("%s does not hold: %s", quote(c.Why.Text), comes(pass.Plan, c)),
					Working: bothSides(pass.Plan, c),
				})
			}
		}
	},
}

// asked and wanted say what each comparison asks of its left side: before the figure, and
// behind it.
var (
	asked = map[lang.Op]string{
		lang.Same: "", lang.Differs: "anything but ",
		lang.Below: "less than ", lang.AtMost: "at most ",
		lang.Above: "more than ", lang.AtLeast: "at least ",
	}
	wanted = map[lang.Op]string{
		lang.Same: "wanted", lang.Differs: "not wanted",
		lang.Below: "wanted, less than this", lang.AtMost: "wanted at most",
		lang.Above: "wanted, more than this", lang.AtLeast: "wanted at least",
	}
)

// comes says what the sides come to, and by how much they miss.
func comes(p *plan.Plan, c *plan.Check) string {
	s := fmt.Sprintf("it comes to %s, and %s%s is wanted", shown(p, c.Left), asked[c.Said.Op], shown(p, c.Right))
	left, right, ok := lengths(c)
	switch gap := (left - right).Abs(); {
	case !ok || wood.Same(gap, 0):
		return s
	case left < right:
		return s + ": " + p.Show(gap) + " too little"
	default:
		return s + ": " + p.Show(gap) + " too much"
	}
}

// lengths are the two sides of a check, where they are sizes or plain numbers.
func lengths(c *plan.Check) (left, right wood.Length, ok bool) {
	left, ok = c.Left.Length()
	right, also := c.Right.Length()
	return left, right, ok && also
}

// bothSides sets both sides of a check down as sums. Sides that are no lengths have none.
func bothSides(p *plan.Plan, c *plan.Check) diag.Working {
	left, right, ok := lengths(c)
	if !ok {
		return nil
	}
	paper := p.Paper()
	if !side(paper, c.Terms[0], left, "in all") {
		return nil
	}
	if only := c.Terms[1]; len(only) == 1 && !only[0].Minus {
		label := wanted[c.Said.Op]
		if !numeral(only[0].Said) {
			label += ": " + only[0].Said
		}
		return paper.Versus(right, label).Working()
	}
	if !side(paper, c.Terms[1], right, wanted[c.Said.Op]) {
		return nil
	}
	return paper.Versus(left, "there is").Working()
}

// numeral reports whether a term is a number, so that it has no name worth showing.
func numeral(said string) bool { return said != "" && said[0] >= '0' && said[0] <= '9' }

// side adds up one side of a check, and reports whether that could be done.
func side(paper *plan.Paper, terms []plan.Term, total wood.Length, result string) bool {
	for i, t := range terms {
		l, ok := t.Value.Length()
		label := t.Said
		if numeral(label) {
			label = ""
		}
		switch {
		case !ok:
			return false
		case t.Minus && i > 0:
			paper.Minus(l, label)
		case t.Minus:
			paper.Start(-l, label)
		case i == 0:
			paper.Start(l, label)
		default:
			paper.Plus(l, label)
		}
	}
	if len(terms) > 1 {
		paper.Equals(result)
	}
	return wood.Same(paper.Result(), total)
}

// shown is a value as a maker reads it.
func shown(p *plan.Plan, v plan.Value) string {
	if l, ok := v.Length(); ok {
		return p.Show(l)
	}
	n := strconv.FormatFloat(v.Float64(), 'g', 5, 64)
	unit := map[lang.Dim]string{
		lang.Percent: "%", lang.Angle: "deg", lang.Temperature: "C", lang.Weight: "kg", lang.Force: "N",
		lang.Torque: "Nm", lang.Pressure: "Pa", lang.LineLoad: "kg/m", lang.Density: "kg/m3", lang.Time: "s",
	}[v.Dim]
	return n + unit
}
