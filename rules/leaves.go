package rules

// All that is laid with a veneer in a plan, against the leaves that there are.

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// laid are the plies of one veneer in one thing: with the grain of the ply and across it.
type laid struct {
	plan.Workpiece
	long, wide wood.Length
	ply        int // the first of them, from 0
	plies      int // how many there are in one piece
	pieces     int
	full       int         // strips as wide as a leaf is usable, in one ply
	rest       wood.Length // a narrower one beside them; 0 where there is none
}

// checkAllLeaves reports each veneer whose leaves cannot do for all that is laid with it, unless a set
// of which that was said is laid with it.
func checkAllLeaves(pass *Pass, said map[*plan.Material]bool) {
	p := pass.Plan
	all := laidWithEach(p)
	for _, skin := range p.Materials {
		if of := all[skin]; len(of) > 0 && !said[skin] && sizedLeaf(skin) {
			checkEnough(pass, skin, of)
		}
	}
}

// sizedLeaf reports whether a plan says how large the leaves of a veneer are.
func sizedLeaf(skin *plan.Material) bool {
	return skin.Wide.Known() && skin.Long.Known() && wood.Over(skin.Long.Length, 0)
}

// mostStrips bounds how many strips side by side are counted, and how many pieces, so that counts of counts stay numbers.
const mostStrips = 1_000_000

// laidWithEach gathers the plies of every veneer. A ply at a slant is left out, and so is a layup in a layup.
func laidWithEach(p *plan.Plan) map[*plan.Material][]laid {
	all := make(map[*plan.Material][]laid)
	pieces := p.Pieces()
	for m := range layups(p) {
		for _, w := range p.MadeOf(m) {
			long, wide, ok := pressedSize(w)
			if !ok {
				continue
			}
			for i, ply := range m.Plies {
				angle, known := ply.Turned()
				l := laid{Workpiece: w, long: long, wide: wide, ply: i, plies: 1, pieces: min(w.Pieces(pieces), mostStrips)}
				switch {
				case ply.Of.To.Kind != plan.Veneer || !known || angle != 0 && angle != 90:
					continue
				case angle == 90:
					l.long, l.wide = wide, long
				}
				of := all[ply.Of.To]
				if n := len(of); n > 0 && of[n-1].Thing == w.Thing && of[n-1].long == l.long && of[n-1].wide == l.wide {
					of[n-1].plies++
					continue
				}
				all[ply.Of.To] = append(of, l)
			}
		}
	}
	return all
}

// pressedSize is how large a thing is as it comes from the press: without the edging that goes on
// afterwards. It is false where that is not known.
func pressedSize(w plan.Workpiece) (long, wide wood.Length, ok bool) {
	long, wide = w.Size.Long.Length, w.Size.Wide.Length
	var edging []*plan.Edging
	grain, flat := plan.Across, plan.Down // of what has no place: its length is its grain, its front a long edge
	switch t := w.Thing.(type) {
	case *plan.Part:
		edging = t.Edging
	case *plan.Member:
		edging = t.Edging
		if t.Parent != nil {
			grain, flat = t.Grain, t.Flat
		}
	case *plan.Panel:
		edging, grain, flat = t.Edging, t.Grain, plan.Behind
	}
	for _, e := range edging {
		thick := e.Of.Thick()
		if !thick.Known() {
			return 0, 0, false
		}
		if e.Under.On {
			continue
		}
		l, w := e.Strips(grain, flat)
		long -= wood.Length(l) * thick.Length
		wide -= wood.Length(w) * thick.Length
	}
	return long, wide, long > 0 && wide > 0
}

// checkEnough reports a veneer whose leaves are shorter than what is laid with them, or too few.
func checkEnough(pass *Pass, skin *plan.Material, all []laid) {
	p := pass.Plan
	trim := skin.Trim.Or(pass.Length(leafTrim, skin.Name.Text)).Length
	usable := skin.Wide.Length - 2*trim
	if usable <= 0 {
		return
	}
	f := diag.Finding{Subject: skin.Name.Text}
	for i := range all {
		l := &all[i]
		if wood.Over(l.long, skin.Long.Length) {
			f.Span = standing(skin.Name.Span, skin.Long.Span)
			f.Message = fmt.Sprintf("the leaves of %s are %s long, and ply %d of %s takes %s", quote(skin.Name.Text), p.ShowSaid(skin.Long), l.ply+1, l.Path, exact(p, l.long))
			f.Notes = []diag.Note{{Span: pieceAt(l.Workpiece), Message: "it stands here"}}
			f.Fixes = []diag.Fix{{Title: "lay it with longer leaves, or turn the ply"}}
			pass.Report(f)
			return
		}
		whole := l.wide + 2*trim
		l.full = min(int(whole/usable), mostStrips)
		if rest := whole - wood.Length(l.full)*usable; wood.Over(rest, 0) {
			l.rest = rest
		}
	}
	need := leastLeaves(all, usable, skin.Long.Length)
	if !skin.Leaves.Known() || need <= skin.Leaves.N {
		return
	}
	f.Span = standing(skin.Name.Span, skin.Leaves.Span)
	f.Message = fmt.Sprintf("all that is laid with %s takes %d leaves at the least, and there are %d", quote(skin.Name.Text), need, skin.Leaves.N)
	f.Working = append(p.Paper().Start(skin.Wide.Length, "width of a leaf").Minus(trim, "trimmed off one edge").Minus(trim, "off the other").Equals("usable").Working(),
		laidSteps(p, all)...)
	f.Working = append(f.Working, diag.Step{Op: diag.Equals, Value: itoa(need), Label: fmt.Sprintf("leaves, %s long and cut up as well as they can be", p.ShowSaid(skin.Long))},
		diag.Step{Op: diag.Versus, Value: itoa(skin.Leaves.N), Label: "stated"})
	f.Fixes = []diag.Fix{{Title: fmt.Sprintf("order %d, and a quarter to a half more, a figure from memory; or lay backs and inner plies with another veneer", need)}}
	pass.Report(f)
}

// leastLeaves is a number of leaves below which nobody can stay, however the leaves are cut up: by
// their area, and by the strips of which no two come from one leaf, since they are more than half as long
// and more than half as wide.
func leastLeaves(all []laid, usable, long wood.Length) int {
	area, alone := 0.0, 0
	for _, l := range all {
		times := l.plies * l.pieces
		area += float64(times) * (float64(l.full)*float64(usable) + float64(l.rest)) * float64(l.long)
		if wood.Over(2*l.long, long) {
			alone += times * l.full
			if wood.Over(2*l.rest, usable) {
				alone += times
			}
		}
	}
	const rounding = 1e-6 // of a leaf
	return max(alone, int(math.Ceil(area/(float64(usable)*float64(long))-rounding)))
}

// laidSteps are the lines of a working that say what is laid; of many, the first ones.
func laidSteps(p *plan.Plan, all []laid) (steps diag.Working) {
	const most = 8
	for i, l := range all {
		s := diag.Step{Value: itoa(l.plies * l.pieces), Label: fmt.Sprintf("of %s, %s long and %s wide", l.Path, p.Show(l.long), p.Show(l.wide))}
		if i > 0 {
			s.Op = diag.Plus
		}
		if i == most && len(all) > most+1 {
			return append(steps, diag.Step{Op: diag.Plus, Label: fmt.Sprintf("those of %d more", len(all)-most)})
		}
		steps = append(steps, s)
	}
	return steps
}

// LeafPlan is a way to cut up the leaves of a veneer for all that is laid with it in a plan.
type LeafPlan struct {
	Skin   *plan.Material
	Leaves int // how many that takes
	Cuts   []LeafCut
}

// LeafCut is how some leaves are cut to length, alike.
type LeafCut struct {
	Leaves int
	Strips []Strip // the longest first
}

// Strip is a length that is cut from one leaf so many times.
type Strip struct {
	Times int
	Long  wood.Length
}

// LeafLonger is how much longer than what it covers a leaf is cut, a figure from memory.
func LeafLonger(p *plan.Plan) wood.Length { return leafLonger.in(p) }

// LeafPlans are those of the veneers whose leaves have a known size and are long enough. Each strip takes the
// whole width of a leaf, also where it covers less. It fills leaf after leaf with the longest strips that still go in,
// which may take a few leaves more than the best way would.
func LeafPlans(p *plan.Plan) (all []LeafPlan) {
	laid := laidWithEach(p)
	for _, skin := range p.Materials {
		trim := skin.Trim.Or(leafTrim.in(p)).Length
		usable := skin.Wide.Length - 2*trim
		if len(laid[skin]) == 0 || !sizedLeaf(skin) || usable <= 0 {
			continue
		}
		strips := make(map[wood.Length]int)
		fits := true
		for _, l := range laid[skin] {
			fits = fits && !wood.Over(l.long, skin.Long.Length)
			strips[min(l.long+leafLonger.in(p), skin.Long.Length)] += l.plies * l.pieces * min(max(ceil(l.wide+2*trim, usable), 1), mostStrips)
		}
		if fits {
			all = append(all, cutUp(skin, strips))
		}
	}
	return all
}

// cutUp fills leaves with strips, of which it is known how many there are of each length.
func cutUp(skin *plan.Material, strips map[wood.Length]int) LeafPlan {
	lengths := slices.SortedFunc(maps.Keys(strips), func(a, b wood.Length) int { return cmp.Compare(b, a) })
	out := LeafPlan{Skin: skin}
	for len(lengths) > 0 {
		var cut LeafCut
		left, times := skin.Long.Length+wood.Slack, math.MaxInt
		for _, long := range lengths {
			if n := min(strips[long], int(left/long)); n > 0 {
				cut.Strips = append(cut.Strips, Strip{n, long})
				left -= wood.Length(n) * long
				times = min(times, strips[long]/n)
			}
		}
		cut.Leaves = times
		for _, s := range cut.Strips {
			strips[s.Long] -= times * s.Times
		}
		lengths = slices.DeleteFunc(lengths, func(l wood.Length) bool { return strips[l] == 0 })
		out.Cuts = append(out.Cuts, cut)
		out.Leaves += times
	}
	return out
}
