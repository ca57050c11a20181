package report

// What a pressed board is made of, how it keeps flat through the year, and the least that would
// put it right.

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/rules"
)

// Layups are the layups of a plan that have a name; of them the one of a name, where one is asked for.
func Layups(p *plan.Plan, name string) (all []*plan.Material) {
	for _, m := range p.Materials {
		if m.Kind == plan.Layup && m.Name.Text != "" && (name == "" || m.Name.Text == name) {
			all = append(all, m)
		}
	}
	return all
}

// Flatness is how the largest thing that is made of a layup keeps flat.
type Flatness struct {
	Of         string // its path; "" where nothing of a known size is made of it
	Long, Wide wood.Length
	Dry, Humid wood.Warp
	Balance    wood.Balance
	Bends      wood.Moduli
	Weakness   string
}

// FlatnessOf works out how a layup does over the largest thing that is made of it, or over two
// feet square, and whether the shelf has the figures.
func FlatnessOf(p *plan.Plan, m *plan.Material) (f Flatness, ok bool) {
	layup, ok := p.Pressed(m)
	if !ok {
		return f, false
	}
	f.Long, f.Wide = 24*wood.Inch, 24*wood.Inch
	if p.Tape.Metric {
		f.Long, f.Wide = 600*wood.Millimetre, 600*wood.Millimetre
	}
	most := wood.Length(0)
	for _, w := range p.MadeOf(m) {
		if w.Size.Long.Length+w.Size.Wide.Length > most {
			most = w.Size.Long.Length + w.Size.Wide.Length
			f.Of, f.Long, f.Wide = w.Path, w.Size.Long.Length, w.Size.Wide.Length
		}
	}
	c := &p.Climate
	for _, season := range []struct {
		to       *wood.Warp
		moisture float64
	}{{&f.Dry, c.Dry.Moisture.Value}, {&f.Humid, c.Humid.Moisture.Value}} {
		laminate, known := layup.At(season.moisture)
		if !known {
			return f, false
		}
		strain, known := laminate.Free()
		if !known {
			return f, false
		}
		*season.to = strain.Warp(f.Long, f.Wide)
	}
	f.Bends, ok = layup.Moduli()
	if !ok {
		return f, false
	}
	f.Weakness = layup.Footing().Weakness()
	f.Balance, ok = layup.Balance(wood.Panel{
		Length: f.Long, Width: f.Wide, Allowed: p.Tape.Finest() / 2,
		Moistures: []float64{c.Dry.Moisture.Value, c.Humid.Moisture.Value},
	})
	return f, ok
}

// Steps are what would bring the warp under half a mark of the tape, in words.
func (f *Flatness) Steps() []string {
	said := []string{}
	for _, s := range f.Balance.Steps {
		said = append(said, s.InWords())
	}
	return said
}

// LayupText writes layups, each with its plies and how it keeps flat.
func LayupText(w io.Writer, p *plan.Plan, layups []*plan.Material) error {
	b := bufio.NewWriter(w)
	for i, m := range layups {
		if i > 0 {
			fmt.Fprintln(b)
		}
		layupText(b, p, m)
	}
	for _, l := range leavesOf(p, layups) {
		leavesText(b, p, l)
	}
	return b.Flush()
}

// leavesOf are the ways to cut up the leaves of which some layups are laid.
func leavesOf(p *plan.Plan, layups []*plan.Material) []rules.LeafPlan {
	laid := make(map[*plan.Material]bool)
	for _, m := range layups {
		for _, ply := range m.Plies {
			laid[ply.Of.To] = true
		}
	}
	return slices.DeleteFunc(rules.LeafPlans(p), func(l rules.LeafPlan) bool { return !laid[l.Skin] })
}

func leavesText(b *bufio.Writer, p *plan.Plan, l rules.LeafPlan) {
	fmt.Fprintf(b, "\nLeaves of %s, %s x %s, for all of the plan that is laid with them: %d\n\n", Plain(l.Skin.Name.Text),
		show(p, l.Skin.Long), show(p, l.Skin.Wide), l.Leaves)
	rows := [][]string{{"leaves", "each cut to"}}
	for _, c := range l.Cuts {
		var to []string
		for _, s := range c.Strips {
			long := show(p, known(s.Long))
			if s.Times > 1 {
				long = fmt.Sprintf("%d of %s", s.Times, long)
			}
			to = append(to, long)
		}
		rows = append(rows, []string{fmt.Sprint(c.Leaves), strings.Join(to, " + ")})
	}
	writeColumns(b, rows)
	fmt.Fprintf(b, "\nEach is cut %s longer than what it covers, a figure from memory. What is matched takes its leaves first, in sequence.\n",
		p.Show(rules.LeafLonger(p)))
}

func layupText(b *bufio.Writer, p *plan.Plan, m *plan.Material) {
	head := "Layup " + Plain(m.Name.Text) + ", " + show(p, m.Thickness()) + " thick"
	if m.Glue.Said() {
		head += ", pressed with " + Plain(m.Glue.Name)
	}
	fmt.Fprintf(b, "%s\nPlies from face to back, in %s; their moisture is that when the glue set.\n\n", head, unitOf(p))
	rows := [][]string{{"ply", "thick", "grain", "moisture", "of"}}
	for i, ply := range m.Plies {
		rows = append(rows, []string{fmt.Sprint(i + 1), show(p, ply.Thickness()), grainOf(ply), fmt.Sprintf("%.1f%%", p.MoistureOf(ply)), Plain(ply.Of.Name)})
	}
	writeColumns(b, rows)
	f, ok := FlatnessOf(p, m)
	if !ok {
		fmt.Fprintf(b, "\nHow it keeps flat cannot be worked out: a ply has no thickness, no direction or no figures on the shelf.\n")
		return
	}
	const gpa = 1e9
	unit, by := "million psi", 1e6*wood.PSI
	if p.Tape.Metric {
		unit, by = "GPa", gpa
	}
	fmt.Fprintf(b, "\nStiffness in bending: %.2f %s along the grain, %.2f across (modulus of elasticity).\n", f.Bends.BendAlong/by, unit, f.Bends.BendAcross/by)
	over := f.Of
	if over == "" {
		over = "a panel, since nothing of a known size is made of it"
	}
	fmt.Fprintf(b, "Out of flat over %s x %s, %s:\n", show(p, known(f.Long)), show(p, known(f.Wide)), Plain(over))
	for _, s := range []struct {
		name     string
		moisture float64
		warp     wood.Warp
	}{{"at the driest", p.Climate.Dry.Moisture.Value, f.Dry}, {"at the most humid", p.Climate.Humid.Moisture.Value, f.Humid}} {
		off, how := s.warp.InWords()
		if !wood.Over(off, 0) {
			fmt.Fprintf(b, "  %s, %.1f%%: flat\n", s.name, s.moisture)
			continue
		}
		fmt.Fprintf(b, "  %s, %.1f%%: %s, %s\n", s.name, s.moisture, p.Tape.About(off), how)
	}
	if f.Balance.Worst >= 0 {
		fmt.Fprintf(b, "The ply to blame is ply %d, %s.\n", f.Balance.Worst+1, Plain(m.Plies[f.Balance.Worst].Of.Name))
	} else {
		fmt.Fprintf(b, "It is in balance: its plies mirror about the middle.\n")
	}
	for _, s := range f.Steps() {
		fmt.Fprintf(b, "To balance it: %s.\n", Plain(s))
	}
	if len(f.Balance.Steps) > 0 {
		fmt.Fprintf(b, "That leaves %s.\n", p.Tape.About(f.Balance.Left.Worst()))
	}
	fmt.Fprintf(b, "The warp is %s.\n", strings.ReplaceAll(wood.LayupCaveat, "; ", ";\n"))
	if f.Weakness != "" {
		fmt.Fprintf(b, "What it rests on: %s.\n", f.Weakness)
	}
}

func known(l wood.Length) plan.Length { return plan.Length{Length: l, How: plan.Derived} }

// grainOf is which way a ply runs: along, across, an angle, or "none" of a board without grain.
func grainOf(ply *plan.Ply) string {
	degrees, ok := ply.Turned()
	switch {
	case ply.Of.To != nil && ply.Of.To.Grainless():
		return "none"
	case !ok:
		return unknown
	case degrees == 0:
		return "along"
	case degrees == 90:
		return "across"
	}
	return fmt.Sprintf("%g°", degrees)
}

// LayupJSON writes layups as one object:
//
//	version title units errors caution    as in CutListJSON
//	layups   a list; each has
//	  name thick
//	  plies        of, thick, grain (along, across, none, ? or an angle) and moisture in percent
//	  flat         null where it cannot be worked out; else
//	    over long wide   what it is worked out for
//	    dry humid        how far out of flat, at the worst of bow, cup and twist
//	    bendAlong bendAcross   stiffness in bending, Pa, to a million
//	    worst            the ply to blame, from 1; 0 where the layup is in balance
//	    steps            what would balance it
//	    weakness         in what the figures are weak
//	leaves   a list of the veneers whose leaves have a known size; each has
//	  of leaves    which, and how many leaves all of the plan takes
//	  cuts         leaves that are cut alike: leaves, and to, the lengths, each with its times and long
func LayupJSON(w io.Writer, p *plan.Plan, layups []*plan.Material, errors int) error {
	out := jsonLayups{Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: "the warp is " + wood.LayupCaveat, Layups: []jsonLayup{}, Leaves: []jsonLeaves{}}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	for _, m := range layups {
		l := jsonLayup{Name: m.Name.Text, Thick: sizeJSON(p, m.Thickness()), Plies: []jsonPly{}}
		for _, ply := range m.Plies {
			l.Plies = append(l.Plies, jsonPly{ply.Of.Name, sizeJSON(p, ply.Thickness()), grainOf(ply), p.MoistureOf(ply)})
		}
		if f, ok := FlatnessOf(p, m); ok {
			l.Flat = &jsonFlat{
				f.Of, sizeJSON(p, known(f.Long)), sizeJSON(p, known(f.Wide)), sizeJSON(p, known(f.Dry.Worst())), sizeJSON(p, known(f.Humid.Worst())),
				toMegapascal(f.Bends.BendAlong), toMegapascal(f.Bends.BendAcross), f.Balance.Worst + 1, f.Steps(), f.Weakness,
			}
		}
		out.Layups = append(out.Layups, l)
	}
	for _, l := range leavesOf(p, layups) {
		leaves := jsonLeaves{Of: l.Skin.Name.Text, Leaves: l.Leaves}
		for _, c := range l.Cuts {
			cut := jsonLeafCut{Leaves: c.Leaves}
			for _, s := range c.Strips {
				cut.To = append(cut.To, jsonStrip{s.Times, sizeJSON(p, known(s.Long))})
			}
			leaves.Cuts = append(leaves.Cuts, cut)
		}
		out.Leaves = append(out.Leaves, leaves)
	}
	return writeJSON(w, out)
}

// toMegapascal rounds a modulus: nobody knows a wood's more closely.
func toMegapascal(modulus float64) float64 { return math.Round(modulus/1e6) * 1e6 }

type jsonLayups struct {
	Version int          `json:"version"`
	Title   string       `json:"title"`
	Units   string       `json:"units"`
	Errors  int          `json:"errors"`
	Caution string       `json:"caution"`
	Layups  []jsonLayup  `json:"layups"`
	Leaves  []jsonLeaves `json:"leaves"`
}

type jsonLeaves struct {
	Of     string        `json:"of"`
	Leaves int           `json:"leaves"`
	Cuts   []jsonLeafCut `json:"cuts"`
}

type jsonLeafCut struct {
	Leaves int         `json:"leaves"`
	To     []jsonStrip `json:"to"`
}

type jsonStrip struct {
	Times int       `json:"times"`
	Long  *jsonSize `json:"long"`
}

type jsonLayup struct {
	Name  string    `json:"name"`
	Thick *jsonSize `json:"thick"`
	Plies []jsonPly `json:"plies"`
	Flat  *jsonFlat `json:"flat"`
}

type jsonPly struct {
	Of       string    `json:"of"`
	Thick    *jsonSize `json:"thick"`
	Grain    string    `json:"grain"`
	Moisture float64   `json:"moisture"`
}

type jsonFlat struct {
	Over       string    `json:"over"`
	Long       *jsonSize `json:"long"`
	Wide       *jsonSize `json:"wide"`
	Dry        *jsonSize `json:"dry"`
	Humid      *jsonSize `json:"humid"`
	BendAlong  float64   `json:"bendAlong"`
	BendAcross float64   `json:"bendAcross"`
	Worst      int       `json:"worst"`
	Steps      []string  `json:"steps"`
	Weakness   string    `json:"weakness"`
}
