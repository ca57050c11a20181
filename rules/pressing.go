package rules

// What the rules about presses and clamps share: how hard a glue line is to be pressed.

import (
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	pressVeneer = &Figure{
		Name: "veneer", Why: "how hard veneers and boards are pressed together in a press or under cauls", Basis: Memory,
		Source: "two thirds of the weight of the air", Dim: lang.Pressure, Number: 10 * wood.PSI,
	}
	pressSoft = &Figure{
		Name: "softwood", Why: "how hard an edge of softwood is clamped at least", Basis: Memory,
		Source: "100 to 150 psi", Dim: lang.Pressure, Number: 100 * wood.PSI,
	}
	pressHard = &Figure{
		Name: "hardwood", Why: "how hard an edge of hardwood is clamped at least", Basis: Memory,
		Source: "150 to 250 psi", Dim: lang.Pressure, Number: 150 * wood.PSI,
	}
)

// wantedOnEdge is how hard an edge of a wood is to be clamped with a glue: as the glue says, else by
// the wood. It is false where neither is known.
func wantedOnEdge(pass *Pass, glue *plan.Glue, of *plan.Material, subject string) (pascals float64, fromMemory, ok bool) {
	switch {
	case glue != nil && glue.Pressure.Known():
		return glue.Pressure.Value, false, true
	case of == nil || of.Species == nil:
		return 0, false, false
	case of.Species.Group == wood.Softwood:
		return pass.Number(pressSoft, subject), true, true
	case of.Species.Group == wood.Hardwood:
		return pass.Number(pressHard, subject), true, true
	}
	return 0, false, false
}

// wantedInPress is how hard a layup is to be pressed: as veneers are, or as its glue says where
// that is less. What a label asks for on edges no bag can give.
func wantedInPress(pass *Pass, m *plan.Material, subject string) (pascals float64, fromMemory bool) {
	usual := pass.Number(pressVeneer, subject)
	if g := m.Glue.To; g != nil && g.Pressure.Known() && g.Pressure.Value < usual {
		return g.Pressure.Value, false
	}
	return usual, true
}

// intoPress ranges over what goes into the shop's press: what is made of a layup and of a known
// size, and is not said to be pressed under clamps.
func intoPress(p *plan.Plan) iter.Seq[plan.Workpiece] {
	return func(yield func(plan.Workpiece) bool) {
		clamped := make(map[any]bool)
		for _, steps := range p.Steps {
			for _, step := range steps.Steps {
				for _, on := range step.On {
					if on.To != nil && step.Verb == "press" && len(step.Clamps) > 0 {
						clamped[on.To.Is] = true
					}
				}
			}
		}
		for w := range p.Workpieces() {
			if w.Of.Kind == plan.Layup && w.Of.Name.Text != "" && len(w.Of.Plies) > 1 && !clamped[w.Thing] && !clamped[w.Of] &&
				w.Size.Long.Known() && w.Size.Wide.Known() && !yield(w) {
				return
			}
		}
	}
}

// area is that of a length and a width in square metres.
func area(long, wide wood.Length) float64 {
	return float64(long) / float64(wood.Metre) * float64(wide) / float64(wood.Metre)
}

// pieceAt is where a thing that is cut from a material stands.
func pieceAt(w plan.Workpiece) diag.Span {
	switch t := w.Thing.(type) {
	case *plan.BoxPart:
		return t.Span
	case plan.Node:
		return plan.It(t).Name.Span
	}
	return diag.Span{}
}
