package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var gluedAcrossGrain = &Rule{
	Name: "glued-across-grain", Group: Movement, Severity: diag.Error,
	Summary: "solid wood is glued across its grain to what does not move with it",
	Doc: `A cleat, a moulding or a runner that is glued across a solid side, a lipping on end grain, a sheet that is housed in a solid side: the one
keeps its length, the other grows and shrinks beneath it through the year. The glue lets go, the moulding springs off, or the side
splits.

Glue a few inches of it, at the front where it shows, and let the rest travel on screws in slots or in a sliding dovetail; or let both run
the same way, or take a sheet that needs no such help.

The rule looks at what a fixing glues, at lippings, and at the joints of a layout in which wood is glued along its faces: housings, rabbets,
tongues, laps and bridles. How a part lies that no layout places is said by the fixing: "grain across". Tenons, panels, breadboard ends and
thick skins have rules of their own; dowels, biscuits and screws hold at points, and give.`,
	Sources: movementSource + `
That glue across the grain wants to be short is arithmetic; what gives and what splits is common practice, no source.`,
	Sound: `A runner glued along its first 3 and slotted behind, a cleat whose grain runs with the side's, a cleat across a narrow board,
a lipping along the grain, a shelf of solid wood housed in solid sides, one of sheet stock whose housing is glued at its centre alone, and
a moulding across a side of sheet stock.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
part side { of cherry ; size 30 x 14 x 3/4 }
part crown { of cherry ; size 14 x 1 1/2 x 3/4 }
fix crown to side { grain across ; glue }
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
part side { of cherry ; size 30 x 14 x 3/4 }
part crown { of cherry ; size 14 x 1 1/2 x 3/4 }
fix crown to side { grain across ; glue front 3 }
`,
	Figures: []*Figure{heldGives, heldSplits},
	Check: func(pass *Pass) {
		checkGluedFixings(pass)
		checkLippings(pass)
		checkGluedEnds(pass)
	},
}

// gluedLine is a seam that is glued along some of its length, and how a plan would glue less.
type gluedLine struct {
	seam
	long    wood.Length
	subject string
	at      diag.Span
	what    string // `part "crown" is glued`
	across  string // `the grain of part "side"`
	less    func(along string) string
}

func (g gluedLine) judge(pass *Pass) {
	p, of := pass.Plan, g.moves.of
	t, m := travel(p, of, g.long)
	severity := heldFast(pass, t, g.subject)
	if severity == 0 {
		return
	}
	paper := p.Paper().Start(g.long, "glued across "+g.across)
	moves(paper, g.long, of, m)
	paper.Equals("it would be").Start(t, "it moves").Versus(pass.Length(heldGives, g.subject), "gives")
	along := round(p, wood.Length(float64(g.long)*float64(pass.Length(heldGives, g.subject))/float64(t)))
	pass.Report(diag.Finding{
		Subject: g.subject, Span: g.at, Severity: severity,
		Message: fmt.Sprintf("%s along %s across %s, which moves %s there", g.what, exact(p, g.long), g.across, exact(p, t)),
		Notes:   fromMemory(of, m),
		Working: paper.Working(),
		Fixes:   []diag.Fix{{Title: g.less(p.Show(along))}},
	})
}

// round is a length down to a round figure of the tape: a quarter of an inch, 5 mm.
func round(p *plan.Plan, l wood.Length) wood.Length {
	if p.Tape.Metric {
		return l - l%(5*wood.Millimetre)
	}
	return l - l%(wood.Inch/4)
}

// checkGluedFixings judges what each fixing glues, by the seam that moves most.
func checkGluedFixings(pass *Pass) {
	p := pass.Plan
	for _, f := range p.Fixes {
		var worst gluedLine
		most := wood.Length(0)
		for _, s := range seamsOf(f) {
			long := s.glued(f)
			if _, _, known := p.Seasons(s.moves.of); !known {
				continue
			}
			if t, _ := travel(p, s.moves.of, long); t > most {
				most, worst = t, gluedLine{seam: s, long: long, at: f.Glue[0].Span}
			}
		}
		if most == 0 {
			continue
		}
		worst.subject = f.A.To.Path
		worst.what, worst.across = worst.stays.called+" is glued", "the grain of "+worst.moves.called
		if worst.moves.subject == f.A.To.Path {
			worst.what, worst.across = worst.moves.called+" is glued to "+worst.stays.called, "its grain"
		}
		worst.less = func(along string) string {
			return "glue no more than " + along + " of it, such as `glue front " + along + "`, and let screws travel in slots beyond"
		}
		worst.judge(pass)
	}
}

// checkLippings judges edging on the ends of solid boards.
func checkLippings(pass *Pass) {
	for m, thing := range boardsOf(pass.Plan) {
		board := lieOfMember(m)
		if _, _, moves := pass.Plan.Seasons(board.of); !moves || !m.Size.Wide.Known() {
			continue
		}
		flat := 3 - board.grain - board.wide
		for _, e := range m.Edging {
			lip := e.Of.Material.To
			if ends, _ := e.Strips(board.grain, flat); ends == 0 || lip == nil || lip.Kind == plan.Veneer {
				continue
			}
			gluedLine{
				seam: seam{moves: board}, long: m.Size.Wide.Length, subject: plan.PathOf(thing), at: standing(m.Span, e.Edge.Span),
				what: "edging of " + quote(lip.Name.Text) + " is glued", across: "the grain of " + board.called,
				less: func(string) string {
					return "leave the end grain bare, or let the boards move in a breadboard end"
				},
			}.judge(pass)
			break
		}
	}
}

// facesGlued are the joints whose glue holds along faces and not at points.
var facesGlued = map[string]bool{
	plan.Housing: true, plan.Dado: true, plan.Rabbet: true, plan.Tongue: true, plan.HalfLap: true, plan.Bridle: true,
}

// checkGluedEnds judges the joints of layouts, each line that says one by the end that moves most.
func checkGluedEnds(pass *Pass) {
	p := pass.Plan
	worst := make(map[saying]int)
	var lines []gluedLine
	for e := range ends(p) {
		m, isMember := e.Of.(*plan.Member)
		if j := e.Joint; !isMember || !facesGlued[j.Kind.Is] || j.Dry.On || j.GlueAt.Is == "centre" {
			continue
		}
		for _, mate := range e.Mates {
			for _, s := range seamsAt(e, m, mate) {
				if _, _, known := p.Seasons(s.moves.of); !known {
					continue
				}
				line := gluedLine{
					seam: s, long: s.long, subject: plan.PathOf(m), at: e.Joint.Span,
					what: titled(&m.Item) + " is glued in its " + e.Joint.Kind.Is, across: "the grain of " + s.moves.called,
					less: func(along string) string {
						if e.Joint.Kind.Is == plan.HalfLap || e.Joint.Kind.Is == plan.Bridle {
							return "make them no wider than " + along + ", or take tenons with a haunch between"
						}
						return "glue the middle alone, `glue centre`, or no more than " + along + " of it"
					},
				}
				key := saying{e.Joint.Span, m.In.Build}
				i, again := worst[key]
				if !again {
					worst[key] = len(lines)
					lines = append(lines, line)
					continue
				}
				before, _ := travel(p, lines[i].moves.of, lines[i].long)
				if t, _ := travel(p, s.moves.of, s.long); t > before {
					lines[i] = line
				}
			}
		}
	}
	for _, line := range lines {
		line.judge(pass)
	}
}

// seamsAt are the seams between a member and a mate at one end of it.
func seamsAt(e *plan.End, m, mate *plan.Member) []seam {
	a, okA := lie(m)
	b, okB := lie(mate)
	if !okA || !okB || a.still && b.still {
		return nil
	}
	if b.in != a.in {
		if b, okB = b.seenFrom(e.Faces); !okB {
			return nil
		}
	}
	lap := e.Joint.Kind.Is == plan.HalfLap || e.Joint.Kind.Is == plan.Bridle
	var all []seam
	for axis := plan.Across; axis <= plan.Behind; axis++ {
		if axis == e.Side.Axis() && !lap {
			continue // it goes in no farther than the joint is deep
		}
		for _, pair := range [][2]lying{{a, b}, {b, a}} {
			if s, ok := beside(pair[0], pair[1], axis); ok {
				all = append(all, s)
			}
		}
	}
	return all
}
