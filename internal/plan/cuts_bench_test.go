package plan

import (
	"fmt"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// BenchmarkCuts places every cut of a plan that is worked out, and sweeps every blank for cuts
// that come near each other. The lines of both sizes cost the same.
func BenchmarkCuts(b *testing.B) {
	for _, most := range []int{10_000, 100_000} {
		b.Run(fmt.Sprint(most), func(b *testing.B) {
			text, lines := manyFrames(most)
			tree, _ := lang.Parse(diag.NewFile("many.plan", text))
			p, found := Resolve(tree, nil)
			if len(found) > 0 {
				b.Fatal(found[0].Message)
			}
			b.ReportAllocs()
			cuts, met := 0, 0
			for b.Loop() {
				cuts, met = 0, 0
				for _, blank := range p.makeCuts().Blanks {
					cuts += len(blank.Cuts)
					for range blank.Near(wood.Inch / 4) {
						met++
					}
				}
			}
			b.ReportMetric(float64(lines)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
			b.ReportMetric(float64(cuts), "cuts")
			b.ReportMetric(float64(met), "meetings")
		})
	}
}

// manyFrames is a plan of about so many lines, full of joints: a case with its shelves, its
// drawers and its back, framed doors with panels, and a leg that two frames share.
func manyFrames(most int) (text string, lines int) {
	const one = `
part leg-N x 4 { of oak ; size 28 x 2 x 2 }
frame long-N x 2 { of oak ; wide 60 ; high 28 ; thick 2
  joint tenon thick 5/16 long 1
  across {
    post left part leg-N
    down {
      apron one 4 { thick 7/8 ; recess front 1/4 ; joint tenon haunch 1 deep 1/2 }
      space
      stretcher low 2 { thick 7/8 }
      space 6
    }
    post right part leg-N
  }
}
frame short-N x 2 { of oak ; wide 30 ; high 28 ; thick 2
  joint tenon thick 5/16 long 1
  across {
    post left part leg-N turned
    down {
      apron two 4 { thick 7/8 ; recess front 1/4 ; joint tenon haunch 1 deep 1/2 }
      space
    }
    post right part leg-N turned
  }
}
case chest-N { of oak 3/4 ; wide 40 ; high 30 ; deep 15 ; joint dado deep 1/4
  across {
    side left
    behind {
      down {
        top roof
        across {
          down {
            open
            shelf low
            open
          }
          divider mid
          down {
            open
            shelf high
            open
          }
        }
        bottom floor
      }
      back rear { of thin ; joint rabbet 3/8 x 1/4 }
    }
    side right
  }
}
frame leaf-N { of oak ; wide 18 ; high 27 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  each panel groove 1/4 x 3/8
  across {
    stile left 2 1/4
    down {
      rail head 2 1/4 { joint tenon haunch 1/2 }
      panel field { of thin ; count 2 ; between rail 2 }
      rail foot 3 { joint tenon haunch 1/2 }
    }
    stile right 2 1/4
  }
}
`
	var b strings.Builder
	b.WriteString("wood oak { species \"white oak\" ; sawn flat }\nsheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; size 48 x 96 }\n")
	for i := 0; lines < most; i++ {
		b.WriteString(strings.ReplaceAll(one, "-N", fmt.Sprint("-", i)))
		lines += strings.Count(one, "\n")
	}
	return b.String(), lines
}
