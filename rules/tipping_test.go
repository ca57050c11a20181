package rules

// What tips a piece, held against brute force: the piece is cut into points, turned a little about the line of its
// feet, and what falls is weighed against what rises.

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// block is a block of wood, from and to in inches: across, up and behind; or a load, at one place.
type block struct {
	from, to [3]float64
	pounds   float64
}

// points are the block as many small weights.
func (b block) points() []block {
	const n = 3
	var points []block
	for i := range n * n * n {
		var at [3]float64
		for axis, k := range []int{i % n, i / n % n, i / n / n} {
			at[axis] = b.from[axis] + (b.to[axis]-b.from[axis])*(float64(k)+0.5)/n
		}
		points = append(points, block{at, at, b.pounds / n / n / n})
	}
	return points
}

// rises is how much work it takes to turn blocks a little about a line on the floor, so that what lies beyond that line
// goes down: below zero where they fall by themselves. beyond is -1 where that is the lower end of the axis.
func rises(blocks []block, axis int, line, beyond float64) float64 {
	const angle = 1e-6
	work := 0.0
	for _, b := range blocks {
		for _, p := range b.points() {
			out, up := beyond*(p.from[axis]-line), p.from[1]
			work += p.pounds * (up*math.Cos(angle) - out*math.Sin(angle) - up)
		}
	}
	return work
}

func standsAs(t *testing.T, text string) (*Pass, *onFloor) {
	t.Helper()
	p, found := Run(diag.NewFile("piece.plan", text), nil)
	for _, f := range found {
		if f.Severity == diag.Error {
			t.Fatalf("%s\n%s", f.Message, text)
		}
	}
	all := slices.Collect(piecesIn(p, func(*plan.Assembly, []*plan.Member) bool { return true }))
	if len(all) != 1 || !all[0].balanced {
		t.Fatalf("%d pieces\n%s", len(all), text)
	}
	return &Pass{Plan: p, rule: tipsByLeaning}, all[0]
}

// Tables of random sizes: the load on an edge that just tips them, found by trying.
func TestTablesTipWhereTriedTheyDo(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	tipped := 0
	for range 100 {
		wide, deep, high := 8+random.IntN(40), 8+random.IntN(20), 12+random.IntN(20)
		ends, front, back := 1+random.IntN(12), random.IntN(10), random.IntN(10)
		leg, thick, heavy := 1+random.IntN(3), 1+random.IntN(2), 20+random.IntN(50)
		pass, s := standsAs(t, fmt.Sprintf(`climate { shop 8%% ; dry 6%% ; humid 11%% }
wood some { species "white oak" ; sawn quarter ; heavy %dlb/ft3 }
assembly base { kind table ; of some ; wide %d ; high %d ; deep %d
  across {
    behind { leg a %[5]d { wide %[5]d } ; space ; leg b %[5]d { wide %[5]d } }
    space
    behind { leg c %[5]d { wide %[5]d } ; space ; leg d %[5]d { wide %[5]d } }
  } }
top slab { of some ; thick %d ; over base ends %d front %d back %d }
`, heavy, wide, high, deep, leg, thick, ends, front, back))
		box := func(x, y, z, a, b, c int) block {
			return block{[3]float64{float64(x), float64(y), float64(z)}, [3]float64{float64(x + a), float64(y + b), float64(z + c)}, float64(a*b*c*heavy) / 1728}
		}
		blocks := []block{
			box(0, 0, 0, leg, high, leg), box(wide-leg, 0, 0, leg, high, leg), box(0, 0, deep-leg, leg, high, leg), box(wide-leg, 0, deep-leg, leg, high, leg),
			box(-ends, high, -front, wide+2*ends, thick, deep+front+back),
		}
		least := math.Inf(1)
		for _, edge := range []struct {
			axis               int
			line, beyond, edge float64
		}{
			{0, 0, -1, float64(-ends)},
			{0, float64(wide), 1, float64(wide + ends)},
			{2, 0, -1, float64(-front)},
			{2, float64(deep), 1, float64(deep + back)},
		} {
			low, much := 0.0, 1e6
			for range 40 {
				try := (low + much) / 2
				var at [3]float64
				at[0], at[1], at[2] = float64(wide)/2, float64(high+thick), float64(deep)/2
				at[edge.axis] = edge.edge
				if rises(append(blocks[:len(blocks):len(blocks)], block{at, at, try}), edge.axis, edge.line, edge.beyond) > 0 {
					low = try
				} else {
					much = try
				}
			}
			least = min(least, low)
		}
		tips := s.tipsAt(pass)
		switch {
		case tips == nil && least < 49:
			t.Errorf("%.1f lb tip it, and nothing is said: %d x %d x %d, %d %d %d", least, wide, deep, high, ends, front, back)
		case tips != nil && math.Abs(tips.kilograms/wood.Pound-least) > 0.01*least+0.1:
			t.Errorf("tips at %.2f lb, tried %.2f", tips.kilograms/wood.Pound, least)
		case tips != nil:
			tipped++
		}
	}
	if tipped < 20 {
		t.Errorf("only %d tables tip", tipped)
	}
}

// Tables on three legs or on four that stand anywhere: a load tips one where what it and the table balance at together
// lies outside of the feet, whichever way one looks at them.
func TestLegsAnywhereTipWhereTriedTheyDo(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	tipped := 0
	for range 60 {
		rows := [2][3]int{{random.IntN(15), 0, 0}, {random.IntN(15), 0, 0}} // before the first leg of a row
		legs, heavy, ends, edge := "", 20+random.IntN(60), random.IntN(6), random.IntN(6)
		var feet [][2]float64
		var turns [2]float64
		for row := range rows {
			two, before, between := random.IntN(3) > 0, rows[row][0], 1+random.IntN(8)
			y := float64(22 * row)
			put := func(x int) {
				for _, dx := range []float64{0, 2} {
					feet = append(feet, [2]float64{float64(x) + dx, y}, [2]float64{float64(x) + dx, y + 2})
				}
				turns[0] += (float64(x) + 1) * 2 * 2 * 24
				turns[1] += (y + 1) * 2 * 2 * 24
			}
			put(before)
			list := fmt.Sprintf("space %d ; leg l%d 2 { thick 2 } ; ", before, row)
			if two {
				put(before + 2 + between)
				list += fmt.Sprintf("space %d ; leg r%d 2 { thick 2 } ; ", between, row)
			}
			if row == 1 {
				legs += " ; space ; "
			}
			legs += "across 2 { " + list + "space }"
		}
		legs = strings.ReplaceAll(legs, "space 0 ; ", "")
		pass, s := standsAs(t, fmt.Sprintf(`climate { shop 8%% ; dry 6%% ; humid 11%% }
wood some { species "white oak" ; sawn quarter ; heavy %dlb/ft3 }
assembly base { kind table ; of some ; wide 30 ; high 24 ; deep 24 ; behind { %s } }
top slab { of some ; thick 1 ; over base ends %d front %d back %[4]d }
`, heavy, legs, ends, edge))
		size := float64(len(feet)) / 4 * 2 * 2 * 24
		top := float64(30+2*ends) * float64(24+2*edge)
		turns[0], turns[1] = turns[0]+15*top, turns[1]+12*top
		pounds := (size + top) * float64(heavy) / 1728
		falls := func(x, y, load float64) bool {
			at := [2]float64{(turns[0]*float64(heavy)/1728 + x*load) / (pounds + load), (turns[1]*float64(heavy)/1728 + y*load) / (pounds + load)}
			for way := range 2000 {
				sin, cos := math.Sincos(2 * math.Pi * float64(way) / 2000)
				farthest := math.Inf(-1)
				for _, f := range feet {
					farthest = max(farthest, f[0]*cos+f[1]*sin)
				}
				if at[0]*cos+at[1]*sin > farthest+1e-9 {
					return true
				}
			}
			return false
		}
		least := math.Inf(1)
		for _, x := range []float64{float64(-ends), float64(30 + ends)} {
			for _, y := range []float64{float64(-edge), float64(24 + edge)} {
				low, much := 0.0, 200.0
				for range 25 {
					if try := (low + much) / 2; falls(x, y, try) {
						much = try
					} else {
						low = try
					}
				}
				least = min(least, much)
			}
		}
		tips := s.tipsAt(pass)
		switch {
		case tips == nil && least < 49:
			t.Errorf("%.1f lb tip it, and nothing is said: %s", least, legs)
		case tips != nil && math.Abs(tips.kilograms/wood.Pound-least) > 0.02*least+0.2:
			t.Errorf("tips at %.2f lb, tried %.2f: %s", tips.kilograms/wood.Pound, least, legs)
		case tips != nil:
			tipped++
		}
	}
	if tipped < 10 {
		t.Errorf("only %d tables tip", tipped)
	}
}

// Chests of random sizes, with their drawers drawn out and loaded.
func TestChestsFallWhereTriedTheyDo(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	fell, stood := 0, 0
	for range 80 {
		wide, deep, high, n := 20+random.IntN(20), 16+random.IntN(16), 30+random.IntN(20), 2+random.IntN(3)
		travel, load, heavy := 2+random.IntN(12), random.IntN(20), 20+random.IntN(60)
		drawers := ""
		for i := range n {
			drawers += fmt.Sprintf("drawer d%d 5 ; shelf s%d ; ", i, i)
		}
		pass, s := standsAs(t, fmt.Sprintf(`climate { shop 8%% ; dry 6%% ; humid 11%% }
wood some { species "white oak" ; sawn quarter ; heavy %[1]dlb/ft3 }
sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; heavy %[1]dlb/ft3 ; emission "TSCA Title VI" }
slide full { kind side-mount ; long 14 ; room 1/2 ; travel %[2]d }
case chest { of some 1 ; wide %[3]d ; high %[4]d ; deep %[5]d ; joint butt
  each drawer {
    of some 1/2 ; front some 3/4 applied ; fit inset ; reveal 1/16 ; slide full ; holds books %[6]dlb
    corner front dovetail slope 1:7 ; corner back dado deep 1/4 ; back some 1/2 grooved
    bottom thin groove 1/4 x 1/4 up 1/2
  }
  across { side left ; down { %[7]s open rest } ; side right }
}
`, heavy, travel, wide, high, deep, load, drawers))

		var blocks []block
		add := func(x, y, z, a, b, c float64) {
			blocks = append(blocks, block{[3]float64{x, y, z}, [3]float64{x + a, y + b, z + c}, a * b * c * float64(heavy) / 1728})
		}
		w, d, h, out := float64(wide), float64(deep), float64(high), float64(travel)
		add(0, 0, 0, 1, h, d)
		add(w-1, 0, 0, 1, h, d)
		in := w - 2
		for i := range n {
			y := h - 6*float64(i+1)
			add(1, y, 0, in, 1, d) // the shelf, and over it the drawer
			y++
			add(1, y, -out, in-1./8, 5-1./8, 0.75)
			add(1.5, y, 0.75-out, in-1, 4.75, 0.5) // the inner front is dovetailed, and as long as the box is wide
			for _, x := range []float64{1.5, w - 2} {
				add(x, y, 0.75-out, 0.5, 4.75, 14)
			}
			add(1.75, y, 0.75+13.5-out, in-2+0.5, 4.75, 0.5)
			add(1.75, y+0.5, 1-out, in-2+0.5, 0.25, 13.25)
			at := [3]float64{w / 2, y, 0.75 + 0.5 + 13./2 - out}
			blocks = append(blocks, block{at, at, float64(load)})
		}
		front := [3]float64{w / 2, h, -out}
		tried := rises(append(blocks, block{front, front, 60}), 2, 0, -1) * 1e6 // how much more holds it than pulls it, in inch-pounds

		o := s.opened(pass.Plan, 60*wood.Pound)
		if o == nil {
			t.Fatal("its drawers do not open")
		}
		more := (o.holds() - o.pulls()) / float64(wood.Inch) / wood.Pound
		if math.Abs(more-tried) > 5 {
			t.Errorf("%.0f inch-pounds hold it more than pull it, tried %.0f", more, tried)
		}
		if o.falls(pass.Plan) {
			fell++
		} else {
			stood++
		}
	}
	if fell < 10 || stood < 10 {
		t.Errorf("%d chests fall, and %d stand", fell, stood)
	}
}

// The sum that a handbook of this trade would do: 110 lb that balance 8 behind the feet, and 60 lb 16 before them.
func TestFallsForward(t *testing.T) {
	o := &opened{held: 110 * wood.Pound, behind: 8 * wood.Inch, child: 60 * wood.Pound, reach: 16 * wood.Inch}
	p := &plan.Plan{}
	if holds, pulls := turns(p, o.holds()), turns(p, o.pulls()); holds != "880inlb" || pulls != "960inlb" || !o.falls(p) {
		t.Errorf("%s hold it, and %s pull it: %v", holds, pulls, o.falls(p))
	}
	o.reach = 14 * wood.Inch
	if o.falls(p) {
		t.Error("it falls with 840 against 880")
	}
}
