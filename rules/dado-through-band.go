package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var bandThin = &Figure{
	Name: "thin", Why: "below which thickness an edging counts as stuck on over the finished joints", Basis: Practice,
	Source: "1/16 (1.5 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
}

var dadoThroughBand = &Rule{
	Name: "dado-through-band", Group: Joints, Severity: diag.Warning,
	Summary: "a dado is cut through the edging on the front of its board",
	Doc: `A dado that runs out through the edging shows as a notch on the front of the case, and the edging splinters where the cutter
leaves it.

Stop it behind the edging, which is what "stopped" says: the shelf is then notched at its front corners. A thin band that is ironed
over the finished joint is no edging of this kind.`,
	Sources: `That a dado does not run through the edgeband: Architectural Woodwork Standards, 1st ed., 2009, p. 267. What counts as a thin
band stands with its figure.`,
	Sound: `A dado that is stopped just behind the edging; a shelf that stands as far back; a side with a thin band.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 18mm ; emission "TSCA Title VI" }
wood alder { species "red alder" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  each side { edging front alder 1/4 }
  joint dado deep 1/4
  across {
    side left
    down { top roof ; open ; shelf middle ; open ; bottom floor }
    side right
  }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 18mm ; emission "TSCA Title VI" }
wood alder { species "red alder" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  each side { edging front alder 1/4 }
  joint dado deep 1/4 stopped 1/4
  across {
    side left
    down { top roof ; open ; shelf middle ; open ; bottom floor }
    side right
  }
}
`,
	Figures: []*Figure{bandThin},
	Check: func(pass *Pass) {
		p := pass.Plan
		for h := range housings(p, acrossWood...) {
			starts, ok := frontOf(h)
			if !ok {
				continue
			}
			band, ok := frontBand(h.end.Mates[0])
			if !ok || wood.Under(band.Length, pass.Length(bandThin, h.subject)) || !wood.Under(starts, band.Length) {
				continue
			}
			f := diag.Finding{
				Subject: h.subject,
				Span:    h.Kind.Span,
				Message: fmt.Sprintf("the %s runs out through the edging, %s thick, on the front of its board: stop it behind that", spoken(h.Kind.Is), p.ShowSaid(band)),
				Notes:   []diag.Note{{Span: band.Span, Message: "the edging is said here"}},
				Fixes:   []diag.Fix{{Title: "write `stopped " + cutTo(p, h.Kind.Span, upTo(p, band.Length)) + "`, or more"}},
			}
			if h.Stopped.Said() {
				f.Span = h.Stopped.Span
			}
			pass.Report(f)
		}
	},
}

// frontOf is how far behind the front of the board that it is cut into a housing begins; ok is false where
// that is not known, or the boards do not stand in the same case.
func frontOf(h sunk) (starts wood.Length, ok bool) {
	if h.end == nil || len(h.end.Mates) != 1 || h.end.Side.Axis() == plan.Behind {
		return 0, false
	}
	m, ok := h.end.Of.(*plan.Member)
	mate := h.end.Mates[0]
	stopped := h.Stopped.Or(0)
	if !ok || m.In != mate.In || !stopped.Known() {
		return 0, false
	}
	own, other := m.Body[plan.Behind], mate.Body[plan.Behind]
	return own.From - other.From + stopped.Length, own.Placed && other.Placed
}

// frontBand is how thick the edging on the front of a board is.
func frontBand(m *plan.Member) (plan.Length, bool) {
	edgings := m.Edging
	if part := m.Part.To; part != nil && !m.Turned.On {
		edgings = part.Edging
	}
	for _, e := range edgings {
		if e.Edge.Is == "front" {
			thick := e.Of.Thick()
			return thick, thick.Known()
		}
	}
	return plan.Length{}, false
}
