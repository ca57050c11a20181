package rules

// Numbers that are worked on paper: a mitred frame round its glass. The other sums of the rules
// about lengths stand in their fixtures.

import (
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// Sight 10, mouldings 2, rebates 1/4, a gap of 1/8: long points 14, between the rebates 10 1/2,
// glass 10 3/8.
func TestMitredFrameRoundItsGlass(t *testing.T) {
	p, found := Run(diag.NewFile("a.plan", `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8
  across {
    stile left 2
    down { rail head 2 ; glass sight { thick 1/8 ; joint rabbet 3/8 x 1/4 ; gap 1/8 } ; rail foot 2 }
    stile right 2
  }
}
`), nil)
	for _, f := range found {
		if f.Severity == diag.Error {
			t.Errorf("%s: %s", f.Rule, f.Message)
		}
	}
	for m := range p.Members() {
		if want := map[string]string{"rail": "14", "stile": "18"}[m.Word]; p.Show(m.Size.Long.Length) != want {
			t.Errorf("%s %s is %s long, want %s", m.Word, m.Name.Text, p.Show(m.Size.Long.Length), want)
		}
	}
	for g := range plan.AllOf[*plan.Glass](p) {
		if got := p.Show(g.Size.Wide.Length) + " x " + p.Show(g.Size.Long.Length); got != "10 3/8 x 14 3/8" {
			t.Errorf("the glass is %s, want 10 3/8 x 14 3/8", got)
		}
	}
}
