package rules

// What the rules about the movement of wood share.

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

const movementSource = `Change of a width: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, chapter 13, equation 13-2 with the
coefficients of Table 13-5 from 6 to 14 % of moisture, equation 13-3 outside. The handbook remarks that the former errs low by about 5 %.`

// moves adds to a working what a size of a material grows or shrinks by.
func moves(paper *plan.Paper, size wood.Length, of *plan.Material, m wood.Movement) {
	how := map[string]string{"flat": "sawn flat", "quarter": "sawn quarter", "rift": "sawn rift, taken as flat"}[of.Sawn.Is]
	switch {
	case how == "":
		how = "taken as sawn flat, for nothing is said"
	case of.Sawn.Is == "quarter" && m.Worse:
		how = "taken as sawn flat, for want of a figure"
	}
	if m.Equation == "13-3" {
		how += ", by equation 13-3"
	}
	paper.Plus(m.Change(size), fmt.Sprintf("from %s to %s, %.3g for each 1%% of moisture, %s", wood.Percent(m.From), wood.Percent(m.To), m.Rate, how))
}

// fromMemory is the note on a finding that rests on a figure that nobody has read anywhere.
func fromMemory(of *plan.Material, m wood.Movement) []diag.Note {
	if m.Status.Verified() {
		return nil
	}
	return []diag.Note{{Span: of.SpeciesName.Span, Message: "how far this wood moves is a figure from memory, check it"}}
}

// solidPane is a panel or a back of solid wood across its grain, free to move between walls
// that are known. One that is cut wrong for the day it is cut, or that is glued in, is left to
// the rules that say so.
type solidPane struct {
	pane
	of         *plan.Material
	humid, dry wood.Movement
	width      wood.Length
}

func solidPanes(pass *Pass, yield func(solidPane)) {
	for n := range plan.AllOf[*plan.Panel](pass.Plan) {
		s := solidPane{of: n.Of.Material.To, width: n.Size.Wide.Length}
		var placed, moves bool
		s.pane, placed = paneOf(n, n.Across())
		s.humid, s.dry, moves = pass.Plan.Seasons(s.of)
		least := panelSpare
		if n.Word == "back" {
			least = backSpare
		}
		if !placed || !moves || !s.held() || !n.Size.Wide.Known() || gluedFast(n) || s.fault(pass, least) != "" {
			continue
		}
		yield(s)
	}
}

// gluedFast reports whether a solid panel cannot move for glue.
func gluedFast(n *plan.Panel) bool {
	m := n.Of.Material.To
	return m != nil && m.Kind == plan.Solid && (n.GlueAt.Is == "all" || n.GlueAt.Is == "edges")
}

// at is where what fixes its width stands.
func (s solidPane) at() diag.Span {
	if s.said.How != plan.Written && s.gap.How == plan.Written {
		return standing(s.Span, s.gap.Span)
	}
	return standing(s.Span, s.said.Span)
}

// wet and dried are how wide it gets.
func (s solidPane) wet() wood.Length   { return s.width + s.humid.Change(s.width) }
func (s solidPane) dried() wood.Length { return s.width + s.dry.Change(s.width) }

// hold is how far a panel of some width stays in its shallower groove where it matters most.
func (s solidPane) hold(width wood.Length) wood.Length {
	gap := s.bottoms - width
	if !s.Loose() {
		gap /= 2
	}
	return min(s.near, s.far) - gap
}

// mends are what puts a panel right that gets too wide or too narrow: the width for the seasons,
// where there is one; else a deeper groove, or less movement.
func (s solidPane) mends(p *plan.Plan) []diag.Fix {
	narrowest, widest, _ := p.PanelWidths(s.Panel)
	width, _ := p.PanelWidth(s.Panel)
	var fixes []diag.Fix
	switch {
	case s.Word == "back":
		fixes = append(fixes, diag.Fix{Title: fmt.Sprintf("make it no wider than %s, or of boards that lie over one another, or of a sheet", exact(p, p.Tape.Floor(widest)))})
	case narrowest > widest || width < narrowest:
		fixes = append(fixes, diag.Fix{Title: "no width serves in these grooves: make them deeper, use wood that is sawn quarter, or narrower panels"})
	case s.Made.On:
		if over := s.width - width; over > 0 && s.said.How == plan.Written {
			fixes = []diag.Fix{takeOff(p, over, "width", s.setting(), s.said.Span, width, false)}
		}
	case s.gap.How == plan.Written || s.gap.How == plan.Default:
		gap := s.bottoms - width
		fixes = append(fixes, diag.Fix{Title: fmt.Sprintf("make it %s, which is a gap of %s: the middle of what the seasons allow", exact(p, width), exact(p, gap))})
	case s.said.How == plan.Written && wood.Same(width, s.worked.Length):
		fixes = s.mend(p)
	}
	if s.Loose() {
		fixes = append(fixes, diag.Fix{Title: "keep it in the middle with a pin or with spacers, and say `float` alone"})
	}
	return fixes
}
