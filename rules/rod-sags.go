package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

const rodSource = "Architectural Woodwork Standards, 1st ed., 2009, p. 281"

var (
	rodLong = &Figure{
		Name: "long", Why: "how far apart what carries a clothes rod may be", Basis: Published,
		Source: "48 in (1219 mm): " + rodSource, Dim: lang.Length, Length: 48 * wood.Inch, Metric: 1220 * wood.Millimetre,
	}
	rodThick = &Figure{
		Name: "thick", Why: "the least diameter of a clothes rod, of metal", Basis: Published,
		Source: "1 1/16 in (27 mm) of metal, and 1 1/4 in (31.8 mm) of wood: " + rodSource, Dim: lang.Length, Length: 17 * wood.Inch / 16, Metric: 27 * wood.Millimetre,
	}
)

var rodSags = &Rule{
	Name: "rod-sags", Group: Structure, Severity: diag.Warning,
	Summary: "a clothes rod runs too far with nothing between to carry it, or is too thin",
	Doc: `A full rod carries more than a shelf of the same length, all of it on one thin stick. Over four feet it hangs like a bow, and works out of its sockets.

Let a divider carry it, so that no bay is over 48 wide, and take a rod of 1 1/4 of wood, or 1 1/16 of metal, at least. A plan does not say what a rod is of,
and the rule asks no more than of a metal one. Where a bracket holds a long rod in the middle, allow it and say so.`,
	Sources: `Both figures: ` + rodSource + `.`,
	Sound:   `A rod of 1 1/4 in a bay 48 wide; two rods in a wide wardrobe, with a divider between.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
rod pole { thick 1 1/4 }
case wardrobe {
  of ply
  wide 61 1/2 ; high 72 ; deep 24
  joint housing deep 1/4
  across { side left ; down { top roof ; open hanging { rod pole at 64 } ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
rod pole { thick 1 1/4 }
case wardrobe {
  of ply
  wide 61 1/2 ; high 72 ; deep 24
  joint housing deep 1/4
  across {
    side left
    down {
      top    roof
      across { open hanging { rod pole at 64 } ; divider middle ; open more { rod pole at 64 } }
      bottom floor
    }
    side right
  }
}
`,
	Figures: []*Figure{rodLong, rodThick},
	Check: func(pass *Pass) {
		for bay := range plan.AllOf[*plan.Space](pass.Plan) {
			for _, use := range bay.Rods {
				if use.Rod != nil {
					checkRod(pass, bay, use)
				}
			}
		}
	},
}

// checkRod holds a rod, which runs across its bay, against what carries clothes.
func checkRod(pass *Pass, bay *plan.Space, use *plan.HardwareUse) {
	p, subject := pass.Plan, plan.PathOf(bay)
	f := diag.Finding{Subject: subject, Span: use.Span}
	if wide, most := bay.Cell[plan.Across], pass.Length(rodLong, subject); wide.Sized && wood.Over(wide.Size, most) {
		f.Message = fmt.Sprintf("rod %s runs %s in %s with nothing between to carry it, and may %s", quote(use.Rod.Name.Text), exact(p, wide.Size), titled(&bay.Item), p.Show(most))
		f.Working = p.Paper().Start(wide.Size, "width of "+titled(&bay.Item)).Versus(most, "at most").Working()
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let a divider carry it, so that no bay is over %s wide", p.Show(most))}}
		pass.Report(f)
		return
	}
	if thick, least := use.Rod.Thick, pass.Length(rodThick, subject); thick.Known() && wood.Under(thick.Length, least) {
		f.Message = fmt.Sprintf("rod %s is %s thick, and wants %s at least, or %s of wood", quote(use.Rod.Name.Text), p.ShowSaid(thick), p.Show(least), p.Show(rodOfWood(p)))
		f.Notes = []diag.Note{{Span: use.Rod.Name.Span, Message: "the rod is drawn here"}}
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("take a rod %s thick", p.Show(rodOfWood(p)))}}
		pass.Report(f)
	}
}

// rodOfWood is the least diameter of a wooden rod, as the same standard has it.
func rodOfWood(p *plan.Plan) wood.Length {
	if p.Tape.Metric {
		return 32 * wood.Millimetre
	}
	return 5 * wood.Inch / 4
}
