package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var throughTrim = &Figure{
	Name: "trim", Why: "what a through tenon stands beyond its mate, to be levelled", Basis: Practice,
	Source: "a pass or two of the plane", Dim: lang.Length, Length: wood.Inch / 16,
}

var throughTenonFlush = &Rule{
	Name: "through-tenon-flush", Group: Lengths, Severity: diag.Warning,
	Summary: "a through tenon leaves nothing to be levelled",
	Doc: `A through tenon that is cut to the very width of its mate ends a shaving below the surface as soon as the mate is
planed or its shoulder is eased, and end grain that lies low cannot be brought up. One that is shorter does not come through at all, which is
an error.

Leave a little on and level it when the glue is dry. Where "long" is left out, the tenon gets the width of its mate and
1/16 (1.5 mm).`,
	Sources: `W. Fairham, Woodwork Joints, revised ed., The Mortise and Tenon Joint, leaves rails 1/2 over in all. That 1/16 at each end is
the least is common practice, no source.`,
	Sound: `A through tenon that stands 1/16 beyond a stile 2 1/2 wide, one whose length is left out, and a blind one as
long as its mate is wide less its floor.`,
	Bad: `frame gate {
  wide 30 ; high 40 ; thick 1 1/2
  joint tenon thick 1/2 long 2 1/2 through
  across {
    stile left 2 1/2
    down { rail head 3 ; space middle ; rail foot 3 }
    stile right 2 1/2
  }
}
`,
	Good: `frame gate {
  wide 30 ; high 40 ; thick 1 1/2
  joint tenon thick 1/2 long 2 9/16 through
  across {
    stile left 2 1/2
    down { rail head 3 ; space middle ; rail foot 3 }
    stile right 2 1/2
  }
}
`,
	Figures: []*Figure{throughTrim},
	Check: func(pass *Pass) {
		p := pass.Plan
		for e := range ends(p) {
			j := e.Joint
			if j.Kind.Is != plan.Tenon || !j.Through.On || j.Long.How != plan.Written {
				continue
			}
			for _, mate := range e.Mates {
				body := mate.Body[e.Side.Axis()]
				if mate.In != plan.It(e.Of).In || !body.Sized {
					continue
				}
				beyond := j.Long.Length - body.Size
				trim := pass.Length(throughTrim, plan.PathOf(e.Of))
				if !wood.Under(beyond, trim-p.Tape.Tolerance()) {
					continue
				}
				f := diag.Finding{
					Subject: plan.PathOf(e.Of),
					Span:    j.Long.Span,
					Message: fmt.Sprintf("a through tenon %s long stands only %s beyond its mate, which is %s wide: leave at least %s to level",
						p.ShowSaid(j.Long), p.Show(beyond), p.Show(body.Size), p.Show(trim)),
					Working: p.Paper().Start(body.Size, "width of the mate").Plus(trim, "to level").Equals("needed").
						Versus(j.Long.Length, "stated").Working(),
					Notes: []diag.Note{{Span: mate.Span, Message: fmt.Sprintf("%s, into which %s goes", titled(&mate.Item), called(plan.It(e.Of)))}},
					Fixes: []diag.Fix{{Title: "write `long " + cutTo(p, j.Long.Span, body.Size+trim) + "`, or leave `long` out"}},
				}
				switch {
				case beyond < 0 && !agree(p, beyond, 0):
					f.Severity = diag.Error
					f.Message = fmt.Sprintf("a through tenon %s long does not come through its mate, which is %s wide",
						p.ShowSaid(j.Long), p.Show(body.Size))
				case agree(p, beyond, 0):
					f.Message = fmt.Sprintf("a through tenon %s long ends flush with its mate: leave at least %s to level",
						p.ShowSaid(j.Long), p.Show(trim))
				}
				pass.Report(f)
				break
			}
		}
	},
}
