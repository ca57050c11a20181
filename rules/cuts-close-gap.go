package rules

import (
	"fmt"
	"math"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var cutsCloseGap = &Rule{
	Name: "cuts-close-gap", Group: Making, Severity: diag.Warning,
	Summary: "the cuts that make a gap may together be further off than the gap is wide",
	Doc: `A reveal of 1/32 that is made of six cuts, each good to 1/64, is a matter of luck: at worst the cuts are three times as far
off as it is wide. Either the door binds, or everybody expects it to be fitted by hand and nobody left wood for that.

The chain is what makes the gap: what is cut to make the opening (what spans it between its shoulders, the housings that it stands
in, what is set out beside it, what else takes room there), and what is cut to fill it. Bought sheets keep their own thickness and do not count.
At worst all errors fall the same way; as they usually fall they come to the root of the sum of their squares. Where only the first is more than the
gap, fit the piece by hand; where both are, make the gap wider or the chain shorter.

It is checked where the shop says what it "cuts-to". The gap at the latch side takes all that a hung door is off; a drawer, a panel, a
back can stand in the middle of theirs.`,
	Sources: `Stacking of tolerances, worst case and root of the sum of squares: standard metrology practice, worked out.`,
	Sound: `A reveal that is wider than its cuts are off at worst; a drawer's front with a gap at each side, which are both there to take
the error; a sheet with the usual gap in its grooves; a reveal of 1/32 where the shop does not say what it cuts to.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
shop { cuts-to 1/64 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of oak 3/4
  joint dado deep 1/4
  across { side left ; down { top roof ; door only { leaf leaf-frame ; fit inset ; reveal 1/32 ; hang left } ; bottom floor } ; side right }
}
frame leaf-frame {
  thick 3/4
  joint tenon thick 1/4 long 1 1/4 shoulder 5/8
  across { stile hinge-side 2 ; down { rail head 2 1/2 ; space ; rail foot 2 1/2 } ; stile latch-side 2 }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
shop { cuts-to 1/64 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of oak 3/4
  joint dado deep 1/4
  across { side left ; down { top roof ; door only { leaf leaf-frame ; fit inset ; reveal 3/32 ; hang left } ; bottom floor } ; side right }
}
frame leaf-frame {
  thick 3/4
  joint tenon thick 1/4 long 1 1/4 shoulder 5/8
  across { stile hinge-side 2 ; down { rail head 2 1/2 ; space ; rail foot 2 1/2 } ; stile latch-side 2 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		if p.Shop.CutsTo.How != plan.Written || p.Shop.CutsTo.Length <= 0 {
			return
		}
		c := cutChains{made: make(map[cutPlace][]string)}
		for _, a := range p.Assemblies {
			for n := range a.Nodes() {
				worst := madeGap{}
				for _, g := range c.gaps(p, n) {
					if g.gap > 0 && (worst.gap == 0 || g.left(p) < worst.left(p)) {
						worst = g
					}
				}
				if worst.gap > 0 {
					reportGap(pass, n, worst)
				}
			}
		}
	},
}

// madeGap is a gap and the cuts that make it.
type madeGap struct {
	gap  wood.Length
	what string // reveal, latch side
	cuts []string
}

// off is how far its cuts may be off together, at worst and as they usually fall.
func (g madeGap) off(p *plan.Plan) (worst, likely wood.Length) {
	each, n := p.Shop.CutsTo.Length, len(g.cuts)
	return each * wood.Length(n), fraction(each, math.Sqrt(float64(n)))
}

// left is what is left of it at worst.
func (g madeGap) left(p *plan.Plan) wood.Length {
	worst, _ := g.off(p)
	return g.gap - worst
}

func reportGap(pass *Pass, n plan.Node, g madeGap) {
	p := pass.Plan
	worst, likely := g.off(p)
	if !wood.Under(g.gap, worst) {
		return
	}
	it := plan.It(n)
	each := p.ShowSaid(p.Shop.CutsTo)
	f := diag.Finding{
		Subject: plan.PathOf(n), Span: it.Span,
		Message: fmt.Sprintf("the %s of %s is %s, and the %d cuts that make it may be %s off together", g.what, titled(it), p.Show(g.gap), len(g.cuts), p.Show(worst)),
		Working: p.Paper().Start(g.gap, g.what).Minus(worst, fmt.Sprintf("%d cuts, each good to %s", len(g.cuts), each)).Equals("left at worst").
			Start(g.gap, g.what).Minus(likely, "by the root of the sum of their squares").Equals("left as they usually fall").
			Remark("the cuts: " + strings.Join(g.cuts, ", ")).Working(),
		Notes: []diag.Note{{Span: p.Shop.CutsTo.Span, Message: "how true the shop cuts is said here"}},
		Fixes: []diag.Fix{{Title: "leave it a little over, and fit it by hand"}},
	}
	if wood.Under(g.gap, likely) {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make the gap %s at least", p.Show(upTo(p, likely)))})
	} else {
		f.Severity = diag.Advice
		f.Message += ": fit it by hand"
	}
	pass.Report(f)
}

// cutChains knows the cuts by which cells come about.
type cutChains struct {
	made map[cutPlace][]string // of the lists that were met
}

type cutPlace struct {
	at   *plan.Item
	axis plan.Axis
}

// gaps are the gaps of what fills an opening, and what each is made of.
func (c *cutChains) gaps(p *plan.Plan, n plan.Node) []madeGap {
	var gaps []madeGap
	add := func(gap wood.Length, what string, axis plan.Axis, filling ...string) {
		if cell := plan.It(n).Cell[axis]; cell.Sized {
			gaps = append(gaps, madeGap{gap, what, append(c.cell(plan.It(n), axis), filling...)})
		}
	}
	switch n := n.(type) {
	case *plan.Door:
		for axis := plan.Across; axis <= plan.Down; axis++ {
			gap, what := revealsOf(n.Edges, axis, n.Hang.Is)
			if n.Fit.Kind.Is != "overlay" {
				add(gap, what, axis, leafCuts(n, axis)...)
			}
		}
	case *plan.Drawer:
		for axis := plan.Across; axis <= plan.Down; axis++ {
			gap, what := revealsOf(n.Edges, axis, "")
			if n.Fit.Kind.Is != "overlay" {
				add(gap, what, axis, "the front")
			}
		}
	case *plan.Panel:
		for axis := plan.Across; axis <= plan.Down; axis++ {
			s, ok := paneOf(n, axis)
			size := n.Size.Wide
			if n.Grain == axis {
				size = n.Size.Long
			}
			if ok && s.held() && size.Known() && (s.gap.How == plan.Written || s.said.How == plan.Written) {
				add(s.bottoms-size.Length, "gap from "+[...]string{"side to side", "top to bottom"}[axis], axis, "its groove at one side", "its groove at the other", "the "+n.Word)
			}
		}
	}
	return gaps
}

// revealsOf is the gap along an axis that takes all that is off there: beside the latch of what is hung
// on the other side; else both gaps together. It is nought where a neighbour shares it.
func revealsOf(edges [4]plan.Edge, axis plan.Axis, hang string) (gap wood.Length, what string) {
	near, far := edges[axis*2], edges[axis*2+1]
	if near.Shared || far.Shared || !near.Less.Known() || !far.Less.Known() {
		return 0, ""
	}
	switch hang {
	case [...]string{"left", "top"}[axis]:
		return far.Less.Length, "reveal at the latch side"
	case [...]string{"right", "bottom"}[axis]:
		return near.Less.Length, "reveal at the latch side"
	}
	return near.Less.Length + far.Less.Length, [...]string{"reveal of both sides", "reveal above and below"}[axis]
}

// leafCuts are the cuts that make a leaf's size along an axis.
func leafCuts(d *plan.Door, axis plan.Axis) []string {
	a := d.Leaf.Frame
	if a == nil || a.Root == nil || a.Root.Axis != axis {
		return []string{"the leaf"}
	}
	var cuts []string
	for _, n := range a.Root.Items {
		it := plan.It(n)
		if l, ok := n.(*plan.List); ok {
			if m := spans(l, axis); m != nil {
				it = &m.Item
			}
		}
		cuts = append(cuts, called(it))
	}
	return cuts
}

// cell are the cuts that make the room for a thing along an axis.
func (c *cutChains) cell(it *plan.Item, axis plan.Axis) []string {
	l := it.Parent
	switch {
	case l == nil && it.In == nil:
		return nil
	case l == nil:
		return []string{measure(it.In, axis)}
	case l.Axis != axis:
		return c.list(l, axis)
	case !it.Shared || l.Sum.Shares > it.Share.Or(1):
		return []string{called(it) + ", set out"}
	}
	cuts := c.list(l, axis)
	if len(l.Items) > mostShown {
		return append(cuts, "what stands beside it")
	}
	for _, n := range l.Items {
		if beside := plan.It(n); beside != it && !sheetAcross(n, axis) {
			cuts = append(cuts, called(beside))
		}
	}
	return cuts
}

// list are the cuts that make the room for a list: what is cut to span it, else those of its own cell.
func (c *cutChains) list(l *plan.List, axis plan.Axis) []string {
	key := cutPlace{&l.Item, axis}
	if cuts, ok := c.made[key]; ok {
		return cuts[:len(cuts):len(cuts)]
	}
	var cuts []string
	if m := spans(l, axis); m != nil {
		cuts = []string{called(&m.Item) + " between its shoulders"}
		for _, e := range m.Ends {
			switch e.Joint.Kind.Is {
			case plan.Housing, plan.Dado, plan.Rabbet, plan.SlidingDovetail:
				cuts = append(cuts, e.Joint.Kind.Is+" in "+matesOf(e))
			}
		}
	} else {
		cuts = c.cell(&l.Item, axis)
	}
	c.made[key] = cuts
	return cuts[:len(cuts):len(cuts)]
}

// spans is a member of a list that is cut to the whole of its room along an axis, across the list, and
// joined at both ends; nil where there is none.
func spans(l *plan.List, axis plan.Axis) *plan.Member {
	if l.Axis == axis {
		return nil
	}
	for _, n := range l.Items {
		m, ok := n.(*plan.Member)
		if ok && m.Grain == axis && m.Ends[0] != nil && m.Ends[1] != nil && m.Ends[0].Joint != nil && m.Ends[1].Joint != nil {
			return m
		}
	}
	return nil
}

// sheetAcross reports whether a thing takes room along an axis by the thickness of a bought sheet.
func sheetAcross(n plan.Node, axis plan.Axis) bool {
	m, ok := n.(*plan.Member)
	return ok && m.Flat == axis && m.Of.Material.To != nil && m.Of.Material.To.Kind != plan.Solid
}
