package rules

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	leanLoad = &Figure{
		Name: "hand", Why: "what may press on the edge of a top without tipping it", Basis: Practice,
		Source: "50 lb (23 kg), a hand that leans: no published figure was found", Dim: lang.Weight, Number: 50 * wood.Pound,
	}
	leanLight = &Figure{
		Name: "touch", Why: "what tips a table so easily that it is more than a word of advice", Basis: Practice,
		Source: "35 lb (16 kg): no published figure was found", Dim: lang.Weight, Number: 35 * wood.Pound,
	}
	sitLoad = &Figure{
		Name: "sitter", Why: "what may sit at the end of a bench without tipping it", Basis: Practice,
		Source: "200 lb (91 kg): no published figure was found", Dim: lang.Weight, Number: 200 * wood.Pound,
	}
	sitIn = &Figure{
		Name: "sits-in", Why: "how far in from the end of a bench the weight of who sits there lies", Basis: Practice,
		Source: "6 in (150 mm), half of a narrow seat", Dim: lang.Length, Length: 6 * wood.Inch, Metric: 150 * wood.Millimetre,
	}
)

var tipsByLeaning = &Rule{
	Name: "tips-by-leaning", Group: Structure, Severity: diag.Warning,
	Summary: "a table tips when one leans on the edge of its top",
	Doc: `A top that stands far out over its legs is a lever. A hand that leans on its edge, or a child that hangs from it, lifts the
far legs off the floor, and what stood on it slides onto whoever leaned.

Set the feet farther out, let the top stand out less, or make the base heavier. The rule takes tables, desks, benches, and whatever else has a top
laid over it and stands on legs, with the weight of all of it, empty, and asks at each side what presses it over: weight times the distance from where it
balances to the line of the feet, over the distance from that line to the edge of the top. Small light tables go over sooner than one thinks: where
it takes 35 lb or more, this is a word of advice. A bench is asked about someone who sits at its end. Where legs do not stand at the corners, it takes the lines from foot to
foot. Chairs, and what is fixed to the wall, are not judged; nor does silence here say that a table stands firm, on a floor and in
a house that no plan knows.`,
	Sources: `Statics. A top that is not larger than the base of its legs: W. Noyes, Handwork in Wood, 1910, on tables; none such is reported. What
woods and sheets weigh: Wood Handbook, FPL-GTR-190, 2010, chapters 4, 5 and 12. The loads are common practice, no source.`,
	Sound: `A top that stands out as far over a base that stands wider; a top with its edge over the feet, however light; a bench whose ends stand out less
than half a seat.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood maple { species "sugar maple" ; sawn quarter ; heavy 40lb/ft3 }
assembly stand {
  kind table
  of maple
  wide 12 ; high 24 ; deep 12
  across {
    behind { leg front-left 2 { wide 2 } ; space ; leg back-left 2 { wide 2 } }
    space
    behind { leg front-right 2 { wide 2 } ; space ; leg back-right 2 { wide 2 } }
  }
}
top slab { of maple ; thick 3/4 ; over stand ends 6 front 2 back 2 }
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood maple { species "sugar maple" ; sawn quarter ; heavy 40lb/ft3 }
assembly stand {
  kind table
  of maple
  wide 20 ; high 24 ; deep 12
  across {
    behind { leg front-left 2 { wide 2 } ; space ; leg back-left 2 { wide 2 } }
    space
    behind { leg front-right 2 { wide 2 } ; space ; leg back-right 2 { wide 2 } }
  }
}
top slab { of maple ; thick 3/4 ; over stand ends 2 front 1 back 1 }
`,
	Figures: []*Figure{leanLoad, leanLight, sitLoad, sitIn},
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range piecesIn(p, leanedOn) {
			if !s.balanced || s.Use.Is == "" && !s.onLegs() || s.anchored() != nil {
				continue
			}
			if t := s.tipsAt(pass); t != nil {
				reportLeaning(pass, s, t)
			}
		}
	},
}

// leanedOn reports whether one leans on the edge of such a piece, or sits there.
func leanedOn(a *plan.Assembly, tops []*plan.Member) bool {
	switch a.Use.Is {
	case "table", "desk", "bench":
		return true
	case "", "counter":
		return len(tops) > 0
	}
	return false
}

// tipping is what tips a piece over one line of its feet.
type tipping struct {
	where     string // "left edge", "left front corner"
	top       *plan.Member
	holds     wood.Length // from where it balances to the line of the feet
	beyond    wood.Length // from there to where the load presses
	in        wood.Length // from there to the edge
	kilograms float64     // that tip it
	least     float64     // that should not
}

// tipsAt is the line of feet over which the least tips it, where that is too little; nil where there is none.
func (s *onFloor) tipsAt(pass *Pass) *tipping {
	least, in := pass.Number(leanLoad, s.subject), wood.Length(0)
	if s.Use.Is == "bench" {
		least, in = pass.Number(sitLoad, s.subject), pass.Length(sitIn, s.subject)
	}
	feet, known := s.feet()
	if !known {
		return nil
	}
	const alike = 1e-6 // kilograms; of lines that are alike the first is named
	lines := around(feet)
	var worst *tipping
	for _, top := range s.levels() {
		across, behind := s.reaches(top, plan.Across), s.reaches(top, plan.Behind)
		if !across.Known() || !behind.Known() {
			return nil
		}
		for _, line := range lines {
			beyond := wood.Length(math.MinInt64)
			for _, x := range []wood.Length{across.From + in, across.To() - in} {
				for _, y := range []wood.Length{behind.From + in, behind.To() - in} {
					beyond = max(beyond, line.outside(x, y))
				}
			}
			if !wood.Over(beyond, 0) {
				continue
			}
			holds := max(-line.outside(s.balance.Centre[plan.Across], s.balance.Centre[plan.Behind]), 0)
			t := &tipping{line.where(), top, holds, beyond, in, s.balance.Kilograms * float64(holds) / float64(beyond), least}
			if worst == nil || t.kilograms < worst.kilograms-alike {
				worst = t
			}
		}
	}
	if worst == nil || worst.kilograms >= least || heft(pass.Plan, worst.kilograms) == heft(pass.Plan, least) {
		return nil
	}
	return worst
}

// footLine is a line from foot to foot over which a piece may tip, seen from above.
type footLine struct {
	x, y     float64 // a point of it
	out, aft float64 // which way it tips, to the right and to the back, of length 1
}

// outside is how far a point lies beyond the line; below zero within the feet.
func (l footLine) outside(x, y wood.Length) wood.Length {
	return wood.Length(math.Round((float64(x)-l.x)*l.out + (float64(y)-l.y)*l.aft))
}

// where is the edge or the corner of the top that goes down.
func (l footLine) where() string {
	const straight = 1e-3
	side, end := "left", "front"
	if l.out > 0 {
		side = "right"
	}
	if l.aft > 0 {
		end = "back"
	}
	switch {
	case math.Abs(l.aft) < straight:
		return side + " edge"
	case math.Abs(l.out) < straight:
		return end + " edge"
	}
	return side + " " + end + " corner"
}

// around are the lines round the corners of all feet, as a string would lie that is drawn round them.
func around(feet [][2]plan.Extent) []footLine {
	var corners [][2]float64
	for _, f := range feet {
		for _, x := range []wood.Length{f[0].From, f[0].To()} {
			for _, y := range []wood.Length{f[1].From, f[1].To()} {
				corners = append(corners, [2]float64{float64(x), float64(y)})
			}
		}
	}
	slices.SortFunc(corners, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	var lines []footLine
	for range 2 { // there and back
		var half [][2]float64
		for _, c := range corners {
			for len(half) > 1 && turn(half[len(half)-2], half[len(half)-1], c) <= 0 {
				half = half[:len(half)-1]
			}
			half = append(half, c)
		}
		for i := 1; i < len(half); i++ {
			dx, dy := half[i][0]-half[i-1][0], half[i][1]-half[i-1][1]
			if long := math.Hypot(dx, dy); long > 0 {
				lines = append(lines, footLine{half[i][0], half[i][1], dy / long, -dx / long})
			}
		}
		slices.Reverse(corners)
	}
	slices.SortStableFunc(lines, func(a, b footLine) int { return cmp.Compare(a.where(), b.where()) })
	return lines
}

// turn is above zero where the way from a over b to c turns one way, and below where it turns the other.
func turn(a, b, c [2]float64) float64 {
	return (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
}

// levels are the tops of a piece: what is laid over it, and what closes it above in its own lists.
func (s *onFloor) levels() []*plan.Member {
	levels := slices.Clone(s.tops)
	for _, m := range s.Members {
		if at := m.Cell[plan.Down]; m.Word == "top" && at.Known() && wood.Same(at.From, 0) {
			levels = append(levels, m)
		}
	}
	return levels
}

// reaches is where a top begins and ends along an axis.
func (s *onFloor) reaches(top *plan.Member, axis plan.Axis) plan.Extent {
	if slices.Contains(s.tops, top) {
		return top.Reaches(axis)
	}
	at := top.Body[axis]
	if o := top.Over; o != nil {
		near, far := o.Ends, o.Ends
		if axis == plan.Behind {
			near, far = o.Front, o.Back
		}
		at.From -= near.Or(0).Length
		at.Size += near.Or(0).Length + far.Or(0).Length
	}
	return at
}

func reportLeaning(pass *Pass, s *onFloor, t *tipping) {
	p := pass.Plan
	weighs, load, least := heft(p, s.balance.Kilograms), heft(p, t.kilograms), heft(p, t.least)
	presses, should := "pressed down on the "+t.where+" of its top", "a hand that leans presses with "+least
	if s.Use.Is == "bench" {
		presses, should = "on the "+t.where+" of its seat", "someone who sits there weighs "+least
	}
	most := wood.Length(s.balance.Kilograms * float64(t.holds) / t.least)
	working := diag.Working{
		{Value: weighs, Label: "what all of it weighs, empty"},
		{Op: diag.Times, Value: p.Tape.Nearest(t.holds), Label: "from where it balances to the outside of its feet there"},
		{Op: diag.Over, Value: p.Tape.Nearest(t.beyond), Label: "from there to where it is pressed"},
		{Op: diag.Equals, Value: load, Label: "tips it"},
		{Op: diag.Versus, Value: least, Label: "that should not"},
	}
	f := diag.Finding{
		Subject: s.subject,
		Span:    s.Name.Span,
		Message: fmt.Sprintf("%s weighs %s, and %s %s tip it: %s", s.called(), weighs, load, presses, should),
		Working: about(working, s.balance.Weight),
		Fixes: []diag.Fix{{Title: fmt.Sprintf("set its feet farther out, or let the top stand out less: %s beyond the feet is the most at this weight",
			p.Show(p.Tape.Floor(most+t.in)))}},
	}
	if t.holds == 0 {
		f.Message = fmt.Sprintf("%s weighs %s and falls over by itself, at the %s of its top: it does not balance over its feet", s.called(), weighs, t.where)
		f.Fixes = []diag.Fix{{Title: "set feet farther out there"}}
	}
	if s.Use.Is != "bench" && t.kilograms >= pass.Number(leanLight, s.subject) {
		f.Severity = diag.Advice
	}
	if t.top.Name.Span != s.Name.Span {
		f.Notes = []diag.Note{{Span: t.top.Name.Span, Message: "this is what stands out"}}
	}
	pass.Report(f)
}
