package rules

// What the rules about slots share: the grooves and dadoes whose width the plan states, and the
// thickness that goes into each.

import (
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// slotted is what goes into a slot of stated width.
type slotted struct {
	subject string
	slot    plan.Length
	thick   plan.Length    // of what goes into it
	sheet   *plan.Material // the sheet that gives that thickness; nil where something else does
	cut     string         // what the slot is: `dado`
	what    string         // what goes into it: `shelf`
}

// slots ranges over the housings, grooves of tongues, panels and backs, and grooves of drawers' bottoms whose
// widths are stated. A solid panel without a tongue, and a solid bottom, are worked down at their edges.
func slots(p *plan.Plan) iter.Seq[slotted] {
	return func(yield func(slotted) bool) {
		ok := true
		add := func(subject string, slot, thick plan.Length, of *plan.Material, cut, what string) {
			if ok && slot.How == plan.Written && thick.Known() {
				ok = yield(slotted{subject, slot, thick, sheetOf(of, thick), cut, what})
			}
		}
		for h := range housings(p, plan.Housing, plan.Dado) {
			what := h.what
			if h.end != nil {
				what = "board" // one line says it of several
			}
			add(h.subject, h.SlotWide, h.thick, h.of, h.Kind.Is, what)
		}
		for t := range tongues(p) {
			add(t.subject, t.Groove.Across, t.Thick, nil, "groove", "tongue")
		}
		for n := range plan.AllOf[*plan.Panel](p) {
			switch {
			case n.Tongue.Across.Known():
				add(plan.PathOf(n), n.Groove.Across, n.Tongue.Across, nil, "groove", "tongue")
			case pressed(n.Of.Material.To) && !n.Bevel.Known():
				add(plan.PathOf(n), n.Groove.Across, n.Size.Thick, n.Of.Material.To, "groove", n.Word)
			}
		}
		for d := range plan.AllOf[*plan.Drawer](p) {
			if b := d.BottomAs; b != nil && d.Bottom != nil && pressed(d.Bottom.Of) {
				add(plan.PathOf(d), b.Groove.Across, d.Bottom.Size.Thick, d.Bottom.Of, "groove", "bottom")
			}
		}
	}
}

// pressed reports whether a material comes, or is pressed, in one thickness.
func pressed(of *plan.Material) bool { return of != nil && of.Kind != plan.Solid }

// sheetOf is the sheet whose own thickness a thickness is.
func sheetOf(of *plan.Material, thick plan.Length) *plan.Material {
	if of != nil && of.Kind == plan.Sheet && wood.Same(thick.Length, of.Thickness().Length) {
		return of
	}
	return nil
}

// called reports whether nobody has measured what goes into a slot: it is plywood by its name alone. Boards of
// fibres and chips are near enough as thick as they are called.
func (s slotted) called() bool {
	if s.sheet == nil || s.sheet.Actual.How != plan.Unknown {
		return false
	}
	kind := s.sheet.SheetKind.Is
	return kind == "plywood" || kind == "osb"
}

// play is how much wider the slot is than what goes into it.
func (s slotted) play() wood.Length { return s.slot.Length - s.thick.Length }

// finding is what is wrong with a slot of which it is known what goes into it.
func (s slotted) finding(p *plan.Plan, message string) diag.Finding {
	f := diag.Finding{
		Subject: s.subject, Span: s.slot.Span, Message: message,
		Fixes: []diag.Fix{{Title: "cut the " + s.cut + " to the thickness that is measured, or leave its width out: it is then as wide as the " + s.what + " is thick"}},
	}
	if s.thick.Span.Known() {
		f.Notes = []diag.Note{{Span: s.thick.Span, Message: "its thickness is said here"}}
	}
	return f
}
