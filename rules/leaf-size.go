package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var leafSize = &Rule{
	Name: "leaf-size", Group: Lengths, Severity: diag.Error,
	Summary: "a door's leaf is not the size of its opening less the reveals",
	Doc: `One frame drawn for two doors fits both only if both openings are alike; a door whose size was taken before the
reveals were changed binds in its opening, or shows a gap on one side.

A leaf is its opening less one reveal at each side where a member stands, half of one between two doors, and what an overlay laps
is added. A frame that states no size takes it from the first opening that it fills; the others are held against it here, and so is
the width of a lid against its place less its gaps.

Change the opening, the reveals or the leaf; or draw the second leaf by itself, as a pattern that takes its width.`,
	Sources: `The sum is arithmetic.`,
	Sound: `One frame in two openings that differ by less than half a mark; a frame that states the size that its opening
gives; an overlay.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of oak 3/4
  each door { leaf leaf-frame ; fit inset ; reveal 1/16 }
  across { side left ; door near 19 { hang left } ; divider middle ; door far { hang right } ; side right }
}
frame leaf-frame x 2 {
  thick 3/4
  across { stile hinge-side 2 ; space ; stile latch-side 2 }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of oak 3/4
  each door { leaf leaf-frame ; fit inset ; reveal 1/16 }
  across { side left ; door near { hang left } ; divider middle ; door far { hang right } ; side right }
}
frame leaf-frame x 2 {
  thick 3/4
  across { stile hinge-side 2 ; space ; stile latch-side 2 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range p.Leaves() {
			if d.Board != nil {
				checkLidWide(pass, d)
				continue
			}
			for axis := plan.Across; axis <= plan.Down; axis++ {
				leaf, name, at := leafOn(d, axis)
				if !leaf.Known() || !d.Size[axis].Known() || rebated(d, axis) || agree(p, leaf.Length, d.Size[axis].Length) {
					continue
				}
				c := chain{axis: axis, paper: p.Paper()}
				c.leaf(d)
				if !wood.Same(c.paper.Result(), d.Size[axis].Length) {
					continue
				}
				c.equals("needed here")
				size := [...]string{"wide", "high"}[axis]
				f := diag.Finding{
					Subject: plan.PathOf(d),
					Span:    d.Leaf.Span,
					Message: fmt.Sprintf("%s is %s %s, but %s wants a leaf %s %s", name, exact(p, leaf.Length), size,
						titled(&d.Item), exact(p, d.Size[axis].Length), size),
					Working: c.paper.Versus(leaf.Length, "it is").Working(),
				}
				if leafMade(d) {
					f.Fixes = []diag.Fix{stillLeaf(p, leaf.Length-d.Size[axis].Length)}
				}
				if at.Known() {
					f.Notes = append(f.Notes, diag.Note{Span: at, Message: "its size is stated here"})
				} else if first, ok := filled(d); ok && first != d {
					f.Notes = append(f.Notes, diag.Note{Span: first.Span, Message: "it takes its size from " + titled(&first.Item)})
				}
				pass.Report(f)
			}
		}
	},
}

// checkLidWide holds the width that a lid states against the place between its gaps, where both are bounded. Its length is
// told as that of a board.
func checkLidWide(pass *Pass, d *plan.Door) {
	p, axis := pass.Plan, plan.Down
	if d.Board.Grain != plan.Across {
		axis = plan.Across
	}
	near, far, cell := d.Edges[axis*2], d.Edges[axis*2+1], d.Cell[axis]
	if !near.Less.Known() || !far.Less.Known() || !cell.Sized || !d.Size[axis].Known() || d.Board.Over != nil || !closed(&d.Item) ||
		plan.Neighbour(d, near.Side) == nil || plan.Neighbour(d, far.Side) == nil {
		return
	}
	paper := p.Paper().Start(cell.Size, "clear").Minus(near.Less.Length, edgeOf(near, d.Hang.Is)).Minus(far.Less.Length, edgeOf(far, d.Hang.Is)).Equals("needed here")
	wants := paper.Result()
	if agree(p, d.Size[axis].Length, wants) {
		return
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(d), Span: d.Span,
		Message: fmt.Sprintf("%s is %s wide but must be %s", titled(&d.Item), exact(p, d.Size[axis].Length), exact(p, wants)),
		Working: paper.Versus(d.Size[axis].Length, "it is").Working(),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make it %s wide, or its gaps wider or narrower", p.Show(wants))}},
	})
}

// rebated reports whether a leaf laps the one that it meets, so that it is wider than its share.
func rebated(d *plan.Door, axis plan.Axis) bool {
	return d.Meeting.Is == "rebated" && (d.Edges[axis*2].Shared || d.Edges[axis*2+1].Shared)
}

// leafMade reports whether what a door has for a leaf is cut already.
func leafMade(d *plan.Door) bool {
	return d.Leaf.Frame != nil && d.Leaf.Frame.Made.On || d.Leaf.Part != nil && d.Leaf.Part.Made.On
}

// leafOn is how wide or high the frame or the part is that a door has for a leaf, what it is called
// and where that is stated.
func leafOn(d *plan.Door, axis plan.Axis) (size plan.Length, name string, at diag.Span) {
	switch leaf := d.Leaf; {
	case leaf.Frame != nil:
		size = leaf.Frame.Outside[axis]
		if size.How == plan.Written {
			at = size.Span
		}
		return size, leaf.Frame.Kind.String() + " " + quote(leaf.Frame.Name.Text), at
	case leaf.Part != nil:
		upright := leaf.GrainSaid.Is != "across"
		size = leaf.Part.Size.Wide
		if (axis == plan.Down) == upright {
			size = leaf.Part.Size.Long
		}
		return size, titled(&leaf.Part.Item), size.Span
	}
	return plan.Length{}, "", diag.Span{}
}

// filled is the door from which a door's frame takes its size.
func filled(d *plan.Door) (*plan.Door, bool) {
	if d.Leaf.Frame == nil {
		return nil, false
	}
	first, ok := d.Leaf.Frame.Filled.(*plan.Door)
	return first, ok
}
