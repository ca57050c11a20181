package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// height is one end of a range of heights that are usual.
func height(name, why, source string, inches, metric wood.Length) *Figure {
	return &Figure{Name: name, Why: why, Basis: SecondHand, Source: source, Dim: lang.Length, Length: inches * wood.Inch, Metric: metric * wood.Millimetre}
}

const heightPages = "several pages for makers"

var (
	tableLow    = height("table-low", "how low a table or a desk is at which one sits", "28 in (710 mm): "+heightPages, 28, 710)
	tableHigh   = height("table-high", "how high it is", "30 in (765 mm): the same, and W. Noyes, Handwork in Wood, 1910", 30, 765)
	counterLow  = height("counter-low", "how low a counter is at which one sits on a stool", "34 in (860 mm): "+heightPages, 34, 860)
	counterHigh = height("counter-high", "how high it is", "36 in (920 mm): "+heightPages, 36, 920)
	barLow      = height("bar-low", "how low a bar is", "40 in (1010 mm): "+heightPages, 40, 1010)
	barHigh     = height("bar-high", "how high it is", "42 in (1070 mm): "+heightPages, 42, 1070)
	seatLow     = height("seat-low", "how low a seat is", "16 in (400 mm): "+heightPages, 16, 400)
	seatHigh    = height("seat-high", "how high it is", "19 in (485 mm): the same, and for benches the ABA Accessibility Standards, 903.5, which want 17 to 19", 19, 485)
)

// notSat is the height from which a bench is not sat on, or a desk stands for those who stand: common practice, no source.
const (
	benchNotSat = 26 * wood.Inch
	deskNotSat  = 34 * wood.Inch
)

var tableHeight = &Rule{
	Name: "table-height", Group: Structure, Severity: diag.Advice,
	Summary: "a table or a bench is higher or lower than one sits at, or on",
	Doc: `A table that is an inch too high is felt at every meal: the shoulders go up, and usual chairs are too low for it.

Tables and desks are 28 to 30 high, counters with stools 34 to 36, bars 40 to 42; seats 16 to 19. The rule asks about a "kind table" or "kind counter" that says
how many "places" it has, about desks, and about the wooden seats of benches and chairs; low tables, workbenches and desks at which one stands say
nothing of places and are left alone. A table that is made to measure for someone, or for children, is right as it is: say so ("allow table-height …"). Where a table must be
accessible, the standard and the local code go before this: 28 to 34 for the top (902.3), and 27 clear for knees (306.3).`,
	Sources: `As the figures say. ABA Accessibility Standards, 306.3, 902.3, 903.5 and ADA Standards 2010, 903.5, from copies of their text.`,
	Sound:   `A table of 30; a low table that says nothing of places; a counter of 36; a workbench.`,
	Bad:     dinner(31, "places 4"),
	Good:    dinner(29, "places 4"),
	Figures: []*Figure{tableLow, tableHigh, counterLow, counterHigh, barLow, barHigh, seatLow, seatHigh},
	Check: func(pass *Pass) {
		for s := range satAt(pass) {
			checkHeight(pass, s)
		}
	},
}

// dinner is a table with a top of 1 and legs that make it so high, for what a rule shows.
func dinner(high int, places string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet ply { kind plywood ; species "yellow birch" ; thick 1 ; actual 1 ; emission "TSCA Title VI" }
assembly base {
  kind table ; ` + places + `
  of oak
  wide 44 ; high ` + itoa(high-1) + ` ; deep 30
  across {
    behind { leg front-left 2 { wide 2 } ; down { apron left 4 { thick 7/8 ; centred } ; space } ; leg back-left 2 { wide 2 } }
    behind { down { apron front 4 { thick 7/8 ; centred } ; space } ; space ; down { apron back 4 { thick 7/8 ; centred } ; space } }
    behind { leg front-right 2 { wide 2 } ; down { apron right 4 { thick 7/8 ; centred } ; space } ; leg back-right 2 { wide 2 } }
  }
}
top slab { of ply ; over base ends 2 front 2 back 2 }
`
}

// heights are a range that is usual.
type heights struct {
	what      string
	low, high *Figure
}

func checkHeight(pass *Pass, s *onFloor) {
	p := pass.Plan
	tops := s.surfaces()
	if len(tops) == 0 {
		return
	}
	top, ranges := tops[0], []heights{{"a table", tableLow, tableHigh}, {"a counter with stools", counterLow, counterHigh}, {"a bar", barLow, barHigh}}
	switch s.Use.Is {
	case "desk":
		if ranges[0].what = "a desk"; top.high >= deskNotSat {
			return
		}
		ranges = ranges[:1]
	case "bench", "chair":
		if len(tops) != 1 || top.high >= benchNotSat {
			return // which of them is the seat nobody knows
		}
		ranges = []heights{{"a seat", seatLow, seatHigh}}
	default:
		if !s.Places.Known() {
			return
		}
		if s.Use.Is == "counter" {
			ranges = ranges[1:]
		}
	}
	nearest, off := ranges[0], wood.Length(-1)
	for _, r := range ranges {
		low, high := pass.Length(r.low, s.subject), pass.Length(r.high, s.subject)
		by := max(low-top.high, top.high-high)
		if !wood.Over(by, p.Tape.Tolerance()) {
			return
		}
		if off < 0 || by < off {
			nearest, off = r, by
		}
	}
	low, high := pass.Length(nearest.low, s.subject), pass.Length(nearest.high, s.subject)
	paper := p.Paper().Start(top.high, "from the floor to the top")
	if top.of.In == nil {
		paper = p.Paper().Start(top.under, "height of "+s.Text).Plus(top.high-top.under, called(&top.of.Item)).Equals("from the floor to the top")
	}
	against, change := high, "lower"
	if top.high < low {
		against, change = low, "higher"
	}
	pass.Report(diag.Finding{
		Subject: s.subject, Span: s.Name.Span,
		Message: fmt.Sprintf("%s is %s high, and %s is %s to %s", s.called(), exact(p, top.high), nearest.what, p.Show(low), p.Show(high)),
		Working: paper.Versus(against, "usual").Working(),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make it %s %s, or say why it is right: `allow table-height \"…\"`", exact(p, off), change)}},
	})
}
