package rules

// The engine by itself: hand-made rules and findings on hand-made plans.

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// sheet is a text in which places are found by what stands there.
type sheet struct{ file *diag.File }

func newSheet(text string) sheet { return sheet{diag.NewFile("a.plan", text)} }

func (s sheet) at(text string) diag.Span {
	i := strings.Index(s.file.Text, text)
	if i < 0 {
		panic("not in the text: " + text)
	}
	return diag.Span{File: s.file, Start: int32(i), End: int32(i + len(text))}
}

// drawn is a plan of the sheet with a piece in it.
func (s sheet) drawn(p *plan.Plan) *plan.Plan {
	p.File = s.file
	p.Assemblies = []*plan.Assembly{{Name: plan.Name{Text: "carcass", Span: s.at("carcass")}}}
	return p
}

// raising is a rule that reports what it is given.
func raising(name string, found ...diag.Finding) *Rule {
	return &Rule{Name: name, Severity: diag.Warning, Check: func(p *Pass) {
		for _, f := range found {
			p.Report(f)
		}
	}}
}

// told is what was found, a line each.
func told(found []diag.Finding) string {
	var lines []string
	for _, f := range found {
		line := fmt.Sprintf("%s %s [%s] %s", f.Severity, f.Span.Text(), f.Rule, f.Message)
		for _, n := range f.Notes {
			line += " (" + n.Message + ")"
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

func wantTold(t *testing.T, found []diag.Finding, want ...string) {
	t.Helper()
	if got := told(found); got != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
}

func TestReportFillsInTheRule(t *testing.T) {
	s := newSheet("carcass")
	r := raising("thin", diag.Finding{Span: s.at("carcass"), Message: "a"},
		diag.Finding{Span: s.at("carcass"), Message: "b", Severity: diag.Advice})
	wantTold(t, judge(s.drawn(&plan.Plan{}), []*Rule{r}, nil),
		"warning carcass [thin] a", "advice carcass [thin] b")
}

func TestFindingsComeInReadingOrder(t *testing.T) {
	s := newSheet("carcass one two")
	all := []*Rule{raising("b", diag.Finding{Span: s.at("one")}), raising("c", diag.Finding{Span: s.at("carcass")})}
	read := []diag.Finding{{Rule: "a", Severity: diag.Error, Span: s.at("two")}}
	wantTold(t, judge(s.drawn(&plan.Plan{}), all, read),
		"warning carcass [c] ", "warning one [b] ", "error two [a] ")
}

func TestAllow(t *testing.T) {
	s := newSheet(`carcass rail here there allow-1 allow-2 thin reason`)
	allow := func(at, subject string) *plan.Allow {
		return &plan.Allow{
			Rule: plan.Text{Text: "thin", Span: s.at("thin")}, Subject: subject, Span: s.at(at),
			Reason: plan.Text{Text: "measured", Span: s.at("reason")},
		}
	}
	on := func(a *plan.Allow, paths ...string) *plan.Allow {
		for _, p := range paths {
			a.On = append(a.On, plan.Ref[plan.Thing]{Name: p, To: &plan.Thing{Path: p}})
		}
		return a
	}
	edit := func(a *plan.Allow, change func(*plan.Allow)) *plan.Allow { change(a); return a }
	here := diag.Finding{Span: s.at("here"), Subject: "carcass.upper.front", Message: "thin"}
	there := diag.Finding{Span: s.at("there"), Subject: "carcass2.upper", Message: "thin"}
	const (
		isHere    = "warning here [thin] thin"
		isThere   = "warning there [thin] thin"
		isUnused1 = "warning allow-1 [unused-allow] `allow thin` silences nothing here"
	)
	tests := []struct {
		name      string
		allows    []*plan.Allow
		read      []diag.Finding
		unchecked int
		want      []string
	}{
		{"none", nil, nil, 0, []string{isHere, isThere}},
		{"in the plan", []*plan.Allow{allow("allow-1", "")}, nil, 0, nil},
		{"in the block around", []*plan.Allow{allow("allow-1", "carcass")}, nil, 0, []string{isThere}},
		{"in the block itself", []*plan.Allow{allow("allow-1", "carcass.upper.front")}, nil, 0, []string{isThere}},
		{
			"in a block within",
			[]*plan.Allow{allow("allow-1", "carcass.upper.front.left")},
			nil, 0,
			[]string{isHere, isThere, isUnused1},
		},
		{
			"a name that only starts alike",
			[]*plan.Allow{allow("allow-1", "carc")},
			nil, 0,
			[]string{isHere, isThere, isUnused1},
		},
		{
			"on what it names, not where it stands",
			[]*plan.Allow{on(allow("allow-1", "carcass"), "carcass2", "rail")},
			nil, 0,
			[]string{isHere},
		},
		{
			"on a name that was not found",
			[]*plan.Allow{edit(allow("allow-1", ""), func(a *plan.Allow) {
				a.On = []plan.Ref[plan.Thing]{{Name: "nosuch"}}
			})},
			[]diag.Finding{{Rule: plan.UnknownName, Severity: diag.Error, Span: s.at("rail")}},
			0,
			[]string{"error rail [unknown-name] ", isHere, isThere},
		},
		{"two for one finding are both used", []*plan.Allow{allow("allow-1", "carcass"), allow("allow-2", "")}, nil, 0, nil},
		{
			"of each build one, used in one of them",
			[]*plan.Allow{allow("allow-1", "carcass"), allow("allow-1", "other")},
			nil, 0,
			[]string{isThere},
		},
		{
			"of each build one, used in none",
			[]*plan.Allow{allow("allow-1", "one"), allow("allow-1", "other")},
			nil, 0,
			[]string{isHere, isThere, isUnused1},
		},
		{"unused, but sizes are unknown", []*plan.Allow{allow("allow-1", "rail")}, nil, 1, []string{isHere, isThere}},
		{
			"unused, but a line was not read",
			[]*plan.Allow{allow("allow-1", "rail")},
			[]diag.Finding{{Rule: lang.Syntax, Severity: diag.Error, Span: s.at("rail")}},
			0,
			[]string{"error rail [syntax] ", isHere, isThere},
		},
		{
			"unused beside mere advice",
			[]*plan.Allow{allow("allow-1", "rail")},
			[]diag.Finding{{Rule: "advised", Severity: diag.Advice, Span: s.at("rail")}},
			0,
			[]string{"advice rail [advised] ", isHere, isThere, isUnused1},
		},
		{
			"no reason",
			[]*plan.Allow{edit(allow("allow-1", ""), func(a *plan.Allow) { a.Reason.Text = " " })},
			nil, 0,
			[]string{"error allow-1 [missing-reason] `allow thin` gives no reason: say why in quotes, such as \"measured on the finished case\""},
		},
		{
			"no such rule",
			[]*plan.Allow{edit(allow("allow-1", ""), func(a *plan.Allow) { a.Rule.Text = "thni" })},
			nil, 0,
			[]string{isHere, isThere, "error thin [unknown-rule] there is no rule `thni`: did you mean `thin`?"},
		},
		{
			"a fault of the text",
			[]*plan.Allow{edit(allow("allow-1", ""), func(a *plan.Allow) { a.Rule.Text = "text" })},
			[]diag.Finding{{Rule: "text", Severity: diag.Warning, Span: s.at("rail")}},
			0,
			[]string{"warning rail [text] ", isHere, isThere, "error thin [not-allowable] `text` cannot be allowed: mend what it reports"},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			all := []*Rule{{Name: "text", Always: true}, raising("thin", here, there)}
			p := s.drawn(&plan.Plan{Allows: test.allows, Unchecked: test.unchecked})
			wantTold(t, judge(p, all, test.read), test.want...)
		})
	}
}

// A shelf of definitions is used by many plans: in none of them does all of it count.
func TestAllowOnAShelfIsNotUnused(t *testing.T) {
	s, shelf := newSheet("carcass"), sheet{diag.NewFile("shelf.plan", "allow")}
	p := s.drawn(&plan.Plan{Allows: []*plan.Allow{{Rule: plan.Text{Text: "thin"}, Reason: plan.Text{Text: "so"}, Span: shelf.at("allow")}}})
	wantTold(t, judge(p, []*Rule{raising("thin")}, nil))
}

func TestOutward(t *testing.T) {
	got := slices.Collect(outward("carcass.upper.front"))
	if want := []string{"carcass.upper.front", "carcass.upper", "carcass", ""}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := slices.Collect(outward("")); !slices.Equal(got, []string{""}) {
		t.Errorf("from the plan: %q", got)
	}
}

func TestLimits(t *testing.T) {
	s := newSheet(`carcass limit-1 limit-2 thin least value reason`)
	least := &Figure{Name: "least", Basis: Practice, Dim: lang.Length, Length: wood.Inch / 2}
	share := &Figure{Name: "share", Basis: Memory, Dim: lang.Percent, Number: 25}
	stands := &Figure{Name: "stands", Basis: Published, Source: "Noyes no. 42", Dim: lang.Length, Length: wood.Inch}
	rule := &Rule{Name: "thin", Severity: diag.Warning, Figures: []*Figure{least, share, stands}}
	rule.Check = func(p *Pass) {
		for _, subject := range []string{"carcass.upper", "other"} {
			p.Report(diag.Finding{
				Span: s.at("thin"), Subject: subject,
				Message: fmt.Sprintf("%s %s %.0f", subject, p.Plan.Show(p.Length(least, subject)), p.Number(share, subject)),
			})
		}
	}
	plain := &Rule{Name: "plain"}
	length := plan.Value{Rat: lang.NewRat(int64(wood.Inch/4), 1), Dim: lang.Length, Span: s.at("value")}
	percent := plan.Value{Rat: lang.NewRat(30, 1), Dim: lang.Percent, Span: s.at("value")}
	limit := func(at, figure, subject string, value plan.Value) *plan.Limit {
		return &plan.Limit{
			Rule: plan.Text{Text: "thin", Span: s.at("thin")}, Figure: plan.Text{Text: figure, Span: s.at("least")},
			Value: value, Reason: plan.Text{Text: "tried"}, Subject: subject, Span: s.at(at),
		}
	}
	edit := func(l *plan.Limit, change func(*plan.Limit)) *plan.Limit { change(l); return l }
	const carcass, other = "warning thin [thin] carcass.upper 1/2 25", "warning thin [thin] other 1/2 25"
	tests := []struct {
		name   string
		limits []*plan.Limit
		want   []string
	}{
		{"none", nil, []string{carcass, other}},
		{
			"in the plan",
			[]*plan.Limit{limit("limit-1", "least", "", length)},
			[]string{"warning thin [thin] carcass.upper 1/4 25", "warning thin [thin] other 1/4 25"},
		},
		{
			"in a block",
			[]*plan.Limit{limit("limit-1", "share", "carcass", percent)},
			[]string{"warning thin [thin] carcass.upper 1/2 30", other},
		},
		{
			"the nearest holds",
			[]*plan.Limit{
				limit("limit-1", "share", "", percent),
				edit(limit("limit-2", "share", "carcass", percent), func(l *plan.Limit) { l.Value.Rat = lang.NewRat(40, 1) }),
			},
			[]string{"warning thin [thin] carcass.upper 1/2 40", "warning thin [thin] other 1/2 30"},
		},
		{
			"twice",
			[]*plan.Limit{limit("limit-1", "least", "", length), limit("limit-2", "least", "", length)},
			[]string{
				"error limit-2 [wrong-limit] `limit thin least` is set twice here (set first here)",
				"warning thin [thin] carcass.upper 1/4 25", "warning thin [thin] other 1/4 25",
			},
		},
		{"not worked out", []*plan.Limit{limit("limit-1", "least", "", plan.Value{})}, []string{carcass, other}},
		{
			"no such figure",
			[]*plan.Limit{limit("limit-1", "most", "", length)},
			[]string{carcass, other, "error least [wrong-limit] `thin` has no figure `most`: a plan may set `least`, `share`"},
		},
		{
			"a rule without figures",
			[]*plan.Limit{edit(limit("limit-1", "most", "", length), func(l *plan.Limit) { l.Rule.Text = "plain" })},
			[]string{carcass, other, "error least [wrong-limit] `plain` has no figure that a plan may set"},
		},
		{
			"a figure that stands",
			[]*plan.Limit{limit("limit-1", "stands", "", length)},
			[]string{carcass, other, "error least [wrong-limit] the figure `stands` of `thin` stands: Noyes no. 42 (published)"},
		},
		{
			"another quantity",
			[]*plan.Limit{limit("limit-1", "least", "", percent)},
			[]string{carcass, other, "error value [wrong-limit] `limit thin least` wants " + lang.Length.String() + ", but this is " + lang.Percent.String()},
		},
		{
			"no reason",
			[]*plan.Limit{edit(limit("limit-1", "least", "", length), func(l *plan.Limit) { l.Reason.Text = "" })},
			[]string{"error limit-1 [missing-reason] `limit thin least` gives no reason: say why in quotes, such as \"measured on the finished case\"", carcass, other},
		},
		{
			"no such rule",
			[]*plan.Limit{edit(limit("limit-1", "least", "", length), func(l *plan.Limit) { l.Rule.Text = "plian" })},
			[]string{carcass, other, "error thin [unknown-rule] there is no rule `plian`: did you mean `plain`?"},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			wantTold(t, sorted(judge(s.drawn(&plan.Plan{Limits: test.limits}), []*Rule{plain, rule}, nil)), sortedLines(test.want)...)
		})
	}
}

// sorted and sortedLines leave the order to TestFindingsComeInReadingOrder.
func sorted(found []diag.Finding) []diag.Finding {
	slices.SortFunc(found, func(a, b diag.Finding) int {
		return strings.Compare(told([]diag.Finding{a}), told([]diag.Finding{b}))
	})
	return found
}

func sortedLines(lines []string) []string {
	lines = slices.Clone(lines)
	slices.Sort(lines)
	return lines
}

func TestFiguresInMillimetres(t *testing.T) {
	f := &Figure{Dim: lang.Length, Length: wood.Inch, Metric: 25 * wood.Millimetre}
	same := &Figure{Dim: lang.Length, Length: wood.Inch}
	for _, metric := range []bool{false, true} {
		p := Pass{Plan: &plan.Plan{Tape: wood.Tape{Metric: metric}}}
		want := wood.Inch
		if metric {
			want = 25 * wood.Millimetre
		}
		if got := p.Length(f, ""); got != want {
			t.Errorf("metric %v: got %d, want %d", metric, got, want)
		}
		if got := p.Length(same, ""); got != wood.Inch {
			t.Errorf("metric %v: a figure that is not rounded became %d", metric, got)
		}
	}
}

func TestFold(t *testing.T) {
	s := newSheet("carcass pattern { rail stile } left-build right-build mid-build outside")
	body := s.at("{ rail stile }")
	leaf := &plan.Pattern{Name: plan.Name{Text: "leaf", Span: s.at("pattern")}, Body: []*lang.Statement{{Span: body}}}
	var all []*plan.Build
	for _, name := range []string{"left", "mid", "right"} {
		all = append(all, &plan.Build{Name: plan.Name{Text: name}, Pattern: plan.Ref[plan.Pattern]{To: leaf}, Span: s.at(name + "-build")})
	}
	pair := []*plan.Build{all[0], all[2]}
	rail := func(subject, message string) diag.Finding {
		return diag.Finding{Span: s.at("rail"), Subject: subject, Message: message}
	}
	tests := []struct {
		name   string
		builds []*plan.Build
		raised []diag.Finding
		want   []string
	}{
		{
			"every build", pair,
			[]diag.Finding{rail("left.head", "short"), rail("right.head", "short")},
			[]string{"warning rail [thin] short"},
		},
		{
			"one of two", pair,
			[]diag.Finding{rail("right.head", "short")},
			[]string{`warning rail [thin] short (in build "right")`},
		},
		{
			"two of three", all,
			[]diag.Finding{rail("left.head", "short"), rail("right.head", "short")},
			[]string{`warning rail [thin] short (in builds "left" and "right")`},
		},
		{
			"other figures in each", pair,
			[]diag.Finding{rail("left.head", "1 short"), rail("right.head", "2 short")},
			[]string{`warning rail [thin] 1 short (in build "left")`, `warning rail [thin] 2 short (in build "right")`},
		},
		{
			"built once", all[:1],
			[]diag.Finding{rail("left.head", "short")},
			[]string{"warning rail [thin] short"},
		},
		{
			"several in each build", pair,
			[]diag.Finding{rail("left.a", "short"), rail("left.b", "short"), rail("right.a", "short")},
			[]string{"warning rail [thin] short"},
		},
		{
			"a build in a build", pair,
			[]diag.Finding{rail("case-a.left.head", "short"), rail("case-a.left.foot", "short")},
			[]string{`warning rail [thin] short (in build "case-a.left")`},
		},
		{
			"outside the pattern a name that is a build's says nothing", pair,
			[]diag.Finding{{Span: s.at("outside"), Subject: "left.head", Message: "short"}},
			[]string{"warning outside [thin] short"},
		},
		{
			"a row", nil,
			[]diag.Finding{rail("door.field-1", "wide"), rail("door.field-2", "wide")},
			[]string{"warning rail [thin] wide"},
		},
		{
			"two places", nil,
			[]diag.Finding{rail("a", "wide"), {Span: s.at("stile"), Subject: "b", Message: "wide"}},
			[]string{"warning rail [thin] wide", "warning stile [thin] wide"},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := s.drawn(&plan.Plan{Builds: test.builds})
			wantTold(t, judge(p, []*Rule{raising("thin", test.raised...)}, nil), test.want...)
		})
	}
}

func TestManyBuildsAreCounted(t *testing.T) {
	var by []built
	for i := range 7 {
		by = append(by, built{path: fmt.Sprintf("b%d", i)})
	}
	if got, want := nameBuilds(by), `in builds "b0", "b1", "b2", "b3", "b4" and 2 more`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}
