package rules

import (
	"fmt"
	"iter"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	mitreShows = &Figure{
		Name: "shows", Why: "how far a mitre may open at one end before it shows", Basis: Practice,
		Source: "1/64, the thinnest line that the eye finds", Dim: lang.Length, Length: wood.Inch / 64,
	}
	mitreParts = &Figure{
		Name: "parts", Why: "beyond which a mitre that nothing is let into is an error", Basis: Practice,
		Source: "1/32, which a glued mitre alone does not hold", Dim: lang.Length, Length: wood.Inch / 32,
	}
)

var mitresOpen = &Rule{
	Name: "mitre-opens", Group: Movement, Severity: diag.Warning,
	Summary: "the mitres of a frame of wide members open through the year",
	Doc: `The members of a mitred frame shrink in width and keep their length, so that the angle at which each was cut grows blunter: in a dry
winter the corners open at the inside, in a humid summer at the outside. The wider the members, the more; no clamp and no glue holds it.

Keep mitred members narrow, saw them quarter, let a spline, a key or a tongue into the corner so that it stays one frame, or join wide members
square with tenons. Where something is let in, the gap is a warning only where it would open beyond what a bare mitre holds.`,
	Sources: movementSource + `
How far it opens is geometry: by the strain, the width, and twice the cosine of the angle at which each end is cut; that a mitre
opens inside as its members shrink: W. Noyes, Handwork in Wood, 1910, fig. 289. What shows and what parts is common practice, no source.`,
	Sound: `Narrow members of wood that is sawn quarter, wider ones with a spline, wide ones of sheet stock, and a box whose boards are mitred
through their thickness.`,
	Bad: `climate { shop 8% ; dry 4% ; humid 10% }
wood oak { species "red oak" ; sawn flat }
frame mirror {
  of oak
  wide 24 ; high 30 ; thick 3/4
  joint mitre
  across { stile left 3 ; down { rail head 3 ; space ; rail foot 3 } ; stile right 3 }
}
`,
	Good: `climate { shop 8% ; dry 4% ; humid 10% }
wood oak { species "red oak" ; sawn quarter }
frame mirror {
  of oak
  wide 24 ; high 30 ; thick 3/4
  joint mitre spline thick 1/8
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Figures: []*Figure{mitreShows, mitreParts},
	Check: func(pass *Pass) {
		worst := make(map[saying]int) // a joint is said once for all corners of a frame
		var corners []mitre
		add := func(c mitre) {
			if !c.opens(pass.Plan) {
				return
			}
			key := saying{c.joint.Span, c.a.In.Build}
			i, again := worst[key]
			switch {
			case !again:
				worst[key] = len(corners)
				corners = append(corners, c)
			case c.gap > corners[i].gap:
				corners[i] = c
			}
		}
		for c := range mitres(pass.Plan) {
			add(c)
		}
		for _, c := range corners {
			c.judge(pass)
		}
	},
}

// mitre is a corner at which two members that lie in one plane are mitred across their widths.
type mitre struct {
	a, b  *plan.Member
	joint *plan.Joint
	angle float64 // degrees at which both are cut, where they are alike

	moves wood.Movement // of a
	wide  wood.Length   // by which the width of a moves
	gap   wood.Length   // by which the corner opens
}

// mitres ranges over the corners of frames that are mitred across the widths of their members.
func mitres(p *plan.Plan) iter.Seq[mitre] {
	return func(yield func(mitre) bool) {
		for e := range ends(p) {
			m, ok := e.Of.(*plan.Member)
			ok = ok && e.Joint.Kind.Is == plan.Mitre && len(e.Mates) == 1 && e.Mates[0].Flat == m.Flat // else through the thickness, which hardly moves
			if ok && !yield(mitre{a: m, b: e.Mates[0], joint: e.Joint, angle: 45}) {
				return
			}
		}
		for _, a := range p.Assemblies {
			r := a.Rail
			ok := r != nil && a.Joint != nil && a.Joint.Kind.Is == plan.Mitre
			if ok && !yield(mitre{a: r, b: r, joint: a.Joint, angle: 180 / float64(max(a.Sides.Or(4), 3))}) {
				return
			}
		}
	}
}

// opens works out how far a corner opens; false where that is not known. Each member turns by its
// strain times the sine and the cosine of its angle, over the length of the mitre.
func (c *mitre) opens(p *plan.Plan) bool {
	_, _, movesA := p.Seasons(c.a.Of.Material.To)
	_, _, movesB := p.Seasons(c.b.Of.Material.To)
	a, b := c.a.Size.Wide, c.b.Size.Wide
	if !movesA || !movesB || !a.Known() || !b.Known() || a.Length <= 0 || b.Length <= 0 {
		return false
	}
	c.wide, c.moves = travel(p, c.a.Of.Material.To, a.Length)
	other, _ := travel(p, c.b.Of.Material.To, b.Length)
	if c.alike() {
		c.gap = wood.Length(float64(c.wide+other) * math.Cos(c.angle*math.Pi/180))
		return true
	}
	c.gap = wood.Length((float64(c.wide)*float64(b.Length) + float64(other)*float64(a.Length)) / math.Hypot(float64(a.Length), float64(b.Length)))
	return true
}

// alike reports whether both members are as wide, so that both are cut at one angle.
func (c *mitre) alike() bool { return wood.Same(c.a.Size.Wide.Length, c.b.Size.Wide.Length) }

// held reports whether something is let into the joint.
func (c *mitre) held() bool {
	j := c.joint
	return j.Spline != nil || j.Key.Or(0) > 0 || j.Hardware.Said()
}

// judge reports a corner that opens too far.
func (c *mitre) judge(pass *Pass) {
	p, subject, of := pass.Plan, plan.PathOf(c.a), c.a.Of.Material.To
	shows, parts := pass.Length(mitreShows, subject), pass.Length(mitreParts, subject)
	severity, limit, what := diag.Warning, shows, "shows"
	switch {
	case c.held():
		limit, what = parts, "wanted at most, with something let in"
	case wood.Over(c.gap, parts):
		severity, limit, what = diag.Error, parts, "a bare mitre holds at most"
	}
	if !wood.Over(c.gap, limit) {
		return
	}
	where := "outside"
	if c.moves.To < c.moves.From {
		where = "inside"
	}
	wide := c.a.Size.Wide
	paper := p.Paper().Start(wide.Length, "width of "+called(&c.a.Item))
	moves(paper, wide.Length, of, c.moves)
	paper.Equals("it would be").Start(c.wide, "the width moves").Start(c.gap, c.geometry()).Versus(limit, what)
	f := diag.Finding{
		Subject: subject, Span: c.joint.Span, Severity: severity, Notes: fromMemory(of, c.moves), Working: paper.Working(),
		Message: fmt.Sprintf("the mitres of %s open by %s at the %s through the year: %s is %s wide", entitled(c.a.In), exact(p, c.gap), where, titled(&c.a.Item), p.ShowSaid(wide)),
		Fixes:   []diag.Fix{{Title: "use narrower members, or wood that is sawn quarter, or join them square with tenons"}},
	}
	if !c.held() {
		f.Fixes = append([]diag.Fix{{Title: "let a spline or keys into the corners, such as `spline thick 1/8`"}}, f.Fixes...)
	}
	pass.Report(f)
}

// geometry says how the movement of a width becomes a gap.
func (c *mitre) geometry() string {
	if c.alike() {
		return fmt.Sprintf("the mitre opens: 2 x cos %s x that", degrees(c.angle))
	}
	return "the mitre opens: by both widths, over the length of the mitre"
}
