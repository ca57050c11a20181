package lang

// What the tests look at: a tree without its places, as text; and its places, checked.

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
)

// outline shows a tree without its places, a statement a line. Values are shown as
// (op args), numbers with their exact value.
func outline(t *Tree) string {
	var out strings.Builder
	outlineBody(&out, t.Body, 0)
	return out.String()
}

func outlineBody(out *strings.Builder, body []*Statement, depth int) {
	for _, st := range body {
		out.WriteString(strings.Repeat("  ", depth))
		out.WriteString(outlineHead(st))
		out.WriteByte('\n')
		if st.Block != nil {
			outlineBody(out, st.Block.Body, depth+1)
		}
	}
}

func outlineHead(st *Statement) string {
	parts := []string{st.Word.Text}
	if st.Times != nil {
		parts = append(parts, "x "+outlineExpr(st.Times))
	}
	for i := range st.Values {
		parts = append(parts, outlineExpr(&st.Values[i]))
	}
	if st.Equals != nil {
		parts = append(parts, "= "+outlineExpr(st.Equals))
	}
	if st.Block != nil {
		parts = append(parts, "{")
	}
	if st.Faulty {
		parts = append(parts, "(faulty)")
	}
	return strings.Join(parts, " ")
}

func outlineExpr(e *Expr) string {
	switch e.Op {
	case Number:
		if e.Qty.Unit == Ratio {
			return e.Qty.Value.String() + ":"
		}
		return e.Qty.Value.String() + e.Qty.Unit.String()
	case Name:
		return e.Text
	case Text:
		return fmt.Sprintf("%q", e.Text)
	}
	names := map[Op]string{Group: "group", Neg: "neg", Pos: "pos", Sized: "x", List: "list", Call: e.Text}
	parts := []string{names[e.Op] + e.Op.Sign()}
	for i := range e.Args {
		parts = append(parts, outlineExpr(&e.Args[i]))
	}
	return "(" + strings.Join(parts, " ") + ")"
}

func commentTexts(t *Tree) (texts []string) {
	for _, c := range t.Comments {
		texts = append(texts, c.Span.Text())
	}
	return texts
}

// checkPlaces holds the places of a tree and its findings to the text.
func checkPlaces(t rapid.TB, tree *Tree, found []diag.Finding) {
	t.Helper()
	file := tree.File
	inside := func(what string, s diag.Span, in diag.Span) {
		t.Helper()
		if s.File != file || s.Start < in.Start || s.End < s.Start || s.End > in.End {
			t.Fatalf("%s at %d-%d is outside %d-%d", what, s.Start, s.End, in.Start, in.End)
		}
	}
	all := diag.Span{File: file, End: int32(len(file.Text))}
	var expr func(e *Expr, in diag.Span)
	expr = func(e *Expr, in diag.Span) {
		inside("a value", e.Span, in)
		if text := e.Span.Text(); text != strings.TrimSpace(text) || text == "" || e.Op == Name && text != e.Text {
			t.Fatalf("a value covers %q", text)
		}
		at := e.Span.Start
		for i := range e.Args {
			expr(&e.Args[i], e.Span)
			if e.Args[i].Span.Start < at {
				t.Fatalf("values out of order in %q", e.Span.Text())
			}
			at = e.Args[i].Span.End
		}
	}
	var body func(statements []*Statement, in diag.Span)
	body = func(statements []*Statement, in diag.Span) {
		at := in.Start
		for _, st := range statements {
			inside("a statement", st.Span, in)
			if st.Span.Start < at {
				t.Fatalf("statements out of order at %q", st.Span.Text())
			}
			at = st.Span.End
			inside("a word", st.Word.Span, st.Span)
			if st.Word.Span.Text() != st.Word.Text && !st.Faulty {
				t.Fatalf("the word %q covers %q", st.Word.Text, st.Word.Span.Text())
			}
			inside("a head", st.Head(), st.Span)
			if st.Times != nil {
				expr(st.Times, st.Head())
			}
			for i := range st.Values {
				expr(&st.Values[i], st.Head())
			}
			if st.Equals != nil {
				expr(st.Equals, st.Head())
			}
			if b := st.Block; b != nil {
				inside("a brace", b.Open, st.Span)
				within := diag.Span{File: file, Start: b.Open.End, End: st.Span.End}
				if b.Close.Known() {
					inside("a brace", b.Close, st.Span)
					within.End = b.Close.Start
				}
				body(b.Body, within)
			}
		}
	}
	body(tree.Body, all)
	at := int32(0)
	for _, c := range tree.Comments {
		inside("a comment", c.Span, all)
		if c.Span.Start < at || !strings.HasPrefix(c.Span.Text(), "#") {
			t.Fatalf("a comment covers %q", c.Span.Text())
		}
		at = c.Span.End
	}
	for _, f := range found {
		inside("a finding", f.Span, all)
		if f.Rule != Syntax || f.Severity != diag.Error || f.Message == "" {
			t.Fatalf("not a syntax finding: %+v", f)
		}
		for _, n := range f.Notes {
			inside("a note", n.Span, all)
		}
		for _, fix := range f.Fixes {
			if len(fix.Edits) > 0 {
				if _, err := diag.Apply(file, fix.Edits); err != nil {
					t.Fatalf("%s: %v", fix.Title, err)
				}
			}
		}
	}
}

// parse reads a text and checks its places.
func parse(t rapid.TB, text string) (*Tree, []diag.Finding) {
	t.Helper()
	tree, found := Parse(diag.NewFile("test.plan", text))
	checkPlaces(t, tree, found)
	return tree, found
}

// sound is parse for a text without faults.
func sound(t rapid.TB, text string) *Tree {
	t.Helper()
	tree, found := parse(t, text)
	if len(found) > 0 {
		line, _ := found[0].Span.Position()
		t.Fatalf("line %d of\n%s\n%s", line, text, found[0].Message)
	}
	return tree
}
