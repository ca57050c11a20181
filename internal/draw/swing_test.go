package draw_test

import (
	"strings"
	"testing"

	"plancheck/internal/draw"
	"plancheck/internal/plan"
)

// What a leaf comes near to is said beside the drawing. By hand: the pin stands 3 before the face and 1 beyond the edge, the back
// corner of the leaf, 400 x 20, goes round it at 401.66, and the corner of the divider is 403.01 from it. The wall is 26 beyond the
// pin: 401 sin a - 3 cos a = 26, so that the front corner meets it at 90 + 4.1 degrees.
func TestSwingSaysWhatItMeets(t *testing.T) {
	const top = `plan "Cupboard" { units mm ; tape 0.1 }
climate { shop 8% ; dry 6% ; humid 11% }
wood ash { species "white ash" ; sawn quarter }
hinge brass { kind butt ; high 60 ; wide 35 ; knuckle 6 ; opens 110deg }
`
	for name, c := range map[string]struct{ text, said string }{
		"an inset leaf passes the divider": {
			top + `case box { of ash 20 ; wide 444 ; high 600 ; deep 300
  across { side left ; door one { leaf ash 20 ; fit inset ; reveal 2 ; hang left ; hinge brass ends 60 } ; side right } }`,
			`comes within ≈ 1.4 of side "right", open by 3 degrees`,
		},
		"a leaf meets the wall": {
			top + `case box { of ash 20 ; wide 444 ; high 600 ; deep 300 ; wall left 5
  across { side left ; door one { leaf ash 20 ; fit inset ; reveal 2 ; hang left ; hinge brass ends 60 } ; side right } }`,
			`meets the wall when it is open by 94 degrees`,
		},
		"a leaf that laps turns into the next one": {
			top + `case box { of ash 18 ; wide 1000 ; high 600 ; deep 400
  across { side left
    door one { leaf ash 20 ; fit overlay 8 ; hang left ; hinge brass ends 60 }
    divider middle
    door two { leaf ash 20 ; fit overlay 8 ; hang left ; hinge brass ends 60 }
    side right } }`,
			`meets door "one" when it is open by 6 degrees`,
		},
	} {
		said := ""
		for d := range plan.AllOf[*plan.Door](piece(c.text)) {
			if drawing, ok := draw.SwingOf(piece(c.text), d); ok {
				said += drawing.About
				if !strings.Contains(string(drawing.SVG), "degrees") {
					t.Errorf("%s: the drawing does not say it", name)
				}
			}
		}
		if !strings.Contains(said, c.said) {
			t.Errorf("%s: %s", name, said)
		}
	}
}
