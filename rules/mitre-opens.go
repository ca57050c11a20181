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
		seen := make(map[saying]bool)
		for e := range ends(pass.Plan) {
			m, ok := e.Of.(*plan.Member)
			if !ok || e.Joint.Kind.Is != plan.Mitre || len(e.Mates) != 1 || e.Mates[0].Flat != m.Flat {
				continue // through the thickness, which hardly moves
			}
			checkMitre(pass, mitre{m, e.Mates[0], e.Joint, 45}, seen)
		}
		for _, a := range pass.Plan.Assemblies {
			if r := a.Rail; r != nil && a.Joint != nil && a.Joint.Kind.Is == plan.Mitre {
				checkMitre(pass, mitre{r, r, a.Joint, 180 / float64(max(a.Sides.Or(4), 3))}, seen)
			}
		}
	},
}

// mitre is a corner at which two members that lie in one plane are mitred across their widths.
type mitre struct {
	a, b  *plan.Member
	joint *plan.Joint
	angle float64 // degrees at which both are cut, where they are alike
}

// held reports whether something is let into the joint.
func (m mitre) held() bool {
	j := m.joint
	return j.Spline != nil || j.Key.Or(0) > 0 || j.Hardware.Said()
}

// opens is how far a corner opens when the widths of its members move by a and b. Each member turns
// by its strain times the sine and the cosine of its angle, over the length of the mitre.
func (m mitre) opens(a, b wood.Length) wood.Length {
	wa, wb := float64(m.a.Size.Wide.Length), float64(m.b.Size.Wide.Length)
	if wood.Same(m.a.Size.Wide.Length, m.b.Size.Wide.Length) {
		return wood.Length(float64(a+b) * math.Cos(m.angle*math.Pi/180))
	}
	return wood.Length((float64(a)*wb + float64(b)*wa) / math.Hypot(wa, wb))
}

// checkMitre reports a corner that opens too far, once for each line that says the joint.
func checkMitre(pass *Pass, c mitre, seen map[saying]bool) {
	p, subject := pass.Plan, plan.PathOf(c.a)
	_, _, movesA := p.Seasons(c.a.Of.Material.To)
	_, _, movesB := p.Seasons(c.b.Of.Material.To)
	wide := c.a.Size.Wide
	if !movesA || !movesB || !wide.Known() || !c.b.Size.Wide.Known() || wide.Length <= 0 {
		return
	}
	a, m := travel(p, c.a.Of.Material.To, wide.Length)
	b, _ := travel(p, c.b.Of.Material.To, c.b.Size.Wide.Length)
	gap := c.opens(a, b)
	shows, parts := pass.Length(mitreShows, subject), pass.Length(mitreParts, subject)
	limit, what := shows, "shows"
	severity := diag.Warning
	switch {
	case c.held():
		limit, what = parts, "wanted at most, with something let in"
	case wood.Over(gap, parts):
		severity, limit, what = diag.Error, parts, "a bare mitre holds at most"
	}
	if !wood.Over(gap, limit) || again(seen, c.joint.Span, c.a.In) {
		return
	}
	where := "outside"
	if m.To < m.From {
		where = "inside"
	}
	paper := p.Paper().Start(wide.Length, "width of "+called(&c.a.Item))
	moves(paper, wide.Length, c.a.Of.Material.To, m)
	paper.Equals("it would be").Start(a, "the width moves").Start(gap, c.geometry()).Versus(limit, what)
	f := diag.Finding{
		Subject: subject, Span: c.joint.Span, Severity: severity, Notes: fromMemory(c.a.Of.Material.To, m), Working: paper.Working(),
		Message: fmt.Sprintf("the mitres of %s open by %s at the %s through the year: %s is %s wide", entitled(c.a.In), exact(p, gap), where, titled(&c.a.Item), p.ShowSaid(wide)),
		Fixes:   []diag.Fix{{Title: "use narrower members, or wood that is sawn quarter, or join them square with tenons"}},
	}
	if !c.held() {
		f.Fixes = append([]diag.Fix{{Title: "let a spline or keys into the corners, such as `spline thick 1/8`"}}, f.Fixes...)
	}
	pass.Report(f)
}

// geometry says how the movement of a width becomes a gap.
func (m mitre) geometry() string {
	if wood.Same(m.a.Size.Wide.Length, m.b.Size.Wide.Length) {
		return fmt.Sprintf("the mitre opens: 2 x cos %s x that", degrees(m.angle))
	}
	return "the mitre opens: by both widths, over the length of the mitre"
}
