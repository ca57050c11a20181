package report

// What is carried to the room, and how it is put together there.

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/rules"
)

const carryCaution = "Weights are about, from what the woods weigh. Drawers are pulled out first. What wants two to lift, and who holds it while it is fastened, no plan shows."

// CarryText writes what is carried, in the order in which it is put together. A plan with errors says so on top.
func CarryText(w io.Writer, p *plan.Plan, rows []*rules.ToCarry, errors int) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s\nSizes in %s, the greatest first.%s\n", headed("To carry", p), unitOf(p), goesBy(p))
	if errors > 0 {
		fmt.Fprintf(b, "%s\n", strings.Replace(blocked(errors), "cut from", "go by", 1))
	}
	if len(rows) == 0 {
		fmt.Fprintf(b, "\nThe plan has nothing that comes apart (`apart`), and no way to its room (`way`).\n")
		return b.Flush()
	}
	table := [][]string{{"order", "qty", "what", "size", "weight", "held by"}}
	for _, r := range rows {
		table = append(table, []string{carryOrder(r), strconv.Itoa(r.Count), Plain(r.Called), carrySize(p, r), carryWeight(r), Plain(carryHeld(r))})
	}
	widths := make([]int, 5)
	for _, line := range table {
		for i := range widths {
			widths[i] = max(widths[i], len([]rune(line[i])))
		}
	}
	fmt.Fprintln(b)
	for _, line := range table {
		out, at := "", 0
		for i, width := range widths {
			out += pad(line[i], width) + "  "
			at += width + 2
		}
		fmt.Fprintln(b, strings.TrimRight(out+wrapped(line[5], at), " "))
	}
	if rows[len(rows)-1].Step == 0 {
		fmt.Fprintf(b, "\nWhere no order stands, the plan's steps (stand, fit, hang) do not name it.\n")
	}
	for _, f := range anchors(p) {
		fmt.Fprintf(b, "\n%s\n", f)
	}
	fmt.Fprintf(b, "\n%s\n", carryCaution)
	return b.Flush()
}

// goesBy says by which way it goes, if the plan does.
func goesBy(p *plan.Plan) string {
	if p.Way == nil {
		return ""
	}
	var all []string
	for _, d := range p.Way.Doorways {
		all = append(all, fmt.Sprintf("a doorway %s x %s", show(p, d.Size.Across), show(p, d.Size.Deep)))
	}
	for _, t := range p.Way.Turns {
		all = append(all, fmt.Sprintf("a turn from %s into %s", show(p, t.From), show(p, t.Into)))
	}
	for _, s := range p.Way.Stairs {
		all = append(all, fmt.Sprintf("a stair %s wide", show(p, s.Wide)))
	}
	said := ""
	if len(all) > 0 {
		said = " It goes through " + strings.Join(all, ", ") + "."
	}
	if p.Way.People.Known() {
		said += fmt.Sprintf(" Who carries: %d.", p.Way.People.N)
	}
	return said
}

// anchors are what is fastened to the wall when it stands.
func anchors(p *plan.Plan) []string {
	var all []string
	for _, f := range p.Fixes {
		if !f.Wall.On {
			continue
		}
		var by []string
		for _, w := range f.With {
			by = append(by, fmt.Sprintf("%d %s %s", w.Count.Or(max(len(w.At), len(w.Along), 1)), w.Word, w.Of.Name))
		}
		all = append(all, Plain(fmt.Sprintf("Then fasten %s to the wall: %s.", f.A.Name, strings.Join(by, ", "))))
	}
	return all
}

// carryOrder is "2 fit".
func carryOrder(r *rules.ToCarry) string {
	if r.Step == 0 {
		return ""
	}
	return strconv.Itoa(r.Step) + " " + r.Does
}

func carrySize(p *plan.Plan, r *rules.ToCarry) string {
	if r.Size == nil {
		return unknown
	}
	return strings.Join(carrySizes(p, r.Size), " x ")
}

func carrySizes(p *plan.Plan, size []wood.Length) []string {
	var all []string
	for _, l := range size {
		all = append(all, p.Tape.Nearest(l))
	}
	return all
}

func carryWeight(r *rules.ToCarry) string {
	if r.Weighs == "" {
		return unknown
	}
	return r.Weighs
}

// carryHeld is "2 hook plate (by hand)".
func carryHeld(r *rules.ToCarry) string {
	var all []string
	for _, h := range r.Held {
		all = append(all, fmt.Sprintf("%d %s (%s)", h.Count, h.By, h.With))
	}
	return strings.Join(all, ", ")
}

// CarryCSV writes it for a spreadsheet. Sizes are as the tape reads them, then in millimetres, exact, as plain numbers; an
// unknown size is empty.
func CarryCSV(w io.Writer, p *plan.Plan, rows []*rules.ToCarry) error {
	c := csv.NewWriter(w)
	c.Write([]string{"order", "does", "qty", "what", "path", "long", "wide", "thick", "weight each", "held by", "long mm", "wide mm", "thick mm"})
	for _, r := range rows {
		order, shown, exact := "", make([]string, 3), make([]string, 3)
		if r.Step > 0 {
			order = strconv.Itoa(r.Step)
		}
		if r.Size != nil {
			shown = carrySizes(p, r.Size)
			for i, l := range r.Size {
				exact[i] = millimetres(known(l))
			}
		}
		line := append([]string{order, r.Does, strconv.Itoa(r.Count), r.Called, r.Path}, shown...)
		c.Write(append(append(line, r.Weighs, carryHeld(r)), exact...))
	}
	c.Flush()
	return c.Error()
}

// CarryJSON writes it as one object:
//
//	version  1, counted with that of JSON
//	title    the plan's
//	units    "in" or "mm": the units of shown sizes
//	errors   how many errors the plan has; above 0, do not go by the list
//	caution  what to mind
//	people   how many carry; null where the plan does not say
//	carry    a list, in the order in which it is put together; each has
//	  order    from 1; null where the steps do not name it
//	  does     stand, fit or hang
//	  count what path
//	  size     three sizes from the greatest; empty where one is not known
//	  weighs   each, about, as a text; "" where it is not known
//	  held     a list of count, by and with: what holds it, and what that is undone with
//	  file line column endLine endColumn startByte endByte
//
// A size is {shown, mm}, as in the other lists.
func CarryJSON(w io.Writer, p *plan.Plan, rows []*rules.ToCarry, errors int) error {
	out := jsonCarryList{Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: carryCaution, Carry: make([]jsonCarry, 0, len(rows))}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	if p.Way != nil && p.Way.People.Known() {
		out.People = &p.Way.People.N
	}
	for _, r := range rows {
		row := jsonCarry{
			Does: r.Does, Count: r.Count, What: r.Called, Path: r.Path, Size: make([]*jsonSize, 0, 3), Weighs: r.Weighs,
			Held: make([]jsonHeld, 0, len(r.Held)), jsonPlace: jsonPlaceOf(r.Span),
		}
		if r.Step > 0 {
			row.Order = &r.Step
		}
		for _, l := range r.Size {
			row.Size = append(row.Size, sizeJSON(p, known(l)))
		}
		for _, h := range r.Held {
			row.Held = append(row.Held, jsonHeld(h))
		}
		out.Carry = append(out.Carry, row)
	}
	return writeJSON(w, out)
}

type jsonCarryList struct {
	Version int         `json:"version"`
	Title   string      `json:"title"`
	Units   string      `json:"units"`
	Errors  int         `json:"errors"`
	Caution string      `json:"caution"`
	People  *int        `json:"people"`
	Carry   []jsonCarry `json:"carry"`
}

type jsonCarry struct {
	Order  *int        `json:"order"`
	Does   string      `json:"does"`
	Count  int         `json:"count"`
	What   string      `json:"what"`
	Path   string      `json:"path"`
	Size   []*jsonSize `json:"size"`
	Weighs string      `json:"weighs"`
	Held   []jsonHeld  `json:"held"`
	jsonPlace
}

type jsonHeld struct {
	Count int    `json:"count"`
	By    string `json:"by"`
	With  string `json:"with"`
}
