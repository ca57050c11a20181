package report_test

import (
	"testing"

	"plancheck/internal/report"
)

// What is bought for the whole pieces, counted by hand from their plans: hinges of each leaf times the doors,
// dowels of each end times both ends and the pedestals, pegs of both breadboard ends.
func TestHardwareCount(t *testing.T) {
	for _, piece := range []struct {
		name string
		want map[string]int
	}{
		{"cabinet", map[string]int{"hinge brass": 2 * 2, "latch ball": 2, "slide side": 1, "dowel beech": 2 * 2}},
		{"desk", map[string]int{
			"dowel beech": 2 * 2 * 2, "slide ball": 3 * 2, "handle bow": 3*2 + 1, "bolt m6": 2 * 2, "screw no8": 8, "screw no6": 4 * 3,
		}},
		{"table", map[string]int{"peg pin": 2 * 3}},
		{"wardrobe", map[string]int{
			"knob star": 2 * 2 * 2, "hinge brass": 2 * 3, "latch turn": 1, "bolt flush": 2, "rod pole": 1, "peg beech": 4, "screw no10": 2,
		}},
		{"bed", map[string]int{
			"hook plate": 2 * 2, "knob star": 2, "insert m8": 2, "screw no8": 2 * 9, "hinge brass": 3 + 2, "stay soft": 2,
			"catch ball": 2, "slide run": 1, "handle bow": 1,
		}},
	} {
		got := make(map[string]int)
		for _, r := range report.HardwareList(project(t, piece.name)) {
			got[r.Word+" "+r.Name] += r.Count
		}
		for of, want := range piece.want {
			if got[of] != want {
				t.Errorf("%s: %d of %s, want %d", piece.name, got[of], of, want)
			}
			delete(got, of)
		}
		for of, n := range got {
			t.Errorf("%s: %d of %s, which its plan does not use", piece.name, n, of)
		}
	}
}

// Each hole of a fastener that goes into two parts is marked out in both, as often as it is bought.
func TestHardwarePlaces(t *testing.T) {
	for _, r := range report.HardwareList(project(t, "desk")) {
		if r.Name != "beech" {
			continue
		}
		in := make(map[string]int)
		for _, place := range r.Places {
			for _, name := range place.Names {
				in[name] += place.Count
			}
		}
		if in["toe"] != r.Count || in["left"]+in["right"] != r.Count {
			t.Errorf("%d dowels have %d holes in the kick and %d in the sides", r.Count, in["toe"], in["left"]+in["right"])
		}
	}
}
