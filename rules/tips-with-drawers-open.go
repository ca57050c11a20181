package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	climber = &Figure{
		Name: "child", Why: "what hangs on the front of an open drawer", Basis: Published,
		Source: "60 lb (27 kg): the weight of the tests in ASTM F2057-23, as ASTM's own news of it says", Dim: lang.Weight, Number: 60 * wood.Pound,
	}
	tipsFrom = &Figure{
		Name: "high", Why: "how high a piece is from which it is judged", Basis: Published,
		Source: "27 in (686 mm): the scope of ASTM F2057-23", Dim: lang.Length, Length: 27 * wood.Inch, Metric: 686 * wood.Millimetre,
	}
)

var tipsWithDrawersOpen = &Rule{
	Name: "tips-with-drawers-open", Group: Structure, Severity: diag.Warning,
	Summary: "a chest falls forward when its drawers stand open and a child hangs on one",
	Doc: `Open drawers carry the weight of a chest out over its front feet. A child that climbs them adds its own, at the end of the longest lever. The
chest comes down on the child.

Anchor it to the wall. A deeper or heavier case, a shorter travel, and slides of which one opens at a time, help as well; none of them takes the
anchor's place. This is statics alone, about the front feet, with all drawers out to the "travel" of their slides, the loads that the plan
says, and 60 lb on the front that stands out farthest. It is not the test of any standard: those load the drawers, pull sideways, and
stand the chest as on carpet, so that what this rule does not report may still fall. Drawers whose slides say no travel count as shut; doors are not
counted, nor what stands on top. What a plan fixes to the wall is left to the wall and to the fixing, which are not judged. Unless it
holds clothes, the rule asks nothing of what has no drawer above another, nor of desks, tables, counters and kitchens (their "kind"): they
fall the same way, and are seldom climbed.`,
	Sources: `Statics. Weight of 60 lb, and height of 27 in: scope and news of ASTM F2057-23, Standard Safety Specification for Clothing Storage
Units, both from ASTM's pages. What woods and sheets weigh: Wood Handbook, FPL-GTR-190, 2010, chapters 4, 5 and 12.`,
	Sound: `The same chest fixed to the wall; one so low that a child does not climb it; one of which no slide says how far it runs;
a desk.`,
	Bad:     openedChest("", ""),
	Good:    openedChest("screw no10 { gauge 10 ; long 2 1/2 ; head round }\n", "fix chest to wall { screw no10 x 2 }\n"),
	Figures: []*Figure{climber, tipsFrom},
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range piecesIn(p, hasDrawers) {
			high := s.Outside[plan.Down]
			if !s.holds("clothes") && (s.Use.Is != "" && s.Use.Is != "shelves" || !s.stacked()) {
				continue
			}
			if !s.balanced || !high.Known() || wood.Under(high.Length, pass.Length(tipsFrom, s.subject)) || s.anchored() != nil {
				continue
			}
			if o := s.opened(p, pass.Number(climber, s.subject)); o != nil && o.falls(p) {
				reportOpened(pass, s, o)
			}
		}
	},
}

// openedChest is a chest of three drawers on slides, for what a rule shows.
func openedChest(supplies, fixed string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; heavy 40lb/ft3 ; emission "TSCA Title VI" }
slide full { kind side-mount ; long 16 ; room 1/2 ; travel 16 ; carries 75lb }
` + supplies + `case chest {
  wide 34 ; high 36 ; deep 18
  of oak 3/4
  joint housing deep 1/4
  each drawer {
    of oak 1/2 ; front oak 3/4 applied ; fit inset ; reveal 1/16 ; slide full ; holds books
    corner front dovetail slope 1:7 ; corner back dado deep 1/4
    bottom thin groove 1/4 x 1/4 up 1/2
  }
  across {
    side left
    down { top head ; drawer one ; shelf between ; drawer two ; shelf below ; drawer three ; bottom floor }
    side right
  }
}
` + fixed
}

// hasDrawers reports whether there may be drawers in a piece that is no bed: most have none.
func hasDrawers(a *plan.Assembly, _ []*plan.Member) bool {
	if isBed(a) {
		return false
	}
	for n := range a.Nodes() {
		switch n.(type) {
		case *plan.Drawer, *plan.Placed:
			return true
		}
	}
	return false
}

// opened is a chest with its drawers out, about its front feet. Turns are kilograms times nanometres.
type opened struct {
	drawers int
	held    float64     // kilograms: the case, without those drawers
	behind  wood.Length // from there to where it balances
	out     float64     // turns of the drawers, with their loads: above zero where they pull it forward
	child   float64     // kilograms
	front   *plan.Drawer
	reach   wood.Length // to the face that stands out farthest
}

func (o *opened) holds() float64 { return o.held * float64(o.behind) }
func (o *opened) pulls() float64 { return o.out + o.child*float64(o.reach) }

// falls reports whether it falls, as far as the figures that are shown tell.
func (o *opened) falls(p *plan.Plan) bool {
	return o.pulls() > o.holds() && turns(p, o.pulls()) != turns(p, o.holds())
}

// turns is how a message says turns.
func turns(p *plan.Plan, turns float64) string {
	return torque(p, turns/float64(wood.Metre)*wood.Gravity)
}

// opened opens the drawers of a piece; nil where none can be said to open, or something is not known.
func (s *onFloor) opened(p *plan.Plan, child float64) *opened {
	feet, known := s.feet()
	if !known {
		return nil
	}
	front := feet[0][1].From
	for _, foot := range feet {
		front = min(front, foot[1].From)
	}
	o := &opened{child: child, held: s.balance.Kilograms, reach: math.MinInt64}
	holds := s.balance.Kilograms * float64(s.balance.Centre[plan.Behind]-front)
	for _, w := range s.drawers() {
		d := w.Node.(*plan.Drawer)
		if d.Slide.To == nil || d.Slide.To.Travel.How == plan.Unknown {
			continue
		}
		travel, face := d.Slide.To.Travel, inPieceAt(w, plan.Behind, d.Face())
		shut, known := p.BalanceOf(d)
		lies := inPieceAt(w, plan.Behind, plan.Length{Length: shut.Centre[plan.Behind], How: plan.Derived})
		if !known || !travel.Known() || !face.Known() || !lies.Known() {
			return nil
		}
		at := lies.Length - front // behind the feet, shut
		o.drawers++
		o.held -= shut.Kilograms
		holds -= shut.Kilograms * float64(at)
		o.out += shut.Kilograms * float64(travel.Length-at)
		if load, _, said, ok := drawerHolds(p, d); said && ok {
			in, known := middleOfInside(d)
			if !known {
				return nil
			}
			o.out += load * float64(travel.Length-(face.Length+in-front))
		}
		if reach := front - face.Length + travel.Length; reach > o.reach {
			o.reach, o.front = reach, d
		}
	}
	if o.drawers == 0 || o.held <= 0 {
		return nil
	}
	o.behind = wood.Length(holds / o.held)
	return o
}

// middleOfInside is how far behind the face of a drawer the middle of its inside lies.
func middleOfInside(d *plan.Drawer) (wood.Length, bool) {
	_, deep, ok := drawerInside(d)
	in := deep / 2
	for _, front := range []*plan.BoxPart{d.Front, d.Inner} {
		if front != nil {
			in += front.Size.Thick.Length
			ok = ok && front.Size.Thick.Known()
		}
	}
	return in, ok
}

func reportOpened(pass *Pass, s *onFloor, o *opened) {
	p := pass.Plan
	drawers := "its open drawer"
	if o.drawers > 1 {
		drawers = fmt.Sprintf("its %d open drawers", o.drawers)
	}
	working := diag.Working{
		{Value: heft(p, o.held), Label: "what the case weighs without what opens"},
		{Op: diag.Times, Value: p.Tape.Nearest(o.behind), Label: "from its front feet back to where it balances"},
		{Op: diag.Equals, Value: turns(p, o.holds()), Label: "holds it"},
		{Value: heft(p, o.child), Label: "a child on the front of " + titled(&o.front.Item)},
		{Op: diag.Times, Value: p.Tape.Nearest(o.reach), Label: "from the front feet out to there"},
		{Op: diag.Equals, Value: turns(p, o.pulls()-o.out), Label: "is the child's pull"},
	}
	if o.out >= 0 {
		working = append(working, diag.Step{Op: diag.Plus, Value: turns(p, o.out), Label: drawers + ", with what the plan loads into them"})
	} else {
		working = append(working, diag.Step{Op: diag.Minus, Value: turns(p, -o.out), Label: drawers + ", which lie behind the feet still"})
	}
	working = append(working, diag.Step{Op: diag.Equals, Value: turns(p, o.pulls()), Label: "pulls it over"},
		diag.Step{Label: "statics on a hard level floor, not the test of a standard"})
	pass.Report(diag.Finding{
		Subject: s.subject,
		Span:    s.Name.Span,
		Message: fmt.Sprintf("%s falls forward with its drawers open and %s on one: about its front feet that pulls with %s, and its weight holds %s",
			s.called(), heft(p, o.child), turns(p, o.pulls()), turns(p, o.holds())),
		Working: about(working, s.balance.Weight),
		Fixes:   []diag.Fix{{Title: "anchor it with what is right for the wall: " + s.fixToWall()}},
	})
}
