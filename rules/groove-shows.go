package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var grooveShows = &Rule{
	Name: "groove-shows", Group: Joints, Severity: diag.Error,
	Summary: "the groove for a drawer's bottom does not run inside a tail",
	Doc: `The groove in the front runs out at both ends. Inside a tail the tail itself covers it; where it crosses a pin, there is a
square hole in the side of the finished drawer.

Move the groove ("up") until it lies inside one tail, or choose the pins so that a tail stands there. The tail is measured at its root, on the
inner side, where it is narrowest. At a grooved back it is a warning.`,
	Sources: `Geometry: the tails follow from the side's height, the pins, their narrow side and the slope, with half pins at both edges.`,
	Sound:   `A groove that just lies inside the lowest tail; one that crosses a pin of a back under which the bottom slides in.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 6 1/4 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20 ; high 6
      corner front dovetail slope 1:8 lap 1/4 pins 5 pin 1/4 ; corner back dado deep 1/4
      bottom thin groove 1/4 x 1/4 up 1/8
    }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 6 1/4 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20 ; high 6
      corner front dovetail slope 1:8 lap 1/4 pins 5 pin 1/4 ; corner back dado deep 1/4
      bottom thin groove 1/4 x 1/4 up 1/2
    }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Drawer](p) {
			for at, j := range drawerCorners(d) {
				c, row, wide, uncovered := uncoveredGroove(d, at, j)
				if !uncovered {
					continue
				}
				b := d.BottomAs
				f := diag.Finding{
					Subject: c.subject,
					Span:    b.Up.Span,
					Message: fmt.Sprintf("a groove %s wide that begins %s up is not covered by a tail: its hole shows at the ends of the %s", p.Show(wide), p.ShowSaid(b.Up), c.called),
					Notes:   []diag.Note{{Span: j.Pins.Span, Message: "the pins are said here"}},
				}
				if at == d.Back {
					f.Severity = diag.Warning
				}
				lowest := (row.place - row.root) / 2
				paper := c.working(p)
				paper.Start(lowest, "up to the lowest tail, at its root").Plus(row.root, "tail, at its root").Equals("up to where it ends")
				f.Working = paper.Versus(b.Up.Length, "up to the groove").Versus(b.Up.Length+wide, "up to where the groove ends").Working()
				if up := upTo(p, max(lowest, pass.Length(bottomGrooveUp, c.subject))); row.holds(up, up+wide) {
					f.Fixes = []diag.Fix{{Title: "write `up " + cutTo(p, b.Up.Span, up) + "`, or as much more as stays inside the tail"}}
				} else {
					f.Fixes = []diag.Fix{{Title: "take fewer or narrower pins, so that a tail is wider than the groove"}}
				}
				pass.Report(f)
			}
		}
	},
}

// uncoveredGroove reports whether the hole of the groove for a bottom shows at the ends of a board that
// closes the box: how the tails lie there, and how wide the groove is.
func uncoveredGroove(d *plan.Drawer, at *plan.BoxPart, j *plan.Joint) (c corner, row tailRow, wide wood.Length, shows bool) {
	b := d.BottomAs
	if b == nil || !b.Up.Known() || j.Kind.Is != plan.Dovetail || at == d.Back && !backGrooved(d) {
		return c, row, 0, false
	}
	groove := b.Groove.Across
	if !groove.Known() {
		groove = d.Bottom.Size.Thick
	}
	c = corner{j, plan.PathOf(d), d.Left.Size.Wide, d.Left.Size.Thick, at.Size.Thick, at.Name}
	row, ok := c.tails()
	return c, row, groove.Length, ok && groove.Known() && row.root > 0 && !row.holds(b.Up.Length, b.Up.Length+groove.Length)
}

// holds reports whether a groove lies inside one tail, measured from the lower edge.
func (t tailRow) holds(from, to wood.Length) bool {
	if t.place <= 0 || from < 0 {
		return false
	}
	place := from / t.place * t.place
	room := (t.place - t.root) / 2
	return !wood.Under(from, place+room) && !wood.Over(to, place+room+t.root)
}
