package report

// The cutting list on paper, for a spreadsheet, and for programs.

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// unknown stands for a size that could not be worked out.
const unknown = "?"

// show is a size as the tape reads it; off the mark, as the plan has it, with the nearest
// mark beside it.
func show(p *plan.Plan, l plan.Length) string {
	switch {
	case !l.Known():
		return unknown
	case p.Tape.OnMark(l.Length):
		return p.Show(l.Length)
	}
	return p.ShowSaid(l) + " ≈ " + p.Tape.Nearest(l.Length)
}

// millimetres is a size in millimetres to the last nanometre: "427.0375"; "" if unknown.
func millimetres(l plan.Length) string {
	if !l.Known() {
		return ""
	}
	whole, part := l.Length.Abs()/wood.Millimetre, l.Length.Abs()%wood.Millimetre
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%d.%06d", whole, part), "0"), ".")
	if l.Length < 0 {
		s = "-" + s
	}
	return s
}

const caution = "These are finished sizes, joints and edging included. Clear what `plancheck check` finds before you cut."

func blocked(errors int) string {
	return fmt.Sprintf("Do not cut from this list yet: `plancheck check` finds %s in the plan.", count(errors, "error", "errors"))
}

// headed is what stands on top of a list: what it is, and of which piece.
func headed(list string, p *plan.Plan) string {
	if p.Title == "" {
		return list
	}
	return list + ": " + Plain(p.Title)
}

// CutListText writes a cutting list in columns, a heading for each material and thickness.
// A plan with errors says so on top.
func CutListText(w io.Writer, p *plan.Plan, rows []Row, errors int) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s\nSizes in %s, length with the grain.\n", headed("Cutting list", p), unitOf(p))
	if errors > 0 {
		fmt.Fprintf(b, "%s\n", blocked(errors))
	}
	if len(rows) == 0 {
		fmt.Fprintf(b, "\nThe plan draws no part.\n")
		return b.Flush()
	}

	head, lines := table(p, rows)
	fmt.Fprintf(b, "\n  %s\n", head)
	missing, above := 0, ""
	for i := range rows {
		if h := heading(p, &rows[i]); h != above {
			fmt.Fprintf(b, "\n%s\n", h)
			above = h
		}
		fmt.Fprintf(b, "  %s\n", lines[i])
		missing += rows[i].missing()
	}
	if missing > 0 {
		fmt.Fprintf(b, "\n%s could not be worked out: see ?.\n", count(missing, "size", "sizes"))
	}
	fmt.Fprintf(b, "\n%s\n", caution)
	return b.Flush()
}

// table sets rows in columns under a head. A column in which nothing stands is left out.
func table(p *plan.Plan, rows []Row) (head string, lines []string) {
	lines = make([]string, len(rows))
	for _, c := range []struct {
		head string
		cell func(*Row) string
	}{
		{"qty", func(r *Row) string { return strconv.Itoa(r.Count) }},
		{"long", func(r *Row) string { return show(p, r.Long) }},
		{"wide", func(r *Row) string { return show(p, r.Wide) }},
		{"core", func(r *Row) string { return core(p, r) }},
		{"grain", func(r *Row) string { return r.Grain }},
	} {
		cells := make([]string, len(rows))
		for i := range rows {
			cells[i] = c.cell(&rows[i])
		}
		cells, width := column(cells) // words have no leading digits and stay as they are
		if width == 0 {
			continue
		}
		width = max(width, len(c.head)) + 2
		head += pad(c.head, width)
		for i, s := range cells {
			lines[i] += pad(s, width)
		}
	}
	for i := range rows {
		lines[i] += part(&rows[i])
	}
	return head + "part", lines
}

// heading is what a group of rows is cut from: "oak, 7/8 thick".
func heading(p *plan.Plan, r *Row) string {
	material := r.Material
	if material == "" {
		material = "material unknown"
	}
	return Plain(material) + ", " + show(p, r.Thick) + " thick"
}

// core is "23 1/2 x 11 1/4" for a part with edging, else nothing.
func core(p *plan.Plan, r *Row) string {
	if !r.Edged {
		return ""
	}
	return show(p, r.CoreLong) + " x " + show(p, r.CoreWide)
}

// part is "leaf-frame: hinge-side, latch-side (made already)".
func part(r *Row) string {
	s := strings.Join(r.Names, ", ")
	if r.In != "" {
		s = r.In + ": " + s
	}
	if len(r.Notes) > 0 {
		s += " (" + strings.Join(r.Notes, "; ") + ")"
	}
	return Plain(s)
}

// missing is how many of a row's sizes show as ?.
func (r *Row) missing() int {
	sizes := []plan.Length{r.Long, r.Wide, r.Thick}
	if r.Edged {
		sizes = append(sizes, r.CoreLong, r.CoreWide)
	}
	n := 0
	for _, l := range sizes {
		if !l.Known() {
			n++
		}
	}
	return n
}

// CutListCSV writes a cutting list for a spreadsheet: sizes as the tape reads them, then
// the same in millimetres, exact, as plain numbers (a spreadsheet may take `3/4` for a
// date). An unknown size is ? in the first and empty in the second.
func CutListCSV(w io.Writer, p *plan.Plan, rows []Row) error {
	c := csv.NewWriter(w)
	c.Write([]string{
		"qty", "part", "in", "material", "grain", "long", "wide", "thick", "core long", "core wide",
		"long mm", "wide mm", "thick mm", "core long mm", "core wide mm", "notes",
	})
	for _, r := range rows {
		coreLong, coreWide := "", ""
		if r.Edged {
			coreLong, coreWide = show(p, r.CoreLong), show(p, r.CoreWide)
		} else {
			r.CoreLong, r.CoreWide = plan.Length{}, plan.Length{}
		}
		c.Write([]string{
			strconv.Itoa(r.Count), strings.Join(r.Names, ", "), r.In, r.Material, r.Grain,
			show(p, r.Long), show(p, r.Wide), show(p, r.Thick), coreLong, coreWide,
			millimetres(r.Long), millimetres(r.Wide), millimetres(r.Thick), millimetres(r.CoreLong), millimetres(r.CoreWide),
			strings.Join(r.Notes, "; "),
		})
	}
	c.Flush()
	return c.Error()
}

// CutListJSON writes a cutting list as one object:
//
//	version   1, counted with that of JSON
//	title     the plan's
//	units     "in" or "mm": the units of shown sizes
//	errors    how many errors the plan has; above 0, do not cut from the list
//	caution   what to mind
//	rows      a list, by material and from thick to thin; each has
//	  count names in material grain notes
//	  long wide thick coreLong coreWide
//	            {shown, mm}: as the tape reads it (? if unknown), and in millimetres, exact, as a
//	            number (null if unknown); the core, without its edging, is null where there is none
//	  file line column endLine endColumn startByte endByte
func CutListJSON(w io.Writer, p *plan.Plan, rows []Row, errors int) error {
	out := jsonCutList{
		Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: caution,
		Rows: make([]jsonRow, 0, len(rows)),
	}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	for _, r := range rows {
		row := jsonRow{
			Count: r.Count, Names: r.Names, In: r.In, Material: r.Material, Grain: r.Grain, Notes: append([]string{}, r.Notes...),
			Long: sizeJSON(p, r.Long), Wide: sizeJSON(p, r.Wide), Thick: sizeJSON(p, r.Thick),
			jsonPlace: jsonPlaceOf(r.Span),
		}
		if r.Edged {
			row.CoreLong, row.CoreWide = sizeJSON(p, r.CoreLong), sizeJSON(p, r.CoreWide)
		}
		out.Rows = append(out.Rows, row)
	}
	return writeJSON(w, out)
}

type jsonCutList struct {
	Version int       `json:"version"`
	Title   string    `json:"title"`
	Units   string    `json:"units"`
	Errors  int       `json:"errors"`
	Caution string    `json:"caution"`
	Rows    []jsonRow `json:"rows"`
}

type jsonRow struct {
	Count    int       `json:"count"`
	Names    []string  `json:"names"`
	In       string    `json:"in"`
	Material string    `json:"material"`
	Grain    string    `json:"grain"`
	Long     *jsonSize `json:"long"`
	Wide     *jsonSize `json:"wide"`
	Thick    *jsonSize `json:"thick"`
	CoreLong *jsonSize `json:"coreLong"`
	CoreWide *jsonSize `json:"coreWide"`
	Notes    []string  `json:"notes"`
	jsonPlace
}

type jsonSize struct {
	Shown string       `json:"shown"`
	MM    *json.Number `json:"mm"`
}

func sizeJSON(p *plan.Plan, l plan.Length) *jsonSize {
	s := &jsonSize{Shown: show(p, l)}
	if l.Known() {
		mm := json.Number(millimetres(l))
		s.MM = &mm
	}
	return s
}
