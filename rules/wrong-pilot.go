package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	pilotSoft = &Figure{
		Name: "soft", Why: "how thick a pilot hole in softwood is at least, as a part of the screw's root", Basis: Published,
		Source: "70 %: an ASTM paper of 1960 on eleven western species", Dim: lang.Plain, Number: 0.7,
	}
	pilotHard = &Figure{
		Name: "hard", Why: "how thick a pilot hole in hardwood is at least, as a part of the screw's root", Basis: Memory,
		Source: "90 %, believed to stand in the Wood Handbook, ch. 8", Dim: lang.Plain, Number: 0.9,
	}
	drillStep = &Figure{
		Name: "step", Why: "by how much a drill may differ", Basis: Practice,
		Source: "1/64 (0.5 mm), the step in which drills are sold: published charts differ by as much", Dim: lang.Length, Length: wood.Inch / 64, Metric: wood.Millimetre / 2,
	}
)

var wrongPilot = &Rule{
	Name: "wrong-pilot", Group: Joints, Severity: diag.Warning,
	Summary: "a pilot hole does not suit its screw",
	Doc: `In a pilot hole that is too small for hard wood the screw snaps off below its head, or the wood splits; in one as thick as the screw
its thread holds nothing.

Drill softwood to 70 % of the screw's root at least and hardwood to 90 %, and no wider than the table for its number says: for a number 8,
7/64 in hard wood and 3/32 in soft. The root is two thirds of the shank, which is 0.060 and 0.013 in for each number. Half to two thirds of
the thread's length is deep enough. The rule looks where a plan says "pilot".`,
	Sources: `Holes by number: a woodworkers' drilling table, and a boat plan's chart that differs by a step. The root: Wood Handbook,
FPL-GTR-190, ch. 8. The depth: a US Army text on carpentry. The other figures are as they say.`,
	Sound: `7/64 for a number 8 in oak, and 3/32 in pine; 5/64 in pine, as another chart has it; a number 12, which is in no table;
any hole in sheet stock that leaves the thread its hold.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
screw no8 { gauge 8 ; long 1 3/4 ; head flat }
part cleat { of oak ; size 12 x 2 x 3/4 }
part post  { of oak ; size 30 x 2 x 2 }
fix cleat to post { screw no8 x 3 { pilot 1/16 } }
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
screw no8 { gauge 8 ; long 1 3/4 ; head flat }
part cleat { of oak ; size 12 x 2 x 3/4 }
part post  { of oak ; size 30 x 2 x 2 }
fix cleat to post { screw no8 x 3 { pilot 7/64 } }
`,
	Figures: []*Figure{pilotSoft, pilotHard, drillStep},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range screws(p) {
			shank := d.of.Diameter()
			if !d.pilot.Known() || !shank.Known() {
				continue
			}
			f := diag.Finding{Subject: d.subject, Span: d.pilot.Span}
			least, most, said := pilot(pass, d)
			drill := d.pilot.Length
			step := pass.Length(drillStep, d.subject)
			switch {
			case !wood.Under(drill, shank.Length):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a pilot hole of %s is as wide as the screw, %s thick: its thread holds nothing", p.ShowSaid(d.pilot), p.Show(shank.Length))
			case said && wood.Under(drill, least-step):
				f.Message = fmt.Sprintf("a pilot hole of %s is small for %s in %s: the screw snaps or the wood splits", p.ShowSaid(d.pilot), screwName(p, d.of), groupOf(d))
			case said && wood.Over(drill, most+step):
				f.Message = fmt.Sprintf("a pilot hole of %s is wide for %s in %s: little of its thread holds", p.ShowSaid(d.pilot), screwName(p, d.of), groupOf(d))
			default:
				continue
			}
			root := wood.ScrewRoot(shank.Length)
			f.Working = p.Paper().Start(shank.Length, "the screw").Minus(shank.Length-root, "its thread").Equals("its root").Working()
			if said {
				f.Fixes = []diag.Fix{{Title: "write `pilot " + drillSize(p, most) + "`"}}
			}
			pass.Report(f)
		}
	},
}

// drillSize is the drill nearest to a size: in sixty-fourths of an inch, or half millimetres.
func drillSize(p *plan.Plan, l wood.Length) string {
	if p.Tape.Metric {
		return wood.Tape{Metric: true, Mark: wood.Millimetre / 2}.Nearest(l)
	}
	return wood.Tape{Mark: wood.Inch / 64}.Nearest(l)
}

// pilot is how thick the pilot hole of a screw may be; said is false where nothing tells the wood.
func pilot(pass *Pass, d *driven) (least, most wood.Length, said bool) {
	of := d.into.Of.Material.To
	if of == nil || of.Kind != plan.Solid || of.Species == nil {
		return 0, 0, false
	}
	root := wood.ScrewRoot(d.of.Diameter().Length)
	holes, _ := wood.ScrewHoles(d.of.Gauge.Or(0))
	table, part := holes.PilotHard, pilotHard
	if of.Species.Group == wood.Softwood {
		table, part = holes.PilotSoft, pilotSoft
	}
	if table == 0 {
		table = root
	}
	return fraction(root, pass.Number(part, d.subject)), table, true
}

func groupOf(d *driven) string { return d.into.Of.Material.To.Species.Group.String() }

// screwName is what a message calls a screw: `a number 8`, `a screw 4 thick`.
func screwName(p *plan.Plan, of *plan.Fastener) string {
	if of.Gauge.Known() {
		return "a number " + itoa(of.Gauge.N)
	}
	return "a screw " + p.ShowSaid(of.Thick) + " thick"
}
