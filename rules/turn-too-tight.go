package rules

import (
	"fmt"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var turnCeiling = &Figure{
	Name: "ceiling", Why: "how high a corridor is at least, so that what is no higher may be carried upright", Basis: Memory,
	Source: "7 ft (2134 mm): the least ceiling of the International Residential Code", Dim: lang.Length, Length: 84 * wood.Inch,
}

var turnTooTight = &Rule{
	Name: "turn-too-tight", Group: Moving, Severity: diag.Warning,
	Summary: "what is carried does not go round a turn of the corridor",
	Doc: `At a square turn a long thing lies with both ends against the outer walls and its side against the inner corner: there it is caught, however
it is pushed. A thin board goes round that is as long as (a^(2/3) + b^(2/3))^(3/2), where a and b are how wide the corridors are; one that is
thick is shorter by twice its thickness and more.

It is judged carried level, on whichever side is best, and set upright where it is no higher than a low ceiling. What is tilted steeply goes round
where this says that it does not, if the ceiling there allows it: "allow" it with that reason.

Let the piece come apart into shorter things, or find another way.`,
	Sources: `The ladder problem of calculus texts, for a rectangle: length x sin x cos + thickness is at most a x cos + b x sin at every angle. Held against a
simulation by brute force in the tests. The ceiling is a figure from memory, check it.`,
	Sound: `A thin panel of 100 round a turn from 36 into 36; a tall narrow cupboard that is carried upright; a thick one that goes sideways
along the second corridor.`,
	Bad:     carriedThrough("turn 30 into 28", ""),
	Good:    carriedThrough("turn 36 into 36", ""),
	Figures: []*Figure{turnCeiling},
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, c := range carriedOn(p) {
			if !c.sized {
				continue
			}
			for _, t := range p.Way.Turns {
				from, into := t.From, t.Into
				if into.How == plan.Unknown {
					into = from
				}
				if !from.Known() || !into.Known() {
					continue
				}
				lies := c.lies(pass.Length(turnCeiling, c.subject))
				if len(lies) == 0 || slices.ContainsFunc(lies, func(f footprint) bool { return f.goesRound(from.Length, into.Length) }) {
					continue
				}
				longest := longestRound(from.Length, into.Length, lies[0].thick)
				pass.Report(diag.Finding{
					Subject: c.subject,
					Span:    t.Span,
					Message: fmt.Sprintf("%s, and carried level does not go round a turn from %s into %s", c.shown(p), p.ShowSaid(from), p.ShowSaid(into)),
					Working: p.Paper().Start(p.Tape.Floor(longest), fmt.Sprintf("goes round at the longest, %s thick", p.Show(lies[0].thick))).
						Versus(lies[0].long, "its length").Working(),
					Notes: []diag.Note{{Span: c.span, Message: "it is drawn here"}},
					Fixes: []diag.Fix{{Title: c.notApart() + ", or carry it another way"}},
				})
				break
			}
		}
	},
}

// footprint is how something lies on the floor of a corridor when it is carried round a turn.
type footprint struct{ long, thick wood.Length }

// goesRound reports whether it goes round a square turn: not turned at all, lengthwise along the one corridor
// and sideways along the other, or turned at the corner.
func (f footprint) goesRound(from, into wood.Length) bool {
	if !wood.Over(f.thick, min(from, into)) && !wood.Over(f.long, max(from, into)) {
		return true
	}
	return !wood.Over(f.long, longestRound(from, into, f.thick))
}

// lies are the ways in which a thing may be carried, the likeliest first: on its edge, flat, upright. Whatever stands
// higher than the ceiling does not.
func (c *carried) lies(ceiling wood.Length) []footprint {
	var all []footprint
	for _, way := range [][3]int{{1, 2, 0}, {0, 2, 1}, {2, 1, 0}} { // which is upright, long, thick
		if !wood.Over(c.size[way[0]], ceiling) {
			all = append(all, footprint{c.size[way[1]], c.size[way[2]]})
		}
	}
	return all
}

// longestRound is how long a rectangle so thick may be that is carried level round a square turn, from a corridor
// so wide into another; 0 where it goes into neither.
func longestRound(from, into, thick wood.Length) wood.Length {
	if wood.Over(thick, min(from, into)) {
		return 0
	}
	a, b, t := float64(from), float64(into), float64(thick)
	at := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		return (a*cos + b*sin - t) / (sin * cos)
	}
	const steps = 900 // of a tenth of a degree
	best := 1
	for i := 2; i < steps; i++ {
		if at(float64(i)/steps*math.Pi/2) < at(float64(best)/steps*math.Pi/2) {
			best = i
		}
	}
	low, high := float64(best-1)/steps*math.Pi/2, float64(best+1)/steps*math.Pi/2
	for range 60 { // closing in on the angle at which it is caught
		third := (high - low) / 3
		if at(low+third) < at(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return wood.Length(at((low + high) / 2))
}
