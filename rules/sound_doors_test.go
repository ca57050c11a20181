package rules_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

// TestSoundDoorsAreSilent hangs ordinary doors of many sizes, inset and overlay, in both hands, singly and in
// pairs, with the hardware that is usual for them: nothing is found in any of them.
func TestSoundDoorsAreSilent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"framed", "slab", "overlay", "shared", "pair", "knife", "flap", "lipped", "lid", "inset lid"}).Draw(t, "kind")
		text := soundHung(name, rapid.SampledFrom([]string{"left", "right"}).Draw(t, "hang"),
			sixteenths(t, "wide", 10*16, 22*16), sixteenths(t, "high", 14*16, 29*16))
		if c := example(text); len(c.found) > 0 {
			t.Fatalf("%s\n%s", render(c.found), text)
		}
	})
}

// soundHung is a cupboard with doors of one kind, each in an opening so wide and high.
func soundHung(kind, hang string, wide, high float64) string {
	other := map[string]string{"left": "right", "right": "left"}[hang]
	doors, supplies, list := "", "", "across { side left ; %s ; side right }"
	switch kind {
	case "framed":
		supplies = "hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 ; carries 20lb ; opens 180deg }\nlatch ball { kind ball ; throw 1/4 ; pull 6lb }\n" + leafFrame("3/4")
		doors = "door only { leaf leaf-frame ; fit inset ; reveal 3/32 ; hang " + hang + " ; hinge brass in-line ; latch ball at 6 ; opens 110deg }"
	case "lipped":
		supplies = "hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 3/16 }\nlock till { kind mortise ; throw 3/8 ; body 1 1/2 x 1 1/4 x 3/8 ; bolt 1/2 ; keeper deep 7/16 high 1 }\n" + leafFrame("7/8")
		doors = "door only { leaf leaf-frame ; fit inset ; reveal 1/8 ; hang " + hang + " ; hinge brass in-line ; lock till at 7 keeper 7 }"
	case "slab":
		supplies = "hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 3/16 }\ncatch roller { kind roller ; throw 3/16 ; pull 4lb }\n"
		doors = "door only { leaf ply ; fit inset ; reveal 3/32 ; hang " + hang + " ; hinge brass ends 3 ; catch roller at 6 ; leans 1lb at 6 }"
	case "overlay":
		supplies = "hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 4mm ; plate 0 ; fixings 45mm x 9.5mm ; opens 110deg ; covers 17mm at rim 4mm plate 0 }\n"
		doors = fmt.Sprintf("door only { leaf ply ; fit overlay 5/8 ; hang %s ; hinge cup at 4, %.4f }", hang, high-4)
	case "shared":
		supplies = "hinge half { kind cup ; bore 35mm ; deep 12.5mm ; rim 4mm ; plate 0 ; crank 8mm }\n"
		doors = fmt.Sprintf("door near %.4f { leaf ply ; fit overlay 11/32 ; hang %s ; hinge half at 4, %.4f } ; divider middle ; door far { leaf ply ; fit overlay 11/32 ; hang %s ; hinge half at 4, %.4f }",
			wide, hang, high-4, other, high-4)
	case "pair":
		supplies = "hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 3/16 }\nlatch ball { kind ball ; throw 1/4 ; pull 6lb }\nbolt flush { thick 1/4 ; long 3 }\n"
		doors = "door near { leaf ply ; fit inset ; reveal 3/32 ; hang left ; active ; hinge brass ends 3 ; latch ball at 6 } ; door far { leaf ply ; fit inset ; reveal 3/32 ; hang right ; hinge brass ends 3 ; bolt flush on head }"
		wide *= 2
	case "knife":
		supplies = "hinge knife { kind knife ; pin 1/4 x 5/16 }\n"
		doors = "door only { leaf ply ; fit inset ; reveal 1/16 hinge 5/32 ; hang " + hang + " ; hinge knife count 2 }"
	case "flap":
		supplies = "hinge brass { kind butt ; high 2 ; wide 1 1/8 ; knuckle 3/16 }\n"
		doors = "down { top roof ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang bottom ; hinge brass ends 2 } ; bottom floor }"
	case "lid":
		supplies = "wood oak { species \"white oak\" ; sawn quarter }\nhinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }\nstay soft { lid 4 ; case 1 x 4 ; shut 4 ; open 9 ; holds 120inlb }\n"
		doors = "open bay"
		list = "down { lid cover { of oak 3/4 ; over ends 1/2 front 1/2 back 1/2 ; hang back ; opens 95deg ; hinge brass ends 2 ; stay soft count 2 } ; across { side left ; %s ; side right } ; bottom floor }"
	case "inset lid":
		supplies = "wood oak { species \"white oak\" ; sawn quarter }\nhinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 95deg }\n"
		doors = "behind { front face ; down { lid cover { of oak 3/4 ; fit inset ; reveal 1/16 bottom 5/32 ; hang back ; hinge brass ends 2 } ; open bay ; bottom floor } ; front rear }"
	}
	across := wide + 1.5
	if kind == "shared" {
		across = 2*wide + 2.25
	}
	return `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
` + supplies + fmt.Sprintf(`case cupboard {
  of ply
  wide %.4f ; high %.4f ; deep 12
  `+list+`
}
`, across, high, doors)
}

// leafFrame is a leaf of sticks and a panel, so thick.
func leafFrame(thick string) string {
	return `wood oak { species "white oak" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
frame leaf-frame {
  of oak
  thick ` + thick + `
  joint tenon thick 1/4 long 1 1/4
  across {
    stile hinge-side 2 1/4
    down { rail head 2 1/4 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 3 }
    stile latch-side 2 1/4
  }
}
`
}
