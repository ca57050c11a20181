package report

// The review of a plan before the first cut: one page for the bench, with drawings to look at.

import (
	"crypto/sha256"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"
	"sync"

	"plancheck/internal/diag"
	"plancheck/internal/draw"
	"plancheck/internal/plan"
	"plancheck/rules"
)

//go:embed review.html
var reviewPage string

var reviewTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("review").Parse(reviewPage))
})

// Review writes the review of a plan as one HTML page that needs nothing besides: no script, no
// network. It prints on A4 and on Letter. revision is that of the plan in git; "" where there is none.
func Review(w io.Writer, p *plan.Plan, findings []diag.Finding, revision string) error {
	return reviewTemplate().Execute(w, newReview(p, findings, revision))
}

// review is what the page shows.
type review struct {
	Title    string
	File     string
	Hash     string // of the plan's text, the first twelve digits
	Revision string
	Caution  string
	Style    template.CSS // of the drawings

	Outside  []outsideSize
	Mend     []reviewFinding // errors and warnings
	Know     []reviewFinding // advice
	Allowed  []allowed
	Groups   []drawings
	Cutting  []cuttingGroup
	Tables   []reviewTable
	Text     []textLine
	LeftOut  int // lines of the plan that are not shown
	Unplaced int // sizes that could not be worked out
}

type outsideSize struct{ Name, Size string }

type reviewFinding struct {
	Number   int
	Severity string
	Message  string
	Rule     string
	Place    string // "cabinet.plan:12:3"
	Line     int    // 0 where it does not stand in the plan's own file
	Working  []reviewStep
	Notes    []string
	Mends    []string
	On       []drawingLink
}

type reviewStep struct{ Sign, Value, Label string }

type drawingLink struct{ ID, Title string }

type allowed struct{ Rule, Reason, On string }

type drawings struct {
	Head string
	All  []reviewDrawing
}

type reviewDrawing struct {
	ID string
	draw.Drawing
}

type cuttingGroup struct {
	Material string
	Rows     []cuttingRow
}

type cuttingRow struct {
	Boxes                   []struct{} // one to tick for each part, where they are not too many
	Count                   int
	Long, Wide, Grain, Part string
	Core                    string
}

// reviewTable is any other list: set-ups, hardware, movement, what to buy.
type reviewTable struct {
	ID, Head, About string
	Plot            template.HTML
	Columns         []string
	Rows            [][]string
}

type textLine struct {
	Number int
	Text   string
	Found  []int // numbers of the findings that stand in it
}

func newReview(p *plan.Plan, findings []diag.Finding, revision string) *review {
	r := &review{
		Title: p.Title, File: p.File.Name, Revision: revision, Style: draw.Style,
		Hash:     fmt.Sprintf("%x", sha256.Sum256([]byte(p.File.Text)))[:12],
		Caution:  caution,
		Unplaced: p.Unchecked,
	}
	if r.Title == "" {
		r.Title = p.File.Name
	}
	for _, a := range p.Assemblies {
		if len(a.Members)+len(plan.PathOf(a)) > 0 && a.Outside[plan.Across].Known() && a.Outside[plan.Down].Known() {
			r.Outside = append(r.Outside, outsideSize{plan.PathOf(a), outside(p, a)})
		}
	}
	marks := make([]draw.Mark, len(findings))
	for i, f := range findings {
		marks[i] = draw.Mark{Number: i + 1, Subject: f.Subject}
	}
	on := r.draw(p, marks)
	for i := range findings {
		f := newReviewFinding(p, &findings[i], i+1)
		f.On = on[f.Number]
		if findings[i].Severity == diag.Advice {
			r.Know = append(r.Know, f)
		} else {
			r.Mend = append(r.Mend, f)
		}
	}
	for _, a := range p.Allows {
		on := a.Subject
		for _, ref := range a.On {
			on = strings.TrimPrefix(on+", "+ref.Name, ", ")
		}
		r.Allowed = append(r.Allowed, allowed{a.Rule.Text, a.Reason.Text, on})
	}
	r.cutting(p)
	r.tables(p)
	r.text(p, findings)
	return r
}

// outside is an assembly's size outside, width first.
func outside(p *plan.Plan, a *plan.Assembly) string {
	var sizes []string
	for _, l := range a.Outside {
		if l.Known() {
			sizes = append(sizes, show(p, l))
		}
	}
	return strings.Join(sizes, " x ")
}

// draw makes the drawings, and says on which each finding stands.
func (r *review) draw(p *plan.Plan, marks []draw.Mark) map[int][]drawingLink {
	on := map[int][]drawingLink{}
	n := 0
	add := func(g *drawings, d draw.Drawing) {
		n++
		id := fmt.Sprintf("drawing-%d", n)
		g.All = append(g.All, reviewDrawing{id, d})
		for _, number := range d.Marked {
			on[number] = append(on[number], drawingLink{id, d.Title})
		}
	}
	keep := func(g drawings) {
		if len(g.All) > 0 {
			r.Groups = append(r.Groups, g)
		}
	}
	for _, a := range p.Assemblies {
		g := drawings{Head: plan.PathOf(a)}
		for _, d := range draw.Elevations(p, a, marks) {
			add(&g, d)
		}
		folded := rows{}
		for node := range a.Nodes() {
			switch node := node.(type) {
			case *plan.Panel:
				if _, again := folded.again(node, "", node.Size.Wide); again {
					continue // it is drawn already, as the first of its row
				}
				if d, ok := draw.PanelSection(p, node); ok {
					add(&g, d)
				}
			case *plan.Door:
				if d, ok := draw.SwingOf(p, node); ok {
					add(&g, d)
				}
			}
		}
		keep(g)
	}
	g := drawings{Head: "layups"}
	for _, m := range p.Materials {
		if d, ok := draw.LayupSection(p, m, bends(p, m), marks); ok {
			add(&g, d)
		}
	}
	keep(g)
	var parts []draw.Moves
	for _, m := range Movement(p) {
		parts = append(parts, draw.Moves{Name: m.Path, Dry: m.Dry - m.Shop, Humid: m.Humid - m.Shop})
	}
	if d, ok := draw.Movement(p, parts); ok {
		year := drawings{Head: "movement"}
		add(&year, d)
		keep(year)
	}
	return on
}

// bends are how a layup stands out of flat in the two seasons.
func bends(p *plan.Plan, m *plan.Material) []draw.Bend {
	f, ok := FlatnessOf(p, m)
	if !ok {
		return nil
	}
	of := f.Of
	if of == "" {
		of = "a panel of " + show(p, known(f.Long)) + " x " + show(p, known(f.Wide))
	}
	return []draw.Bend{{When: of + " at its driest", Long: f.Long, Wide: f.Wide, Warp: f.Dry}, {When: of + " at its most humid", Long: f.Long, Wide: f.Wide, Warp: f.Humid}}
}

func newReviewFinding(p *plan.Plan, f *diag.Finding, number int) reviewFinding {
	out := reviewFinding{Number: number, Severity: f.Severity.String(), Message: f.Message, Rule: f.Rule}
	if f.Span.Known() {
		out.Place = strings.TrimSuffix(place(f.Span), ": ")
		if f.Span.File == p.File {
			out.Line, _ = f.Span.Position()
		}
	}
	for _, s := range f.Working {
		out.Working = append(out.Working, reviewStep{s.Op.Sign(), s.Value, s.Label})
	}
	for _, note := range f.Notes {
		out.Notes = append(out.Notes, strings.TrimSpace(place(note.Span)+note.Message))
	}
	for _, fix := range f.Fixes {
		out.Mends = append(out.Mends, fix.Title)
	}
	return out
}

// mostBoxes is how many boxes to tick a line of the cutting list has; more parts are counted.
const mostBoxes = 12

func (r *review) cutting(p *plan.Plan) {
	rows := CuttingList(p)
	for i := range rows {
		row := &rows[i]
		head := heading(p, row)
		if len(r.Cutting) == 0 || r.Cutting[len(r.Cutting)-1].Material != head {
			r.Cutting = append(r.Cutting, cuttingGroup{Material: head})
		}
		g := &r.Cutting[len(r.Cutting)-1]
		g.Rows = append(g.Rows, cuttingRow{
			Boxes: make([]struct{}, min(row.Count, mostBoxes)), Count: row.Count,
			Long: show(p, row.Long), Wide: show(p, row.Wide), Grain: row.Grain, Part: part(row), Core: core(p, row),
		})
	}
}

// tables are the other lists for the bench.
func (r *review) tables(p *plan.Plan) {
	add := func(t reviewTable) {
		if len(t.Rows) > 0 {
			r.Tables = append(r.Tables, t)
		}
	}
	setUps := reviewTable{
		ID: "setups", Head: "Set-ups", Columns: []string{"set-up", "cuts", "stops", "parts"},
		About: "What is cut alike is cut together, so that the machine is set once. Follow the machine's manual and its guards.",
	}
	for i, s := range SetUps(p) {
		head := fmt.Sprintf("%d. %s", i+1, s.said(p))
		for j := range s.Cuts {
			c := &s.Cuts[j]
			setUps.Rows = append(setUps.Rows, []string{head, fmt.Sprint(c.Count), s.stops(p, c), c.part()})
			head = ""
		}
	}
	add(setUps)
	hardware := reviewTable{
		ID: "hardware", Head: "Hardware", Columns: []string{"to buy", "hardware", "pieces", "part", "where it sits"},
		About: "Places are to the middle of a piece, or of its hole. The maker's own sheet wins over these figures.",
	}
	for _, row := range HardwareList(p) {
		qty, said := row.qty(), row.said()
		for i := range row.Places {
			place := &row.Places[i]
			hardware.Rows = append(hardware.Rows, []string{qty, said, fmt.Sprint(place.Count), place.part(), place.where(p)})
			qty, said = "", ""
		}
		if len(row.Places) == 0 {
			hardware.Rows = append(hardware.Rows, []string{qty, said, "", "", ""})
		}
	}
	add(hardware)
	carry := reviewTable{
		ID: "carry", Head: "To carry", Columns: []string{"order", "pieces", "what", "size", "weight", "held by"},
		About: strings.TrimSpace("What it comes apart into, in the order in which it is put together." + goesBy(p) + " " + carryCaution),
	}
	for _, c := range rules.CarryList(p) {
		carry.Rows = append(carry.Rows, []string{carryOrder(c), fmt.Sprint(c.Count), c.Called, carrySize(p, c), carryWeight(c), carryHeld(c)})
	}
	add(carry)
	room := reviewTable{
		ID: "room", Head: "Room through the year", Columns: []string{"fit", "driest", "in the shop", "most humid"},
		About: "What is left in each fit that depends on solid wood; below zero it binds, or lets go.",
	}
	for _, f := range Fittings(p) {
		room.Rows = append(room.Rows, []string{f.Path + ", " + f.Where, p.Tape.About(f.Dry), p.Tape.About(f.Shop), p.Tape.About(f.Humid)})
	}
	add(room)
	carries := reviewTable{
		ID: "loads", Head: "What it carries", Columns: []string{"part", "carries", "clear span", "sags", "may sag"},
		About: "How far each bends at once under what the plan says lies on it, spread evenly, and a slat with that in its middle; in years it is half as much again, and more in boards. What breaks it is not worked out.",
	}
	for _, l := range rules.Loads(p) {
		row := []string{l.Path, l.Carries, "not worked out", "", ""}
		if l.Judged {
			row = []string{l.Path, l.Carries, show(p, known(l.Span)), l.Sags, l.May}
		}
		carries.Rows = append(carries.Rows, row)
	}
	add(carries)
	buying := reviewTable{ID: "buying", Head: "To buy", Columns: []string{"material", "the parts take", "to buy"}}
	for _, b := range BuyingList(p) {
		buying.Rows = append(buying.Rows, []string{b.Material, b.Need, b.Buy})
	}
	add(buying)
}

// A plan of more lines is shown by those in which something was found, and a few around them.
const (
	longText = 1500
	around   = 2
)

// text shows the plan itself, with the numbers of the findings at their lines.
func (r *review) text(p *plan.Plan, findings []diag.Finding) {
	found := map[int][]int{}
	for i := range findings {
		if s := findings[i].Span; s.File == p.File {
			line, _ := s.Position()
			found[line] = append(found[line], i+1)
		}
	}
	lines := strings.Count(p.File.Text, "\n") + 1
	for number := 1; number <= lines; number++ {
		text := p.File.Line(number)
		if number == lines && text == "" {
			break
		}
		near := lines <= longText || slices.ContainsFunc([]int{-around, -1, 0, 1, around}, func(d int) bool { return found[number+d] != nil })
		if !near {
			r.LeftOut++
			continue
		}
		r.Text = append(r.Text, textLine{number, Plain(text), found[number]})
	}
}
