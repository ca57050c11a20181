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
	cotGap = &Figure{
		Name: "slats", Why: "how far apart the slats, rods and posts of a cot are at most", Basis: Published,
		Source: "2 3/8 in (60 mm): the standards for cribs of the Consumer Product Safety Commission, in a table of the American Academy of Pediatrics",
		Dim:    lang.Length, Length: 19 * wood.Inch / 8, Metric: 60 * wood.Millimetre,
	}
	bunkHigh = &Figure{
		Name: "bunk", Why: "above which height of what carries its mattress a bed is a bunk bed", Basis: Published,
		Source: "30 in (760 mm), to its underside: 16 CFR 1213.2", Dim: lang.Length, Length: 30 * wood.Inch, Metric: 760 * wood.Millimetre,
	}
	guardGap = &Figure{
		Name: "gap", Why: "how far the guard rail that runs from end to end stands from an end at most", Basis: Published,
		Source: "0.22 in (5.6 mm): 16 CFR 1213.3 (a)(2)", Dim: lang.Length, Length: 22 * wood.Inch / 100, Metric: 56 * wood.Millimetre / 10,
	}
	guardOpen = &Figure{
		Name: "open", Why: "how far the other guard rail may stand from an end", Basis: Published,
		Source: "15 in (381 mm): summary of 16 CFR 1213 by the Consumer Product Safety Commission", Dim: lang.Length, Length: 15 * wood.Inch, Metric: 381 * wood.Millimetre,
	}
	guardHigh = &Figure{
		Name: "guard", Why: "how far the top of a guard rail stands above the mattress at least", Basis: Published,
		Source: "5 in (127 mm): summary of 16 CFR 1213 by the Consumer Product Safety Commission", Dim: lang.Length, Length: 5 * wood.Inch, Metric: 127 * wood.Millimetre,
	}
)

var bedForChildren = &Rule{
	Name: "bed-for-children", Group: Structure, Severity: diag.Advice,
	Summary: "a cot or a bunk bed has its own law, and is not judged here",
	Doc: `A child's head goes through a gap where its body went, and hangs there; a child rolls off a bunk, or is caught between guard and mattress. Beds
for small children, and beds high above the floor, are made by standards with the force of law, and tested: in the United
States cots by 16 CFR parts 1219 (full-size) and 1220 (others), bunk beds by 16 CFR parts 1213 and 1513; other countries have rules of their own.

Read them, and the law of the place, before you make one. This notice sets a few of their figures beside those of the plan, where the plan says
enough; it does not know the rest, and makes none of the tests. It is never a pass: a figure that is not named here, or is within what the
rules want, has not been found good. The rule looks at what is of the "kind cot" or "kind bunk", and at a "kind bed" whose mattress lies so
high that it is a bunk bed. Guard rails are those that say "guard"; how high the mattress comes is said by "holds mattress 38 x 75 thick 6".`,
	Sources: `Bunk beds: 16 CFR 1213.2 and 1213.3, and the summary of requirements by the Office of Compliance of the Consumer Product Safety Commission. Gaps of
cots: a table of that commission's standards for cribs, published by the American Academy of Pediatrics; 16 CFR 1508.4, which stood before parts 1219 and 1220, has the
same figure as a page quotes it. What those parts say now (ASTM F1169 and F406) was not seen.`,
	Sound: `A low bed for grown people, whatever its slats; a cot whose maker read the rules, and says so.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood maple { species "sugar maple" ; sawn quarter }
frame rail-side {
  kind cot
  of maple
  wide 29 ; high 30 ; thick 1
  joint tenon thick 5/16 long 1
  across {
    post left 2
    down {
      rail head 2
      across { slat bar 1 count 6 }
      rail foot 2
      space 6
    }
    post right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood maple { species "sugar maple" ; sawn quarter }
frame rail-side {
  kind cot
  allow bed-for-children "16 CFR part 1219 was read for it, and it goes to be tested"
  of maple
  wide 29 ; high 30 ; thick 1
  joint tenon thick 5/16 long 1
  across {
    post left 2
    down {
      rail head 2
      across { slat bar 1 count 8 }
      rail foot 2
      space 6
    }
    post right 2
  }
}
`,
	Figures: []*Figure{cotGap, bunkHigh, guardGap, guardOpen, guardHigh},
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, a := range p.Assemblies {
			b := bedOf(p, a)
			if b == nil {
				continue
			}
			switch {
			case a.Use.Is == "cot":
				pass.Report(b.cot(p))
			case a.Use.Is == "bunk" || b.lies.Known() && wood.Over(b.lies.Length, bunkHigh.in(p)):
				pass.Report(b.bunk(p))
			}
		}
	},
}

// bed is a bed of which laws speak, with what the plan shows of it.
type bed struct {
	*plan.Assembly
	things     []plan.Within
	mattresses []bedding
	lies       plan.Length // how high the underside of what carries the highest mattress lies above the floor
}

// bedding is one mattress of a bed, by its place in the bed.
type bedding struct {
	room  plan.Box
	thick plan.Length
}

// bedOf looks at an assembly that is a bed; nil where it is none.
func bedOf(p *plan.Plan, a *plan.Assembly) *bed {
	if a.Text == "" || !isBed(a) {
		return nil
	}
	things, _ := a.Within(mostWithin)
	b := &bed{Assembly: a, things: things}
	floor := a.Outside[plan.Down]
	for _, w := range things {
		for _, h := range spaceHolds(w.Node) {
			if h.What.Is != "mattress" {
				continue
			}
			below := plan.Neighbour(w.Node, plan.Lower)
			room := w.Box(plan.It(w.Node).Cell)
			if below == nil || !floor.Known() || !room[plan.Down].Known() {
				continue // its room does not end at what carries it
			}
			b.mattresses = append(b.mattresses, bedding{room, h.Thick})
			under := room[plan.Down].To()
			if _, empty := below.(*plan.Space); !empty {
				if at := w.Box(plan.It(below).Cell)[plan.Down]; at.Known() && wood.Under(at.To(), floor.Length) {
					under = at.To() // what reaches the floor carries it some way further up
				}
			}
			if lies := floor.Length - under; !b.lies.Known() || lies > b.lies.Length {
				b.lies = plan.Length{Length: lies, How: plan.Derived}
			}
		}
	}
	return b
}

// isBed reports whether a plan says that an assembly is for lying in.
func isBed(a *plan.Assembly) bool { return slices.Contains([]string{"cot", "bunk", "bed"}, a.Use.Is) }

func spaceHolds(n plan.Node) []*plan.Holds {
	if s, ok := n.(*plan.Space); ok {
		return s.Holds
	}
	return nil
}

// notice is what is said of every bed of its kind. What the plan shows against the law is said in its message.
func (b *bed) notice(what, laws string, paper *plan.Paper, against string) diag.Finding {
	message := fmt.Sprintf("%s is %s, which is not judged here: in the United States %s has the force of law for it, and asks for tests that no plan shows", b.Use.Is+" "+quote(b.Text), what, laws)
	if against != "" {
		message += "; " + against
	}
	return diag.Finding{
		Subject: plan.PathOf(b.Assembly), Span: b.Name.Span, Message: message, Working: paper.Working(),
		Fixes: []diag.Fix{{Title: "read that, and the law of the place, before you make it; these few figures are not all that it wants"}},
	}
}

func (b *bed) cot(p *plan.Plan) diag.Finding {
	most, paper, against := cotGap.in(p), p.Paper(), ""
	if gap := b.widestGap(); gap.Known() {
		paper.Start(gap.Length, "the widest gap beside an upright slat").Versus(most, "at most, by the standards for cribs")
		if wood.Over(gap.Length, most) {
			against = fmt.Sprintf("its slats stand %s apart, and %s is the most", exact(p, gap.Length), p.Show(most))
		}
	} else {
		paper.Remark(fmt.Sprintf("the standards for cribs want slats and posts no more than %s apart; this plan does not show how far apart they are", p.Show(most)))
	}
	return b.notice("a bed for a small child", "16 CFR part 1219 (full-size), or 1220 (others),", paper, against)
}

// widestGap is the widest space between two upright pieces of wood; unknown where none is drawn, or one has no size.
func (b *bed) widestGap() plan.Length {
	var widest plan.Length
	for _, w := range b.things {
		s, ok := w.Node.(*plan.Space)
		if !ok || s.Parent == nil || s.Parent.Axis == plan.Down {
			continue
		}
		before, after := plan.Neighbour(s, plan.Side(s.Parent.Axis*2)), plan.Neighbour(s, plan.Side(s.Parent.Axis*2+1))
		if !uprightStick(before) || !uprightStick(after) || !ofRow(before) && !ofRow(after) {
			continue // two legs have room between them
		}
		at := s.Cell[s.Parent.Axis]
		if !at.Sized {
			return plan.Length{}
		}
		if !widest.Known() || at.Size > widest.Length {
			widest = plan.Length{Length: at.Size, How: plan.Derived}
		}
	}
	return widest
}

// uprightStick reports whether a thing is an upright stick, and ofRow whether that is one of a row, and no leg.
func uprightStick(n plan.Node) bool {
	m, ok := n.(*plan.Member)
	return ok && m.Grain == plan.Down && !m.Board()
}

func ofRow(n plan.Node) bool { return !slices.Contains([]string{"leg", "post"}, plan.It(n).Word) }

func (b *bed) bunk(p *plan.Plan) diag.Finding {
	paper := p.Paper()
	if b.lies.Known() {
		paper.Start(b.lies.Length, "from the floor to the underside of what carries the highest mattress").Versus(bunkHigh.in(p), "above this it is a bunk bed")
	}
	guards, against, told := 0, "", map[*plan.Member]bool{}
	closest := plan.Length{} // of the guards, to both ends of the bed
	for _, w := range b.things {
		m, ok := w.Node.(*plan.Member)
		if !ok || !m.Guard.On || m.Grain == plan.Down {
			continue
		}
		if guards++; guards > mostGuards || told[m] {
			continue
		}
		told[m] = true // one that is drawn once may be placed twice
		open := openEnds(m)
		if open.Known() {
			paper.Start(open.Length, "from an end of the bed to "+titled(&m.Item)+", at its wider end").
				Versus(guardGap.in(p), "at most, of the guard that runs from end to end").
				Versus(guardOpen.in(p), "at most, of the other")
			if guards == 1 || closest.Known() && open.Length < closest.Length {
				closest = open
			}
			if wood.Over(open.Length, guardOpen.in(p)) && against == "" {
				against = fmt.Sprintf("%s stands %s from an end, and %s is the most", titled(&m.Item), p.Show(open.Length), p.Show(guardOpen.in(p)))
			}
		}
		if !open.Known() {
			closest = open
		}
		if above := b.above(w, m); above.Known() {
			paper.Start(above.Length, "from the mattress up to the top of "+titled(&m.Item)).Versus(guardHigh.in(p), "at least")
			if wood.Under(above.Length, guardHigh.in(p)) && against == "" {
				against = fmt.Sprintf("%s stands %s above its mattress, and %s is the least", titled(&m.Item), p.Show(above.Length), p.Show(guardHigh.in(p)))
			}
		} else {
			paper.Remark(fmt.Sprintf("of %s that law wants %s above the mattress at least; this plan does not show how much there is", titled(&m.Item), p.Show(guardHigh.in(p))))
		}
	}
	if closest.Known() && wood.Over(closest.Length, guardGap.in(p)) && against == "" {
		against = fmt.Sprintf("no guard rail comes within %s of both ends, and one has to", p.Show(guardGap.in(p)))
	}
	paper.Remark(fmt.Sprintf("rails that say `guard`: %d; the law wants two at least, one on each side, of a bed that lies so high", guards))
	return b.notice("a bunk bed", "16 CFR part 1213, or 1513 where it is meant for children,", paper, against)
}

// mostGuards bounds how many guard rails a notice tells of.
const mostGuards = 8

// openEnds is how far a guard rail stands from one of its ends: the greater of the spaces beside it.
func openEnds(m *plan.Member) plan.Length {
	open := plan.Length{How: plan.Derived}
	for _, side := range []plan.Side{plan.Side(m.Grain * 2), plan.Side(m.Grain*2 + 1)} {
		beside := plan.Neighbour(m, side)
		s, ok := beside.(*plan.Space)
		if beside == nil {
			return plan.Length{}
		}
		if !ok {
			continue
		}
		at := s.Cell[m.Grain]
		if !at.Sized {
			return plan.Length{}
		}
		open.Length = max(open.Length, at.Size)
	}
	return open
}

// above is how far the top of a guard rail stands above the mattress that it guards: the highest one that lies
// lower than that. It is unknown where there is none, or nobody says how thick that is.
func (b *bed) above(w plan.Within, m *plan.Member) plan.Length {
	guard := w.Box(m.Cell)[plan.Down]
	var its *bedding
	for i, mat := range b.mattresses {
		at := mat.room[plan.Down]
		if guard.Known() && wood.Under(guard.From, at.To()) && (its == nil || at.To() < its.room[plan.Down].To()) {
			its = &b.mattresses[i]
		}
	}
	if its == nil || !its.thick.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: its.room[plan.Down].To() - its.thick.Length - guard.From, How: plan.Derived}
}
