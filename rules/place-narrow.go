package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var perSeat = &Figure{
	Name: "seat", Why: "how much of a bench one sitter takes", Basis: SecondHand,
	Source: "18 in (457 mm): International Building Code, 1004.4, on seats without arms, from a page that quotes it", Dim: lang.Length, Length: 18 * wood.Inch, Metric: 457 * wood.Millimetre,
}

var placeNarrow = &Rule{
	Name: "place-narrow", Group: Structure, Severity: diag.Advice,
	Summary: "more are to sit at a table, or on a bench, than there is room for",
	Doc: `Who has less than 24 of the edge of a table sits with an elbow in the neighbour's plate.

Make the top longer, or say fewer "places". The rule counts how many times 24 goes into each edge of the top, on all four sides of a table or a counter
and on the two long ones of a desk, as if nobody met at the corners and no leg were in the way: so it asks for less than is comfortable. A bench has 18 for
each.`,
	Sources: `As the figures say.`,
	Sound:   `Four at a top of 48 x 24; six at one of 60 x 34, with one at each end; three on a bench of 54.`,
	Bad:     dinner(29, "places 8"),
	Good:    dinner(29, "places 6"),
	Figures: []*Figure{perPlace, perSeat},
	Check: func(pass *Pass) {
		for s := range satAt(pass) {
			checkPlaces(pass, s)
		}
	},
}

func checkPlaces(pass *Pass, s *onFloor) {
	p, tops := pass.Plan, s.surfaces()
	if !s.Places.Known() || len(tops) == 0 || !tops[0].at[0].Known() || !tops[0].at[1].Known() {
		return
	}
	top, each := tops[0], pass.Length(perPlace, s.subject)
	if s.Use.Is == "bench" || s.Use.Is == "chair" {
		each = pass.Length(perSeat, s.subject)
	}
	long, wide := top.at[0].Size, top.at[1].Size
	if !top.long() {
		long, wide = wide, long
	}
	if each <= 0 || long <= 0 || wide <= 0 {
		return
	}
	along, ends := top.places(s, each, p.Tape.Tolerance())
	if s.Places.N <= along+ends {
		return
	}
	sides := 2
	if s.Use.Is == "bench" || s.Use.Is == "chair" {
		sides = 1
	}
	working := diag.Working{
		{Value: p.Show(long), Label: "length of " + called(&top.of.Item)},
		{Op: diag.Over, Value: p.Show(each), Label: "for each"},
		{Op: diag.Equals, Value: itoa(along / sides), Label: "whole places along it"},
	}
	if sides == 2 {
		working = append(working, diag.Step{Op: diag.Times, Value: "2", Label: "edges"}, diag.Step{Op: diag.Equals, Value: itoa(along), Label: "at the long edges"})
	}
	if ends > 0 {
		working = append(working, diag.Step{Op: diag.Plus, Value: itoa(ends), Label: "at the ends, " + p.Show(wide) + " wide"}, diag.Step{Op: diag.Equals, Value: itoa(along + ends), Label: "in all"})
	}
	working = append(working, diag.Step{Op: diag.Versus, Value: itoa(s.Places.N), Label: "are to sit there"})
	want := each * wood.Length((s.Places.N-ends+sides-1)/sides)
	pass.Report(diag.Finding{
		Subject: s.subject, Span: standing(s.Name.Span, s.Places.Span),
		Message: fmt.Sprintf("%s is for %d, and %s of %s x %s has room for %d", s.called(), s.Places.N, titled(&top.of.Item), p.Show(long), p.Show(wide), along+ends),
		Working: working,
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make it %s long, or say `places %d`", p.Show(want), along+ends)}},
	})
}
