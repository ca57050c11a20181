package wood

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestBalance(t *testing.T) {
	cherry, poplar := Solid{find(t, "black cherry"), Flat}, Solid{find(t, "yellow-poplar"), Flat}
	mdf := Ply{sheetOf(t, "mdf"), 18 * Millimetre, 0, 8}
	veneer := Ply{cherry, Inch / 32, 0, 8}
	with := func(f func(*Ply)) Ply { p := veneer; f(&p); return p }
	across := with(func(p *Ply) { p.Angle = 90 })
	thick := with(func(p *Ply) { p.Thick = Inch / 16 })
	wet := with(func(p *Ply) { p.Moisture = 14 })
	other := with(func(p *Ply) { p.Material = poplar })
	quartered := with(func(p *Ply) { p.Material = Solid{cherry.Species, Quarter} })
	backed := with(func(p *Ply) { p.Material, p.Thick = poplar, Inch/16 })
	all := Step{Moisture: true, Angle: true, Thick: true, Material: true, Add: true}
	add := func(ply, like int) []Step { s := all; s.Ply, s.Like = ply, like; return []Step{s} }
	tests := []struct {
		name  string
		layup Layup
		worst int
		steps []Step
	}{
		{"mirrored", Layup{veneer, mdf, veneer}, -1, nil},
		{"one face", Layup{veneer, mdf}, 0, add(2, 0)},
		{"one back", Layup{mdf, veneer}, 1, add(0, 1)},
		{"crossed pair", Layup{veneer, across}, 0, add(2, 0)},
		{"four, each across the next", Layup{veneer, across, veneer, across}, 0, add(4, 0)},
		{"back across the face", Layup{veneer, mdf, across}, 2, []Step{{Ply: 2, Like: 0, Angle: true}}},
		{"thick back", Layup{veneer, mdf, thick}, 2, []Step{{Ply: 2, Like: 0, Thick: true}}},
		{"another wood behind", Layup{veneer, mdf, other}, 2, []Step{{Ply: 2, Like: 0, Material: true}}},
		{"quartered behind", Layup{veneer, mdf, quartered}, 2, []Step{{Ply: 2, Like: 0, Material: true}}},
		{"wet face", Layup{wet, mdf, veneer}, 0, []Step{{Ply: 0, Like: 2, Moisture: true}}},
		{"wet back", Layup{veneer, mdf, wet}, 2, []Step{{Ply: 2, Like: 0, Moisture: true}}},
		{"another wood and thickness", Layup{veneer, mdf, backed}, 2, []Step{{Ply: 2, Like: 0, Thick: true, Material: true}}},
		{"an inner pair", Layup{veneer, across, mdf, thick, veneer}, 3, []Step{{Ply: 3, Like: 1, Angle: true, Thick: true}}},
		{
			"two pairs",
			Layup{veneer, across, mdf, thick, other},
			3,
			[]Step{{Ply: 4, Like: 0, Material: true}, {Ply: 3, Like: 1, Angle: true, Thick: true}},
		},
	}
	panel := Panel{Length: 600 * Millimetre, Width: 450 * Millimetre, Moistures: []float64{6, 8, 11}}
	for _, test := range tests {
		b, ok := test.layup.Balance(panel)
		if !ok {
			t.Errorf("%s: not known", test.name)
			continue
		}
		if b.Worst != test.worst || !slices.Equal(b.Steps, test.steps) {
			t.Errorf("%s: ply %d, %+v, want %d, %+v", test.name, b.Worst, b.Steps, test.worst, test.steps)
		}
		if Over(b.Left.Worst(), 0) {
			t.Errorf("%s: %+v is left", test.name, b.Left)
		}
		if test.worst >= 0 && !Over(b.Warp.Worst(), 0) {
			t.Errorf("%s does not warp", test.name)
		}
	}

	panel.Allowed = Metre
	if b, _ := (Layup{veneer, mdf}).Balance(panel); b.Worst != 0 || b.Steps != nil || b.Left != b.Warp || b.Moisture != 11 {
		t.Errorf("a warp that is allowed: %+v", b)
	}
	panel.Moistures = nil
	if _, ok := (Layup{veneer, mdf}).Balance(panel); ok {
		t.Error("a season that nobody names")
	}
	panel.Moistures = []float64{6}
	if _, ok := (Layup{veneer, {}}).Balance(panel); ok {
		t.Error("a ply of nothing")
	}
}

// Whatever the plies, the steps leave the panel as flat as they say and within what is allowed.
func TestStepsDoWhatTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Layup(rapid.SliceOfN(anyPly, 1, 6).Draw(t, "plies"))
		panel := Panel{
			Length: 600 * Millimetre, Width: 400 * Millimetre,
			Allowed:   Length(rapid.IntRange(0, 3).Draw(t, "allowed")) * Millimetre,
			Moistures: []float64{6, 12},
		}
		before := slices.Clone(l)
		b, ok := l.Balance(panel)
		if !ok || !slices.Equal(l, before) {
			t.Fatalf("%+v, %v; was %+v", l, ok, before)
		}
		for _, step := range b.Steps {
			l = l.after(step)
		}
		left, _, _ := l.worst(panel)
		if left != b.Left || Over(left.Worst(), panel.Allowed) {
			t.Fatalf("%+v is left, not %+v", left, b.Left)
		}
	})
}

// A layup of more plies than are searched is told to mirror, pair by pair, at once.
func TestManyPlies(t *testing.T) {
	var l Layup
	for i := range 2000 {
		l = append(l, Ply{Solid{find(t, "black cherry"), Flat}, Millimetre, float64(i), float64(6 + i/250)})
	}
	b, ok := l.Balance(Panel{Metre, Metre, 0, []float64{6}})
	if !ok || b.Worst != -1 || len(b.Steps) != 1000 || Over(b.Left.Worst(), 0) {
		t.Errorf("%v: ply %d, %d steps, %+v left", ok, b.Worst, len(b.Steps), b.Left)
	}
}

func BenchmarkBalance(b *testing.B) {
	face, core := Ply{Solid{mustFind("black cherry"), Flat}, Inch / 32, 0, 8}, Ply{Board{mustSheet("mdf")}, 18 * Millimetre, 0, 8}
	l := Layup{face, face, face, core, face, face, {face.Material, Inch / 16, 90, 9}}
	for b.Loop() {
		l.Balance(Panel{Metre, Metre, Millimetre, []float64{6, 11}})
	}
}
