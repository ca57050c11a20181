package rules

// What the rules about drawers share: what a drawer runs on, and how what a plan says of it is mended.

import (
	"fmt"
	"iter"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

const (
	sideMount  = "side-mount"
	undermount = "undermount"
)

// inChest is a plan with one drawer in an opening of 20 x 6 and 22 deep, for what a rule shows.
func inChest(supplies, settings string) string {
	if supplies != "" {
		supplies += "\n"
	}
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
` + supplies + `case chest {
  wide 21 1/2 ; high 7 1/2 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  across {
    side left
    down {
      top head
      drawer only {
        of oak 1/2 ; fit inset ; reveal 1/16
        corner back dado deep 1/4
        ` + strings.ReplaceAll(settings, "\n", "\n        ") + `
      }
      bottom floor
    }
    side right
  }
}
`
}

// slideOf is the pair of slides that a drawer hangs on, and of which kind it is; nil where it hangs on none.
func slideOf(d *plan.Drawer) (*plan.Slide, string) {
	s := d.Slide.To
	switch {
	case s == nil:
		return nil, ""
	case s.Kind.Is == "" && s.Less.Known():
		return s, undermount
	case s.Kind.Is == "" && s.Room.Known():
		return s, sideMount
	}
	return s, s.Kind.Is
}

// onRunners reports whether a plan says that a drawer slides on wood.
func onRunners(d *plan.Drawer) bool {
	return !d.Slide.Said() && (d.Runner.Said() || d.Gap.Known() || hasStick(plan.Neighbour(d, plan.Lower), "runner"))
}

// hasStick reports whether a thing is a stick of one of some words, or holds one.
func hasStick(n plan.Node, words ...string) bool {
	for inner := range nearDrawer(n) {
		if m, ok := inner.(*plan.Member); ok && slices.Contains(words, m.Word) {
			return true
		}
	}
	return false
}

// usual marks a finding that rests on what is usual for slides, where they do not say it themselves.
func usual(f *diag.Finding, s *plan.Slide, setting string, said plan.Length, basis string) {
	if said.How != plan.Unknown {
		return
	}
	f.Severity = diag.Warning
	f.Notes = append(f.Notes, diag.Note{Span: s.Name.Span, Message: fmt.Sprintf("the slide does not say what it wants (`%s`): this is %s", setting, basis)})
}

// drawerAt is what is wrong with a drawer as one line of the plan makes it: it is said once for all
// drawers that the line speaks of.
type drawerAt struct {
	span      diag.Span
	build     *plan.Build
	is, wants wood.Length
}

// drawerLine is the line that says a size of a drawer; that of its name where the size is worked out.
func drawerLine(d *plan.Drawer, said plan.Length) diag.Span { return standing(d.Name.Span, said.Span) }

// rewrite is the mend that writes a setting of a drawer anew, or says what can still be done with a drawer
// that is cut. What `each` says of it, and what is built or stands in a row, may be right for another drawer, and is
// left to the maker.
func rewrite(p *plan.Plan, d *plan.Drawer, setting string, field func(*plan.Drawer) plan.Length, to wood.Length) diag.Fix {
	said := field(d)
	write := cutTo(p, said.Span, to)
	alone := said.How == plan.Written && d.In.Build == nil && d.Row == "" && !saidOfEach(d, field)
	size := map[string]string{"wide": "width", "high": "height"}[setting]
	fix := diag.Fix{Title: fmt.Sprintf("write `%s %s`", setting, write)}
	switch {
	case d.Made.On && size != "" && said.Length > to:
		return takeOff(p, said.Length-to, size, setting, said.Span, to, alone)
	case d.Made.On && setting == "slot":
		fix.Title = "file the slot longer, and " + fix.Title
	case d.Made.On:
		fix.Title = fmt.Sprintf("make the box anew, with `%s %s`", setting, write)
	case alone:
		fix.Edits = []diag.Edit{{Span: said.Span, Text: write}}
	}
	return fix
}

// saidOfEach reports whether a size of a drawer is said of all drawers of its assembly.
func saidOfEach(d *plan.Drawer, field func(*plan.Drawer) plan.Length) bool {
	each, ok := d.In.Each["drawer"].(*plan.Drawer)
	return ok && field(each).Span == field(d).Span
}

func boxWide(d *plan.Drawer) plan.Length { return d.Wide }
func boxHigh(d *plan.Drawer) plan.Length { return d.High }

// bottomUp and bottomSlot are what a drawer says of its bottom.
func bottomUp(d *plan.Drawer) plan.Length   { return bottomOf(d).Up }
func bottomSlot(d *plan.Drawer) plan.Length { return bottomOf(d).Slot }

func bottomOf(d *plan.Drawer) plan.DrawerBottom {
	if d.BottomAs == nil {
		return plan.DrawerBottom{}
	}
	return *d.BottomAs
}

// backGrooved reports whether the back is grooved for the bottom, as the sides are.
func backGrooved(d *plan.Drawer) bool { return d.BackAs != nil && d.BackAs.Back.Is == "grooved" }

// Bounds of the work on one drawer: of what lies beside it so many things are looked at, and
// of what is before it so many layers.
const (
	mostNear   = 200
	mostLayers = 8
)

// nearDrawer ranges over something beside a drawer and all that stands in it, in order.
func nearDrawer(n plan.Node) iter.Seq[plan.Node] {
	return func(yield func(plan.Node) bool) {
		left := mostNear
		var walk func(plan.Node) bool
		walk = func(n plan.Node) bool {
			if left--; left < 0 || !yield(n) {
				return false
			}
			if l, ok := n.(*plan.List); ok {
				for _, inner := range l.Items {
					if !walk(inner) {
						return false
					}
				}
			}
			return true
		}
		if n != nil {
			walk(n)
		}
	}
}

// doorsBefore ranges over the doors that stand before a drawer.
func doorsBefore(d *plan.Drawer) iter.Seq[*plan.Door] {
	return func(yield func(*plan.Door) bool) {
		n := plan.Neighbour(d, plan.Front)
		for range mostLayers {
			if n == nil {
				return
			}
			for inner := range nearDrawer(n) {
				door, ok := inner.(*plan.Door)
				if ok && shareRoom(door.Cell[plan.Across], d.Cell[plan.Across]) && shareRoom(door.Cell[plan.Down], d.Cell[plan.Down]) && !yield(door) {
					return
				}
			}
			n = plan.Neighbour(n, plan.Front)
		}
	}
}

// shareRoom reports whether two places are known and share more than a touch.
func shareRoom(a, b plan.Extent) bool {
	return a.Known() && b.Known() && wood.Under(max(a.From, b.From), min(a.To(), b.To()))
}

// depthInside is how much of a drawer's depth stands in its opening: all of it, but for a front that
// laps over the case. Of a drawer in a face frame it is not known: what is behind that is drawn elsewhere.
func depthInside(d *plan.Drawer) plan.Length {
	if d.In.Kind == plan.Frame {
		return plan.Length{}
	}
	in := d.Box[plan.Behind]
	overlay, applied := d.Fit.Kind.Is == "overlay", d.Inner != nil
	if overlay == applied || d.Front == nil {
		return in
	}
	thick := d.Front.Size.Thick
	if !in.Known() || !thick.Known() {
		return plan.Length{}
	}
	if applied {
		in.Length += thick.Length
	} else {
		in.Length -= thick.Length
	}
	return in
}
