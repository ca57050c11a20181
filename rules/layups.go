package rules

// What the rules about layups share: which plies mirror which, and how they differ.

import (
	"fmt"
	"iter"
	"math"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// layups ranges over the layups of a plan that have a name, plies to compare, and all of whose
// materials are known.
func layups(p *plan.Plan) iter.Seq[*plan.Material] {
	return func(yield func(*plan.Material) bool) {
		for _, m := range p.Materials {
			if m.Kind != plan.Layup || m.Name.Text == "" || len(m.Plies) < 2 {
				continue
			}
			known := true
			for _, ply := range m.Plies {
				known = known && ply.Of.To != nil
			}
			if known && !yield(m) {
				return
			}
		}
	}
}

// plyNamed is what a message calls a ply: `ply 3 "core"`.
func plyNamed(m *plan.Material, i int) string {
	return fmt.Sprintf("ply %d %s", i+1, quote(m.Plies[i].Of.Name))
}

// turned is by how many degrees the grain of two plies lies apart, up to 90, and whether both have a grain
// and the plan says how it runs.
func turned(a, b *plan.Ply) (degrees float64, ok bool) {
	da, oka := a.Turned()
	db, okb := b.Turned()
	if !oka || !okb || a.Of.To.Grainless() || b.Of.To.Grainless() {
		return 0, false
	}
	apart := math.Mod(math.Abs(da-db), 180)
	return min(apart, 180-apart), true
}

// unlikeness is in what two plies differ that mirror one another.
type unlikeness struct {
	face, back int // the plies, from 0
	of         []string
	says       []string // what the back one is, and the face one: "1/16 thick for 1/32"
	turned     bool     // their grain runs differently
}

// bands are how far two mirrored plies may differ.
type bands struct {
	thick, swells float64 // percent
	moisture      float64 // points
	degrees       float64
}

// unlike compares a ply with its mirror, counted from the face.
func unlike(p *plan.Plan, m *plan.Material, face int, within bands) unlikeness {
	back := len(m.Plies) - 1 - face
	u := unlikeness{face: face, back: back}
	a, b := m.Plies[face], m.Plies[back]
	differ := func(of, format string, args ...any) {
		u.of = append(u.of, of)
		u.says = append(u.says, fmt.Sprintf(format, args...))
	}
	ta, tb := a.Thickness(), b.Thickness()
	if ta.Known() && tb.Known() && apart(float64(ta.Length), float64(tb.Length)) > within.thick {
		differ("thickness", "%s thick for %s", p.ShowSaid(tb), p.ShowSaid(ta))
	}
	if material, of := otherStuff(a.Of.To, b.Of.To, within.swells); material {
		differ(of, "%s for %s", stuffNamed(b.Of.To), stuffNamed(a.Of.To))
	}
	if ga, gb := laidWith(m, a), laidWith(m, b); ga != "" && gb != "" && ga != gb {
		differ("glue", "laid with %s for %s", quote(gb), quote(ga))
	}
	if na, nb := a.Press.Or(1), b.Press.Or(1); na != nb {
		differ("pressing", "in pressing %d for %d", nb, na)
	}
	if ma, mb := p.MoistureOf(a), p.MoistureOf(b); math.Abs(ma-mb) > within.moisture {
		differ("moisture", "at %s%% for %s%%", number(mb), number(ma))
	}
	if degrees, ok := turned(a, b); ok && degrees > within.degrees {
		u.turned = true
	}
	return u
}

// laidWith is the name of the glue that a ply is laid with; "" where the plan says none.
func laidWith(m *plan.Material, ply *plan.Ply) string {
	if ply.Glue.Said() {
		return ply.Glue.Name
	}
	return m.Glue.Name
}

// unlikePairs are the mirrored plies of a layup that differ, the outermost first.
func unlikePairs(p *plan.Plan, m *plan.Material, within bands) (all []unlikeness) {
	for face := range len(m.Plies) / 2 {
		if u := unlike(p, m, face, within); u.turned || len(u.of) > 0 {
			all = append(all, u)
		}
	}
	return all
}

// onlyTurned reports whether mirrored plies differ in nothing but the direction of their grain.
func onlyTurned(all []unlikeness) bool {
	return !slices.ContainsFunc(all, func(u unlikeness) bool { return len(u.of) > 0 })
}

// apart is by how many percent of the greater two figures differ.
func apart(a, b float64) float64 {
	if a == b {
		return 0
	}
	return 100 * math.Abs(a-b) / max(math.Abs(a), math.Abs(b))
}

// otherStuff reports whether two materials differ in more than a band of how far they swell, and in
// which property a maker would say so. Two layups, or two woods of which nothing is known, are
// taken to be alike.
func otherStuff(a, b *plan.Material, percent float64) (differ bool, of string) {
	solid := func(m *plan.Material) bool { return m.Kind == plan.Solid || m.Kind == plan.Veneer }
	switch {
	case a == b || a.Kind == plan.Layup || b.Kind == plan.Layup:
		return false, ""
	case a.Kind == plan.Sheet && b.Kind == plan.Sheet:
		return a.SheetKind.Is != b.SheetKind.Is, "kind of sheet"
	case !solid(a) || !solid(b):
		return true, "material"
	case a.Species == nil || b.Species == nil:
		return false, ""
	}
	swellsA, okA := swells(a)
	swellsB, okB := swells(b)
	of = "wood"
	if a.Species == b.Species {
		of = "cut"
	}
	return okA && okB && apart(swellsA, swellsB) > percent, of
}

// swells is by what fraction a wood grows across its grain for 1 % of moisture, at 10 %.
func swells(m *plan.Material) (rate float64, ok bool) {
	moves, ok := m.Species.Moves(m.Rings(), 10, 11)
	return moves.Rate, ok
}

// stuffNamed is what a material is, in words.
func stuffNamed(m *plan.Material) string {
	switch {
	case m.Kind == plan.Sheet:
		return m.SheetKind.Is
	case m.Species != nil && m.Rings() == wood.Quarter:
		return "quartered " + m.Species.Name
	case m.Species != nil:
		return m.Species.Name
	}
	return quote(m.Name.Text)
}

func join(list []string) string { return strings.Join(list, ", ") }
