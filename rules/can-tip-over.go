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
	scopeWeight = &Figure{
		Name: "weight", Why: "what a piece weighs from which the standard for clothing storage covers it", Basis: Published,
		Source: "30 lb (13.6 kg): the scope of ASTM F2057-23", Dim: lang.Weight, Number: 30 * wood.Pound,
	}
	scopeVolume = &Figure{
		Name: "volume", Why: "how much is closed in from which that standard covers it, in cubic metres", Basis: Published,
		Source: "3.2 ft3 (0.0906 m3): the scope of ASTM F2057-23", Dim: lang.Plain, Number: 3.2 * cubicFoot,
	}
)

const cubicFoot = 0.3048 * 0.3048 * 0.3048 // cubic metres

var canTipOver = &Rule{
	Name: "can-tip-over", Group: Structure, Severity: diag.Advice,
	Summary: "storage for clothes can tip over onto a child, and a standard covers it",
	Doc: `Chests of drawers and wardrobes fall on small children who climb them. In the United States 16 CFR part 1261 makes ASTM F2057-23 binding for storage
for clothes with drawers or hinged doors, free-standing, from 27 inches high, 30 lb, and 3.2 cubic feet closed in; other countries have rules of
their own. Its tests are made on the finished piece: drawers loaded, several open, a pull as of a child, a weight of 60 lb, and the
tilt of a carpet. None of that can be read off a plan, and this notice is never a pass, nor is its absence.

Read the standard and the law of the place before you make it, and anchor it with what is right for the wall; where you cannot judge the wall, ask
someone who is licensed to. A plan says that a piece is for clothes by "holds clothes", or by a rod. Where it says of a chest of
nothing but drawers, one above another, neither that nor what else it is for, this asks, once: say "holds clothes", what it is for ("kind", "holds books"), or
allow this with the reason. The notice stays where the plan fixes the piece to the wall; allow it with what you read and did.`,
	Sources: `Scope and sizes: ASTM F2057-23, 1.1 and 1.2, as ASTM publishes them. Law: 16 CFR 1261.2. The volume is worked out as the guidance of the
Consumer Product Safety Commission has it: of a drawer its width, depth, and the height from its bottom to what is above, less 1/8 in; behind a door half of the
room there. What the tests are: the introduction of the standard, and ASTM's news of it.`,
	Sound: `A chest 26 high; drawers for tools, which say so; a sideboard with doors, which is for a dining room; drawers under a bed; a chest whose maker read the standard and says
so.`,
	Bad: clothesChest(""),
	Good: clothesChest(`
  allow can-tip-over "ASTM F2057-23 was read for it; it goes to be tested, and is anchored in the house"`),
	Figures: []*Figure{tipsFrom, scopeWeight, scopeVolume},
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range piecesIn(p, mayOpen) {
			n := s.scoped(p)
			if n == nil {
				continue
			}
			pass.Report(n.finding(p, s))
		}
	},
}

// clothesChest is a chest of two drawers, for what the rule shows.
func clothesChest(more string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; heavy 40lb/ft3 ; emission "TSCA Title VI" }
slide full { kind side-mount ; long 16 ; room 1/2 ; carries 75lb }
case chest {
  holds clothes` + more + `
  wide 34 ; high 36 ; deep 18
  of oak 3/4
  joint housing deep 1/4
  each drawer {
    of oak 1/2 ; front oak 3/4 applied ; fit inset ; reveal 1/16 ; slide full
    corner front dovetail slope 1:7 ; corner back dado deep 1/4
    bottom thin groove 1/4 x 1/4 up 1/2
  }
  across {
    side left
    down { top head ; drawer upper ; shelf between ; drawer lower ; bottom floor }
    side right
  }
}
`
}

// mayOpen reports whether there may be drawers or doors in a piece.
func mayOpen(a *plan.Assembly, tops []*plan.Member) bool {
	if isBed(a) { // the standard leaves out drawers under a bed
		return false
	}
	if hasDrawers(a, tops) {
		return true
	}
	for n := range a.Nodes() {
		if _, ok := n.(*plan.Door); ok {
			return true
		}
	}
	return false
}

// scope is a piece that the standard for clothing storage may cover. What is not known of it may be within.
type scope struct {
	clothes        bool // the plan says that they are what it is for
	drawers, doors int
	high           plan.Length
	weight         float64 // kilograms
	weighed        bool
	volume         float64 // cubic metres
	measured       bool
}

// scoped is a piece as the standard sees it; nil where it does not cover it.
func (s *onFloor) scoped(p *plan.Plan) *scope {
	c := &scope{clothes: s.holds("clothes") || s.hasRod(), high: s.Outside[plan.Down], measured: true}
	for _, w := range s.things {
		switch n := w.Node.(type) {
		case *plan.Drawer:
			c.drawers++
			c.encloses(roomInDrawer(n))
		case *plan.Door:
			if n.Hang.Is != "lift-out" {
				c.doors++
				c.encloses(s.roomBehind(w, n))
			}
		}
	}
	weight, weighed := s.balance.Weight, s.balanced
	if !weighed {
		weight, weighed = p.Weight(s.Assembly)
	}
	c.weight, c.weighed = weight.Kilograms, weighed
	out := c.high.Known() && wood.Under(c.high.Length, tipsFrom.in(p)) ||
		c.weighed && c.weight < scopeWeight.Number || c.measured && c.volume < scopeVolume.Number
	unknown := !c.high.Known() || !c.weighed || !c.measured && c.volume < scopeVolume.Number
	switch {
	case c.drawers+c.doors == 0 || out:
		return nil
	case !c.clothes && (unknown || c.doors > 0 || s.Use.Is != "" || s.holds("books") || !s.stacked()):
		return nil
	}
	return c
}

// encloses adds a volume, if it is known.
func (c *scope) encloses(cubicMetres float64, known bool) {
	c.volume += cubicMetres
	c.measured = c.measured && known
}

// roomInDrawer is the volume of a drawer, in cubic metres: from its bottom to the top of its opening, less 1/8 in.
func roomInDrawer(d *plan.Drawer) (float64, bool) {
	wide, deep, ok := drawerInside(d)
	high := d.Cell[plan.Down]
	if !ok || !high.Sized || d.Bottom == nil || !d.Bottom.Size.Thick.Known() {
		return 0, false
	}
	clear := high.Size - bottomUp(d).Or(0).Length - d.Bottom.Size.Thick.Length - wood.Inch/8
	return wide.Metres() * deep.Metres() * max(clear, 0).Metres(), true
}

// roomBehind is half of the room behind a door, in cubic metres, to the back of the piece.
func (s *onFloor) roomBehind(w plan.Within, d *plan.Door) (float64, bool) {
	at, deep := d.Cell, s.Outside[plan.Behind]
	front := inPieceAt(w, plan.Behind, plan.Length{Length: at[plan.Behind].From, How: plan.Derived})
	if !w.Faces() {
		deep, front = d.In.Outside[plan.Behind], plan.Length{Length: at[plan.Behind].From, How: plan.Derived}
	}
	thick := d.Thick()
	if d.Fit.Kind.Is == "overlay" {
		thick = plan.Length{How: plan.Derived}
	}
	if !at[plan.Across].Sized || !at[plan.Down].Sized || !at[plan.Behind].Placed || !deep.Known() || !front.Known() || !thick.Known() {
		return 0, false
	}
	room := max(deep.Length-front.Length-thick.Length, 0)
	return at[plan.Across].Size.Metres() * at[plan.Down].Size.Metres() * room.Metres() / 2, true
}

// hasRod reports whether clothes hang in a piece.
func (s *onFloor) hasRod() bool {
	return slices.ContainsFunc(s.things, func(w plan.Within) bool {
		space, ok := w.Node.(*plan.Space)
		return ok && len(space.Rods) > 0
	})
}

// stacked reports whether a drawer stands straight above another.
func (s *onFloor) stacked() bool {
	drawers := s.drawers()
	for i, upper := range drawers {
		for _, lower := range drawers[i+1 : min(len(drawers), i+1+mostNear)] {
			a, b := upper.Box(plan.It(upper.Node).Cell), lower.Box(plan.It(lower.Node).Cell)
			if shareRoom(a[plan.Across], b[plan.Across]) && !shareRoom(a[plan.Down], b[plan.Down]) {
				return true
			}
		}
	}
	return false
}

func (c *scope) finding(p *plan.Plan, s *onFloor) diag.Finding {
	high, weight, closed := p.Show(tipsFrom.in(p)), light(p, scopeWeight.Number), volume(p, scopeVolume.Number)
	covers, begins := "covers", p.Paper()
	if c.high.Known() {
		begins.Remark(fmt.Sprintf("it stands %s high: the standard begins at %s", p.Show(c.high.Length), high))
	} else {
		covers = "may cover"
		begins.Remark("how high it stands is not known from this plan: the standard begins at " + high)
	}
	if c.weighed {
		begins.Remark(fmt.Sprintf("it weighs about %s: from %s", heft(p, c.weight), weight))
	} else {
		covers = "may cover"
		begins.Remark("what it weighs is not known from this plan: from " + weight)
	}
	if c.measured {
		begins.Remark(fmt.Sprintf("its %s close in about %s, as the standard counts: from %s", c.opening(), volume(p, c.volume), closed))
	} else {
		covers = "may cover"
		begins.Remark(fmt.Sprintf("how much its %s close in is not known from this plan: from %s", c.opening(), closed))
	}
	begins.Remark(fmt.Sprintf("its tests load the drawers, open several, put %s on it, and tilt it as on carpet", heft(p, climber.Number)))

	f := diag.Finding{
		Subject: s.subject, Span: s.Name.Span, Working: begins.Working(),
		Message: fmt.Sprintf("%s is storage for clothes, and such a piece can tip over onto a child: ASTM F2057-23, by 16 CFR part 1261 the law in the United States, %s it, and none of its tests is made here",
			s.called(), covers),
	}
	mend := "read the standard, and the law of the place, before you make it"
	if !c.clothes {
		f.Message = fmt.Sprintf("%s has drawers one above another: if clothes go into it, it is of the kind that tips over onto a child, and ASTM F2057-23, by 16 CFR part 1261 the law in the United States, covers it",
			s.called())
		mend = "say `holds clothes` of it, or what else it is for; " + mend
	}
	if at := s.anchored(); at != nil {
		f.Notes = []diag.Note{{Span: at.Span, Message: "it is drawn fixed to the wall: whether this holds, in that wall and with the load, is not judged"}}
		mend += "; see that the fixing is right for that wall, and put it in before the piece is filled"
	} else {
		mend += "; anchor it with what is right for the wall: " + s.fixToWall()
	}
	f.Fixes = []diag.Fix{{Title: mend}}
	return f
}

// opening is what closes it in.
func (c *scope) opening() string {
	switch {
	case c.drawers == 0:
		return "doors"
	case c.doors == 0:
		return "drawers"
	}
	return "drawers and doors"
}

// volume is a volume as a message says it: `6.1 ft3`, `0.17 m3`.
func volume(p *plan.Plan, cubicMetres float64) string {
	if p.Tape.Metric {
		return significant(cubicMetres, 2) + " m3"
	}
	return significant(cubicMetres/cubicFoot, 2) + " ft3"
}
