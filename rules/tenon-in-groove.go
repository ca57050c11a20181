package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var tenonInGroove = &Rule{
	Name: "tenon-in-groove", Group: Cuts, Severity: diag.Error,
	Summary: "a tenon is wider than its rail less the groove and the haunch, or does not lie in line with the groove",
	Doc: `The groove for the panel is ploughed along the whole edge of the rail, and takes that much off its tenon: a mortise as
wide as the rail is then too long by the groove, and shows beside the shoulder. A haunch that is shorter than the stile's groove is deep leaves a hole
at the end of the stile; and a groove beside the line of the tenon cuts a cheek off it.

Take the groove and the haunch off the tenon's width, or leave "wide" out, which does so. Make the haunch as deep as the groove, which
it is where the plan does not say. Set the tenon so that the groove lies inside its thickness.`,
	Sources: `The groove comes off the tenon's width: W. Fairham, Woodwork Joints, The Mortise and Tenon Joint. The haunch fills the
groove: W. Noyes, Handwork in Wood, 1910, joint no. 42. The rest is geometry.`,
	Sound: `A tenon as wide as the rail less its groove; one less haunch and groove; a haunch that is deeper than the groove; a tenon
thicker than the groove in the same line.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 wide 2 haunch 5/8
  across {
    stile left 2 1/4
    down { rail head 2 1/2 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 2 1/2 }
    stile right 2 1/4
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 wide 1 1/2 haunch 5/8
  across {
    stile left 2 1/4
    down { rail head 2 1/2 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 2 1/2 }
    stile right 2 1/4
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		cuts := p.Cuts()
		var said onePer[saying]
		for t := range tenons(p) {
			tenon := cuts.Own(t.End, plan.CutTenon)
			if tenon == nil {
				continue
			}
			r := tenonRoom{tenon: t, cut: tenon, haunch: cuts.Own(t.End, plan.CutHaunch)}
			for _, c := range tenon.In.Cuts {
				if c.Kind == plan.CutGroove && c.Use == t.of && c.Enters.Dimension() == plan.Wide && c.At[plan.Wide].Known() {
					r.grooves = append(r.grooves, c)
				}
			}
			for _, f := range []*diag.Finding{r.tooWide(p), r.haunchShort(p), r.offLine(p)} {
				if f != nil {
					said.add(saying{f.Span, t.of.In.Build}, *f)
					break
				}
			}
		}
		said.report(pass)
	},
}

// tenonRoom is a tenon and what is cut beside it from the width of its stick.
type tenonRoom struct {
	tenon
	cut, haunch *plan.Cut
	grooves     []*plan.Cut
}

// inLine reports whether two cuts share some of the stick's thickness.
func inLine(a, b *plan.Cut) bool {
	x, y := a.At[plan.Thick], b.At[plan.Thick]
	return x.Known() && y.Known() && wood.Under(max(x.From, y.From), min(x.To(), y.To()))
}

// tooWide reports a tenon that reaches into the groove beside it, or into its haunch. Its width
// is that of all its tenons together, where there are several.
func (r *tenonRoom) tooWide(p *plan.Plan) *diag.Finding {
	wide, stick := r.cut.At[plan.Wide], r.cut.In.Size[plan.Wide]
	if !wide.Known() || !stick.Known() || !widthSaid(r.Joint) || r.Joint.Count.Or(1) > 1 || len(r.Joint.At) > 0 {
		return nil
	}
	over := max(-wide.From, 0) + max(wide.To()-stick.Length, 0)
	paper := p.Paper().Start(stick.Length, "width of "+called(&r.of.Item))
	take := func(c *plan.Cut, label string) {
		e := c.At[plan.Wide]
		paper.Minus(e.Size, label)
		over += max(min(wide.To(), e.To())-max(wide.From, e.From), 0)
	}
	var notes []diag.Note
	beside := ""
	for _, g := range r.grooves {
		if inLine(r.cut, g) {
			if beside == "" {
				beside = " beside its groove"
			} else {
				beside = " between its grooves"
			}
			take(g, g.Kind.String()+" for "+called(plan.It(g.For.End.Of)))
			notes = append(notes, diag.Note{Span: g.Span(), Message: cutName(g) + " is asked for here"})
		}
	}
	if h := r.haunch; h != nil && h.At[plan.Wide].Known() {
		if take(h, "haunch"); beside != "" {
			beside += " and its haunch"
		} else {
			beside = " beside its haunch"
		}
	}
	if !wood.Over(over, 0) {
		return nil
	}
	f := &diag.Finding{
		Subject: r.subject, Span: widthSpan(r.Joint), Notes: notes,
		Message: fmt.Sprintf("a tenon %s wide is %s wider than %s has room for%s", p.Show(wide.Size), exact(p, over), titled(&r.of.Item), beside),
	}
	paper.Equals("left for the tenon")
	left := paper.Result()
	f.Working = paper.Versus(wide.Size, "tenon").Working()
	switch j := r.Joint; {
	case j.Wide.How == plan.Written && left > 0:
		write := cutTo(p, j.Wide.Span, left)
		f.Fixes = []diag.Fix{{
			Title: fmt.Sprintf("write `wide %s`, or leave it out", write),
			Edits: []diag.Edit{{Span: j.Wide.Span, Text: write}},
		}}
	case len(r.grooves) > 0:
		f.Fixes = []diag.Fix{{Title: "make the shoulder as wide as the groove is deep at least, or leave it out"}}
	}
	return f
}

// haunchShort reports a haunch that does not fill the groove at the end of its mate.
func (r *tenonRoom) haunchShort(p *plan.Plan) *diag.Finding {
	h := r.Joint.Haunch
	if h == nil || h.Deep.How != plan.Written {
		return nil
	}
	for _, g := range r.grooves {
		if deep := g.Deep(); deep.Known() && inLine(r.cut, g) && wood.Under(h.Deep.Length, deep.Length-p.Tape.Tolerance()) {
			return &diag.Finding{
				Subject: r.subject, Span: h.Deep.Span, Severity: diag.Warning,
				Message: fmt.Sprintf("a haunch %s deep does not fill a groove %s deep: a hole is left at the end of %s", p.ShowSaid(h.Deep),
					p.Show(deep.Length), matesOf(r.End)),
				Working: p.Paper().Start(deep.Length, "groove").Minus(h.Deep.Length, "haunch").Equals("open at the end").Working(),
				Notes:   []diag.Note{{Span: g.Span(), Message: cutName(g) + " is asked for here"}},
				Fixes: []diag.Fix{{
					Title: fmt.Sprintf("write `deep %s`, or leave it out", cutTo(p, h.Deep.Span, deep.Length)),
					Edits: []diag.Edit{{Span: h.Deep.Span, Text: cutTo(p, h.Deep.Span, deep.Length)}},
				}},
			}
		}
	}
	return nil
}

// offLine reports a tenon that is set beside the line of the groove: the groove then cuts one of
// its cheeks. A groove that lies within the tenon, or the tenon within the groove, is in line.
func (r *tenonRoom) offLine(p *plan.Plan) *diag.Finding {
	if !r.Joint.Set.Known() {
		return nil
	}
	t := r.cut.At[plan.Thick]
	for _, g := range r.grooves {
		e := g.At[plan.Thick]
		if !t.Known() || !e.Known() || within(t, e) || within(e, t) {
			continue
		}
		face := r.cut.FaceName(plan.NearFace)
		return &diag.Finding{
			Subject: r.subject, Span: r.Joint.Set.Span,
			Message: fmt.Sprintf("the tenon of %s lies %s to %s from the %s, and %s %s to %s: they are not in one line", titled(&r.of.Item),
				p.Show(t.From), p.Show(t.To()), face, cutName(g), p.Show(e.From), p.Show(e.To())),
			Notes: []diag.Note{{Span: g.Span(), Message: cutName(g) + " lies in line with the first tenon that is set from the face"}},
			Fixes: []diag.Fix{{Title: "set all tenons round the panel alike"}},
		}
	}
	return nil
}

// within reports whether one stretch lies within another.
func within(a, b plan.Extent) bool { return !wood.Under(a.From, b.From) && !wood.Over(a.To(), b.To()) }
