package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

const mirrorBand = "the rule that plies mirror in thickness, wood, moisture and grain is seen second-hand; how far they may differ is ours"

var (
	mirrorThick = &Figure{
		Name: "thickness", Why: "by how much of the thicker one mirrored plies may differ in thickness, in percent", Basis: Practice,
		Source: mirrorBand, Dim: lang.Percent, Number: 10,
	}
	mirrorSwells = &Figure{
		Name: "swelling", Why: "by how much of the greater one mirrored plies may differ in how far they swell across the grain, in percent", Basis: Practice,
		Source: mirrorBand, Dim: lang.Percent, Number: 10,
	}
	mirrorMoisture = &Figure{
		Name: "moisture", Why: "by how many points of moisture content mirrored plies may differ when they are pressed", Basis: Practice,
		Source: mirrorBand, Dim: lang.Percent, Number: 2,
	}
	mirrorTurned = &Figure{
		Name: "turned", Why: "by how much the grain of mirrored plies may be out of parallel", Basis: Practice,
		Source: mirrorBand, Dim: lang.Angle, Number: 5,
	}
)

var unbalancedLayup = &Rule{
	Name: "unbalanced-layup", Group: Layups, Severity: diag.Warning,
	Summary: "the plies of a layup do not mirror about its middle",
	Doc: `Every ply wants to swell and shrink across its own grain, and the others hold it. A panel stays flat where what pulls in front
of the middle is matched behind it: the same wood, as thick, as moist when the glue set, with its grain the same way. Where it is not, the
panel is flat as it leaves the press, and cups within days or in the first winter. A veneer on one face only is an error, a pair of
plies that differ is a warning.

Lay a ply like the face's on the back, in a cheaper leaf of a wood that swells alike if nobody sees it; press both with one glue
on one day ("glue" and "pressing" of a ply say otherwise); and press all plies at the moisture that the piece will have in use. The working shows how far the panel would stand off at the dry and the humid end of the year, over the
size of what is made of it, and what its use allows (see warps-too-far). That is an upper guide: the theory is linear and has no creep in it.

Plies that cross wrongly and are otherwise alike are found by plies-not-crossed.`,
	Sources: `That a panel is flat where its stresses balance, and warps the less the nearer it is pressed to the moisture of its use: F. L.
Brouse, Forest Products Laboratory Report 1252, 1940, second-hand. The warp: classical lamination theory (A. K. Kaw, Mechanics of Composite Materials,
2nd ed., 2006, chapters 2 and 4, from memory, held to its printed examples) with the shelf's stiffness and movement; that mirrored plies want one
glue and one pressing is common practice, no source, and the prediction knows nothing of it. See the figures.`,
	Sound: `Like veneers on both faces; an even number whose middle two run one way; a back of another wood that swells as much; thicknesses a
little apart.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
veneer skin { species "black cherry" ; sawn flat ; thick 1/32 }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 }
layup board { ply skin along ; ply fibre }
part slab { of board ; long 24 ; wide 18 }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
veneer skin { species "black cherry" ; sawn flat ; thick 1/32 }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 }
layup board { ply skin along ; ply fibre ; ply skin along }
part slab { of board ; long 24 ; wide 18 }
`,
	Figures: []*Figure{mirrorThick, mirrorSwells, mirrorMoisture, mirrorTurned},
	Check: func(pass *Pass) {
		for m := range layups(pass.Plan) {
			if i, ok := bareSide(m); ok {
				reportBare(pass, m, i)
				continue
			}
			reportUnlike(pass, m)
		}
	},
}

// bareSide is the ply of veneer on the one face of a layup that has a veneer, and whether it is so.
func bareSide(m *plan.Material) (veneer int, ok bool) {
	last := len(m.Plies) - 1
	face, back := m.Plies[0].Of.To.Kind == plan.Veneer, m.Plies[last].Of.To.Kind == plan.Veneer
	if back {
		return last, !face
	}
	return 0, face
}

func reportBare(pass *Pass, m *plan.Material, veneer int) {
	bare, side := "back", "face"
	if veneer > 0 {
		bare, side = side, bare
	}
	pass.Report(diag.Finding{
		Subject:  plan.PathOf(m),
		Severity: diag.Error,
		Span:     m.Plies[veneer].Of.Span,
		Message:  fmt.Sprintf("layup %s has a veneer on its %s, %s, and none on its %s", quote(m.Name.Text), side, plyNamed(m, veneer), bare),
		Working:  predicted(pass, m),
		Fixes:    []diag.Fix{{Title: fmt.Sprintf("lay one like it on the %s: `ply %s`", bare, sayPly(m.Plies[veneer]))}},
	})
}

// sayPly is a ply as a plan would say it.
func sayPly(ply *plan.Ply) string {
	switch {
	case ply.Angle.Span.Known():
		return fmt.Sprintf("%s angle %s", ply.Of.Name, degrees(ply.Angle.Value))
	case ply.Run.Is != "":
		return ply.Of.Name + " " + ply.Run.Is
	}
	return ply.Of.Name
}

func reportUnlike(pass *Pass, m *plan.Material) {
	p := pass.Plan
	all := unlikePairs(p, m, mirrorBands(pass, m))
	if onlyTurned(all) {
		return
	}
	first := all[0]
	f := diag.Finding{
		Subject: plan.PathOf(m),
		Span:    m.Plies[first.back].Of.Span,
		Message: fmt.Sprintf("%s of layup %s is not like %s, its mirror: %s", plyNamed(m, first.back), quote(m.Name.Text),
			plyNamed(m, first.face), join(first.saysAll())),
		Working: predicted(pass, m),
	}
	f.Notes = append(f.Notes, diag.Note{Span: m.Plies[first.face].Of.Span, Message: "its mirror stands here"})
	for _, u := range all[1:] {
		f.Notes = append(f.Notes, diag.Note{
			Span:    m.Plies[u.back].Of.Span,
			Message: fmt.Sprintf("%s is not like %s either: %s", plyNamed(m, u.back), plyNamed(m, u.face), join(u.saysAll())),
		})
	}
	for _, u := range all {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make %s like %s: %s", plyNamed(m, u.back), plyNamed(m, u.face), join(u.ofAll()))})
	}
	pass.Report(f)
}

// mirrorBands are the figures by which mirrored plies are judged to be alike.
func mirrorBands(pass *Pass, m *plan.Material) bands {
	subject := plan.PathOf(m)
	return bands{
		thick: pass.Number(mirrorThick, subject), swells: pass.Number(mirrorSwells, subject),
		moisture: pass.Number(mirrorMoisture, subject), degrees: pass.Number(mirrorTurned, subject),
	}
}

func (u unlikeness) saysAll() []string {
	if u.turned {
		return append(u.says, "its grain another way")
	}
	return u.says
}

func (u unlikeness) ofAll() []string {
	if u.turned {
		return append(u.of, "direction of the grain")
	}
	return u.of
}
