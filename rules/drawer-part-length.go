package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var drawerPartLength = &Rule{
	Name: "drawer-part-length", Group: Lengths, Severity: diag.Error,
	Summary: "a part of a drawer is cut to a length that its corners do not give",
	Doc: `The commonest slip in a cutting list: sides taken at the full depth of the drawer, though its front laps them. The
drawer then stands out of its opening by the lap, or does not close.

With through dovetails or fingers the sides are as long as the box is deep, and front and back as long as it is wide. A
half-blind front takes its lap off the sides; a front that is rabbeted to take them, what the rabbet leaves; a front that lies before
the sides, its whole thickness. A back in dadoes is as long as is clear between the sides, and both dadoes.

Write the length that the working ends with, or leave "cut" out: the cutting list prints it.`,
	Sources: `The sums are arithmetic; forms of the corners: W. Noyes, Handwork in Wood, 1910, Drawers.`,
	Sound: `A half-blind front with sides shorter by the lap and a back in dadoes; through dovetails with sides of the full
depth, and with 1/16 left on at each end; a rabbeted front.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 10 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20
      corner front dovetail slope 1:7 lap 1/4 ; corner back dado deep 1/4
      side cut 20
    }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case chest {
  wide 21 ; high 10 ; deep 22
  of oak 3/4
  across {
    side left
    drawer only {
      of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; deep 20
      corner front dovetail slope 1:7 lap 1/4 ; corner back dado deep 1/4
      side cut 19 3/4
    }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		seen := make(map[saying]bool)
		for d := range plan.AllOf[*plan.Drawer](p) {
			for _, part := range []struct {
				*plan.BoxPart
				what    string
				working func(*plan.Plan, *plan.Drawer) *plan.Paper
			}{
				{d.Left, "the sides of ", drawerSide},
				{d.Back, "the back of ", drawerBack},
				{d.Front, "the front of ", drawerFront},
			} {
				if part.BoxPart == nil || part.Cut.How != plan.Written || !part.Size.Long.Known() ||
					agree(p, part.Cut.Length, part.Size.Long.Length) || again(seen, part.Cut.Span, d.In) {
					continue
				}
				needed := part.Size.Long.Length
				if more := part.Cut.Length - needed; more > 0 && !wood.Over(more, throughEnds(d, part.BoxPart)*cornerTrim.Length+p.Tape.Tolerance()) {
					continue // left on, to be planed flush
				}
				paper := part.working(p, d)
				if !wood.Same(paper.Result(), needed) {
					paper = p.Paper().Start(needed, "as the drawer is drawn")
				}
				is := " is"
				if part.BoxPart == d.Left {
					is = " are"
				}
				f := diag.Finding{
					Subject: plan.PathOf(d),
					Span:    part.Cut.Span,
					Message: fmt.Sprintf("%s%s%s cut %s but must be %s", part.what, titled(&d.Item), is,
						p.ShowSaid(part.Cut), exact(p, needed)),
					Working: paper.Equals("needed").Working(),
				}
				if d.Made.On {
					f.Fixes = stillBoard(p, part.Cut.Length-needed, "length", "cut", part.Cut.Span, needed, false, false)
				} else {
					f.Fixes = []diag.Fix{{Title: "write `cut " + cutTo(p, part.Cut.Span, needed) + "`"}}
				}
				pass.Report(f)
			}
			drawerOverAll(pass, d)
		}
	},
}

// throughEnds is at how many of its ends a side or a back shows on the other side of its mate.
func throughEnds(d *plan.Drawer, part *plan.BoxPart) wood.Length {
	n := wood.Length(0)
	for at, j := range drawerCorners(d) {
		if throughCorner(j) {
			switch part {
			case d.Left:
				n++
			case at:
				n += 2
			}
		}
	}
	return n
}

// drawerOverAll reports a stated depth of the box that its stated sides do not make.
func drawerOverAll(pass *Pass, d *plan.Drawer) {
	p := pass.Plan
	if d.Deep.How != plan.Written || d.Long.How != plan.Written {
		return
	}
	paper := p.Paper().Start(d.Deep.Length, "box over all, without an applied front")
	if !beyondSides(paper, d) || agree(p, paper.Result(), d.Long.Length) {
		return
	}
	needed := paper.Result()
	pass.Report(diag.Finding{
		Subject: plan.PathOf(d),
		Span:    d.Long.Span,
		Message: fmt.Sprintf("the sides of %s are %s long but must be %s in a box that is %s deep over all",
			titled(&d.Item), p.ShowSaid(d.Long), exact(p, needed), p.ShowSaid(d.Deep)),
		Working: paper.Equals("sides").Versus(d.Long.Length, "stated").Working(),
		Notes:   []diag.Note{{Span: d.Deep.Span, Message: "its depth is stated here"}},
		Fixes:   []diag.Fix{{Title: "leave `deep` or `long` out, and it follows from the other"}},
	})
}

// closing is the board that closes the box in front.
func closing(d *plan.Drawer) *plan.BoxPart {
	if d.Inner != nil {
		return d.Inner
	}
	return d.Front
}

// beyondSides takes what the front stands beyond the sides off the depth of the box, and
// reports whether that is known.
func beyondSides(paper *plan.Paper, d *plan.Drawer) bool {
	front := closing(d)
	if front == nil || !front.Size.Thick.Known() {
		return false
	}
	thick := front.Size.Thick.Length
	kind := ""
	if d.FrontJoint != nil {
		kind = d.FrontJoint.Kind.Is
	}
	switch kind {
	case plan.Dovetail:
		if lap := d.FrontJoint.Lap.Or(0).Length; lap > 0 {
			paper.Minus(lap, "lap of the front over the dovetails")
		}
	case plan.Rabbet:
		if !d.FrontJoint.Rabbet.Across.Known() {
			return false
		}
		paper.Minus(thick, "thickness of the front").Plus(d.FrontJoint.Rabbet.Across.Length, "rabbet in the front")
	case plan.BoxJoint, plan.Housing, plan.Dado, plan.SlidingDovetail:
	default:
		if d.Inner == nil { // with an applied front it stands between the sides
			paper.Minus(thick, "thickness of the front, which lies before the sides")
		}
	}
	return true
}

// drawerSide is the length of the sides, worked out from what the plan says of the box.
func drawerSide(p *plan.Plan, d *plan.Drawer) *plan.Paper {
	switch {
	case d.Long.Known():
		return p.Paper().Start(d.Long.Length, "sides, as stated for the drawer")
	case d.Deep.Known():
		paper := p.Paper().Start(d.Deep.Length, "box over all, without an applied front")
		beyondSides(paper, d)
		return paper
	case d.Slide.To != nil:
		return p.Paper().Start(d.Slide.To.Long.Length, "slide "+d.Slide.Name)
	}
	return p.Paper()
}

// drawerBack is the length of the back, from the opening to the box and between its sides.
func drawerBack(p *plan.Plan, d *plan.Drawer) *plan.Paper {
	paper := p.Paper()
	box := d.Box[plan.Across].Length
	switch opening := d.Cell[plan.Across]; {
	case d.Wide.Known():
		paper.Start(box, "box over its sides, as stated")
	case d.Slide.To != nil && d.Slide.To.Room.Known():
		room := d.Slide.To.Room.Length
		paper.Start(opening.Size, "opening "+plan.PathOf(d)).Minus(room, "room for the slide, left").
			Minus(room, "room for the slide, right").Equals("box over its sides")
	default:
		paper.Start(opening.Size, "opening "+plan.PathOf(d)).Minus(opening.Size-box, "room").Equals("box over its sides")
	}
	side := d.Left.Size.Thick.Length
	j := d.BackJoint
	kind := ""
	if j != nil {
		kind = j.Kind.Is
	}
	into := wood.Length(0)
	switch kind {
	case plan.Dovetail, plan.BoxJoint, plan.Rabbet:
		return paper
	case plan.Housing, plan.Dado, plan.SlidingDovetail:
		into = j.Deep.Length
	case plan.Tongue:
		into = j.Long.Length
	}
	paper.Minus(side, "left side").Minus(side, "right side")
	if into != 0 {
		paper.Plus(into, kind+" in the left side").Plus(into, kind+" in the right side")
	}
	return paper
}

// drawerFront is the length of the front that shows.
func drawerFront(p *plan.Plan, d *plan.Drawer) *plan.Paper {
	paper := p.Paper().Start(d.Cell[plan.Across].Size, "opening "+plan.PathOf(d))
	for _, e := range d.Edges {
		if e.Side.Axis() == plan.Across && e.Less.Length != 0 {
			paper.Minus(e.Less.Length, edgeOf(e, ""))
		}
	}
	return paper
}
