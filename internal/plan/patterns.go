package plan

// Patterns: what is drawn once and built more than once. A build decodes its pattern's
// statements once more, in a scope of its own in which the pattern's takes are named.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/lang"
)

// pattern reads `pattern NAME { takes … }`; its body waits for a build.
func (d *decoder) pattern(_ any, s *lang.Statement) {
	if d.build != nil {
		d.fault(UnknownWord, s.Word.Span, "a pattern stands in the file itself, not in another pattern")
		return
	}
	if len(s.Values) == 0 || s.Values[0].Op != lang.Name || s.Block == nil {
		if !s.Faulty {
			d.fault(MissingValue, s.Head(), "`pattern` wants a name and a block: write `pattern leaf { takes width ; frame door { wide width } }`")
		}
		return
	}
	at := &s.Values[0]
	p := &Pattern{Name: Name{Text: at.Text, Span: at.Span}, source: d.source}
	for _, inner := range s.Block.Body {
		if inner.Word.Text == "takes" {
			p.take(d, inner)
		} else {
			p.Body = append(p.Body, inner)
		}
	}
	d.plan.Patterns = append(d.plan.Patterns, p)
	d.declare(d.scope, at, p)
}

// take reads `takes rail-width 2 1/4`.
func (p *Pattern) take(d *decoder, s *lang.Statement) {
	if len(s.Values) == 0 || len(s.Values) > 2 || s.Values[0].Op != lang.Name {
		if !s.Faulty {
			d.fault(MissingValue, s.Head(), "`takes` wants a name, and a value where it may be left out: write `takes rail-width 2 1/4`")
		}
		return
	}
	name := s.Values[0]
	if settingNames()[name.Text] || name.Text == "mirrored" || name.Text == "from" {
		d.fault(DuplicateName, name.Span, "`%s` is a setting: give what the pattern takes another name, such as `%s-of`", name.Text, name.Text)
	}
	for _, t := range p.Takes {
		if t.Name.Text == name.Text {
			f := d.fault(DuplicateName, name.Span, "`%s` is taken twice", name.Text)
			f.note(t.Name.Span, "taken first here")
			return
		}
	}
	t := &Take{Name: Name{Text: name.Text, Span: name.Span}}
	if len(s.Values) == 2 {
		t.Else = &s.Values[1]
	}
	p.Takes = append(p.Takes, t)
}

// buildLine reads `build NAME from PATTERN …`; it is made once all patterns are known. In a
// list its size along that may follow its name, and what it draws stands there.
func (d *decoder) buildLine(owner any, s *lang.Statement) {
	v, along := s.Values, (*lang.Expr)(nil)
	list, inList := owner.(*List)
	if inList && len(v) > 1 && numeric(&v[1]) && v[1].Text != "from" {
		along = &v[1]
		v = slices.Delete(slices.Clone(v), 1, 2)
	}
	if len(v) < 3 || v[0].Op != lang.Name || v[1].Op != lang.Name || v[1].Text != "from" || v[2].Op != lang.Name {
		if !s.Faulty {
			d.fault(MissingValue, s.Head(), "`build` wants a name and a pattern: write `build left from cabinet-door leaf-width 18 13/16`")
		}
		return
	}
	b := &Build{Name: Name{Text: v[0].Text, Span: v[0].Span}, Span: s.Span, values: v, faulty: s.Faulty, outer: d.scope, within: d.build}
	b.Pattern.Name, b.Pattern.Span = v[2].Text, v[2].Span
	// A pattern's body sees the file's flat space, never its caller's names.
	b.scope = &scope{outer: d.root, names: make(map[string]any), source: d.source}
	d.plan.Builds = append(d.plan.Builds, b)
	d.declare(d.scope, &v[0], b)
	if inList {
		b.placed = &Placed{Item: itemAt("build", s)}
		b.placed.Name = b.Name
		if along != nil {
			d.length(along, &b.placed.Along)
		}
		d.add(list, b.placed)
	}
}

// maxBuildDepth is how deep patterns may build one another.
const maxBuildDepth = 20

// makeBuilds builds every pattern, and what those builds build in turn.
func (r *resolver) makeBuilds() {
	for i := 0; i < len(r.plan.Builds); i++ {
		r.makeBuild(r.plan.Builds[i])
	}
}

func (r *resolver) makeBuild(b *Build) {
	values := b.values
	found, ok := r.lookUp(&values[2], b.outer, "a pattern")
	if !ok {
		return
	}
	p, ok := found.(*Pattern)
	if !ok {
		r.fault(UnknownName, values[2].Span, "`%s` is %s, but a pattern is wanted here", values[2].Text, kindOf(found))
		return
	}
	depth := 0
	for outer := b.within; outer != nil; outer = outer.within {
		if outer.Pattern.To == p {
			r.fault(Loop, values[2].Span, "pattern `%s` builds itself", p.Name.Text)
			return
		}
		if depth++; depth == maxBuildDepth {
			r.fault(TooLarge, values[2].Span, "patterns build one another more than %d deep here", maxBuildDepth)
			return
		}
	}
	b.Pattern.To = p
	use(p)
	b.scope.source = p.source
	r.take(b, p, values[3:])
	d := &decoder{resolver: r, source: p.source, scope: b.scope, build: b}
	before, drawn := r.unfolded, len(r.plan.Assemblies)
	d.body([]level{{InPattern, nil, r.plan}}, p.Body)
	if b.placed != nil {
		r.standIn(b, r.plan.Assemblies[drawn:])
	}
	if before <= maxUnfolded && r.unfolded > maxUnfolded {
		r.fault(TooLarge, b.Span, "the patterns of this plan unfold into more than %d lines, which is more than are taken on", maxUnfolded)
	}
}

// standIn puts what a build draws where it stands in a list: the one frame, case or assembly.
func (r *resolver) standIn(b *Build, drawn []*Assembly) {
	if len(drawn) == 1 {
		b.placed.Part = Ref[Assembly]{Name: PathOf(drawn[0]), Span: b.Name.Span, To: drawn[0]}
		return
	}
	b.placed.Along.How = failed
	f := r.fault(WrongValue, b.Name.Span, "a build that stands in a list draws one frame, case or assembly, but pattern `%s` draws %d", b.Pattern.Name, len(drawn))
	f.Fixes = []diag.Fix{{Title: "build it outside the list, and place one of them: `frame left part " + b.Name.Text + ".leaf`"}}
}

// take names what a build gives to its pattern, in the build's scope.
func (r *resolver) take(b *Build, p *Pattern, values []lang.Expr) {
	given, whole := r.given(b, p, values)
	for _, t := range p.Takes {
		let := &Let{Name: t.Name, Said: t.Else, scope: b.scope}
		if v := given[t.Name.Text]; v != nil {
			let.Said, let.scope = v, b.outer
		}
		let.Name.Used = true
		if let.Said == nil {
			let.state = done
			if whole {
				f := r.fault(MissingValue, b.Name.Span, "build `%s` does not say `%s`, which pattern `%s` takes", b.Name.Text, t.Name.Text, p.Name.Text)
				f.note(t.Name.Span, "it has no value of its own")
			}
		}
		b.scope.names[t.Name.Text] = let
	}
}

// given is what the line of a build gives to its pattern, by name; not whole where something
// in it is not understood, which was reported.
func (r *resolver) given(b *Build, p *Pattern, values []lang.Expr) (given map[string]*lang.Expr, whole bool) {
	given = make(map[string]*lang.Expr)
	for i := 0; i < len(values); i++ {
		v := &values[i]
		switch {
		case v.Op == lang.Name && v.Text == "mirrored":
			b.Mirrored = Flag{true, v.Span}
			continue
		case v.Op != lang.Name || !slices.ContainsFunc(p.Takes, func(t *Take) bool { return t.Name.Text == v.Text }):
			r.unknownTake(p, v)
			return given, false
		case i+1 == len(values):
			r.fault(MissingValue, v.Span, "`%s` wants a value, such as `%s 2 1/4`", v.Text, v.Text)
			return given, false
		}
		if first := given[v.Text]; first != nil {
			f := r.fault(GivenTwice, v.Span, "`%s` is given twice", v.Text)
			f.note(first.Span, "given first here")
			return given, false
		}
		i++
		given[v.Text] = &values[i]
	}
	return given, !b.faulty
}

func (r *resolver) unknownTake(p *Pattern, v *lang.Expr) {
	known := []string{"mirrored"}
	for _, t := range p.Takes {
		known = append(known, t.Name.Text)
	}
	f := r.fault(UnknownName, v.Span, "pattern `%s` takes no %s%s", p.Name.Text, quoted(v.Span.Text()), didYouMean(diag.Nearest(v.Text, known)))
	f.note(p.Name.Span, "the pattern takes "+quotedList(known))
}

// turned reports whether a build comes out mirrored, with those that it stands in.
func (b *Build) turned() bool { return b != nil && b.Mirrored.On != b.within.turned() }

// mirror turns a layout left to right.
func mirror(l *List) {
	if l.Axis == Across {
		slices.Reverse(l.Items)
		for i, n := range l.Items {
			n.item().Index = i
		}
	}
	for _, n := range l.Items {
		switch n := n.(type) {
		case *List:
			mirror(n)
		case *Member:
			n.EndJoints = slices.Clone(n.EndJoints) // one may serve a whole row
			for i, e := range n.EndJoints {
				turned := *e
				turned.End.Is = otherHand(e.End.Is)
				n.EndJoints[i] = &turned
			}
			n.Edging = slices.Clone(n.Edging)
			for i, e := range n.Edging {
				turned := *e
				turned.Edge.Is = otherHand(e.Edge.Is)
				n.Edging[i] = &turned
			}
			if n.Lid != nil {
				n.Lid.mirror()
			}
		case *Door:
			n.mirror()
		case *Drawer:
			n.Fit.Laps.mirror()
			n.Reveal = n.Reveal.mirrored()
		}
	}
}

// mirror turns a door left to right.
func (d *Door) mirror() {
	d.Hang.Is = otherHand(d.Hang.Is)
	d.Fit.Laps.mirror()
	d.Reveal = d.Reveal.mirrored()
}

func (v *AtEdges) mirror() { v.Left, v.Right = v.Right, v.Left }

// mirrored is a reveal turned left to right; it may be that of another door too, and is left alone.
func (v *Reveal) mirrored() *Reveal {
	if v == nil {
		return nil
	}
	turned := *v
	turned.mirror()
	return &turned
}

func otherHand(side string) string {
	switch side {
	case "left":
		return "right"
	case "right":
		return "left"
	}
	return side
}
