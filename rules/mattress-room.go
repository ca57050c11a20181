package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	mattressLeast = &Figure{
		Name: "least", Why: "how much larger than its mattress, in all, a bed is at least", Basis: Practice,
		Source: "room for sheets and fingers", Dim: lang.Length, Length: wood.Inch / 2, Metric: 13 * wood.Millimetre,
	}
	mattressMost = &Figure{
		Name: "most", Why: "how much larger than its mattress, in all, a bed is at most", Basis: Practice,
		Source: "more, and it shifts", Dim: lang.Length, Length: 2 * wood.Inch, Metric: 50 * wood.Millimetre,
	}
)

var mattressRoom = &Rule{
	Name: "mattress-room", Group: Lengths, Severity: diag.Error,
	Summary: "a bed is not the size of its mattress and a little room",
	Doc: `A bed that is as wide inside as its mattress takes the mattress, and no bedclothes; one that is much wider lets it
wander, which is a warning. The names of sizes differ from country to country, and so do mattresses of one name: measure the one that will lie
there.

Change the inside of the bed. The rule looks at the opening, the space or the bed that "holds mattress 60 x 80".`,
	Sources: `See the figures.`,
	Sound:   `Half an inch and two inches of room, and a mattress that lies the other way round.`,
	Bad: `assembly bed {
  wide 64 ; high 14 ; deep 85
  across {
    rail left 2 { wide 10 }
    behind { rail head 2 ; open mattress { holds mattress 60 x 80 } ; rail foot 2 }
    rail right 2
  }
}
`,
	Good: `assembly bed {
  wide 65 ; high 14 ; deep 85
  across {
    rail left 2 { wide 10 }
    behind { rail head 2 ; open mattress { holds mattress 60 x 80 } ; rail foot 2 }
    rail right 2
  }
}
`,
	Figures: []*Figure{mattressLeast, mattressMost},
	Check: func(pass *Pass) {
		for s := range plan.AllOf[*plan.Space](pass.Plan) {
			for _, h := range s.Holds {
				checkMattress(pass, h, s, s.In.Kind, [3]plan.Node{s, s, s})
			}
		}
		for _, a := range pass.Plan.Assemblies {
			for _, h := range a.Holds {
				checkMattress(pass, h, a, a.Kind, inside(a))
			}
		}
	},
}

// checkMattress holds a mattress against the room in both directions in which it lies. at says,
// by axis, whose cell that room is; nil where it is not known.
func checkMattress(pass *Pass, h *plan.Holds, of any, kind plan.AssemblyKind, at [3]plan.Node) {
	p := pass.Plan
	axes := [2]plan.Axis{plan.Across, plan.Behind}
	if kind == plan.Frame { // drawn as it lies
		axes[1] = plan.Down
	}
	size := [2]plan.Length{h.Size.Across, h.Size.Deep}
	if h.What.Is != "mattress" || !size[0].Known() || !size[1].Known() {
		return
	}
	var rooms [2]plan.Extent
	for i, axis := range axes {
		if at[axis] != nil {
			rooms[i] = plan.It(at[axis]).Cell[axis]
		}
	}
	if !rooms[0].Sized || !rooms[1].Sized {
		return
	}
	if (rooms[0].Size > rooms[1].Size) != (size[0].Length > size[1].Length) { // it lies the other way round
		size[0], size[1] = size[1], size[0]
	}
	subject := plan.PathOf(of)
	least, most := pass.Length(mattressLeast, subject), pass.Length(mattressMost, subject)
	for i, axis := range axes {
		spare := rooms[i].Size - size[i].Length
		f := diag.Finding{Subject: subject, Span: h.Span}
		switch {
		case spare < least && !agree(p, spare, least):
			f.Message = fmt.Sprintf("a mattress %s has %s to lie in: leave it %s at least", p.ShowSaid(size[i]), p.Show(rooms[i].Size), p.Show(least))
		case spare > most && !agree(p, spare, most):
			f.Severity = diag.Warning
			f.Message = fmt.Sprintf("a mattress %s has %s to lie in, and wanders: leave it %s at most", p.ShowSaid(size[i]), p.Show(rooms[i].Size), p.Show(most))
		default:
			continue
		}
		f.Working = room(p, at[axis], axis, "inside").Minus(size[i].Length, "mattress").Equals("room").Working()
		pass.Report(f)
	}
}

// inside is, by axis, what lies between the outer members of an assembly, where only one of its
// lists can be meant.
func inside(a *plan.Assembly) [3]plan.Node {
	var at [3]plan.Node
	var lists [3]int
	for n := range a.Nodes() {
		l, ok := n.(*plan.List)
		if !ok || len(l.Items) != 3 || !isWood(l.Items[0]) || !isWood(l.Items[2]) || isWood(l.Items[1]) {
			continue
		}
		lists[l.Axis]++
		if at[l.Axis] = l.Items[1]; lists[l.Axis] > 1 {
			at[l.Axis] = nil
		}
	}
	return at
}

func isWood(n plan.Node) bool {
	switch n.(type) {
	case *plan.Member, *plan.Placed:
		return true
	}
	return false
}
