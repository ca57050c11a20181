package rules_test

// Sound pieces of any sizes, joined in every way, stay silent; with one figure slipped the right
// rule says so, on the line on which that figure stands.

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/lang"
	"plancheck/rules"
)

// drawn is a piece of random sizes: a text in which %NAME% stands for a size, and the slips that
// one figure of it may have.
type drawn struct {
	text  string
	sizes map[string]float64 // in inches
	slips []slip
}

// slip is one figure gone wrong.
type slip struct {
	size string
	to   float64
	want string // the rule that speaks, and no other
	at   string // what stands on the line on which it does
}

// say writes a piece in inches or in millimetres.
func (d drawn) say(metric bool) string {
	var names []string
	for name, size := range d.sizes {
		names = append(names, "%"+name+"%", fmt.Sprintf("%.6f", size))
	}
	text := soundWoods + strings.NewReplacer(names...).Replace(d.text)
	if !metric {
		return text
	}
	tree, _ := lang.Parse(diag.NewFile("metric.plan", text))
	return inMillimetres(tree)
}

// inJoints reports whether a rule is about lengths, joints or cuts.
func inJoints(rule string) bool {
	switch rules.Find(rule).Group {
	case rules.Lengths, rules.Tenons, rules.Joints, rules.Cuts:
		return true
	}
	return false
}

func ofJoints(text string) (found []diag.Finding) {
	for _, f := range example(text).found {
		if inJoints(f.Rule) || f.Severity == diag.Error {
			found = append(found, f)
		}
	}
	return found
}

var joined = map[string]func(*rapid.T) drawn{
	"blind tenons": blindTenons, "through tenons": throughTenons, "twin tenons": twinTenons, "stub tenons": stubTenons,
	"loose tenons": looseTenons, "dowels": dowels, "housings": housings, "back": rabbetedBack, "drawer": drawerCorners,
	"post": postOfTwo, "hinges": hungDoor, "fixing": fixedRunners, "lift-out": liftedOut, "lid": hungLid,
}

func TestSoundJoints(t *testing.T) {
	for name, draw := range joined {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				text := draw(t).say(rapid.Bool().Draw(t, "metric"))
				if found := ofJoints(text); len(found) > 0 {
					t.Fatalf("%s\n%s", render(found), text)
				}
			})
		})
	}
}

func TestOneFigureSlipped(t *testing.T) {
	for name, draw := range joined {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				d := draw(t)
				s := rapid.SampledFrom(d.slips).Draw(t, "slip")
				d.sizes[s.size] = s.to
				text := d.say(rapid.Bool().Draw(t, "metric"))
				found := ofJoints(text)
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

// blindTenons is a door whose end rails are haunched or shouldered, with a panel in a groove.
func blindTenons(t *rapid.T) drawn {
	thick, stile, rail := sixteenths(t, "thick", 16, 28), sixteenths(t, "stile", 36, 64), sixteenths(t, "rail", 40, 56)
	end := rapid.SampledFrom([]string{"haunch %inset%", "shoulder %inset%"}).Draw(t, "end")
	long := stile - stile/8 - 1.0/8
	return drawn{
		text: `frame leaf {
  of ash ; wide 30 ; high 40 ; thick %thick%
  joint tenon thick %tenon% long %long% mortise deep %deep%
  each panel { of thin ; groove 1/4 x %groove% ; glue edges }
  across {
    stile left %stile%
    down {
      rail head %rail% { cut %cut% ; joint tenon ` + end + ` }
      panel field
      rail foot %rail% { joint tenon ` + end + ` }
    }
    stile right %stile%
  }
}
`,
		sizes: map[string]float64{
			"thick": thick, "stile": stile, "rail": rail, "tenon": thick / 3, "long": long, "deep": long + 1.0/16,
			"inset": max(0.75, rail/3), "groove": 3.0 / 8, "cut": 30 - 2*stile + 2*long,
		},
		slips: []slip{
			{"deep", long, "tenon-bottoms", "mortise deep"},
			{"deep", long + 15.0/64, "mortise-depth", "mortise deep"},
			{"deep", stile - 1.0/16, "tenon-bottoms", "mortise deep"},
			{"deep", stile, "mortise-depth", "mortise deep"},
			{"tenon", thick * 0.6, "tenon-thickness", "joint tenon thick"},
			{"tenon", thick / 6, "tenon-thickness", "joint tenon thick"},
			{"cut", 30 - 2*stile, "rail-length", "cut"},
		},
	}
}

// throughTenons are as long as their stile is wide, and a little.
func throughTenons(t *rapid.T) drawn {
	stile, rail := sixteenths(t, "stile", 32, 64), sixteenths(t, "rail", 48, 62)
	return drawn{
		text: `frame leaf {
  of ash ; wide 30 ; high 40 ; thick 1
  joint tenon thick 3/8 through long %long%
  across {
    stile left %stile%
    down { space 4 ; rail head %rail% ; space ; rail foot %rail% ; space 4 }
    stile right %stile%
  }
}
`,
		sizes: map[string]float64{"stile": stile, "rail": rail, "long": stile + 1.0/16},
		slips: []slip{{"long", stile - 1.0/8, "through-tenon-flush", "long"}},
	}
}

// twinTenons stand beside each other in a wide rail.
func twinTenons(t *rapid.T) drawn {
	rail, shoulder := sixteenths(t, "rail", 144, 176), 0.5
	wide := (rail - 2*shoulder) / 3
	return drawn{
		text: `frame leaf {
  of ash ; wide 30 ; high 40 ; thick 1 1/4
  joint tenon thick %tenon% long 1 1/4 count 2 shoulder 1/2 apart %apart%
  across {
    stile left 3
    down { space 4 ; rail head %rail% ; space ; rail foot %rail% ; space 4 }
    stile right 3
  }
}
`,
		sizes: map[string]float64{"rail": rail, "apart": wide, "tenon": 3.0 / 8},
		slips: []slip{{"tenon", 3.0 / 16, "tenon-thickness", "joint tenon"}},
	}
}

// stubTenons fit in the groove that holds a glued sheet.
func stubTenons(t *rapid.T) drawn {
	deep := sixteenths(t, "deep", 6, 8)
	return drawn{
		text: `frame leaf {
  of ash ; wide 20 ; high 30 ; thick 3/4
  joint stub
  across {
    stile left %stile%
    down { rail head %stile% ; panel field { of thin ; groove 1/4 x %deep% ; glue edges ; wide %wide% } ; rail foot %stile% }
    stile right %stile%
  }
}
`,
		sizes: map[string]float64{"stile": 2, "deep": deep, "wide": 16 + 2*deep - 1.0/16},
		slips: []slip{{"wide", 16 + 2*deep + 1.0/4, "panel-size", "wide"}},
	}
}

// looseTenons stand in mortises of any depth in both parts.
func looseTenons(t *rapid.T) drawn {
	stile, own := sixteenths(t, "stile", 40, 64), sixteenths(t, "own", 18, 40)
	deep := stile*7/8 - 1.0/8
	thick := sixteenths(t, "thick", 16, 28)
	return drawn{
		text: `frame leaf {
  of ash ; wide 30 ; high 40 ; thick %thick%
  joint loose-tenon thick %tenon% wide 1 1/2 set %set% long %long% mortise deep %deep% own %own%
  across {
    stile left %stile%
    down { space 4 ; rail head 3 ; space ; rail foot 3 ; space 4 }
    stile right %stile%
  }
}
`,
		sizes: map[string]float64{
			"stile": stile, "thick": thick, "tenon": thick / 3, "set": thick / 3, "own": own, "deep": deep, "long": deep + own - 1.0/8,
		},
		slips: []slip{
			{"long", deep + own, "loose-tenon-bottoms", "long"},
			{"long", deep + own - 1.0/2, "loose-tenon-short", "long"},
			{"set", 1.0 / 16, "thin-wall", "set"},
			{"set", thick*2/3 + 1.0/16, "breaks-through", "set"},
		},
	}
}

// dowels hold a shelf to two sides.
func dowels(t *rapid.T) drawn {
	side := sixteenths(t, "side", 14, 20)
	return drawn{
		text: `case box {
  of ash %side% ; wide 24 ; high 30 ; deep 10
  across {
    side left
    down {
      open
      shelf one { joint dowel peg deep %deep% own %own% set %set% at %first%, 5, 9 }
      open
    }
    side right
  }
}
`,
		sizes: map[string]float64{"side": side, "deep": side - 1.0/4, "own": 2.0625 - (side - 1.0/4), "set": side / 2, "first": 1},
		slips: []slip{
			{"deep", side + 1.0/16, "breaks-through", "joint dowel"},
			{"first", 3.0 / 16, "breaks-through", "joint dowel"},
			{"set", 5.0 / 16, "thin-wall", "joint dowel"},
		},
	}
}

// housings hold shelves in two sides and a divider.
func housings(t *rapid.T) drawn {
	thick := sixteenths(t, "thick", 12, 18)
	return drawn{
		text: `case nest {
  of ash %thick% ; wide 40 ; high 30 ; deep 12 ; joint dado deep %deep%
  across {
    side left
    down { open ; shelf one ; open 12 }
    divider mid
    down { open ; shelf two ; open %at% }
    side right
  }
}
`,
		sizes: map[string]float64{"thick": thick, "deep": thick / 3, "at": 12},
		slips: []slip{
			{"deep", thick * 0.4, "cuts-meet", "dado deep"},
			{"deep", 1.0 / 16, "shallow-housing", "dado deep"},
		},
	}
}

// rabbetedBack is a back in a rabbet as deep as it is thick, or deeper.
func rabbetedBack(t *rapid.T) drawn {
	from := sixteenths(t, "from", 4, 8)
	return drawn{
		text: `case nest {
  of ash 3/4 ; wide 30 ; high 30 ; deep 12 ; joint dado deep 1/4
  across {
    side left
    behind {
      down { top lid ; open ; bottom floor }
      back rear { of thin ; joint rabbet %into% x %from% }
    }
    side right
  }
}
`,
		sizes: map[string]float64{"into": 3.0 / 8, "from": from},
		slips: []slip{
			{"from", 1.0 / 8, "rabbet-shallow", "joint rabbet"},
			{"into", 11.0 / 16, "thin-rabbet", "joint rabbet"},
		},
	}
}

// drawerCorners is a drawer with half-blind dovetails.
func drawerCorners(t *rapid.T) drawn {
	front := sixteenths(t, "front", 12, 16)
	return drawn{
		text: `case nest {
  of ash 3/4 ; wide 20 ; high 10 ; deep 18 ; joint dado deep 1/4
  across {
    side left
    down {
      top lid
      drawer one {
        of ash 1/2 ; front ash %front% ; fit inset ; reveal 3/32 ; runner ash ; gap 1/16 ; long 16 ; high 8 1/8
        corner front dovetail slope 1:7 lap %lap%
        corner back dado deep 1/4
        bottom thin groove 1/4 x 1/4 up 1/2
      }
      bottom floor
    }
    side right
  }
}
`,
		sizes: map[string]float64{"front": front, "lap": front / 4},
		slips: []slip{
			{"lap", 1.0 / 32, "thin-lap", "corner front"},
		},
	}
}

// postOfTwo is a table whose tenons stop short of each other in the legs.
func postOfTwo(t *rapid.T) drawn {
	post, thick := sixteenths(t, "post", 40, 56), sixteenths(t, "thick", 14, 18)
	back := sixteenths(t, "back", 0, 4)
	tenon := thick / 3
	long := post - back - thick*2/3 - 1.0/4
	side := func(name, wide, turned string) string {
		return `frame ` + name + ` x 2 {
  of ash ; wide ` + wide + ` ; high 28 ; thick %post%
  joint tenon thick %tenon% long %long% haunch 1 1/4 deep 3/8
  across { post left part leg` + turned + ` ; down { apron ` + name + `-apron 4 { thick %thick% ; recess front %back% } ; space } ; post right part leg` + turned + ` }
}
`
	}
	return drawn{
		text:  "part leg x 4 { of ash ; size 28 x %post% x %post% }\n" + side("long", "60", "") + side("short", "30", " turned"),
		sizes: map[string]float64{"post": post, "thick": thick, "back": back, "tenon": tenon, "long": long},
		slips: []slip{{"long", min(long+1.0/4, post*7/8-1.0/8), "cuts-meet", "joint tenon"}},
	}
}

// hungDoor is a framed door on cup hinges that keep clear of its tenons.
func hungDoor(t *rapid.T) drawn {
	stile, rail := sixteenths(t, "stile", 40, 44), sixteenths(t, "rail", 40, 56)
	return drawn{
		text: `hinge cup { kind cup ; bore 1 3/8 ; deep 1/2 ; rim 3/16 }
frame leaf {
  of ash ; thick 13/16
  joint tenon thick 1/4 long 1 1/4 haunch 1
  across {
    stile one %stile%
    down { rail head %rail% ; space ; rail foot %rail% }
    stile two %stile%
  }
}
case chest {
  of ash 3/4 ; wide 20 ; high 30 ; deep 12 ; joint dado deep 1/4
  across {
    side left
    door first {
      leaf leaf ; fit overlay 1/2 ; hang left
      hinge cup at %at%, 20
    }
    side right
  }
}
`,
		sizes: map[string]float64{"stile": stile, "rail": rail, "at": rail + 1 + sixteenths(t, "beyond", 0, 32)},
		slips: []slip{{"at", rail - 1.0/2, "cuts-meet", "hinge cup"}},
	}
}

// fixedRunners are dowelled to the sides of a case.
func fixedRunners(t *rapid.T) drawn {
	high := sixteenths(t, "high", 12, 24) // of which the runners take 3/4
	return drawn{
		text: `case chest {
  of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across {
    side left { thick 1 1/4 }
    down { open ; across %high% { runner low 1 1/2 ; space ; runner high 1 1/2 } ; open 8 }
    side right { thick 1 1/4 }
  }
}
fix chest.low to chest.left { dowel peg x 2 { along 2, 10 ; at %at% } }
`,
		sizes: map[string]float64{"high": high, "at": 3.0 / 8},
		slips: []slip{{"at", 1.0 / 8, "breaks-through", "fix"}},
	}
}

// liftedOut is a leaf that is pushed up into one groove and let down into another.
func liftedOut(t *rapid.T) drawn {
	bottom, keeps, spare := sixteenths(t, "bottom", 2, 4), sixteenths(t, "keeps", 2, 4), sixteenths(t, "spare", 0, 2)
	return drawn{
		text: `case chest {
  of ash 3/4 ; wide 20 ; high 20 ; deep 12 ; joint dado deep 1/4
  across {
    side left
    down {
      top roof
      door front {
        leaf thin ; fit inset ; reveal 1/16 ; hang lift-out
        grooves top %top% bottom %bottom% keeps %keeps%
      }
      bottom floor
    }
    side right
  }
}
`,
		sizes: map[string]float64{"top": bottom + keeps + spare, "bottom": bottom, "keeps": keeps},
		slips: []slip{
			{"top", bottom + keeps - 1.0/16, "lift-out-stuck", "grooves"},
			{"top", 3.0 / 4, "lift-groove-deep", "grooves"},
			{"keeps", 0, "lift-out-falls", "grooves"},
		},
	}
}

// hungLid is a chest whose lid stands out all round, and opens as far as its back lets it.
func hungLid(t *rapid.T) drawn {
	back := sixteenths(t, "back", 0, 12)
	return drawn{
		text: `hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }
case chest {
  of ash 3/4 ; wide 30 ; high %high% ; deep 16 ; joint dado deep 1/4
  down {
    lid cover { over ends 1/2 front 1/2 back %back% ; hang back ; opens 97deg ; hinge brass ends 3 }
    across { side left ; open bay ; side right }
    bottom floor
  }
}
`,
		sizes: map[string]float64{"high": sixteenths(t, "high", 12*16, 24*16), "back": back},
		slips: []slip{{"back", 2, "lid-back-catches", "lid cover"}},
	}
}
