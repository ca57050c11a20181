package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var pocketOff = &Figure{
	Name: "off", Why: "by how much a pocket screw may differ from the one for its wood", Basis: Practice,
	Source: "1/8 (3 mm), as much as millimetre and inch screws differ", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

// pocketScrews are the pocket screws for wood of a thickness.
var pocketScrews = []struct{ thick, long wood.Length }{
	{wood.Inch / 2, wood.Inch},
	{3 * wood.Inch / 4, 5 * wood.Inch / 4},
	{wood.Inch, 3 * wood.Inch / 2},
	{5 * wood.Inch / 4, 2 * wood.Inch},
	{3 * wood.Inch / 2, 5 * wood.Inch / 2},
}

var pocketScrewLength = &Rule{
	Name: "pocket-screw-length", Group: Joints, Severity: diag.Warning,
	Summary: "a pocket screw does not suit the thickness of the wood",
	Doc: `The pocket, its drill and its stop are set for one thickness of wood, and the screw that goes with it comes out in the middle of the
end. A longer one comes out at the face of its mate; a shorter one hardly leaves its own part.

Take a screw of 1 for wood of 1/2, of 1 1/4 for 3/4, of 1 1/2 for 1, of 2 for 1 1/4 and of 2 1/2 for 1 1/2. For wood between two of these either will do.`,
	Sources: `1 1/4 in wood of 3/4 is common practice, no source; the other lengths are from memory, check them against the jig's manual.`,
	Sound:   `A face frame of 3/4 with screws of 1 1/4; sheet stock of 23/32, and of 18 mm with screws of 30 mm; rails of 7/8 with 1 1/4 or 1 1/2.`,
	Bad: `screw pocket { gauge 8 ; long 2 ; head pan }
frame face {
  wide 30 ; high 24 ; thick 3/4
  joint pocket pocket count 2
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Good: `screw pocket { gauge 8 ; long 1 1/4 ; head pan }
frame face {
  wide 30 ; high 24 ; thick 3/4
  joint pocket pocket count 2
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Figures: []*Figure{pocketOff},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Pocket) {
			of, thick := t.Joint.Hardware.To, t.of.Size.Thick
			if of == nil || !of.Long.Known() || !thick.Known() {
				continue
			}
			least, most, ok := pocketScrew(thick.Length)
			off := pass.Length(pocketOff, t.subject)
			if !ok || !wood.Under(of.Long.Length, least-off) && !wood.Over(of.Long.Length, most+off) {
				continue
			}
			wanted := p.Tape.Nearest(least)
			if least != most {
				wanted += " or " + p.Tape.Nearest(most)
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    fastenerSpan(t.Joint),
				Message: fmt.Sprintf("a pocket screw %s long does not suit wood %s thick: take one of %s", p.ShowSaid(of.Long), p.Show(thick.Length), wanted),
				Notes:   screwNotes(of),
			})
		}
	},
}

// pocketScrew is how long a pocket screw for wood of some thickness is: between two that are in the
// table either will do. Wood within 1/16 of one counts as that; ok is false beyond the table.
func pocketScrew(thick wood.Length) (least, most wood.Length, ok bool) {
	const near = wood.Inch / 16
	for i, s := range pocketScrews {
		switch {
		case (thick - s.thick).Abs() <= near:
			return s.long, s.long, true
		case thick < s.thick && i > 0:
			return pocketScrews[i-1].long, s.long, true
		case thick < s.thick:
			return 0, 0, false
		}
	}
	return 0, 0, false
}
