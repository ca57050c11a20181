package plan

import (
	"fmt"
	"os"
	"testing"

	"plancheck/internal/diag"
	"plancheck/lang"
)

func TestTry(t *testing.T) {
	name := os.Getenv("TRY")
	if name == "" {
		t.Skip()
	}
	text, _ := os.ReadFile(name)
	f := diag.NewFile(name, string(text))
	tree, faults := lang.Parse(f)
	for _, x := range faults {
		l, c := x.Span.Position()
		fmt.Printf("%d:%d %s [%s]\n", l, c, x.Message, x.Rule)
	}
	p, faults := Resolve(tree, nil)
	for _, x := range faults {
		l, c := x.Span.Position()
		fmt.Printf("%d:%d %s [%s]\n", l, c, x.Message, x.Rule)
	}
	sh := func(l Length) string {
		if !l.Known() {
			return "?"
		}
		return p.Show(l.Length)
	}
	for _, a := range p.Assemblies {
		fmt.Printf("%s %s: %s x %s x %s\n", a.Kind, PathOf(a), sh(a.Outside[0]), sh(a.Outside[1]), sh(a.Outside[2]))
		for n := range a.Nodes() {
			it := It(n)
			fmt.Printf("  %-8s %-14s", it.Word, it.Name.Text)
			for _, e := range it.Cell {
				if e.Known() {
					fmt.Printf(" [%s +%s]", p.Show(e.From), p.Show(e.Size))
				} else {
					fmt.Printf(" [?]")
				}
			}
			switch n := n.(type) {
			case *Member:
				fmt.Printf("  size %s x %s x %s grain %s flat %s", sh(n.Size.Long), sh(n.Size.Wide), sh(n.Size.Thick), n.Grain, n.Flat)
				for _, e := range n.Ends {
					if e == nil {
						continue
					}
					fmt.Printf(" %s:", e.Side)
					for _, m := range e.Mates {
						fmt.Printf("%s,", m.Name.Text)
					}
					if e.Joint != nil {
						fmt.Printf("(%s +%s)", e.Joint.Kind.Is, sh(e.Adds))
					}
				}
			case *Panel:
				fmt.Printf("  size %s x %s x %s gap %s x %s", sh(n.Size.Long), sh(n.Size.Wide), sh(n.Size.Thick), sh(n.GapUsed.Across), sh(n.GapUsed.Deep))
			case *Door:
				fmt.Printf("  leaf %s x %s", sh(n.Size[0]), sh(n.Size[1]))
			case *Drawer:
				for _, b := range []*BoxPart{n.Front, n.Inner, n.Left, n.Right, n.Back, n.Bottom} {
					if b != nil {
						fmt.Printf("\n      %s %s x %s x %s", b.Name, sh(b.Size.Long), sh(b.Size.Wide), sh(b.Size.Thick))
					}
				}
			}
			fmt.Println()
		}
	}
	for _, c := range p.Checks {
		fmt.Println("check", c.Why.Text, c.Known, c.Holds)
	}
}
