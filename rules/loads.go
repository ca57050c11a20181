package rules

// What lies on the members of a piece, as the plan says it or as is published for what they are for; and how far each
// sags under it, for those who list it.

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// What lies on shelves, where a plan says no more than what they hold, or what the whole is.
var (
	booksLoad = &Figure{
		Name: "books", Why: "what books weigh on the area of a shelf, where the plan does not say", Basis: Published,
		Source: "50 lb/ft2 (2.4 kPa): Architectural Woodwork Standards, 1st ed., 2009, p. 253, shelves of schools, hospitals and libraries", Dim: lang.Pressure, Number: 50 * wood.PSI / 144,
	}
	shelvesLoad = &Figure{
		Name: "shelves", Why: "what lies on the area of a shelf in what is of `kind shelves`, where the plan does not say", Basis: Published,
		Source: "40 lb/ft2 (1.9 kPa): the same, all other shelves", Dim: lang.Pressure, Number: 40 * wood.PSI / 144,
	}
	kitchenLoad = &Figure{
		Name: "cupboard", Why: "the same in what is of `kind kitchen`", Basis: SecondHand,
		Source: "15 lb/ft2 (0.72 kPa): the test of shelves in ANSI/KCMA A161.1-2012, from a reprint", Dim: lang.Pressure, Number: 15 * wood.PSI / 144,
	}
	shelfMost = &Figure{
		Name: "shelf", Why: "what such a shelf carries at most", Basis: Published,
		Source: "200 lb (91 kg): the same", Dim: lang.Weight, Number: 200 * wood.Pound,
	}
)

// load is what lies on a beam, spread evenly.
type load struct {
	perMetre float64   // newtons
	says     string    // how that comes about
	at       diag.Span // where the plan says it
	sag      string    // how little it may sag: fine, case or kitchen
	taken    bool      // the plan says what is on it, and not how heavy that is
	byUse    bool      // it says neither, and only what the whole is
}

// loadOn is what lies on a beam; false where it is not known how heavy that is.
func loadOn(p *plan.Plan, b *beam, of bearer) (load, bool) {
	said, holds := of.said, of.holds
	l := load{sag: "case"}
	for _, h := range holds {
		if h.What.Is == "books" {
			l.sag = "fine"
		}
	}
	wide, whole := b.wide.Metres(), b.whole.Metres()
	if said != nil {
		l.at = said.Span
		l.sag = said.Sag.Or(l.sag)
		if !said.On.Known() {
			return l, false
		}
		switch said.On.Dim {
		case lang.LineLoad:
			l.perMetre = said.On.Value * wood.Gravity
			l.says = onLength(p, l.perMetre)
		default:
			l.perMetre = said.On.Value * wide
			l.says = fmt.Sprintf("%s on %s of depth", onArea(p, said.On.Value), p.Show(b.wide))
		}
		return l, l.perMetre > 0 && !math.IsInf(l.perMetre, 0)
	}
	newtons := 0.0
	// taken adds what a standard puts on a shelf, where the plan says no more.
	taken := func(what string, on *Figure) {
		area, most := on.Number*wide*whole, shelfMost.Number*wood.Gravity
		newtons, l.taken = newtons+min(area, most), true
		l.says = fmt.Sprintf("%s, %s on %s x %s", what, onArea(p, on.Number), p.Show(b.whole), p.Show(b.wide))
		if area > most {
			l.says = fmt.Sprintf("%s, %s on a shelf at the most", what, heft(p, shelfMost.Number))
		}
	}
	for _, h := range holds {
		l.at = h.Span
		switch {
		case h.What.Is == "mattress":
			return l, false
		case h.Weigh.Known():
			newtons += h.Weigh.Value * wood.Gravity
			l.says = fmt.Sprintf("%s, as the plan says, on %s of length", heft(p, newtons/wood.Gravity), p.Show(b.whole))
		case h.Weigh.How != plan.Unknown || h.What.Is != "books":
			return l, false
		default:
			taken("books", booksLoad)
		}
	}
	if len(holds) == 0 {
		l.at, l.byUse = of.use.Span, true
		if of.use.Is == "kitchen" {
			l.sag = "kitchen"
			taken("a kitchen's", kitchenLoad)
		} else {
			taken("as shelves carry", shelvesLoad)
		}
	}
	l.perMetre = newtons / whole
	return l, l.perMetre > 0 && !math.IsInf(l.perMetre, 0)
}

// loaded ranges over the beams on which something lies.
func loaded(p *plan.Plan) iter.Seq2[*beam, load] {
	return func(yield func(*beam, load) bool) {
		for of := range bearing(p) {
			if of.beam == nil {
				continue
			}
			if l, ok := loadOn(p, of.beam, of); ok && !yield(of.beam, l) {
				return
			}
		}
	}
}

// bearer is a member on which something lies, as the plan says of it, or of the part that it is, of the bay that stands on
// it, or, of a shelf, of its whole assembly.
type bearer struct {
	*plan.Member
	said  *plan.Load
	holds []*plan.Holds
	use   plan.Choice // of the assembly of a shelf, where that alone is said: shelves or kitchen
	beam  *beam       // nil where the plan does not tell what carries it
}

// bearing ranges over the members on which something lies.
func bearing(p *plan.Plan) iter.Seq[bearer] {
	return func(yield func(bearer) bool) {
		stood := shelved(p)
		var all *beams // made once something is loaded
		judge := func(m *plan.Member) bool {
			of := bearer{Member: m, said: m.Load, holds: m.Holds}
			if part := m.Part.To; part != nil && !of.laden() {
				of.said, of.holds = part.Load, part.Holds
			}
			if !of.laden() {
				of.holds = stood[m]
			}
			if m.Parent != nil && m.Word == "shelf" && !of.laden() && !underDrawers(m) {
				of.said, of.holds = m.In.Load, booksOf(m.In.Holds)
				if use := m.In.Use; use.Is == "shelves" || use.Is == "kitchen" {
					of.use = use
				}
			}
			if !of.laden() {
				return true
			}
			if all == nil {
				all = newBeams(p)
			}
			if b, ok := all.of(m); ok {
				of.beam = b
			}
			return yield(of)
		}
		for _, top := range p.Tops {
			if !judge(top) {
				return
			}
		}
		for m := range p.Members() {
			if !judge(m) {
				return
			}
		}
	}
}

func (b *bearer) laden() bool { return b.said != nil || len(b.holds) > 0 || b.use.Is != "" }

// underDrawers reports whether nothing but drawers stands on a board: what the shelves of its piece carry does not lie on it.
func underDrawers(m *plan.Member) bool {
	drawers := false
	for _, n := range against(m, plan.Upper) {
		switch n.(type) {
		case *plan.Drawer:
			drawers = true
		case *plan.Member:
		default:
			return false
		}
	}
	return drawers
}

// booksIn are the books of what something holds.
func booksIn(holds []*plan.Holds) (books []*plan.Holds) {
	for _, h := range holds {
		if h.What.Is == "books" {
			books = append(books, h)
		}
	}
	return books
}

// booksOf are those that stand on each shelf of an assembly: of what weighs so much in all, nobody says which shelf bears it.
func booksOf(holds []*plan.Holds) (books []*plan.Holds) {
	return slices.DeleteFunc(booksIn(holds), func(h *plan.Holds) bool { return h.Weigh.How != plan.Unknown })
}

// shelved are the books that stand in open bays, by the one member under them; none of a member on part of which none
// stand. Books that weigh what is usual are on it once, however many bays there are.
func shelved(p *plan.Plan) map[*plan.Member][]*plan.Holds {
	all := make(map[*plan.Member][]*plan.Holds)
	for bay := range plan.AllOf[*plan.Space](p) {
		if len(booksIn(bay.Holds)) == 0 {
			continue
		}
		m, ok := plan.Neighbour(bay, plan.Lower).(*plan.Member)
		if _, met := all[m]; ok && !met {
			all[m] = booksOn(m)
		}
	}
	return all
}

// booksOn are the books in the bays on a member, where all that is on it are such bays and what stands between them.
func booksOn(m *plan.Member) (books []*plan.Holds) {
	usual := false
	for _, n := range against(m, plan.Upper) {
		switch n := n.(type) {
		case *plan.Member:
		case *plan.Space:
			in := booksIn(n.Holds)
			if len(in) == 0 {
				return nil
			}
			for _, h := range in {
				if weighed := h.Weigh.How != plan.Unknown; weighed || !usual {
					books, usual = append(books, h), usual || !weighed
				}
			}
		default:
			return nil
		}
	}
	return books
}

// Loaded is a member on which something lies. Where the plan does not tell what carries it, or how heavy that is, it is not
// Judged, and has no span.
type Loaded struct {
	Path, Carries string
	Judged        bool
	Span          wood.Length // its widest clear one
	Sags, May     string      // how far it sags over that at once, and what its use allows
}

// Loads are the members on which something lies, those of a row, or of a line for each, once; and the slats under mattresses.
func Loads(p *plan.Plan) (all []Loaded) {
	limits, _ := readLimits(p, All)
	pass := &Pass{Plan: p, rule: shelfSags, limits: limits}
	seen := make(map[saying]bool)
	for of := range bearing(p) {
		if again(seen, of.Name.Span, of.In) {
			continue
		}
		one := Loaded{Path: plan.PathOf(of.Member), Carries: of.carries(p)}
		if of.Row != "" {
			one.Path = plan.PathOf(of.In) + "." + of.Row
		}
		if of.beam != nil {
			if l, ok := loadOn(p, of.beam, of); ok {
				s := sagOf(pass, of.beam, l)
				one.Judged, one.Span, one.Sags, one.May = true, s.span.long, small(p, s.sags), small(p, s.may)
			}
		}
		all = append(all, one)
	}
	pass = &Pass{Plan: p, rule: slatBends, limits: limits}
	for c := range carriedSlats(pass) {
		if c.cot {
			continue
		}
		one := Loaded{Path: plan.PathOf(c.Member), Carries: "a sleeper, " + heft(p, pass.Number(slatLoad, plan.PathOf(c.Member))) + " in its middle"}
		if c.Row != "" {
			one.Path = plan.PathOf(c.In) + "." + c.Row
		}
		if c.stiff {
			bends, may := c.bends(pass)
			one.Judged, one.Span, one.Sags, one.May = true, c.long, small(p, bends), small(p, may)
		}
		all = append(all, one)
	}
	return all
}

// carries is what the plan says that lies on a member, in a word or two.
func (b *bearer) carries(p *plan.Plan) string {
	var words []string
	switch {
	case b.said == nil:
	case b.said.On.Dim == lang.LineLoad:
		words = append(words, onLength(p, b.said.On.Value*wood.Gravity))
	default:
		words = append(words, onArea(p, b.said.On.Value))
	}
	if b.said == nil && len(b.holds) == 0 {
		words = append(words, "not said: kind "+b.use.Is)
	}
	for _, h := range b.holds {
		words = append(words, h.What.Is)
		if h.Weigh.Known() {
			words = append(words, heft(p, h.Weigh.Value))
		}
	}
	return join(words)
}
