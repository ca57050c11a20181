package draw

// A frame, a case or an assembly, seen from the front or from the side.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// view is how an assembly is looked at.
type view struct {
	name        string
	right, deep plan.Axis // what goes to the right, and what goes away from who looks
	away        bool      // doors and the fronts of drawers are taken away
	cut         bool      // cut through, across its width
}

var (
	fromFront   = view{"from the front", plan.Across, plan.Behind, false, false}
	withoutDoor = view{"from the front, doors and fronts taken away", plan.Across, plan.Behind, true, false}
	cutThrough  = view{"cut through from front to back, seen from the left", plan.Behind, plan.Across, false, true}
)

// Elevations are the pictures of an assembly: from the front; without its doors, where something
// lies behind them; and cut through, where something stands behind something else. None where its
// outside is not known.
func Elevations(p *plan.Plan, a *plan.Assembly, marks []Mark) []Drawing {
	var all []Drawing
	for _, v := range []view{fromFront, withoutDoor, cutThrough} {
		if v.away && !behindDoors(a) || v.cut && !hasDepth(a) {
			continue
		}
		if e := newElevation(p, a, v); e != nil {
			all = append(all, e.draw(marks))
		}
	}
	return all
}

// hasDepth reports whether something in an assembly stands behind something else.
func hasDepth(a *plan.Assembly) bool {
	for n := range a.Nodes() {
		if l, ok := n.(*plan.List); ok && l.Axis == plan.Behind && len(l.Items) > 1 {
			return true
		}
	}
	return false
}

// behindDoors reports whether something stands behind a door.
func behindDoors(a *plan.Assembly) bool {
	for n := range a.Nodes() {
		l, ok := n.(*plan.List)
		if !ok || l.Axis != plan.Behind || len(l.Items) < 2 {
			continue
		}
		if any(l.Items[:1], func(n plan.Node) bool { _, door := n.(*plan.Door); return door }) &&
			any(l.Items[1:], func(n plan.Node) bool { _, list := n.(*plan.List); return !list && plan.It(n).Word != "back" }) {
			return true
		}
	}
	return false
}

// any reports whether something is so of one of some nodes, or of one inside them.
func any(all []plan.Node, is func(plan.Node) bool) bool {
	return slices.ContainsFunc(all, func(n plan.Node) bool {
		l, list := n.(*plan.List)
		return is(n) || list && any(l.Items, is)
	})
}

// elevation is one picture of an assembly.
type elevation struct {
	*sheet
	plan  *plan.Plan
	of    *plan.Assembly
	view  view
	scale float64
	plane wood.Length     // where it is cut through, from its left
	told  []string        // what stands in it, in words
	named map[[2]int]bool // where names stand, in squares as high as a letter
}

func newElevation(p *plan.Plan, a *plan.Assembly, v view) *elevation {
	w, h := a.Outside[v.right], a.Outside[plan.Down]
	if !w.Known() || !h.Known() || w.Length <= 0 || h.Length <= 0 {
		return nil
	}
	e := &elevation{sheet: newSheet(), plan: p, of: a, view: v, scale: scaleFor(p, w.Length.Millimetres(), h.Length.Millimetres(), drawnWide, drawnHigh), named: make(map[[2]int]bool)}
	if v.cut {
		e.plane = cutAt(a)
	}
	return e
}

// cutAt is where an assembly is cut through to be seen from the side: in the middle of what is widest in
// it besides its members, so that what stands there is seen.
func cutAt(a *plan.Assembly) wood.Length {
	at, widest := a.Outside[plan.Across].Length/2, wood.Length(0)
	for n := range a.Nodes() {
		switch n.(type) {
		case *plan.Space, *plan.Drawer, *plan.Door:
			if c := plan.It(n).Cell[plan.Across]; c.Known() && c.Size > widest {
				at, widest = c.From+c.Size/2, c.Size
			}
		}
	}
	return at
}

// seen reports whether a view shows what lies somewhere: what a cut goes through, or all.
func (e *elevation) seen(at plan.Box) bool {
	c := at[plan.Across]
	return !e.view.cut || c.Known() && c.From < e.plane && e.plane < c.To()
}

// on is a length of wood in millimetres of paper.
func (e *elevation) on(l wood.Length) float64 { return l.Millimetres() / e.scale }

// box is a place as the view sees it; false where it is not known.
func (e *elevation) box(at plan.Box) (x, y, w, h float64, ok bool) {
	r, d := at[e.view.right], at[plan.Down]
	return e.on(r.From), e.on(d.From), e.on(r.Size), e.on(d.Size), r.Known() && d.Known()
}

func (e *elevation) draw(marks []Mark) Drawing {
	e.rect("void", 0, 0, e.on(e.of.Outside[e.view.right].Length), e.on(e.of.Outside[plan.Down].Length))
	shown := e.fromBehind()
	for _, n := range shown {
		switch n := n.(type) {
		case *plan.Member:
			e.member(n)
		case *plan.Panel:
			e.panel(n)
		case *plan.Glass:
			e.opening(&n.Item, "glass")
		case *plan.Door:
			e.door(n)
		case *plan.Drawer:
			e.front(&n.Item, n.Edges)
			e.name(&n.Item, n.Cell, "drawer")
		case *plan.Space:
			if n.Word == "open" {
				e.opening(&n.Item, "open")
			}
		case *plan.Placed:
			e.placed(n)
		}
	}
	e.cuts()
	slices.SortStableFunc(shown, func(a, b plan.Node) int { return cmp.Compare(e.farOff(a), e.farOff(b)) })
	for _, n := range shown { // over the wood that hides it, what is nearest first
		switch n := n.(type) {
		case *plan.Panel:
			e.edges(n)
		case *plan.Member:
			e.name(&n.Item, n.Body, n.Word)
		}
	}
	e.sizes()
	marked := e.marks(marks)
	title := plan.PathOf(e.of) + ", " + e.view.name
	about := fmt.Sprintf("%s, %s wide and %s high. %s.", e.of.Kind,
		sized(e.plan, e.of.Outside[e.view.right].Length), sized(e.plan, e.of.Outside[plan.Down].Length), strings.Join(e.told, "; "))
	return Drawing{Title: title, About: about, Scale: scaleName(e.scale), SVG: e.finish(title, about), Marked: marked}
}

// fromBehind are the things that a view shows, those farther off first, so that what stands before
// covers what is behind.
func (e *elevation) fromBehind() []plan.Node {
	var all []plan.Node
	for n := range e.of.Nodes() {
		switch n := n.(type) {
		case *plan.List:
			continue
		case *plan.Door, *plan.Drawer:
			if e.view.away {
				continue
			}
		case *plan.Member:
			if !e.seen(n.Body) {
				continue
			}
		}
		if e.seen(plan.It(n).Cell) {
			all = append(all, n)
		}
	}
	slices.SortStableFunc(all, func(a, b plan.Node) int { return cmp.Compare(e.farOff(b), e.farOff(a)) })
	return all
}

// farOff is how far off a thing begins: what laps its case stands before it.
func (e *elevation) farOff(n plan.Node) wood.Length {
	from := plan.It(n).Cell[e.view.deep].From
	if fit, _ := plan.FrontOf(n); fit != nil && fit.Kind.Is == "overlay" && e.view.deep == plan.Behind {
		from--
	}
	return from
}

// member draws a stick or a board where its wood is seen.
func (e *elevation) member(m *plan.Member) {
	x, y, w, h, ok := e.box(m.Body)
	if !ok {
		return
	}
	if e.view.cut {
		e.rect("cut", x, y, w, h)
		return
	}
	e.rect("wood", x, y, w, h)
	e.mitres(m, x, y, w, h)
}

// mitres draws the line of each end that is mitred.
func (e *elevation) mitres(m *plan.Member, x, y, w, h float64) {
	for _, end := range m.Ends {
		if end == nil || end.Joint == nil || end.Joint.Kind.Is != plan.Mitre {
			continue
		}
		switch c := min(w, h); end.Side { // the heel lies as far in as the member is wide
		case plan.Left:
			e.path("seen", false, x, y, x+c, y+h)
		case plan.Right:
			e.path("seen", false, x+w, y, x+w-c, y+h)
		case plan.Upper:
			e.path("seen", false, x, y, x+w, y+c)
		case plan.Lower:
			e.path("seen", false, x, y+h, x+w, y+h-c)
		}
	}
}

// name writes what a thing is called along its longer side.
func (e *elevation) name(it *plan.Item, at plan.Box, kind string) {
	name := it.Name.Text
	if name == "" {
		name = it.Word
	}
	x, y, w, h, ok := e.box(at)
	if !ok {
		return
	}
	size := func(a plan.Axis) string { return sized(e.plan, at[a].Size) }
	e.told = append(e.told, fmt.Sprintf("%s %s, %s x %s", kind, name, size(e.view.right), size(plan.Down)))
	upright := w < h && wide(name) > w
	if wide(name) <= max(w, h) && e.free(x+w/2, y+h/2, wide(name), upright) {
		e.text("name", x+w/2, y+h/2, upright, name)
	} // else there is no room, and the list of parts has it
}

// free reports whether no name stands yet where one of that length is to have its middle, and takes the place.
func (e *elevation) free(x, y, long float64, upright bool) bool {
	w, h := long, letterHigh
	if upright {
		w, h = h, w
	}
	square := func(at float64) int { return int(math.Floor(at / letterHigh)) }
	var squares [][2]int
	for i := square(x - w/2); i <= square(x+w/2); i++ {
		for j := square(y - h/2); j <= square(y+h/2); j++ {
			if e.named[[2]int{i, j}] {
				return false
			}
			squares = append(squares, [2]int{i, j})
		}
	}
	for _, s := range squares {
		e.named[s] = true
	}
	return true
}

// panel draws what shows of a panel, its edges in the grooves, and which way its grain runs.
func (e *elevation) panel(n *plan.Panel) {
	x, y, w, h, ok := e.box(n.Cell)
	if !ok {
		return
	}
	if e.view.cut {
		e.rect("cut", x, y, w, h)
		return
	}
	e.rect("wood", x, y, w, h)
	if n.Word == "back" {
		return // what stands before it has the room for names
	}
	e.grain(x+w/2, y+h/2+letterHigh*4, min(w, h)*0.5, n.Grain)
	e.name(&n.Item, n.Cell, n.Word)
}

// edges draws the outline of a panel, whose edges are hidden in grooves.
func (e *elevation) edges(n *plan.Panel) {
	x, y, w, h, ok := e.box(n.Cell)
	across, up := n.Size.Wide, n.Size.Long
	if n.Grain == plan.Across {
		across, up = up, across
	}
	if ok && across.Known() && up.Known() && n.Word != "back" && !e.view.cut {
		pw, ph := e.on(across.Length), e.on(up.Length)
		e.rect("hidden", x+(w-pw)/2, y+(h-ph)/2, pw, ph)
	}
}

// grain draws an arrow that runs as the grain does.
func (e *elevation) grain(x, y, long float64, along plan.Axis) {
	const barb = 1.2
	long = math.Min(long, 14)
	if long < 4 {
		return
	}
	if along == plan.Down {
		e.path("thin", false, x+barb, y-long/2+barb, x, y-long/2, x, y+long/2, x-barb, y+long/2-barb)
		return
	}
	e.path("thin", false, x-long/2+barb, y-barb, x-long/2, y, x+long/2, y, x+long/2-barb, y+barb)
}

// opening draws a bay with its diagonals, as openings are drawn.
func (e *elevation) opening(it *plan.Item, kind string) {
	x, y, w, h, ok := e.box(it.Cell)
	if !ok {
		return
	}
	class := "seen"
	if kind == "open" {
		class = "void"
		e.path("void", false, x, y, x+w, y+h)
		e.path("void", false, x, y+h, x+w, y)
	}
	e.rect(class, x, y, w, h)
	e.name(it, it.Cell, kind)
}

// front draws the opening of a door or a drawer, and before it its leaf or its front, which stands in by its
// reveals, or out by its laps. It gives where that is; false in a section, or where it is not known.
func (e *elevation) front(it *plan.Item, edges [4]plan.Edge) (x, y, w, h float64, ok bool) {
	if x, y, w, h, ok = e.box(it.Cell); !ok {
		return
	}
	e.rect("seen", x, y, w, h)
	if e.view.cut {
		return 0, 0, 0, 0, false
	}
	for s, edge := range edges {
		if !edge.Less.Known() {
			continue
		}
		switch less := e.on(edge.Less.Length); plan.Side(s) {
		case plan.Left:
			x, w = x+less, w-less
		case plan.Right:
			w -= less
		case plan.Upper:
			y, h = y+less, h-less
		case plan.Lower:
			h -= less
		}
	}
	e.rect("wood", x, y, w, h)
	return
}

// door draws a leaf; its hinges are where the two dashed lines meet.
func (e *elevation) door(d *plan.Door) {
	if x, y, w, h, ok := e.front(&d.Item, d.Edges); ok {
		switch d.Hang.Is {
		case "left":
			e.path("hidden", false, x+w, y, x, y+h/2, x+w, y+h)
		case "right":
			e.path("hidden", false, x, y, x+w, y+h/2, x, y+h)
		case "top":
			e.path("hidden", false, x, y+h, x+w/2, y, x+w, y+h)
		case "bottom":
			e.path("hidden", false, x, y, x+w/2, y+h, x+w, y)
		}
	}
	e.name(&d.Item, d.Cell, "door")
}

// placed draws the outline of what is drawn elsewhere.
func (e *elevation) placed(n *plan.Placed) {
	x, y, w, h, ok := e.box(n.Cell)
	if !ok {
		return
	}
	e.rect("wood", x, y, w, h)
	e.name(&n.Item, n.Cell, n.Word)
}

// cuts draws what is hidden in the wood: tenons, dowels, bores; and what hardware is let in.
func (e *elevation) cuts() {
	if e.view.cut {
		return // the cutting lines say it
	}
	for cut := range e.plan.Cuts().All() {
		if cut.Use == nil || cut.Use.In != e.of || !cut.Known() {
			continue
		}
		class := "hidden"
		switch cut.Kind {
		case plan.CutTenon, plan.CutHaunch, plan.CutTongue, plan.CutDowel, plan.CutBolt, plan.CutNut, plan.CutInsert,
			plan.CutPeg, plan.CutScrew, plan.CutPin, plan.CutBiscuit:
		case plan.CutGain, plan.CutHingeBore, plan.CutLockBody, plan.CutMagnet:
			class = "thin"
		case plan.CutMortise:
			if cut.Joint() == nil || cut.Joint().Kind.Is != plan.LooseTenon {
				continue // its tenon is drawn
			}
		default:
			continue
		}
		at, ok := cut.Place()
		if !ok {
			continue
		}
		if x, y, w, h, ok := e.box(at); ok && w > 0.1 && h > 0.1 {
			e.rect(class, x, y, w, h)
		}
	}
}

// away is how far the first line of sizes stands off, and a second one off the first.
const away = 7.0

// sizes draws the sizes along the edges: the lists that run that way, and the whole.
func (e *elevation) sizes() {
	w, h := e.on(e.of.Outside[e.view.right].Length), e.on(e.of.Outside[plan.Down].Length)
	line := h
	for _, ticks := range e.chains(e.view.right) {
		line += away
		e.across(ticks, line, h+1)
	}
	e.across(e.whole(e.view.right), line+away, h+1)
	line = 0
	for i, ticks := range e.chains(plan.Down) {
		if i == 0 {
			line -= away
			e.down(ticks, line, -1)
		} else {
			e.down(ticks, w+away, w+1) // on the other side
		}
	}
	e.down(e.whole(plan.Down), line-away, -1)
}

// whole is the outside along an axis.
func (e *elevation) whole(a plan.Axis) []tick {
	l := e.of.Outside[a].Length
	return []tick{{0, sized(e.plan, l)}, {e.on(l), ""}}
}

// chains are the sizes along an axis: of the two lists that run that way and have the most in them.
func (e *elevation) chains(a plan.Axis) [][]tick {
	var all [][]tick
	seen := map[string]bool{}
	for n := range e.of.Nodes() {
		if l, ok := n.(*plan.List); ok && l.Axis == a && len(l.Items) > 1 && e.seen(l.Cell) {
			if ticks := e.ticks(l); ticks != nil && !seen[fmt.Sprint(ticks)] {
				seen[fmt.Sprint(ticks)] = true
				all = append(all, ticks)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b []tick) int { return cmp.Compare(len(b), len(a)) })
	return all[:min(len(all), 2)]
}

// ticks are the places along a list; nil where one is not known.
func (e *elevation) ticks(l *plan.List) []tick {
	var ticks []tick
	for _, item := range l.Items {
		c := plan.It(item).Cell[l.Axis]
		if !c.Known() {
			return nil
		}
		ticks = append(ticks, tick{e.on(c.From), sized(e.plan, c.Size)})
		if item == l.Items[len(l.Items)-1] {
			ticks = append(ticks, tick{e.on(c.To()), ""})
		}
	}
	return ticks
}

// marks sets the numbers of findings on what they are about, and says which have a place here.
func (e *elevation) marks(marks []Mark) (marked []int) {
	at := map[string][2]float64{}
	for n := range e.of.Nodes() {
		it := plan.It(n)
		if it.Name.Text == "" {
			continue
		}
		if x, y, w, h, ok := e.box(it.Cell); ok && e.seen(it.Cell) {
			at[plan.PathOf(n)] = [2]float64{x + w/2, y + h/2}
		}
	}
	at[plan.PathOf(e.of)] = [2]float64{}
	taken := map[string]float64{}
	for _, m := range marks {
		subject := m.Subject
		where, ok := at[subject]
		for !ok && strings.Contains(subject, ".") { // of a part of something, on what it is a part of
			subject = subject[:strings.LastIndex(subject, ".")]
			where, ok = at[subject]
		}
		if ok {
			e.mark(where[0]+5.5+taken[subject], where[1]-3.5, m.Number)
			taken[subject] += 5.5
			marked = append(marked, m.Number)
		}
	}
	return marked
}
