package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	leafTrim = &Figure{
		Name: "trim", Why: "what comes off each edge of a leaf, and of a laid-out face, where the veneer does not say", Basis: Practice,
		Source: "edges of leaves are torn and dry", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
	leafLonger = &Figure{
		Name: "longer", Why: "how much longer than the face a leaf is cut", Basis: Memory,
		Source: "leaves split at their ends and slip as they are laid", Dim: lang.Length, Length: 2 * wood.Inch, Metric: 50 * wood.Millimetre,
	}
)

var leavesShort = &Rule{
	Name: "leaves-short", Group: Layups, Severity: diag.Error,
	Summary: "there are too few leaves of veneer for what is laid with them, or they are too short",
	Doc: `The last door is faced from another bundle, and everybody sees it. Leaves that are to match come from one log in the order in
which they were sliced: count them before the first is cut. A face takes as many as its width and the trimming ask for; where the figure
runs on from part to part, all widths count as one. The backs take leaves of their own, which need not match.

Order more than the bare count, a quarter to a half more, since a leaf may be split. A book match takes its leaves in pairs: an odd number in
one face leaves one without its mirror, which is a warning; lay one more, or allow it where the odd leaf is meant as the centre. A leaf hardly
longer than its face is a warning too. The rule looks at each set that says "match book skin" and whose veneer says how wide its leaves are.

Then it counts all that is laid with a veneer in the whole plan, faces, backs and inner plies of every piece, against its leaves, where the
veneer says how long, how wide and how many they are. Leaves are taken to be cut up as well as they can be, so that a real layout takes a few more.`,
	Sources: `Arithmetic. That an order wants a quarter to a half more is from memory. See the figures.`,
	Sound: `A face of 24 from four leaves of 7, and its back from four; fronts in a running match that take what their widths come to together; a set whose veneer says no
size; a book match of two; small faces of which several come from one leaf.`,
	Bad: `veneer skin { species "black walnut" ; thick 1/42 ; long 60 ; wide 7 ; leaves 3 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 48 ; wide 24 }
set "top" { parts slab ; match slip skin }
`,
	Good: `veneer skin { species "black walnut" ; thick 1/42 ; long 60 ; wide 7 ; leaves 8 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 48 ; wide 24 }
set "top" { parts slab ; match slip skin }
`,
	Figures: []*Figure{leafTrim, leafLonger},
	Check: func(pass *Pass) {
		if !slices.ContainsFunc(pass.Plan.Materials, hasLeaves) {
			return
		}
		made := make(map[any]plan.Workpiece)
		for w := range pass.Plan.Workpieces() {
			made[w.Thing] = w
		}
		said := make(map[*plan.Material]bool)
		for _, s := range pass.Plan.Sets {
			if skin := s.Skin.To; s.Name.Text != "" && s.Match.Is != "" && skin != nil && skin.Wide.Known() {
				said[skin] = checkLeaves(pass, s, faces(s, made)) || said[skin]
			}
		}
		checkAllLeaves(pass, said)
	},
}

// hasLeaves reports whether a material is a veneer whose leaves are of a known width.
func hasLeaves(m *plan.Material) bool { return m.Kind == plan.Veneer && m.Wide.Known() }

// face is a face that is laid with a veneer: with its grain, and across it.
type face struct {
	path       string
	long, wide wood.Length
	times      int
}

// faces are those of a set that are laid with its veneer and have a known size.
func faces(s *plan.Set, made map[any]plan.Workpiece) []face {
	var all []face
	for _, ref := range s.Parts {
		if ref.To == nil {
			continue
		}
		thing := ref.To.Is
		if d, ok := thing.(*plan.Drawer); ok && d.Front != nil {
			thing = d.Front
		}
		w, ok := made[thing]
		if !ok || len(w.Of.Plies) == 0 || !w.Size.Long.Known() || !w.Size.Wide.Known() {
			continue
		}
		ply := w.Of.Plies[0]
		angle, said := ply.Turned()
		f := face{ref.To.Path, w.Size.Long.Length, w.Size.Wide.Length, pieces(ref.To.Is)}
		switch {
		case ply.Of.To != s.Skin.To || !said:
			continue
		case angle == 90:
			f.long, f.wide = f.wide, f.long
		case angle != 0:
			continue
		}
		all = append(all, f)
	}
	return all
}

// checkLeaves reports one fault of a set: too few leaves, leaves too short, or an odd number in a
// face that is book-matched. It says whether it did.
func checkLeaves(pass *Pass, s *plan.Set, all []face) bool {
	p, skin := pass.Plan, s.Skin.To
	trim := skin.Trim.Or(pass.Length(leafTrim, skin.Name.Text)).Length
	usable := skin.Wide.Length - 2*trim
	if usable <= 0 || len(all) == 0 {
		return false
	}
	need, widths, longest := 0, wood.Length(0), all[0]
	var odd *face
	for i, f := range all {
		n := ceil(f.wide+2*trim, usable)
		need += n * f.times
		widths += f.wide * wood.Length(f.times)
		if f.long > longest.long {
			longest = f
		}
		if odd == nil && s.Match.Is == "book" && n > 1 && n%2 == 1 {
			odd = &all[i]
		}
	}
	if s.Match.Is == "run" {
		need = ceil(widths+2*trim, usable)
	}
	f := diag.Finding{Subject: skin.Name.Text, Span: s.Match.Span, Notes: []diag.Note{{Span: skin.Name.Span, Message: "the veneer stands here"}}}
	longer := pass.Length(leafLonger, skin.Name.Text)
	switch {
	case skin.Leaves.Known() && skin.Leaves.N < need:
		f.Message = fmt.Sprintf("set %s takes %d leaves of %s, and there are %d", quote(s.Name.Text), need, quote(skin.Name.Text), skin.Leaves.N)
		f.Working = p.Paper().Start(skin.Wide.Length, "width of a leaf").Minus(trim, "trimmed off one edge").Minus(trim, "off the other").Equals("usable").
			Start(widths, "width of the faces in all").Remark(fmt.Sprintf("with %s to trim at the outer edges: %d leaves", p.Show(trim), need)).Working()
		f.Fixes = []diag.Fix{{Title: "lay it with wider leaves, or order more: a quarter to a half over what it takes, a figure from memory"}}
	case skin.Long.Known() && wood.Under(skin.Long.Length, longest.long+longer):
		f.Message = fmt.Sprintf("the leaves of %s are %s long, for a face of %s, %s: cut them %s longer, a figure from memory, check it",
			quote(skin.Name.Text), p.ShowSaid(skin.Long), longest.path, p.Show(longest.long), p.Show(longer))
		if !wood.Under(skin.Long.Length, longest.long) {
			f.Severity = diag.Warning
		}
	case odd != nil:
		f.Severity = diag.Warning
		n := ceil(odd.wide+2*trim, usable)
		f.Message = fmt.Sprintf("a book match takes leaves in pairs, and %s takes %d: one has no mirror", odd.path, n)
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("lay %d narrower leaves, or `allow leaves-short` where the odd one is the centre", n+1)}}
	default:
		return false
	}
	pass.Report(f)
	return true
}

// ceil is how often b must be taken to make up a.
func ceil(a, b wood.Length) int {
	n := int(a / b)
	if wood.Over(a, wood.Length(n)*b) {
		n++
	}
	return n
}
