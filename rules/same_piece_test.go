package rules_test

// The same piece said in another way gets the same findings: in millimetres, mirrored left
// to right, with its statements in another order, and as the formatter lays it out.

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/lang"
	"plancheck/rules"
)

func TestTheSamePieceSaidOtherwise(t *testing.T) {
	ways := []struct {
		name string
		say  func(*lang.Tree) string
	}{
		{"in millimetres", inMillimetres},
		{"mirrored", mirrored},
		{"in another order", shuffled},
		{"formatted", lang.Format},
	}
	folders := []string{"can-tip-over", "bed-for-children", "tips-by-leaning", "tips-with-drawers-open"} // what stands on the floor
	for i := range folders {
		folders[i] = ruleFixtures + "/" + folders[i]
	}
	for _, dir := range foldersIn(t, projects) {
		folders = append(folders, projects+"/"+dir)
	}
	for _, dir := range folders {
		for _, name := range plansIn(t, dir) {
			c := read(t, dir, name)
			tree, faults := lang.Parse(c.folder.read[0])
			if len(faults) > 0 {
				continue
			}
			for _, way := range ways {
				t.Run(filepath.Base(dir)+"/"+name+" "+way.name, func(t *testing.T) {
					text := way.say(tree)
					_, found := rules.Run(diag.NewFile(name, text), c.folder.open)
					want, got := about(c.found), about(found)
					if !slices.Equal(want, got) {
						t.Errorf("findings differ\nwant %s\ngot  %s\n%s", strings.Join(want, "\n     "), strings.Join(got, "\n     "), text)
					}
				})
			}
		}
	}
}

// about is what the findings are about, whatever their words and places.
func about(found []diag.Finding) []string {
	var list []string
	for _, f := range found {
		list = append(list, fmt.Sprintf("%s [%s] %s", f.Severity, f.Rule, f.Subject))
	}
	slices.Sort(list)
	return list
}

// say writes statements out again, plainly, with some of them changed on the way.
type say struct {
	head  func(*lang.Statement) string
	order func(owner *lang.Statement, body []*lang.Statement) []*lang.Statement
}

func (w say) tree(t *lang.Tree) string {
	var out strings.Builder
	w.body(&out, nil, t.Body)
	return out.String()
}

func (w say) body(out *strings.Builder, owner *lang.Statement, body []*lang.Statement) {
	for _, s := range w.order(owner, slices.Clone(body)) {
		out.WriteString(w.head(s))
		if s.Block != nil {
			out.WriteString(" {\n")
			w.body(out, s, s.Block.Body)
			out.WriteString("}")
		}
		out.WriteString("\n")
	}
}

func asWritten(s *lang.Statement) string { return s.Head().Text() }

func inOrder(_ *lang.Statement, body []*lang.Statement) []*lang.Statement { return body }

func isList(s *lang.Statement) bool {
	return s != nil && slices.Contains([]string{"across", "down", "behind"}, s.Word.Text)
}

// ordered are the statements whose blocks say something by the order of their lines.
func ordered(s *lang.Statement) bool {
	return isList(s) || s != nil && slices.Contains([]string{"steps", "layup"}, s.Word.Text)
}

// shuffled puts statements into another order wherever the order says nothing.
func shuffled(t *lang.Tree) string {
	random := rand.New(rand.NewPCG(1, 2))
	return say{asWritten, func(owner *lang.Statement, body []*lang.Statement) []*lang.Statement {
		if !ordered(owner) {
			random.Shuffle(len(body), func(i, j int) { body[i], body[j] = body[j], body[i] })
		}
		return body
	}}.tree(t)
}

// mirrored turns the piece left to right.
func mirrored(t *lang.Tree) string {
	return say{func(s *lang.Statement) string {
		return edited(s, func(e *lang.Expr, before string) (string, bool) {
			if e.Op == lang.Name && slices.Contains([]string{"hang", "end", "edging"}, before) {
				switch e.Text {
				case "left":
					return "right", true
				case "right":
					return "left", true
				}
			}
			return "", false
		})
	}, func(owner *lang.Statement, body []*lang.Statement) []*lang.Statement {
		if owner != nil && owner.Word.Text == "across" {
			slices.Reverse(body)
		}
		return body
	}}.tree(t)
}

// plainNumbers are the settings that a bare number counts in, or that have no length.
var plainNumbers = []string{"count", "leaves", "boards", "places", "share", "gauge", "sides", "pins", "key", "people", "quarters"}

// inMillimetres writes every length of a plan in inches in millimetres, and says so; a
// plan that is in millimetres is written in inches.
func inMillimetres(t *lang.Tree) string {
	metric := strings.Contains(t.File.Text, "units mm")
	per, unit := lang.NewRat(254, 10), "units mm\n"
	if metric {
		per, unit = lang.NewRat(10, 254), "units in\n"
	}
	text := say{func(s *lang.Statement) string {
		if s.Word.Text == "units" {
			return "" // said at the top
		}
		return edited(s, func(e *lang.Expr, before string) (string, bool) {
			if e.Op != lang.Number || e.Qty.Unit != lang.Bare || slices.Contains(plainNumbers, before) {
				return "", false
			}
			mm := e.Qty.Value.Mul(per)
			return "(" + strings.Replace(mm.String(), "/", " / ", 1) + ")", true // exact, as a quotient
		})
	}, inOrder}.tree(t)
	return unit + text
}

// edited is a statement's own line with some of its values written otherwise. before is
// the last name that stands before a value; it is "*" for a factor and for what counts.
func edited(s *lang.Statement, edit func(e *lang.Expr, before string) (string, bool)) string {
	var edits []diag.Edit
	var visit func(e *lang.Expr, before string)
	visit = func(e *lang.Expr, before string) {
		if text, ok := edit(e, before); ok {
			edits = append(edits, diag.Edit{Span: e.Span, Text: text})
			return
		}
		for i := range e.Args {
			inner := before
			if e.Op == lang.Mul || e.Op == lang.Div || e.Op == lang.Sized && i > 0 && e.Args[0].Op == lang.Name {
				inner = "count"
			}
			visit(&e.Args[i], inner)
		}
	}
	before := s.Word.Text
	for i := range s.Values {
		visit(&s.Values[i], before)
		if s.Values[i].Op == lang.Name {
			before = s.Values[i].Text
		}
	}
	if s.Equals != nil {
		visit(s.Equals, "let")
	}
	text, err := diag.Apply(s.Span.File, edits)
	if err != nil {
		panic(err)
	}
	head := s.Head()
	return text[head.Start : int(head.End)+len(text)-len(s.Span.File.Text)]
}
