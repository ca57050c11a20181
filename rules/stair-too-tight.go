package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var stairTooTight = &Rule{
	Name: "stair-too-tight", Group: Moving, Severity: diag.Error,
	Summary: "what is carried does not go up a stair on its way",
	Doc: `A thing goes up a stair along its slope, between the nosings and what is above them. The head room is measured straight up, and square to
the slope it is less: at 42 degrees, 76 is 56 1/2. A thing that is short may be carried upright instead: then it must clear the ceiling where
its lower edge is, while it stands on the step of its upper edge.

Let the piece come apart, or find another way. How it turns at the landings this does not know: say them as turns.`,
	Sources: `Geometry. The inch for hands is common practice, no source.`,
	Sound:   `A tall narrow cupboard along the slope; a low chest that is wide; a stair of which the pitch is not said.`,
	Bad:     carriedThrough("stair wide 36 head 50 pitch 42deg", ""),
	Good:    carriedThrough("stair wide 36 head 76 pitch 42deg", ""),
	Figures: []*Figure{doorwayRoom},
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, c := range carriedOn(p) {
			if !c.sized {
				continue
			}
			for _, s := range p.Way.Stairs {
				spare := pass.Length(doorwayRoom, c.subject)
				if !s.Wide.Known() || climbs(c.size, s, spare) {
					continue
				}
				f := diag.Finding{
					Subject: c.subject,
					Span:    s.Span,
					Message: c.shown(p) + ", and does not go up a stair " + p.ShowSaid(s.Wide) + " wide",
					Notes:   []diag.Note{{Span: c.span, Message: "it is drawn here"}},
					Fixes:   []diag.Fix{{Title: c.notApart() + ", or carry it another way"}},
				}
				if wood.Over(c.size[0]+spare, s.Wide.Length) {
					f.Working = p.Paper().Start(s.Wide.Length, "width of the stair").Minus(spare, "for hands").Equals("goes up").Versus(c.size[0], "the way it is smallest").Working()
				} else {
					f.Message += fmt.Sprintf(", with %s above its nosings", p.ShowSaid(s.Head))
					between, size := slopeRoom(s), c.size[0]
					if wood.Over(c.size[1]+spare, s.Wide.Length) {
						size = c.size[1]
					}
					f.Working = p.Paper().Start(p.Tape.Floor(between), fmt.Sprintf("head room, square to a slope of %sdeg", number(s.Pitch.Value))).
						Minus(spare, "for hands").Equals("goes up along it").Versus(size, "the way that is upright").Working()
				}
				pass.Report(f)
				break
			}
		}
	},
}

// slopeRoom is the room above the nosings of a stair, square to its slope.
func slopeRoom(s *plan.Stair) wood.Length {
	return wood.Length(float64(s.Head.Length) * math.Cos(s.Pitch.Value*math.Pi/180))
}

// climbs reports whether a thing goes up a stair with so much to spare, whichever way it is turned: along the
// slope, or upright.
func climbs(size [3]wood.Length, s *plan.Stair, spare wood.Length) bool {
	steep := s.Head.Known() && s.Pitch.Known() && s.Pitch.Value > 0 && s.Pitch.Value < 90
	rise := 0.0
	if steep {
		rise = math.Tan(s.Pitch.Value * math.Pi / 180)
	}
	for across := range size {
		if wood.Over(size[across]+spare, s.Wide.Length) {
			continue
		}
		if !steep {
			return true
		}
		along, up := size[(across+1)%3], size[(across+2)%3]
		for range 2 {
			along, up = up, along
			upright := up + wood.Length(float64(along)*rise)
			if !wood.Over(up+spare, slopeRoom(s)) || !wood.Over(upright+spare, s.Head.Length) {
				return true
			}
		}
	}
	return false
}
