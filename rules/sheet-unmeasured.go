package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var sheetUnmeasured = &Rule{
	Name: "sheet-unmeasured", Group: Joints, Severity: diag.Warning,
	Summary: "a slot is cut for a sheet that nobody has measured",
	Doc: `Plywood is not as thick as it is called, and one delivery is not as thick as the next: what is sold as 23/32 may be
anything from 0.688 to 0.750. A slot that is cut to the name is loose on one sheet and too tight on another.

Measure the sheet that you have, in several places, and say so: "actual 0.703". Other sizes of the plan follow it. A slot of which no width
is said follows it too. Fibre board and chip board are taken at their word.`,
	Sources: `How thick a sheet of some name may be: US Voluntary Product Standard PS 1, unsanded and touch-sanded within 1/32 to 13/16
and 5 % above, sanded within 1/64 to 3/4 and 3 % above (second-hand, from the pages of a trade association). Sheets in millimetres: no figure is
taken.`,
	Sound: `A sheet that is measured; one of fibre board; one by its name alone, in a dado of which no width is said.`,
	Bad: `sheet ply { kind plywood ; species "Douglas-fir" ; thick 23/32 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 3/4
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Good: `sheet ply { kind plywood ; species "Douglas-fir" ; thick 23/32 ; actual 0.735 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 3/4
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range slots(p) {
			if !s.called() {
				continue
			}
			of := s.sheet
			f := diag.Finding{
				Subject: s.subject,
				Span:    s.slot.Span,
				Message: fmt.Sprintf("a %s %s wide is cut for sheet %s, which is called %s and measured by nobody", s.cut, p.ShowSaid(s.slot), quote(of.Name.Text), p.ShowSaid(of.Thick)),
				Notes:   []diag.Note{{Span: of.Thick.Span, Message: "the sheet is said here"}},
				Fixes:   []diag.Fix{{Title: "measure the sheet, and write `actual` with what it measures beside `thick`"}},
			}
			if band, ok := bandOf(p, of); ok {
				f.Message = fmt.Sprintf("a %s %s wide is cut for sheet %s, which is called %s and may be anything from %s to %s", s.cut, p.ShowSaid(s.slot),
					quote(of.Name.Text), p.ShowSaid(of.Thick), p.Show(band.Least), p.Show(band.Greatest))
				f.Working = p.Paper().Start(s.slot.Length, s.cut).Minus(band.Greatest, "sheet at its thickest").Equals("play at least").
					Start(s.slot.Length, s.cut).Minus(band.Least, "sheet at its thinnest").Equals("play at most").Working()
			}
			pass.Report(f)
		}
	},
}

// bandOf is how thick the standard lets a sheet of a name be; ok is false for what it does not know.
func bandOf(p *plan.Plan, of *plan.Material) (wood.Band, bool) {
	if p.Tape.Metric || of.SheetKind.Is != "plywood" {
		return wood.Band{}, false
	}
	if band, ok := wood.UnsandedBand(of.Thick.Length); ok {
		return band, true
	}
	return wood.SandedBand(of.Thick.Length), true
}
