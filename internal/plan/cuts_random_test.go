package plan_test

// What holds for the cuts of any sound frame: they lie inside their wood, a mirror image mirrors
// them, inches and millimetres agree, and nothing that meets is missed.

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// soundFrame draws a frame of any sizes and joints, and gives its text with so many units to an
// inch. It is built twice, the second time mirrored.
func soundFrame(t *rapid.T) func(unit float64) string {
	draw := func(label string, low, high int) float64 { // in 1/32 in
		return float64(rapid.IntRange(low, high).Draw(t, label)) / 32
	}
	wide, high, thick := draw("wide", 500, 1500), draw("high", 800, 2000), draw("thick", 24, 48)
	left, right := draw("left", 56, 128), draw("right", 56, 128)
	head, foot := draw("head", 80, 160), draw("foot", 80, 160)
	tenon, set, long, at := draw("tenon", 8, 12), draw("set", 4, 9), draw("long", 16, 40), draw("at", 20, 60)
	recess := draw("recess", 0, 2)
	grooved := rapid.Bool().Draw(t, "grooved")
	kind := rapid.SampledFrom([]string{"tenon", "haunched", "twin", "loose", "dowel", "half-lap", "bridle", "housing", "tongue"}).Draw(t, "kind")
	return func(unit float64) string {
		in := func(size float64) string { return fmt.Sprintf("%.6f", size*unit) }
		mortise := "mortise deep " + in(long+1.0/16)
		joint := map[string]string{
			"tenon":    fmt.Sprintf("tenon thick %s set %s long %s %s", in(tenon), in(set), in(long), mortise),
			"haunched": fmt.Sprintf("tenon thick %s set %s long %s haunch %s deep %s %s", in(tenon), in(set), in(long), in(0.5), in(0.375), mortise),
			"twin":     fmt.Sprintf("tenon thick %s long %s count 2 apart %s %s", in(tenon), in(long), in(0.5), mortise),
			"loose":    fmt.Sprintf("loose-tenon thick %s wide 1in long %s %s own %s", in(tenon), in(2*long), mortise, in(long)),
			"dowel":    fmt.Sprintf("dowel peg deep %s own %s at %s", in(0.625), in(0.75), in(at)),
			"half-lap": "half-lap",
			"bridle":   "bridle",
			"housing":  "housing deep " + in(0.25),
			"tongue":   fmt.Sprintf("tongue thick %s long %s groove deep %s", in(tenon), in(0.375), in(0.40625)),
		}[kind]
		middle := "space"
		if grooved {
			middle = fmt.Sprintf("panel field { of ash %s ; gap %s ; groove %s x %s }", in(0.25), in(0.0625), in(0.25), in(0.375))
		}
		return fmt.Sprintf(`wood ash { species "white ash" ; sawn flat }
dowel peg { thick 5/16in ; long 1 5/16in }
pattern leaf {
  frame it { of ash ; wide %s ; high %s ; thick %s ; joint %s
    across {
      stile left %s
      down { rail head %s ; %s ; rail foot %s { thick %s ; recess front %s } }
      stile right %s
    }
  }
}
build one from leaf
build two from leaf mirrored
`, in(wide), in(high), in(thick), joint, in(left), in(head), middle, in(foot), in(thick-recess), in(recess), in(right))
	}
}

// resolveRandom works out a random plan, in which nothing is wrong.
func resolveRandom(t *rapid.T, text string) *plan.Plan {
	p, found := resolveFiles(text, nil)
	if len(found) > 0 {
		t.Fatalf("%v\n%s", found, text)
	}
	return p
}

func TestCutsLieInsideTheirWood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := soundFrame(t)(1)
		p := resolveRandom(t, text)
		cuts := 0
		for c := range p.Cuts().All() {
			cuts++
			if !c.Known() {
				t.Fatalf("%s of %s has no place\n%s", cutLine(p, c), plan.PathOf(c.Use), text)
			}
			for f := plan.NearEnd; f <= plan.FarFace; f++ {
				if left := c.Wall(f); !left.Known() || wood.Under(left.Length, 0) {
					t.Fatalf("%s in %s comes out at its %s: %s\n%s", cutLine(p, c), plan.PathOf(c.Use), c.FaceName(f), p.Show(left.Length), text)
				}
			}
		}
		if cuts == 0 {
			t.Fatal("nothing is cut")
		}
	})
}

func TestMirrorMirrorsCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := soundFrame(t)(1)
		p := resolveRandom(t, text)
		all := things(p)
		for _, name := range []string{"left", "right", "head", "foot"} {
			m := all["one.it."+name].(*plan.Member)
			across := plan.Wide
			if m.Grain == plan.Across {
				across = plan.Long
			}
			drawn, mirrored := p.Cuts().In(m), p.Cuts().In(all["two.it."+name])
			if (drawn == nil) != (mirrored == nil) {
				t.Fatalf("%s is cut in one hand alone\n%s", name, text)
			}
			if drawn == nil {
				continue
			}
			left := slices.Clone(mirrored.Cuts)
			for _, c := range drawn.Cuts {
				want := c.At
				want[across].From = drawn.Size[across].Length - want[across].To()
				i := slices.IndexFunc(left, func(d *plan.Cut) bool { return d.Kind == c.Kind && samePlace(d.At, want) })
				if i < 0 {
					t.Fatalf("%s of %s is not mirrored\n%s", cutLine(p, c), name, text)
				}
				left = slices.Delete(left, i, i+1)
			}
			if len(left) > 0 {
				t.Fatalf("%s: %s of the mirror image is not drawn\n%s", name, cutLine(p, left[0]), text)
			}
		}
	})
}

// TestBothHandsOfATurnedFrame stands a frame at both sides of a case, the second as the mirror image of the
// first: what stands between them is cut into both alike.
func TestBothHandsOfATurnedFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string, low, high int) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, label)) / 16
		}
		joint := rapid.SampledFrom([]string{
			"tenon thick 1/4 set 1/8 long 1/2", "dowel peg deep 1/2 own 3/4 at 1/2, 1 set 1/4", "housing deep 1/4", "loose-tenon thick 1/4 wide 1 long 1 mortise deep 1/2 own 5/8",
		}).Draw(t, "joint")
		text := fmt.Sprintf(`wood ash { species "white ash" ; sawn flat }
dowel peg { thick 5/16 ; long 1 1/4 }
frame end { of ash ; thick %f ; across { stile front %f ; space ; stile back %f } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 14
  across { frame one part end
    behind { space %f ; down { open ; rail low 2 { thick 3/4 ; joint %s } ; open %f } ; space }
    frame two part end mirrored } }
`, draw("thick", 14, 24), draw("front", 56, 80), draw("back", 56, 80), draw("behind", 0, 40), joint, draw("up", 16, 160))
		p := resolveRandom(t, text)
		cuts := 0
		for path, thing := range things(p) {
			if !strings.HasPrefix(path, "end.") {
				continue
			}
			lines := cutsOf(p, thing)
			slices.Sort(lines)
			cuts += len(lines)
			for i := 0; i < len(lines); i += 2 {
				if i+1 == len(lines) || lines[i] != lines[i+1] {
					t.Fatalf("%s is not cut alike in both hands: %s\n%s", path, strings.Join(lines, "; "), text)
				}
			}
		}
		if cuts == 0 {
			t.Fatalf("nothing is cut into the frames\n%s", text)
		}
	})
}

func samePlace(a, b plan.Box) bool {
	for i := range a {
		if !wood.Same(a[i].From, b[i].From) || !wood.Same(a[i].Size, b[i].Size) {
			return false
		}
	}
	return true
}

func TestCutsInInchesAndMillimetres(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := soundFrame(t)
		inches, metric := resolveRandom(t, text(1)), resolveRandom(t, "units mm\n"+text(25.4))
		a, b := slices.Collect(inches.Cuts().All()), slices.Collect(metric.Cuts().All())
		if len(a) != len(b) {
			t.Fatalf("%d cuts in inches, %d in millimetres", len(a), len(b))
		}
		for i := range a {
			if a[i].Kind != b[i].Kind || !samePlace(a[i].At, b[i].At) {
				t.Fatalf("%s in inches, %s in millimetres\n%s", cutLine(inches, a[i]), cutLine(metric, b[i]), text(1))
			}
		}
	})
}

// TestNearMissesNothing compares the sweep with every pair, measured by stepping through both.
func TestNearMissesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := &plan.Blank{}
		for range rapid.IntRange(2, 30).Draw(t, "cuts") {
			c := &plan.Cut{In: b, For: plan.Purpose{End: new(plan.End)}}
			for d := range c.At {
				from, size := rapid.IntRange(0, 60).Draw(t, "from"), rapid.IntRange(1, 12).Draw(t, "size")
				if d == int(plan.Long) {
					from *= 5
				}
				c.At[d] = plan.Extent{From: wood.Length(from) * wood.Millimetre, Size: wood.Length(size) * wood.Millimetre, Placed: true, Sized: true}
			}
			b.Cuts = append(b.Cuts, c)
		}
		slices.SortStableFunc(b.Cuts, func(c, d *plan.Cut) int { return int(c.At[plan.Long].From - d.At[plan.Long].From) })
		within := wood.Length(rapid.IntRange(0, 20).Draw(t, "within")) * wood.Millimetre
		type pair struct{ a, b *plan.Cut }
		found := map[pair]bool{}
		for m := range b.Near(within) {
			found[pair{m.A, m.B}] = true
		}
		for i, c := range b.Cuts {
			for _, d := range b.Cuts[i+1:] {
				square := 0.0
				for k := range c.At {
					if gap := max(c.At[k].From-d.At[k].To(), d.At[k].From-c.At[k].To()).Millimetres(); gap > 0 {
						square += gap * gap
					}
				}
				near := square <= within.Millimetres()*within.Millimetres()
				if found[pair{c, d}] != near {
					t.Fatalf("%v and %v: found %t, within %v %t", c.At, d.At, found[pair{c, d}], within, near)
				}
			}
		}
	})
}

// TestRoundGaps holds the gap between round cuts, and between a round one and a square one,
// against sums on paper.
func TestRoundGaps(t *testing.T) {
	box := func(from, to [3]wood.Length) plan.Box {
		var b plan.Box
		for d := range b {
			b[d] = plan.Extent{From: from[d] * wood.Millimetre, Size: (to[d] - from[d]) * wood.Millimetre, Placed: true, Sized: true}
		}
		return b
	}
	end, other := plan.Purpose{End: new(plan.End)}, plan.Purpose{End: new(plan.End)}
	tests := []struct {
		name string
		a, b plan.Cut
		gap  wood.Length
	}{
		{
			"two holes of 10 side by side, 30 and 40 between their middles: 50 less 10",
			plan.Cut{At: box([3]wood.Length{0, 0, 0}, [3]wood.Length{10, 10, 20}), Round: true, Enters: plan.NearFace},
			plan.Cut{At: box([3]wood.Length{30, 40, 0}, [3]wood.Length{40, 50, 20}), Round: true, Enters: plan.FarFace},
			40 * wood.Millimetre,
		},
		{
			"a hole of 10 and a mortise whose corner is 3 and 4 from its middle: 5 less 5",
			plan.Cut{At: box([3]wood.Length{0, 0, 0}, [3]wood.Length{10, 10, 20}), Round: true, Enters: plan.NearFace},
			plan.Cut{At: box([3]wood.Length{8, 9, 0}, [3]wood.Length{30, 30, 20})},
			0,
		},
		{
			"a hole along and a hole across that pass each other at 2",
			plan.Cut{At: box([3]wood.Length{0, 0, 0}, [3]wood.Length{80, 10, 10}), Round: true, Enters: plan.NearEnd},
			plan.Cut{At: box([3]wood.Length{40, 0, 12}, [3]wood.Length{50, 30, 22}), Round: true, Enters: plan.NearEdge},
			2 * wood.Millimetre,
		},
	}
	for _, test := range tests {
		a, b := test.a, test.b
		a.For, b.For = end, other
		blank := &plan.Blank{Cuts: []*plan.Cut{&a, &b}}
		a.In, b.In = blank, blank
		for m := range blank.Near(wood.Metre) {
			if !wood.Same(m.Gap, test.gap) {
				t.Errorf("%s: %v, want %v", test.name, m.Gap, test.gap)
			}
		}
	}
}

// TestCutsOfAnyPlan takes lines out of the plans there are, and asks for all that can be asked.
func TestCutsOfAnyPlan(t *testing.T) {
	var plans []string
	filepath.WalkDir("../../fixtures", func(path string, d fs.DirEntry, err error) error {
		if err == nil && filepath.Ext(path) == ".plan" {
			if text, err := os.ReadFile(path); err == nil {
				plans = append(plans, string(text))
			}
		}
		return nil
	})
	look := func(text string) {
		p, _ := resolveFiles(text, nil)
		for c := range p.Cuts().All() {
			if c.In == nil || c.Kind.String() == "" || c.FaceName(c.Enters) == "" {
				panic("a cut without its blank, its kind or its face")
			}
			c.Span()
			c.Deep()
			for range c.Walls() {
			}
		}
		for _, b := range p.Cuts().Blanks {
			for m := range b.Near(wood.Inch) {
				if m.A.At[plan.Long].From > m.B.At[plan.Long].From {
					panic("a meeting out of order")
				}
			}
		}
	}
	for _, text := range plans {
		look(text)
	}
	rapid.Check(t, func(t *rapid.T) {
		lines := strings.SplitAfter(rapid.SampledFrom(plans).Draw(t, "plan"), "\n")
		for range rapid.IntRange(1, 4).Draw(t, "without") {
			i := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
			lines[i] = ""
		}
		look(strings.Join(lines, ""))
	})
}
