package rules

import (
	"fmt"
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var coreSize = &Rule{
	Name: "core-size", Group: Lengths, Severity: diag.Error,
	Summary: "a core is not its finished size less the edging",
	Doc: `A shelf that is sawn to its finished size and then edged stands out of the case by the edging, and so do all the
others of the batch.

Each strip comes off the core on the edge that it covers, "ends" twice. Where strips meet at a corner and are not mitred, one runs
over the other: its own length is then the finished one.

Write the core that the working ends with, or leave it out: the cutting list prints it.`,
	Sources: `The sum is arithmetic.`,
	Sound:   `A shelf edged in front and at both ends, and one edged in front alone, each with its core.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
wood cherry { species "black cherry" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
part shelf x 3 {
  of ply ; size 30 x 11 1/2 x 3/4 ; core 30 x 11 1/2
  edging front cherry 1/4
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
wood cherry { species "black cherry" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
part shelf x 3 {
  of ply ; size 30 x 11 1/2 x 3/4 ; core 30 x 11 1/4
  edging front cherry 1/4
}
`,
	Check: func(pass *Pass) {
		seen := make(map[saying]bool)
		for m, thing := range boardsOf(pass.Plan) {
			if m.Breadboard == nil {
				checkCore(pass, m, thing, m.Core.Across, m.Size.Long, true, seen)
			}
			checkCore(pass, m, thing, m.Core.Deep, m.Size.Wide, false, seen)
		}
	},
}

// checkCore holds one size of a core against the finished one and the edging on it.
func checkCore(pass *Pass, m *plan.Member, thing any, said, finished plan.Length, long bool, seen map[saying]bool) {
	p := pass.Plan
	if said.How != plan.Written || !finished.Known() {
		return
	}
	grain, flat := m.Grain, m.Flat
	if m.Parent == nil { // a part has no place: its length is its grain, its front a long edge
		grain, flat = plan.Across, plan.Down
	}
	setting, finishedAs := "wide", "finished width"
	if long {
		setting, finishedAs = "long", "finished length"
	}
	paper := p.Paper().Start(finished.Length, finishedAs)
	for _, e := range m.Edging {
		strips, wide := e.Strips(grain, flat)
		if !long {
			strips = wide
		}
		thick := e.Of.Thick()
		if strips > 0 && !thick.Known() {
			return
		}
		for range strips {
			paper.Minus(thick.Length, "edging, "+e.Edge.Is)
		}
	}
	needed := paper.Result()
	if agree(p, said.Length, needed) || again(seen, said.Span, m.In) {
		return
	}
	fixes := []diag.Fix{{Title: "write `" + cutTo(p, said.Span, needed) + "`, or leave `core` out"}}
	if m.Made.On {
		fixes = stillBoard(p, said.Length-needed, finishedAs[len("finished "):], "size", said.Span, needed, false, false)
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(thing),
		Span:    standing(m.Span, said.Span),
		Message: fmt.Sprintf("the core of %s is %s %s but must be %s", titled(&m.Item), p.ShowSaid(said), setting, exact(p, needed)),
		Working: paper.Equals("core").Versus(said.Length, "stated").Working(),
		Fixes:   fixes,
	})
}

// boardsOf ranges over all that may be edged or have breadboard ends, and what each is in the plan:
// the members of layouts, the parts and the tops that stand alone.
func boardsOf(p *plan.Plan) iter.Seq2[*plan.Member, any] {
	return func(yield func(*plan.Member, any) bool) {
		for m := range p.Members() {
			if !yield(m, m) {
				return
			}
		}
		for _, part := range p.Parts {
			if !yield(&part.Member, part) {
				return
			}
		}
		for _, top := range p.Tops {
			if !yield(top, top) {
				return
			}
		}
	}
}
