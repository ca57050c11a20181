package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var nearSetUp = &Figure{
	Name: "near", Why: "up to which difference two settings are hardly two on purpose", Basis: Practice,
	Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var needlessSetUp = &Rule{
	Name: "needless-set-up", Group: Making, Severity: diag.Advice,
	Summary: "joints of one kind differ in one setting by a little, so that a machine is set twice",
	Doc: `Tenons of 1 1/4 and of 1 3/16 in one frame take two settings of the stop, two trial cuts, and the care not to mix
the rails up; and nobody sees the difference. More often than not the second figure is a slip.

Make them alike, and the machine is set once. Where the difference is meant, say so with "allow".`,
	Sources: `Common practice, no source.`,
	Sound: `Tenons that differ because their rails are not equally thick, or their stiles not equally wide; tenons of two lengths that
meet in one leg, and dadoes of two depths on the two sides of a divider; a haunched tenon beside a plain one; a rail that is cut already; a difference of more than 1/8.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 { joint tenon long 1 3/16 } }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Figures: []*Figure{nearSetUp},
	Check: func(pass *Pass) {
		for _, a := range pass.Plan.Assemblies {
			checkSetUps(pass, a)
		}
	},
}

// setting is one figure for which a machine is set, and what a plan calls it.
type setting struct {
	name string
	plan.Length
	beyond plan.Length // of a mortise or a groove: how much deeper it is than what goes in; else unknown
}

// settings are the figures of a joint by which its cuts are made, save how far it stops short of an
// edge, which follows from what is on that edge.
func settings(j *plan.Joint) []setting {
	all := make([]setting, 0, 10)
	add := func(name string, l plan.Length) { all = append(all, setting{name: name, Length: l}) }
	add("thick", j.Thick)
	add("long", j.Long)
	add("deep", j.Deep)
	add("own", j.Own)
	add("set", j.Set)
	add("wide", j.SlotWide)
	switch j.Kind.Is {
	case plan.Rabbet:
		add("rabbet", j.Rabbet.Across)
		add("rabbet, from the edge", j.Rabbet.Deep)
	case plan.Tongue:
		add("groove wide", j.Groove.Across)
		all = append(all, setting{"groove deep", j.Groove.Deep, beyond(j.Groove.Deep, j.Long)})
	case plan.Dovetail:
		add("lap", j.Lap)
		add("pin", j.Pin)
	case plan.BoxJoint:
		add("finger", j.Finger)
	}
	if m := j.Mortise; m != nil {
		add("mortise thick", m.Thick)
		if j.Kind.Is == plan.LooseTenon {
			add("mortise deep", m.Deep)
			add("mortise own", m.Own)
		} else {
			all = append(all, setting{"mortise deep", m.Deep, beyond(m.Deep, j.Long)})
		}
	}
	return all
}

// is reports whether two settings are alike: a mortise is, where it is as deep, or where it is as
// much deeper than its tenon.
func (s setting) is(t setting) bool {
	alike := func(l, m plan.Length) bool { return l.Known() && m.Known() && wood.Same(l.Length, m.Length) }
	return alike(s.Length, t.Length) || alike(s.beyond, t.beyond) || !s.Known() && !t.Known()
}

// beyond is how much more one length is than another.
func beyond(l, than plan.Length) plan.Length {
	if !l.Known() || !than.Known() {
		return plan.Length{}
	}
	l.Length -= than.Length
	return l
}

// setUp is one way in which a machine is set for joints of an assembly.
type setUp struct {
	joint    *plan.Joint
	settings []setting
	ends     []*plan.End
}

// forced is what two joints must share for a difference between them to be one of choice: their kind
// and form, the stock of which they are cut, and what they are cut into.
type forced struct {
	kind                 string
	through, bare, mitre bool
	haunched, wedged     bool
	hardware             *plan.Fastener
	thick, mate, flat    plan.Length
}

func forcedIn(e *plan.End) forced {
	j := e.Joint
	f := forced{
		kind: j.Kind.Is, through: j.Through.On, bare: j.Barefaced.On, mitre: j.Mitred.On,
		haunched: j.Haunch != nil, wedged: j.Wedged != nil, hardware: j.Hardware.To, mate: plain(e.MateSize()),
	}
	if m, ok := e.Of.(*plan.Member); ok {
		f.thick = plain(m.Size.Thick)
	}
	if len(e.Mates) > 0 {
		f.flat = plain(e.Mates[0].Size.Thick)
	}
	return f
}

// plain is a length without where it came from.
func plain(l plan.Length) plan.Length {
	if !l.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: l.Length, How: plan.Derived}
}

// checkSetUps reports the joints of an assembly that come near to others of the same kind.
func checkSetUps(pass *Pass, a *plan.Assembly) {
	of := make(map[forced][]*setUp)
	var order []forced
	for _, e := range a.Ends {
		if e == nil || e.Joint == nil || e.Free || len(e.Mates) == 0 || cutAlready(e.Of) {
			continue
		}
		key := forcedIn(e)
		if of[key] == nil {
			order = append(order, key)
		}
		i := slices.IndexFunc(of[key], func(s *setUp) bool { return s.joint == e.Joint })
		if i < 0 {
			all := settings(e.Joint)
			i = slices.IndexFunc(of[key], func(s *setUp) bool { return sameSettings(s.settings, all) })
			if i < 0 {
				if len(of[key]) == mostSetUps {
					continue
				}
				i = len(of[key])
				of[key] = append(of[key], &setUp{joint: e.Joint, settings: all})
			}
		}
		of[key][i].ends = append(of[key][i].ends, e)
	}
	for _, key := range order {
		sets := of[key]
		slices.SortStableFunc(sets, func(s, t *setUp) int { return -cmp.Compare(len(s.ends), len(t.ends)) })
		for i, rare := range sets {
			for _, usual := range sets[:i] { // of more joints, or said before
				if d, ok := nearly(usual, rare); ok && !meetInside(usual, rare) && reportSetUp(pass, usual, rare, d) {
					break
				}
			}
		}
	}
}

// mostSetUps bounds how many sets of settings of one kind are compared in one assembly.
const mostSetUps = 20

func sameSettings(s, t []setting) bool {
	return slices.EqualFunc(s, t, func(x, y setting) bool {
		return x.name == y.name && x.Known() == y.Known() && (!x.Known() || wood.Same(x.Length.Length, y.Length.Length))
	})
}

// nearly says in which one setting two sets differ; ok is false where they differ in more, or in
// one that is not known.
func nearly(s, t *setUp) (which int, ok bool) {
	if len(s.settings) != len(t.settings) {
		return 0, false
	}
	which = -1
	for i, x := range s.settings {
		y := t.settings[i]
		switch {
		case x.name != y.name || x.Known() != y.Known():
			return 0, false
		case x.is(y):
		case which >= 0:
			return 0, false
		default:
			which = i
		}
	}
	return which, which >= 0
}

// meetInside reports whether some joint of the one set meets one of the other in the same piece from
// another side: they may differ so that they clear each other.
func meetInside(s, t *setUp) bool {
	sides := make(map[*plan.Member]plan.Side)
	for _, e := range s.ends {
		for _, m := range e.Mates {
			sides[m] = e.Side
		}
	}
	for _, e := range t.ends {
		for _, m := range e.Mates {
			if side, there := sides[m]; there && side != e.Side {
				return true
			}
		}
	}
	return false
}

// reportSetUp reports the rarer of two sets, and whether it did.
func reportSetUp(pass *Pass, usual, rare *setUp, which int) bool {
	p := pass.Plan
	was, is := usual.settings[which], rare.settings[which]
	subject := plan.PathOf(rare.ends[0].Of)
	differ := (was.Length.Length - is.Length.Length).Abs()
	if !wood.Over(differ, p.Tape.Tolerance()) || wood.Over(differ, pass.Length(nearSetUp, subject)) {
		return false
	}
	at := is.Span
	if !at.Known() || is.How != plan.Written {
		at = rare.joint.Span
	}
	f := diag.Finding{
		Subject: subject,
		Span:    at,
		Message: fmt.Sprintf("the %s of %s is %s off that of %s (`%s` %s, and %s): the machine is set twice for it",
			rare.joint.Kind.Is, partsOf(rare), p.Show(differ), partsOf(usual), is.name, p.Show(is.Length.Length), p.Show(was.Length.Length)),
		Working: p.Paper().Remark(setUpLine(p, usual)).Remark(setUpLine(p, rare)).Working(),
		Notes:   []diag.Note{{Span: usual.joint.Span, Message: "the other setting"}},
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make both %s, or say with `allow` why they differ", p.Show(was.Length.Length))}},
	}
	pass.Report(f)
	return true
}

// setUpLine lists what a set is set to: `tenon thick 1/4, long 1 1/4: rail "head"`.
func setUpLine(p *plan.Plan, s *setUp) string {
	var figures []string
	for _, x := range s.settings {
		if x.Known() {
			figures = append(figures, x.name+" "+p.Show(x.Length.Length))
		}
	}
	return s.joint.Kind.Is + " " + strings.Join(figures, ", ") + ": " + partsOf(s)
}

// mostNamed is how many parts a line of words names.
const mostNamed = 4

// partsOf names the parts whose ends a set cuts.
func partsOf(s *setUp) string {
	var names []string
	for _, e := range s.ends {
		if name := titled(plan.It(e.Of)); !slices.Contains(names, name) {
			names = append(names, name)
		}
		if len(names) > mostNamed {
			return strings.Join(names[:mostNamed], ", ") + " and others"
		}
	}
	return strings.Join(names, ", ")
}
