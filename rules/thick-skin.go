package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	skinVeneer = &Figure{
		Name: "veneer", Why: "up to what thickness a skin gives way to the sheet below it; a thicker one moves as solid wood does", Basis: Memory,
		Source: "an eighth of an inch is remembered; veneers of 1/100 to over 1/4 in are in Forest Products Laboratory Report 543", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	skinMoves = &Figure{
		Name: "moves", Why: "by how much wood may move across its grain where it is glued to what does not move, before it is an error", Basis: Practice,
		Source: "beyond it the glue line or the wood splits", Dim: lang.Length, Length: wood.Inch / 16, Metric: 15 * wood.Millimetre / 10,
	}
	skinMovesSome = &Figure{
		Name: "moves-some", Why: "the same, before it is worth a warning", Basis: Practice,
		Source: "half of what is an error", Dim: lang.Length, Length: wood.Inch / 32, Metric: 8 * wood.Millimetre / 10,
	}
)

var thickSkin = &Rule{
	Name: "thick-skin", Group: Layups, Severity: diag.Error,
	Summary: "a thick sawn skin is glued over sheet stock, which does not move with it",
	Doc: `A veneer of the usual 1/42 or 1/32 is so weak across its grain that the sheet below holds it. A skin that was sawn in the shop, 3/16
thick, is not: it shrinks as a board of that width does, the sheet does not, and in the first dry winter the skin splits or shears off. Nor does a
like skin on the back help, which keeps the panel flat and splits too.

Slice or saw it thinner, lay a bought veneer, or make the part of solid wood that is free to move. The rule takes the widest thing that is made
of the layup, and the season in which the skin moves most. The sheet's own growth, a small part of it, is left out.`,
	Sources: `Change of the width: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, equations 13-2 and 13-3, Table 13-5.
See the figures; that of "veneer" is from memory, and the finding says so.`,
	Sound: `Sliced veneer over fibreboard; a sawn skin of 1/8; a thick skin on a narrow part; a thick skin over crossed leaves of wood, with no
sheet in it.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
veneer skin { species "red oak" ; sawn flat ; thick 3/16 }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 }
layup board { ply skin along ; ply fibre ; ply skin along }
part slab { of board ; long 48 ; wide 24 }
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
veneer skin { species "red oak" ; sawn flat ; thick 1/42 }
sheet fibre { kind mdf ; thick 3/4 ; actual 3/4 }
layup board { ply skin along ; ply fibre ; ply skin along }
part slab { of board ; long 48 ; wide 24 }
`,
	Figures: []*Figure{skinVeneer, skinMoves, skinMovesSome},
	Check: func(pass *Pass) {
		for m := range layups(pass.Plan) {
			if hasSheet(m) {
				checkSkins(pass, m)
			}
		}
	},
}

func hasSheet(m *plan.Material) bool {
	for _, ply := range m.Plies {
		if ply.Of.To != nil && ply.Of.To.Kind == plan.Sheet {
			return true
		}
	}
	return false
}

// checkSkins reports the first of a layup's two outer plies that moves too much over the widest
// thing that is made of it.
func checkSkins(pass *Pass, m *plan.Material) {
	p := pass.Plan
	subject := plan.PathOf(m)
	for _, i := range []int{0, len(m.Plies) - 1} {
		ply := m.Plies[i]
		skin := ply.Of.To
		thick := ply.Thickness()
		if skin.Kind != plan.Veneer || skin.Species == nil || !thick.Known() || !wood.Over(thick.Length, pass.Length(skinVeneer, subject)) ||
			wood.Over(thick.Length, pass.Length(veneerThickest, skin.Name.Text)) { // which veneer-thickness says
			continue
		}
		widest, width := widestAcross(p, m, ply)
		moves, ok := yearsMost(p, ply)
		change := moves.Change(width).Abs()
		if !ok || !wood.Over(change, pass.Length(skinMovesSome, subject)) {
			continue
		}
		limit, held := pass.Length(skinMoves, subject), "is an error where it is held"
		f := diag.Finding{
			Subject: subject,
			Span:    ply.Of.Span,
			Message: fmt.Sprintf("%s of layup %s is %s thick and moves as a board does: %s across the %s of %s, over sheet stock that does not follow",
				plyNamed(m, i), quote(m.Name.Text), p.ShowSaid(thick), exact(p, change), p.Show(width), widest.Path),
			Fixes: []diag.Fix{{Title: "lay a thin veneer, or make it of solid wood that is free to move"}},
		}
		if !wood.Over(change, limit) {
			f.Severity = diag.Warning
			limit, held = pass.Length(skinMovesSome, subject), "is worth a warning where it is held"
		}
		verb := "grows"
		if moves.To < moves.From {
			verb = "shrinks"
		}
		paper := p.Paper().Start(change, fmt.Sprintf("%s from %s%% to %s%%, %.3g of its width for each 1%%", verb, number(moves.From), number(moves.To), moves.Rate)).
			Versus(limit, held).
			Remark("that a skin over " + p.Show(pass.Length(skinVeneer, subject)) + " moves as a board is a figure from memory, check it")
		if !moves.Status.Verified() {
			paper.Remark("so is how far this wood moves")
		}
		if moves.Worse {
			paper.Remark("its cut is taken as flat, which moves most")
		}
		f.Working = paper.Working()
		pass.Report(f)
		return
	}
}

// widestAcross is what is made of a layup and is widest across the grain of one of its plies, which must
// run along or across.
func widestAcross(p *plan.Plan, m *plan.Material, ply *plan.Ply) (of plan.Workpiece, width wood.Length) {
	angle, ok := ply.Turned()
	if !ok || angle != 0 && angle != 90 {
		return of, 0
	}
	for w := range p.Workpieces() {
		across := w.Size.Wide
		if angle == 90 {
			across = w.Size.Long
		}
		if w.Of == m && across.Known() && across.Length > width {
			of, width = w, across.Length
		}
	}
	return of, width
}

// yearsMost is how a ply of wood moves across its grain from the day it is pressed to the end of
// the year at which it has moved most.
func yearsMost(p *plan.Plan, ply *plan.Ply) (wood.Movement, bool) {
	species, rings, at := ply.Of.To.Species, ply.Of.To.Rings(), p.MoistureOf(ply)
	dry, ok1 := species.Moves(rings, at, p.Climate.Dry.Moisture.Value)
	humid, ok2 := species.Moves(rings, at, p.Climate.Humid.Moisture.Value)
	if humid.Change(wood.Metre).Abs() > dry.Change(wood.Metre).Abs() {
		return humid, ok1 && ok2
	}
	return dry, ok1 && ok2
}
