package plan

// The table of words held to what it promises: every word and setting is explained and
// shown by an example that works, no two settings fight over a field, and no setting could
// be read as something else.

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

func TestWordsAreExplained(t *testing.T) {
	for _, w := range Words() {
		explained(t, w.Name(), w.Doc, w.Example)
		if head := parseLine(t, w.Example).Word.Text; head != w.Name() && !strings.Contains(w.Example, w.Name()+" ") {
			t.Errorf("the example of `%s` shows `%s`: %s", w.Name(), head, w.Example)
		}
		for _, s := range w.Slots {
			where := w.Name() + " " + s.Name
			if s.Kind == AName && s.Name == "name" {
				continue // a word's own example shows its name
			}
			explained(t, where, s.Doc, s.Example)
			head := parseLine(t, s.Example).Word.Text
			if head != s.Name && !slices.Contains(w.Names, head) {
				t.Errorf("the example of `%s` begins with neither word: %s", where, s.Example)
			}
		}
	}
	for _, k := range JointKinds {
		explained(t, "joint "+k.Name, k.Doc, k.Example)
		if k.Adds == "" {
			t.Errorf("joint kind `%s` does not say what it adds", k.Name)
		}
	}
	for of := range ofKind {
		i := slices.IndexFunc(JointKinds, func(k JointKind) bool { return k.Name == of[0] })
		if i < 0 || !slices.Contains(JointKinds[i].Takes(), of[1]) {
			t.Errorf("`joint %s` takes no `%s`, of which something is said", of[0], of[1])
		}
	}
}

func explained(t *testing.T, where, doc, example string) {
	t.Helper()
	switch {
	case doc == "" || example == "":
		t.Errorf("`%s` lacks its line of documentation or its example", where)
	case strings.HasSuffix(doc, ".") || strings.Contains(doc, "\n") || doc[:1] != strings.ToLower(doc[:1]):
		t.Errorf("the documentation of `%s` is one line in lower case without a full stop, not %q", where, doc)
	}
}

// One place and one spelling lead to one word, else the second would never be reached.
func TestWordsAreUnique(t *testing.T) {
	for _, w := range Words() {
		for bit := Place(1); bit != 0; bit <<= 1 {
			for _, name := range w.Names {
				if found := wordIn(bit, name); w.In&bit != 0 && found != w {
					t.Errorf("`%s` stands twice in one place: %q and %q", name, found.Doc, w.Doc)
				}
			}
		}
		seen := map[string]bool{}
		for _, s := range w.Slots {
			if seen[s.Name] && !s.NameOnly {
				t.Errorf("`%s` has `%s` twice", w.Name(), s.Name)
			}
			seen[s.Name] = seen[s.Name] || !s.NameOnly
			if inner := wordIn(w.Opens, s.Name); inner != nil && !s.NameOnly && w.Opens != InJoint {
				t.Errorf("`%s` in `%s` is a setting and a word with settings of its own", s.Name, w.Name())
			}
		}
	}
}

// What is written as a word must not be taken for a unit or a sign of the grammar.
func TestWordsAreNoUnits(t *testing.T) {
	units := map[string]bool{}
	for u := lang.Bare; u <= lang.Day; u++ {
		units[u.String()] = true
	}
	times := regexp.MustCompile(`^x[0-9]*$`)
	check := func(word string) {
		if units[word] || times.MatchString(word) {
			t.Errorf("`%s` is a unit or a sign, and cannot be a word", word)
		}
	}
	for _, w := range Words() {
		for _, name := range w.Names {
			check(name)
		}
		for _, s := range w.Slots {
			check(s.Name)
			for _, word := range s.Choices {
				if w.Name() != "units" {
					check(word)
				}
			}
		}
	}
}

// A value that may be left out must not be of the same kind as the one behind it, or
// nobody could tell which of the two was meant.
func TestPositionalValuesDiffer(t *testing.T) {
	for _, w := range Words() {
		var before *Slot
		for i := range w.Slots {
			s := &w.Slots[i]
			if !s.Positional {
				continue
			}
			if before != nil && !before.Must && before.Kind == s.Kind && (s.Kind != AFigure || meet(before.Dims, s.Dims)) {
				t.Errorf("in `%s` a value may be taken for `%s` or for `%s`", w.Name(), before.Name, s.Name)
			}
			before = s
		}
	}
}

func meet(a, b []lang.Dim) bool {
	return slices.ContainsFunc(a, func(d lang.Dim) bool { return slices.Contains(b, d) })
}

// alternatives are fields that several settings of one word may set, in place of each other.
var alternatives = map[string]bool{
	"Stock.Dressed":    true, // rough, s1s, s2s
	"FixingGlue.Where": true, // all, centre, front, back
	"FixingGlue.Wide":  true, // front, back
	"DrawerPart.Back":  true, // under, grooved
	"Joint.Hardware":   true, // behind the kind, or as dowel or biscuit of a mitre
}

// Each setting sets something, and nothing that another setting of its word sets.
func TestFieldsAreSetOnce(t *testing.T) {
	for _, w := range Words() {
		if w.decode != nil {
			continue
		}
		setBy := map[string]string{}
		for i := range w.Slots {
			slot := &w.Slots[i]
			value := exampleValue(t, slot)
			if slot.Kind != AFlag && value == nil {
				t.Errorf("the example of `%s %s` has no value that it takes: %s", w.Name(), slot.Name, slot.Example)
				continue
			}
			d := testDecoder()
			at := &lang.Expr{Op: lang.Name, Text: slot.Name, Span: diag.Span{File: d.source.file, End: 3}}
			node := w.grow(d, ownerOf(t, w), &lang.Statement{Word: lang.Word{Text: w.Name(), Span: at.Span}})
			if node == nil {
				t.Errorf("`%s` makes no node", w.Name())
				break
			}
			d.line = line{values: behind(t, slot, value), levels: []level{{w.Opens, w, node}}}
			before := fields(node)
			slot.set(d, node, at, value)
			changed := false
			for path, now := range fields(node) {
				if now == before[path] {
					continue
				}
				changed = true
				field := reflect.TypeOf(node).Elem().Name() + "." + path
				if first := setBy[path]; first != "" && !alternatives[field] {
					t.Errorf("`%s` and `%s` of `%s` both set %s", first, slot.Name, w.Name(), path)
				}
				setBy[path] = slot.Name
			}
			if !changed {
				t.Errorf("`%s %s` sets nothing", w.Name(), slot.Name)
			}
			if slot.given != nil && !slot.given(node).Known() {
				t.Errorf("`%s %s` is set, and does not say where", w.Name(), slot.Name)
			}
		}
	}
}

// leaves are the types that a setting sets whole.
var leaves = map[string]bool{"Name": true, "Length": true, "Figure": true, "Count": true, "Flag": true, "Choice": true, "Text": true}

// parts are what a node makes for itself when one of its settings first needs it.
var parts = map[string]bool{"Shape": true, "Door": true}

// fields are the fields of a node as text, by path; those within pairs and sizes by themselves.
func fields(node any) map[string]string {
	all := map[string]string{}
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		typ := v.Type()
		if v.Kind() == reflect.Pointer && parts[typ.Elem().Name()] {
			if typ = typ.Elem(); v.IsNil() {
				v = reflect.New(typ)
			}
			v = v.Elem()
		}
		if v.Kind() != reflect.Struct || leaves[typ.Name()] || strings.HasPrefix(typ.Name(), "Ref[") {
			all[path] = fmt.Sprintf("%+v", v)
			return
		}
		for i := range v.NumField() {
			walk(strings.TrimPrefix(path+"."+typ.Field(i).Name, "."), v.Field(i))
		}
	}
	walk("", reflect.ValueOf(node).Elem())
	return all
}

// exampleValue is the value in a slot's example that the slot takes.
func exampleValue(t *testing.T, slot *Slot) *lang.Expr {
	if slot.Kind == AName && slot.Name == "name" {
		return &lang.Expr{Op: lang.Name, Text: "one", Span: diag.Span{File: diag.NewFile("name", "one"), End: 3}}
	}
	line := parseLine(t, slot.Example)
	if line.Times != nil && slot.Kind == ACount {
		return line.Times
	}
	for i := range line.Values {
		v := &line.Values[i]
		if v.Op == lang.Sized && v.Args[0].Op == lang.Name && slot.Kind == ACount {
			return &v.Args[1]
		}
		what, _ := counted(slot, v)
		if slot.takes(what) && !(slot.Kind == AExpr && what.Op == lang.Text || isNumeric(slot) && what.Op == lang.Name) {
			return what
		}
	}
	return nil
}

// behind is what follows a value in the example of a setting that reads on: `from top 4`.
func behind(t *testing.T, slot *Slot, value *lang.Expr) []lang.Expr {
	if slot.Example == "" || slot.Kind != AChoice {
		return nil
	}
	values := parseLine(t, slot.Example).Values
	for i := range values {
		if values[i].Text == value.Text {
			return values[i+1:]
		}
	}
	return nil
}

func isNumeric(slot *Slot) bool {
	return slot.Kind >= ALength && slot.Kind <= ACount || slot.Kind == AExpr
}

// owners are what the words of a place are said of.
var owners = []struct {
	place Place
	owner func() any
}{
	{AtTop | InPlan | InStock, func() any { return new(Plan) }},
	{InClimate, func() any { return new(Climate) }},
	{InHouse, func() any { return new(House) }},
	{InList, func() any { return new(List) }},
	{InAssembly, func() any { return &Assembly{Each: map[string]Node{}, scope: &scope{}} }},
	{InMember | InLid, func() any { return &Member{Item: Item{Word: "lid"}} }},
	{InPart, func() any { return new(Part) }},
	{InPanel, func() any { return new(Panel) }},
	{InGlass, func() any { return new(Glass) }},
	{InSpace, func() any { return new(Space) }},
	{InPlaced, func() any { return new(Placed) }},
	{InDoor, func() any { return new(Door) }},
	{InDrawer, func() any { return new(Drawer) }},
	{InJoint, func() any { return new(Joint) }},
	{InEnd, func() any { return new(EndJoint) }},
	{InBreadboard, func() any { return new(Breadboard) }},
	{InLayup, func() any { return new(Material) }},
	{InHinge, func() any { return new(Hinge) }},
	{InLatch, func() any { return new(Latch) }},
	{InRod, func() any { return new(Rod) }},
	{InShop, func() any { return new(Shop) }},
	{InSteps, func() any { return new(Steps) }},
	{InStep, func() any { return new(Step) }},
	{InWay, func() any { return new(Way) }},
	{InFix, func() any { return new(Fixing) }},
	{InSet, func() any { return new(Set) }},
}

func ownerOf(t *testing.T, w *Word) any {
	for _, o := range owners {
		if w.In&o.place != 0 {
			return o.owner()
		}
	}
	t.Fatalf("nothing is known to hold `%s`", w.Name())
	return nil
}

func testDecoder() *decoder {
	src := &source{file: diag.NewFile("test.plan", "let one = 1"), unit: wood.Inch}
	r := &resolver{plan: &Plan{File: src.file}, files: map[string]*source{}, looped: map[diag.Span]bool{}}
	return &decoder{resolver: r, source: src, scope: &scope{names: map[string]any{}, source: src}}
}

// restOfYear is what a house wants beside january.
const restOfYear = "month february 30F 68%% ; month march 39F 65%% ; month april 50F 60%% ; month may 61F 62%% ; month june 70F 65%% ; " +
	"month july 75F 66%% ; month august 73F 70%% ; month september 66F 72%% ; month october 54F 70%% ; month november 43F 72%% ; month december 32F 73%%"

// around is a tiny plan round a line that stands in a place.
var around = []struct {
	place Place
	plan  string
}{
	{AtTop, "%s"},
	{InPlan, `plan "p" { %s }`},
	{InClimate, "climate { %s }"},
	{InHouse, "climate { house { heated 68F ; %s ; " + restOfYear + " } }"},
	{InAssembly, "assembly host { of oak ; wide 30 ; high 30 ; deep 18 ; %s }"},
	{InList, "case host { of oak 3/4 ; wide 60 ; high 60 ; deep 60 ; across { %s } }"},
	{InMember, "case host { of oak 3/4 ; wide 60 ; high 60 ; deep 60 ; down { open bay ; shelf board { %s } } }"},
	{InLid, "case host { of oak 3/4 ; wide 60 ; high 60 ; deep 60 ; down { lid flap { %s } ; open bay } }"},
	{InPart, "part host { of oak ; %s }"},
	{InPanel, "frame host { wide 60 ; high 60 ; thick 3/4 ; across { panel field { of thin ; %s } } }"},
	{InGlass, "frame host { wide 60 ; high 60 ; thick 3/4 ; across { glass pane { %s } } }"},
	{InSpace, "frame host { wide 60 ; high 60 ; thick 3/4 ; across { space bay { %s } } }"},
	{InPlaced, "assembly host { wide 60 ; high 60 ; deep 60 ; across { frame one { part end ; %s } } }"},
	{InDoor, "case host { wide 60 ; high 60 ; deep 60 ; across { door one { %s } } }"},
	{InDrawer, "case host { wide 60 ; high 60 ; deep 60 ; across { drawer one { %s } } }"},
	{InTenon, "joint host tenon { %s }"},
	{InTongue, "joint host tongue { %s }"},
	{InMitre, "joint host mitre { %s }"},
	{InEnd, "part host { of oak ; end left { %s } }"},
	{InBreadboard, "top host { of oak ; breadboard 3 { %s } }"},
	{InLayup, "layup host { %s }"},
	{InHinge, "hinge host { %s }"},
	{InLatch, "latch host { %s }"},
	{InRod, "rod host { %s }"},
	{InShop, "shop { %s }"},
	{InStock, "stock { %s }"},
	{InSteps, "steps { %s }"},
	{InStep, "steps { glue base { %s } }"},
	{InWay, "assembly host { wide 60 ; high 60 ; deep 60 ; way { %s } }"},
	{InFix, "fix slab to base { %s }"},
	{InSet, `set "s" { parts slab ; %s }`},
}

// Every example reads without a finding where its word may stand, beside what it names.
func TestExamplesRead(t *testing.T) {
	for _, w := range Words() {
		for _, a := range around {
			if w.In&a.place != 0 && w.In != Anywhere || w.In == Anywhere && a.place == AtTop {
				reads(t, w.Name(), a.plan, w.Example)
			}
		}
	}
	for _, k := range JointKinds {
		reads(t, "joint "+k.Name, "part host { of oak ; %s }", k.Example)
	}
}

func TestMissingValues(t *testing.T) {
	for said, wants := range map[string]string{
		"wood oak { sawn quarter }":         "`wood` wants `species`",
		"sheet core { thick 1/4 }":          "`sheet` wants `kind`",
		"joint corner thick 1/4":            "`joint` wants a kind of joint",
		"climate { shop 66F }":              "`shop` wants",
		"joint corner tennon":               "did you mean `tenon`?",
		"set \"fronts\" { agree wide }":     "`set` wants `parts`",
		"part one { of oak ; joint dowel }": "",
	} {
		_, faults := resolve(shelfFor(t, said, declares(t, said)) + said)
		if wants == "" && len(faults) == 0 {
			continue
		}
		if len(faults) != 1 || wants == "" || !strings.Contains(faults[0].Message, wants) {
			t.Errorf("%s: want %q, not %v", said, wants, faults)
		}
	}
}

// A joint takes what its kind takes, and leaves the rest to the word around it.
func TestJointTakesWhatItsKindTakes(t *testing.T) {
	p := read(t, `frame door {
  wide 20 ; high 30 ; thick 3/4
  across { panel field joint rabbet 1/4 x 6mm gap 1/8 }
}`)
	for panel := range AllOf[*Panel](p) {
		j := panel.Joint
		if j.Kind.Is != Rabbet || j.Rabbet.Across.Length != wood.Inch/4 || j.Rabbet.Deep.Length != 6*wood.Millimetre {
			t.Errorf("the rabbet is %+v", j.Rabbet)
		}
		if j.Gap.Said() || panel.Gap.Deep.Length != wood.Inch/8 {
			t.Errorf("the gap went to the joint, not to the panel")
		}
	}
	for said, into := range map[string]wood.Length{
		"joint lip rabbet 3/8":      3 * wood.Inch / 8,
		"joint lip rabbet deep 3/8": 3 * wood.Inch / 8,
	} {
		if j := read(t, said).JointNamed[0]; j.Rabbet.Across.Length != into || j.Rabbet.Deep.Said() {
			t.Errorf("%s: into the thickness is %v", said, j.Rabbet.Across)
		}
	}
	if j := read(t, "joint slot dado wide 23/32").JointNamed[0]; !j.SlotWide.Said() || j.Wide.Said() {
		t.Errorf("the width of a dado is that of its slot")
	}
	for _, said := range []string{"joint wrong tenon slope 1:7", "joint wrong stub long 1", "joint wrong dovetail 1/4", "joint wrong mitre mortise deep 1"} {
		if _, faults := resolve(said); len(faults) != 1 || faults[0].Rule != UnknownWord && faults[0].Rule != WrongValue {
			t.Errorf("%s: %v", said, faults)
		}
	}
}

func TestSaidOnce(t *testing.T) {
	for _, said := range []string{
		"climate { shop 8% } ; climate { dry 6% }",
		"shop { kerf 1/8 } ; shop { trim 0 }",
		"wood oak { sawn flat ; species \"white oak\" ; sawn quarter }",
		"part leg { size 28 x 2 x 2 ; joint butt ; joint tenon long 1 }",
		"part leg { size 28 x 2 x 2 ; load 40psf ; load 20psf }",
	} {
		if _, faults := resolve(said); len(faults) != 1 || faults[0].Rule != GivenTwice {
			t.Errorf("%s: %v", said, faults)
		}
	}
}

// reads fails if a line, in a plan round it and beside what it names, raises a finding.
func reads(t *testing.T, what, plan, example string) {
	t.Helper()
	text := fmt.Sprintf(plan, example)
	text = shelfFor(t, text, declares(t, text)) + text + "\n"
	if _, faults := resolve(text); len(faults) > 0 {
		t.Errorf("the example of `%s` raises %q:\n%s", what, faults[0].Message, text)
	}
}

// declares is the name that a line at the top of a file gives, or the word of one that
// stands once; "" for others.
func declares(t *testing.T, line string) string {
	s := parseLine(t, line)
	if len(s.Values) > 0 {
		v := s.Values[0]
		if v.Op == lang.Sized {
			v = v.Args[0]
		}
		if v.Op == lang.Name {
			return s.Word.Text + " " + v.Text
		}
	}
	return s.Word.Text
}

// shelfFor is what a text names of the shelf in fixtures, but for what it declares itself.
func shelfFor(t *testing.T, text, but string) string {
	const file = "../../fixtures/plan/words.plan"
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	tree, _ := lang.Parse(diag.NewFile(file, string(source)))
	taken := map[int]bool{}
	shelf := ""
	for again := true; again; {
		again = false
		for i, s := range tree.Body {
			line := s.Span.Text()
			name := declares(t, line)
			_, named, _ := strings.Cut(name, " ")
			if s.Word.Text == "shop" {
				named = "bar"
			}
			if taken[i] || name == but || !regexp.MustCompile(`(^|[^\w"-])`+named+`($|[^\w"-])`).MatchString(text+shelf) {
				continue
			}
			taken[i], again = true, true
			shelf += line + "\n"
		}
	}
	return shelf
}

func parseLine(t *testing.T, text string) *lang.Statement {
	t.Helper()
	tree, faults := lang.Parse(diag.NewFile("example.plan", text))
	if len(faults) > 0 || len(tree.Body) == 0 {
		t.Fatalf("%q cannot be read: %v", text, faults)
	}
	return tree.Body[0]
}

func resolve(text string) (*Plan, []diag.Finding) {
	tree, faults := lang.Parse(diag.NewFile("test.plan", text))
	p, more := Resolve(tree, func(_ *diag.File, name string) (*diag.File, error) { return diag.NewFile(name, ""), nil })
	return p, append(faults, more...)
}

func read(t *testing.T, text string) *Plan {
	t.Helper()
	p, faults := resolve(text)
	for _, f := range faults {
		t.Errorf("%s\nraises: %s", text, f.Message)
	}
	return p
}

// Makers give a force as a weight; a plan keeps it in newtons. 4 lb press with 17.79 N:
// 4 x 0.45359237 kg x 9.80665 m/s2.
func TestForces(t *testing.T) {
	for said, newtons := range map[string]float64{"4lb": 17.793, "20N": 20, "2 * 2lb": 17.793} {
		pull := read(t, "latch ball { pull "+said+" at 1/16 }").Latches[0].Pull
		if got := pull.Force; got.Dim != lang.Force || math.Abs(got.Value-newtons) > 0.001 {
			t.Errorf("pull %s is %v N, not %v", said, got.Value, newtons)
		}
	}
}

// A leaf of boards says which way its grain runs, and a door may be lifted out or held by several stays.
func TestLeafSays(t *testing.T) {
	p := read(t, `wood ash { species "white ash" ; sawn flat }
stay arm { lid 7 }
case c {
  of ash 3/4 ; wide 30 ; high 20 ; deep 16
  each door { leaf ash 3/4 grain across ; fit inset ; reveal 1/8 }
  across { side l ; door a { hang lift-out } ; divider m ; door b { hang top ; grain down ; stay arm count 2 } ; side r }
}`)
	var doors []*Door
	for d := range AllOf[*Door](p) {
		doors = append(doors, d)
	}
	if a := doors[0]; a.Hang.Is != "lift-out" || a.Leaf.GrainSaid.Is != "across" {
		t.Errorf("the first is hung %q, its grain %q", a.Hang.Is, a.Leaf.GrainSaid.Is)
	}
	if _, swings := doors[0].Swing(); swings {
		t.Error("what is lifted out does not swing")
	}
	if b := doors[1]; b.Leaf.GrainSaid.Is != "down" || len(b.Stays) != 1 || b.Stays[0].Stay == nil || b.Stays[0].Count.Or(1) != 2 {
		t.Errorf("the second: %+v, %+v", b.Leaf, b.Stays)
	}
}
