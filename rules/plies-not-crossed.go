package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

var crossedTurned = &Figure{
	Name: "turned", Why: "by how much neighbouring plies may be out of a right angle, or out of parallel", Basis: Practice,
	Source: "that plies cross at right angles is seen in a general note on aircraft plywood and in glossaries of the trade; how far off they may be is ours",
	Dim:    lang.Angle, Number: 5,
}

var pliesNotCrossed = &Rule{
	Name: "plies-not-crossed", Group: Layups, Severity: diag.Error,
	Summary: "the grain of the plies does not cross so that the panel stays flat",
	Doc: `In a panel of an even number of plies, each across the next, the face runs one way and the back the other: every swelling
twists or curls it. Plies at a slant to their neighbours twist it as well, or, where
the slant is mirrored, pull it out of square, which is a warning.

Press an odd number of plies, each square to the next; or an even number whose middle two run the same way and count as one. What
matters is that each ply runs as its mirror behind the middle does. The rule looks where plies are otherwise alike; where they differ in
thickness, wood or moisture too, unbalanced-layup says all of it.`,
	Sources: `An odd number of plies, each at a right angle to the next: a general note on aircraft plywood and glossaries of the trade. See
the figure. The warp in the working is that of unbalanced-layup.`,
	Sound: `Three plies and five; four whose middle two are parallel; a crossband some degrees off; two leaves that lie alike on each face; faces
on fibreboard, which has no grain.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
veneer leaf { species "sugar maple" ; sawn rotary ; thick 1/16 }
layup seat { ply leaf along ; ply leaf across ; ply leaf along ; ply leaf across }
part shell { of seat ; long 16 ; wide 15 }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
veneer leaf { species "sugar maple" ; sawn rotary ; thick 1/16 }
layup seat { ply leaf along ; ply leaf across ; ply leaf across ; ply leaf along }
part shell { of seat ; long 16 ; wide 15 }
`,
	Figures: []*Figure{crossedTurned},
	Check: func(pass *Pass) {
		for m := range layups(pass.Plan) {
			if _, bare := bareSide(m); bare {
				continue
			}
			pairs := unlikePairs(pass.Plan, m, mirrorBands(pass, m))
			off := pass.Number(crossedTurned, plan.PathOf(m))
			slanted := slantedPly(m, off)
			switch {
			case !onlyTurned(pairs):
			case slanted > 0:
				reportSlanted(pass, m, slanted, len(pairs) == 0)
			case len(pairs) > 0:
				reportTurned(pass, m, pairs, off)
			}
		}
	},
}

// slantedPly is the first ply that lies neither along nor square to the one before it; 0 if none does.
func slantedPly(m *plan.Material, off float64) int {
	for i := range m.Plies[1:] {
		if degrees, ok := turned(m.Plies[i], m.Plies[i+1]); ok && degrees > off && degrees < 90-off {
			return i + 1
		}
	}
	return 0
}

// reportSlanted reports a slant. Where it is mirrored nothing bends, and the theory has the panel
// grow out of square alone.
func reportSlanted(pass *Pass, m *plan.Material, i int, mirrored bool) {
	by, _ := turned(m.Plies[i-1], m.Plies[i])
	does := "twists"
	if mirrored {
		does = "is pulled out of square"
	}
	pass.Report(diag.Finding{
		Subject:  plan.PathOf(m),
		Severity: diag.Warning,
		Span:     m.Plies[i].Of.Span,
		Message: fmt.Sprintf("%s of layup %s lies at %s to %s: the panel %s where plies neither cross at right angles nor lie parallel",
			plyNamed(m, i), quote(m.Name.Text), degrees(by), plyNamed(m, i-1), does),
		Notes:   []diag.Note{{Span: m.Plies[i-1].Of.Span, Message: "its neighbour stands here"}},
		Working: predicted(pass, m),
		Fixes:   []diag.Fix{{Title: "lay it along or across"}},
	})
}

func reportTurned(pass *Pass, m *plan.Material, pairs []unlikeness, off float64) {
	first := pairs[0]
	f := diag.Finding{
		Subject: plan.PathOf(m),
		Span:    m.Plies[first.back].Of.Span,
		Message: fmt.Sprintf("%s of layup %s runs across the grain of %s, its mirror", plyNamed(m, first.back), quote(m.Name.Text), plyNamed(m, first.face)),
		Notes:   []diag.Note{{Span: m.Plies[first.face].Of.Span, Message: "its mirror stands here"}},
		Working: predicted(pass, m),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("turn %s to run as %s does", plyNamed(m, first.back), plyNamed(m, first.face))}},
	}
	if n := layers(m, off); n > 0 && n%2 == 0 {
		f.Message += fmt.Sprintf(": %d layers, each across the next, are an even number", n)
		f.Fixes = []diag.Fix{{Title: "press one layer more or one less, or turn plies so that the middle two run the same way"}}
	}
	pass.Report(f)
}

// layers is how many layers a layup has, plies that lie parallel to their neighbours counted as
// one; 0 where one of them has no grain.
func layers(m *plan.Material, off float64) int {
	n := 1
	for i := range m.Plies[1:] {
		degrees, ok := turned(m.Plies[i], m.Plies[i+1])
		if !ok {
			return 0
		}
		if degrees > off {
			n++
		}
	}
	return n
}
