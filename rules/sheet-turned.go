package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var sheetTurned = &Rule{
	Name: "sheet-turned", Group: Layups, Severity: diag.Error,
	Summary: "one sheet is written with its grain the one way and the other",
	Doc: `The last number of a sheet's size runs with the grain of its face: 48 x 96 has it along its length, 96 x 48 across. Where a sheet is
declared as the one and lies on the rack as the other, half of its parts come off the saw with their grain turned; as a ply they lie along where they
should cross, and the panel warps.

See which way the face runs, and write both alike.`,
	Sources: `That the last number is the grain: Architectural Woodwork Standards, 1st ed., 2009, page 81.`,
	Sound:   `Sheets of one size with their grain along, and others, under another name, across; half a sheet on the rack; a square one.`,
	Bad: `sheet core { kind plywood ; thick 1/4 ; actual 6mm ; size 48 x 96 ; emission "TSCA Title VI" }
part shelf { of core ; long 30 ; wide 12 }
stock { sheet core x 3 { size 96 x 48 } }
`,
	Good: `sheet core { kind plywood ; thick 1/4 ; actual 6mm ; size 48 x 96 ; emission "TSCA Title VI" }
part shelf { of core ; long 30 ; wide 12 }
stock { sheet core x 3 { size 48 x 96 } }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, s := range p.Stock {
			m := s.Of.To
			if m == nil || m.Grainless() || !m.Size.Across.Known() || !s.Size.Across.Known() || !m.Size.Deep.Known() || !s.Size.Deep.Known() {
				continue
			}
			across, along := m.Size.Across.Length, m.Size.Deep.Length
			if wood.Same(across, along) || !wood.Same(across, s.Size.Deep.Length) || !wood.Same(along, s.Size.Across.Length) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: m.Name.Text,
				Span:    standing(s.Span, s.Size.Across.Span),
				Message: fmt.Sprintf("sheet %s is %s x %s, and %s x %s on the rack: the last number is the grain, and it is turned", quote(m.Name.Text),
					p.ShowSaid(m.Size.Across), p.ShowSaid(m.Size.Deep), p.ShowSaid(s.Size.Across), p.ShowSaid(s.Size.Deep)),
				Notes: []diag.Note{{Span: standing(m.Name.Span, m.Size.Across.Span), Message: "its size stands here"}},
				Fixes: []diag.Fix{{Title: fmt.Sprintf("see which way its face runs: write `size %s x %s` in both places, or give each of two sheets its name",
					p.ShowSaid(m.Size.Across), p.ShowSaid(m.Size.Deep))}},
			})
		}
	},
}
