package rules

// What the rules about dowels, screws, biscuits and bolts share: which ends they hold, how many
// they are, and what a screw goes through and into.

import (
	"iter"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// howMany is how many fasteners a joint has, and where the plan says so; ok is false where it
// does not.
func howMany(j *plan.Joint) (n int, at diag.Span, ok bool) {
	switch {
	case j.Count.Known():
		return j.Count.N, j.Count.Span, true
	case len(j.At) > 0:
		return len(j.At), j.At[0].Span, true
	}
	return 0, diag.Span{}, false
}

// fastenerSpan is where a joint names what holds it, else where the joint stands.
func fastenerSpan(j *plan.Joint) diag.Span {
	if j.Hardware.Span.Known() {
		return j.Hardware.Span
	}
	return j.Span
}

// isSolid reports whether something is known to be of solid wood.
func isSolid(m *plan.Member) bool {
	of := m.Of.Material.To
	return of != nil && of.Kind == plan.Solid
}

// piece is one of the two things that a screw joins.
type piece struct {
	*plan.Member
	thick plan.Length // the way the screw goes
}

// stops reports whether a screw is known not to come out of a piece.
func (p piece) stops(screw *plan.Fastener) bool {
	return p.thick.Known() && screw.Long.Known() && !wood.Over(screw.Long.Length, p.thick.Length)
}

// driven is a screw, or several alike, through one thing into another.
type driven struct {
	of                 *plan.Fastener
	subject            string
	span               diag.Span
	through, into      piece
	drawn              bool // the layout shows which way it goes
	endGrain           bool // it goes into the end of solid wood
	glued              bool
	pilot, counterbore plan.Length
	end                *plan.End        // that it holds; nil where a line of its own fastens the two
	fastened           *plan.Member     // by that line
	with               *plan.FixingPart // the screws in it
}

// screws ranges over the screws that joints and fixings drive square. Where a fixing fastens two
// parts, the thicknesses are those of flat pieces, screwed face to face.
func screws(p *plan.Plan) iter.Seq[*driven] {
	return func(yield func(*driven) bool) {
		for t := range joinedBy(p, plan.ScrewJoint) {
			m, e, j := t.of, t.End, t.Joint
			if j.Hardware.To == nil || len(e.Mates) == 0 {
				continue
			}
			d := &driven{
				of: j.Hardware.To, subject: t.subject, span: fastenerSpan(j), drawn: true, endGrain: isSolid(m),
				through: piece{e.Mates[0], e.MateSize()}, into: piece{m, m.Size.Long},
				pilot: j.Pilot, counterbore: j.Counterbore.Or(0), end: e,
			}
			if !yield(d) {
				return
			}
		}
		for _, f := range p.Fixes {
			a, b := fixedPiece(f.A), fixedPiece(f.B)
			if a == nil || b == nil {
				continue
			}
			axis, touch := touching(a, b)
			thickA, thickB := flat(a), flat(b)
			if touch {
				thickA, thickB = woodAlong(a, axis), woodAlong(b, axis)
			}
			for _, w := range f.With {
				if w.Word != "screw" || w.Of.To == nil {
					continue
				}
				through, into := piece{a, thickA}, piece{b, thickB}
				if a.Over != nil || b.Over == nil && through.stops(w.Of.To) && !into.stops(w.Of.To) {
					through, into = into, through // a top is screwed from below, and a shelf through its side
				}
				d := &driven{
					of: w.Of.To, subject: f.A.To.Path, span: w.Span, drawn: touch, glued: len(f.Glue) > 0,
					through: through, into: into, endGrain: touch && isSolid(into.Member) && into.Grain == axis,
					pilot: w.Pilot, counterbore: w.Counterbore.Or(0), fastened: fixedPiece(f.A), with: w,
				}
				if !yield(d) {
					return
				}
			}
		}
	}
}

// fixedPiece is the one piece of wood that a fixing names; nil where it names something else.
func fixedPiece(r plan.Ref[plan.Thing]) *plan.Member {
	if r.To == nil {
		return nil
	}
	switch t := r.To.Is.(type) {
	case *plan.Member:
		return t
	case *plan.Part:
		return &t.Member
	}
	return nil
}

// flat is how thick a piece is that would be screwed through its face; unknown of one that may as
// well be screwed through its width.
func flat(m *plan.Member) plan.Length {
	s := m.Size
	if s.Thick.Known() && s.Wide.Known() && (s.Wide.Length >= 2*s.Thick.Length || wood.Same(s.Wide.Length, s.Thick.Length)) {
		return s.Thick
	}
	return plan.Length{}
}

// woodAlong is how much wood a member has along an axis.
func woodAlong(m *plan.Member, axis plan.Axis) plan.Length {
	if !m.Body[axis].Sized {
		return plan.Length{}
	}
	return plan.Length{Length: m.Body[axis].Size, How: plan.Derived}
}

// touching is the axis along which two members of one assembly lie against each other.
func touching(a, b *plan.Member) (plan.Axis, bool) {
	if a.In == nil || a.In != b.In {
		return 0, false
	}
	for axis := plan.Across; axis <= plan.Behind; axis++ {
		x, y := a.Body[axis], b.Body[axis]
		if x.Known() && y.Known() && (wood.Same(x.To(), y.From) || wood.Same(y.To(), x.From)) {
			return axis, true
		}
	}
	return 0, false
}

// mentioned are the members, parts and assemblies that lines of their own fasten.
func mentioned(p *plan.Plan) map[any]bool {
	named := make(map[any]bool)
	for _, f := range p.Fixes {
		for _, r := range []plan.Ref[plan.Thing]{f.A, f.B} {
			if r.To != nil {
				named[r.To.Is] = true
			}
		}
	}
	return named
}

// counted is a number of fasteners in words: `a hook`, `2 hooks`.
func counted(n int, word string) string {
	if n == 1 {
		return "a " + word
	}
	return itoa(n) + " " + word + "s"
}

// farthestApart is the widest space between two neighbours of those places; far is false where
// there are no two, or one of them is not known.
func farthestApart(places []plan.Length) (apart wood.Length, at diag.Span, far bool) {
	sorted := slices.Clone(places)
	for _, l := range sorted {
		if !l.Known() {
			return 0, diag.Span{}, false
		}
	}
	slices.SortFunc(sorted, func(a, b plan.Length) int { return int(max(min(a.Length-b.Length, 1), -1)) })
	for i := 1; i < len(sorted); i++ {
		if d := sorted[i].Length - sorted[i-1].Length; d > apart {
			apart, at, far = d, sorted[i].Span, true
		}
	}
	return apart, at, far
}
