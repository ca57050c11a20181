package report

// The set-ups: the cuts of a piece by how a machine is set for them, so that it is set once for all
// that are alike.

import (
	"cmp"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// SetUp is one way in which a machine is set: what kind of cut, how wide and how deep, and how far
// from the face, or the edge, that lies against the fence. Sizes that cannot be worked out are unknown.
type SetUp struct {
	Kind    string      // mortise, tenon, groove, dowel hole …
	Stands  bool        // it is what is left standing: a tenon, a tongue
	Round   bool        // it is bored
	Wide    plan.Length // of the cutter, or the diameter; of what stands, how thick it is
	Deep    plan.Length // with what is left empty below a tenon; of what stands, how long it is
	Through bool
	From    plan.Length // from the face to where the cut begins
	Face    string      // front face …; edge or end, where each part has its own to the fence
	Count   int         // of cuts in all
	Cuts    []SetUpCut

	kind plan.CutKind
}

// SetUpCut is where in which parts cuts of one set-up are made: what the stops are set to.
type SetUpCut struct {
	Count int
	Names []string // of the parts in In
	Side  string   // the edge or the end that lies against the fence, where that is not the set-up's face
	In    string   // path of the assembly or drawer; "" of what is declared by itself
	All   bool     // it runs from one end, or edge, to the other
	Long  plan.Length
	At    plan.Length // from the end, or the edge, to where it begins
	End   string      // upper end, left edge …
}

// SetUps lists the set-ups that a piece needs, by kind of cut and from narrow to wide. Dovetails, box
// fingers and hooks are not among them: what they are set out by is no one figure.
func SetUps(p *plan.Plan) []*SetUp {
	l := setUpLister{at: make(map[setUpKey]*SetUp), rows: make(map[stopsKey]int), named: make(map[namedKey]bool)}
	pieces := p.Pieces()
	for c := range p.Cuts().All() {
		if n := atMost(c.Times * piecesOf(pieces, c)); n > 0 && c.Kind != plan.CutTails && c.Kind != plan.CutHook {
			l.add(c, n)
		}
	}
	slices.SortStableFunc(l.all, func(s, t *SetUp) int {
		return cmp.Or(cmp.Compare(s.kind, t.kind), compare(s.Wide, t.Wide), compare(s.Deep, t.Deep), compare(s.From, t.From))
	})
	return l.all
}

// setUpLister gathers set-ups. Cuts that are alike share one, and those of one assembly for which
// the stops are set alike share a row of it.
type setUpLister struct {
	all   []*SetUp
	at    map[setUpKey]*SetUp
	rows  map[stopsKey]int
	named map[namedKey]bool
}

type setUpKey struct {
	kind             plan.CutKind
	wide, deep, from plan.Length
	through, stands  bool
	face             string
}

type stopsKey struct {
	of       *SetUp
	side, in string
	all      bool
	long, at plan.Length
	end      string
}

type namedKey struct {
	of   *SetUp
	row  int
	name string
}

// add counts in a cut that is made n times.
func (l *setUpLister) add(c *plan.Cut, n int) {
	across, along := ways(c)
	s, cut := setUpOf(c, across), stopsOf(c, across, along)
	key := setUpKey{c.Kind, bare(s.Wide), bare(s.Deep), bare(s.From), s.Through, c.Stands, s.Face}
	if l.at[key] == nil {
		l.at[key] = s
		l.all = append(l.all, s)
	}
	s = l.at[key]
	s.Count = atMost(s.Count + n)

	stops := stopsKey{s, cut.Side, cut.In, cut.All, bare(cut.Long), bare(cut.At), cut.End}
	if cut.All {
		stops.at, stops.end = plan.Length{}, ""
	}
	row, ok := l.rows[stops]
	if !ok {
		row = len(s.Cuts)
		l.rows[stops] = row
		s.Cuts = append(s.Cuts, cut)
	}
	with := &s.Cuts[row]
	with.Count = atMost(with.Count + n)
	if _, name := partOf(c); !l.named[namedKey{s, row, name}] {
		l.named[namedKey{s, row, name}] = true
		with.Names = append(with.Names, name)
	}
}

// compare puts what is unknown last.
func compare(l, m plan.Length) int {
	if l.Known() != m.Known() {
		if l.Known() {
			return -1
		}
		return 1
	}
	return cmp.Compare(l.Length, m.Length)
}

// bare is a length without where it came from.
func bare(l plan.Length) plan.Length {
	if !l.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: l.Length, How: plan.Derived}
}

// piecesOf is how often what asks for a cut is made.
func piecesOf(pieces map[*plan.Assembly]int, c *plan.Cut) int {
	n := 1
	if in := c.For.Drawn(); in != nil {
		n = pieces[in]
	}
	if c.For.Top != nil && c.Kind != plan.CutTongue { // at both breadboard ends alike
		n *= 2
	}
	return n
}

// ways are the two dimensions in which a cut does not go in: across which the cutter cuts, and along
// which it runs. It runs the longer way, save that a tenon's cheeks always lie in its thickness.
func ways(c *plan.Cut) (across, along plan.Dimension) {
	across, along = plan.Thick, plan.Wide
	switch c.Enters.Dimension() {
	case plan.Thick:
		across, along = plan.Wide, plan.Long
	case plan.Wide:
		along = plan.Long
	}
	if a, b := c.At[across], c.At[along]; !c.Stands && a.Sized && b.Sized && wood.Over(a.Size, b.Size) {
		return along, across
	}
	return across, along
}

// setUpOf is how the machine is set for a cut.
func setUpOf(c *plan.Cut, across plan.Dimension) *SetUp {
	s := &SetUp{kind: c.Kind, Kind: c.Kind.String(), Stands: c.Stands, Round: c.Round, Deep: c.Deep(), Through: c.Through()}
	if e := c.At[across]; e.Sized {
		s.Wide = plan.Length{Length: e.Size, How: plan.Derived}
	}
	face := fenceOf(c, across)
	s.From, s.Face = c.Wall(face), c.FaceName(face)
	if across != plan.Thick { // a part is turned round for its other end
		s.Face = face.Kind()
	}
	return s
}

// fenceOf is the face that lies against the fence: the front, from which parts are measured; of edges
// and ends the nearer one.
func fenceOf(c *plan.Cut, across plan.Dimension) plan.Face {
	if across == plan.Thick {
		return plan.NearFace
	}
	return nearer(c, across)
}

// stopsOf is where along its part a cut is made.
func stopsOf(c *plan.Cut, across, along plan.Dimension) SetUpCut {
	var cut SetUpCut
	if across != plan.Thick {
		cut.Side = c.FaceName(fenceOf(c, across))
	}
	cut.In, _ = partOf(c)
	if e := c.At[along]; e.Sized {
		cut.Long = plan.Length{Length: e.Size, How: plan.Derived}
	}
	near, far := c.Wall(plan.Face(along*2)), c.Wall(plan.Face(along*2)+1)
	cut.All = near.Known() && far.Known() && !wood.Over(near.Length, 0) && !wood.Over(far.Length, 0)
	face := nearer(c, along)
	cut.At, cut.End = c.Wall(face), c.FaceName(face)
	return cut
}

// nearer is the face, of the two in a dimension, that a cut is nearer to.
func nearer(c *plan.Cut, d plan.Dimension) plan.Face {
	near, far := c.Wall(plan.Face(d*2)), c.Wall(plan.Face(d*2)+1)
	if near.Known() && far.Known() && wood.Over(near.Length, far.Length) {
		return plan.Face(d*2) + 1
	}
	return plan.Face(d * 2)
}

// partOf names the part in which a cut is made, and what it is part of.
func partOf(c *plan.Cut) (in, name string) {
	switch of := c.In.Of.(type) {
	case *plan.Part:
		return "", plan.PathOf(of)
	case *plan.BoxPart:
		return plan.PathOf(of.Drawer), of.Name
	case plan.BreadboardEnd:
		return plan.PathOf(of.Top), "breadboard ends"
	case *plan.Door:
		return plan.PathOf(of.In), nameOf(&of.Item) + " leaf"
	case plan.Node:
		if it := plan.It(of); it.In != nil {
			return plan.PathOf(it.In), nameOf(it)
		}
		return "", plan.PathOf(of)
	}
	return "", ""
}
