package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var clampsFew = &Rule{
	Name: "clamps-few", Group: Layups, Severity: diag.Warning,
	Summary: "there are too few clamps, or too weak ones, to press a joint as its glue wants",
	Doc: `A long edge wants more force than it seems: 36 of hardwood, 3/4 thick, want two tons. Where the clamps are two short the glue line stays
thick between them, shows, and opens first.

Take more clamps or stronger ones, glue up in two stages, or take a glue that fills and wants no pressure. The clamps of one go press all
edges of a panel together, one behind the other, so that one edge counts. The rule looks at boards glued edge to edge and at layups pressed under clamps,
where the shop says how many clamps it has and with what force each presses ("clamp bar x 6 { force 1000lb }").`,
	Sources: `Statics: the force is the pressure times the area of the glue line. See the figures.`,
	Sound:   `Five clamps of 1000 lb on an edge of 36 x 3/4; softwood, which wants less; a glue that says its own pressure; clamps of unknown force.`,
	Bad: `shop { clamp bar x 4 { opens 40 ; force 1000lb } }
glue white { kind pva }
wood oak { species "white oak" ; sawn quarter }
part slab { of oak ; size 36 x 16 x 3/4 ; boards 4 }
steps { glue slab with white }
`,
	Good: `shop { clamp bar x 5 { opens 40 ; force 1000lb } }
glue white { kind pva }
wood oak { species "white oak" ; sawn quarter }
part slab { of oak ; size 36 x 16 x 3/4 ; boards 4 }
steps { glue slab with white }
`,
	Figures: []*Figure{pressSoft, pressHard, pressVeneer},
	Check: func(pass *Pass) {
		for _, steps := range pass.Plan.Steps {
			for _, step := range steps.Steps {
				if clamps, ok := clampsOf(pass.Plan, step); ok {
					for _, on := range step.On {
						if on.To != nil {
							checkClamps(pass, step, on.To, clamps)
						}
					}
				}
			}
		}
	},
}

// clamping is what the clamps of a step come to.
type clamping struct {
	count int
	force float64 // of all, newtons
}

// clampsOf are the clamps of a step: those that it names, else, for what is glued, all of the
// shop's. It is false where there are none, or the force of some is not known.
func clampsOf(p *plan.Plan, step *plan.Step) (all clamping, ok bool) {
	add := func(c *plan.Clamp, count int) {
		all.count += count
		all.force += float64(count) * c.Force.Or(math.Inf(1))
	}
	switch {
	case len(step.Clamps) > 0:
		for _, c := range step.Clamps {
			if c.Of.To == nil {
				return all, false
			}
			add(c.Of.To, c.Count.Or(c.Of.To.Count.Or(1)))
		}
	case step.Verb == "glue":
		for _, c := range p.Shop.Clamps {
			add(c, c.Count.Or(1))
		}
	}
	return all, all.count > 0 && !math.IsInf(all.force, 0)
}

func checkClamps(pass *Pass, step *plan.Step, thing *plan.Thing, clamps clamping) {
	p := pass.Plan
	glue, _ := step.Glue()
	line, ok := lineOf(pass, step, thing, glue)
	needs := line.pascals * area(line.long, line.wide)
	if !ok || needs <= clamps.force {
		return
	}
	each := clamps.force / float64(clamps.count)
	count := int(math.Ceil(needs/each - 1e-9)) // twelve that are just enough are not thirteen
	working := diag.Working{
		{Value: pressure(p, line.pascals), Label: "wanted"},
		{Label: fmt.Sprintf("on %s x %s, %s", exact(p, line.long), exact(p, line.wide), line.what)},
		{Op: diag.Equals, Value: force(p, needs), Label: "wanted in all"},
		{Op: diag.Versus, Value: force(p, clamps.force), Label: fmt.Sprintf("of %d clamps, %s each: it takes %d", clamps.count, force(p, each), count)},
	}
	if line.memory {
		working = append(working, diag.Step{Label: "how hard is a figure from memory, check it; a glue's label beats it: `pressure`"})
	}
	pass.Report(diag.Finding{
		Subject: thing.Path,
		Span:    step.Span,
		Message: fmt.Sprintf("%s wants %s under clamps, and %d clamps give %s", thing.Path, force(p, needs), clamps.count, force(p, clamps.force)),
		Working: working,
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("take %d such clamps, glue up in two stages, or take a glue that wants less", count)}},
	})
}

// glueLine is what clamps have to press, and how hard.
type glueLine struct {
	long, wide wood.Length
	pascals    float64
	memory     bool
	what       string
}

// lineOf is one edge of a panel of boards, or the face of a layup.
func lineOf(pass *Pass, step *plan.Step, thing *plan.Thing, glue *plan.Glue) (line glueLine, ok bool) {
	of := plan.MaterialOf(thing.Is)
	var m *plan.Member
	switch t := thing.Is.(type) {
	case *plan.Member:
		m = t
	case *plan.Part:
		m = &t.Member
	default:
		return line, false
	}
	size := m.Size
	if of == nil || !size.Long.Known() || !size.Wide.Known() || !size.Thick.Known() {
		return line, false
	}
	switch {
	case step.Verb == "press" && of.Kind == plan.Layup:
		line = glueLine{long: size.Long.Length, wide: size.Wide.Length, what: "its face"}
		line.pascals, line.memory = wantedInPress(pass, of, thing.Path)
		return line, true
	case step.Verb == "glue" && m.Boards.Or(1) > 1:
		line = glueLine{long: size.Long.Length, wide: size.Thick.Length, what: "one edge"}
		line.pascals, line.memory, ok = wantedOnEdge(pass, glue, of, thing.Path)
		return line, ok
	}
	return line, false
}
