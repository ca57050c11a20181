package report

// What the wood of a piece does through the year: every solid part across its grain, and every
// fit that depends on it.

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/rules"
)

// Moving is one solid part: how wide it is across its grain at its driest, as it is cut, and at
// its most humid.
type Moving struct {
	Path             string
	Material         string
	Dry, Shop, Humid wood.Length
	Weak             bool // a figure from memory, or a cut that is not said, is in it
}

// Fitting is one fit: the room that is left in it. Below zero it binds.
type Fitting struct {
	Path, Where      string
	Dry, Shop, Humid wood.Length
}

// rows folds the things of a row that are alike into one, under the row's own name: how wide the first of each is.
type rows map[string]wood.Length

// again reports whether one just as wide was met, and says under which path this one stands.
func (r rows) again(thing any, path string, wide plan.Length) (string, bool) {
	n, ok := thing.(plan.Node)
	if !ok || plan.It(n).Row == "" {
		return path, false
	}
	it := plan.It(n)
	row := plan.PathOf(it.In) + "." + it.Row
	first, met := r[row]
	if !met {
		r[row] = wide.Length
		return row, false
	}
	return path, wood.Same(first, wide.Length)
}

// Movement lists every solid part of a known width, in the order of the plan, those of a row that are alike once.
func Movement(p *plan.Plan) (all []Moving) {
	folded := rows{}
	for w := range p.Workpieces() {
		humid, dry, ok := p.Seasons(w.Of)
		if !ok || !w.Size.Wide.Known() {
			continue
		}
		wide := w.Size.Wide.Length
		path, again := folded.again(w.Thing, w.Path, w.Size.Wide)
		if again {
			continue
		}
		all = append(all, Moving{
			Path: path, Material: w.Of.Name.Text,
			Dry: wide + dry.Change(wide), Shop: wide, Humid: wide + humid.Change(wide),
			Weak: humid.Worse || !humid.Status.Verified() || !dry.Status.Verified(),
		})
	}
	return all
}

// Fittings lists the fits that depend on solid wood: panels and backs in their grooves, leaves
// and fronts in their openings or beside one another, drawers' sides in the height of their openings, and the
// fasteners of tops and of breadboard ends. Panels of a row that are alike stand there once.
func Fittings(p *plan.Plan) (all []Fitting) {
	folded := rows{}
	for n := range plan.AllOf[*plan.Panel](p) {
		_, _, bottoms, placed := n.Grooves()
		path, again := folded.again(n, plan.PathOf(n), n.Size.Wide)
		if again {
			continue
		}
		all = addFit(all, p, path, "in its grooves, both sides together", plan.Length{Length: bottoms, How: plan.Derived},
			placed && n.GlueAt.Is != "all" && n.GlueAt.Is != "edges", n.Size.Wide.Length,
			[]plan.Grower{{Of: n.Of.Material.To, Wide: n.Size.Wide}})
	}
	for d := range p.Leaves() {
		where := [...]string{"gaps left and right", "gaps above and below"}
		if d.Board != nil {
			where[plan.Down] = "gaps before and behind"
		}
		for axis := plan.Across; axis <= plan.Down; axis++ {
			near, far := d.Edges[axis*2].Less, d.Edges[axis*2+1].Less
			gaps := plan.Length{Length: near.Length + far.Length, How: plan.Derived}
			if g := d.Grooves; g != nil && axis == plan.Down {
				gaps = g.Top
				gaps.Length -= g.Keeps.Length + g.Bottom.Length
				where[axis] = "in the upper groove, when it is lifted out"
			}
			all = addFit(all, p, plan.PathOf(d), where[axis], gaps,
				d.Fit.Kind.Is == "inset" && near.Known() && far.Known(), 0, d.Grows(axis))
		}
	}
	for d := range plan.AllOf[*plan.Drawer](p) {
		above, below := d.Edges[plan.Upper].Less, d.Edges[plan.Lower].Less
		if d.Front != nil {
			gaps := plan.Length{Length: above.Length + below.Length, How: plan.Derived}
			all = addFit(all, p, plan.PathOf(d.Front), "gaps above and below", gaps, d.Fit.Kind.Is == "inset" && above.Known() && below.Known(), 0,
				[]plan.Grower{{Of: d.Front.Of, Wide: d.Front.Size.Wide}})
		}
		if high := d.Cell[plan.Down]; d.Left != nil {
			all = addFit(all, p, plan.PathOf(d.Left), "in the height of its opening", plan.Length{Length: high.Size, How: plan.Derived}, high.Sized,
				d.Left.Size.Wide.Length, []plan.Grower{{Of: d.Left.Of, Wide: d.Left.Size.Wide}})
		}
	}
	for _, r := range slices.Concat(rules.FrontGaps(p), rules.Rooms(p)) {
		all = append(all, Fitting(r))
	}
	return all
}

// addFit adds the room between what stands in a place and its ends, once what grows there has
// grown. It adds nothing where a figure is missing, or nothing moves.
func addFit(all []Fitting, p *plan.Plan, path, where string, room plan.Length, known bool, takes wood.Length, growers []plan.Grower) []Fitting {
	if !known || !room.Known() || len(growers) == 0 {
		return all
	}
	left := room.Length - takes
	f := Fitting{Path: path, Where: where, Dry: left, Shop: left, Humid: left}
	for _, g := range growers {
		humid, dry, ok := p.Seasons(g.Of)
		if !ok || !g.Wide.Known() {
			return all
		}
		f.Dry -= dry.Change(g.Wide.Length)
		f.Humid -= humid.Change(g.Wide.Length)
	}
	return append(all, f)
}

const movementCaution = "The wood is taken to come to the air all through; a finish slows that, one on a single face cups it."

// nothingMoves is said of a plan without solid wood of a known species and width.
const nothingMoves = "Nothing in this plan is of solid wood of a known species and width: nothing moves with the seasons."

// MovementText writes the movement of a piece in columns.
func MovementText(w io.Writer, p *plan.Plan) error {
	b := bufio.NewWriter(w)
	fmt.Fprintln(b, headed("Movement through the year", p))
	parts := Movement(p)
	if len(parts) == 0 {
		fmt.Fprintf(b, "%s\n", nothingMoves)
		return b.Flush()
	}
	c := &p.Climate
	fmt.Fprintf(b, "Moisture in the wood: %.1f%% at its driest, %.1f%% in the shop, %.1f%% at its most humid.\n", c.Dry.Moisture.Value, c.Shop.Moisture.Value, c.Humid.Moisture.Value)
	fmt.Fprintf(b, "Widths across the grain, in %s, to the nearest mark of the tape; a change finer than that.\n\n", unitOf(p))
	rows := [][]string{{"cut", "driest", "change", "most humid", "change", "part"}}
	weak := false
	for _, m := range parts {
		name := m.Path + ", " + m.Material
		if m.Weak {
			name, weak = name+" *", true
		}
		rows = append(rows, []string{show(p, plan.Length{Length: m.Shop, How: plan.Derived}), p.Tape.About(m.Dry), fine(p, m.Dry-m.Shop), p.Tape.About(m.Humid), fine(p, m.Humid-m.Shop), Plain(name)})
	}
	writeColumns(b, rows)
	if weak {
		fmt.Fprintf(b, "\n* rests on a figure from memory, or on a cut that is not said and is taken as flat, which moves most.\n")
	}
	if fits := Fittings(p); len(fits) > 0 {
		fmt.Fprintf(b, "\nRoom left; below zero it binds, or lets go.\n\n")
		rows = [][]string{{"driest", "shop", "most humid", "fit"}}
		for _, f := range fits {
			rows = append(rows, []string{fine(p, f.Dry), fine(p, f.Shop), fine(p, f.Humid), Plain(f.Path + ": " + f.Where)})
		}
		writeColumns(b, rows)
	}
	fmt.Fprintf(b, "\n%s\n", movementCaution)
	return b.Flush()
}

// fine is a small length that no tape shows, in thousandths of an inch or tenths of a millimetre.
func fine(p *plan.Plan, l wood.Length) string {
	s := fmt.Sprintf("%.3f", l.Inches())
	if p.Tape.Metric {
		s = fmt.Sprintf("%.1f", l.Millimetres())
	}
	if strings.Trim(s, "-0.") == "" {
		return "0"
	}
	return s
}

// writeColumns writes rows under a head; the last column is as wide as it likes.
func writeColumns(w io.Writer, rows [][]string) {
	lines := make([]string, len(rows))
	last := len(rows[0]) - 1
	for c := range last {
		cells := make([]string, len(rows)-1)
		for i, row := range rows[1:] {
			cells[i] = row[c]
		}
		cells, width := column(cells)
		width = max(width, len(rows[0][c])) + 2
		lines[0] += pad(rows[0][c], width)
		for i, s := range cells {
			lines[i+1] += pad(s, width)
		}
	}
	for i, row := range rows {
		fmt.Fprintf(w, "  %s%s\n", lines[i], row[last])
	}
}

// MovementCSV writes the same for a spreadsheet, all sizes in millimetres. A part's figures are its
// width, a fit's the room that is left.
func MovementCSV(w io.Writer, p *plan.Plan) error {
	c := csv.NewWriter(w)
	c.Write([]string{"kind", "path", "what", "driest mm", "shop mm", "most humid mm"})
	mm := func(l wood.Length) string { return millimetres(plan.Length{Length: l, How: plan.Derived}) }
	for _, m := range Movement(p) {
		c.Write([]string{"part", m.Path, m.Material, mm(m.Dry), mm(m.Shop), mm(m.Humid)})
	}
	for _, f := range Fittings(p) {
		c.Write([]string{"fit", f.Path, f.Where, mm(f.Dry), mm(f.Shop), mm(f.Humid)})
	}
	c.Flush()
	return c.Error()
}

// MovementJSON writes the same as one object:
//
//	version title units errors caution    as in CutListJSON
//	moisture   dry, shop and humid, in percent
//	parts      path (of alike parts of a row, the row's), material, dry, shop and humid: the width, as in
//	           CutListJSON; weak where it rests on a figure from memory or on a cut that is not said
//	fits       path, where, dry, shop and humid: the room that is left
func MovementJSON(w io.Writer, p *plan.Plan, errors int) error {
	c := &p.Climate
	out := jsonMovement{
		Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: movementCaution,
		Moisture: map[string]float64{"dry": c.Dry.Moisture.Value, "shop": c.Shop.Moisture.Value, "humid": c.Humid.Moisture.Value},
		Parts:    []jsonMoving{}, Fits: []jsonFitting{},
	}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	size := func(l wood.Length) *jsonSize { return sizeJSON(p, plan.Length{Length: l, How: plan.Derived}) }
	for _, m := range Movement(p) {
		out.Parts = append(out.Parts, jsonMoving{m.Path, m.Material, size(m.Dry), size(m.Shop), size(m.Humid), m.Weak})
	}
	for _, f := range Fittings(p) {
		out.Fits = append(out.Fits, jsonFitting{f.Path, f.Where, size(f.Dry), size(f.Shop), size(f.Humid)})
	}
	return writeJSON(w, out)
}

type jsonMovement struct {
	Version  int                `json:"version"`
	Title    string             `json:"title"`
	Units    string             `json:"units"`
	Errors   int                `json:"errors"`
	Caution  string             `json:"caution"`
	Moisture map[string]float64 `json:"moisture"`
	Parts    []jsonMoving       `json:"parts"`
	Fits     []jsonFitting      `json:"fits"`
}

type jsonMoving struct {
	Path     string    `json:"path"`
	Material string    `json:"material"`
	Dry      *jsonSize `json:"dry"`
	Shop     *jsonSize `json:"shop"`
	Humid    *jsonSize `json:"humid"`
	Weak     bool      `json:"weak"`
}

type jsonFitting struct {
	Path  string    `json:"path"`
	Where string    `json:"where"`
	Dry   *jsonSize `json:"dry"`
	Shop  *jsonSize `json:"shop"`
	Humid *jsonSize `json:"humid"`
}
