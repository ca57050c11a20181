package plan_test

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

// The generic hardware is a plan in order, laid out as plans are, and has what it promises.
func TestGenericHardware(t *testing.T) {
	tree, unread := lang.Parse(diag.NewFile("generic.plan", plan.Generic))
	p, found := plan.Resolve(tree, nil)
	for _, f := range append(unread, found...) {
		t.Errorf("%s: %s", f.Rule, f.Message)
	}
	if lang.Format(tree) != plan.Generic {
		t.Error("generic.plan is not laid out: run plancheck fmt --write on it")
	}
	kinds := map[string]bool{"stay": len(p.Stays) > 0, "handle": len(p.Handles) > 0, "rod": len(p.Rods) > 0}
	for _, h := range p.Hinges {
		kinds[h.Kind.Is] = true
	}
	for _, l := range p.Latches {
		kinds[l.Word], kinds[l.Kind.Is] = true, true
	}
	for _, s := range p.Slides {
		kinds[s.Kind.Is] = true
	}
	for _, f := range p.Fasteners {
		kinds[f.Word] = true
		if f.Word != "button" && (!f.Long.Known() || f.Word != "hook" && !f.Diameter().Known()) {
			t.Errorf("%s %s has no length, or no diameter", f.Word, f.Text)
		}
	}
	for _, all := range []string{ // every word and every kind of hardware that the language has
		"butt cup barrel knife pivot", "latch catch lock ball roller bullet magnet elbow turn cam mortise",
		"side-mount undermount centre", "stay handle rod screw bolt insert knob dowel biscuit pin peg hook magnet button",
	} {
		for word := range strings.FieldsSeq(all) {
			if !kinds[word] {
				t.Errorf("it has no %s", word)
			}
		}
	}
}

func TestUseGeneric(t *testing.T) {
	const text = `units mm
let across = 35
use generic
use generic
case box {
  wide 400 ; high 500 ; deep 300
  across { side left 18 ; door front { leaf front-board ; fit inset ; reveal 2 ; hang left ; hinge cup-inset count 2 ends 60 } ; side right 18 }
}
part front-board { size 496 x 360 x 18 }
fix box.left to box.right { screw screw-4x40 x 2 ; dowel dowel-8x40mm x 2 }
`
	p, found := resolveFiles(text, nil)
	if len(found) > 0 {
		t.Errorf("found %q", found)
	}
	if p.Title != "" {
		t.Errorf("the plan is called %q", p.Title)
	}
}

// A file that is taken in names itself, and not the plan that uses it.
func TestUseKeepsTitle(t *testing.T) {
	for _, text := range []string{"plan \"Bench\"\nuse \"shop.plan\"\n", "use \"shop.plan\"\nplan \"Bench\"\n"} {
		p, _ := resolveFiles(text, map[string]string{"shop.plan": "plan \"Shop\"\n"})
		if p.Title != "Bench" {
			t.Errorf("the plan is called %q, want Bench", p.Title)
		}
	}
}
