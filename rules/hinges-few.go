package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	hingeEvery = &Figure{
		Name: "every", Why: "how much of a door's height one hinge holds", Basis: SecondHand,
		Source: "30 in (762 mm): several pages of hardware sellers", Dim: lang.Length, Length: 30 * wood.Inch,
	}
	threeFrom = &Figure{
		Name: "wide", Why: "above which width a door has three hinges", Basis: Published,
		Source: "4 ft: Radford's Cyclopedia of Construction, vol. 12", Dim: lang.Length, Length: 48 * wood.Inch,
	}
	hingeBand = &Figure{
		Name: "weight", Why: "the weight of a door for which each hinge beyond the first is wanted, where none says what it carries", Basis: Published,
		Source: "15 lb (6.8 kg): one hardware maker's chart, under 15 two, 15 to 30 three, 30 to 45 four, 45 to 60 five", Dim: lang.Weight, Number: 15 * wood.Pound,
	}
)

var hingesFew = &Rule{
	Name: "hinges-few", Group: Doors, Severity: diag.Warning,
	Summary: "a door has fewer hinges than its height and its weight want",
	Doc: `Two hinges hold a small door. A tall one bows between them and a heavy one draws the upper hinge out by its screws; it sags, and drags on the
floor of the case.

Hang it on more hinges: one for each 30 of height, never fewer than two, three where it is wider than 48; and by its weight, two under
15 lb and one more for each 15 lb. Where a hinge says what it carries ("carries 20lb"), that goes before these bands. The weight is that
of the leaf as it is drawn, and is left out where it cannot be known.`,
	Sources: `As the figures say. What wood and sheets weigh: Wood Handbook, FPL-GTR-190, 2010, chapters 4, 5 and 12.`,
	Sound:   `Two hinges on a light door of just 30; three on one of 61; two strong ones on a heavy door; a tall flap, which hangs along its length.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 1/2 ; actual 1/2 ; heavy 35lb/ft3 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 3/4 ; knuckle 1/4 }
case cupboard {
  wide 14 ; high 70 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 6 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 1/2 ; actual 1/2 ; heavy 35lb/ft3 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 3/4 ; knuckle 1/4 }
case cupboard {
  wide 14 ; high 70 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 6 count 3 } ; side right }
}
`,
	Figures: []*Figure{hingeEvery, threeFrom, hingeBand},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			checkHinges(pass, d)
		}
	},
}

// checkHinges counts the hinges of a door that hangs at its side.
func checkHinges(pass *Pass, d *plan.Door) {
	p, subject := pass.Plan, plan.PathOf(d)
	hung, turns := d.Hung()
	high, wide := d.Size[plan.Down], d.Size[plan.Across]
	if !turns || hung.Axis() != plan.Across || !high.Known() || !wide.Known() || len(d.Hinges) == 0 || !closed(&d.Item) {
		return
	}
	has, carries := 0, 0.0
	for _, use := range d.Hinges {
		if use.Hinge == nil || !placed(use) {
			return
		}
		switch use.Hinge.Kind.Is {
		case "knife", "pivot":
			return // they come in pairs, one at each end
		}
		has += use.Number()
		carries += float64(use.Number()) * use.Hinge.Carries.Or(math.Inf(-1))
	}
	every := pass.Length(hingeEvery, subject)
	wants := max(2, int(math.Ceil(float64(high.Length-p.Tape.Tolerance())/float64(every))))
	why := fmt.Sprintf("one for each %s of its height of %s", p.Show(every), p.Show(high.Length))
	working := p.Paper().Start(high.Length, "height of the door").Versus(every, "for each hinge")
	if wood.Over(wide.Length, pass.Length(threeFrom, subject)) && wants < 3 {
		wants, why = 3, fmt.Sprintf("it is wider than %s", p.Show(pass.Length(threeFrom, subject)))
		working = p.Paper().Start(wide.Length, "width of the door").Versus(pass.Length(threeFrom, subject), "on two hinges at most")
	}
	var notes []diag.Note
	if weight, known := p.WeightOf(d); known {
		byWeight, because := int(weight.Kilograms/pass.Number(hingeBand, subject))+2, "two, and one more for each "+light(p, pass.Number(hingeBand, subject))
		if carries > 0 {
			each := carries / float64(max(has, 1))
			byWeight, because = int(math.Ceil(weight.Kilograms/each-1e-9)), "each carries "+light(p, each)
		}
		if byWeight > wants {
			wants, why = byWeight, fmt.Sprintf("%s, and the door weighs %s", because, light(p, weight.Kilograms))
			working = p.Paper().Remark(fmt.Sprintf("the leaf and its hardware weigh %s", light(p, weight.Kilograms))).Remark(because)
			if !weight.Status.Verified() {
				notes = []diag.Note{{Span: d.Leaf.Span, Message: "what it weighs rests on a figure from memory, check it"}}
			}
		}
	}
	if has >= wants {
		return
	}
	pass.Report(diag.Finding{
		Subject: subject, Span: d.Span, Notes: notes,
		Message: fmt.Sprintf("%s has %s and wants %d: %s", titled(&d.Item), hingesOf(has), wants, why),
		Working: working.Working(),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("hang it on %d hinges", wants)}},
	})
}

// placed reports whether a plan says how many of a hinge there are, or where they sit.
func placed(use *plan.HardwareUse) bool {
	return len(use.At) > 0 || use.Count.Known() || use.FromTop.Known() || use.Ends.Known() || use.InLine.On || use.Centred.On
}

func hingesOf(n int) string {
	if n == 1 {
		return "1 hinge"
	}
	return itoa(n) + " hinges"
}
