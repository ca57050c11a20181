package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

var (
	slopeSteepest = &Figure{
		Name: "steepest", Why: "one in how many a dovetail slopes at the steepest", Basis: Practice,
		Source: "one in four, as a cutter of 14 degrees leaves it", Dim: lang.Plain, Number: 4,
	}
	slopeFlattest = &Figure{
		Name: "flattest", Why: "one in how many a dovetail slopes where it is flat already", Basis: Published,
		Source: "W. Fairham, Woodwork Joints: 1 in 8", Dim: lang.Plain, Number: 8,
	}
	slopeSlides = &Figure{
		Name: "slides", Why: "beyond one in how many a dovetail is no more than a finger", Basis: Practice,
		Source: "one in ten", Dim: lang.Plain, Number: 10,
	}
)

var dovetailSlope = &Rule{
	Name: "dovetail-slope", Group: Joints, Severity: diag.Error,
	Summary: "a dovetail is so steep that its corners break off, or so flat that it slides out",
	Doc: `The slope is what holds: a dovetail that is almost straight is pulled out like a finger, and only its glue holds it. The
steeper it is, the shorter is the grain at the corners of the tails, and they break off when the joint is driven home, or when
the drawer is pulled.

From 1 in 5 to 1 in 8 serves; steeper in soft wood, flatter in hard wood. Steeper than 1 in 4 is an error, flatter than 1 in 8 a
warning, and flatter than 1 in 10 an error.`,
	Sources: `The books disagree: 1 in 8, and not steeper than 1 in 6: W. Fairham, Woodwork Joints; 5/8 in 3, which is 1 in
4.8: W. Noyes, Handwork in Wood, 1910, joint no. 48; 1 in 4: G. A. Ross, Elementary Course in Woodwork. All of them pass here. The bounds
beyond are common practice, no source.`,
	Sound: `Slopes of 1 in 7, 1 in 8 and 1 in 4.8; the 1 in 4 of a cutter of 14 degrees; a scarf of 1 in 12, which is no dovetail.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 5/8
  joint dovetail slope 1:3
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 5/8
  joint dovetail slope 1:7
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Figures: []*Figure{slopeSteepest, slopeFlattest, slopeSlides},
	Check: func(pass *Pass) {
		for c := range corners(pass.Plan, plan.Dovetail) {
			if !c.Slope.Known() || c.Slope.Value <= 0 {
				continue
			}
			n := 1 / c.Slope.Value
			beyond := func(f *Figure) bool { return n > pass.Number(f, c.subject)*(1+slopeSlack) }
			f := diag.Finding{Subject: c.subject, Span: c.Slope.Span}
			said := oneIn(n)
			switch {
			case n < pass.Number(slopeSteepest, c.subject)*(1-slopeSlack):
				f.Message = fmt.Sprintf("a dovetail of %s is so steep that the short grain at its corners breaks off", said)
			case beyond(slopeSlides):
				f.Message = fmt.Sprintf("a dovetail of %s hardly slopes: it slides out, and only its glue holds it", said)
			case beyond(slopeFlattest):
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("a dovetail of %s is flat, and holds little more than a straight finger", said)
			default:
				continue
			}
			f.Fixes = []diag.Fix{{Title: "write `slope 1:7`, or another from 1:5 to 1:8"}}
			pass.Report(f)
		}
	},
}

// slopeSlack is as closely as slopes are compared: nobody cuts one truer.
const slopeSlack = 0.001

// oneIn is a slope in words: `1 in 7`, `1 in 4.8`.
func oneIn(n float64) string { return fmt.Sprintf("1 in %g", math.Round(n*10)/10) }
