package wood

// The species on the shelf, found by whatever name the trade calls them.

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Group tells hardwoods from softwoods.
type Group uint8

const (
	Hardwood Group = iota + 1
	Softwood
)

func (g Group) String() string { return [...]string{"unknown", "hardwood", "softwood"}[g] }

// Species is what is published about one. A figure that nobody published is the zero Figure.
type Species struct {
	Name  string // "white oak"
	Group Group
	Note  string // which group's or neighbour's figures it borrows, if any

	// Fraction of a size at 10 % moisture content for each 1 % change, from 6 to 14 %.
	CR, CT Figure // radial, tangential
	// Moisture content in percent below which the wood shrinks.
	ShrinksFrom float64
	// Shrinkage from green to ovendry in percent of the green size.
	SR, ST, SV Figure // radial, tangential, in volume

	// Ovendry weight over the weight of the water that fills the volume at 12 % moisture
	// content, or the green volume where SGGreen is set.
	SG      Figure
	SGGreen bool

	// Clear wood at 12 % moisture content.
	MOR         Figure // strength in bending, Pa
	MOE         Figure // stiffness in bending as tabulated, with shear deflection, Pa
	Hardness    Figure // side hardness, N
	Shear       Figure // strength in shear along the grain, Pa
	CrushAcross Figure // strength in compression across the grain, Pa

	elasticRow string
}

const handbook = "Wood Handbook, Table "

// Find is the species of that name. Case, hyphens, blanks and the order of the words do not
// matter: "white oak", "Oak, white", "yellow poplar", "hard maple". A name that fits
// several woods ("oak") finds none.
func Find(name string) (*Species, bool) {
	for _, key := range keys(name) {
		if s, ok := shelf()[key]; ok {
			return s, true
		}
	}
	return nil, false
}

// All are the species on the shelf by name.
func All() []*Species { return slices.Clone(species()) }

// Namesakes are the names that have every word of the one asked for, the commonest woods
// first: "oak" has "red oak", "white oak" and others. What is not found and has none is
// misspelt, or not on the shelf.
func Namesakes(name string) []string {
	wanted := words(name)
	if len(wanted) == 0 {
		return nil
	}
	var same []string
	for _, called := range names() {
		has := words(called)
		if !slices.ContainsFunc(wanted, func(w string) bool { return !slices.Contains(has, w) }) {
			same = append(same, called)
		}
	}
	return same
}

// Names are the names that find a species: its own for each, then what else the trade
// calls them. The woods with the most names come first, since they are the commonest.
func Names() []string { return slices.Clone(names()) }

var species = sync.OnceValue(func() []*Species {
	movement, shrinkage, strength := rows("movement.csv"), rows("shrinkage.csv"), rows("strength.csv")
	var all []*Species
	for r := range table("species.csv") {
		s := &Species{
			Name: r.text("name"), Group: Hardwood, Note: r.text("note"),
			ShrinksFrom: greenAt, elasticRow: r.text("elastic"),
		}
		if r.text("group") == "softwood" {
			s.Group = Softwood
		}
		if m, ok := movement[r.text("movement")]; ok {
			source := handbook + "13-5"
			if m.status("status") == Reported {
				source = "a trade list after Agriculture Handbook 72"
			}
			s.CR = m.figure("C_R", source)
			s.CT = m.figure("C_T", source)
			s.ShrinksFrom = m.number("starts_pct")
		}
		if m, ok := shrinkage[r.text("shrinkage")]; ok {
			source := handbook + m.text("table")
			s.SR = m.figure("S_R_pct", source)
			s.ST = m.figure("S_T_pct", source)
			s.SV = m.figure("S_V_pct", source)
		}
		if m, ok := strength[r.text("strength")]; ok {
			source := handbook + m.text("table")
			s.SG = m.figure("SG", source)
			s.SGGreen = m.text("SG_volume") == "green"
			s.MOR = m.figure("MOR_MPa", source).times(1e6)
			s.MOE = m.figure("MOE_MPa", source).times(1e6)
			s.Hardness = m.figure("side_hardness_N", source)
			s.Shear = m.figure("shear_MPa", source).times(1e6)
			s.CrushAcross = m.figure("compression_across_MPa", source).times(1e6)
		}
		all = append(all, s)
	}
	return all
})

// rows are the rows of a table by their first cell.
func rows(name string) map[string]row {
	byName := make(map[string]row)
	for r := range table(name) {
		byName[r.cells[0]] = r
	}
	return byName
}

func (f Figure) times(k float64) Figure {
	f.Value *= k
	return f
}

// shelf is every species under every key of each of its names.
var shelf = sync.OnceValue(func() map[string]*Species {
	byKey := make(map[string]*Species)
	byName := make(map[string]*Species)
	add := func(name string, s *Species) {
		for _, key := range keys(name) {
			byKey[key] = s
		}
	}
	for _, s := range species() {
		byName[s.Name] = s
		add(s.Name, s)
	}
	for r := range table("names.csv") {
		add(r.text("name"), byName[r.text("species")])
	}
	return byKey
})

var names = sync.OnceValue(func() []string {
	count := make(map[string]int)
	var others []row
	for r := range table("names.csv") {
		count[r.text("species")]++
		others = append(others, r)
	}
	byCount := func(a, b string) int { return cmp.Compare(count[b], count[a]) }
	var all []string
	for _, s := range species() {
		all = append(all, s.Name)
	}
	slices.SortStableFunc(all, byCount)
	slices.SortStableFunc(others, func(a, b row) int { return byCount(a.text("species"), b.text("species")) })
	for _, r := range others {
		all = append(all, r.text("name"))
	}
	return all
})

// keys are what a name is looked up under: its words in alphabetical order, and its letters
// as they stand, so that "sweet gum" is "sweetgum" and "Poplar, yellow" is "yellow-poplar".
func keys(name string) []string {
	ws := words(name)
	if len(ws) == 0 {
		return nil
	}
	letters := strings.Join(ws, "")
	slices.Sort(ws)
	return []string{strings.Join(ws, " "), letters}
}

func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
}
