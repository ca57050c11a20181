package rules

// What the rules about cuts in space share: what a cut, the wood that it is in and its place are
// called, and how much wood each kind leaves.

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// cutName is what a message calls a cut: `the mortise for rail "head"`.
func cutName(c *plan.Cut) string {
	name, of := "the "+c.Kind.String(), " for "
	if c.Stands || c.For.End != nil && c.Use != nil && c.For.End.Of == plan.Node(c.Use) {
		of = " of "
	}
	switch f := c.For; {
	case f.End != nil:
		return name + of + titled(plan.It(f.End.Of))
	case f.Door != nil:
		return name + " for " + f.Hardware.Word + " " + quote(f.Hardware.Name)
	case f.Drawer != nil:
		return name + " of " + titled(&f.Drawer.Item)
	case f.Top != nil:
		return name + " of " + titled(&f.Top.Item)
	}
	return name
}

// blankName is what a message calls the wood that a cut is in.
func blankName(b *plan.Blank) string {
	switch of := b.Of.(type) {
	case *plan.Part:
		return titled(&of.Item)
	case *plan.BoxPart:
		return "the " + of.Name + " of " + titled(&of.Drawer.Item)
	case plan.BreadboardEnd:
		return "the breadboard ends of " + titled(&of.Top.Item)
	case *plan.Door:
		return "the leaf of " + titled(&of.Item)
	case plan.Node:
		return titled(plan.It(of))
	}
	return "it"
}

// blankSpan is where the wood that a cut is in is drawn.
func blankSpan(b *plan.Blank) diag.Span {
	switch of := b.Of.(type) {
	case *plan.Part:
		return of.Span
	case *plan.BoxPart:
		return of.Span
	case plan.BreadboardEnd:
		return of.Top.Breadboard.Span
	case plan.Node:
		return plan.It(of).Span
	}
	return diag.Span{}
}

// cutSubject is the path of what asks for a cut, by which it is allowed.
func cutSubject(c *plan.Cut) string {
	switch f := c.For; {
	case f.End != nil:
		return plan.PathOf(f.End.Of)
	case f.Door != nil:
		return plan.PathOf(f.Door)
	case f.Drawer != nil:
		return plan.PathOf(f.Drawer)
	case f.Top != nil:
		return plan.PathOf(f.Top)
	}
	return plan.PathOf(c.In.Of)
}

// buildOf is the build that made what asks for a cut; nil where the plan draws it itself. What each
// build makes is said for each, and folded.
func buildOf(c *plan.Cut) *plan.Build {
	if in := c.For.Drawn(); in != nil {
		return in.Build
	}
	return nil
}

// intoMate reports whether a cut is in what an end meets, not in the end itself.
func intoMate(c *plan.Cut) bool {
	if c.For.End == nil {
		return false
	}
	m, ok := c.For.End.Of.(*plan.Member)
	return !ok || m != c.Use
}

// section says where a cut goes in: how deep from which face, and between which lines beside that.
func section(p *plan.Plan, c *plan.Cut) string {
	name, face := cutName(c), c.FaceName(c.Enters)
	if c.Stands {
		name = fmt.Sprintf("%s stands out %s from the %s", name, p.Show(c.Deep().Length), face)
	} else if c.Through() {
		name = fmt.Sprintf("%s goes through from the %s", name, face)
	} else {
		name = fmt.Sprintf("%s goes %s deep in from the %s", name, p.Show(c.Deep().Length), face)
	}
	for _, d := range []plan.Dimension{plan.Wide, plan.Thick} {
		if d != c.Enters.Dimension() {
			e := c.At[d]
			name += fmt.Sprintf(", %s to %s from the %s", p.Show(e.From), p.Show(e.To()), c.FaceName(plan.Face(d*2)))
		}
	}
	return name
}

// whereAlong says between which lines of the wood's length two cuts lie beside each other.
func whereAlong(p *plan.Plan, a, b *plan.Cut) string {
	from := max(a.At[plan.Long].From, b.At[plan.Long].From)
	to := min(a.At[plan.Long].To(), b.At[plan.Long].To())
	end := a.FaceName(plan.NearEnd)
	if !wood.Over(to, from) {
		return fmt.Sprintf("%s from the %s", p.Show(to), end)
	}
	return fmt.Sprintf("%s to %s from the %s", p.Show(from), p.Show(to), end)
}

// hole reports whether a cut is a round hole for a pin, a screw or a bolt, or a slot for a biscuit.
func hole(c *plan.Cut) bool {
	switch c.Kind {
	case plan.CutDowel, plan.CutScrew, plan.CutBolt, plan.CutNut, plan.CutInsert, plan.CutBiscuit, plan.CutPeg, plan.CutMagnet, plan.CutPin:
		return true
	}
	return false
}

// bore reports whether a cut is what a hinge, a lock or its bolt is let into.
func bore(c *plan.Cut) bool {
	return c.Kind == plan.CutHingeBore || c.Kind == plan.CutLockBody || c.Kind == plan.CutKeeper
}

// socket reports whether a tenon or its haunch goes into a cut.
func socket(c *plan.Cut) bool {
	return c.Kind == plan.CutMortise || c.Kind == plan.CutHaunch && !c.Stands
}

// onePer gathers findings of which one line of the plan makes several that are alike, and keeps one of
// each: the one whose words come first, so that what is built in both hands says the same.
type onePer[K comparable] struct {
	at    map[K]int
	found []diag.Finding
}

func (o *onePer[K]) add(key K, f diag.Finding) {
	if o.at == nil {
		o.at = make(map[K]int)
	}
	i, again := o.at[key]
	switch {
	case !again:
		o.at[key] = len(o.found)
		o.found = append(o.found, f)
	case f.Message < o.found[i].Message:
		o.found[i] = f
	}
}

func (o *onePer[K]) report(pass *Pass) {
	for _, f := range o.found {
		pass.Report(f)
	}
}

// jointIs reports whether a cut belongs to a joint of one of some kinds.
func jointIs(c *plan.Cut, kinds ...string) bool {
	j := c.Joint()
	return j != nil && slices.Contains(kinds, j.Kind.Is)
}

// inClosedLists reports whether every list that a cut's place follows from adds up. Where one does
// not, that is said, and what it moved is not where it will be.
func inClosedLists(c *plan.Cut) bool {
	if c.Use != nil && !closed(&c.Use.Item) {
		return false
	}
	return c.For.End == nil || closed(plan.It(c.For.End.Of))
}

func closed(it *plan.Item) bool {
	for l := it.Parent; l != nil; l = l.Parent {
		switch l.Sum.State {
		case plan.TooMuch, plan.TooLittle, plan.NothingLeft:
			return false
		}
	}
	return true
}
