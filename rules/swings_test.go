package rules

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// swingIn is the swing of a door that is drawn with the figures given, in inches.
func swingIn(wide, thick, proud, out, gap float64) plan.Swing {
	in := func(v float64) wood.Length { return wood.Length(math.Round(v * float64(wood.Inch))) }
	return plan.Swing{Wide: in(wide), Thick: in(thick), Proud: in(proud), Out: in(out), Gap: in(gap), Free: in(gap)}
}

// reaches turns a leaf in small steps, and looks how far its two ends reach past its edges while they are
// behind the face of what stands beside them.
func reaches(s plan.Swing, bevel float64) (free, hinge float64) {
	back := float64(s.Wide) - float64(s.Thick)*math.Tan(bevel*math.Pi/180)
	const steps, along = 20_000, 4
	for step := range steps + 1 {
		sin, cos := math.Sincos(float64(step) / steps * math.Pi / 2)
		turned := func(x, y float64) (float64, float64) {
			dx, dy := x+float64(s.Out), y+float64(s.Proud)
			return dx*cos + dy*sin - float64(s.Out), dy*cos - dx*sin - float64(s.Proud)
		}
		for i := range along + 1 {
			part := float64(i) / along
			y := part * float64(s.Thick)
			if x, y := turned(float64(s.Wide)+(back-float64(s.Wide))*part, y); y >= 0 {
				free = max(free, x-float64(s.Wide))
			}
			if x, y := turned(0, y); y >= 0 {
				hinge = max(hinge, -x)
			}
		}
	}
	return free, hinge
}

// TestSwingsAreAsSimulated holds what a leaf wants at its edges against one that is turned step by step.
func TestSwingsAreAsSimulated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := swingIn(
			rapid.Float64Range(2, 25).Draw(t, "wide"), rapid.Float64Range(0.375, 1.75).Draw(t, "thick"),
			rapid.SampledFrom([]float64{-3.0 / 8, -1.0 / 4, 1.0 / 16, 1.0 / 8, 1.0 / 4}).Draw(t, "proud"),
			rapid.SampledFrom([]float64{-1.0 / 2, -1.0 / 4, 1.0 / 32, 1.0 / 16}).Draw(t, "out"), 1.0/16,
		)
		if s.Proud < 0 && s.Out > 0 || -s.Proud > s.Thick {
			t.Skip("a pin within what the leaf hangs on, or behind the leaf")
		}
		bevel := rapid.SampledFrom([]float64{0, 1, 3.2, 5}).Draw(t, "bevel")
		free, hinge := reaches(s, bevel)
		near := func(what string, worked, simulated float64) {
			if math.Abs(worked-simulated) > float64(wood.Inch)/2000 {
				t.Errorf("%s: %.4f in worked out, %.4f in by turning it: %+v, bevel %g", what, worked/float64(wood.Inch), simulated/float64(wood.Inch), s, bevel)
			}
		}
		near("free edge", float64(freeWants(s, bevel)), free)
		near("hinge edge", float64(hingeWants(s)), hinge)
	})
}

// TestSwingsByHand holds leaves against sums that were worked out by hand, from the geometry of a corner
// that turns about a pin.
func TestSwingsByHand(t *testing.T) {
	for _, c := range []struct {
		wide, thick, proud, out, gap float64
		free, hinge, bevel           float64 // the bevel in degrees that just clears
	}{
		{18, 3.0 / 4, 1.0 / 8, 1.0 / 32, 1.0 / 16, 0.021, 0, 0},
		{6, 1, 1.0 / 8, 1.0 / 32, 1.0 / 16, 0.103, 0, 2.3}, // 0.041 over a thickness of 1
		{12, 3.0 / 4, -3.0 / 8, -1.0 / 2, 1.0 / 8, 0.006, 0.125, 0},
	} {
		s := swingIn(c.wide, c.thick, c.proud, c.out, c.gap)
		got := [3]float64{freeWants(s, 0).Inches(), hingeWants(s).Inches(), max(0, clearingBevel(s, s.Free))}
		for i, want := range [3]float64{c.free, c.hinge, c.bevel} {
			if math.Abs(got[i]-want) > [3]float64{0.0005, 0.0005, 0.05}[i] {
				t.Errorf("%v x %v: got %v, want %v, %v and %v", c.wide, c.thick, got, c.free, c.hinge, c.bevel)
				break
			}
		}
	}
	// The usual bevel, 1/8 in 2 1/4, clears the leaf of 6 x 1: Building Trades Pocketbook, "Doors".
	if usual := math.Atan2(1.0/8, 9.0/4) * 180 / math.Pi; freeWants(swingIn(6, 1, 1.0/8, 1.0/32, 1.0/16), usual) > wood.Inch/16 {
		t.Error("the usual bevel does not clear")
	}
}

// TestLapsTurnAsSimulated turns leaves that lap their case step by step, and looks how far a point of theirs comes into the
// case behind them, and how far beyond their hinge edge behind the faces of their neighbours.
func TestLapsTurnAsSimulated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(0.5, 1.25).Draw(t, "thick")
		s := swingIn(rapid.Float64Range(4, 20).Draw(t, "wide"), thick,
			-thick*rapid.SampledFrom([]float64{0.25, 0.5, 0.9, 1}).Draw(t, "behind"),
			rapid.SampledFrom([]float64{-1.0 / 2, -1.0 / 4, 0, 1.0 / 8, 1}).Draw(t, "out"), -0.75)
		from := wood.Inch * wood.Length(rapid.IntRange(0, 8).Draw(t, "from")) / 16
		opens := float64(rapid.IntRange(60, 130).Draw(t, "opens"))
		var digs, reaches float64
		const steps, along = 260, 40
		for step := range steps + 1 {
			turned := opens * float64(step) / steps
			far := min(s.Wide, 3*s.Thick)
			for _, edge := range [][2][2]wood.Length{{{0, 0}, {s.Wide, 0}}, {{0, s.Thick}, {far, s.Thick}}, {{0, 0}, {0, s.Thick}}} {
				var x, y float64
				for i := range wood.Length(along + 1) {
					wasX, wasY := x, y
					atX, atY := s.Corner(edge[0][0]+(edge[1][0]-edge[0][0])*i/along, edge[0][1]+(edge[1][1]-edge[0][1])*i/along, turned)
					x, y = float64(atX), float64(atY)
					if atX >= from && turned < 89.6 {
						digs = max(digs, y-float64(s.Thick))
					}
					if y >= 0 {
						reaches = max(reaches, -x)
					}
					if i > 0 && (y < 0) != (wasY < 0) { // it passes the faces between the two
						reaches = max(reaches, -(wasX + (x-wasX)*wasY/(wasY-y)))
					}
				}
			}
		}
		if opens < 90 { // a leaf is taken to open so far
			digs = float64(backDigs(s, from))
		}
		if got := float64(backDigs(s, from)); math.Abs(got-digs) > float64(wood.Inch)/100 {
			t.Errorf("digs %.4f, by turning it %.4f: %+v, from %d", got/float64(wood.Inch), digs/float64(wood.Inch), s, from)
		}
		if got := float64(hingeReaches(s, opens)); math.Abs(got-reaches) > float64(wood.Inch)/50 {
			t.Errorf("reaches %.4f, by turning it %.4f: %+v, %g", got/float64(wood.Inch), reaches/float64(wood.Inch), s, opens)
		}
	})
}

// TestLidsMeetTheirBackAsSimulated turns what a lid stands out behind its pin step by step, until a point of it is in the
// chest: in front of its back and below the lid.
func TestLidsMeetTheirBackAsSimulated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(0.5, 1.25).Draw(t, "thick")
		out := rapid.Float64Range(0.1, 2).Draw(t, "out")
		behind := rapid.Float64Range(0.001, 0.95).Draw(t, "behind") * out
		s := swingIn(18, thick, -thick, -out, 0)
		back := s.Thick + wood.Micrometre
		meets := 180.0
		const steps, along = 3600, 40
	turning:
		for step := range steps {
			turned := 180 * float64(step) / steps
			for i := range along + 1 {
				x, y := s.Corner(-s.Out*wood.Length(i)/along, s.Thick, turned)
				if y > back && x > -s.Out+wood.Length(behind*float64(wood.Inch)) {
					meets = turned
					break turning
				}
			}
		}
		if worked := backStops(-s.Out, wood.Length(behind*float64(wood.Inch))); math.Abs(worked-meets) > 0.2 {
			t.Errorf("%.2f worked out, %.2f by turning it: out %.3f, behind %.3f", worked, meets, out, behind)
		}
	})
}
