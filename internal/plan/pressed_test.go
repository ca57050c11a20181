package plan

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// A layup that is written face to back and back again never warps, in inches or in millimetres,
// whatever its plies are; and the same layup in the other unit does the same.
func TestMirroredLayupsStayFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.SliceOfN(drawPly(), 1, 4).Draw(t, "half")
		mirrored := slices.Clone(half)
		slices.Reverse(mirrored)
		moisture := rapid.Float64Range(4, 16).Draw(t, "moisture")
		for _, unit := range []string{"in", "mm"} {
			if w := warpOf(t, unit, append(slices.Clone(half), mirrored...), moisture); w.Worst() > wood.Millimetre/1000 {
				t.Fatalf("warps %v", w)
			}
		}
		inch, metric := warpOf(t, "in", half, moisture), warpOf(t, "mm", half, moisture)
		if off := (inch.Worst() - metric.Worst()).Abs(); off > wood.Millimetre/1000+inch.Worst()/100_000 {
			t.Fatalf("%v in inches, %v in millimetres", inch, metric)
		}
	})
}

// A layup that is written with every ply twice as thick curves half as much.
func TestThickerLayupsCurveLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := rapid.SliceOfN(drawPly(), 1, 6).Draw(t, "plies")
		thicker := slices.Clone(plies)
		for i := range thicker {
			thicker[i].thick *= 2
		}
		moisture := rapid.Float64Range(4, 16).Draw(t, "moisture")
		for _, unit := range []string{"in", "mm"} {
			want, got := warpOf(t, unit, plies, moisture), warpOf(t, unit, thicker, moisture)
			for _, pair := range [][2]wood.Length{{want.Bow, got.Bow}, {want.Cup, got.Cup}, {want.Twist, got.Twist}} {
				if off := (pair[0] - 2*pair[1]).Abs(); off > wood.Millimetre/1000+want.Worst()/100_000 {
					t.Fatalf("%v, twice as thick %v", want, got)
				}
			}
		}
	})
}

// drawnPly is a ply of a test, its thickness in 32nds of an inch.
type drawnPly struct {
	of    string
	run   string
	thick int
	at    float64
}

func drawPly() *rapid.Generator[drawnPly] {
	return rapid.Custom(func(t *rapid.T) drawnPly {
		return drawnPly{
			of:    rapid.SampledFrom([]string{"cherry", "oak"}).Draw(t, "of"),
			run:   rapid.SampledFrom([]string{"along", "across", "angle 30deg"}).Draw(t, "run"),
			thick: rapid.IntRange(1, 24).Draw(t, "thick"),
			at:    float64(rapid.IntRange(6, 12).Draw(t, "at")),
		}
	})
}

// warpOf is how a layup warps over 30 x 18 in, written in a unit.
func warpOf(t *rapid.T, unit string, plies []drawnPly, moisture float64) wood.Warp {
	var b strings.Builder
	fmt.Fprintf(&b, "units %s\nwood cherry { species \"black cherry\" ; sawn flat }\nwood oak { species \"white oak\" ; sawn quarter }\nlayup board {\n", unit)
	for _, ply := range plies {
		thick := fmt.Sprintf("%d/32", ply.thick)
		if unit == "mm" {
			thick = fmt.Sprintf("%.5f", float64(ply.thick)*25.4/32)
		}
		fmt.Fprintf(&b, "  ply %s %s thick %s at %g%%\n", ply.of, ply.run, thick, ply.at)
	}
	b.WriteString("}\n")
	tree, unread := lang.Parse(diag.NewFile("layup.plan", b.String()))
	p, unresolved := Resolve(tree, nil)
	if len(unread)+len(unresolved) > 0 {
		t.Fatalf("%v %v in\n%s", unread, unresolved, b.String())
	}
	layup, ok := p.Pressed(p.Materials[2])
	laminate, known := layup.At(moisture)
	strain, solved := laminate.Free()
	if !ok || !known || !solved {
		t.Fatalf("not worked out:\n%s", b.String())
	}
	return strain.Warp(30*wood.Inch, 18*wood.Inch)
}
