package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var setDiffers = &Rule{
	Name: "set-differs", Group: Lengths, Severity: diag.Error,
	Summary: "the parts of a set are not of one size",
	Doc: `Three legs of one length and one of another make a table that rocks, and two drawer fronts of two heights are seen across
the room. Duplicates are laid out together, from one stick.

Mend the part that differs; or say in which sizes the set agrees: "agree long, wide". A set that says only that its parts come from
one board, or match in their figure, need not be of one size.`,
	Sources: `W. Noyes, Handwork in Wood, 1910, ch. IX, principle 3: lay duplicates out together.`,
	Sound: `Fronts that agree in height and not in width, legs that differ by less than half a mark, and a set that is only
matched.`,
	Bad: `part leg x 3 { size 28 1/4 x 2 x 2 }
part last-leg { size 28 1/2 x 2 x 2 }
set "legs" { parts leg, last-leg }
`,
	Good: `part leg x 3 { size 28 1/4 x 2 x 2 }
part last-leg { size 28 1/4 x 2 x 2 }
set "legs" { parts leg, last-leg }
`,
	Check: func(pass *Pass) {
		for _, s := range pass.Plan.Sets {
			if s.Name.Text == "" {
				continue // that it has none was reported
			}
			if len(s.Agree) == 0 && (s.Board.Is != "" || s.Match.Is != "") {
				continue
			}
			agreed := []string{"long", "wide", "thick"}
			if len(s.Agree) > 0 {
				agreed = nil
				for _, c := range s.Agree {
					agreed = append(agreed, c.Is)
				}
			}
			for _, size := range agreed {
				checkSet(pass, s, size)
			}
		}
	},
}

// checkSet reports what differs from most of its set in one size.
func checkSet(pass *Pass, s *plan.Set, size string) {
	p := pass.Plan
	type entry struct {
		ref    plan.Ref[plan.Thing]
		length plan.Length
		times  int // how many there are that agree with it
	}
	var of []entry
	for _, ref := range s.Parts {
		if ref.To == nil {
			continue
		}
		if l := sizeOfThing(ref.To.Is, size); l.Known() {
			of = append(of, entry{ref: ref, length: l})
		}
	}
	// Each is held against the length that most have, of several as many the first.
	most := -1
	counts := make(map[wood.Length]int)
	for _, e := range of {
		counts[e.length.Length] += pieces(e.ref.To.Is)
	}
	for i, e := range of {
		of[i].times = counts[e.length.Length]
		if most < 0 || of[i].times > of[most].times {
			most = i
		}
	}
	for _, e := range of {
		rule := of[most]
		if agree(p, e.length.Length, rule.length.Length) {
			continue
		}
		f := diag.Finding{
			Subject: e.ref.To.Path,
			Span:    e.ref.Span,
			Message: fmt.Sprintf("%s is %s %s, but %s of set %s is %s", e.ref.Name, exact(p, e.length.Length), size,
				rule.ref.Name, quote(s.Name.Text), exact(p, rule.length.Length)),
		}
		if e.length.Span.Known() {
			f.Notes = append(f.Notes, diag.Note{Span: e.length.Span, Message: "stated here"})
		}
		pass.Report(f)
	}
}

// pieces is how many of a thing there are.
func pieces(thing any) int {
	switch t := thing.(type) {
	case *plan.Part:
		return t.Count.Or(1)
	case *plan.Assembly:
		return t.Count.Or(1)
	}
	return 1
}

// sizeOfThing is the long, wide or thick of a part, a front, a leaf or a frame.
func sizeOfThing(thing any, size string) plan.Length {
	of := func(s plan.Size3) plan.Length {
		switch size {
		case "long":
			return s.Long
		case "wide":
			return s.Wide
		}
		return s.Thick
	}
	switch t := thing.(type) {
	case *plan.Part:
		return of(t.Size)
	case *plan.Member:
		return of(t.Size)
	case *plan.Panel:
		return of(t.Size)
	case *plan.Glass:
		return of(t.Size)
	case *plan.BoxPart:
		return of(t.Size)
	case *plan.Drawer:
		if t.Front != nil {
			return of(t.Front.Size)
		}
	case *plan.Door:
		return of(plan.Size3{Long: t.Size[plan.Down], Wide: t.Size[plan.Across]})
	case *plan.Assembly:
		return of(plan.Size3{Long: t.Outside[plan.Down], Wide: t.Outside[plan.Across], Thick: t.Outside[plan.Behind]})
	case *plan.Placed:
		if t.Part.To != nil {
			return sizeOfThing(t.Part.To, size)
		}
	}
	return plan.Length{}
}
