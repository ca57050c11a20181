package report

// The hardware on paper, for a spreadsheet, and for programs.

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plancheck/internal/plan"
)

const hardwareTypical = "Where (typical) stands, the plan does not say it either: it is common practice, and the maker's sheet wins."

const hardwareCaution = "Have the hardware at hand, and its maker's sheet, before you cut for it: they win over these figures."

// HardwareText writes what to buy, and then where each sits. A plan with errors says so on top.
func HardwareText(w io.Writer, p *plan.Plan, rows []*HardwareRow, errors int) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s\nSizes in %s. Places are to the middle of a piece, or of its hole.\n", headed("Hardware", p), unitOf(p))
	if errors > 0 {
		fmt.Fprintf(b, "%s\n", strings.Replace(blocked(errors), "cut from", "mark out from", 1))
	}
	if len(rows) == 0 {
		fmt.Fprintf(b, "\nThe plan uses no hardware.\n")
		return b.Flush()
	}
	counts := make([]string, len(rows))
	for i, r := range rows {
		counts[i] = r.qty()
	}
	_, qty := column(counts)
	fmt.Fprintf(b, "\nTo buy\n")
	for i, r := range rows {
		indent := 2 + qty + 2
		fmt.Fprintf(b, "  %s  %s\n", padLeft(counts[i], qty), wrapped(r.said(), indent))
	}
	fmt.Fprintf(b, "\nWhere it sits\n")
	missing, typical := false, false
	for _, r := range rows {
		if len(r.Places) == 0 {
			continue
		}
		fmt.Fprintf(b, "\n%s\n", r.called())
		missing = r.places(b, p) || missing
		typical = typical || r.typical()
	}
	if missing {
		fmt.Fprintf(b, "\nWhere ? stands, the plan does not say it.\n")
	}
	if typical {
		fmt.Fprintf(b, "\n%s\n", hardwareTypical)
	}
	fmt.Fprintf(b, "\n%s\n", hardwareCaution)
	return b.Flush()
}

// typical reports whether some place of it is not the plan's.
func (r *HardwareRow) typical() bool {
	for i := range r.Places {
		for _, m := range r.Places[i].Marks {
			if m.At.How == plan.Default {
				return true
			}
		}
	}
	return false
}

// widestPart is how wide the column of parts is, at most.
const widestPart = 28

// places writes where a piece sits, a line for each sort of place.
func (r *HardwareRow) places(b *bufio.Writer, p *plan.Plan) (missing bool) {
	counts, parts := make([]string, len(r.Places)), make([]string, len(r.Places))
	width := 0
	for i := range r.Places {
		counts[i], parts[i] = strconv.Itoa(r.Places[i].Count), r.Places[i].part()
		if n := len([]rune(parts[i])); n <= widestPart {
			width = max(width, n)
		}
	}
	_, qty := column(counts)
	for i := range r.Places {
		where := r.Places[i].where(p)
		missing = missing || strings.Contains(where, unknown)
		at := 2 + qty + 2 + width + 2
		part := pad(parts[i], width)
		if len([]rune(part)) > width {
			part = wrapped(part, 2+qty+2) + "\n" + strings.Repeat(" ", at-2)
		}
		fmt.Fprintf(b, "  %s  %s  %s\n", padLeft(counts[i], qty), part, wrapped(where, at))
	}
	return missing
}

func padLeft(s string, width int) string {
	return strings.Repeat(" ", max(width-len([]rune(s)), 0)) + s
}

// qty is "4", or "2 pairs".
func (r *HardwareRow) qty() string {
	if r.Pairs {
		return count(r.Count, "pair", "pairs")
	}
	return strconv.Itoa(r.Count)
}

// called is "hinge brass".
func (r *HardwareRow) called() string { return Plain(strings.TrimSpace(r.Word + " " + r.Name)) }

// said is "hinge brass: butt, 2 1/2 high".
func (r *HardwareRow) said() string {
	s := r.called()
	if len(r.Figures) > 0 {
		s += ": " + strings.Join(r.Figures, ", ")
	}
	if len(r.Notes) > 0 {
		s += " (" + strings.Join(r.Notes, "; ") + ")"
	}
	return Plain(s)
}

// part is "leaf-frame: hinge-side".
func (h *HardwarePlace) part() string {
	c := SetUpCut{Names: h.Names, In: h.In}
	return c.part()
}

// where is "left edge, 4 1/4 from the upper end, 9/16 wide from the front face; hinge gain 1/16 deep".
func (h *HardwarePlace) where(p *plan.Plan) string {
	var all []string
	if h.Side != "" {
		all = append(all, h.Side)
	}
	all = append(all, h.marks(p)...)
	s := strings.Join(all, ", ")
	if cut := h.cutting(p); cut != "" {
		s = cut + ": " + s
	}
	return Plain(s)
}

// marks are the measures to mark out.
func (h *HardwarePlace) marks(p *plan.Plan) []string {
	var all []string
	for _, m := range h.Marks {
		size := show(p, m.At)
		if m.Wide {
			size += " wide"
		}
		size += " from the " + m.From
		if m.At.How == plan.Default {
			size += " (typical)"
		}
		all = append(all, size)
	}
	if len(all) == 0 {
		all = []string{unknown}
	}
	return all
}

// cutting is "dowel hole 5/16 across, 9/16 deep", or what is fitted there.
func (h *HardwarePlace) cutting(p *plan.Plan) string {
	if !h.Cut {
		return h.What
	}
	s := h.What
	if h.Bored {
		s += " " + show(p, h.Wide) + " across,"
	}
	if h.Through {
		return s + " through"
	}
	return s + " " + show(p, h.Deep) + " deep"
}

// HardwareCSV writes hardware for a spreadsheet, a line for each sort of place, and one without a place for
// what has none: sizes as the tape reads them, then the same in millimetres, exact, as plain numbers. An
// unknown size is ? in the first and empty in the second. buy is how many to buy in all, on the first line of each.
func HardwareCSV(w io.Writer, p *plan.Plan, rows []*HardwareRow) error {
	c := csv.NewWriter(w)
	c.Write([]string{
		"buy", "word", "name", "figures", "notes", "qty", "part", "in", "what", "side", "marks", "across", "deep", "through",
		"mark mm", "from", "second mark mm", "second from", "third mark mm", "third from", "across mm", "deep mm",
	})
	for _, r := range rows {
		buy := []string{r.qty(), r.Word, r.Name, strings.Join(r.Figures, ", "), strings.Join(r.Notes, "; ")}
		if len(r.Places) == 0 {
			c.Write(append(buy, make([]string, 17)...))
		}
		for i := range r.Places {
			h := &r.Places[i]
			across, deep := "", ""
			if h.Bored {
				across = show(p, h.Wide)
			}
			if h.Cut && !h.Through {
				deep = show(p, h.Deep)
			}
			line := append(append([]string{}, buy...),
				strconv.Itoa(h.Count), strings.Join(h.Names, ", "), h.In, h.What, h.Side, strings.Join(h.marks(p), ", "), across, deep,
				strconv.FormatBool(h.Through))
			for j := range 3 {
				var m HardwareMark
				if j < len(h.Marks) {
					m = h.Marks[j]
				}
				line = append(line, millimetres(m.At), m.From)
			}
			c.Write(append(line, millimetres(h.Wide), millimetres(h.Deep)))
			buy[0] = ""
		}
	}
	c.Flush()
	return c.Error()
}

// HardwareJSON writes hardware as one object:
//
//	version   1, counted with that of JSON
//	title     the plan's
//	units     "in" or "mm": the units of shown sizes
//	errors    how many errors the plan has; above 0, do not mark out from the list
//	caution   what to mind
//	hardware  a list, in the order of the plan; each has
//	  word name figures notes
//	  count     how many to buy; of slides, where pairs is true, pairs
//	  places    a list; each has count names in what side through, across and deep as sizes (null where
//	            they have no meaning), and marks: a list of at, a size, from, wide, true where at is how
//	            wide a cut is that reaches to there, else it is to the middle, and typical, true where at is not
//	            the plan's, but common practice
//	  file line column endLine endColumn startByte endByte
//
// A size is {shown, mm}: as the tape reads it (? if unknown), and in millimetres, exact, as a number (null if
// unknown).
func HardwareJSON(w io.Writer, p *plan.Plan, rows []*HardwareRow, errors int) error {
	out := jsonHardware{
		Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: hardwareCaution, Hardware: make([]jsonHardwareRow, 0, len(rows)),
	}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	for _, r := range rows {
		row := jsonHardwareRow{
			Word: r.Word, Name: r.Name, Figures: append([]string{}, r.Figures...), Notes: append([]string{}, r.Notes...),
			Count: r.Count, Pairs: r.Pairs, Places: make([]jsonHardwarePlace, 0, len(r.Places)), jsonPlace: jsonPlaceOf(r.Span),
		}
		for _, h := range r.Places {
			place := jsonHardwarePlace{
				Count: h.Count, Names: h.Names, In: h.In, What: h.What, Side: h.Side, Through: h.Through,
				Marks: make([]jsonHardwareMark, 0, len(h.Marks)),
			}
			if h.Bored {
				place.Across = sizeJSON(p, h.Wide)
			}
			if h.Cut {
				place.Deep = sizeJSON(p, h.Deep)
			}
			for _, m := range h.Marks {
				place.Marks = append(place.Marks, jsonHardwareMark{sizeJSON(p, m.At), m.From, m.Wide, m.At.How == plan.Default})
			}
			row.Places = append(row.Places, place)
		}
		out.Hardware = append(out.Hardware, row)
	}
	return writeJSON(w, out)
}

type jsonHardware struct {
	Version  int               `json:"version"`
	Title    string            `json:"title"`
	Units    string            `json:"units"`
	Errors   int               `json:"errors"`
	Caution  string            `json:"caution"`
	Hardware []jsonHardwareRow `json:"hardware"`
}

type jsonHardwareRow struct {
	Word    string              `json:"word"`
	Name    string              `json:"name"`
	Figures []string            `json:"figures"`
	Notes   []string            `json:"notes"`
	Count   int                 `json:"count"`
	Pairs   bool                `json:"pairs"`
	Places  []jsonHardwarePlace `json:"places"`
	jsonPlace
}

type jsonHardwarePlace struct {
	Count   int                `json:"count"`
	Names   []string           `json:"names"`
	In      string             `json:"in"`
	What    string             `json:"what"`
	Side    string             `json:"side"`
	Through bool               `json:"through"`
	Across  *jsonSize          `json:"across"`
	Deep    *jsonSize          `json:"deep"`
	Marks   []jsonHardwareMark `json:"marks"`
}

type jsonHardwareMark struct {
	At      *jsonSize `json:"at"`
	From    string    `json:"from"`
	Wide    bool      `json:"wide"`
	Typical bool      `json:"typical"`
}
