package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	dowelsLeast = &Figure{
		Name: "least", Why: "how many dowels a joint has at least", Basis: Practice,
		Source: "two: on one alone a part turns", Dim: lang.Plain, Number: 2,
	}
	dowelPitch = &Figure{
		Name: "pitch", Why: "how far apart the dowels in the end of a case's board are at most", Basis: SecondHand,
		Source: "6 in: one, and another for each 6 in begun", Dim: lang.Length, Length: 6 * wood.Inch, Metric: 150 * wood.Millimetre,
	}
	dowelsApart = &Figure{
		Name: "apart", Why: "how far apart the dowels of a long glued joint are at most", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, Dowelling: 9 to 10 in", Dim: lang.Length, Length: 10 * wood.Inch, Metric: 254 * wood.Millimetre,
	}
)

var fewDowels = &Rule{
	Name: "few-dowels", Group: Joints, Severity: diag.Warning,
	Summary: "a joint has too few dowels for its width",
	Doc: `On a single dowel a rail turns as on a pivot; a wide shelf on two dowels cups between them, and its front edge stands open.

Give the end of a rail two dowels at least, and that of a case's board one and another for each 6 in (150 mm) of its width begun. In a long
glued joint, of which a line of its own says "at" where they stand, they are 9 to 10 in apart at most, with a pair near each end. Slats and
other sticks that fill a frame may have one, and so may a stick too narrow for two.`,
	Sources: `See the figures.`,
	Sound: `Three dowels in a shelf 11 1/4 deep; two in a rail; one in the end of a slat, and in a rail of an inch; dowels 10 apart
along a glued edge.`,
	Bad: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 11 1/4
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 9/16 own 1 count 2 } ; open }
    side right 3/4
  }
}
`,
	Good: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 11 1/4
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 9/16 own 1 count 3 } ; open }
    side right 3/4
  }
}
`,
	Figures: []*Figure{dowelsLeast, dowelPitch, dowelsApart},
	Check: func(pass *Pass) {
		for m, e := range joinedBy(pass.Plan, plan.Dowel) {
			few(pass, m, e)
		}
		for _, f := range pass.Plan.Fixes {
			if f.A.To == nil || len(f.Glue) == 0 {
				continue
			}
			for _, w := range f.With {
				if w.Word == "dowel" {
					farApart(pass, f, w)
				}
			}
		}
	},
}

// few reports an end that has too few dowels.
func few(pass *Pass, m *plan.Member, e *plan.End) {
	p, subject, wide := pass.Plan, plan.PathOf(m), m.Size.Wide
	n, at, said := howMany(e.Joint)
	of := e.Joint.Hardware.To
	if !said || !wide.Known() || !m.Board() && !racked[m.Word] {
		return
	}
	if of != nil && of.Thick.Known() && wood.Under(wide.Length, 4*of.Thick.Length) {
		return // there is no room for two
	}
	least := int(pass.Number(dowelsLeast, subject))
	f := diag.Finding{Subject: subject, Span: at}
	if m.Board() {
		pitch := max(pass.Length(dowelPitch, subject), 1)
		spaces := int((wide.Length - wood.Slack + pitch - 1) / pitch)
		if least = max(least, 1+spaces); n < least && spaces > 1 {
			f.Working = diag.Working{
				{Value: p.Show(wide.Length), Label: "wide"},
				{Op: diag.Over, Value: p.Show(pitch), Label: "apart at most"},
				{Op: diag.Equals, Value: itoa(spaces), Label: "spaces, rounded up"},
				{Op: diag.Plus, Value: "1", Label: "at the beginning"},
				{Op: diag.Equals, Value: itoa(spaces + 1), Label: "dowels"},
				{Op: diag.Versus, Value: itoa(n), Label: "stated"},
			}
		}
	}
	if n >= least || n < 1 {
		return
	}
	switch {
	case n == 1:
		f.Message = fmt.Sprintf("on one dowel a part turns: %d are wanted in a joint %s wide", least, p.Show(wide.Length))
	default:
		f.Message = fmt.Sprintf("%d dowels are few in a joint %s wide: %d are wanted", n, p.Show(wide.Length), least)
	}
	if e.Joint.Count.Known() {
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `count %d`", least)}}
	}
	pass.Report(f)
}

// farApart reports the dowels of a glued joint that stand too far apart.
func farApart(pass *Pass, f *plan.Fixing, w *plan.FixingPart) {
	p := pass.Plan
	var at []wood.Length
	for _, l := range w.At {
		if !l.Known() {
			return
		}
		at = append(at, l.Length)
	}
	slices.Sort(at)
	most := pass.Length(dowelsApart, f.A.To.Path)
	for i := 1; i < len(at); i++ {
		if !wood.Over(at[i]-at[i-1], most) {
			continue
		}
		pass.Report(diag.Finding{
			Subject: f.A.To.Path,
			Span:    w.Span,
			Message: fmt.Sprintf("dowels at %s and %s are %s apart in a glued joint: %s at most is wanted", p.Show(at[i-1]), p.Show(at[i]), p.Show(at[i]-at[i-1]), p.Show(most)),
			Working: p.Paper().Start(at[i], "to the one").Minus(at[i-1], "to the other").Equals("apart").Versus(most, "at most").Working(),
			Fixes:   []diag.Fix{{Title: "put another between them"}},
		})
		return
	}
}
