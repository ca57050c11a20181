package rules

import (
	"fmt"

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
glued joint, of which a line of its own says where they stand, they are 9 to 10 in apart at most, with a pair near each end. Slats and
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
		for t := range joinedBy(pass.Plan, plan.Dowel) {
			few(pass, t)
		}
		for _, f := range pass.Plan.Fixes {
			if f.A.To == nil || len(f.Glue) == 0 {
				continue
			}
			for _, w := range f.With {
				if w.Word == "dowel" {
					farApart(pass, f, w, w.At)
					farApart(pass, f, w, w.Along)
				}
			}
		}
	},
}

// few reports an end that has too few dowels.
func few(pass *Pass, t tenon) {
	p, wide := pass.Plan, t.of.Size.Wide
	n, at, said := howMany(t.Joint)
	of := t.Joint.Hardware.To
	if !said || !wide.Known() || !t.of.Board() && !racked[t.of.Word] {
		return
	}
	if of != nil && of.Thick.Known() && wood.Under(wide.Length, 4*of.Thick.Length) {
		return // there is no room for two
	}
	least := int(pass.Number(dowelsLeast, t.subject))
	f := diag.Finding{Subject: t.subject, Span: at}
	if t.of.Board() {
		pitch := max(pass.Length(dowelPitch, t.subject), 1)
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
	if t.Joint.Count.Known() {
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `count %d`", least)}}
	}
	pass.Report(f)
}

// farApart reports the dowels of a glued joint that stand too far apart.
func farApart(pass *Pass, f *plan.Fixing, w *plan.FixingPart, places []plan.Length) {
	p, most := pass.Plan, pass.Length(dowelsApart, f.A.To.Path)
	apart, at, far := farthestApart(places)
	if !far || !wood.Over(apart, most) {
		return
	}
	pass.Report(diag.Finding{
		Subject: f.A.To.Path,
		Span:    at,
		Message: fmt.Sprintf("dowels stand %s apart in a glued joint: %s at most is wanted", p.Show(apart), p.Show(most)),
		Fixes:   []diag.Fix{{Title: "put another between them"}},
	})
}
