package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	coreFace = &Figure{
		Name: "face", Why: "from what thickness a face veneer hides by itself what is below it", Basis: Memory,
		Source: "1/16", Dim: lang.Length, Length: wood.Inch / 16, Metric: 16 * wood.Millimetre / 10,
	}
	coreCross = &Figure{
		Name: "crossband", Why: "how thick what lies between a thinner face and the core must be", Basis: Memory,
		Source: "1/20", Dim: lang.Length, Length: wood.Inch / 20, Metric: 13 * wood.Millimetre / 10,
	}
	coreStrips = &Figure{
		Name: "strips", Why: "the widest strips of a solid core", Basis: Memory,
		Source: "wider ones cup, each by itself", Dim: lang.Length, Length: 3 * wood.Inch / 2, Metric: 38 * wood.Millimetre,
	}
)

var coreShowsThrough = &Rule{
	Name: "core-shows-through", Group: Layups, Severity: diag.Warning,
	Summary: "a joint, a cut or a lipping right below a thin face shows through the finish",
	Doc: `Every strip of a solid core moves by itself, a lipping swells in its thickness and the board beside it does not, glue shrinks over a filled
dado or a screw's head. A face of 1/42 follows: in raking light a polished top shows each line, a year after it was flat.

Lay a crossband between face and core, 1/20 thick or more, its grain across the strips; lay a thicker face; make the strips of the core
narrow; put the lipping on after the face; and cut and fasten only when the face is on. The rule looks at cores whose ply says "strips", at edging that
goes "under" the face, and at steps that cut, bore or fasten a thing before it is pressed.`,
	Sources: `From memory, unverified; see the figures. The findings say so.`,
	Sound: `Strips of 1 1/4 below crossbands of 1/20; a face of 1/16 on narrow strips; a lipping over the edge of the face; grooves cut when the face is
on; a solid core of which nothing says that it is of strips.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood poplar { species "yellow-poplar" ; sawn flat }
veneer skin { species "black walnut" ; sawn flat ; thick 1/42 }
layup board { ply skin along ; ply poplar across thick 5/8 strips 1 1/4 ; ply skin along }
part slab { of board ; long 30 ; wide 18 }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood poplar { species "yellow-poplar" ; sawn flat }
veneer skin { species "black walnut" ; sawn flat ; thick 1/42 }
veneer band { species "yellow-poplar" ; sawn rotary ; thick 1/20 }
layup board { ply skin across ; ply band along ; ply poplar across thick 5/8 strips 1 1/4 ; ply band along ; ply skin across }
part slab { of board ; long 30 ; wide 18 }
`,
	Figures: []*Figure{coreFace, coreCross, coreStrips},
	Check: func(pass *Pass) {
		p := pass.Plan
		for m := range layups(p) {
			checkStrips(pass, m)
		}
		for m := range boardsOf(p) {
			of := m.Of.Material.To
			for _, e := range m.Edging {
				if e.Under.On && of != nil && pressedWhole(of) {
					reportUncovered(pass, of, plan.PathOf(m), e.Under.Span, "the line of a lipping that goes under the face", "put it on over the edge of the face")
				}
			}
		}
		for _, steps := range p.Steps {
			checkCutFirst(pass, steps.Steps)
		}
	},
}

// pressedWhole reports whether all plies of a layup are known, and there are two at least.
func pressedWhole(m *plan.Material) bool {
	for _, ply := range m.Plies {
		if ply.Of.To == nil {
			return false
		}
	}
	return m.Kind == plan.Layup && m.Name.Text != "" && len(m.Plies) > 1
}

// checkStrips reports a core of strips that are too wide, or that nothing covers.
func checkStrips(pass *Pass, m *plan.Material) {
	p, subject := pass.Plan, m.Name.Text
	for i, ply := range m.Plies {
		if !ply.Strips.Known() {
			continue
		}
		widest := pass.Length(coreStrips, subject)
		wide := wood.Over(ply.Strips.Length, widest)
		bare, face := uncovered(pass, m, i)
		var message string
		var fixes []diag.Fix
		if wide {
			message = fmt.Sprintf("the strips of %s of layup %s are %s wide: each cups by itself, and over %s it shows", plyNamed(m, i), quote(subject), p.ShowSaid(ply.Strips), p.Show(widest))
			fixes = append(fixes, diag.Fix{Title: fmt.Sprintf("rip them to %s or less, and turn every other one", p.Show(widest))})
		}
		if bare {
			if message == "" {
				message = fmt.Sprintf("the joints of the strips of %s of layup %s show", plyNamed(m, i), quote(subject))
			}
			message += fmt.Sprintf("; %s, %s thick, lies over them with no crossband of %s", plyNamed(m, face), p.ShowSaid(m.Plies[face].Thickness()), p.Show(pass.Length(coreCross, subject)))
			fixes = append(fixes, crossband(pass, subject))
		}
		if message == "" {
			continue
		}
		pass.Report(diag.Finding{
			Subject: subject, Span: ply.Of.Span, Message: message, Fixes: fixes,
			Working: diag.Working{{Label: "a figure from memory, check it"}},
		})
	}
}

func crossband(pass *Pass, subject string) diag.Fix {
	return diag.Fix{Title: fmt.Sprintf("lay a crossband of %s or more between, on both sides, or a face of %s", pass.Plan.Show(pass.Length(coreCross, subject)), pass.Plan.Show(pass.Length(coreFace, subject)))}
}

// uncovered reports whether a ply shows at a face of its layup: the face is thin, and what lies
// between is too. A face of unknown thickness is taken to hide it.
func uncovered(pass *Pass, m *plan.Material, core int) (bare bool, face int) {
	last := len(m.Plies) - 1
	between := func(from, to int) (thickest wood.Length) {
		for _, ply := range m.Plies[from:to] {
			thickest = max(thickest, ply.Thickness().Length)
		}
		return thickest
	}
	thin, cross := pass.Length(coreFace, m.Name.Text), pass.Length(coreCross, m.Name.Text)
	for _, side := range []struct {
		face    int
		between wood.Length
	}{{0, between(min(1, core), core)}, {last, between(core+1, max(last, core+1))}} {
		outer := m.Plies[side.face]
		thick := outer.Thickness()
		if side.face != core && outer.Of.To.Kind == plan.Veneer && thick.Known() && wood.Under(thick.Length, thin) && wood.Under(side.between, cross) {
			return true, side.face
		}
	}
	return false, 0
}

// reportUncovered reports a line in the core of a thing's layup that nothing covers.
func reportUncovered(pass *Pass, m *plan.Material, path string, at diag.Span, line, instead string) {
	core := 0
	for core < len(m.Plies)-1 && m.Plies[core].Of.To.Kind == plan.Veneer {
		core++
	}
	bare, face := uncovered(pass, m, core)
	if !bare {
		return
	}
	pass.Report(diag.Finding{
		Subject: path,
		Span:    at,
		Message: fmt.Sprintf("%s shows on %s: %s of layup %s, %s thick, lies over it with no crossband of %s", line, path, plyNamed(m, face), quote(m.Name.Text),
			pass.Plan.ShowSaid(m.Plies[face].Thickness()), pass.Plan.Show(pass.Length(coreCross, m.Name.Text))),
		Working: diag.Working{{Label: "a figure from memory, check it"}},
		Notes:   []diag.Note{{Span: m.Name.Span, Message: "the layup stands here"}},
		Fixes:   []diag.Fix{{Title: instead}, crossband(pass, m.Name.Text)},
	})
}

// checkCutFirst reports what is cut into a thing, or driven into it, before its faces are pressed on.
func checkCutFirst(pass *Pass, steps []*plan.Step) {
	cut := make(map[string]*plan.Step)
	for _, step := range steps {
		for _, on := range step.On {
			if on.To == nil {
				continue
			}
			path := on.To.Path
			switch step.Verb {
			case "dado", "groove", "mortise", "bore", "fix":
				cut[path] = step
			case "press":
				m := plan.MaterialOf(on.To.Is)
				if first := cut[path]; first != nil && m != nil && pressedWhole(m) {
					reportUncovered(pass, m, path, first.Span, "what is made before the face is pressed on (`"+first.Verb+"`)", "press first: put `"+first.Verb+" "+path+"` behind `press "+path+"`")
				}
			}
		}
	}
}
