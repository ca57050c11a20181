package rules

import (
	"fmt"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

// BenchmarkCutRules judges the cuts of plans of two sizes, which cost the same for each line.
func BenchmarkCutRules(b *testing.B) {
	const one = `
part leg-N x 4 { size 28 x 2 x 2 }
joint corner-N tenon thick 1/4 set 1/4 haunch 1 deep 1/2 long 1 1/2
frame long-N x 2 {
  wide 60 ; high 28 ; thick 2
  across { post left part leg-N ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner-N } ; space } ; post right part leg-N }
}
frame short-N x 2 {
  wide 30 ; high 28 ; thick 2
  across {
    post left part leg-N turned
    down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner-N } ; space }
    post right part leg-N turned
  }
}
frame leaf-N {
  wide 30 ; high 60 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 1/8
  each panel groove 1/4 x 3/8
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; across { panel a ; muntin bar 2 ; panel b } ; rail middle 2 ; across { panel c ; muntin low 2 ; panel d } ; rail foot 3 }
    stile right 2 1/4
  }
}
`
	var inSpace []*Rule
	for _, r := range All {
		if r.Group == Cuts {
			inSpace = append(inSpace, r)
		}
	}
	for _, most := range []int{2_000, 20_000} {
		b.Run(fmt.Sprint(most), func(b *testing.B) {
			var text strings.Builder
			lines := 0
			for i := 0; lines < most; i++ {
				text.WriteString(strings.ReplaceAll(one, "-N", fmt.Sprint("-", i)))
				lines += strings.Count(one, "\n")
			}
			tree, _ := lang.Parse(diag.NewFile("many.plan", text.String()))
			p, _ := plan.Resolve(tree, nil)
			p.Cuts() // placed once, whoever asks
			found := 0
			for b.Loop() {
				found = len(judge(p, inSpace, nil))
			}
			b.ReportMetric(float64(found), "findings")
			b.ReportMetric(float64(lines)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
		})
	}
}
