package rules

import (
	"fmt"
	"math"
	"strconv"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var mitreOpens = &Figure{
	Name: "opens", Why: "by how much, in all, the cuts of a ring may be off before the last joint shows it", Basis: Practice,
	Source: "half a degree is a gap of 1/64 on a part 2 wide", Dim: lang.Angle, Number: 0.5,
}

var mitreAngle = &Rule{
	Name: "mitre-angle", Group: Lengths, Severity: diag.Error,
	Summary: "mitres are cut at an angle at which the frame does not close",
	Doc: `Every frame turns once round: the angles of all its cuts make 360 degrees. What is wrong at one cut comes back at each
of them, and all of it together at the last joint, which stands open.

At each end of a frame of n sides the saw is set to 180 degrees over n: 45 for four sides, 30 for six, 22.5 for eight. Leave the
angle out, and that is what is meant.`,
	Sources: `Geometry; what may be off in all stands with its figure.`,
	Sound: `A hexagon at 30 degrees, a frame of seven sides at 25.7, and a frame whose parts are of two widths, which meet at
another angle than 45.`,
	Bad: `frame clock {
  sides 6 ; thick 3/4
  joint mitre angle 45deg spline thick 1/8
  rail edge 2
}
`,
	Good: `frame clock {
  sides 6 ; thick 3/4
  joint mitre angle 30deg spline thick 1/8
  rail edge 2
}
`,
	Figures: []*Figure{mitreOpens},
	Check: func(pass *Pass) {
		for a, j := range mitred(pass.Plan) {
			sides := a.Sides.Or(4)
			needed := 180 / float64(sides)
			off := math.Abs(j.Angle.Value-needed) * 2 * float64(sides)
			if j.Angle.How != plan.Written || off <= pass.Number(mitreOpens, plan.PathOf(a)) {
				continue
			}
			said := j.Angle.Span
			pass.Report(diag.Finding{
				Subject: plan.PathOf(a),
				Span:    said,
				Message: fmt.Sprintf("a frame of %d sides closes with %s at each end, not %s", sides, degrees(needed), degrees(j.Angle.Value)),
				Working: diag.Working{
					{Value: "180", Label: "degrees"},
					{Op: diag.Over, Value: strconv.Itoa(sides), Label: "sides"},
					{Op: diag.Equals, Value: number(needed), Label: "degrees at each end"},
					{Op: diag.Versus, Value: number(j.Angle.Value), Label: "stated"},
				},
				Fixes: []diag.Fix{{
					Title: "write `angle " + degrees(needed) + "`, or leave `angle` out",
					Edits: []diag.Edit{{Span: said, Text: degrees(needed)}},
				}},
			})
		}
	},
}

// mitred ranges over the frames, and the other assemblies, that have mitres, with each joint that
// is stated for them. Parts of two widths meet at another angle, and are left out.
func mitred(p *plan.Plan) func(yield func(*plan.Assembly, *plan.Joint) bool) {
	return func(yield func(*plan.Assembly, *plan.Joint) bool) {
		for _, a := range p.Assemblies {
			if a.Root == nil {
				if j := ringJoint(a); j != nil && j.Kind.Is == plan.Mitre && !yield(a, j) {
					return
				}
				continue
			}
			seen := make(map[diag.Span]bool)
			for _, e := range a.Ends {
				if e == nil || e.Joint == nil || e.Joint.Kind.Is != plan.Mitre || seen[e.Joint.Span] || !evenMitre(e) {
					continue
				}
				seen[e.Joint.Span] = true
				if !yield(a, e.Joint) {
					return
				}
			}
		}
	}
}

// evenMitre reports whether both parts of a mitre are equally wide.
func evenMitre(e *plan.End) bool {
	m, ok := e.Of.(*plan.Member)
	if !ok || !e.Adds.Known() {
		return false
	}
	own := m.Size.Wide // in a frame
	if m.Flat != plan.Behind {
		own = m.Size.Thick // in a case, corner to corner
	}
	return own.Known() && wood.Same(own.Length, e.Adds.Length)
}

// ringJoint is the joint of a frame of many sides, which has one rail and no list.
func ringJoint(a *plan.Assembly) *plan.Joint {
	j := a.Joint
	if a.Rail != nil && a.Rail.Joint != nil {
		j = a.Rail.Joint
	}
	if j != nil && j.Kind.Is == "" {
		j = j.From.To
	}
	return j
}

func degrees(v float64) string { return number(v) + "deg" }

// number is a figure in as few places as tell it apart, two at most.
func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}
