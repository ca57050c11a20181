package rules

// Figures: the thresholds by which rules judge, where each comes from, and how a plan
// sets one otherwise with `limit RULE FIGURE value "reason"`.

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// Figure is one threshold of a rule.
type Figure struct {
	Name   string
	Why    string // what it holds apart
	Basis  Basis
	Source string // the publication, or what the practice is

	Dim    lang.Dim
	Length wood.Length // its value where Dim is lang.Length
	Metric wood.Length // the same in a plan in millimetres, where that is rounded; 0 where it is not
	Number float64     // else its value, in the base unit of Dim
}

// Basis says how well a figure is founded.
type Basis uint8

const (
	Published  Basis = iota + 1 // seen in the publication that is named
	WorkedOut                   // from geometry, statics or arithmetic
	SecondHand                  // from a page that reports a standard or a trade rule
	Practice                    // common practice, no source
	Memory                      // from memory, unverified
)

func (b Basis) String() string {
	return [...]string{"", "published", "worked out", "second-hand", "common practice, no source", "from memory, unverified"}[b]
}

// Settable reports whether a plan may set such a figure otherwise: one that is published
// or follows from geometry stands.
func (b Basis) Settable() bool { return b >= SecondHand }

// Length is a figure of the pass's rule, as the plan sets it for a subject, else as the
// rule has it.
func (p *Pass) Length(f *Figure, subject string) wood.Length {
	if l := p.limits.on(p.rule, f, subject); l != nil {
		set, _ := l.Length()
		return set
	}
	return f.in(p.Plan)
}

// in is a length figure as the rule has it, in the units of a plan.
func (f *Figure) in(p *plan.Plan) wood.Length {
	if p.Tape.Metric && f.Metric != 0 {
		return f.Metric
	}
	return f.Length
}

// Most is the largest that a length figure is anywhere in the plan.
func (p *Pass) Most(f *Figure) wood.Length {
	most := p.Length(f, "")
	for at, l := range p.limits {
		if at.figure == f {
			set, _ := l.Length()
			most = max(most, set)
		}
	}
	return most
}

// Number is Length for a figure that is no length, in the base unit of its Dim.
func (p *Pass) Number(f *Figure, subject string) float64 {
	if l := p.limits.on(p.rule, f, subject); l != nil {
		return l.Value.Float64()
	}
	return f.Number
}

// limits are the figures that a plan sets, by the subject in whose block each stands. Rules may share
// a figure, and a plan sets it for one of them.
type limits map[limited]*plan.Limit

type limited struct {
	rule    *Rule
	figure  *Figure
	subject string
}

// on is the limit that holds for a subject: the one nearest to it.
func (ls limits) on(r *Rule, f *Figure, subject string) *plan.Limit {
	if len(ls) == 0 {
		return nil
	}
	for s := range outward(subject) {
		if l := ls[limited{r, f, s}]; l != nil {
			return l
		}
	}
	return nil
}

// readLimits takes in the plan's limits, and reports those that set nothing.
func readLimits(p *plan.Plan, all []*Rule) (limits, []diag.Finding) {
	set := make(limits)
	var found []diag.Finding
	for _, l := range p.Limits {
		if l.Rule.Text == "" || l.Figure.Text == "" {
			continue // it names none, and that was reported
		}
		if f := misset(l, all); f != nil {
			found = append(found, *f)
			continue
		}
		if !l.Value.Span.Known() {
			continue // it could not be worked out, and that was said
		}
		r := find(all, l.Rule.Text)
		key := limited{r, figure(r, l.Figure.Text), l.Subject}
		if first := set[key]; first != nil {
			found = append(found, diag.Finding{
				Rule: wrongLimit.Name, Severity: wrongLimit.Severity, Subject: l.Subject, Span: l.Span,
				Message: fmt.Sprintf("`limit %s %s` is set twice here", l.Rule.Text, l.Figure.Text),
				Notes:   []diag.Note{{Span: first.Span, Message: "set first here"}},
			})
			continue
		}
		set[key] = l
	}
	return set, found
}

// misset is what is wrong with a limit; nil if nothing is.
func misset(l *plan.Limit, all []*Rule) *diag.Finding {
	wrong := func(at diag.Span, format string, args ...any) *diag.Finding {
		return &diag.Finding{
			Rule: wrongLimit.Name, Severity: wrongLimit.Severity, Subject: l.Subject, Span: at,
			Message: fmt.Sprintf(format, args...),
		}
	}
	r := find(all, l.Rule.Text)
	if r == nil {
		return noSuchRule(all, l.Rule, l.Subject)
	}
	f := figure(r, l.Figure.Text)
	switch {
	case f == nil && settable(r) == "":
		return wrong(l.Figure.Span, "`%s` has no figure that a plan may set", r.Name)
	case f == nil:
		return wrong(l.Figure.Span, "`%s` has no figure `%s`: a plan may set %s", r.Name, l.Figure.Text, settable(r))
	case !f.Basis.Settable():
		return wrong(l.Figure.Span, "the figure `%s` of `%s` stands: %s (%s)", f.Name, r.Name, f.Source, f.Basis)
	}
	if v := l.Value; v.Span.Known() {
		_, isLength := l.Length()
		if f.Dim == lang.Length && !isLength || f.Dim != lang.Length && v.Dim != f.Dim {
			return wrong(v.Span, "`limit %s %s` wants %s, but this is %s", r.Name, f.Name, f.Dim, v.Dim)
		}
	}
	if blank(l.Reason) {
		return noReason("limit "+r.Name+" "+f.Name, l.Subject, l.Span)
	}
	return nil
}

func figure(r *Rule, name string) *Figure {
	for _, f := range r.Figures {
		if f.Name == name {
			return f
		}
	}
	return nil
}

// settable names the figures of a rule that a plan may set; "" if there are none.
func settable(r *Rule) string {
	var names []string
	for _, f := range r.Figures {
		if f.Basis.Settable() {
			names = append(names, "`"+f.Name+"`")
		}
	}
	return strings.Join(names, ", ")
}
