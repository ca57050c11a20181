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
	sagFine = &Figure{
		Name: "fine", Why: "one in how many of its span a shelf of fine work may sag at once", Basis: Published,
		Source: "0.02 in in a foot: Miller, 2006, which leaves room below the 1/32 that the eye sees", Dim: lang.Plain, Number: 600,
	}
	sagCase = &Figure{
		Name: "case", Why: "one in how many of its span a shelf of casework may", Basis: Published,
		Source: "L/144: Architectural Woodwork Standards, 1st ed., 2009, p. 253", Dim: lang.Plain, Number: 144,
	}
	sagKitchen = &Figure{
		Name: "kitchen", Why: "one in how many of its span a shelf of a kitchen may", Basis: SecondHand,
		Source: "1/16 in in a foot: ANSI/KCMA A161.1-2012, from a reprint", Dim: lang.Plain, Number: 192,
	}
	sagMost = &Figure{
		Name: "most", Why: "what a shelf of a kitchen may at the most", Basis: SecondHand,
		Source: "1/4 in: the same", Dim: lang.Length, Length: wood.Inch / 4,
	}
)

var shelfSags = &Rule{
	Name: "shelf-sags", Group: Structure, Severity: diag.Warning,
	Summary: "a shelf, a top or a rail sags more under its load than its use allows",
	Doc: `A long shelf bows under books on the day that they are put there, and what looked straight on paper looks tired. How far goes with the fourth
power of the span and the third of the thickness: a little shorter or a little thicker is much stiffer.

Say what it carries: "load 40psf" on its area or "load 25lb/ft" along it, or "holds books", which stands for 50 psf and at most 200 lb on a shelf. A load
that an assembly states is that of every shelf in it; tops, bottoms and rails state their own. Where it says no more than "kind shelves", a shelf is taken
to carry 40 psf, and 15 psf in "kind kitchen", and this is a word of advice.

How far it may sag follows from "sag": fine is 0.02 in a foot (1 in 600), as for books; case is 1 in 144, as for all else; kitchen is 1/16 in a foot (1 in
192), and 1/4 at most. The rule takes the widest clear span between what carries it, at its ends and under it, with the load spread evenly and the ends free to turn:
a shelf that is glued into its housings does a little better. What the shelf weighs itself is not counted.

Make it thicker, let a divider carry it, or glue a rail on edge under its front. The rule is silent where the plan does not tell what carries it: where a
rail or a cleat runs along it or a back is fastened along it, where nothing is drawn under it, where something stands on it between what carries it, where one end is
free, and of a frame that lies flat. What a whole piece holds or carries does not lie on a board on which drawers alone stand. How strong it is, and where it breaks, is not judged: that is for a standard, the local code or an engineer.`,
	Sources: `The formula: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, equation 9-2, with Table 9-1; it gives back the longest
shelves that the Architectural Woodwork Standards print on p. 279. Stiffness of woods and sheets: Wood Handbook, Tables 5-3a, 5-1 and 12-1. The
loads and limits as the figures say.`,
	Sound: `A shelf of red oak 3/4 thick and 49 long under 40 psf; a longer one with a divider under its middle, or with a rail along its front; one
that nobody loads.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak, northern" ; sawn quarter }
case rack {
  of oak 3/4
  wide 37 1/2 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { load 25lb/ft sag fine } ; open lower ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak, northern" ; sawn quarter }
case rack {
  of oak 3/4
  wide 37 1/2 ; high 30 ; deep 10
  joint housing deep 1/4
  across { side left ; down { top roof ; open upper ; shelf middle { of oak 7/8 ; load 25lb/ft sag fine } ; open lower ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{sagFine, sagCase, sagKitchen, sagMost, booksLoad, shelvesLoad, kitchenLoad, shelfMost},
	Check: func(pass *Pass) {
		for b, l := range loaded(pass.Plan) {
			if s := sagOf(pass, b, l); s.over() {
				reportSag(pass, s)
			}
		}
	},
}

// sagging is a loaded beam, how far it sags at once over its widest span, and what it may.
type sagging struct {
	*beam
	load
	plan    *plan.Plan
	span    clearSpan
	sags    wood.Length
	creeps  creep       // of fine work
	parts   float64     // one in how many of its span it may
	atMost  wood.Length // what it may over any span; 0 where that is not said
	may     wood.Length
	staying float64 // one in how many of its span it has to stay below for good
}

func sagOf(pass *Pass, b *beam, l load) *sagging {
	s := &sagging{beam: b, load: l, plan: pass.Plan, span: b.widest()}
	switch subject := plan.PathOf(b.Member); l.sag {
	case "fine":
		s.creeps = creepOf(pass, b)
		s.parts = sagFine.Number
		s.staying = max(s.parts, eyeSees.Number*s.creeps.times)
	case "kitchen":
		s.parts, s.atMost = max(pass.Number(sagKitchen, subject), 1), pass.Length(sagMost, subject)
		s.staying = s.parts
	default:
		s.parts, s.staying = sagCase.Number, sagCase.Number
	}
	s.sags = b.sag(s.span.long, b.thick, l.perMetre)
	s.may = wood.Length(float64(s.span.long) / s.parts)
	if s.atMost > 0 {
		s.may = min(s.may, s.atMost)
	}
	return s
}

// over reports whether it sags more than it may, by more than a reader could see in the figures.
func (s *sagging) over() bool {
	return s.sags > s.may && small(s.plan, s.sags) != small(s.plan, s.may)
}

func reportSag(pass *Pass, s *sagging) {
	p := pass.Plan
	f := diag.Finding{
		Message: fmt.Sprintf("%s sags %s over a clear span of %s, and may %s: %s", titled(&s.Item), small(p, s.sags), exact(p, s.span.long), small(p, s.may), s.allowed()),
		Working: append(s.working(),
			diag.Step{Op: diag.Equals, Value: small(p, s.sags), Label: sagSum},
			diag.Step{Op: diag.Versus, Value: small(p, s.may), Label: s.allowed()}),
	}
	if float64(s.sags) > float64(s.span.long)/linear {
		f.Working = append(f.Working, diag.Step{Label: "so far the sum is only a guide: it may break before"})
	}
	if s.staying > s.parts {
		f.Working = append(f.Working, diag.Step{Label: fmt.Sprintf("in years it comes to about %s times as far (%s): the mends allow for that", number(s.creeps.times), s.creeps.says)})
	}
	if s.byUse {
		f.Severity = diag.Advice
	}
	s.report(pass, f)
}

// linear is one in how many of its span a beam may bend for the sum of small bends to hold. Common practice, no source.
const linear = 20

// report adds to a finding where it stands, and what is to be done.
func (s *sagging) report(pass *Pass, f diag.Finding) {
	f.Subject, f.Span, f.Fixes = plan.PathOf(s.Member), s.Span, s.mends()
	said := "what it carries is said here"
	if s.byUse {
		said = "what it is for is said here, and not what it carries"
	}
	if at := standing(s.Span, s.at); at != s.Span {
		f.Notes = append(f.Notes, diag.Note{Span: at, Message: said})
	}
	books, little := "20lb/ft", "10lb/ft"
	if pass.Plan.Tape.Metric {
		books, little = "30kg/m", "15kg/m"
	}
	switch {
	case s.byUse:
		f.Fixes = append(f.Fixes, diag.Fix{Title: "say what it carries, where that is less, such as `load " + little + "`"})
	case s.taken:
		f.Fixes = append(f.Fixes, diag.Fix{Title: "say what the books weigh, where that is less, such as `load " + books + " sag fine`"})
	}
	pass.Report(f)
}

// allowed says what it may sag.
func (s *sagging) allowed() string {
	switch {
	case s.load.sag == "fine":
		return "fine work, 1 in " + number(s.parts) + " of the span"
	case s.load.sag != "kitchen":
		return "casework, 1 in " + number(s.parts) + " of the span"
	case s.may == s.atMost:
		return "a kitchen's, at the most"
	}
	return "a kitchen's, 1 in " + number(s.parts) + " of the span"
}

// working is what the sum rests on.
func (s *sagging) working() diag.Working {
	p := s.plan
	deep := "thick, t"
	if s.onEdge() {
		deep = "deep, t"
	}
	w := diag.Working{
		{Value: p.Show(s.span.long), Label: fmt.Sprintf("clear span L, from %s to %s", s.span.from, s.span.to)},
		{Value: p.Show(s.wide), Label: "across the span, w"},
		{Value: p.Show(s.thick), Label: deep},
		{Value: modulus(p, s.pascals), Label: "stiffness E: " + s.from},
		{Value: force(p, s.perMetre*s.span.long.Metres()), Label: "on the span, W: " + s.says},
	}
	if s.weakness != "" {
		w = append(w, diag.Step{Label: s.weakness})
	}
	return w
}

// sagSum is the formula of the sag.
const sagSum = "sags at once: 5/384 W L³ / (E I), I = w t³ / 12"

// mends are what would bring the sag down to what it may, for good: thicker, shorter, or stiffened along its front.
func (s *sagging) mends() (fixes []diag.Fix) {
	p, long, thick, sags := s.plan, float64(s.span.long), float64(s.thick), float64(s.sags)
	over := sags * s.staying / long
	shorter := long / math.Cbrt(over)
	if s.atMost > 0 {
		over = max(over, sags/float64(s.atMost))
		shorter = min(shorter, long/math.Pow(sags/float64(s.atMost), 1.0/4))
	}
	if thicker := thick * math.Cbrt(over); !s.Made.On && thicker < thickest {
		size := p.Show(ladder(p, wood.Length(thicker)))
		switch {
		case s.onEdge():
			fixes = append(fixes, diag.Fix{Title: "make it " + size + " wide"})
		case s.beam.of.Kind == plan.Solid:
			fixes = append(fixes, diag.Fix{Title: "make it " + size + " thick"})
		case s.beam.of.Kind == plan.Layup:
			fixes = append(fixes, diag.Fix{Title: "press it " + size + " thick or more"})
		default:
			fixes = append(fixes, diag.Fix{Title: "take a sheet of the same kind, " + size + " thick or more"})
		}
	}
	fixes = append(fixes, diag.Fix{Title: fmt.Sprintf("let something carry it between, so that no clear span is over %s", p.Show(p.Tape.Floor(wood.Length(shorter))))})
	// Both bend alike, and nothing is made of the glue between them.
	if deep := thick * math.Cbrt((over-1)*float64(s.wide)/thick); s.Board() && deep < thickest {
		fixes = append(fixes, diag.Fix{Title: fmt.Sprintf("glue a rail of the same stuff, or stiffer, on edge under its front: %s thick and %s deep", p.Show(s.thick), p.Show(ladder(p, wood.Length(deep))))})
	}
	return fixes
}

// thickest is beyond what a mend asks for: a thing is then made otherwise.
const thickest = float64(wood.Foot)

// onEdge reports whether a member is loaded in its width.
func (b *beam) onEdge() bool { return b.Parent != nil && b.Flat != plan.Down }
