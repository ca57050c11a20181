package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var rabbetLeaves = &Figure{
	Name: "leaves", Why: "how thick the tongue beside a rabbet is at least; a third of thin wood is enough", Basis: Practice,
	Source: "a quarter inch (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
}

var thinRabbet = &Rule{
	Name: "thin-rabbet", Group: Joints, Severity: diag.Warning,
	Summary: "a rabbet leaves only a thin tongue of its board",
	Doc: `What a rabbet leaves is a long thin tongue along the edge. It splits off when the back is nailed, or when the case stands on
it once.

Leave 1/4 (6 mm), or a third of wood that is thinner than 3/4. A rabbet is written into the thickness x from the edge. One as deep as
the wood is thick leaves nothing: that is an error.`,
	Sources: `Common practice, no source.`,
	Sound:   `A rabbet that leaves just 1/4; one that leaves a third of a thin board; a pane in a frame, whose lip carries nothing.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 1/2
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 3/8 x 1/4 } }
    side right
  }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 1/2
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 1/4 x 1/4 } }
    side right
  }
}
`,
	Figures: []*Figure{rabbetLeaves},
	Check: func(pass *Pass) {
		p := pass.Plan
		for h := range housings(p, plan.Rabbet) {
			if h.end == nil {
				h.mate = h.thick // the front takes the sides
			} else if !h.flat {
				continue // it lies in a frame
			}
			into := h.Rabbet.Across
			if !into.Known() || !h.mate.Known() {
				continue
			}
			left := h.mate.Length - into.Length
			least := min(pass.Length(rabbetLeaves, h.subject), p.Tape.Floor(h.mate.Length/3))
			f := diag.Finding{Subject: h.subject, Span: into.Span}
			switch {
			case !wood.Over(left, 0):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a rabbet %s into wood %s thick leaves nothing of it", p.ShowSaid(into), p.Show(h.mate.Length))
			case wood.Under(left, least):
				f.Message = fmt.Sprintf("a rabbet %s into wood %s thick leaves a tongue of %s, which splits off: leave %s",
					p.ShowSaid(into), p.Show(h.mate.Length), p.Show(left), p.Show(least))
			default:
				continue
			}
			f.Working = p.Paper().Start(h.mate.Length, "thickness").Minus(into.Length, "rabbet").Equals("left of it").Versus(least, "wanted at least").Working()
			if write := p.Tape.Floor(h.mate.Length - least); write > 0 {
				f.Fixes = []diag.Fix{{Title: "write `" + cutTo(p, into.Span, write) + "` into the thickness, or less"}}
			}
			pass.Report(f)
		}
	},
}
