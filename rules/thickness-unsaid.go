package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var thicknessUnsaid = &Rule{
	Name: "thickness-unsaid", Group: Hygiene, Severity: diag.Error,
	Summary: "nothing says how thick a thing of some material is",
	Doc: `Without a thickness a part cannot be cut, and its grooves, tenons and hinges are not checked. Wood is bought in many
thicknesses, so that the name of the wood does not tell it; a sheet's own line should.

Say it where it holds for most: in the frame ("thick 7/8"), in the sheet ("thick 3/4 ; actual 23/32"), behind the material
("of oak 3/4"), or with the ply of a solid core ("ply poplar across thick 5/8"). What names no material yet is not asked for its thickness.`,
	Sources: "Common practice, no source.",
	Sound: `Sticks that have it from their frame, a panel from its sheet, a drawer from its material; a solid core that says it; a frame of which no material is
said yet.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame lattice {
  of   oak
  wide 18 ; high 24
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame lattice {
  of   oak
  wide 18 ; high 24 ; thick 3/4
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Check: func(pass *Pass) {
		asked := thicknesses{pass: pass, sheets: make(map[*plan.Material]bool)}
		for _, part := range pass.Plan.Parts {
			asked.want(part.Size.Thick, part.Of.Material.To, plan.PathOf(part), titled(&part.Item), part.Name.Span, asked.sized("thick 3/4", "thick 19"))
		}
		for _, top := range pass.Plan.Tops {
			asked.want(top.Size.Thick, top.Of.Material.To, plan.PathOf(top), titled(&top.Item), top.Name.Span, asked.sized("thick 1", "thick 25"))
		}
		for _, a := range pass.Plan.Assemblies {
			asked.inside(a)
		}
		for m := range layups(pass.Plan) {
			asked.plies(m)
		}
	},
}

// thicknesses asks for what is missing: a sheet once, whatever is made of it, and a frame
// once for all its sticks.
type thicknesses struct {
	pass   *Pass
	sheets map[*plan.Material]bool
}

// want asks for the thickness of a thing of some material, and reports whether it is missing;
// such is how it may be written.
func (t thicknesses) want(thick plan.Length, of *plan.Material, subject, called string, at diag.Span, such string) bool {
	if thick.How != plan.Unknown || of == nil {
		return false
	}
	switch of.Kind {
	case plan.Solid:
		t.ask(subject, called, at, such)
	case plan.Sheet:
		if !t.sheets[of] && of.Thickness().How == plan.Unknown {
			t.sheets[of] = true
			t.ask(of.Name.Text, "sheet "+quote(of.Name.Text), of.Name.Span, t.sized("thick 3/4 ; actual 23/32", "thick 19 ; actual 18.6"))
		}
	}
	return true
}

// plies asks for the thickness of the first ply of a layup that has none.
func (t thicknesses) plies(m *plan.Material) {
	for i, ply := range m.Plies {
		of := ply.Of.To
		switch {
		case ply.Thickness().How != plan.Unknown:
			continue
		case of.Kind == plan.Solid:
			t.ask(m.Name.Text, plyNamed(m, i)+" of layup "+quote(m.Name.Text), ply.Of.Span, "ply "+sayPly(ply)+t.sized(" thick 5/8", " thick 16"))
		case of.Kind == plan.Veneer && !t.sheets[of]:
			t.sheets[of] = true
			t.ask(of.Name.Text, "veneer "+quote(of.Name.Text), of.Name.Span, t.sized("thick 1/42", "thick 0.6"))
		}
		return
	}
}

func (t thicknesses) ask(subject, called string, at diag.Span, such string) {
	t.pass.Report(diag.Finding{
		Subject: subject,
		Span:    at,
		Message: fmt.Sprintf("nothing says how thick %s is: write how, such as `%s`", called, such),
	})
}

// sized is an example in the plan's units.
func (t thicknesses) sized(inch, metric string) string {
	if t.pass.Plan.Tape.Metric {
		return metric
	}
	return inch
}

func (t thicknesses) inside(a *plan.Assembly) {
	frame := a.Kind == plan.Frame && a.Outside[plan.Behind].How == plan.Unknown
	for n := range a.Nodes() {
		it := plan.It(n)
		switch n := n.(type) {
		case *plan.Member:
			asked := n.Parent.Axis == n.Flat || n.Part.Said() // where it is drawn, or with its size along the list
			switch {
			case asked:
			case frame && n.Size.Thick.How == plan.Unknown && n.Of.Material.To != nil && n.Of.Material.To.Kind == plan.Solid:
				t.want(n.Size.Thick, n.Of.Material.To, plan.PathOf(a), entitled(a), a.Name.Span, t.sized("thick 3/4", "thick 19"))
				return // the panels of such a frame follow
			default:
				t.want(n.Size.Thick, n.Of.Material.To, plan.PathOf(n), titled(it), it.Name.Span, t.sized("thick 3/4", "thick 19"))
			}
		case *plan.Panel:
			t.want(n.Size.Thick, n.Of.Material.To, plan.PathOf(n), titled(it), it.Name.Span, t.sized("thick 3/4", "thick 19"))
		case *plan.Door:
			if leaf := n.Leaf; leaf.Material != nil && leaf.Thick.How == plan.Unknown {
				t.want(leaf.Material.Thickness(), leaf.Material, plan.PathOf(n), "the leaf of "+titled(it), leaf.Span, "leaf "+leaf.Name+t.sized(" 3/4", " 19"))
			}
		case *plan.Drawer:
			for _, b := range []*plan.BoxPart{n.Left, n.Front, n.Inner, n.Back, n.Bottom} {
				if b == nil || b.Of == nil {
					continue
				}
				such, called := boxPartOf(b)
				if t.want(b.Size.Thick, b.Of, plan.PathOf(b), "the "+called+" of "+titled(it), b.Span, such+" "+b.Of.Name.Text+t.sized(" 1/2", " 12")) {
					break
				}
			}
		}
	}
}

// boxPartOf is the setting that says what a part of a drawer is of, and what the part is called.
func boxPartOf(b *plan.BoxPart) (setting, called string) {
	if b.Name == "left" {
		return "of", "box"
	}
	return b.Name, b.Name
}
