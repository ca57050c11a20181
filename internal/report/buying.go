package report

// What to buy: boards, sheets and veneer, with the waste that is reckoned in.

import (
	"fmt"
	"math"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/rules"
)

// Purchase is one line of what to buy.
type Purchase struct {
	Material string
	Need     string // what the parts come to: "14.2 board feet"
	Buy      string // with waste: "17.8 board feet, with 25% for waste"
}

// usualWaste is how much of the boards is lost, in percent, where the shop says nothing: adding a quarter
// for waste is common with small pieces (W. Noyes, Handwork in Wood, 1910).
const usualWaste = 25.0

// BuyingList is what the parts of a piece take of each material. Boards thinner than an inch count as an inch, as they
// are measured when they are sold (Noyes, the same). Sheets go by area: how the parts lie on them may take more.
func BuyingList(p *plan.Plan) []Purchase {
	rows := CuttingList(p)
	waste := p.Shop.Waste.Or(usualWaste)
	materials := map[string]*plan.Material{}
	for _, m := range p.Materials {
		materials[m.Name.Text] = m
	}
	need := map[*plan.Material]*amounts{}
	of := func(m *plan.Material) *amounts {
		if need[m] == nil {
			need[m] = &amounts{}
		}
		return need[m]
	}
	for i := range rows {
		r := &rows[i]
		m := materials[r.Material]
		if m == nil || m.Kind == plan.Layup {
			continue // its plies are counted below
		}
		of(m).add(m, r)
	}
	for i := range rows {
		m := materials[rows[i].Material]
		if m == nil || m.Kind != plan.Layup {
			continue
		}
		for _, ply := range m.Plies {
			if ply.Of.To != nil {
				of(ply.Of.To).addPly(ply, &rows[i])
			}
		}
	}
	for _, l := range rules.LeafPlans(p) {
		if a := need[l.Skin]; a != nil {
			a.leaves = l.Leaves // several lengths come from one
		}
	}
	var list []Purchase
	for _, m := range p.Materials {
		if a := need[m]; a != nil {
			list = append(list, a.purchase(p, m, waste))
		}
	}
	return list
}

// amounts is what the parts of one material come to.
type amounts struct {
	boards  float64 // cubic metres
	area    float64 // square metres
	leaves  int
	unknown int // parts of which a size is not known
}

func (a *amounts) add(m *plan.Material, r *Row) {
	if !r.Long.Known() || !r.Wide.Known() || m.Kind == plan.Solid && !r.Thick.Known() {
		a.unknown += r.Count
		return
	}
	area := r.Long.Length.Metres() * r.Wide.Length.Metres() * float64(r.Count)
	a.area += area
	if m.Kind == plan.Solid {
		a.boards += area * max(r.Thick.Length, wood.Inch).Metres()
	}
}

// addPly counts a ply of something that is pressed.
func (a *amounts) addPly(ply *plan.Ply, r *Row) {
	m := ply.Of.To
	if !r.Long.Known() || !r.Wide.Known() || m.Kind == plan.Solid && !ply.Thickness().Known() {
		a.unknown += r.Count
		return
	}
	area := r.Long.Length.Metres() * r.Wide.Length.Metres() * float64(r.Count)
	a.area += area
	switch {
	case m.Kind == plan.Solid:
		a.boards += area * max(ply.Thickness().Length, wood.Inch).Metres()
	case m.Kind == plan.Veneer && m.Wide.Known():
		across := r.Wide.Length
		if degrees, known := ply.Turned(); known && degrees == 90 {
			across = r.Long.Length
		}
		if usable := m.Wide.Length - 2*m.Trim.Or(wood.Inch/4).Length; usable > 0 {
			a.leaves += r.Count * int(math.Ceil(float64(across)/float64(usable)))
		}
	}
}

// A board foot is a square foot an inch thick.
const boardFoot = 0.3048 * 0.3048 * 0.0254 // cubic metres

func (a *amounts) purchase(p *plan.Plan, m *plan.Material, waste float64) Purchase {
	out := Purchase{Material: m.Name.Text}
	more := 1 + waste/100
	switch {
	case m.Kind == plan.Solid && p.Tape.Metric:
		out.Need = fmt.Sprintf("%.4f m³", a.boards)
		out.Buy = fmt.Sprintf("%.4f m³, with %g%% for waste", a.boards*more, waste)
	case m.Kind == plan.Solid:
		out.Need = fmt.Sprintf("%.1f board feet", a.boards/boardFoot)
		out.Buy = fmt.Sprintf("%.1f board feet, with %g%% for waste", a.boards/boardFoot*more, waste)
	case m.Kind == plan.Veneer && a.leaves > 0:
		out.Need = count(a.leaves, "leaf", "leaves")
		out.Buy = fmt.Sprintf("%s, with %g%% for waste", count(int(math.Ceil(float64(a.leaves)*more)), "leaf", "leaves"), waste)
	default:
		out.Need = a.areaIn(p)
		if sheet := m.Size.Across.Length.Metres() * m.Size.Deep.Length.Metres(); m.Size.Across.Known() && m.Size.Deep.Known() && sheet > 0 {
			out.Buy = fmt.Sprintf("%s at least, by area alone: lay the parts out first", count(int(math.Ceil(a.area/sheet)), "sheet", "sheets"))
		} else {
			out.Buy = "no size of a sheet is stated"
		}
	}
	if a.unknown > 0 {
		out.Buy += fmt.Sprintf("; without %s of unknown size", count(a.unknown, "part", "parts"))
	}
	return out
}

func (a *amounts) areaIn(p *plan.Plan) string {
	if p.Tape.Metric {
		return fmt.Sprintf("%.2f m²", a.area)
	}
	return fmt.Sprintf("%.1f square feet", a.area/(0.3048*0.3048))
}
