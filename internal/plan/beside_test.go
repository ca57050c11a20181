package plan_test

// What stands beside a front: told alike from both sides, as the cells and the laps have it, and across cabinets
// that are placed side by side, also turned left to right.

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// frontsOf are the doors and the drawers of a plan.
func frontsOf(p *plan.Plan) (fronts []plan.Node) {
	for _, a := range p.Assemblies {
		for n := range a.Nodes() {
			if fit, _ := plan.FrontOf(n); fit != nil {
				fronts = append(fronts, n)
			}
		}
	}
	return fronts
}

// edgeAt is where an edge of a front is in its assembly.
func edgeAt(n plan.Node, edge plan.Edge) wood.Length {
	cell := plan.It(n).Cell[edge.Side.Axis()]
	if edge.Side.Far() {
		return cell.To() - edge.Less.Length
	}
	return cell.From + edge.Less.Length
}

// stacks draws a case of stacks of fronts, each of which laps what is beside it by its own lap, in bays of their own.
func stacks(t *rapid.T) string {
	size := func(label string, low, high int) string {
		return fmt.Sprintf("%d/16", rapid.IntRange(low, high).Draw(t, label))
	}
	var bays []string
	for i := range rapid.IntRange(1, 4).Draw(t, "bays") {
		var stack []string
		for j := range rapid.IntRange(1, 4).Draw(t, "fronts") {
			front := "drawer %s %s { of ash 1/2 ; front ash 3/4 applied ; %s }"
			if rapid.Bool().Draw(t, "door") {
				front = "door %s %s { leaf ash 3/4 ; hang left ; %s }"
			}
			high := ""
			if j > 0 {
				high = size("high", 40, 90)
			}
			fit := fmt.Sprintf("fit overlay 1/2 left %s right %s top %s bottom %s ; reveal 1/8", size("left", 0, 12), size("right", 0, 12), size("top", 0, 12), size("bottom", 0, 12))
			stack = append(stack, fmt.Sprintf(front, fmt.Sprintf("f%d-%d", i, j), high, fit))
			if rapid.Bool().Draw(t, "shelf") {
				stack = append(stack, fmt.Sprintf("shelf s%d-%d", i, j))
			}
		}
		bays = append(bays, "down { "+strings.Join(stack, " ; ")+" }")
	}
	return fmt.Sprintf("case box { of ply ; wide 80 ; high 40 ; deep 20 ; joint dado deep 1/4\n  down { top roof ; across { side l ; %s ; side r } ; bottom floor } }\n", strings.Join(bays, " ; divider ; "))
}

func TestFrontsBeside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := layoutMaterials + "pattern cabinet {\n" + stacks(t) + "}\nbuild one from cabinet\nbuild two from cabinet mirrored\n" +
			"assembly run { across { case a part one.box ; space 1/4 ; case b part two.box } }\n" +
			"build three from cabinet\nassembly turned { across { case a part three.box ; space 1/4 ; case b part three.box { mirrored } } }\n"
		p, _ := resolveFiles(text, nil)
		pairs := map[plan.Node]int{}
		for _, n := range frontsOf(p) {
			_, edges := plan.FrontOf(n)
			for _, e := range edges {
				for b := range plan.FrontsBeside(n, e.Side) {
					pairs[n]++
					within := !slices.ContainsFunc(b.Between, func(m plan.Node) bool { return plan.It(m).In != plan.It(n).In })
					if within && plan.It(b.Front).In == plan.It(n).In {
						apart := edgeAt(b.Front, b.Edge) - edgeAt(n, e)
						if !e.Side.Far() {
							apart = -apart
						}
						if !wood.Same(apart, b.Apart) {
							t.Fatalf("%s and %s: %d apart, by their places %d\n%s", plan.PathOf(n), plan.PathOf(b.Front), b.Apart, apart, text)
						}
					}
					back := false
					for c := range plan.FrontsBeside(b.Front, b.Edge.Side) {
						back = back || c.Front == n && c.Edge.Side == e.Side && wood.Same(c.Apart, b.Apart)
					}
					if !back {
						t.Fatalf("%s is %d beside %s, but not the other way round\n%s", plan.PathOf(b.Front), b.Apart, plan.PathOf(n), text)
					}
				}
			}
		}
		for _, n := range frontsOf(p) { // the mirror image has the same neighbours
			path := plan.PathOf(n)
			if mirrored, ok := strings.CutPrefix(path, "one."); ok {
				for _, m := range frontsOf(p) {
					if plan.PathOf(m) == "two."+mirrored && pairs[m] != pairs[n] {
						t.Fatalf("%s has %d beside it, its mirror image %d\n%s", path, pairs[n], pairs[m], text)
					}
				}
			}
		}
	})
}

// The fronts of a stack, the gaps between them, and what shows of the case above and below are as high as that.
func TestFrontsFillTheirCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := resolveFiles(layoutMaterials+stacks(t), nil)
		for _, n := range frontsOf(p) {
			_, edges := plan.FrontOf(n)
			if _, top := plan.Neighbour(n, plan.Upper).(*plan.Member); !top || plan.It(plan.Neighbour(n, plan.Upper)).Name.Text != "roof" {
				continue
			}
			whole := edgeAt(n, edges[plan.Upper])
			for at := n; ; {
				_, edges := plan.FrontOf(at)
				whole += edgeAt(at, edges[plan.Lower]) - edgeAt(at, edges[plan.Upper])
				var next plan.Node
				for b := range plan.FrontsBeside(at, plan.Lower) {
					next, whole = b.Front, whole+b.Apart
				}
				if next == nil {
					if floor, ok := plan.Neighbour(at, plan.Lower).(*plan.Member); ok && floor.Name.Text == "floor" {
						whole += floor.Cell[plan.Down].To() - edgeAt(at, edges[plan.Lower])
					} else {
						whole = 40 * wood.Inch // a shelf is last
					}
					break
				}
				at = next
			}
			if !wood.Same(whole, 40*wood.Inch) {
				t.Fatalf("the stack of %s comes to %d", plan.PathOf(n), whole)
			}
		}
	})
}
