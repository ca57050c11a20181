package rules_test

// Sound runs of fronts that lap their case are silent, whatever stands beside what; with one lap slipped
// the right rule says so, at the front whose lap that is.

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
)

func TestSoundOverlaysAreSilent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := overlays(t).say(rapid.Bool().Draw(t, "metric"))
		if found := ofOverlays(text); len(found) > 0 {
			t.Fatalf("%s\n%s", render(found), text)
		}
	})
}

func TestOneLapSlipped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := overlays(t)
		s := rapid.SampledFrom(d.slips).Draw(t, "slip")
		d.sizes[s.size] = s.to
		text := d.say(rapid.Bool().Draw(t, "metric"))
		found := ofOverlays(text)
		if len(found) == 0 {
			t.Fatalf("%s is silent\n%s", s.want, text)
		}
		for _, f := range found {
			if f.Rule != s.want || !strings.HasPrefix(f.Subject, "base."+s.at) {
				t.Fatalf("want %s at %q\n%s\n%s", s.want, s.at, render(found), text)
			}
		}
	})
}

// ofOverlays is what is found, but for what nobody uses of the hinges and woods that every plan has.
func ofOverlays(text string) []diag.Finding {
	return slices.DeleteFunc(example(text).found, func(f diag.Finding) bool { return f.Rule == "unused-name" })
}

// overlays draws a base of several bays, each with a door, a pair, a stack of drawers, or a drawer over a door. Its
// fronts stand one gap apart, and end half of it short of its sides.
func overlays(t *rapid.T) drawn {
	const thick = 0.75
	gap := rapid.SampledFrom([]float64{1.0 / 16, 3.0 / 32, 1.0 / 8}).Draw(t, "gap")
	end, half := thick-gap/2, (thick-gap)/2
	high := sixteenths(t, "high", 24*16, 29*16)
	top := rapid.SampledFrom([]float64{1.0 / 8, 1.0 / 4, end}).Draw(t, "top")
	d := drawn{sizes: map[string]float64{
		"high": high + 2*thick, "top": top, "bottom": end, "end": end, "half": half, "low": 3, "up": high - 3, "upper": 5, "over": high - 5 - 3,
	}}
	kinds := rapid.SliceOfN(rapid.SampledFrom([]string{"left", "right", "pair", "stack", "over"}), 1, 4).Draw(t, "bays")
	over, bays := 0.0, ""
	for i, kind := range kinds {
		bay, wide := fmt.Sprintf("bay%d", i), sixteenths(t, "wide", 9*16, int(high-13)*16) // narrower than its hinges are apart
		sides := [2]string{"half", "half"}
		if i == 0 {
			sides[0] = "end"
		} else {
			bays += fmt.Sprintf("      divider before%d\n", i)
		}
		if i == len(kinds)-1 {
			sides[1] = "end"
		}
		for j, side := range []string{"left", "right"} {
			d.sizes[bay+side] = d.sizes[sides[j]]
		}
		d.sizes[bay+"gap"] = gap
		if kind == "pair" {
			wide *= 2
		}
		over += wide
		d.sizes[bay] = wide
		bays += soundBay(kind, bay, sides)
		d.slips = append(d.slips, slipsIn(kind, bay, sides, d.sizes)...)
	}
	d.sizes["wide"] = over + thick*float64(len(kinds)+1)
	d.text = `sheet board { kind plywood ; species "yellow birch" ; thick 3/4in ; actual 3/4in ; emission "TSCA Title VI" }
sheet bed { kind plywood ; species "yellow birch" ; thick 1/4in ; actual 1/4in ; emission "TSCA Title VI" }
hinge hend { kind cup ; bore 35mm ; deep 12mm ; rim 4mm ; plate 0 ; covers %end% at rim 4mm plate 0 }
hinge hhalf { kind cup ; bore 35mm ; deep 12mm ; rim 4mm ; plate 0 ; covers %half% at rim 4mm plate 0 }
slide ball { kind side-mount ; long 18in ; room 1/2in ; carries 200lb }
case base {
  of board ; wide %wide% ; high %high% ; deep 22in
  joint dado deep 1/4in
  each door leaf board
  each drawer {
    of board ; front board applied ; slide ball ; holds books
    corner front dado deep 1/4in ; corner back dado deep 1/4in ; bottom bed groove 1/4in x 1/4in up 1/2in
  }
  down {
    top roof
    across {
      side left
` + bays + `      side right
    }
    bottom floor
  }
}
`
	return d
}

// soundBay is what stands in one bay, each front on its own line.
func soundBay(kind, bay string, sides [2]string) string {
	laps := func(more string) string {
		return "fit overlay left %" + bay + "left% right %" + bay + "right%" + more + " ; reveal %" + bay + "gap%"
	}
	door := func(name, hang string, side int, more, at string) string {
		return "door " + name + " { fit overlay bottom %bottom% hinge %" + bay + hang + "%" + more + " ; reveal %" + bay + "gap% ; hang " + hang + " ; hinge h" + sides[side] + " at %low%, " + at + " }"
	}
	latch := func(side string) string { return " latch %" + bay + side + "%" }
	switch kind {
	case "left":
		return "      down %" + bay + "% { " + door(bay, "left", 0, latch("right")+" top %top%", "%up%") + " }\n"
	case "right":
		return "      down %" + bay + "% { " + door(bay, "right", 1, latch("left")+" top %top%", "%up%") + " }\n"
	case "pair":
		return "      across %" + bay + "% { " + door(bay+"-near", "left", 0, " top %top%", "%up%") + "\n" + door(bay+"-far", "right", 1, " top %top%", "%up%") + " }\n"
	case "stack":
		return "      down %" + bay + "% { drawer " + bay + "-upper { " + laps(" top %top%") + " }\ndrawer " + bay + "-middle { " + laps("") + " }\ndrawer " + bay + "-lower { " + laps(" bottom %bottom%") + " } }\n"
	}
	return "      down %" + bay + "% { drawer " + bay + "-upper %upper% { " + laps(" top %top%") + " }\n" + door(bay+"-door", "left", 0, latch("right"), "%over%") + " }\n"
}

// slipsIn are the laps of a bay that may be slipped: by one that a hinge gives alone its hinge edge, by one that
// runs into the next front the others.
func slipsIn(kind, bay string, sides [2]string, sizes map[string]float64) (all []slip) {
	hinged := map[string]bool{"left": kind == "left" || kind == "pair" || kind == "over", "right": kind == "right" || kind == "pair"}
	for i, side := range []string{"left", "right"} {
		size := bay + side
		switch {
		case hinged[side] && (kind != "over"): // of which the drawer above it has the same lap
			all = append(all, slip{size, sizes[size] - 1.0/8, "overlay-off-hinge", bay})
		case !hinged[side] && sides[i] == "half":
			all = append(all, slip{size, sizes[size] + 3.0/16, "fronts-collide", bay})
		}
	}
	if kind == "pair" || kind == "stack" || kind == "over" {
		all = append(all, slip{bay + "gap", 1.0 / 64, "fronts-collide", bay})
	}
	return all
}
