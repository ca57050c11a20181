package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var drawerLoad = &Figure{
	Name: "load", Why: "what a full drawer carries on its bottom, where the plan does not say", Basis: Published,
	Source: "15 lb/ft2 (718 Pa): the test of drawers in ANSI/KCMA A161.1-2012", Dim: lang.Pressure, Number: 15 * wood.PSI / 144,
}

var slideOverloaded = &Rule{
	Name: "slide-overloaded", Group: Drawers, Severity: diag.Warning,
	Summary: "a drawer is loaded with more than its slides carry",
	Doc: `A wide and deep drawer holds more than it looks: at the load of a common test, 30 x 20 inches of bottom carry 62 lb. Slides that are
loaded with more than their sheet says sag when they are out, and wear until the drawer drops.

Take slides that carry what the drawer holds, or make two drawers of it. The load is what the plan says of the drawer ("load", or the weight
that it "holds"), on the bottom inside the box. Where it says none, the load is that of the test, and this is a word of advice. The box itself
is not counted.`,
	Sources: `Load of a drawer: the drawer test of ANSI/KCMA A161.1-2012, from a reprint. The rest is arithmetic.`,
	Sound:   `A drawer of 30 x 20 on slides that carry 75 lb; a drawer that holds what its slides carry.`,
	Bad: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 ; carries 35lb }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
bottom thin groove 1/4 x 1/4 up 1/2
slide ball ; load 30psf`),
	Good: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 ; carries 75lb }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
bottom thin groove 1/4 x 1/4 up 1/2
slide ball ; load 30psf`),
	Figures: []*Figure{drawerLoad},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			s := d.Slide.To
			if s == nil || !s.Carries.Known() {
				continue
			}
			kilograms, how, stated, ok := drawerHolds(p, d)
			if !ok || kilograms <= s.Carries.Value {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    standing(d.Name.Span, d.Slide.Span),
				Message: fmt.Sprintf("%s carries %s when it is full, and slide %s carries %s", titled(&d.Item), heft(p, kilograms), quote(d.Slide.Name), heft(p, s.Carries.Value)),
				Working: p.Paper().Remark(how).Working(),
				Notes:   []diag.Note{{Span: s.Carries.Span, Message: "what the slide carries is said here"}},
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("take slides that carry %s, or make two drawers of it", heft(p, kilograms))}},
			}
			if !stated {
				f.Severity = diag.Advice
				f.Message = fmt.Sprintf("%s, full as in the common test of drawers, carries %s, and slide %s carries %s", titled(&d.Item), heft(p, kilograms),
					quote(d.Slide.Name), heft(p, s.Carries.Value))
			}
			said.add(drawerAt{f.Span, d.In.Build, d.Box[plan.Across].Length, d.Box[plan.Behind].Length}, f)
		}
		said.report(pass)
	},
}

// drawerHolds is what a drawer carries, in kilograms, how that comes about, and whether the plan says it.
func drawerHolds(p *plan.Plan, d *plan.Drawer) (kilograms float64, how string, stated, ok bool) {
	for _, h := range d.Holds {
		if h.Weigh.Known() {
			kilograms += h.Weigh.Value
			stated = true
		}
	}
	if stated {
		return kilograms, "what it holds weighs " + heft(p, kilograms), true, true
	}
	wide, deep, ok := drawerInside(d)
	pascals := drawerLoad.Number
	if d.Load != nil && d.Load.On.How != plan.Unknown {
		if !d.Load.On.Known() || d.Load.On.Dim != lang.Pressure {
			return 0, "", false, false
		}
		pascals, stated = d.Load.On.Value, true
	}
	kilograms = pascals * wide.Millimetres() * deep.Millimetres() / 1e6 / wood.Gravity
	how = fmt.Sprintf("%s x %s inside, and %s on it", exact(p, wide), exact(p, deep), onArea(p, pascals))
	return kilograms, how, stated, ok
}

// drawerInside is the bottom of a drawer as one sees it: between the sides, and between what stands in
// front and the back.
func drawerInside(d *plan.Drawer) (wide, deep wood.Length, ok bool) {
	front := closing(d)
	sizes := []plan.Length{d.Box[plan.Across], d.Box[plan.Behind], d.Left.Size.Thick, d.Back.Size.Thick}
	if front == nil || !front.Size.Thick.Known() {
		return 0, 0, false
	}
	for _, s := range sizes {
		if !s.Known() {
			return 0, 0, false
		}
	}
	wide = sizes[0].Length - 2*sizes[2].Length
	deep = sizes[1].Length - front.Size.Thick.Length - sizes[3].Length - d.SetIn.Or(0).Length
	return wide, deep, wide > 0 && deep > 0
}
