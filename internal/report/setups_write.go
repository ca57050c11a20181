package report

// The set-ups on paper, for a spreadsheet, and for programs.

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plancheck/internal/plan"
)

const setUpCaution = "Follow the machine's manual, and use its guards. Clear what `plancheck check` finds before you cut."

// SetUpsText writes set-ups one below the other, each with the stops for its parts. A plan with
// errors says so on top.
func SetUpsText(w io.Writer, p *plan.Plan, sets []*SetUp, errors int) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s\nSizes in %s. What is let in is as deep as it is cut, with what is left empty below a tenon.\n", headed("Set-ups", p), unitOf(p))
	if errors > 0 {
		fmt.Fprintf(b, "%s\n", strings.Replace(blocked(errors), "this list", "these set-ups", 1))
	}
	if len(sets) == 0 {
		fmt.Fprintf(b, "\nThe plan has no joint, groove or bore that a machine is set for.\n")
		return b.Flush()
	}
	missing := false
	for i, s := range sets {
		fmt.Fprintf(b, "\n%d. %s: %s\n", i+1, s.said(p), count(s.Count, "cut", "cuts"))
		counts, stops := make([]string, len(s.Cuts)), make([]string, len(s.Cuts))
		for i := range s.Cuts {
			counts[i], stops[i] = strconv.Itoa(s.Cuts[i].Count), s.stops(p, &s.Cuts[i])
		}
		counts, qty := column(counts)
		_, width := column(stops)
		for i := range s.Cuts {
			part := wrapped(s.Cuts[i].part(), 4+qty+2+width+2)
			fmt.Fprintf(b, "    %s  %s  %s\n", pad(counts[i], qty), pad(stops[i], width), part)
			missing = missing || strings.Contains(stops[i], unknown)
		}
		missing = missing || strings.Contains(s.said(p), unknown)
	}
	if missing {
		fmt.Fprintf(b, "\nWhere ? stands, the plan does not say where the cut lies.\n")
	}
	fmt.Fprintf(b, "\n%s\n", setUpCaution)
	return b.Flush()
}

func unitOf(p *plan.Plan) string {
	if p.Tape.Metric {
		return "millimetres"
	}
	return "inches"
}

// said is how a machine is set: "mortise 5/16 wide, 1 5/16 deep, 9/32 from the front face".
func (s *SetUp) said(p *plan.Plan) string {
	wide, deep := " wide, ", " deep"
	switch {
	case s.Stands:
		wide, deep = " thick, ", " long"
	case s.Round:
		wide = " across, "
	}
	depth := show(p, s.Deep) + deep
	if s.Through {
		depth = "through"
	}
	return fmt.Sprintf("%s %s%s%s, %s", s.Kind, show(p, s.Wide), wide, depth, fromThe(p, s.From, s.Face))
}

// fromThe is "1/2 from the upper end", or "at the upper end".
func fromThe(p *plan.Plan, l plan.Length, face string) string {
	if l.Known() && l.Length == 0 {
		return "at the " + face
	}
	return show(p, l) + " from the " + face
}

// stops is where along a part a cut runs: "1 1/2 long, 1/2 from the upper end", "lower edge: 16 long,
// from side to side".
func (s *SetUp) stops(p *plan.Plan, c *SetUpCut) string {
	size := show(p, c.Long) + " long, "
	if s.Stands {
		size = show(p, c.Long) + " wide, "
	}
	place := fromThe(p, c.At, c.End)
	if c.All {
		place = "from side to side"
	}
	if s.Round {
		size = ""
	}
	if c.Side != "" {
		size = c.Side + ": " + size
	}
	return size + place
}

// part is "leaf-frame: hinge-side, latch-side".
func (c *SetUpCut) part() string {
	s := strings.Join(c.Names, ", ")
	if c.In != "" {
		s = c.In + ": " + s
	}
	return Plain(s)
}

// paper is how many columns a list is wide.
const paper = 100

// wrapped breaks a list of names where it would run over the paper, under where it began.
func wrapped(s string, at int) string {
	var b strings.Builder
	column := at
	for i, word := range strings.SplitAfter(s, ", ") {
		n := len([]rune(word))
		if i > 0 && column+n > paper {
			b.WriteString("\n" + strings.Repeat(" ", at))
			column = at
		}
		b.WriteString(word)
		column += n
	}
	return strings.ReplaceAll(b.String(), " \n", "\n")
}

// SetUpsCSV writes set-ups for a spreadsheet, a line for each row of stops: sizes as the tape reads
// them, then the same in millimetres, exact, as plain numbers. An unknown size is ? in the first and
// empty in the second.
func SetUpsCSV(w io.Writer, p *plan.Plan, sets []*SetUp) error {
	c := csv.NewWriter(w)
	c.Write([]string{
		"set-up", "kind", "wide", "deep", "through", "from", "face", "qty", "side", "long", "at", "end", "part", "in",
		"wide mm", "deep mm", "from mm", "long mm", "at mm",
	})
	for i, s := range sets {
		for _, cut := range s.Cuts {
			at, end := cut.shown(p)
			c.Write([]string{
				strconv.Itoa(i + 1), s.Kind, show(p, s.Wide), show(p, s.Deep), strconv.FormatBool(s.Through), show(p, s.From), s.Face,
				strconv.Itoa(cut.Count), cut.Side, show(p, cut.Long), at, end, strings.Join(cut.Names, ", "), cut.In,
				millimetres(s.Wide), millimetres(s.Deep), millimetres(s.From), millimetres(cut.Long), millimetres(cut.At),
			})
		}
	}
	c.Flush()
	return c.Error()
}

// shown is where a cut begins; one that runs from side to side has no such place.
func (c *SetUpCut) shown(p *plan.Plan) (at, end string) {
	if c.All {
		return "", ""
	}
	return show(p, c.At), c.End
}

// SetUpsJSON writes set-ups as one object:
//
//	version   1, counted with that of JSON
//	title     the plan's
//	units     "in" or "mm": the units of shown sizes
//	errors    how many errors the plan has; above 0, do not cut from the list
//	caution   what to mind
//	setUps    a list, by kind and from narrow to wide; each has
//	  kind count through round stands face
//	  wide deep from
//	            {shown, mm}: as the tape reads it (? if unknown), and in millimetres, exact, as a
//	            number (null if unknown)
//	  cuts      a list; each has count side names in end, and long and at as sizes. side is the edge
//	            or end to the fence, empty where the set-up says which face; at is null and end empty
//	            where a cut runs from side to side
func SetUpsJSON(w io.Writer, p *plan.Plan, sets []*SetUp, errors int) error {
	out := jsonSetUps{
		Version: Version, Title: p.Title, Units: "in", Errors: errors, Caution: setUpCaution, SetUps: make([]jsonSetUp, 0, len(sets)),
	}
	if p.Tape.Metric {
		out.Units = "mm"
	}
	for _, s := range sets {
		set := jsonSetUp{
			Kind: s.Kind, Count: s.Count, Through: s.Through, Round: s.Round, Stands: s.Stands, Face: s.Face,
			Wide: sizeJSON(p, s.Wide), Deep: sizeJSON(p, s.Deep), From: sizeJSON(p, s.From),
		}
		for _, c := range s.Cuts {
			cut := jsonSetUpCut{Count: c.Count, Side: c.Side, Names: c.Names, In: c.In, Long: sizeJSON(p, c.Long)}
			if !c.All {
				cut.At, cut.End = sizeJSON(p, c.At), c.End
			}
			set.Cuts = append(set.Cuts, cut)
		}
		out.SetUps = append(out.SetUps, set)
	}
	return writeJSON(w, out)
}

type jsonSetUps struct {
	Version int         `json:"version"`
	Title   string      `json:"title"`
	Units   string      `json:"units"`
	Errors  int         `json:"errors"`
	Caution string      `json:"caution"`
	SetUps  []jsonSetUp `json:"setUps"`
}

type jsonSetUp struct {
	Kind    string         `json:"kind"`
	Count   int            `json:"count"`
	Through bool           `json:"through"`
	Round   bool           `json:"round"`
	Stands  bool           `json:"stands"`
	Wide    *jsonSize      `json:"wide"`
	Deep    *jsonSize      `json:"deep"`
	From    *jsonSize      `json:"from"`
	Face    string         `json:"face"`
	Cuts    []jsonSetUpCut `json:"cuts"`
}

type jsonSetUpCut struct {
	Count int       `json:"count"`
	Side  string    `json:"side"`
	Names []string  `json:"names"`
	In    string    `json:"in"`
	Long  *jsonSize `json:"long"`
	At    *jsonSize `json:"at"`
	End   string    `json:"end"`
}
