package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	cutsApart = &Figure{
		Name: "apart", Why: "how much wood is left between two cuts at least", Basis: Practice,
		Source: "1/8 (3 mm), which a chisel and a drill leave standing", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	webLeast = &Figure{
		Name: "web", Why: "how much of a board is left between two housings at least, as a part of it", Basis: Practice,
		Source: "a third", Dim: lang.Plain, Number: 1.0 / 3,
	}
	paneApart = &Figure{
		Name: "glass", Why: "how far what is machined for hardware stays from a glass opening", Basis: Published,
		Source: "Architectural Woodwork Standards, 1st ed., 2009, p. 271: 3/8", Dim: lang.Length, Length: 3 * wood.Inch / 8,
	}
)

var cutsMeet = &Rule{
	Name: "cuts-meet", Group: Cuts, Severity: diag.Error,
	Summary: "two cuts run into each other inside one piece of wood, or leave next to nothing between them",
	Doc: `Two rails that come into a post from two sides are drawn on two sheets, and their mortises meet where no sheet
shows it: the second tenon does not seat, or cuts the first away. So do the housings of shelves at both sides of a divider,
a hinge's bore and the tenon beside it, a lock and the middle rail, dowels and a groove.

Where tenons meet in a post, make them shorter, mitre their tips and say so ("mitred"), or let one rail stand higher than the other. Elsewhere move one of the
two. Two cuts want 1/8 between them, two housings a third of the board, and what is let in for hardware 3/8 to the opening for a pane.
A panel's groove that ends in a mortise and what is cut for one joint are meant to meet, and so are a back's groove and the housings in the same face.`,
	Sources: `That the tenons of a table nearly touch, and are mitred: W. Fairham, Woodwork Joints, Table Framing. When they meet is
geometry. The other figures are as they say.`,
	Sound: `Mitred tenons; tenons that stop 1/8 short of each other; two rails at different heights in one post; housings that leave a
third, or are staggered; a bore 1/8 from a tenon; dowels from both sides that pass each other; a panel's groove that runs into a mortise.`,
	Bad: `part leg x 4 { size 28 x 2 x 2 }
joint corner tenon thick 1/4 set 1/4 haunch 1 deep 1/2 long 1 1/2
frame long x 2 {
  wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg }
}
frame short x 2 {
  wide 30 ; high 28 ; thick 2
  across {
    post left part leg turned
    down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space }
    post right part leg turned
  }
}
`,
	Good: `part leg x 4 { size 28 x 2 x 2 }
joint corner tenon thick 1/4 set 1/4 haunch 1 deep 1/2 long 1
frame long x 2 {
  wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg }
}
frame short x 2 {
  wide 30 ; high 28 ; thick 2
  across {
    post left part leg turned
    down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space }
    post right part leg turned
  }
}
`,
	Figures: []*Figure{cutsApart, webLeast, paneApart},
	Check: func(pass *Pass) {
		var all []meeting
		at := make(map[met]int)
		for _, b := range pass.Plan.Cuts().Blanks {
			for _, m := range meetings(pass, b) {
				all = keepWorst(all, at, m.lines(), m)
			}
		}
		for _, m := range all {
			pass.Report(m.finding(pass))
		}
	},
}

// clearance is what two kinds of cut want between them.
type clearance struct {
	a, b  func(*plan.Cut) bool
	wants *Figure
	meant func(plan.Meeting) bool // they may meet: nil where they never may
}

// clearances are the pairs of kinds that are to be kept apart; the first that fits counts.
var clearances = []clearance{
	{socket, socket, cutsApart, tipsMeet},
	{socket, hole, cutsApart, nil},
	{socket, bore, cutsApart, nil},
	{hole, hole, cutsApart, oneBolt},
	{hole, bore, cutsApart, nil},
	{bore, bore, cutsApart, nil},
	{tenonStands, hole, cutsApart, nil},
	{tenonStands, bore, cutsApart, nil},
	{grooved, socket, cutsApart, sameFace},
	{grooved, hole, cutsApart, nil},
	{grooved, bore, cutsApart, nil},
	{grooved, grooved, cutsApart, sameFace},
	{housed, housed, webLeast, webSaid},
	{housed, socket, cutsApart, sameFace},
	{housed, grooved, cutsApart, sameFace},
	{housed, bore, cutsApart, nil},
	{paned, bore, paneApart, nil},
}

func tenonStands(c *plan.Cut) bool { return c.Kind == plan.CutTenon }

func grooved(c *plan.Cut) bool { return c.Kind == plan.CutGroove && c.For.Drawer == nil }

func housed(c *plan.Cut) bool { return c.Kind == plan.CutHousing && c.For.Drawer == nil }

// paned reports whether a pane lies in a cut.
func paned(c *plan.Cut) bool {
	if c.Kind != plan.CutRabbet || c.For.End == nil {
		return false
	}
	_, glass := c.For.End.Of.(*plan.Glass)
	return glass
}

// tipsMeet reports whether two tenons are meant to meet: their tips are mitred; or they stand one
// above the other in one long mortise.
func tipsMeet(m plan.Meeting) bool {
	for _, c := range []*plan.Cut{m.A, m.B} {
		if j := c.Joint(); j != nil && j.Mitred.On {
			return true
		}
	}
	return m.A.Enters == m.B.Enters && m.Along == plan.Long && !wood.Under(m.Gap, 0) && !widthsSaid(m)
}

func widthsSaid(m plan.Meeting) bool { return widthSaid(m.A.Joint()) || widthSaid(m.B.Joint()) }

// oneBolt reports whether two holes are those of one bolt, which goes through what is between.
func oneBolt(m plan.Meeting) bool {
	if m.A.Kind != plan.CutBolt || m.B.Kind != plan.CutBolt || !m.A.Through() || !m.B.Through() {
		return false
	}
	for d := range m.A.At {
		if !wood.Same(m.A.At[d].From, m.B.At[d].From) || !wood.Same(m.A.At[d].Size, m.B.At[d].Size) {
			return false
		}
	}
	return true
}

// shortPeg reports whether a cut is a peg's hole that need not reach as far as another cut, or of which
// nothing says how far it goes.
func shortPeg(c, other *plan.Cut) bool {
	j := c.Joint()
	if c.Kind != plan.CutPeg || j == nil || j.Peg == nil {
		return false
	}
	long, d := j.Peg.Of.To.Long, c.Enters.Dimension()
	from := other.At[d].From
	if size := c.In.Size[d]; c.Enters.Far() {
		from = size.Length - other.At[d].To()
	}
	return !long.Known() || !wood.Under(from, long.Length)
}

func sameFace(m plan.Meeting) bool { return m.A.Enters == m.B.Enters }

// webSaid reports whether there is no web between two housings, or one of them is too deep by itself.
func webSaid(m plan.Meeting) bool {
	most := fraction(m.A.In.Size[plan.Thick].Length, housingDeepest.Number)
	return !opposed(m) || wood.Over(m.A.Deep().Length, most) || wood.Over(m.B.Deep().Length, most)
}

// opposed reports whether two cuts come towards each other from opposite faces.
func opposed(m plan.Meeting) bool {
	d := m.A.Enters.Dimension()
	return m.B.Enters == m.A.Enters.Opposite() && m.Apart[(d+1)%3] < 0 && m.Apart[(d+2)%3] < 0
}
