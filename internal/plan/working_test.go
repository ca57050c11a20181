package plan_test

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// in is a length in whole inches and 64ths.
func in(whole, sixtyFourths wood.Length) wood.Length {
	return whole*wood.Inch + sixtyFourths*(wood.Inch/64)
}

const mm = wood.Millimetre

// onPaper is a working as lines of sign, figure and label.
func onPaper(w diag.Working) string {
	var lines []string
	for _, s := range w {
		lines = append(lines, strings.Join(strings.Fields(s.Op.Sign()+" "+s.Value+" "+s.Label), " "))
	}
	return strings.Join(lines, "\n")
}

func TestPaper(t *testing.T) {
	inch, metric := &plan.Plan{}, &plan.Plan{Tape: wood.Tape{Metric: true}}
	tests := []struct {
		name  string
		paper *plan.Paper
		want  string
	}{
		{"the rail of the listening cabinet", inch.Paper().
			Start(in(19, 0), "opening carcass.left-door").
			Minus(in(0, 6), "reveal, hinge side").
			Minus(in(0, 6), "reveal, latch side").
			Equals("width of leaf-frame").
			Minus(in(2, 16), "stile hinge-side").
			Minus(in(2, 16), "stile latch-side").
			Equals("between shoulders").
			Plus(in(1, 16), "tenon into hinge-side").
			Plus(in(1, 16), "tenon into latch-side").
			Equals("needed"), `
19 opening carcass.left-door
- 3/32 reveal, hinge side
- 3/32 reveal, latch side
= 18 13/16 width of leaf-frame
- 2 1/4 stile hinge-side
- 2 1/4 stile latch-side
= 14 5/16 between shoulders
+ 1 1/4 tenon into hinge-side
+ 1 1/4 tenon into latch-side
= 16 13/16 needed`},
		{"a metric sheet in an inch plan stands in decimals, with the nearest mark", inch.Paper().
			Start(in(27, 0), "high").
			Minus(6*mm, "6mm sheet").
			Equals("room"), `
27 high
- 0.236 6mm sheet
= 26.764 room ≈ 26 3/4`},
		{"two sheets that round the same way take a place more", inch.Paper().
			Start(4*mm, "a").
			Plus(4*mm, "b").
			Equals(""), `
0.1575 a
+ 0.1575 b
= 0.315 ≈ 5/16`},
		{"what is more than is there", inch.Paper().
			Start(in(2, 0), "there").
			Minus(in(2, 8), "wanted").
			Equals("left").
			Versus(0, "at least"), `
2 there
- 2 1/8 wanted
= -1/8 left
: 0 at least`},
		{"a negative length changes the sign", inch.Paper().
			Start(in(20, 0), "opening").
			Minus(-in(0, 32), "overlay").
			Plus(-in(0, 16), "trim").
			Equals("leaf"), `
20 opening
+ 1/2 overlay
- 1/4 trim
= 20 1/4 leaf`},
		{"times and over", inch.Paper().
			Start(in(36, 0), "inside").
			Minus(in(4, 0), "muntins").
			Over(3, "panels").
			Equals("each").
			Plus(in(0, 24), "grooves").
			Times(2, "panels of one board").
			Equals("needed"), `
36 inside
- 4 muntins
= 32
/ 3 panels
= 10.6667 each
+ 3/8 grooves
= 11.0417
x 2 panels of one board
= 22.0833 needed ≈ 22 3/32`},
		{"on the mark, times stays on it", inch.Paper().
			Start(in(0, 6), "reveal").Times(4, "").Equals("reveals").
			Remark("and all of them go round").
			Start(in(1, 0), "board").Equals("alone"), `
3/32 reveal
x 4
= 3/8 reveals
and all of them go round
1 board
= 1 alone`},
		{"so many that they are taken down in one", inch.Paper().
			Start(in(2, 16), "slat").Times(1000, "slats").Equals(""), `
2 1/4 slat
x 1000 slats
= 2250`},
		{"none at all", inch.Paper().Start(in(2, 16), "slat").Times(0, "slats").Equals(""), `
2 1/4 slat
x 0 slats
= 0`},
		{"millimetres", metric.Paper().
			Start(600*mm, "wide").
			Minus(18*mm, "side").
			Minus(18*mm, "side").
			Minus(in(0, 16), "a quarter inch").
			Equals("inside").
			Over(2, "").
			Equals("each"), `
600 wide
- 18 side
- 18 side
- 6.35 a quarter inch
= 557.65 inside
/ 2
= 278.825 each ≈ 279`},
		{"nothing", inch.Paper(), ``},
		{"a sum without a start", inch.Paper().Plus(in(1, 0), "a").Equals("b"), `
+ 1 a
= 1 b`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got, want := onPaper(test.paper.Working()), strings.TrimPrefix(test.want, "\n"); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// A rule may look at a sum before it is finished, and set it down more than once.
func TestPaperResult(t *testing.T) {
	paper := (&plan.Plan{}).Paper().Start(in(10, 0), "").Minus(in(1, 0), "").Over(3, "").Equals("")
	if got := paper.Result(); got != in(3, 0) {
		t.Errorf("result %d, want %d", got, in(3, 0))
	}
	if a, b := onPaper(paper.Working()), onPaper(paper.Working()); a != b {
		t.Errorf("set down twice:\n%s\n%s", a, b)
	}
}

func TestShowSaid(t *testing.T) {
	own, other := diag.NewFile("a.plan", `6mm  27  1/2" 27.5 2' 6 1/2" play 2 * 3 .5`), diag.NewFile("b.plan", "18 18mm")
	tests := []struct {
		file *diag.File
		text string
		how  plan.How
		l    wood.Length
		want string
	}{
		{own, "6mm", plan.Written, 6 * mm, "6mm"},
		{own, "6mm", plan.Derived, 6 * mm, "0.2362"},
		{own, "27.5", plan.Written, in(27, 32), "27.5"},
		{own, `27  1/2"`, plan.Written, in(27, 32), `27 1/2"`},
		{own, `2' 6 1/2"`, plan.Written, in(30, 32), `2' 6 1/2"`},
		{own, ".5", plan.Written, in(0, 32), ".5"},
		{own, "play", plan.Written, in(0, 6), "3/32"},
		{own, "2 * 3", plan.Written, in(6, 0), "6"},
		{other, "18", plan.Written, 18 * mm, "0.7087"}, // bare figures of another file may be millimetres
		{other, "18mm", plan.Written, 18 * mm, "18mm"},
	}
	for _, test := range tests {
		at := strings.Index(test.file.Text, test.text)
		l := plan.Length{
			Length: test.l, How: test.how,
			Span: diag.Span{File: test.file, Start: int32(at), End: int32(at + len(test.text))},
		}
		if got := (&plan.Plan{File: own}).ShowSaid(l); got != test.want {
			t.Errorf("%q: got %q, want %q", test.text, got, test.want)
		}
	}
	if got := (&plan.Plan{}).ShowSaid(plan.Length{Length: in(2, 0), How: plan.Written}); got != "2" {
		t.Errorf("written nowhere: got %q", got)
	}
}
