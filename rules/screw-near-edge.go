package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	screwBored = &Figure{
		Name: "bored", Why: "how many times its thickness a screw stands from an edge or an end of solid wood at least", Basis: Practice,
		Source: "twice: a number 8 in the middle of 3/4, in a pilot hole", Dim: lang.Plain, Number: 2,
	}
	screwEdge = &Figure{
		Name: "edge", Why: "the same at an edge, where no pilot hole is bored", Basis: Memory,
		Source: "two and a half times", Dim: lang.Plain, Number: 2.5,
	}
	screwEnd = &Figure{
		Name: "end", Why: "the same at an end, where no pilot hole is bored", Basis: Memory,
		Source: "seven times", Dim: lang.Plain, Number: 7,
	}
)

var screwNearEdge = &Rule{
	Name: "screw-near-edge", Group: Joints, Severity: diag.Warning,
	Summary: "a screw stands so near to an edge or an end that it splits the wood",
	Doc: `A screw is a wedge. Near the end of a board the wood before it has nothing to hold it together, and splits along the grain, with
the last turn or in the first dry winter.

Keep it twice its thickness from an edge or an end of solid wood, and bore a pilot hole: nearer than two and a half times its thickness to an edge, and
than seven times to an end, the rule advises to bore one where the plan does not say "pilot". Of what a line of its own fastens it looks
at where "at" and "along" say that the screws stand.`,
	Sources: `From memory; see the figures. Pilot holes by number: a woodworkers' drilling table.`,
	Sound: `Screws of number 8 in the middle of a top of 3/4 at the ends of its sides, with pilot holes; a number 10 half an inch from an edge; sheet
stock, whose ends do not split.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
screw no10 { gauge 10 ; long 2 ; head flat }
case box {
  of oak 3/4
  wide 24 ; high 30 ; deep 10
  across {
    side left
    down { top lid { joint screw no10 at 2, 8 } ; open ; bottom floor { joint dado deep 1/4 } }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
screw no8 { gauge 8 ; long 2 ; head flat }
case box {
  of oak 3/4
  wide 24 ; high 30 ; deep 10
  across {
    side left
    down { top lid { joint screw no8 at 2, 8 pilot 7/64 } ; open ; bottom floor { joint dado deep 1/4 } }
    side right
  }
}
`,
	Figures: []*Figure{screwBored, screwEdge, screwEnd},
	Check: func(pass *Pass) {
		for d := range screws(pass.Plan) {
			thick := d.of.Diameter()
			if !thick.Known() {
				continue
			}
			worst := nearestCut(pass.Plan, d, thick.Length)
			if d.end == nil && isSolid(d.fastened) {
				worst = nearestPlace(d, thick.Length)
			}
			if worst != nil {
				worst.judge(pass, d, thick.Length)
			}
		}
	},
}

// nearestCut is the hole of a joint's screw that stands nearest to an edge or an end of solid wood;
// nil where none is known, or where one leaves so thin a wall that another rule says it.
func nearestCut(p *plan.Plan, d *driven, thick wood.Length) *near {
	if d.end == nil {
		return nil
	}
	var worst *near
	for _, c := range p.Cuts().Of(d.end) {
		if c.Kind != plan.CutScrew || !blankSolid(c.In) {
			continue
		}
		for face, wall := range c.Walls() {
			way := face.Dimension()
			if way == c.Enters.Dimension() || way == plan.Thick {
				continue
			}
			if way == plan.Wide && wood.Under(wall, thick/2) {
				return nil
			}
			n := &near{at: wall + c.At[way].Size/2, face: c.FaceName(face), of: "the " + c.Use.Word, end: way == plan.Long}
			if worst == nil || n.at < worst.at {
				worst = n
			}
		}
	}
	return worst
}

// nearestPlace is the screw of a fixing that stands nearest to an edge or an end of what is
// fastened; nil where none is known to.
func nearestPlace(d *driven, thick wood.Length) *near {
	var worst *near
	nearest := func(at []plan.Length, size plan.Length, end bool) {
		for _, l := range at {
			left := min(l.Length, size.Length-l.Length)
			if !l.Known() || !size.Known() || left < 0 || worst != nil && worst.at <= left {
				continue
			}
			worst = &near{at: left, face: "edge", of: "the " + d.fastened.Word, end: end}
			if end {
				worst.face = "end"
			}
		}
	}
	nearest(d.with.At, d.fastened.Size.Wide, false)
	nearest(d.with.Along, d.fastened.Size.Long, true)
	return worst
}

// near is how near the middle of a screw stands to a face.
type near struct {
	at       wood.Length
	face, of string
	end      bool // where the grain ends
}

func (n *near) judge(pass *Pass, d *driven, thick wood.Length) {
	p := pass.Plan
	f := diag.Finding{Subject: d.subject, Span: d.span}
	times := pass.Number(screwBored, d.subject)
	slack := wood.Length(0)
	if d.pilot.Said() {
		slack = p.Tape.Tolerance()
	}
	if wood.Under(n.at+slack, fraction(thick, times)) {
		f.Message = fmt.Sprintf("%s stands %s from the %s of %s and may split it: %s is wanted", screwName(p, d.of), p.Show(n.at), n.face, n.of, p.Show(upTo(p, fraction(thick, times))))
		f.Fixes = []diag.Fix{{Title: "move it in, or take a thinner screw"}}
	} else {
		times = pass.Number(screwEdge, d.subject)
		if n.end {
			times = pass.Number(screwEnd, d.subject)
		}
		if d.pilot.Said() || !wood.Under(n.at, fraction(thick, times)) {
			return
		}
		f.Severity = diag.Advice
		f.Message = fmt.Sprintf("%s stands %s from the %s of %s: bore a pilot hole, and say `pilot`", screwName(p, d.of), p.Show(n.at), n.face, n.of)
	}
	f.Working = p.Paper().Start(thick, screwName(p, d.of)+" is thick").Plus(fraction(thick, times)-thick, "to make it "+number(times)+" times").
		Equals("wanted").Versus(n.at, "from the "+n.face).Working()
	pass.Report(f)
}

// blankSolid reports whether a piece is known to be of solid wood.
func blankSolid(b *plan.Blank) bool {
	switch of := b.Of.(type) {
	case *plan.Member:
		return isSolid(of)
	case *plan.Part:
		return isSolid(&of.Member)
	}
	return false
}
