package report_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/internal/wood"
)

// The pieces of these tests are put together by hand, so that each figure of a list can be
// read off the test.

func in(n float64) plan.Length {
	return plan.Length{Length: wood.Length(n * float64(wood.Inch)), How: plan.Derived}
}

func mm(n float64) plan.Length {
	return plan.Length{Length: wood.Length(n * float64(wood.Millimetre)), How: plan.Derived}
}

func size(long, wide, thick plan.Length) plan.Size3 {
	return plan.Size3{Long: long, Wide: wide, Thick: thick}
}

func stuff(m *plan.Material) plan.Stuff {
	return plan.Stuff{Material: plan.Ref[plan.Material]{Name: m.Name.Text, To: m}}
}

func material(name string) *plan.Material {
	return &plan.Material{Name: plan.Name{Text: name}, Kind: plan.Solid}
}

func item(a *plan.Assembly, word, name string) plan.Item {
	return plan.Item{Word: word, Name: plan.Name{Text: name}, In: a}
}

// lay puts things into an assembly's one list.
func lay(a *plan.Assembly, nodes ...plan.Node) {
	a.Root = &plan.List{Item: item(a, "across", ""), Items: nodes}
	for _, n := range nodes {
		if m, ok := n.(*plan.Member); ok {
			a.Members = append(a.Members, m)
		}
	}
}

func member(a *plan.Assembly, word, name string, grain, flat plan.Axis, s plan.Size3) *plan.Member {
	m := &plan.Member{Shape: new(plan.Shape), Item: item(a, word, name), Grain: grain, Flat: flat, Size: s}
	if a != nil {
		m.Of = a.Of
	}
	return m
}

func times(n int) plan.Count { return plan.Count{N: n, How: plan.Written} }

func edging(edge string, of *plan.Material, thick plan.Length) *plan.Edging {
	strip := stuff(of)
	strip.Said = thick
	return &plan.Edging{Edge: plan.Choice{Is: edge}, Of: strip}
}

// cupboard is a case with an edged shelf, two doors that share one frame, a slab door, a
// drawer, a back and a pane; a table top with breadboard ends; and legs that two
// frames share.
func cupboard() *plan.Plan {
	oak, ply, cherry := material("oak"), material("ply"), material("cherry")

	leaf := &plan.Assembly{Name: plan.Name{Text: "leaf-frame"}, Kind: plan.Frame, Pair: plan.Flag{On: true}, Of: stuff(oak)}
	lay(leaf,
		member(leaf, "stile", "hinge-side", plan.Down, plan.Behind, size(in(22.6875), in(2.25), in(0.875))),
		member(leaf, "rail", "head", plan.Across, plan.Behind, size(in(16.8125), in(2.25), in(0.875))),
		&plan.Panel{
			Opening: plan.Opening{Item: item(leaf, "panel", "field")}, Of: stuff(cherry), Grain: plan.Down,
			Size: size(in(17.5), in(14.9), in(0.5)),
		},
		member(leaf, "rail", "foot", plan.Across, plan.Behind, size(in(16.8125), in(3), in(0.875))),
		member(leaf, "stile", "latch-side", plan.Down, plan.Behind, size(in(22.6875), in(2.25), in(0.875))),
	)

	carcass := &plan.Assembly{Name: plan.Name{Text: "carcass"}, Kind: plan.Case, Of: stuff(ply)}
	shelf := member(carcass, "shelf", "middle", plan.Across, plan.Down, size(in(23.5), in(11.5), mm(18)))
	shelf.Edging = []*plan.Edging{edging("front", cherry, in(0.25)), edging("ends", cherry, in(0.125))}
	lath := func(n string) *plan.Member {
		m := member(carcass, "slat", "lath-"+n, plan.Across, plan.Behind, size(in(23.5), in(3), in(0.5)))
		m.Row = "lath"
		return m
	}
	box := func(name string, s plan.Size3) *plan.BoxPart { return &plan.BoxPart{Name: name, Of: oak, Size: s} }
	lay(carcass,
		member(carcass, "side", "left", plan.Down, plan.Across, size(in(28), in(18), mm(18))),
		shelf, lath("1"), lath("2"), lath("3"),
		&plan.Door{Opening: plan.Opening{Item: item(carcass, "door", "left-door")}, Leaf: plan.Leaf{Frame: leaf}},
		&plan.Door{Opening: plan.Opening{Item: item(carcass, "door", "right-door")}, Leaf: plan.Leaf{Frame: leaf}},
		&plan.Door{
			Opening: plan.Opening{Item: item(carcass, "door", "flap")},
			Leaf:    plan.Leaf{Material: cherry, Thick: in(0.75), GrainSaid: plan.Choice{Is: "across"}},
			Size:    [2]plan.Length{in(20), in(9)},
		},
		&plan.Drawer{
			Opening: plan.Opening{Item: item(carcass, "drawer", "upper")},
			BackAs:  &plan.DrawerPart{Notch: plan.Pair{Across: in(1.375), Deep: in(0.5)}},
			Front:   box("front", size(in(17), in(5.875), in(0.75))),
			Left:    box("left", size(in(16), in(5.5), in(0.5))),
			Right:   box("right", size(in(16), in(5.5), in(0.5))),
			Back:    box("back", size(in(16.5), in(5), in(0.5))),
			Bottom:  &plan.BoxPart{Name: "bottom", Of: ply, Size: size(in(16.25), plan.Length{}, mm(6))},
		},
		&plan.Glass{
			Opening: plan.Opening{Item: item(carcass, "glass", "pane")}, Kind: plan.Choice{Is: "tempered"},
			Size: size(in(20), in(10), mm(4)),
		},
		member(carcass, "side", "right", plan.Down, plan.Across, size(in(28), in(18), mm(18))),
	)

	leg := &plan.Part{Member: *member(nil, "part", "leg", 0, 0, size(in(28.25), in(2), in(2)))}
	leg.Of, leg.Count = stuff(oak), times(4)
	ends := &plan.Assembly{Name: plan.Name{Text: "end-frame"}, Kind: plan.Frame, Count: times(2), Of: stuff(oak)}
	front := &plan.Assembly{Name: plan.Name{Text: "front-frame"}, Kind: plan.Frame, Of: stuff(oak)}
	post := func(a *plan.Assembly, name string) *plan.Member {
		m := member(a, "post", name, plan.Down, plan.Behind, leg.Size)
		m.Part = plan.Ref[plan.Part]{Name: "leg", To: leg}
		leg.Uses = append(leg.Uses, m)
		return m
	}
	lay(ends, post(ends, "left"), post(ends, "right"))
	lay(front, post(front, "left"), post(front, "right"))

	slab := member(nil, "top", "slab", 0, 0, size(in(60), in(34), in(1)))
	slab.Of, slab.Boards = stuff(oak), times(6)
	slab.Breadboard = &plan.Breadboard{Wide: in(3), Tongue: plan.Pair{Across: in(0.375), Deep: in(1)}}

	return &plan.Plan{
		Title:      "A cupboard, and a table beside it",
		Assemblies: []*plan.Assembly{carcass, leaf, ends, front},
		Parts:      []*plan.Part{leg},
		Tops:       []*plan.Member{slab},
	}
}

func rowOf(t *testing.T, p *plan.Plan, name string) report.Row {
	t.Helper()
	for _, r := range report.CuttingList(p) {
		if strings.Join(r.Names, ", ") == name {
			return r
		}
	}
	t.Fatalf("no row %q", name)
	return report.Row{}
}

func TestCuttingListOnPaper(t *testing.T) {
	p := cupboard()
	var b bytes.Buffer
	if err := report.CutListText(&b, p, report.CuttingList(p), 0); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "cutlist", b.Bytes())
}

func TestCuttingListForASpreadsheet(t *testing.T) {
	p := cupboard()
	var b bytes.Buffer
	if err := report.CutListCSV(&b, p, report.CuttingList(p)); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "cutlist-csv", b.Bytes())
	if _, err := csv.NewReader(&b).ReadAll(); err != nil { // every line has all its fields
		t.Error(err)
	}
}

func TestCuttingListForPrograms(t *testing.T) {
	p := cupboard()
	var b bytes.Buffer
	if err := report.CutListJSON(&b, p, report.CuttingList(p), 2); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "cutlist-json", b.Bytes())
}

func TestAPlanWithErrorsSaysSoOnTop(t *testing.T) {
	p := &plan.Plan{Title: "wild\x1b[2J", Tape: wood.Tape{Metric: true}, File: diag.NewFile("a.plan", "")}
	var b bytes.Buffer
	if err := report.CutListText(&b, p, nil, 1); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "cutlist-errors", b.Bytes())
}

// Both halves of a tongue reach into a breadboard end: 60 over all, ends 3, tongues 1 make
// a core of 56.
func TestBreadboard(t *testing.T) {
	p := cupboard()
	core, ends := rowOf(t, p, "slab"), rowOf(t, p, "breadboard ends")
	if core.Long.Length != 56*wood.Inch || core.Count != 1 {
		t.Errorf("the boards: %d of %v", core.Count, core.Long.Inches())
	}
	if ends.Long.Length != 34*wood.Inch || ends.Wide.Length != 3*wood.Inch || ends.Count != 2 || ends.Grain != "behind" {
		t.Errorf("the ends: %d of %v x %v, grain %s", ends.Count, ends.Long.Inches(), ends.Wide.Inches(), ends.Grain)
	}
}

// A finished width of 11 1/2 with a 1/4 lip is a core of 11 1/4.
func TestEdgingComesOffTheCore(t *testing.T) {
	r := rowOf(t, cupboard(), "middle")
	if !r.Edged || r.CoreWide.Length != in(11.25).Length || r.CoreLong.Length != in(23.25).Length {
		t.Errorf("core %v x %v", r.CoreLong.Inches(), r.CoreWide.Inches())
	}
}

// The plan states a size, the rest of it makes another: the list shows the one and says the
// other, unless they agree on the tape.
func TestAStatedSizeThatDoesNotWorkOutIsNoted(t *testing.T) {
	for _, c := range []struct {
		worked float64
		want   string
	}{
		{16.8125, "long as the plan states; works out as 16 13/16"},
		{14.3125 + 1.0/128, ""},
	} {
		a := &plan.Assembly{Name: plan.Name{Text: "leaf"}, Kind: plan.Frame}
		head := member(a, "rail", "head", plan.Across, plan.Behind, size(in(14.3125), in(2.25), in(0.875)))
		head.Worked = size(in(c.worked), in(2.25), plan.Length{})
		lay(a, head)
		r := rowOf(t, &plan.Plan{Assemblies: []*plan.Assembly{a}}, "head")
		if got := strings.Join(r.Notes, "; "); got != c.want || r.Long.Length != in(14.3125).Length {
			t.Errorf("%v: %v, noted %q", c.worked, r.Long.Inches(), got)
		}
	}
}

func TestHowManyToCut(t *testing.T) {
	frame := func(name string) *plan.Assembly {
		return &plan.Assembly{Name: plan.Name{Text: name}, Kind: plan.Frame}
	}
	stick := func(a *plan.Assembly) *plan.Member {
		return member(a, "rail", "stick", plan.Across, plan.Behind, size(in(1), in(1), in(1)))
	}
	placed := func(of *plan.Assembly) *plan.Placed {
		return &plan.Placed{Part: plan.Ref[plan.Assembly]{Name: of.Name.Text, To: of}}
	}
	for _, c := range []struct {
		name  string
		build func(inner, outer *plan.Assembly)
		want  int
	}{
		{"once", func(inner, outer *plan.Assembly) {}, 1},
		{"x 3", func(inner, outer *plan.Assembly) { inner.Count = times(3) }, 3},
		{"pair", func(inner, outer *plan.Assembly) { inner.Pair.On = true }, 2},
		{"x 2 pair", func(inner, outer *plan.Assembly) { inner.Count, inner.Pair.On = times(2), true }, 4},
		{"as many as are placed", func(inner, outer *plan.Assembly) {
			inner.Count = times(2)
			lay(outer, placed(inner), placed(inner))
		}, 2},
		{"spares", func(inner, outer *plan.Assembly) {
			inner.Count = times(5)
			lay(outer, placed(inner))
		}, 5},
		{"in each of three", func(inner, outer *plan.Assembly) {
			outer.Count = times(3)
			lay(outer, placed(inner), placed(inner))
		}, 6},
		{"placed in itself", func(inner, outer *plan.Assembly) {
			inner.Count = times(2)
			lay(outer, placed(inner))
			outer.Root.Items = append(outer.Root.Items, placed(outer))
		}, 2},
		{"more than anyone cuts", func(inner, outer *plan.Assembly) {
			outer.Count, inner.Count = times(1_000_000_000), times(1_000_000_000)
			lay(outer, placed(inner), placed(inner), placed(inner))
		}, 1_000_000_000},
	} {
		inner, outer := frame("inner"), frame("outer")
		lay(inner, stick(inner))
		c.build(inner, outer)
		p := &plan.Plan{Assemblies: []*plan.Assembly{outer, inner}}
		if got := rowOf(t, p, "stick").Count; got != c.want {
			t.Errorf("%s: %d to cut, want %d", c.name, got, c.want)
		}
	}
}
