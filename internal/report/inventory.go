package report

// What a piece consists of, a line for each thing, so that two revisions of it can be held
// against each other.

import (
	"fmt"
	"reflect"
	"strings"
	"unicode"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// Section is what a line of an inventory is about, in the order in which changes are told.
type Section uint8

const (
	Outside Section = iota
	Parts
	Joints
	Openings
	Materials
	Hardware
	Fixings
)

func (s Section) String() string {
	return [...]string{"outside", "parts", "joints", "doors and drawers", "materials", "hardware", "fixings"}[s]
}

// thing is one line: where it belongs, what it is called, and what the plan makes of it.
type thing struct {
	section Section
	name    string
	base    string // its name, before those of one name are told apart
	is      string
}

// inventory lists a piece in the order of its plan.
type inventory struct {
	plan   *plan.Plan // whose piece it is
	tape   *plan.Plan // by whose tape sizes are shown
	things []thing
	names  map[string]int // how often a name was given in a section
}

func takeInventory(p, tape *plan.Plan) []thing {
	v := &inventory{plan: p, tape: tape, names: map[string]int{}}
	pieces := p.Pieces()
	for _, a := range p.Assemblies {
		path := plan.PathOf(a)
		outside := v.sizes(" x ", a.Outside[plan.Across], a.Outside[plan.Down], a.Outside[plan.Behind])
		v.add(Outside, path, times(outside, pieces[a]))
		for n := range a.Nodes() {
			v.node(path, n)
		}
	}
	for _, m := range p.Tops {
		v.member(plan.PathOf(m), m)
	}
	for _, part := range p.Parts {
		v.part(plan.PathOf(part), part.Size, part.Of, part.Count.Or(1))
	}
	for _, m := range p.Materials {
		v.add(Materials, m.Name.Text, m.Kind.String()+" "+v.describe(m))
	}
	for _, g := range p.Glues {
		v.add(Materials, g.Name.Text, "glue "+v.describe(g))
	}
	for _, f := range p.Finishes {
		v.add(Materials, f.Name.Text, "finish "+v.describe(f))
	}
	addAll(v, "hinge", p.Hinges)
	addAll(v, "", p.Latches)
	addAll(v, "slide", p.Slides)
	addAll(v, "stay", p.Stays)
	addAll(v, "handle", p.Handles)
	addAll(v, "rod", p.Rods)
	addAll(v, "", p.Fasteners)
	for _, f := range p.Fixes {
		v.add(Fixings, f.A.Name+" to "+f.B.Name, v.describe(f))
	}
	return folded(v.things)
}

// folded takes things of one name that are alike, as those of a row are, together.
func folded(things []thing) []thing {
	type named struct {
		section Section
		base    string
	}
	count, alike := map[named]int{}, map[named]bool{}
	first := map[named]string{}
	for _, t := range things {
		k := named{t.section, t.base}
		if count[k]++; count[k] == 1 {
			first[k], alike[k] = t.is, true
		}
		alike[k] = alike[k] && t.is == first[k]
	}
	var all []thing
	for _, t := range things {
		k := named{t.section, t.base}
		switch {
		case !alike[k]:
			all = append(all, t)
		case t.name == t.base:
			t.is = times(t.is, count[k])
			all = append(all, t)
		}
	}
	return all
}

// add lists a thing; the second of a name is told apart by its number.
func (v *inventory) add(s Section, name, is string) {
	base, key := name, s.String()+" "+name
	v.names[key]++
	if n := v.names[key]; n > 1 {
		name = fmt.Sprintf("%s (%d)", name, n)
	}
	v.things = append(v.things, thing{s, name, base, strings.TrimSpace(is)})
}

func addAll[T any](v *inventory, word string, all []*T) {
	for _, h := range all {
		name := reflect.ValueOf(h).Elem().FieldByName("Name").Interface().(plan.Name).Text
		v.add(Hardware, name, word+" "+v.describe(h))
	}
}

func (v *inventory) node(in string, n plan.Node) {
	it := plan.It(n)
	name := in + "." + nameOf(it)
	switch n := n.(type) {
	case *plan.Member:
		v.member(name, n)
	case *plan.Panel:
		v.part(name, n.Size, n.Of, 1)
		if n.Joint != nil {
			v.add(Joints, name, v.joint(n.Joint))
		}
	case *plan.Glass:
		v.add(Parts, name, v.sizes(" x ", n.Size.Long, n.Size.Wide, n.Size.Thick)+" glass "+n.Kind.Is)
	case *plan.Door:
		is := v.sizes(" x ", n.Size[0], n.Size[1])
		if n.Leaf.Frame == nil && n.Leaf.Part == nil {
			is += " of " + n.Leaf.Name
		}
		v.add(Openings, name, "door "+is+" "+v.describe(&struct {
			Hang    plan.Choice
			Grain   plan.Choice
			Opens   plan.Figure
			Reveal  *plan.Reveal
			Fit     plan.Fit
			Hinges  []*plan.HardwareUse
			Latches []*plan.HardwareUse
			Handles []*plan.HardwareUse
			Stays   []*plan.HardwareUse
		}{n.Hang, n.Leaf.GrainSaid, n.Opens, n.Reveal, n.Fit, n.Hinges, n.Latches, n.Handles, n.Stays}))
	case *plan.Drawer:
		v.add(Openings, name, "drawer "+v.sizes(" x ", n.Box[0], n.Box[1], n.Box[2])+" "+v.describe(&struct {
			Slide   plan.Ref[plan.Slide]
			Reveal  *plan.Reveal
			Fit     plan.Fit
			Handles []*plan.HardwareUse
		}{n.Slide, n.Reveal, n.Fit, n.Handles}))
		for _, b := range []*plan.BoxPart{n.Front, n.Inner, n.Left, n.Right, n.Back, n.Bottom} {
			if b != nil {
				v.add(Parts, name+"."+b.Name, v.sizes(" x ", b.Size.Long, b.Size.Wide, b.Size.Thick)+of(b.Of))
			}
		}
		for i, j := range []*plan.Joint{n.FrontJoint, n.BackJoint} {
			if j != nil {
				v.add(Joints, name+", "+[...]string{"front", "back"}[i]+" corners", v.joint(j))
			}
		}
	}
}

func (v *inventory) member(name string, m *plan.Member) {
	if m.Part.To == nil { // a part that is drawn by itself is listed there
		v.part(name, m.Size, m.Of, 1)
	}
	var said [2]string
	for i, e := range m.Ends {
		if e != nil && e.Joint != nil {
			said[i] = v.joint(e.Joint)
		}
	}
	if said[0] == said[1] && said[0] != "" {
		v.add(Joints, name+", both ends", said[0])
		return
	}
	for i, is := range said {
		if is != "" {
			v.add(Joints, name+", "+m.Ends[i].Side.String()+" end", is)
		}
	}
}

func (v *inventory) part(name string, s plan.Size3, stuff plan.Stuff, count int) {
	is := v.sizes(" x ", s.Long, s.Wide, s.Thick) + of(stuff.Material.To)
	v.add(Parts, name, times(is, count))
}

func of(m *plan.Material) string {
	if m == nil {
		return ""
	}
	return " of " + m.Name.Text
}

func times(is string, n int) string {
	if n > 1 {
		return fmt.Sprintf("%s, %d of them", is, n)
	}
	return is
}

func (v *inventory) joint(j *plan.Joint) string {
	return j.Kind.Is + " " + strings.TrimPrefix(v.describe(j), j.Kind.Is+" ") // a rabbet's size is said by its kind
}

func (v *inventory) sizes(by string, sizes ...plan.Length) string {
	var shown []string
	for _, l := range sizes {
		shown = append(shown, v.size(l))
	}
	return strings.Join(shown, by)
}

// size is a length as the tape reads it, in one way however the plan writes it.
func (v *inventory) size(l plan.Length) string {
	switch {
	case !l.Known():
		return unknown
	case v.tape.Tape.OnMark(l.Length):
		return v.tape.Show(l.Length)
	}
	return v.tape.Show(l.Length) + " ≈ " + v.tape.Tape.Nearest(l.Length)
}

// describe says what is known of a thing's settings, by their fields, in their order: "thick 1/4, long
// 1 1/4, mortise (deep 1 5/16)". What has a name of its own is told beside.
func (v *inventory) describe(node any) string {
	var said []string
	of := reflect.ValueOf(node).Elem()
	for i := range of.NumField() {
		field := of.Type().Field(i)
		is := ""
		if field.IsExported() && !(field.Name == "Kind" && of.Type() == reflect.TypeFor[plan.Joint]()) {
			is = v.value(of.Field(i))
		}
		switch {
		case is == "":
		case field.Name == "Name" && len(said) > 0:
			said[len(said)-1] += " " + is
		case field.Anonymous || field.Name == "Word" || field.Name == "Name" || strings.HasSuffix(field.Name, "Kind"):
			said = append(said, is)
		default:
			said = append(said, strings.TrimSpace(hyphened(strings.TrimSuffix(field.Name, "Name"))+" "+strings.TrimPrefix(is, set)))
		}
	}
	return strings.Join(said, ", ")
}

// set stands for a flag that is set, and says nothing besides its name.
const set = "\x00"

func (v *inventory) value(f reflect.Value) string {
	switch is := f.Interface().(type) {
	case plan.Length:
		if is.Known() {
			return v.size(is)
		}
	case []plan.Length:
		if len(is) > 0 {
			return v.sizes(", ", is...)
		}
	case plan.Pair:
		if is.Across.Known() && is.Deep.Known() {
			return v.sizes(" x ", is.Across, is.Deep)
		}
		return v.value(reflect.ValueOf(is.Deep))
	case plan.Flag:
		if is.On {
			return set
		}
	case plan.Choice:
		return is.Is
	case plan.Text:
		return is.Text
	case plan.Count:
		if is.Known() {
			return fmt.Sprint(is.N)
		}
	case plan.Figure:
		if is.Known() {
			return is.Span.Text()
		}
	case diag.Span, plan.Name:
	case string:
		return is
	default:
		return v.inner(f)
	}
	return ""
}

// inner describes what has settings of its own, and names what stands elsewhere.
func (v *inventory) inner(f reflect.Value) string {
	switch {
	case f.Kind() == reflect.Slice:
		var all []string
		for i := range f.Len() {
			if is := v.value(f.Index(i)); is != "" {
				all = append(all, is)
			}
		}
		return strings.Join(all, "; ")
	case f.Kind() == reflect.Pointer && !f.IsNil():
		if name := f.Elem().FieldByName("Name"); f.Type().Elem().PkgPath() != reflect.TypeFor[plan.Plan]().PkgPath() ||
			name.IsValid() && name.Type() == reflect.TypeFor[plan.Name]() {
			return "" // a thing of its own, which is named beside
		}
		if is := v.describe(f.Interface()); is != "" {
			return "(" + is + ")"
		}
	case f.Kind() == reflect.Struct:
		if name := f.FieldByName("Name"); name.IsValid() && name.Kind() == reflect.String {
			return name.String() // of a reference
		}
		return v.describe(f.Addr().Interface())
	}
	return ""
}

// hyphened is a field's name as the language writes words: SlotWide is slot-wide.
func hyphened(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte('-')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
