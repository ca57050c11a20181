package report

// The figures of hardware in words, as they stand in a list of what to buy.

import (
	"fmt"
	"math"
	"strconv"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// figures gathers what a piece of hardware says of itself; what it does not say is left out.
type figures struct {
	plan *plan.Plan
	all  []string
}

func (f *figures) word(c plan.Choice, after string) {
	if c.Is != "" {
		f.all = append(f.all, c.Is+after)
	}
}

// size is `2 1/2 high`: format has %s for the size.
func (f *figures) size(format string, l plan.Length) {
	if l.How != plan.Unknown {
		f.all = append(f.all, fmt.Sprintf(format, show(f.plan, l)))
	}
}

func (f *figures) pair(format string, p plan.Pair) {
	if p.Across.How != plan.Unknown {
		f.all = append(f.all, fmt.Sprintf(format, show(f.plan, p.Across), show(f.plan, p.Deep)))
	}
}

// weight is in pounds where sizes are in inches, else in kilograms.
func (f *figures) weight(format string, w plan.Figure) {
	if w.Known() && w.Value > 0 {
		f.all = append(f.all, fmt.Sprintf(format, f.in(w.Value, wood.Pound, "lb", "kg")))
	}
}

// force is in pounds where sizes are in inches, else in newtons.
func (f *figures) force(format string, w plan.Figure) {
	if w.Known() {
		f.all = append(f.all, fmt.Sprintf(format, f.in(w.Value, wood.PoundForce, "lb", "N")))
	}
}

func (f *figures) in(value, pound float64, inch, metric string) string {
	if f.plan.Tape.Metric {
		return threeDigits(value) + metric
	}
	return threeDigits(value/pound) + inch
}

// threeDigits is as much as is known of a weight or a force that was converted.
func threeDigits(v float64) string {
	if v <= 0 {
		return plainNumber(v)
	}
	unit := math.Pow(10, min(0, math.Floor(math.Log10(v))-2))
	return plainNumber(math.Round(v/unit) * unit)
}

// plainNumber has three digits at most behind the point.
func plainNumber(v float64) string {
	return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
}

func hingeFigures(p *plan.Plan, h *plan.Hinge) []string {
	f := figures{plan: p}
	f.word(h.Kind, "")
	f.size("%s high", h.High)
	f.size("%s wide, opened flat", h.Wide)
	f.size("%s over the pin", h.Knuckle)
	f.size("bore %s", h.Bore)
	f.size("%s deep", h.Deep)
	f.size("%s from the edge of the door to the bore", h.Rim)
	f.size("plate %s", h.Plate)
	f.size("crank %s", h.Crank)
	f.pair("screws %s apart, %s from the middle of the bore", h.Fixings)
	f.pair("pin %s from the edge, %s from the face", h.Pin)
	if h.Opens.Known() {
		f.all = append(f.all, "opens "+plainNumber(h.Opens.Value)+"deg")
	}
	f.weight("each carries %s", h.Carries)
	f.weight("weighs %s", h.Weighs)
	return f.all
}

func latchFigures(p *plan.Plan, l *plan.Latch) []string {
	f := figures{plan: p}
	f.word(l.Kind, "")
	f.size("throw %s", l.Throw)
	f.size("bolt %s high", l.Bolt)
	f.size("backset %s", l.Backset)
	if b := l.Body; b.Long.How != plan.Unknown {
		f.all = append(f.all, fmt.Sprintf("body %s wide, %s high, %s deep", show(p, b.Long), show(p, b.Wide), show(p, b.Thick)))
	}
	f.size("keeper %s high", l.KeeperHigh)
	f.size("keeper %s deep", l.KeeperDeep)
	if l.Pull != nil {
		f.force("pull %s", l.Pull.Force)
	}
	f.weight("weighs %s", l.Weighs)
	return f.all
}

func slideFigures(p *plan.Plan, s *plan.Slide) []string {
	f := figures{plan: p}
	f.word(s.Kind, "")
	f.size("%s long", s.Long)
	f.size("room %s each side", s.Room)
	f.size("box inside %s less than the opening", s.Less)
	f.size("sides %s lower than the opening", s.HighLess)
	f.size("%s below the bottom", s.Under)
	f.pair("notch %s x %s", s.Notch)
	f.size("travel %s", s.Travel)
	f.weight("a pair carries %s", s.Carries)
	f.weight("weighs %s", s.Weighs)
	return f.all
}

func stayFigures(p *plan.Plan, s *plan.Stay) []string {
	f := figures{plan: p}
	f.size("%s shut", s.Shut)
	f.size("%s open", s.Open)
	if s.Holds.Known() {
		f.all = append(f.all, "holds "+plainNumber(s.Holds.Value)+"Nm")
	}
	f.weight("weighs %s", s.Weighs)
	return f.all
}

func handleFigures(p *plan.Plan, h *plan.Handle) []string {
	f := figures{plan: p}
	f.size("stands out %s", h.Projects)
	f.weight("weighs %s", h.Weighs)
	return f.all
}

func rodFigures(p *plan.Plan, r *plan.Rod) []string {
	f := figures{plan: p}
	f.size("%s across", r.Thick)
	f.size("sockets %s deep", r.SocketDeep)
	f.weight("weighs %s", r.Weighs)
	return f.all
}

func fastenerFigures(p *plan.Plan, s *plan.Fastener) []string {
	f := figures{plan: p}
	if s.Gauge.Known() {
		f.all = append(f.all, fmt.Sprintf("gauge %d", s.Gauge.N))
	}
	across := "%s across"
	if s.Word == "biscuit" {
		across = "%s thick"
	}
	f.size(across, s.Thick)
	f.size("%s long", s.Long)
	f.size("%s wide", s.Wide)
	if s.Thread.How == plan.Written {
		f.size("%s of thread", s.Thread)
	}
	f.word(s.Head, " head")
	f.size("nut %s across", s.Nut)
	f.size("nut %s long", s.NutLong)
	f.size("draws down %s", s.Drop)
	f.weight("weighs %s", s.Weighs)
	return f.all
}
