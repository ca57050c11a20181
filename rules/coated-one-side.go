package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var coatedOneSide = &Rule{
	Name: "coated-one-side", Group: Layups, Severity: diag.Warning,
	Summary: "a door, a top or a board is coated on one side, and its other side is left bare",
	Doc: `Varnish, shellac, lacquer and paint slow the moisture of the air down. A board that has them on one side takes up moisture through
the other, swells there first, and cups: a top whose underside nobody sees, a door that is painted on the outside. How far cannot be worked out from a
plan, since it hangs on how fast the air changes.

Coat both sides alike, with as many coats, though the hidden one need not be rubbed down. The rule speaks where a step says which side it coats
("finish slab with clear side face") and no other step coats that thing, or what it is part of. Oil, wax and stain hold little back, and are left out; so
is what its neighbours hold flat, such as a panel in grooves, the side of a case or the front of a drawer.`,
	Sources: `That a vapour-tight skin on one face only makes panels warp: a panel maker's page, second-hand; that both faces want an equal finish is
from memory, unverified. That oil, wax and stain hold little back is common practice, no source.`,
	Sound: `A top whose underside is coated by a step of its own; one that is coated all over; a door that is oiled on one side; a back that is painted
in front alone.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
finish clear { kind varnish }
assembly base { wide 60 ; high 28 ; deep 30 }
top slab { of oak ; thick 7/8 ; boards 5 ; over base ends 2 front 2 back 2 }
steps { finish slab with clear side face }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
finish clear { kind varnish }
assembly base { wide 60 ; high 28 ; deep 30 }
top slab { of oak ; thick 7/8 ; boards 5 ; over base ends 2 front 2 back 2 }
steps { finish slab with clear }
`,
	Check: func(pass *Pass) {
		coats := coatsOf(pass.Plan)
		coated := make(map[oneSide]bool)
		for _, c := range coats {
			coated[c.oneSide] = true
		}
		for _, c := range coats {
			other := map[string]string{"face": "back", "back": "face"}[c.of]
			if other == "" || !liesFree(c.thing) || coatedToo(coated, c.path, other) {
				continue
			}
			coated[oneSide{c.path, other}] = true // it is said once
			pass.Report(diag.Finding{
				Subject: c.path,
				Span:    c.at,
				Message: fmt.Sprintf("%s is coated with %s on its %s, and its %s is left bare: it takes up moisture there alone, and cups", c.path, quote(c.finish), c.of, other),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("coat its %s as well: leave `side %s` out, or add a step", other, c.of)}},
			})
		}
	},
}

// oneSide is one side of a thing, its face or its back; "" is both.
type oneSide struct{ path, of string }

// coat is what a step coats with something that holds moisture back.
type coat struct {
	oneSide
	finish string
	thing  any
	at     diag.Span
}

// coatedToo reports whether a side of a thing is coated, by itself or with all that it is part of.
func coatedToo(coated map[oneSide]bool, path, of string) bool {
	for s := range outward(path) {
		if coated[oneSide{s, of}] || coated[oneSide{s, ""}] {
			return true
		}
	}
	return false
}

func coatsOf(p *plan.Plan) (all []coat) {
	for _, steps := range p.Steps {
		for _, step := range steps.Steps {
			for _, with := range step.With {
				if with.To == nil {
					continue
				}
				finish, ok := with.To.Is.(*plan.Finish)
				if !ok || !holdsBack(finish.Kind.Is) {
					continue
				}
				for _, on := range step.On {
					if on.To != nil {
						all = append(all, coat{oneSide{on.To.Path, step.Side.Is}, finish.Text, on.To.Is, step.Span})
					}
				}
			}
		}
	}
	return all
}

// holdsBack reports whether a kind of coating slows moisture down.
func holdsBack(kind string) bool {
	switch kind {
	case "varnish", "shellac", "lacquer", "paint":
		return true
	}
	return false
}

// liesFree reports whether a thing is a board that nothing holds flat all round: a door of a board, a top, a lid,
// a loose shelf, or a part by itself. Drawers are left bare inside by custom, and their corners hold the front.
func liesFree(thing any) bool {
	switch t := thing.(type) {
	case *plan.Door:
		return t.Leaf.Material != nil
	case *plan.Member:
		_, free := useOfMember(t)
		return free || t.Word == "top" && t.Parent == nil
	case *plan.Part:
		return t.Of.Material.To != nil
	}
	return false
}
