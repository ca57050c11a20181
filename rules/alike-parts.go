package rules

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var alikeParts = &Rule{
	Name: "alike-parts", Group: Hygiene, Severity: diag.Warning,
	Summary: "two parts are alike in everything but their names",
	Doc: `Parts of one wood, one size and one shape are interchangeable: two names for them put them on two lines of the cutting
list, they are set up and cut twice, and one of them is forgotten.

Draw the part once and say how many there are: "part leg x 4". Where they do differ in what the plan does not say, such as
the side on which a mortise is, name them in a set, or give them names that say it: "left" and "right" count as a
handed pair.`,
	Sources: "Common practice, no source.",
	Sound:   `A left and a right side of one size, two parts of one size and two woods, and two that a set names together.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
part leg-one x 2 { of oak ; size 28 1/4 x 2 x 2 }
part leg-two x 2 { of oak ; size 28 1/4 x 2 x 2 }
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
part leg x 4 { of oak ; size 28 1/4 x 2 x 2 }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		inSet := make(map[any]bool)
		for _, s := range p.Sets {
			for _, ref := range s.Parts {
				if ref.To != nil {
					inSet[ref.To.Is] = true
				}
			}
		}
		bySize := make(map[sizeKey][]*plan.Part)
		for _, part := range p.Parts {
			if part.Name.Text == "" || inSet[part] || !measured(part) {
				continue
			}
			key := keyOf(part)
			for _, other := range bySize[key] {
				if other.Name.Text != part.Name.Text && sameParts(other, part) && !handed(other.Name.Text, part.Name.Text) {
					reportAlike(pass, other, part)
					break
				}
			}
			if len(bySize[key]) < mostAlike {
				bySize[key] = append(bySize[key], part)
			}
		}
	},
}

func reportAlike(pass *Pass, a, b *plan.Part) {
	if a.Name.Text > b.Name.Text { // the order of the text never matters
		a, b = b, a
	}
	p := pass.Plan
	pass.Report(diag.Finding{
		Subject: plan.PathOf(b),
		Span:    b.Name.Span,
		Message: fmt.Sprintf("parts %s and %s are alike: %s x %s x %s of %s", quote(a.Name.Text), quote(b.Name.Text),
			p.Show(b.Size.Long.Length), p.Show(b.Size.Wide.Length), p.Show(b.Size.Thick.Length), b.Of.Material.Name),
		Notes: []diag.Note{{Span: a.Name.Span, Message: "this is the other"}},
		Fixes: []diag.Fix{{Title: fmt.Sprintf("draw it once, as `part %s x %d`", a.Name.Text, a.Count.Or(1)+b.Count.Or(1))}},
	})
}

// sizeKey brings together the parts that may be alike; sizes count in hundredths of a
// millimetre, so that 1/3 written twice is one length.
type sizeKey struct {
	of                *plan.Material
	long, wide, thick wood.Length
}

func keyOf(part *plan.Part) sizeKey {
	round := func(l plan.Length) wood.Length {
		const step = wood.Millimetre / 100
		return (l.Length + step/2) / step
	}
	return sizeKey{part.Of.Material.To, round(part.Size.Long), round(part.Size.Wide), round(part.Size.Thick)}
}

// mostAlike bounds how many parts of one size each other one is compared with.
const mostAlike = 20

func measured(part *plan.Part) bool {
	s := part.Size
	return part.Of.Material.To != nil && s.Long.Known() && s.Wide.Known() && s.Thick.Known()
}

// sameParts reports whether two parts of one material and size agree in all else that a plan says.
func sameParts(a, b *plan.Part) bool {
	same := func(x, y plan.Length) bool { return x.Known() == y.Known() && wood.Same(x.Length, y.Length) }
	return a.GrainSaid.Is == b.GrainSaid.Is && a.Made.On == b.Made.On && a.Boards.Or(1) == b.Boards.Or(1) &&
		same(a.Chamfer, b.Chamfer) && same(a.Round, b.Round) && same(a.Arch, b.Arch) && same(a.Taper, b.Taper) &&
		same(a.Notch.Across, b.Notch.Across) && same(a.Notch.Deep, b.Notch.Deep) && same(a.Horns, b.Horns) &&
		a.Bevel.Value == b.Bevel.Value && a.Joint == nil && b.Joint == nil &&
		len(a.EndJoints)+len(b.EndJoints)+len(a.Edging)+len(b.Edging) == 0 && len(a.Holds)+len(b.Holds) == 0
}

// hands are the words by which two parts of one size are told apart on purpose.
var hands = [][2]string{
	{"left", "right"}, {"front", "back"}, {"front", "rear"}, {"top", "bottom"}, {"upper", "lower"}, {"head", "foot"}, {"near", "far"},
}

// handed reports whether two names say that their parts are a handed pair.
func handed(a, b string) bool {
	for _, h := range hands {
		if has(a, h[0]) && has(b, h[1]) || has(a, h[1]) && has(b, h[0]) {
			return true
		}
	}
	return false
}

func has(name, word string) bool {
	for part := range strings.FieldsFuncSeq(strings.ToLower(name), func(r rune) bool { return r == '-' || r == '_' }) {
		if part == word {
			return true
		}
	}
	return false
}
