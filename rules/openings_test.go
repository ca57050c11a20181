package rules

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// TestOpeningsAreAsSimulated opens leaves with a handle beside a place, at whatever side they hang, and looks at many points
// of them in small steps: none is in the place before the leaf is said to stop, and some are soon after.
func TestOpeningsAreAsSimulated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inches := func(label string, from, to float64) wood.Length {
			return wood.Length(rapid.Float64Range(from, to).Draw(t, label) * float64(wood.Inch))
		}
		known := func(from, size wood.Length) plan.Extent {
			return plan.Extent{From: from, Size: size, Placed: true, Sized: true}
		}
		l := opening{node: new(plan.Door), across: plan.Across, back: plan.Behind, pin: plan.Down, edge: inches("edge", -5, 40), face: inches("face", -2, 20), along: known(0, wood.Inch)}
		l.turned = rapid.Bool().Draw(t, "turned")
		l.swing = plan.Swing{
			Wide: inches("wide", 6, 24), Thick: inches("thick", 0.5, 1.25),
			Proud: rapid.SampledFrom([]wood.Length{-3 * wood.Inch / 4, -wood.Inch / 4, 0, wood.Inch / 8}).Draw(t, "proud"),
			Out:   rapid.SampledFrom([]wood.Length{-wood.Inch / 2, 0, wood.Inch / 16, wood.Inch / 2}).Draw(t, "out"),
		}
		if rapid.Bool().Draw(t, "handle") {
			l.knobs = []knob{{from: l.swing.Wide - knobIn, stands: inches("stands", 0.5, 3), along: l.along}}
		}
		opens := rapid.Float64Range(30, 180).Draw(t, "opens")

		// The place, as the leaf measures: beside its hinge edge and partly before its face, or before all of it.
		beside, deep := inches("beside", 0.7, 14), inches("deep", 1, 30)
		x, y := known(-beside-deep, deep), known(-inches("stands out", 0.5, 20), 0)
		y.Size = -y.From - before
		if rapid.Bool().Draw(t, "wall before") {
			x, y = known(-farAway, 2*farAway), known(-inches("room", 4, 24)-farAway, farAway)
		}
		by := standsBy{at: plan.Box{plan.Across: x, plan.Down: l.along, plan.Behind: y}}
		by.at[plan.Behind].From += l.face
		if by.at[plan.Across].From += l.edge; l.turned {
			by.at[plan.Across].From = l.edge - x.To()
		}

		// first is at how many degrees a point of the leaf is in the place, or a corner of the place in the leaf, where the
		// place is so much smaller all round.
		first := func(less wood.Length) float64 {
			const steps = 16
			from, to := [2]float64{float64(x.From + less), float64(y.From + less)}, [2]float64{float64(x.To() - less), float64(y.To() - less)}
			boxes := [][4]float64{{0, float64(l.swing.Wide), 0, float64(l.swing.Thick)}}
			for _, k := range l.knobs {
				boxes = append(boxes, [4]float64{float64(k.from - knobWide/2), float64(k.from + knobWide/2), -float64(k.stands), 0})
			}
			turn := func(px, py, turned float64) (float64, float64) {
				sin, cos := math.Sincos(turned * math.Pi / 180)
				dx, dy := px+float64(l.swing.Out), py+float64(l.swing.Proud)
				return dx*cos + dy*sin - float64(l.swing.Out), dy*cos - dx*sin - float64(l.swing.Proud)
			}
			for turned := 0.0; turned <= opens; turned += 0.25 {
				for _, b := range boxes {
					for i := range steps + 1 {
						for j := range steps + 1 {
							px, py := turn(b[0]+(b[1]-b[0])*float64(i)/steps, b[2]+(b[3]-b[2])*float64(j)/steps, turned)
							if px > from[0] && px < to[0] && py > from[1] && py < to[1] {
								return turned
							}
						}
					}
					for _, c := range [][2]float64{from, to, {from[0], to[1]}, {to[0], from[1]}} {
						px, py := turn(c[0], c[1], -turned)
						if px > b[0] && px < b[1] && py > b[2] && py < b[3] && from[0] < to[0] && from[1] < to[1] {
							return turned
						}
					}
				}
			}
			return math.Inf(1)
		}
		stops := math.Inf(1)
		if s, ok := l.stops(opens, []standsBy{by}); ok {
			stops = s.degrees
		}
		if early, late := first(0), first(wood.Inch/4); stops < early-0.75 && !math.IsInf(early, 1) || stops > late {
			t.Fatalf("stops at %.2f; a point comes in at %.2f and is 1/4 in at %.2f", stops, early, late)
		}
	})
}
