package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	pullReserve = &Figure{
		Name: "reserve", Why: "how many times what opens it a catch holds", Basis: Practice,
		Source: "2", Dim: lang.Plain, Number: 2,
	}
	pullGap = &Figure{
		Name: "contact", Why: "how far off a magnet still pulls as it does at contact", Basis: Practice,
		Source: "1/64 (0.4 mm)", Dim: lang.Length, Length: wood.Inch / 64, Metric: 2 * wood.Millimetre / 5,
	}
)

var catchWeak = &Rule{
	Name: "catch-weak", Group: Doors, Severity: diag.Warning,
	Summary: "a catch does not hold a door shut against what leans on it",
	Doc: `A row of records, a stack of towels or a flap's own weight presses a door open. What presses near the hinges counts less than at the edge, and
a catch far from them holds more: each counts by how far it is from the hinges. A magnet pulls with what its box says only where it touches;
a gap as thin as a card takes most of it.

Take a stronger catch, set it farther from the hinges, or use one that is opened by hand. The rule is asked where the plan says what
leans on a door ("leans 3lb at 9") and how hard its catches pull. A panel that is lifted out ("hang lift-out") stands on its foot in place of hinges, and
is held at its head.`,
	Sources: `The balance is statics. The reserve and the gap are common practice, no source.`,
	Sound:   `A catch that holds twice what leans; two that do so together; a magnet whose pull is given at the gap that it has.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
catch roller { kind roller ; pull 3lb }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; catch roller at 13 ; leans 4lb at 9 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
catch roller { kind roller ; pull 5lb }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; catch roller at 13 ; leans 4lb at 9 } ; side right }
}
`,
	Figures: []*Figure{pullReserve, pullGap},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			checkCatch(pass, d)
		}
	},
}

// checkCatch holds what leans on a door against its catches, about its hinges.
func checkCatch(pass *Pass, d *plan.Door) {
	p, subject := pass.Plan, plan.PathOf(d)
	hung, turns := d.Hung()
	pivot, lifted := "the hinges", d.Hang.Is == "lift-out"
	if lifted { // it stands on its foot, and falls out about that
		hung, turns, pivot = plan.Lower, true, "its foot"
	}
	wide := d.Size[hung.Axis()]
	if g := d.Grooves; lifted && (d.Held.Is != "" || g != nil && g.Top.How != plan.Unknown) {
		return // a strip, a key or the groove above holds it
	}
	if !turns || d.Leans == nil || !d.Leans.Force.Known() || !d.Leans.At.Known() || !wide.Known() || len(d.Latches) == 0 {
		return
	}
	holds, apart := 0.0, false // newtons times lengths
	within := wide.Length      // where a catch on the inside of the case sits
	if lap := d.Edges[hung.Opposite()].Lap(); d.Fit.Kind.Is == "overlay" && lap.Known() {
		within -= max(0, lap.Length)
	}
	for _, use := range d.Latches {
		if use.Latch == nil || use.Latch.Pull == nil || !use.Latch.Pull.Force.Known() {
			return // a bolt, or nobody says
		}
		if use.Latch.Kind.Is == "magnet" && use.On.Is == "" {
			gap, bounded := freeGap(d, hung.Opposite())
			if bounded && wood.Over(gap, use.Latch.Pull.At.Or(0).Length+pass.Length(pullGap, subject)) {
				apart = true
				continue
			}
		}
		free := wide.Length
		if use.Latch.Kind.Is != "magnet" { // which may sit at the edge of the case
			free = within
		}
		far := []wood.Length{free}
		if use.On.Is != "" && use.On.Is != "free" && (!lifted || use.On.Is != "head") { // along the edge from the left
			if hung.Axis() != plan.Across || len(use.At) == 0 {
				return
			}
			far = nil
			for _, at := range use.At {
				if hung == plan.Right {
					at.Length = wide.Length - at.Length
				}
				far = append(far, at.Length)
			}
		} else if n := use.Number(); n > 1 {
			for range min(n, 20) - 1 {
				far = append(far, free)
			}
		}
		for _, l := range far {
			holds += use.Latch.Pull.Force.Value * float64(l)
		}
	}
	reserve := pass.Number(pullReserve, subject)
	wants := d.Leans.Force.Value * float64(d.Leans.At.Length)
	if holds >= reserve*wants*(1-1e-9) {
		return
	}
	f := diag.Finding{
		Subject: subject, Span: d.Span,
		Message: fmt.Sprintf("%s is pressed open as by %s at its free edge, and its catches hold %s there: %g times what presses is wanted", titled(&d.Item),
			pull(p, wants/float64(wide.Length)), pull(p, holds/float64(wide.Length)), reserve),
		Working: p.Paper().
			Remark(fmt.Sprintf("%s leans %s from %s, and the free edge is %s away", pull(p, d.Leans.Force.Value), p.ShowSaid(d.Leans.At), pivot, p.Show(wide.Length))).
			Remark(fmt.Sprintf("%s x %s / %s = %s at the free edge", pull(p, d.Leans.Force.Value), p.ShowSaid(d.Leans.At), p.Show(wide.Length), pull(p, wants/float64(wide.Length)))).
			Remark(fmt.Sprintf("%g times that is %s", reserve, pull(p, reserve*wants/float64(wide.Length)))).Working(),
		Fixes: []diag.Fix{{Title: fmt.Sprintf("use catches that hold %s at the free edge, or one that is opened by hand", pull(p, reserve*wants/float64(wide.Length)))}},
	}
	if within != wide.Length {
		f.Notes = append(f.Notes, diag.Note{Span: d.Span, Message: fmt.Sprintf("it laps its case, so that a catch within that is %s from %s", p.Show(within), pivot)})
	}
	if apart {
		f.Message += ", and a magnet that does not touch holds nothing"
	}
	pass.Report(f)
}
