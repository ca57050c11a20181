package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var notByHand = &Rule{
	Name: "not-by-hand", Group: Moving, Severity: diag.Error,
	Summary: "what is to come apart by hand is held by screws or bolts",
	Doc: `A piece that is to be put together without tools is put together where there are none: on the day of the move, by whoever carries it.
One screw that wants a driver, and all of it waits for that.

Hold it by what a hand turns or lifts: a "knob" in an insert, a "wedge" in the tail of a tenon, a "hook", a part that drops in ("drop-in"), a shelf
on pins. Or say that it comes apart with tools: "apart by-tools". What is fastened inside a frame or a case that stands in the piece stays
together, and may be held in any way; so does what is glued as well, such as a cleat to its rail. So may hinges, which stay on their doors, and what
anchors the piece to the wall.`,
	Sources: `Common practice, no source.`,
	Sound: `A bed whose rails hook into its ends; a case on knobs with its back dropped in, which is screwed to the wall, its doors
on hinges; a frame in it that is bolted within itself.`,
	Bad: `bolt bed { thick 3/8 ; long 6 ; nut 5/8 }
frame end { wide 40 ; high 30 ; thick 1 1/2 ; across { post left 3 ; open ; post right 3 } }
assembly frame-bed {
  apart by-hand
  wide 83 ; high 30 ; deep 40
  across {
    frame head part end
    down { open ; rail side 6 { thick 1 1/4 ; joint bolt bed nut-at 2 count 2 } ; open }
    frame foot part end
  }
}
`,
	Good: `hook bed { long 5 }
frame end { wide 40 ; high 30 ; thick 1 1/2 ; across { post left 3 ; open ; post right 3 } }
assembly frame-bed {
  apart by-hand
  wide 83 ; high 30 ; deep 40
  across {
    frame head part end
    down { open ; rail side 6 { thick 1 1/4 ; joint hook bed } ; open }
    frame foot part end
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, a := range p.Assemblies {
			if a.Apart.Is != "by-hand" {
				continue
			}
			var said onePer[diag.Span]
			for _, e := range a.Ends {
				if e == nil || e.Joint == nil || len(e.Mates) == 0 || byHand(e.Joint) || !comesApart(e.Joint) || e.Joint.Dry.On {
					continue
				}
				said.add(e.Joint.Span, wantsTool(a, plan.PathOf(e.Of), titled(plan.It(e.Of)), e.Joint.Kind.Is, e.Joint.Span))
			}
			said.report(pass)
		}
		for _, f := range p.Fixes {
			a, b := fixedIn(f.A), fixedIn(f.B)
			if a == nil || a != b || a.Apart.Is != "by-hand" || len(f.Glue) > 0 {
				continue // what is glued stays together
			}
			for _, w := range f.With {
				if w.Word == plan.ScrewJoint || w.Word == plan.BoltJoint {
					it := plan.It(f.A.To.Is.(plan.Node))
					pass.Report(wantsTool(a, f.A.To.Path, titled(it), w.Word, w.Span))
				}
			}
		}
	},
}

// fixedIn is the assembly in whose lists a thing that is fastened stands; nil where it stands in none.
func fixedIn(r plan.Ref[plan.Thing]) *plan.Assembly {
	if r.To == nil {
		return nil
	}
	n, ok := r.To.Is.(plan.Node)
	if !ok {
		return nil
	}
	return plan.It(n).In
}

func wantsTool(a *plan.Assembly, subject, called, kind string, at diag.Span) diag.Finding {
	held := "bolts"
	if kind != plan.BoltJoint {
		held = "screws"
	}
	whole := quote(a.Text)
	if a.Text == "" {
		whole = "it"
	}
	return diag.Finding{
		Subject: subject,
		Span:    at,
		Message: fmt.Sprintf("%s is held by %s, which want a tool, and %s is to come apart by hand", called, held, whole),
		Notes:   []diag.Note{{Span: a.Apart.Span, Message: "by hand, the plan says here"}},
		Fixes:   []diag.Fix{{Title: "hold it by a `knob`, a `hook`, a `wedge` or a `drop-in` joint, or write `apart by-tools`"}},
	}
}
