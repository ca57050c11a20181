package draw_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/sebdah/goldie/v2"

	"plancheck/internal/diag"
	"plancheck/internal/draw"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/rules"
)

func piece(text string) *plan.Plan {
	p, _ := rules.Run(diag.NewFile("piece.plan", text), nil)
	return p
}

// all are the drawings of a piece, one after the other.
func all(p *plan.Plan, marks []draw.Mark) []draw.Drawing {
	var found []draw.Drawing
	keep := func(d draw.Drawing, ok bool) {
		if ok {
			found = append(found, d)
		}
	}
	for _, a := range p.Assemblies {
		found = append(found, draw.Elevations(p, a, marks)...)
	}
	for n := range plan.AllOf[*plan.Panel](p) {
		keep(draw.PanelSection(p, n))
	}
	for d := range plan.AllOf[*plan.Door](p) {
		keep(draw.SwingOf(p, d))
	}
	for _, m := range p.Materials {
		keep(draw.LayupSection(p, m, []draw.Bend{{When: "humid", Long: 60 * wood.Inch, Wide: 20 * wood.Inch, Warp: wood.Warp{Bow: wood.Inch / 8}}}, marks))
	}
	keep(draw.Movement(p, []draw.Moves{{Name: "slab", Dry: -wood.Inch / 8, Humid: wood.Inch / 16}}))
	return found
}

// Every drawing of every whole piece is XML, fits a page, and says in words what it shows.
func TestDrawingsOfWholePieces(t *testing.T) {
	plans, err := filepath.Glob("../../fixtures/projects/*/s*.plan")
	if err != nil || len(plans) == 0 {
		t.Fatal("there are no whole pieces", err)
	}
	for _, name := range plans {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		drawn := all(piece(string(text)), nil)
		if len(drawn) < 3 {
			t.Errorf("nothing is drawn of %s", name)
		}
		for _, d := range drawn {
			if d.Title == "" || len(d.About) < 20 || d.Scale == "" {
				t.Errorf("%s: %q says too little: %q, %q", name, d.Title, d.About, d.Scale)
			}
			root := xmlRoot(t, string(d.SVG))
			for _, side := range []struct {
				of   string
				most float64
			}{{"width", 186}, {"height", 250}} {
				if mm := attribute(root, side.of); mm <= 10 || mm > side.most {
					t.Errorf("%s: %q has a %s of %g mm", name, d.Title, side.of, mm)
				}
			}
		}
	}
}

func xmlRoot(t *testing.T, text string) xml.StartElement {
	t.Helper()
	var root xml.StartElement
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return root
		}
		if err != nil {
			t.Fatalf("%v in %.200s", err, text)
		}
		if start, ok := token.(xml.StartElement); ok && root.Name.Local == "" {
			root = start.Copy()
		}
	}
}

func attribute(of xml.StartElement, name string) float64 {
	for _, a := range of.Attr {
		if a.Name.Local == name {
			var mm float64
			if _, err := fmt.Sscanf(a.Value, "%gmm", &mm); err == nil {
				return mm
			}
		}
	}
	return 0
}

// An invented leaf: where the parts lie, the tenons, the sizes and the number of a finding.
const leaf = `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; space middle ; rail foot 3 }
    stile right 2
  }
}
`

func TestElevation(t *testing.T) {
	p := piece(leaf)
	d := draw.Elevations(p, p.Assemblies[0], []draw.Mark{{Number: 7, Subject: "leaf.head"}, {Number: 8, Subject: "elsewhere"}, {Number: 9, Subject: "leaf.head.end"}})
	if len(d) != 1 || !slices.Equal(d[0].Marked, []int{7, 9}) {
		t.Fatalf("%d drawings, marked %v", len(d), d[0].Marked)
	}
	golden := goldie.New(t, goldie.WithFixtureDir("../../fixtures/draw"))
	golden.Assert(t, "leaf", []byte(d[0].Title+"\n"+d[0].Scale+"\n"+d[0].About+"\n"+strings.ReplaceAll(string(d[0].SVG), "><", ">\n<")+"\n"))
}

// A front that laps its case is drawn over what it laps, edge by edge.
func TestFrontsAreDrawnOverTheirCase(t *testing.T) {
	p := piece(`units mm
sheet ply { kind plywood ; thick 20 ; actual 20 }
case base { of ply ; wide 400 ; high 300 ; deep 300
  down { top roof ; across { side left ; drawer only { of ply ; front ply applied ; fit overlay 20 top 5 left 10 ; long 250 } ; side right } ; bottom floor }
}
`)
	svg := string(draw.Elevations(p, p.Assemblies[0], nil)[0].SVG)
	// 400 on 80 of paper, 1:5. The opening is 360 x 260; the front 390 x 285, from 10 beside the left and 15 below the top.
	front := strings.Index(svg, `<rect class="wood" x="2" y="3" width="78" height="57"/>`)
	if front < 0 || strings.LastIndex(svg, `class="wood"`) != front+len("<rect ") {
		t.Errorf("the front is not drawn, or something over it:\n%s", svg)
	}
}

// What is not known is not drawn.
func TestNothingIsDrawnOfWhatIsNotKnown(t *testing.T) {
	p := piece("frame leaf { across { stile left 2 ; space ; stile right 2 } }\n")
	if d := all(p, nil); len(d) > 1 { // the widths that are given to it
		t.Errorf("drawn: %v", d)
	}
}

func BenchmarkElevations(b *testing.B) {
	text, err := os.ReadFile("../../fixtures/projects/wardrobe/sound.plan")
	if err != nil {
		b.Fatal(err)
	}
	p := piece(string(text))
	for b.Loop() {
		all(p, nil)
	}
}
