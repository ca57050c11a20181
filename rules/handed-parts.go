package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var handedParts = &Rule{
	Name: "handed-parts", Group: Lengths, Severity: diag.Error,
	Summary: "a left and a right are cut from one drawing of a part, and the part is handed",
	Doc: `Two sides of a case with the back's rabbet on the same hand are two left sides. What is joined on one face and lies
nearer to one edge, or to one end, cannot be turned over into its mirror image.

The rule puts together what joins each use of a part, and turns the part in every way that it can lie. Where only a mirror would bring
two uses together, one of them is to say "mirrored", and the maker lays them out as a pair, face to face. A part that is the same
when it is turned needs nothing.`,
	Sources: `Geometry; W. Noyes, Handwork in Wood, 1910, ch. IX, principle 3: lay duplicates out together.`,
	Sound: `Two stiles whose rails lie in the middle of their thickness, which turn into one another; two sides of which one says that it
is mirrored.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
part end x 2 { of pine ; size 36 x 11 x 3/4 }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 3/8
  across {
    side left part end
    behind {
      down { top roof ; open ; shelf low ; open 6 }
      back rear { of ply ; joint rabbet 3/8 x 1/4 }
    }
    side right part end
  }
}
`,
	Good: `wood pine { species "eastern white pine" ; sawn flat }
sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
part end x 2 { of pine ; size 36 x 11 x 3/4 }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 3/8
  across {
    side left part end
    behind {
      down { top roof ; open ; shelf low ; open 6 }
      back rear { of ply ; joint rabbet 3/8 x 1/4 }
    }
    side right part end mirrored
  }
}
`,
	Check: func(pass *Pass) {
		joined := marksOn(pass.Plan)
		for _, part := range pass.Plan.Parts {
			if !eachIsOnePiece(part) {
				continue
			}
			first := part.Uses[0]
			for _, use := range part.Uses[1:] {
				a, b := joined[first], joined[use]
				if a == nil || b == nil || !a.whole || !b.whole || first.Grain != use.Grain ||
					first.Mirrored.On != use.Mirrored.On || !mirrorsOnly(first, a.marks, b.marks) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(use),
					Span:    use.Span,
					Message: fmt.Sprintf("%s and %s are both part %s as it is drawn, but one is the mirror image of the other: say `mirrored` for one of them",
						titled(&first.Item), titled(&use.Item), quote(part.Name.Text)),
					Notes: []diag.Note{
						{Span: first.Span, Message: titled(&first.Item) + " is joined here"},
						{Span: part.Span, Message: "the part is drawn here"},
					},
					Fixes: mirroredHere(use),
				})
				break
			}
		}
	},
}

// eachIsOnePiece reports whether each use of a part is a piece by itself: where frames share parts
// and where a frame is made several times, a use shows only some of what joins the part.
func eachIsOnePiece(part *plan.Part) bool {
	if len(part.Uses) < 2 || len(part.Uses) != part.Count.Or(1) {
		return false
	}
	for _, m := range part.Uses {
		if m.In == nil || m.In.Build != nil || m.In.Pair.On || m.In.Count.Or(1) > 1 {
			return false
		}
	}
	return true
}

func mirroredHere(use *plan.Member) []diag.Fix {
	at := use.Part.Span
	if !at.Known() {
		return nil
	}
	at.Start = at.End
	return []diag.Fix{{Title: "write `mirrored` after " + use.Part.Name, Edits: []diag.Edit{{Span: at, Text: " mirrored"}}}}
}

// mark is what one joint cuts into a part: where it lies from the middle of the part, along each
// axis, and by which joint.
type mark struct {
	kind     string
	from, to [3]wood.Length
}

// marked is all that is cut into one use of a part.
type marked struct {
	marks []mark
	whole bool // all of it is known
}

// mostMarks bounds the work on one part. Two uses are compared mark by mark.
const mostMarks = 60

// marksOn gathers what the ends of members, and the edges of panels and backs, cut into the uses
// of parts.
func marksOn(p *plan.Plan) map[*plan.Member]*marked {
	on := make(map[*plan.Member]*marked)
	for _, part := range p.Parts {
		if eachIsOnePiece(part) {
			for _, m := range part.Uses {
				on[m] = &marked{whole: true}
			}
		}
	}
	if len(on) == 0 {
		return on
	}
	take := func(e *plan.End, kind string) {
		for _, m := range e.Mates {
			of := on[m]
			if of == nil {
				continue
			}
			k, known := markOf(m, e, kind)
			if !known || m.In != plan.It(e.Of).In || len(of.marks) == mostMarks {
				of.whole = false
				continue
			}
			of.marks = append(of.marks, k)
		}
	}
	for e := range ends(p) {
		take(e, e.Joint.Kind.Is)
	}
	for n := range plan.AllOf[*plan.Panel](p) {
		for _, e := range n.Edges {
			if e != nil && n.Into(e.Side).Length > 0 {
				take(e, n.Word)
			}
		}
	}
	return on
}

// markOf is what an end, or an edge, cuts into its mate.
func markOf(m *plan.Member, e *plan.End, kind string) (k mark, known bool) {
	k.kind = kind
	at := plan.It(e.Of).Cell
	if own, ok := e.Of.(*plan.Member); ok {
		at = own.Body
		if j := e.Joint; j.Set.Known() && j.Thick.Known() { // the joint is not in the middle of its end
			at[own.Flat].From += j.Set.Length
			at[own.Flat].Size = j.Thick.Length
		}
	}
	for axis := plan.Across; axis <= plan.Behind; axis++ {
		body := m.Body[axis]
		if !body.Known() {
			return k, false
		}
		middle := body.From + body.Size/2
		if axis == e.Side.Axis() { // it is cut into the face that the end meets
			face := body.Size / 2
			if e.Side.Far() {
				face = -face
			}
			k.from[axis], k.to[axis] = face, face
			continue
		}
		if !at[axis].Known() {
			return k, false
		}
		k.from[axis], k.to[axis] = at[axis].From-middle, at[axis].To()-middle
	}
	return k, true
}

// turning is a way to bring one use of a part onto another: along each axis, from which it takes
// its size, and whether the other way round.
type turning struct {
	axis    [3]plan.Axis
	reverse [3]bool
}

func (t turning) of(k mark) mark {
	turned := mark{kind: k.kind}
	for i, a := range t.axis {
		turned.from[i], turned.to[i] = k.from[a], k.to[a]
		if t.reverse[i] {
			turned.from[i], turned.to[i] = -k.to[a], -k.from[a]
		}
	}
	return turned
}

// turnings are the ways in which a part can lie, and those that only a mirror gives. One that is
// square across its grain can also be turned by a quarter.
func turnings(m *plan.Member) (rotations, mirrors []turning) {
	straight := [3]plan.Axis{plan.Across, plan.Down, plan.Behind}
	axes := [][3]plan.Axis{straight}
	a, b := (m.Grain+1)%3, (m.Grain+2)%3
	if wood.Same(m.Body[a].Size, m.Body[b].Size) {
		quarter := straight
		quarter[a], quarter[b] = quarter[b], quarter[a]
		axes = append(axes, quarter)
	}
	for swapped, axis := range axes { // to swap two axes is to mirror once
		for bits := range 8 {
			t := turning{axis: axis}
			times := swapped
			for i := range t.reverse {
				if t.reverse[i] = bits>>i&1 == 1; t.reverse[i] {
					times++
				}
			}
			if times%2 == 0 {
				rotations = append(rotations, t)
			} else {
				mirrors = append(mirrors, t)
			}
		}
	}
	return rotations, mirrors
}

// mirrorsOnly reports whether a mirror brings one use onto another, and no turning does.
func mirrorsOnly(m *plan.Member, a, b []mark) bool {
	rotations, mirrors := turnings(m)
	for _, t := range rotations {
		if bringsOnto(t, a, b) {
			return false
		}
	}
	for _, t := range mirrors {
		if bringsOnto(t, a, b) {
			return true
		}
	}
	return false
}

func bringsOnto(t turning, a, b []mark) bool {
	if len(a) != len(b) {
		return false
	}
	taken := make([]bool, len(b))
	for _, k := range a {
		turned, found := t.of(k), false
		for i := range b {
			if found = !taken[i] && sameMark(turned, b[i]); found {
				taken[i] = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// sameMark allows what rounding a middle to whole nanometres costs.
func sameMark(a, b mark) bool {
	for i := range a.from {
		if !wood.Same(a.from[i], b.from[i]) || !wood.Same(a.to[i], b.to[i]) {
			return false
		}
	}
	return a.kind == b.kind
}
