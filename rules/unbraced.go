package rules

import (
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var unbracedFrom = &Figure{
	Name: "high", Why: "above which height a case wants something that keeps it square", Basis: Practice,
	Source: "30 in (760 mm)", Dim: lang.Length, Length: 30 * wood.Inch, Metric: 760 * wood.Millimetre,
}

// openRack is a rack of three shelves and what stands behind them.
func openRack(supplies, back string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
` + supplies + `case rack {
  of oak 3/4
  wide 30 ; high 60 ; deep 11
  joint housing deep 1/4
  across {
    side left
    behind { down { top roof ; open ; shelf middle { load 25psf } ; open ; bottom floor }` + back + ` }
    side right
  }
}
`
}

var unbraced = &Rule{
	Name: "unbraced", Group: Structure, Severity: diag.Advice,
	Summary: "nothing keeps a tall open case from leaning to one side",
	Doc: `A shelf in its housing turns a little in it, and one on pins turns freely. Where all that joins two sides is of that kind, the case is a
parallelogram with soft corners: loaded, it leans to one side, works its joints loose and may fold up.

Give it a back that is let in and fastened all round, a rail under the top or the lowest shelf, a brace across a corner, or fix it to the wall. The
rule speaks of a case that is higher than 30 (760 mm) and carries what the plan says ("load", "holds", "kind shelves"), of boards alone: two
sides or more, with shelves, tops and bottoms between them that are housed, dowelled, screwed or laid on pins. It is silent where there is a back, a rail or
another stick, a front, a drawer, anything drawn elsewhere or fastened to it, a joint that keeps its corner square (dovetails, tenons, mitres, rabbets),
or an end of which the plan says no joint; and of a case that stands in another.`,
	Sources: `Statics: four bars and four pins have no shape of their own. From which height it matters is common practice, no source.`,
	Sound: `A rack of 60 with a back, with a rail under its top, fixed to the wall, with dovetailed corners; one of just 30; one whose joints are not
said; one on which nothing is said to lie.`,
	Bad:     openRack("", ""),
	Good:    openRack("sheet thin { kind plywood ; species \"yellow birch\" ; thick 1/4 ; actual 1/4 ; emission \"TSCA Title VI\" }\n", " ; back rear { of thin ; joint rabbet 3/8 x 1/4 }"),
	Figures: []*Figure{unbracedFrom},
	Check: func(pass *Pass) {
		p := pass.Plan
		held := fastenedAtAll(p)
		for _, a := range p.Assemblies {
			if a.Kind != plan.Case || a.Used() || held[a] || !laden(a) {
				continue
			}
			kinds := loosely(a)
			if len(kinds) == 0 {
				continue
			}
			subject := plan.PathOf(a)
			from := pass.Length(unbracedFrom, subject)
			high := a.Outside[plan.Down]
			if !high.Known() || !wood.Over(high.Length, from) || agree(p, high.Length, from) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: subject, Span: a.Name.Span,
				Message: fmt.Sprintf("%s is %s high, and nothing keeps it from leaning to one side: it has no back, no rail and no brace", entitled(a), p.Show(high.Length)),
				Working: p.Paper().Remark("joined to its sides by "+strings.Join(kinds, ", ")).
					Start(high.Length, "high").Versus(from, "without a back, a rail or a brace, at the most").Working(),
				Fixes: []diag.Fix{
					{Title: "let in a back and fasten it all round, or a rail under the top"},
					{Title: "fix it to the wall, and say so: `fix " + subject + " to wall { screw … }`"},
				},
			})
		}
	},
}

// softCorners are the joints in which a board turns, a little or freely.
var softCorners = []string{
	plan.Housing, plan.Dado, plan.ShelfPin, plan.Butt, plan.Dowel, plan.BiscuitJoint, plan.ScrewJoint, plan.Pocket, plan.Knob, plan.Magnet, plan.DropIn,
}

// laden reports whether a plan says that a case is for shelves, or that something lies on them.
func laden(a *plan.Assembly) bool {
	if a.Use.Is == "shelves" || a.Load != nil || len(a.Holds) > 0 {
		return true
	}
	for n := range a.Nodes() {
		switch n := n.(type) {
		case *plan.Member:
			if n.Load != nil || len(n.Holds) > 0 {
				return true
			}
		case *plan.Space:
			if len(n.Holds) > 0 {
				return true
			}
		}
	}
	return false
}

// loosely says by which kinds of joint the level boards of a case are joined, where it is two uprights or more and such
// boards between them, all loosely joined; nothing where it is not.
func loosely(a *plan.Assembly) (kinds []string) {
	upright := 0
	for n := range a.Nodes() {
		switch n := n.(type) {
		case *plan.List, *plan.Space, *plan.Door:
		case *plan.Member:
			switch {
			case !n.Board() || n.Word == "front":
				return nil
			case n.Flat == plan.Across:
				upright++
				continue
			}
			for _, e := range n.Ends {
				if e == nil || e.Free || e.Joint == nil || !slices.Contains(softCorners, e.Joint.Kind.Is) {
					return nil
				}
				if !slices.Contains(kinds, e.Joint.Kind.Is) {
					kinds = append(kinds, e.Joint.Kind.Is)
				}
			}
		default:
			return nil
		}
	}
	if upright < 2 {
		return nil
	}
	return kinds
}

// fastenedAtAll are the assemblies to which a line of its own fastens anything.
func fastenedAtAll(p *plan.Plan) map[*plan.Assembly]bool {
	held := map[*plan.Assembly]bool{}
	for _, f := range p.Fixes {
		for _, r := range []plan.Ref[plan.Thing]{f.A, f.B} {
			if r.To == nil {
				continue
			}
			switch is := r.To.Is.(type) {
			case *plan.Assembly:
				held[is] = true
			case plan.Node:
				held[plan.It(is).In] = true
			}
		}
	}
	return held
}
