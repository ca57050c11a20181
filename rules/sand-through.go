package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	faceLeft = &Figure{
		Name: "left", Why: "how thick a face veneer still is when it has been scraped and sanded", Basis: Memory,
		Source: "less, and the glue shows through at the edges", Dim: lang.Length, Length: wood.Inch / 100, Metric: 250 * wood.Micrometre,
	}
	drumLeast = &Figure{
		Name: "drum", Why: "the thinnest face that goes through a drum sander", Basis: Memory,
		Source: "a drum takes off more at one side than anybody sees", Dim: lang.Length, Length: wood.Inch / 32, Metric: 8 * wood.Millimetre / 10,
	}
)

var sandThrough = &Rule{
	Name: "sand-through", Group: Layups, Severity: diag.Error,
	Summary: "scraping and sanding take off more than a face veneer has to give",
	Doc: `A face of 0.025 that loses 0.020 to the scraper and the sander is gone wherever the panel is a little high, at the edges first,
and the glue line or the core shows. It cannot be mended. A drum sander on a thin face is a warning for the same reason.

Take off less, or lay a thicker veneer. The rule adds up what the steps say: "scrape slab off 0.003", "sand slab off 0.005".`,
	Sources: `From memory, unverified; see the figures. The findings say so.`,
	Sound: `A face of 0.025 that loses 0.010; a thicker face that loses 0.020; one of which no step says how much it takes; solid wood; a drum
sander on a face of 1/16.`,
	Bad: `veneer skin { species "black walnut" ; thick 0.025 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 30 ; wide 20 }
steps { press slab ; scrape slab off 0.005 ; sand slab off 0.015 }
`,
	Good: `veneer skin { species "black walnut" ; thick 0.025 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 30 ; wide 20 }
steps { press slab ; scrape slab off 0.003 ; sand slab off 0.007 }
`,
	Figures: []*Figure{faceLeft, drumLeast},
	Check: func(pass *Pass) {
		w := wear{pass: pass, of: make(map[any]*plan.Material)}
		for piece := range pass.Plan.Workpieces() {
			w.of[piece.Thing] = piece.Of
		}
		taken := make(map[any][]*plan.Step)
		var order []plan.Thing
		for _, steps := range pass.Plan.Steps {
			for _, step := range steps.Steps {
				if step.Verb != "sand" && step.Verb != "scrape" {
					continue
				}
				for _, on := range step.On {
					if on.To == nil || w.face(on.To.Is) == nil {
						continue
					}
					if taken[on.To.Is] == nil {
						order = append(order, *on.To)
					}
					taken[on.To.Is] = append(taken[on.To.Is], step)
				}
			}
		}
		for _, thing := range order {
			w.check(thing, taken[thing.Is])
		}
	},
}

// wear is what the steps do to faces of veneer.
type wear struct {
	pass *Pass
	of   map[any]*plan.Material // what each thing is made of
}

// face is the thinner of the veneers on the two faces of a thing, or of a layup itself; nil where it has none.
func (w wear) face(thing any) *plan.Ply {
	layup, ok := thing.(*plan.Material)
	if !ok {
		layup = w.of[thing]
	}
	if layup == nil || len(layup.Plies) == 0 {
		return nil
	}
	var thinnest *plan.Ply
	for _, ply := range []*plan.Ply{layup.Plies[0], layup.Plies[len(layup.Plies)-1]} {
		if m := ply.Of.To; m != nil && m.Kind == plan.Veneer && m.Thick.Known() &&
			(thinnest == nil || m.Thick.Length < thinnest.Of.To.Thick.Length) {
			thinnest = ply
		}
	}
	return thinnest
}

func (w wear) check(thing plan.Thing, steps []*plan.Step) {
	p := w.pass.Plan
	ply := w.face(thing.Is)
	thick := ply.Of.To.Thick
	paper := p.Paper().Start(thick.Length, "veneer "+ply.Of.Name)
	left, last := thick.Length, steps[0]
	for _, step := range steps {
		if step.Off.Known() {
			paper.Minus(step.Off.Length, step.Verb)
			left, last = left-step.Off.Length, step
		}
	}
	least := w.pass.Length(faceLeft, thing.Path)
	if wood.Under(left, least) {
		leave := p.Show(left)
		if !wood.Over(left, 0) {
			leave = "nothing"
		}
		w.pass.Report(diag.Finding{
			Subject: thing.Path,
			Span:    last.Span,
			Message: fmt.Sprintf("of the veneer %s on %s, %s thick, scraping and sanding leave %s: leave %s",
				quote(ply.Of.Name), thing.Path, p.ShowSaid(thick), leave, p.Show(least)),
			Working: paper.Equals("left").Versus(least, "to be left").Remark("what must be left is a figure from memory, check it").Working(),
			Notes:   []diag.Note{{Span: ply.Of.Span, Message: "it is laid here"}},
			Fixes:   []diag.Fix{{Title: "take off less, or lay a thicker veneer"}},
		})
		return
	}
	drum := w.pass.Length(drumLeast, thing.Path)
	for _, step := range steps {
		if !wood.Under(thick.Length, drum) {
			return
		}
		for _, tool := range step.Tools {
			if tool.Is == "sander" && step.Verb == "sand" {
				w.pass.Report(diag.Finding{
					Subject:  thing.Path,
					Severity: diag.Warning,
					Span:     step.Span,
					Message: fmt.Sprintf("a drum sander goes over the veneer %s on %s, which is %s thick: it wants %s at least, a figure from memory to be checked",
						quote(ply.Of.Name), thing.Path, p.ShowSaid(thick), p.Show(drum)),
					Notes: []diag.Note{{Span: ply.Of.Span, Message: "it is laid here"}},
					Fixes: []diag.Fix{{Title: "scrape it, or sand it by hand"}},
				})
				return
			}
		}
	}
}
