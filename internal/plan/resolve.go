package plan

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// maxUnfolded is how many statements the patterns of a plan may unfold into.
const maxUnfolded = 200_000

// maxDepth is how deep sizes may lean on one another.
const maxDepth = 5_000

// resolver is the working state of one Resolve.
type resolver struct {
	plan     *Plan
	findings []diag.Finding
	open     Opener
	root     *scope
	files    map[string]*source // by name, so that a file reached twice is taken once
	using    []*diag.File       // the files that are being taken in, outermost first

	bindings []binding
	pending  []pending
	outsides []outsideBlock
	joints   map[jointSaid]*Joint

	unknowns    map[unknown]int // the finding that says so
	noThickness map[any]bool    // the materials, and assemblies without one, whose boards were asked how thick they are

	offers  map[level]string   // what may stand in the block of a word, for messages
	gapless map[*Assembly]bool // a door or a front in it was asked for its gap

	shaping    bool // rows are being set out, and nothing can be measured yet
	trail      []stop
	looped     map[diag.Span]bool
	statements int
	unfolded   int
	compared   int // known names, with those that are not
}

// Resolve works out the piece that a tree describes. The plan is always usable: what is
// wrong or missing stays unknown, and one fault makes one finding.
//
// It goes in this order: read every statement into nodes, with those of the files that
// are used; build the patterns; find the names; give items what `each` says; expand rows;
// then work out every stated size, every axis, and what ends, panels, doors and drawers
// make of them. A size is worked out when it is first asked for, so the order of the text
// never matters.
func Resolve(tree *lang.Tree, open Opener) (*Plan, []diag.Finding) {
	r := &resolver{
		plan: &Plan{File: tree.File}, open: open,
		files: make(map[string]*source), looped: make(map[diag.Span]bool), joints: make(map[jointSaid]*Joint),
		unknowns: make(map[unknown]int), noThickness: make(map[any]bool), gapless: make(map[*Assembly]bool),
		offers: make(map[level]string),
	}
	src := &source{file: tree.File, unit: r.unitOf(tree)}
	r.plan.Tape.Metric = src.unit == wood.Millimetre
	r.root = &scope{names: make(map[string]any), source: src}
	r.files[tree.File.Name] = src
	r.read(src, tree.Body)
	r.finishTop()
	r.makeBuilds()
	r.bindNames(false)
	r.placeOutsideBlocks()
	r.bindNames(false)
	r.shape()
	r.bindNames(true)
	r.settleAll()
	r.workOutAll()
	r.checkRelations()
	r.subjects()
	r.keepNodes()
	return r.plan, saidOnce(r.findings)
}

// keepNodes keeps what stands in every assembly in one row, with its path: the plan does not change
// any more, and every rule goes through it.
func (r *resolver) keepNodes() {
	for _, a := range r.plan.Assemblies {
		a.nodes = slices.Collect(a.Nodes())
		for _, n := range a.nodes {
			n.item().path = PathOf(n)
			if m, ok := n.(*Member); ok && m.Lid != nil {
				m.Lid.path = m.path
			}
		}
	}
}

// saidOnce drops what was found again in a line that is read more than once: for each word that
// an `each` lists, or for each build of a pattern.
func saidOnce(found []diag.Finding) []diag.Finding {
	type same struct {
		rule, subject, message string
		span                   diag.Span
	}
	seen := make(map[same]bool, len(found))
	return slices.DeleteFunc(found, func(f diag.Finding) bool {
		key := same{f.Rule, f.Subject, f.Message, f.Span}
		again := seen[key]
		seen[key] = true
		return again
	})
}

// read decodes the statements of one file.
func (r *resolver) read(src *source, statements []*lang.Statement) {
	r.using = append(r.using, src.file)
	d := &decoder{resolver: r, source: src}
	d.scope = r.root
	if src.file != r.plan.File {
		d.scope = &scope{outer: nil, names: r.root.names, source: src}
	}
	d.body([]level{{AtTop, nil, r.plan}}, statements)
	r.using = r.using[:len(r.using)-1]
}

// unitOf is what a bare number stands for in a file: what its `units` says, inches unless
// it does.
func (r *resolver) unitOf(tree *lang.Tree) wood.Length {
	for _, s := range tree.Body {
		if s.Word.Text == "plan" && s.Block != nil {
			for _, inner := range s.Block.Body {
				if inner.Word.Text == "units" {
					s = inner
					break
				}
			}
		}
		if s.Word.Text == "units" && len(s.Values) == 1 && s.Values[0].Op == lang.Name && s.Values[0].Text == "mm" {
			return wood.Millimetre
		}
	}
	return wood.Inch
}

// shape brings every assembly into its final form before anything is measured.
func (r *resolver) shape() {
	r.shaping = true
	defer func() { r.shaping = false }()
	r.cutJointRings()
	r.climate()
	for _, m := range r.plan.Materials {
		r.species(m)
	}
	for _, a := range r.plan.Assemblies {
		if a.Rail != nil {
			r.inheritEach(a, a.Rail)
			orient(a.Rail)
			a.Rail.shaped()
			if a.Root == nil {
				a.Members = append(a.Members, a.Rail)
			} else {
				r.railInNoList(a.Rail.Span)
				a.Rail = nil
			}
		}
		if a.Root == nil {
			continue
		}
		if a.Sides.Known() && a.Sides.N > 4 {
			f := r.fault(UnknownWord, a.Root.Span, "a frame of %d sides has no list: its one rail stands for all", a.Sides.N)
			f.note(a.Sides.Span, "the sides are said here")
			f.Fixes = []diag.Fix{{Title: "write `rail edge 2 { cut 12 }` in the frame's own block"}}
			a.Root = nil // nothing is worked out from a list that is not meant
			continue
		}
		r.inheritAll(a, a.Root)
		r.expand(a, a.Root)
		if a.Build.turned() {
			mirror(a.Root)
		}
		for n := range a.Nodes() {
			switch n := n.(type) {
			case *Member:
				orient(n)
				n.shaped()
				n.seenAsLeaf()
				a.Members = append(a.Members, n)
				if p := n.Part.To; p != nil {
					p.Uses = append(p.Uses, n)
				}
			case *Placed:
				if !n.Part.Said() && n.Word != "build" { // a build that draws no such thing has been reported
					f := r.fault(MissingValue, n.Name.Span, "%s needs to say which one it is", n.Called())
					f.Subject = PathOf(n)
					f.Fixes = []diag.Fix{{Title: "write `" + n.Word + " " + n.Name.Text + " part end-" + n.Word + "`, with the name under which it is drawn"}}
				}
				r.turn(n)
				if n.Part.To != nil {
					n.Part.To.uses = append(n.Part.To.uses, n)
				}
			case *Door:
				if n.Leaf.Frame != nil {
					n.Leaf.Frame.uses = append(n.Leaf.Frame.uses, n)
				}
			}
		}
	}
}

// turn says how a placed frame lies: one that stands in a list across turns its left to
// the front, one in a list down lies level; within another frame it stays in its plane.
func (r *resolver) turn(p *Placed) {
	if p.Part.To == nil || p.Part.To.Kind != Frame || p.In.Kind == Frame || p.Parent == nil {
		return
	}
	switch p.Parent.Axis {
	case Across:
		p.Turned = true
	case Down:
		p.Flat = true
	}
}

// settleAll works out every stated size that is still an expression, and every let.
func (r *resolver) settleAll() {
	for _, m := range r.plan.Materials {
		r.layupThickness(m)
	}
	for _, p := range r.plan.Parts {
		r.fillPart(p)
	}
	for _, let := range r.plan.Lets {
		r.workOut(let, let.Name.Span)
	}
	for i := 0; i < len(r.pending); i++ {
		r.settle(i)
	}
}

// layupThickness works out how thick a layup stands.
func (r *resolver) layupThickness(m *Material) {
	switch {
	case m.Kind != Layup || m.state == done:
		return
	case m.state == busy:
		r.loop(m.Name.Span, m.Name.Text)
		return
	}
	m.thickness.How = failed
	if len(r.trail) >= maxDepth {
		r.fault(TooLarge, m.Name.Span, "layups are made of one another more than %d deep here", maxDepth)
		return
	}
	m.state = busy
	r.trail = append(r.trail, stop{m.Name.Span, m.Name.Text})
	m.thickness = r.plies(m)
	r.trail = r.trail[:len(r.trail)-1]
	m.state = done
}

// plies adds up the plies of a layup.
func (r *resolver) plies(m *Material) Length {
	total := derived(0)
	for _, ply := range m.Plies {
		of := ply.Of.To
		if of == nil {
			return Length{How: failed} // nothing bears the name, and that was reported
		}
		r.layupThickness(of)
		r.need(&ply.Thick)
		t := ply.Thickness()
		if r.need(&t).How == failed {
			return t
		}
		total = addUp(total, t)
	}
	if total.Length > maxLength {
		r.fault(TooLarge, m.Name.Span, "the plies of this layup come to more than 1 km: is a unit right?")
		total.How = failed
	}
	return total
}

// workOutAll solves what nobody has asked for yet, and fills every end and opening.
func (r *resolver) workOutAll() {
	p := r.plan
	for _, a := range p.Assemblies {
		for axis := Across; axis <= Behind; axis++ {
			r.solve(a, axis)
		}
	}
	for _, a := range p.Assemblies {
		if a.Rail != nil {
			r.fillRail(a.Rail)
			continue
		}
		r.missing(a)
		for n := range a.Nodes() {
			switch n := n.(type) {
			case *Member:
				r.fillMember(n)
				a.Ends = append(a.Ends, n.Ends[0], n.Ends[1])
			case *Panel:
				r.meetPanel(n)
				r.fillPanel(n)
			case *Glass:
				r.meetGlass(n)
				r.fillGlass(n)
			case *Door:
				r.fillDoor(n)
			case *Drawer:
				if n.Front == nil {
					r.fillDrawer(n)
				}
			}
		}
	}
	for _, m := range p.Tops {
		r.fillTop(m)
	}
}

// checkRelations works out both sides of every check, and what every limit sets.
func (r *resolver) checkRelations() {
	for _, c := range r.plan.Checks {
		r.relation(c)
	}
	for _, l := range r.plan.Limits {
		if l.Said == nil {
			continue
		}
		if v, ok := r.value(l.Said, l.scope); ok {
			l.Value = v
		}
	}
}

// subjects says what every allow and limit is about: the thing in whose block it stands.
func (r *resolver) subjects() {
	for _, a := range r.plan.Allows {
		a.Subject = PathOf(a.owner)
	}
	for _, l := range r.plan.Limits {
		l.Subject = PathOf(l.owner)
	}
}
