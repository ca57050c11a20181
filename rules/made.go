package rules

// What can still be done where wood is cut already. A rule about a size gives the fix for wood that is
// not cut; of what is marked `made` it asks here. What is proposed is worked out for the members as
// they are, and written so that the plan says it: no proposal may raise another finding.

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// takeOff is what puts a piece right that is larger than needed in a size. The plan can be mended with
// it where the line speaks of that piece alone.
func takeOff(p *plan.Plan, over wood.Length, size, setting string, at diag.Span, needed wood.Length, alone bool) diag.Fix {
	write := cutTo(p, at, needed)
	if setting != "size" { // several numbers in a row, of which one is meant
		write = setting + " " + write
	}
	fix := diag.Fix{Title: fmt.Sprintf("take %s off its %s, and write `%s`", exact(p, over), size, write)}
	if alone {
		fix.Edits = []diag.Edit{{Span: at, Text: cutTo(p, at, needed)}}
	}
	return fix
}

// stillBoard is what can be done with a board that is cut, and is not as large as needed in a size: take
// the rest off, or glue a strip to its edge. To an end nothing holds, and on a sheet a strip is an edging.
func stillBoard(p *plan.Plan, over wood.Length, size, setting string, at diag.Span, needed wood.Length, alone, strip bool) []diag.Fix {
	if over > 0 {
		return []diag.Fix{takeOff(p, over, size, setting, at, needed, alone)}
	}
	if !strip {
		return []diag.Fix{{Title: fmt.Sprintf("cut a new one, with a %s of %s", size, exact(p, needed))}}
	}
	write := cutTo(p, at, needed)
	fix := diag.Fix{Title: fmt.Sprintf("glue a strip of the same wood %s wide to one edge, its grain along the board's, and write `%s %s`", exact(p, -over), setting, write)}
	if alone {
		fix.Edits = []diag.Edit{{Span: at, Text: write}}
	}
	return []diag.Fix{fix}
}

// stillLeaf is what can be done with a leaf that is made, and is so much too large for its opening; below
// nought, too small.
func stillLeaf(p *plan.Plan, over wood.Length) diag.Fix {
	if over > 0 {
		return diag.Fix{Title: "plane " + exact(p, over) + " off its edges, as much on the one side as on the other"}
	}
	return diag.Fix{Title: "glue a strip " + exact(p, -over) + " thick to one edge, before its hinges are let in"}
}

// longestFiller bounds what is filled beside a shoulder: more is seen across the room. Common practice,
// no source.
const longestFiller = wood.Inch / 4

// stillFits lists what can still be done with a member that is cut, in the order in which it costs
// more: of one that is too long, take the rest off; of one that is too short, make what it meets wider
// while that is not cut, its tenons shorter, or let loose tenons in; of one that lacks a little between its
// shoulders, fill it up. Last comes a new one.
func stillFits(p *plan.Plan, m *plan.Member, said stated, needed wood.Length, alone bool) []diag.Fix {
	if over := said.Length.Length - needed; over > 0 {
		return []diag.Fix{takeOff(p, over, "length", said.setting, said.Span, needed, alone)}
	}
	var fixes []diag.Fix
	if fix, ok := widerMates(p, m, said, needed); ok {
		fixes = append(fixes, fix)
	}
	for _, mend := range []func(*plan.Plan, *plan.Member, stated) (diag.Fix, bool){shallowerHousings, shorterTenons, looseInstead} {
		if fix, ok := mend(p, m, said); ok {
			if !alone || !roomForJoint(m, said) {
				fix.Edits = nil
			}
			fixes = append(fixes, fix)
		}
	}
	anew := diag.Fix{Title: "cut a new one, " + exact(p, needed) + " long"}
	if m.Size.Wide.Known() && m.Size.Thick.Known() {
		anew.Title = fmt.Sprintf("cut a new one, %s x %s x %s", exact(p, needed), p.ShowSaid(m.Size.Wide), p.ShowSaid(m.Size.Thick))
	}
	return append(fixes, anew)
}

// mostWider bounds how much wider a mate is made, as a part of its width. Common practice, no source.
const mostWider = 8

// widerMates makes the sticks that a member stands between wider by what it lacks, where they are not
// cut yet, and where nothing else between them states a size, and no check asks for one, that this would
// make wrong.
func widerMates(p *plan.Plan, m *plan.Member, said stated, needed wood.Length) (diag.Fix, bool) {
	lacks := needed - said.Length.Length
	var wider []*plan.Member
	for _, e := range m.Ends {
		if e == nil || len(e.Mates) != 1 {
			return diag.Fix{}, false
		}
		if mate := e.Mates[0]; !cutAlready(mate) {
			wider = append(wider, mate)
		}
	}
	if len(wider) == 0 || m.In == nil || m.In.Kind != plan.Frame || len(m.In.Ends) > mostShown || len(p.Checks) > 0 || statesBetween(m) {
		return diag.Fix{}, false
	}
	each := lacks / wood.Length(len(wider))
	var fix diag.Fix
	var names []string
	for _, mate := range wider {
		if mate.In != m.In || mate.Along.How != plan.Written || mate.Row != "" || mate.Part.To != nil || m.In.Build != nil ||
			mate.Parent == nil || mate.Parent.Axis != m.Grain || !p.Tape.OnMark(each) || each*mostWider > mate.Along.Length {
			return diag.Fix{}, false
		}
		names = append(names, called(&mate.Item))
		fix.Edits = append(fix.Edits, diag.Edit{Span: mate.Along.Span, Text: cutTo(p, mate.Along.Span, mate.Along.Length+each)})
	}
	if len(wider) == 2 && wider[0].Along.Span == wider[1].Along.Span {
		return diag.Fix{}, false
	}
	fix.Title = fmt.Sprintf("make %s %s wider, which is not cut yet", strings.Join(names, " and "), p.Show(each))
	if len(wider) == 2 {
		fix.Title = fmt.Sprintf("make %s %s wider each, which are not cut yet", strings.Join(names, " and "), p.Show(each))
	}
	return fix, true
}

// statesBetween reports whether anything else in a frame states a size along a member, or is cut already.
func statesBetween(m *plan.Member) bool {
	for n := range m.In.Nodes() {
		switch n := n.(type) {
		case *plan.Member:
			if n != m && n.Grain == m.Grain && (n.Cut.Said() || n.Long.Said() || n.Part.To != nil || cutAlready(n)) {
				return true
			}
		case *plan.Panel:
			if n.Wide.Said() || n.High.Said() || n.Made.On {
				return true
			}
		case *plan.List, *plan.Space:
		default:
			return true
		}
	}
	return false
}

// jointedAlike is the one joint at both ends of a member; nil where they differ, or where it is not known
// what is clear between them.
func jointedAlike(m *plan.Member) *plan.Joint {
	if m.Ends[0] == nil || m.Ends[1] == nil || m.Ends[0].Joint != m.Ends[1].Joint || !m.Cell[m.Grain].Sized {
		return nil
	}
	return m.Ends[0].Joint
}

// shallowerHousings lets a board less deep into what holds it, where that is not cut yet and where what
// is left still carries it.
func shallowerHousings(p *plan.Plan, m *plan.Member, said stated) (diag.Fix, bool) {
	j := jointedAlike(m)
	if j == nil || j.Kind.Is != plan.Housing && j.Kind.Is != plan.Dado {
		return diag.Fix{}, false
	}
	deep := (said.Length.Length - m.Cell[m.Grain].Size) / 2
	enough := housingEnough.Length
	if p.Tape.Metric {
		enough = housingEnough.Metric
	}
	for _, e := range m.Ends {
		mate := e.MateSize()
		if len(e.Mates) != 1 || cutAlready(e.Mates[0]) || !mate.Known() || wood.Under(deep, min(fraction(mate.Length, housingShallowest.Number), enough)) {
			return diag.Fix{}, false
		}
	}
	if !p.Tape.OnMark(deep) {
		return diag.Fix{}, false
	}
	text := fmt.Sprintf("joint %s deep %s", j.Kind.Is, cutTo(p, said.Span, deep))
	return diag.Fix{
		Title: fmt.Sprintf("let it in %s deep at both ends, and write `%s`", p.Show(deep), text),
		Edits: []diag.Edit{{Span: said.Span, Text: said.Span.Text() + " " + text}},
	}, true
}

// tenonedAlike is the joint at both ends of a stick, where it is a blind tenon whose figures are known;
// else nil.
func tenonedAlike(m *plan.Member) *plan.Joint {
	j := jointedAlike(m)
	if j == nil || j.Kind.Is != plan.Tenon || j.Through.On || j.Barefaced.On || j.Mitred.On || j.Count.Or(1) != 1 || j.Peg != nil || j.Mortise == nil ||
		!j.Long.Known() || !j.Thick.Known() || !j.Mortise.Deep.Known() {
		return nil
	}
	return j
}

// shorterTenons moves the shoulders out to where the wood that is left makes tenons that hold.
func shorterTenons(p *plan.Plan, m *plan.Member, said stated) (diag.Fix, bool) {
	j := tenonedAlike(m)
	if j == nil {
		return diag.Fix{}, false
	}
	long := (said.Length.Length - m.Cell[m.Grain].Size) / 2
	least := max(tenonShortest.Length, fraction(j.Thick.Length, tenonThicknesses.Number))
	if p.Tape.Metric {
		least = max(tenonShortest.Metric, fraction(j.Thick.Length, tenonThicknesses.Number))
	}
	if wood.Under(long, least) || !p.Tape.OnMark(long) {
		return diag.Fix{}, false
	}
	deep := long + p.Relief()
	text := fmt.Sprintf("joint tenon long %s mortise deep %s", cutTo(p, said.Span, long), cutTo(p, said.Span, deep))
	return diag.Fix{
		Title: fmt.Sprintf("mark a new shoulder line for tenons %s long, and write `%s`", p.Show(long), text),
		Edits: []diag.Edit{{Span: said.Span, Text: said.Span.Text() + " " + text}},
	}, true
}

// looseInstead cuts the stick to what stands between the shoulders, and joins it with loose tenons in
// the mortises as they are, and in mortises as deep as its tenons would have been long. What is lacking
// between the shoulders is filled.
func looseInstead(p *plan.Plan, m *plan.Member, said stated) (diag.Fix, bool) {
	j := tenonedAlike(m)
	if j == nil {
		return diag.Fix{}, false
	}
	between := m.Cell[m.Grain].Size
	from, wide, ok := besideGrooves(p, m)
	lacks := between - said.Length.Length
	if !ok || wood.Under(wide, 2*j.Thick.Length) || wood.Over(lacks, longestFiller) {
		return diag.Fix{}, false
	}
	show := func(l wood.Length) string { return cutTo(p, said.Span, l) }
	stick := p.Tape.Floor(j.Mortise.Deep.Length + j.Long.Length - 2*looseRelief.Length)
	middle := from + wide/2
	text := fmt.Sprintf("joint loose-tenon thick %s wide %s long %s at %s", show(j.Thick.Length), show(wide), show(stick), show(middle))
	if j.Set.Known() {
		text += " set " + show(j.Set.Length)
	}
	text += fmt.Sprintf(" mortise deep %s own %s", show(j.Mortise.Deep.Length), show(j.Long.Length))
	if t := j.Mortise.Thick; t.Known() && !wood.Same(t.Length, j.Thick.Length) {
		text += " thick " + show(t.Length)
	}
	title := "let in loose tenons: "
	switch {
	case wood.Over(lacks, p.Tape.Tolerance()):
		title = fmt.Sprintf("fill up %s at one shoulder, its grain along that of %s, and let loose tenons in through it: ", exact(p, lacks), called(&m.Ends[1].Mates[0].Item))
	case wood.Over(-lacks, p.Tape.Tolerance()):
		title = fmt.Sprintf("cut it %s, which stands between the shoulders, and let in loose tenons: ", exact(p, between))
	}
	ends := "its own ends"
	if wood.Over(lacks, p.Tape.Tolerance()) {
		ends += ", the filler counted in"
	}
	title += fmt.Sprintf("sticks of %s, %s thick and %s wide, their middle %s from the %s; mortises %s deep in %s and %s deep in %s", p.Show(stick),
		p.ShowSaid(j.Thick), p.Show(wide), p.Show(middle),
		p.Cuts().Own(m.Ends[0], plan.CutTenon).FaceName(plan.NearEdge), p.Show(j.Mortise.Deep.Length), matesOf(m.Ends[0]), p.Show(j.Long.Length), ends)
	return diag.Fix{Title: title, Edits: []diag.Edit{{Span: said.Span, Text: show(between) + " " + text}}}, true
}

// besideGrooves is where in a stick's width a mortise may be cut into its end: where its tenon stands,
// less the wood that is left beside a groove.
func besideGrooves(p *plan.Plan, m *plan.Member) (from, wide wood.Length, ok bool) {
	own := p.Cuts().Own(m.Ends[0], plan.CutTenon)
	if own == nil || !own.At[plan.Wide].Known() || !m.Size.Wide.Known() {
		return 0, 0, false
	}
	apart := cutsApart.Length
	if p.Tape.Metric {
		apart = cutsApart.Metric
	}
	from, to := own.At[plan.Wide].From, own.At[plan.Wide].To()
	for _, c := range own.In.Cuts {
		if c.Use != m || c.Stands || !c.At[plan.Wide].Known() {
			continue
		}
		switch c.Enters {
		case plan.NearEdge:
			from = max(from, c.At[plan.Wide].To()+apart)
		case plan.FarEdge:
			to = min(to, c.At[plan.Wide].From-apart)
		}
	}
	return from, p.Tape.Floor(to - from), true
}

// roomForJoint reports whether a joint may be written behind what a member states: on its own line, where
// it says no joint yet and nothing opens behind it.
func roomForJoint(m *plan.Member, said stated) bool {
	if m.Joint != nil || len(m.EndJoints) > 0 || said.thing != any(m) || said.setting == "size" || said.Span.File == nil {
		return false
	}
	rest := said.Span.File.Text[said.Span.End:]
	if i := strings.IndexAny(rest, ";\n}"); i >= 0 {
		rest = rest[:i]
	}
	return !strings.Contains(rest, "{")
}

// cutAlready reports whether a member is cut already.
func cutAlready(n plan.Node) bool {
	m, ok := n.(*plan.Member)
	return ok && (m.Made.On || m.Part.To != nil && m.Part.To.Made.On)
}
