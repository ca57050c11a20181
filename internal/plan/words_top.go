package plan

// The words of the file itself: units and title, names for values, patterns, assemblies,
// and parts and tops that stand alone.

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

func topWords() []Word {
	return []Word{
		{
			Names: names("plan"), In: AtTop, Opens: InPlan,
			Doc:     "names the piece and says how it is measured",
			Example: `plan "Hall table" { units in ; tape 1/32 }`,
			Slots: []Slot{
				text("title", "what the piece is called", `plan "Hall table"`, func(p *Plan) *Text { return &p.title }).unnamed().must(),
				length("tape", "the finest mark that this shop measures to", "tape 1/32",
					func(p *Plan) *Length { return &p.tape }).or("1/32, 1mm"),
				choice("exposure", "where the piece stands", "exposure damp", "inside damp outside",
					func(p *Plan) *Choice { return &p.Exposure }).or("inside"),
			},
			grow: func(d *decoder, _ any, s *lang.Statement) any { return d.plan },
		},
		{
			Names: names("units"), In: AtTop | InPlan,
			Doc:     "what a bare number is measured in, in this file",
			Example: "units mm",
			Slots: []Slot{
				choice("unit", "in or mm", "units mm", "in mm", func(u *unitsLine) *Choice { return &u.unit }).unnamed().must().or("in"),
			},
			grow: func(*decoder, any, *lang.Statement) any { return new(unitsLine) }, // read ahead of all else, see unitOf
		},
		{
			Names: names("use"), In: AtTop,
			Doc:     "takes in the names of another file, which keeps its own units; `use generic` those of the typical hardware that comes with plancheck",
			Example: `use "shop.plan"`,
			Slots: []Slot{
				text("file", "the file, seen from this one", `use "shop.plan"`, func(u *Used) *Text { return &u.Path }).unnamed().must(),
			},
			decode: (*decoder).use,
		},
		{
			Names: names("let"), In: AtTop | InPattern,
			Doc:     "gives a value a name; it may be used before the line on which it stands",
			Example: "let play = 3/32",
			decode:  (*decoder).letLine,
		},
		{
			Names: names("pattern"), In: AtTop, Opens: InPattern,
			Doc:     "draws once what is built more than once; it holds what a plan may",
			Example: "pattern leaf { takes width ; frame door { wide width ; high 30 } }",
			decode:  (*decoder).pattern,
		},
		{
			Names: names("takes"), In: InPattern,
			Doc:     "names what a pattern is given when it is built, and what that is when it is not given",
			Example: "takes rail-width 2 1/4",
			decode:  func(*decoder, any, *lang.Statement) {}, // read with its pattern
		},
		{
			Names: names("build"), In: AtTop | InPattern | InList,
			Doc:     "builds a pattern; what it holds is reached through the build's name",
			Example: "build left from cabinet-door leaf-width 18 13/16 mirrored",
			decode:  (*decoder).buildLine,
		},
		assemblyWord("frame", Frame, "sticks in one plane", "frame door { wide 18 ; high 30 ; thick 3/4 ; across { stile left 2 ; open ; stile right 2 } }"),
		assemblyWord("case", Case, "boards that fill the depth", "case carcass { of oak 3/4 ; wide 30 ; high 40 ; deep 12 ; across { side left ; open ; side right } }"),
		assemblyWord("assembly", Group, "members, frames and cases that stand together", "assembly base { wide 40 ; high 28 ; deep 20 ; across { leg left 2 ; space ; leg right 2 } }"),
		{
			Names: names("part"), In: AtTop | InPattern, Opens: InPart | InMember,
			Doc:     "a part by itself, used where a member names it; sizes are finished, with the grain first",
			Example: "part leg-a x 4 { of oak ; size 28 1/4 x 2 x 2 }",
			Slots: append([]Slot{
				name(func(p *Part) *Name { return &p.Name }).must(),
				count("count", "how many there are", "part leg x 4", func(p *Part) *Count { return &p.Count }).or("1"),
				size3("size", "long (with the grain) x wide x thick", "size 28 1/4 x 2 x 2", func(p *Part) *Size3 { return &p.Blank }),
			}, memberSlots(func(p *Part) *Member { return &p.Member })...),
			grow: func(d *decoder, _ any, s *lang.Statement) any {
				p := new(Part)
				p.Item, p.source = itemAt("part", s), d.build
				d.plan.Parts = append(d.plan.Parts, p)
				return p
			},
		},
		{
			Names: names("top"), In: AtTop | InPattern, Opens: InMember,
			Doc:     "a top that stands alone, laid over an assembly",
			Example: "top slab { of oak ; thick 1 ; boards 6 ; over base ends 3 front 1 back 1 }",
			Slots: append([]Slot{name(func(m *Member) *Name { return &m.Name }).must()},
				memberSlots(func(m *Member) *Member { return m })...),
			grow: func(d *decoder, _ any, s *lang.Statement) any {
				if outsideName(s) {
					return d.later(s)
				}
				m := new(Member)
				m.Item, m.source = itemAt("top", s), d.build
				d.plan.Tops = append(d.plan.Tops, m)
				return m
			},
		},
	}
}

// unitsLine holds what `units` says, which was read before anything else.
type unitsLine struct{ unit Choice }

func assemblyWord(word string, kind AssemblyKind, doc, example string) Word {
	deep := length("deep", "outside, front to back", "deep 18", func(a *Assembly) *Length { return &a.Deep })
	if kind == Frame {
		deep = length("thick", "how thick its sticks are, front to back", "thick 7/8", func(a *Assembly) *Length { return &a.Deep })
	}
	return Word{
		Names: names(word), In: AtTop | InPattern, Opens: InAssembly,
		Doc:     doc + ": an outside size and one tree of lists",
		Example: example,
		Slots: []Slot{
			name(func(a *Assembly) *Name { return &a.Name }).must(),
			count("count", "how many alike are made", word+" door x 2", func(a *Assembly) *Count { return &a.Count }).or("1"),
			flag("pair", "two are made, handed", word+" door pair", func(a *Assembly) *Flag { return &a.Pair }),
			flag("made", "it is already cut", "made", func(a *Assembly) *Flag { return &a.Made }),
			length("wide", "outside, left to right", "wide 62", func(a *Assembly) *Length { return &a.Wide }),
			length("high", "outside, top to bottom", "high 28", func(a *Assembly) *Length { return &a.High }),
			deep,
			stuff("of", "what its members are of, unless they say otherwise", "of oak", func(a *Assembly) *Stuff { return &a.Of }),
			ref("glue", "what it is glued with", "glue resin", "a glue", func(a *Assembly) *Ref[Glue] { return &a.Glue }),
			choice("kind", "what it is for", "kind table", "table desk counter chair bench bed bunk cot shelves kitchen",
				func(a *Assembly) *Choice { return &a.Use }),
			count("places", "how many sit at it", "places 6", func(a *Assembly) *Count { return &a.Places }),
			choice("exposure", "where it stands", "exposure outside", "inside damp outside",
				func(a *Assembly) *Choice { return &a.Exposure }).or("the plan's"),
			choice("apart", "its own items come apart, by hand or with tools", "apart by-hand", "by-hand by-tools",
				func(a *Assembly) *Choice { return &a.Apart }),
			count("sides", "of a frame whose rails are all alike: how many", "sides 6", func(a *Assembly) *Count { return &a.Sides }).or("4"),
		},
		grow: func(d *decoder, _ any, s *lang.Statement) any {
			a := &Assembly{Kind: kind, Build: d.build, Each: map[string]Node{}, scope: d.scope.inner()}
			a.Name.Span = s.Word.Span
			d.plan.Assemblies = append(d.plan.Assemblies, a)
			return a
		},
	}
}

// letLine reads `let NAME = expression`.
func (d *decoder) letLine(_ any, s *lang.Statement) {
	if s.Faulty {
		if len(s.Values) > 0 && s.Values[0].Op == lang.Name { // its name is known, and its value is not
			d.declare(d.scope, &s.Values[0], &Let{Name: Name{Text: s.Values[0].Text, Span: s.Values[0].Span}, state: done})
		}
		return
	}
	if len(s.Values) != 1 || s.Values[0].Op != lang.Name || s.Equals == nil {
		d.fault(MissingValue, s.Head(), "`let` wants a name and a value: write `let play = 3/32`")
		return
	}
	let := &Let{Name: Name{Text: s.Values[0].Text, Span: s.Values[0].Span}, Said: s.Equals, scope: d.scope}
	d.plan.Lets = append(d.plan.Lets, let)
	d.declare(d.scope, &s.Values[0], let)
}

// use takes in another file, once.
func (d *decoder) use(_ any, s *lang.Statement) {
	if len(s.Values) != 1 || s.Values[0].Op != lang.Text && !isGeneric(&s.Values[0]) {
		if !s.Faulty {
			d.fault(MissingValue, s.Head(), "`use` wants the name of a file: write `use \"shop.plan\"`, or `use generic`")
		}
		return
	}
	path := s.Values[0]
	d.plan.Use = append(d.plan.Use, &Used{Path: Text{path.Text, path.Span}, Span: s.Head()})
	file := d.usedFile(&path)
	if file == nil {
		return
	}
	for i, f := range d.using {
		if f.Name == file.Name {
			d.useLoop(path.Span, d.using[i:])
			return
		}
	}
	if _, taken := d.files[file.Name]; taken {
		return
	}
	tree, faults := lang.Parse(file)
	d.findings = append(d.findings, faults...)
	src := &source{file: file, unit: d.unitOf(tree)}
	d.files[file.Name] = src
	title := d.plan.title
	d.read(src, tree.Body)
	d.plan.title = title // that of the other file names another plan
}

func (d *decoder) useLoop(at diag.Span, files []*diag.File) {
	f := d.fault(CannotUse, at, "%s is already being taken in: files cannot use one another in a ring", quoted(files[0].Name))
	for _, through := range files[1:] {
		f.Notes = append(f.Notes, diag.Note{Span: diag.Span{File: through}, Message: "through this file"})
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: "take this line out, or move what both need to a third file"})
}

// finishTop gives the plan what its first lines said.
func (r *resolver) finishTop() {
	p := r.plan
	p.Title = p.title.Text
	if t := r.need(&p.tape); t.Known() {
		if t.Length > 0 && t.Length <= wood.Inch {
			p.Tape.Mark = t.Length
			return
		}
		r.fault(WrongValue, t.Span, "the finest mark of a tape lies between 0 and 1 in, such as `1/32` or `1mm`")
	}
}
