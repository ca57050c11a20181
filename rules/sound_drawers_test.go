package rules_test

// Sound drawers of any size, on any slides and on wood, stay silent; with one figure slipped the right
// rule says so.

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/rules"
)

var hung = map[string]func(*rapid.T) drawn{"side-mount": onSideMounts, "undermount": onUndermounts, "runners": onWood, "behind doors": behindDoors}

// ofDrawers is all that is found about drawers, lengths and joints, and every error.
func ofDrawers(text string) (found []diag.Finding) {
	for _, f := range example(text).found {
		if rules.Find(f.Rule).Group == rules.Drawers || inJoints(f.Rule) || f.Severity == diag.Error {
			found = append(found, f)
		}
	}
	return found
}

func TestSoundDrawers(t *testing.T) {
	for name, draw := range hung {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				text := draw(t).say(rapid.Bool().Draw(t, "metric"))
				if found := ofDrawers(text); len(found) > 0 {
					t.Fatalf("%s\n%s", render(found), text)
				}
			})
		})
	}
}

func TestOneDrawerSlipped(t *testing.T) {
	for name, draw := range hung {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				d := draw(t)
				s := rapid.SampledFrom(d.slips).Draw(t, "slip")
				d.sizes[s.size] = s.to
				text := d.say(rapid.Bool().Draw(t, "metric"))
				found := ofDrawers(text)
				if len(found) == 0 {
					t.Fatalf("%s is silent\n%s", s.want, text)
				}
				for _, f := range found {
					line, _ := f.Span.Position()
					if said := strings.Split(text, "\n")[line-1]; f.Rule != s.want || !strings.Contains(said, s.at) {
						t.Fatalf("want %s at %q\n%s\n%s", s.want, s.at, render(found), text)
					}
				}
			})
		})
	}
}

// nest is a case of one drawer.
func nest(drawer string) string {
	return `case nest {
  of ash 3/4 ; wide %outside% ; high %over% ; deep %deep% ; joint dado deep 1/4
  across {
    side left
    down {
      top lid
      drawer one {
` + drawer + `      }
      bottom floor
    }
    side right
  }
}
`
}

// opening draws the sizes of a case round an opening, and of a slide that goes into it.
func opening(t *rapid.T) (sizes map[string]float64, wide, high, slide float64) {
	wide, high = sixteenths(t, "wide", 160, 480), sixteenths(t, "high", 56, 160)
	slide = float64(rapid.IntRange(10, 24).Draw(t, "slide"))
	return map[string]float64{"outside": wide + 1.5, "over": high + 1.5, "deep": slide + 1.25, "slide": slide, "long": slide}, wide, high, slide
}

func onSideMounts(t *rapid.T) drawn {
	sizes, wide, high, slide := opening(t)
	room := rapid.SampledFrom([]float64{0.5, 17.0 / 32}).Draw(t, "room")
	fit := rapid.SampledFrom([]string{"fit inset ; reveal 3/32", "fit overlay 3/8"}).Draw(t, "fit")
	sizes["room"], sizes["box"], sizes["side"], sizes["groove"], sizes["up"] = room, wide-2*room, high-0.5, 0.25, 0.5
	return drawn{
		text: "slide ball { kind side-mount ; long %slide% ; room %room% ; carries 200lb }\n" + nest(`
        of ash 1/2 ; front ash 3/4 applied ; `+fit+` ; slide ball
        corner front dovetail slope 1:7 ; corner back dado deep 1/4
        wide %box%
        high %side%
        long %long%
        bottom thin groove 1/4 x %groove% up %up%
`),
		sizes: sizes,
		slips: []slip{
			{"box", wide - 2*room + 0.25, "side-slide-width", "wide"},
			{"box", wide - 2*room - 0.25, "side-slide-width", "wide"},
			{"side", high + 0.25, "drawer-too-large", "high"},
			{"groove", 0.375, "side-breaks-at-groove", "groove"},
			{"up", 0.1875, "side-breaks-at-groove", "up"},
			{"long", slide - 1, "slide-too-long", "slide ball"},
			{"long", slide + 2, "drawer-too-large", "long"},
		},
	}
}

func onUndermounts(t *rapid.T) drawn {
	sizes, wide, high, slide := opening(t)
	side := rapid.SampledFrom([]float64{0.5, 0.625}).Draw(t, "side")
	sizes["thick"], sizes["box"], sizes["side"], sizes["up"] = side, wide-1.625+2*side, high-0.8125, 0.5
	return drawn{
		text: "slide under { kind undermount ; long %slide% ; less 1 5/8 ; high-less 13/16 ; under 1/2 }\n" + nest(`
        of ash %thick% ; front ash 3/4 applied ; fit inset ; reveal 3/32 ; slide under
        corner front dovetail slope 1:7 ; corner back dado deep 1/4
        wide %box%
        high %side%
        long %long%
        bottom thin groove 1/4 x 1/4 up %up%
`),
		sizes: sizes,
		slips: []slip{
			{"box", sizes["box"] + 0.125, "under-slide-width", "wide"},
			{"box", sizes["box"] - 0.125, "under-slide-width", "wide"},
			{"side", high - 0.5, "slide-height", "high"},
			{"up", 0.375, "bottom-low", "up"},
			{"long", slide - 1, "slide-too-long", "slide under"},
		},
	}
}

func onWood(t *rapid.T) drawn {
	wide, deep := sixteenths(t, "wide", 160, 320), sixteenths(t, "deep", 224, 320)
	high := sixteenths(t, "high", 56, 128)
	return drawn{
		text: nest(`
        of ash 1/2 ; front ash 3/4 ; fit inset ; reveal 3/32 ; runner ash ; stop
        corner front dovetail slope 1:7 lap 1/4 ; corner back dado deep 1/4
        wide %box%
        high %side%
        deep %box-deep%
        bottom thin groove 1/4 x 1/4 up 1/2
`),
		sizes: map[string]float64{
			"outside": wide + 1.5, "over": high + 1.5, "deep": deep + 0.5, "box": wide - 1.0/16, "side": high - 0.25, "box-deep": deep,
		},
		slips: []slip{
			{"box", wide - 0.1875, "runner-play", "wide"},
			{"side", high, "drawer-swells-shut", "high"},
			{"box-deep", deep + 1, "drawer-too-large", "deep"},
			{"box-deep", wide * 0.55 / 1.2, "drawer-racks", "drawer one"},
		},
	}
}

// behindDoors is a drawer between two doors that open at a right angle, or somewhat more.
func behindDoors(t *rapid.T) drawn {
	thick, knuckle := sixteenths(t, "thick", 10, 18), sixteenths(t, "knuckle", 3, 8)
	return drawn{
		text: `slide ball { kind side-mount ; long 16 ; room 1/2 }
hinge pin-hinge { kind butt ; knuckle %knuckle% ; opens 90deg }
sheet leaf { kind plywood ; species "yellow birch" ; thick 3/4 ; actual %thick% ; emission "TSCA Title VI" }
handle bow { projects 1 }
case press {
  of ash 3/4 ; wide 31 1/2 ; high 7 1/2 ; deep 22 ; joint dado deep 1/4
  each door { leaf leaf ; fit inset ; reveal 1/16 meeting 1/8 ; hinge pin-hinge }
  across {
    side left
    down {
      top lid
      behind {
        across { door near { hang left } ; door far { hang right } }
        space %space%
        across {
          space %beside%
          drawer one {
            of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/16 ; slide ball
            corner front dovetail slope 1:7 ; corner back dado deep 1/4
            handle bow centred
          }
          space %beside%
        }
      }
      bottom floor
    }
    side right
  }
}
`,
		// The corner stands T + p - e in from its own edge, and a gap of 1/16 more; the front stands 1/16 in its opening.
		sizes: map[string]float64{"thick": thick, "knuckle": knuckle, "space": 1, "beside": thick + knuckle/2 - 1.0/32 + 1.0/16 + 1.0/8 - 1.0/16},
		slips: []slip{
			{"beside", thick - 1.0/8, "drawer-behind-door", "drawer one"},
			{"space", 3.0 / 4, "handle-behind-door", "handle bow"},
		},
	}
}
