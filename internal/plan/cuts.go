package plan

// The piece in space: every cut that its joints, grooves and hardware make, each in the frame of
// the blank that it is made in. Rules read from it what no list of figures shows: the walls that
// a mortise leaves, two cuts that run into each other inside a post, a bore that meets a tenon.
//
// It is worked out once, when a rule first asks for it, and in one way for every joint: a cut is
// placed at the end that it holds, moved into the blank of each member that takes part (see
// lie.go), and kept with what it is for. Where the plan does not say where a cut lies, its place
// is unknown; nothing is guessed. What each kind of joint cuts stands in joint_cuts.go, panels,
// panes and backs in panel_cuts.go, doors in door_cuts.go, drawers in drawer_cuts.go, what fastens
// two things in fixing_cuts.go.

import (
	"iter"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// Cuts are all cuts of a plan.
type Cuts struct {
	Blanks []*Blank // all that are cut, in the order of the plan

	of   map[any]*Blank
	made []*Cut // in the order in which they were placed
	ends map[*End]run
	kept []Cut // where the next ones go
}

// run is a stretch of the cuts that were placed.
type run struct{ from, to int }

// Blank is one piece of wood and the cuts in it. It is measured in its own frame: along its
// length from its left, lower or front end, across its width from its left, lower or front edge,
// and through its thickness from its front, left or lower face, the joints' own length counted in.
//
// Members that are one part, drawn by itself, share its blank. A part that is used at both
// hands is measured from its outside: from the side at which a use is free, where only one is.
type Blank struct {
	Of   any       // *Member, *Part, *BoxPart, *Panel, BreadboardEnd, or *Door whose leaf is one board
	Size [3]Length // by Dimension, finished
	Cuts []*Cut    // by where they begin along the length, those of unknown place last

	shared bool // one piece is used in several assemblies, and has the cuts of all
}

// BreadboardEnd stands for both breadboard ends of a top, which are alike.
type BreadboardEnd struct{ Top *Member }

// Dimension is a direction in a blank.
type Dimension uint8

const (
	Long  Dimension = iota // with the grain
	Wide                   // across the grain
	Thick                  // through the thickness
)

func (d Dimension) String() string { return [...]string{"length", "width", "thickness"}[d] }

// Face is a side of a blank: two ends, two edges, two faces.
type Face uint8

const (
	NearEnd Face = iota // where the length begins
	FarEnd
	NearEdge
	FarEdge
	NearFace
	FarFace
)

// Dimension is the direction in which a face looks.
func (f Face) Dimension() Dimension { return Dimension(f / 2) }

// Far reports whether it is the one at which its dimension ends.
func (f Face) Far() bool { return f%2 == 1 }

// Opposite is the face across from f.
func (f Face) Opposite() Face { return f ^ 1 }

// Kind is what sort of side it is.
func (f Face) Kind() string { return [...]string{"end", "edge", "face"}[f.Dimension()] }

// CutKind says what a cut is, in the words of the trade.
type CutKind uint8

const (
	CutMortise   CutKind = iota + 1
	CutTenon             // stands
	CutHaunch            // stands on a tenon's own end; is taken out of the mate
	CutTongue            // stands
	CutGroove            // for a tongue, a panel, a drawer's bottom
	CutHousing           // for a board's end: a dado
	CutRabbet            // a step along an edge
	CutLap               // a half-lap, or one cheek of what a bridle goes over
	CutSlot              // of a bridle
	CutTails             // where tails, pins or fingers are cut: the whole of the end
	CutNotch             // at the front of a stopped end, or for a slide
	CutDowel             // a dowel's hole
	CutScrew             // a screw's hole
	CutBolt              // a bolt's hole
	CutNut               // a barrel nut's hole, across the bolt's
	CutInsert            // a threaded insert's hole
	CutBiscuit           // a biscuit's slot
	CutPeg               // a peg's hole through a joint
	CutMagnet            // a magnet's hole
	CutPin               // the hole for a pin on which a shelf lies
	CutHook              // where one half of a hook sits; how it is let in, its maker says
	CutGain              // a hinge's leaf, let in
	CutHingeBore         // of a cup or a barrel
	CutLockBody          // what of a lock is let in
	CutKeeper            // for a lock's bolt
	CutSpline            // the slot for a spline across a mitre
	CutScarf             // the slope of a scarf
)

func (k CutKind) String() string {
	return [...]string{
		"", "mortise", "tenon", "haunch", "tongue", "groove", "housing", "rabbet", "lap", "slot", "tails",
		"notch", "dowel hole", "screw hole", "bolt hole", "nut hole", "insert hole", "biscuit slot", "peg hole", "magnet hole", "pin hole", "hook",
		"hinge gain", "hinge bore", "lock mortise", "keeper", "spline slot", "scarf",
	}[k]
}

// Cut is one cut in a blank, or what a cut leaves standing.
type Cut struct {
	Kind   CutKind
	In     *Blank
	At     Box     // by Dimension; of a round one, the box round it
	Round  bool    // a cylinder, whose axis runs the way that it enters
	Stands bool    // a tenon, a tongue: what is left standing; otherwise it is taken away
	Enters Face    // the face from which it is cut in; of what stands, the end that it stands out from
	Open   [6]bool // by Face: where it comes out on purpose
	For    Purpose
	With   *FixingPart // of what fastens two things: for which line of it
	Use    *Member     // the member as which its blank takes it; nil in what is no member
	Times  int         // how many uses of its part in one assembly take it; else 1

	lie *lie // how its blank lies where it is cut
	by  *way // to the mate in which it is, from the end that it holds
}

// Purpose is what a cut is for.
type Purpose struct {
	End      *End         // the end that is joined, or the edge of a panel, a back or a pane; its Joint says how
	Door     *Door        // with the hardware that it gets
	Hardware *HardwareUse //
	Drawer   *Drawer      // between the parts of its box
	Corner   *Joint       // of those: how the sides are joined there; nil for the bottom's grooves
	Fixing   *Fixing      // that fastens End.Of there, which is no end of its own
	Top      *Member      // with breadboard ends
}

// Drawn is the assembly in which what asks for a cut is drawn; nil of what stands in none.
func (p Purpose) Drawn() *Assembly {
	switch {
	case p.End != nil:
		return It(p.End.Of).In
	case p.Door != nil:
		return p.Door.In
	case p.Drawer != nil:
		return p.Drawer.In
	case p.Top != nil:
		return p.Top.In
	}
	return nil
}

// Cuts works out the piece in space, once.
func (p *Plan) Cuts() *Cuts { return p.cuts.get(p.makeCuts) }

func (p *Plan) makeCuts() *Cuts {
	c := &cutter{
		Cuts: &Cuts{of: make(map[any]*Blank), ends: make(map[*End]run)}, plan: p,
		lies: make(map[*Member]*lies), grooves: make(map[edge]Length),
	}
	for _, m := range p.Tops {
		if m.Breadboard != nil {
			c.breadboard(m, m.Breadboard)
		}
	}
	for _, a := range p.Assemblies {
		for n := range a.Nodes() {
			switch n := n.(type) {
			case *Panel:
				c.panel(n)
			case *Glass:
				c.glass(n)
			}
		}
	}
	for _, a := range p.Assemblies { // grooves are known by now, which tenons make room for
		for n := range a.Nodes() {
			switch n := n.(type) {
			case *Member:
				c.member(n)
			case *Door:
				c.door(n)
			case *Drawer:
				c.drawer(n)
			}
		}
	}
	for _, f := range p.Fixes {
		c.fixing(f)
	}
	c.share()
	for _, b := range c.Blanks {
		b.sort()
	}
	return c.Cuts
}

// In is the blank of a thing and the cuts in it: of a *Member (that of its part, where it is
// one), a *Part, *BoxPart, *Panel, BreadboardEnd or *Door; nil where nothing is cut into it.
func (c *Cuts) In(thing any) *Blank {
	if m, ok := thing.(*Member); ok && m.Part.To != nil {
		thing = m.Part.To
	}
	return c.of[thing]
}

// Of are the cuts that an end's joint, or the edge of a panel, a back or a pane, makes: in the end
// itself and in its mates.
func (c *Cuts) Of(e *End) []*Cut {
	r := c.ends[e]
	return c.made[r.from:r.to:r.to]
}

// Own is the first cut of a kind that an end's joint makes in the end itself; nil where there is
// none.
func (c *Cuts) Own(e *End, kind CutKind) *Cut {
	m, _ := e.Of.(*Member)
	for _, cut := range c.Of(e) {
		if cut.Kind == kind && m != nil && cut.Use == m && cut.by == nil {
			return cut
		}
	}
	return nil
}

// All ranges over every cut of every blank, blank by blank.
func (c *Cuts) All() iter.Seq[*Cut] {
	return func(yield func(*Cut) bool) {
		for _, b := range c.Blanks {
			for _, cut := range b.Cuts {
				if !yield(cut) {
					return
				}
			}
		}
	}
}

// Made are all cuts in the order in which they were placed: those of a part's alike uses stand each by
// itself, not once with their number as in All.
func (c *Cuts) Made() []*Cut { return c.made }

// Known reports whether the whole place of a cut is known.
func (c *Cut) Known() bool { return c.At[Long].Known() && c.At[Wide].Known() && c.At[Thick].Known() }

// Deep is how deep a cut goes in, or how far what stands stands out.
func (c *Cut) Deep() Length {
	e := c.At[c.Enters.Dimension()]
	if !e.Sized {
		return Length{}
	}
	return derived(e.Size)
}

// Through reports whether a cut goes through on purpose.
func (c *Cut) Through() bool { return !c.Stands && c.Open[c.Enters] && c.Open[c.Enters.Opposite()] }

// Joint is the joint that a cut belongs to; nil where it is for hardware.
func (c *Cut) Joint() *Joint {
	if c.For.End == nil {
		return c.For.Corner
	}
	return c.For.End.Joint
}

// Wall is how much wood is left between a cut and a face of its blank; below zero where the cut
// comes out. Of what stands it is the shoulder.
func (c *Cut) Wall(f Face) Length {
	e := c.At[f.Dimension()]
	switch {
	case !f.Far() && e.Placed:
		return derived(e.From)
	case f.Far() && e.Known() && c.In.Size[f.Dimension()].Known():
		return derived(c.In.Size[f.Dimension()].Length - e.To())
	}
	return Length{}
}

// Walls ranges over the faces at which a cut is meant to leave wood, and how much it leaves, where
// that is known.
func (c *Cut) Walls() iter.Seq2[Face, wood.Length] {
	return func(yield func(Face, wood.Length) bool) {
		for f := NearEnd; f <= FarFace; f++ {
			if c.Open[f] {
				continue
			}
			if w := c.Wall(f); w.Known() && !yield(f, w.Length) {
				return
			}
		}
	}
}

// Side is the side on which a face of a cut's blank lies, in the assembly of its member.
func (c *Cut) Side(f Face) Side { return c.lie.side(f) }

// FaceName is what a maker calls a face of a cut's blank: "front face", "upper end", "left edge".
func (c *Cut) FaceName(f Face) string {
	return c.Side(f).String() + " " + f.Kind()
}

// Span is where the plan asks for a cut.
func (c *Cut) Span() diag.Span {
	switch {
	case c.For.Fixing != nil:
		return c.For.Fixing.Span
	case c.For.End != nil:
		if j := c.For.End.Joint; j != nil {
			return j.Span
		}
		return It(c.For.End.Of).Span
	case c.For.Hardware != nil:
		return c.For.Hardware.Span
	case c.For.Drawer != nil:
		return c.For.Drawer.Span
	case c.For.Top != nil:
		return c.For.Top.Breadboard.Span
	}
	return diag.Span{}
}

// Meeting is two cuts in one blank that come near each other.
type Meeting struct {
	A, B     *Cut // A begins first along the length
	Gap      wood.Length
	Apart    [3]wood.Length // by Dimension: how far apart they are along it; below zero, how far they overlap
	Along    Dimension      // in which they are the farthest apart, or overlap least
	Opposite bool           // they are cut in from opposite faces, towards one another, and Gap is the web between
}

// mostBeside bounds the work on one blank: with so many cuts before it along the length is a cut
// compared.
const mostBeside = 200

// Near ranges over the cuts that come nearer to each other than a distance, or run into each
// other: Gap is then below zero, by how far they would have to be moved apart. Cuts for one
// purpose (a tenon and its haunch, two dowels of one joint) are no pair, nor are those of unknown
// place, nor those that two pieces get which are cut from one drawing.
//
// The cuts are swept along the length, so that the cost grows with how many there are.
func (b *Blank) Near(within wood.Length) iter.Seq[Meeting] {
	return func(yield func(Meeting) bool) {
		var beside []*Cut
		for _, c := range b.Cuts {
			if !c.Known() {
				continue
			}
			beside = slices.DeleteFunc(beside, func(a *Cut) bool { return a.At[Long].To()+within < c.At[Long].From })
			for _, a := range beside {
				if a.For == c.For || !a.together(c) {
					continue
				}
				if m := a.meets(c); m.Gap <= within+wood.Slack && !yield(m) {
					return
				}
			}
			if beside = append(beside, c); len(beside) > mostBeside {
				beside = slices.Delete(beside, 0, 1)
			}
		}
	}
}

// together reports whether two cuts of one blank are in one piece. Two uses of a part in one
// assembly are two pieces, and so are the leaves of two doors and what is placed in two ways.
func (c *Cut) together(d *Cut) bool {
	if c.inLeaf() && d.inLeaf() && c.For.Door != d.For.Door {
		return false
	}
	if c.Use != d.Use {
		return c.In.shared && c.drawnIn() != d.drawnIn()
	}
	for a, b := c.by, d.by; a != nil && b != nil; a, b = a.from, b.from {
		if a.placed != b.placed {
			return false
		}
	}
	return true
}

// inLeaf reports whether a cut is in the leaf of the door that it is for.
func (c *Cut) inLeaf() bool {
	return c.For.Door != nil && (c.Use == nil || c.Use.In == c.For.Door.Leaf.Frame)
}

// drawnIn is the assembly in which a cut's blank is used; nil of what is no member.
func (c *Cut) drawnIn() *Assembly {
	if c.Use == nil {
		return nil
	}
	return c.Use.In
}

// meets measures between two cuts whose places are known.
func (c *Cut) meets(d *Cut) Meeting {
	m := Meeting{A: c, B: d}
	for i := range m.Apart {
		m.Apart[i] = max(d.At[i].From-c.At[i].To(), c.At[i].From-d.At[i].To())
		if m.Apart[i] > m.Apart[m.Along] {
			m.Along = Dimension(i)
		}
	}
	m.Gap = distance(m.Apart[:]...)
	switch {
	case c.Round && d.Round && c.Enters.Dimension() != d.Enters.Dimension():
		// Square to each other: the gap is exact where they cross, and elsewhere at most too small.
	case c.Round:
		k := c.Enters.Dimension()
		m.Gap = distance(m.Apart[k], c.beside(d, k))
	case d.Round:
		k := d.Enters.Dimension()
		m.Gap = distance(m.Apart[k], d.beside(c, k))
	}
	f := m.Along.others()
	m.Opposite = c.Enters.Dimension() == m.Along && d.Enters == c.Enters.Opposite() && !c.Stands && !d.Stands &&
		m.Apart[f[0]] < 0 && m.Apart[f[1]] < 0
	return m
}

// others are the two other dimensions.
func (d Dimension) others() [2]Dimension { return [2]Dimension{(d + 1) % 3, (d + 2) % 3} }

// beside is the distance between a cylinder and another cut, seen along the cylinder's axis.
func (c *Cut) beside(d *Cut, axis Dimension) wood.Length {
	var from [2]wood.Length // the cylinder's middle to the other
	for i, k := range axis.others() {
		middle := c.At[k].From + c.At[k].Size/2
		if d.Round {
			from[i] = (middle - d.At[k].From - d.At[k].Size/2).Abs()
		} else {
			from[i] = max(d.At[k].From-middle, middle-d.At[k].To())
		}
	}
	radius := c.At[axis.others()[0]].Size / 2
	if d.Round {
		return hypot(from[0], from[1]) - radius - d.At[axis.others()[0]].Size/2
	}
	return distance(from[:]...) - radius
}

// distance is how far two things are apart that are so far apart along each axis; below zero, the
// least by which they overlap.
func distance(apart ...wood.Length) wood.Length {
	so, over := wood.Length(0), apart[0]
	for _, a := range apart {
		over = max(over, a)
		if a > 0 {
			so = hypot(so, a)
		}
	}
	if over <= 0 {
		return over
	}
	return so
}

// hypot is exact where one of the two is nought.
func hypot(a, b wood.Length) wood.Length {
	switch {
	case a == 0:
		return b
	case b == 0:
		return a
	}
	return wood.Length(math.Round(math.Hypot(float64(a), float64(b))))
}

// share finds the parts of which one piece is used in several assemblies: those of which there
// are fewer than their uses ask for.
func (c *cutter) share() {
	var pieces map[*Assembly]int
	for _, part := range c.plan.Parts {
		b := c.of[part]
		if b == nil || len(part.Uses) < 2 {
			continue
		}
		if pieces == nil {
			pieces = c.plan.Pieces()
		}
		uses := 0
		for _, m := range part.Uses {
			uses = min(uses+pieces[m.In], mostPieces)
		}
		b.shared = uses > part.Count.Or(1)
	}
}

// sort puts the cuts in order. Those of a part's uses that are alike in every way are kept once, and
// counted.
func (b *Blank) sort() {
	slices.SortStableFunc(b.Cuts, func(c, d *Cut) int {
		known := func(c *Cut) bool { return c.At[Long].Known() }
		switch {
		case known(c) != known(d):
			if known(c) {
				return -1
			}
			return 1
		case !known(c) || c.At[Long].From == d.At[Long].From:
			return 0
		case c.At[Long].From < d.At[Long].From:
			return -1
		}
		return 1
	})
	if _, part := b.Of.(*Part); part {
		type drawn struct {
			in     *Assembly
			kind   CutKind
			at     Box
			enters Face
			joint  *Joint
		}
		seen := make(map[drawn]*Cut, len(b.Cuts))
		b.Cuts = slices.DeleteFunc(b.Cuts, func(c *Cut) bool {
			if !c.Known() {
				return false
			}
			key := drawn{c.drawnIn(), c.Kind, c.At, c.Enters, c.Joint()}
			if first := seen[key]; first != nil {
				first.Times++
				return true
			}
			seen[key] = c
			return false
		})
	}
}

// Place is where a cut lies in the assembly in which its member is drawn; false in what is no member.
func (c *Cut) Place() (Box, bool) {
	if c.Use == nil {
		return Box{}, false
	}
	var box Box
	for d, axis := range c.lie.axis {
		box[axis] = c.lie.inAssembly(Dimension(d), c.At[d])
	}
	return box, true
}
