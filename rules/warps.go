package rules

// How far what is made of a layup is predicted to stand out of flat, and what it is for.

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

const warpSource = "what a catch still draws shut, and an eye passes over"

var (
	warpFree = &Figure{
		Name: "free", Why: "one in how many of its longer side a door, a lid, a drawer's front or a loose shelf may stand out of flat", Basis: Practice,
		Source: warpSource, Dim: lang.Plain, Number: 300,
	}
	warpHeld = &Figure{
		Name: "held", Why: "one in how many of its longer side a panel in grooves, a top or a board in its joints may, since its neighbours hold it flat", Basis: Practice,
		Source: "what a groove or a row of screws draws flat", Dim: lang.Plain, Number: 100,
	}
	warpLeast = &Figure{
		Name: "least", Why: "what anything may, however small it is", Basis: Practice,
		Source: "what nobody sees on a small door", Dim: lang.Length, Length: wood.Inch / 16, Metric: 15 * wood.Millimetre / 10,
	}
)

// seasonNames are the two ends of the year, as a working names them.
var seasonNames = [2]string{"at the driest", "at the most humid"}

// bent is a thing that is made of a layup, as it stands through the year.
type bent struct {
	plan.Workpiece
	use     string // what it must do: "a door must close"; "" where the plan does not say what it is
	allowed wood.Length
	warp    [2]wood.Warp // at both ends of the year
}

// long and wide are with the grain of the layup and across it.
func (b bent) long() wood.Length { return b.Size.Long.Length }
func (b bent) wide() wood.Length { return b.Size.Wide.Length }

// worst is the greater of its warps, and at which end of the year it is.
func (b bent) worst() (wood.Length, int) {
	dry, humid := b.warp[0].Worst(), b.warp[1].Worst()
	if humid > dry {
		return humid, 1
	}
	return dry, 0
}

// share is its worst warp in parts of what is allowed.
func (b bent) share() float64 {
	worst, _ := b.worst()
	return float64(worst) / float64(b.allowed)
}

// seasonMoisture is the moisture content at both ends of the year, in percent.
func seasonMoisture(p *plan.Plan) [2]float64 {
	return [2]float64{p.Climate.Dry.Moisture.Value, p.Climate.Humid.Moisture.Value}
}

// bends is how a layup bends at both ends of the year, and whether the shelf has the figures.
func bends(p *plan.Plan, layup wood.Layup) (strains [2]wood.Strain, ok bool) {
	for i, moisture := range seasonMoisture(p) {
		laminate, known := layup.At(moisture)
		if !known {
			return strains, false
		}
		if strains[i], known = laminate.Free(); !known {
			return strains, false
		}
	}
	return strains, true
}

// bentOf are the things of a known size that are made of a layup that bends so.
func bentOf(pass *Pass, m *plan.Material, strains [2]wood.Strain) (all []bent) {
	for _, w := range pass.Plan.MadeOf(m) {
		use, free := useOf(w)
		b := bent{Workpiece: w, use: use, allowed: allowedWarp(pass, w, free)}
		for i, s := range strains {
			b.warp[i] = s.Warp(b.long(), b.wide())
		}
		all = append(all, b)
	}
	return all
}

// useOf is what a thing must do that a warp keeps it from, and whether nothing holds it flat. It is
// "" of a part that nothing uses, since the plan does not say what it is for.
func useOf(w plan.Workpiece) (use string, free bool) {
	const door = "a door must close"
	switch t := w.Thing.(type) {
	case *plan.Door:
		return door, true
	case *plan.Part:
		switch {
		case w.Leaf:
			return door, true
		case len(t.Uses) > 0:
			return useOfMember(t.Uses[0])
		}
		return "", false
	case *plan.BoxPart:
		if t == t.Drawer.Front && t.Drawer.Inner == nil {
			return "a drawer's front must line up", true
		}
	case *plan.Member:
		return useOfMember(t)
	}
	return heldFlat, false
}

const heldFlat = "what holds it must draw it flat"

func useOfMember(m *plan.Member) (use string, free bool) {
	switch {
	case m.Lid != nil:
		return "a lid must close", true
	case m.Word == "shelf" && lies(m):
		return "a loose shelf must not rock", true
	}
	return heldFlat, false
}

// lies reports whether a shelf lies on pins, and nothing holds it down.
func lies(m *plan.Member) bool {
	for _, e := range m.Ends {
		if e != nil && e.Joint != nil && e.Joint.Kind.Is == plan.ShelfPin {
			return true
		}
	}
	return false
}

func allowedWarp(pass *Pass, w plan.Workpiece, free bool) wood.Length {
	parts, subject := warpHeld, plan.PathOf(w.Of)
	if free {
		parts = warpFree
	}
	longer := max(w.Size.Long.Length, w.Size.Wide.Length)
	return max(wood.Length(float64(longer)/max(pass.Number(parts, subject), 1)), pass.Length(warpLeast, subject))
}

// mostBent is the thing that stands out of flat the most for what it is for. It is false where
// there is none.
func mostBent(all []bent) (most bent, ok bool) {
	for i, b := range all {
		if i == 0 || b.share() > most.share() {
			most = b
		}
	}
	return most, len(all) > 0
}

// sized says a thing and how large it is: "box.front, 24 x 18".
func (b bent) sized(p *plan.Plan) string {
	return fmt.Sprintf("%s, %s x %s", b.Path, p.Show(b.long()), p.Show(b.wide()))
}

// may is what its use allows, down to a mark of the tape.
func (b bent) may(p *plan.Plan) string { return p.Tape.About(p.Tape.Floor(b.allowed)) }

// working is how a thing stands out of flat at both ends of the year, and what its use allows.
func (b bent) working(p *plan.Plan, layup wood.Layup) diag.Working {
	working := diag.Working{{Label: fmt.Sprintf("how far %s, would stand out of flat:", b.sized(p))}}
	for i, moisture := range seasonMoisture(p) {
		off, how := b.warp[i].InWords()
		working = append(working, diag.Step{Value: p.Tape.About(off), Label: fmt.Sprintf("%s, %s%%: %s", seasonNames[i], number(moisture), how)})
	}
	if b.use != "" {
		working = append(working, diag.Step{Op: diag.Versus, Value: b.may(p), Label: "allowed: " + b.use})
	}
	working = append(working, diag.Step{Label: wood.LayupCaveat})
	if rests := layup.Footing().Weakness(); rests != "" {
		working = append(working, diag.Step{Label: rests})
	}
	return working
}

// predicted is the working of what is made of a layup and bends most. It is empty where nothing of
// a known size is made of it, or the shelf lacks a figure.
func predicted(pass *Pass, m *plan.Material) diag.Working {
	layup, ok := pass.Plan.Pressed(m)
	if !ok {
		return nil
	}
	strains, ok := bends(pass.Plan, layup)
	if !ok {
		return nil
	}
	most, ok := mostBent(bentOf(pass, m, strains))
	if worst, _ := most.worst(); !ok || worst == 0 {
		return nil
	}
	return most.working(pass.Plan, layup)
}
