package rules

// What the rules about dovetails and fingers share: the corners at which boards meet end to end,
// of cases and of drawers' boxes.

import (
	"fmt"
	"iter"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// corner is a row of tails or fingers between two boards.
type corner struct {
	*plan.Joint
	subject string
	wide    plan.Length // of the boards: the row runs across it
	own     plan.Length // thickness of the board that goes into the other
	mate    plan.Length // thickness of the other, which keeps the lap of a half-blind one
	called  string      // the other: `front of drawer upper`
}

// corners ranges over the corners with one kind of joint, those of cases and then those of drawers.
func corners(p *plan.Plan, kind string) iter.Seq[corner] {
	return func(yield func(corner) bool) {
		for e := range ends(p) {
			m, ok := e.Of.(*plan.Member)
			if ok && e.Joint.Kind.Is == kind && len(e.Mates) > 0 &&
				!yield(corner{e.Joint, plan.PathOf(m), m.Size.Wide, m.Size.Thick, e.MateSize(), called(&e.Mates[0].Item)}) {
				return
			}
		}
		for d := range plan.AllOf[*plan.Drawer](p) {
			for at, j := range drawerCorners(d) {
				if j.Kind.Is == kind && !yield(corner{j, plan.PathOf(d), d.Left.Size.Wide, d.Left.Size.Thick, at.Size.Thick, at.Name + " of " + called(&d.Item)}) {
					return
				}
			}
		}
	}
}

// drawerCorners are the boards that close a drawer's box, and how the sides are joined to each.
func drawerCorners(d *plan.Drawer) iter.Seq2[*plan.BoxPart, *plan.Joint] {
	return func(yield func(*plan.BoxPart, *plan.Joint) bool) {
		if d.Left == nil {
			return
		}
		if front := closing(d); front != nil && d.FrontJoint != nil && !yield(front, d.FrontJoint) {
			return
		}
		if d.Back != nil && d.BackJoint != nil {
			yield(d.Back, d.BackJoint)
		}
	}
}

// tailRow is how tails lie across a board that has half pins at its edges: each stands in the
// middle of its place, wide at its tip and narrower at its root.
type tailRow struct {
	place      wood.Length // for a tail and a pin
	tip, root  wood.Length // of a tail; the same where no slope is said
	pin, space wood.Length // of a pin on its narrow and on its wide side
	sloped     bool
}

// tails works out the row of a dovetailed corner; ok is false where the plan does not say enough.
func (c corner) tails() (row tailRow, ok bool) {
	if !c.Pins.Known() || c.Pins.N < 2 || !c.Pin.Known() || !c.wide.Known() || c.Starts.Is == "tail" {
		return row, false
	}
	row.place = c.wide.Length / wood.Length(c.Pins.N-1)
	row.pin, row.space = c.Pin.Length, c.Pin.Length
	row.tip = row.place - row.pin
	row.root = row.tip
	if long := c.tailLong(); c.Slope.Known() && c.Slope.Value > 0 && long.Known() {
		flare := fraction(long.Length, c.Slope.Value)
		row.root -= 2 * flare
		row.space += 2 * flare
		row.sloped = true
	}
	return row, true
}

// tailLong is how long the tails are: as thick as the board with the pins, less the lap.
func (c corner) tailLong() plan.Length {
	pins := c.mate
	if t := c.Tails.To; t != nil && t.Path != c.subject && c.Lap.Or(0).Length == 0 {
		pins = c.own // the other board has the tails
	}
	if pins.Known() {
		pins.Length -= c.Lap.Or(0).Length
	}
	return pins
}

// working sets down how wide a tail is at its tip.
func (c corner) working(p *plan.Plan) *plan.Paper {
	return p.Paper().Start(c.wide.Length, "width of the board").
		Over(c.Pins.N-1, fmt.Sprintf("tails, between %d pins of which two are half ones", c.Pins.N)).
		Equals("for a tail and a pin").Minus(c.Pin.Length, "pin").Equals("tail")
}
