package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	coverPlay = &Figure{
		Name: "play", Why: "how much a cup hinge is turned sideways by its screws", Basis: Practice,
		Source: "1.5 mm; a little more is left to hang the door by", Dim: lang.Length, Length: 3 * wood.Millimetre / 2,
	}
	insetCrank = &Figure{
		Name: "inset-crank", Why: "how far the arm of a cup hinge is cranked at least for an inset door", Basis: Published,
		Source: "15 mm and more: makers' sheets of cup hinges", Dim: lang.Length, Length: 15 * wood.Millimetre,
	}
)

// cupBase is what a cup hinge of 35 mm and a straight arm covers with its bore at the very edge and no plate.
const cupBase = 13 * wood.Millimetre

var overlayOffHinge = &Rule{
	Name: "overlay-off-hinge", Group: Doors, Severity: diag.Error,
	Summary: "a door on cup hinges does not lap its opening by what the hinges cover",
	Doc: `How far a door on cup hinges lies over the case is not drawn but bored: 13 mm, and what the bore is in from the edge, less the
thickness of the mounting plate, less the crank of the arm. A door that is drawn to lap 19 mm on a hinge that covers 17 hangs 2 mm off at
its hinge edge; the doors run into one another, or the edge of the case shows.

Bore nearer to the edge or farther from it, say another plate, or draw the lap that the hinge gives. What the hinge's sheet says goes
before the sum: write it as "covers 17mm at rim 4mm plate 0". A hinge whose plate nobody states is not judged.`,
	Sources: `The sum, and arms cranked by 8 to 9.5 mm for half laps and 15 mm or more for inset doors: makers' sheets of cup hinges. The
play is common practice, no source.`,
	Sound: `A lap within 1.5 mm of what the hinge covers, with a plate, with a cranked arm, and where the bore of one door is nearer to
its edge; an inset door on a hinge cranked for it.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 4mm ; plate 0 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit overlay 19mm ; hang left ; hinge cup count 2 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 4mm ; plate 0 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit overlay 17mm ; hang left ; hinge cup count 2 } ; side right }
}
`,
	Figures: []*Figure{coverPlay, insetCrank},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			hung, turns := d.Hung()
			if !turns || !d.Edges[hung].Less.Known() || d.Edges[hung].Shared || plan.Neighbour(d, hung) == nil {
				continue
			}
			for _, use := range d.Hinges {
				if use.Hinge != nil && use.Hinge.Kind.Is == "cup" && checkOverlay(pass, d, use, d.Edges[hung].Lap()) {
					break // of two alike, the first is enough
				}
			}
		}
	},
}

// checkOverlay holds the lap of a door at its hinge edge against what one of its hinges covers.
func checkOverlay(pass *Pass, d *plan.Door, use *plan.HardwareUse, lap plan.Length) bool {
	p, h, subject := pass.Plan, use.Hinge, plan.PathOf(d)
	f := diag.Finding{Subject: subject, Span: use.Span}
	if d.Fit.Kind.Is != "overlay" {
		least := pass.Length(insetCrank, subject)
		if !h.Crank.Known() || !wood.Under(h.Crank.Length, least) {
			return false
		}
		f.Message = fmt.Sprintf("%s is inset, but the arm of hinge %s is cranked by %s: it lays a door over the edge", titled(&d.Item), quote(use.Name), p.ShowSaid(h.Crank))
		f.Working = p.Paper().Start(h.Crank.Length, "crank of the arm").Versus(least, "wanted at least for an inset door").Working()
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("use a hinge for inset doors, cranked by %s or more", bored(least))}}
		pass.Report(f)
		return true
	}
	paper := p.Paper()
	if !cupCovers(paper, use) || !wood.Over((lap.Length-paper.Equals("the hinge covers").Result()).Abs(), pass.Length(coverPlay, subject)) {
		return false
	}
	cover := paper.Result()
	f.Message = fmt.Sprintf("%s laps its opening by %s at the hinge edge, but hinge %s covers %s", titled(&d.Item), p.ShowSaid(lap), quote(use.Name), bored(cover))
	f.Working = paper.Versus(lap.Length, "lap that is drawn").Working()
	if rim := known(use.Rim, h.Rim); rim.Known() {
		if want := rim.Length + lap.Length - cover; !wood.Under(want, cupRimLeast.Length) && !wood.Over(want, cupRimMost.Length) {
			f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("bore it %s from the edge, and say `rim %s`", bored(want), bored(want))})
		}
	}
	if cover > 0 {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("lap the opening by %s at the hinge edge: `hinge %s` in its `fit overlay`", bored(cover), bored(cover))})
	}
	pass.Report(f)
	return true
}

// The rims between which cup hinges are bored: makers' sheets show the middle of the bore 20.5 to 25.5 mm
// from the edge.
var (
	cupRimLeast = &Figure{
		Name: "rim", Why: "how near to the edge of a door a cup is bored", Basis: Published,
		Source: "3 mm: makers' sheets, middle of the bore 20.5 mm from the edge", Dim: lang.Length, Length: 3 * wood.Millimetre,
	}
	cupRimMost = &Figure{
		Name: "rim-most", Why: "how far from the edge of a door a cup is bored", Basis: Published,
		Source: "8 mm: makers' sheets, middle of the bore 25.5 mm from the edge", Dim: lang.Length, Length: 8 * wood.Millimetre,
	}
)

// cupCovers writes down what a cup hinge covers: as its sheet says it, else by the usual sum. False where
// something of it is not stated.
func cupCovers(paper *plan.Paper, use *plan.HardwareUse) bool {
	h := use.Hinge
	rim := known(use.Rim, h.Rim)
	if c := h.Covers; c != nil {
		if !c.Cover.Known() {
			return false
		}
		paper.Start(c.Cover.Length, "covered, as the hinge says")
		if c.Rim.Known() && rim.Known() && !wood.Same(c.Rim.Length, rim.Length) {
			paper.Plus(rim.Length-c.Rim.Length, "farther from the edge than there")
		}
		if c.Plate.Known() && h.Plate.Known() && !wood.Same(c.Plate.Length, h.Plate.Length) {
			paper.Minus(h.Plate.Length-c.Plate.Length, "plate, more than there")
		}
		return true
	}
	if !rim.Known() || !h.Plate.Known() || !usualCup(h) {
		return false
	}
	paper.Start(cupBase, "a cup at the very edge").Plus(rim.Length, "from the edge to the bore")
	if h.Plate.Length != 0 {
		paper.Minus(h.Plate.Length, "mounting plate")
	}
	if h.Crank.Known() && h.Crank.Length != 0 {
		paper.Minus(h.Crank.Length, "crank of the arm")
	}
	return true
}

// bored is a size about a cup hinge, which is bored and sold in millimetres everywhere.
func bored(l wood.Length) string { return wood.Tape{Metric: true}.Show(l) + "mm" }

// known is a length where it is known, else another.
func known(l, other plan.Length) plan.Length {
	if l.Known() {
		return l
	}
	return other
}
