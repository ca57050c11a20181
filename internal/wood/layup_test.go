package wood

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func sheetOf(t *testing.T, kind string) Board {
	t.Helper()
	s, ok := FindSheet(kind)
	if !ok {
		t.Fatalf("no sheet %q", kind)
	}
	return Board{s}
}

// The moduli of black cherry, worked by hand from Table 5-3a and Tables 5-1 and 5-2: E_L is
// 1.1 x 10.3 GPa.
func TestSolidPlane(t *testing.T) {
	cherry := find(t, "black cherry")
	const el = 1.1 * 10.3e9
	tests := []struct {
		cut   Cut
		want  Plane
		worse bool
	}{
		{Flat, Plane{el, .086 * el, .097 * el, .428}, false},
		{Quarter, Plane{el, .197 * el, .147 * el, .392}, false},
		{Rift, Plane{el, .086 * el, .097 * el, .428}, true},
	}
	for _, test := range tests {
		got, footing := Solid{cherry, test.cut}.plane()
		for _, pair := range [][2]float64{
			{got.Along, test.want.Along},
			{got.Across, test.want.Across},
			{got.Shear, test.want.Shear},
			{got.Poisson, test.want.Poisson},
		} {
			if math.Abs(pair[0]-pair[1]) > 1e-9*pair[1] {
				t.Errorf("%v: %+v, want %+v", test.cut, got, test.want)
			}
		}
		if want := (Footing{Status: Seen, Worse: test.worse}); footing != want {
			t.Errorf("%v: %+v, want %+v", test.cut, footing, want)
		}
	}
}

// A wood that is not in Tables 5-1 and 5-2, or not wholly, has the mean of its group, and says so.
func TestBorrowedRatios(t *testing.T) {
	beech, listed := find(t, "American beech").ElasticOr()
	if !listed || beech.Status != Derived || !(0.03 < beech.ET && beech.ET < beech.ER && beech.ER < 0.2) {
		t.Errorf("beech: %+v, %v", beech, listed)
	}
	oak := find(t, "white oak")
	own, _ := oak.Elastic()
	filled, borrowed := oak.ElasticOr()
	if !borrowed || own.GLT != 0 || filled.GLT != beech.GLT || filled.ET != own.ET {
		t.Errorf("white oak: %+v", filled)
	}
	pine, _ := find(t, "eastern white pine").ElasticOr()
	if pine.ET == beech.ET || pine.Status != Memory && pine.Status != Derived {
		t.Errorf("a pine has the hardwoods' ratios: %+v", pine)
	}
	if _, borrowed := find(t, "black walnut").ElasticOr(); borrowed {
		t.Error("black walnut borrows")
	}
	if e, _ := (&Species{}).ElasticOr(); e.Status != Unknown {
		t.Errorf("no wood: %+v", e)
	}
}

// Every wood on the shelf with a stiffness and a movement can be a ply, and so can every sheet.
func TestEveryMaterial(t *testing.T) {
	for _, s := range All() {
		for _, cut := range []Cut{Flat, Quarter} {
			l := Layup{{Solid{s, cut}, Millimetre, 0, 8}, {Solid{s, cut}, Millimetre, 90, 8}}
			known := s.MOE.Known() && (s.CT.Known() || s.ST.Known() || cut == Quarter && (s.CR.Known() || s.SR.Known()))
			laminate, ok := l.At(12)
			if ok != known || ok == (l.Unknown() >= 0) {
				t.Errorf("%s: %v, want %v", s.Name, ok, known)
			}
			if s, bends := laminate.Free(); ok && (!bends || !(s.KX > 0)) {
				t.Errorf("%s crossed, wetter: %+v", l[0].Material.(Solid).Species.Name, s)
			}
		}
	}
	for _, kind := range []string{"plywood", "mdf", "particle", "hardboard", "osb"} {
		b := sheetOf(t, kind)
		l := Layup{{b, 18 * Millimetre, 0, 8}}
		m, ok := l.Moduli()
		if !ok || m.BendAlong < b.Sheet.MOE.Least || m.BendAlong > b.Sheet.MOE.Greatest || m.BendAcross > 1.0001*m.BendAlong {
			t.Errorf("%s: %+v", kind, m)
		}
		if laminate, ok := l.At(10); ok != b.Sheet.Expansion.Known() || ok && laminate[0].GrowsAlong <= 0 {
			t.Errorf("%s, wetter: %+v, %v", kind, laminate, ok)
		}
	}
	for _, l := range []Layup{{{}}, {{Material: Solid{}}}} {
		if l.Unknown() != 0 || l.Footing().Status != Unknown {
			t.Errorf("%+v is known", l)
		}
		if _, ok := l.Moduli(); ok {
			t.Errorf("%+v is stiff", l)
		}
	}
}

// What sheets.csv says of plywood and OSB against what it says that it rests on.
func TestSheetPlanes(t *testing.T) {
	fir, _ := find(t, "coast Douglas-fir").Elastic()
	wood := Plane{Along: 1, Across: fir.ET, Shear: fir.GLT, Poisson: fir.MuLT}
	var many Laminate
	for i := range 41 {
		many = append(many, Lamina{Plane: wood, Thick: Millimetre, Angle: float64(i%2) * 90})
	}
	m, ok := many.Moduli()
	stiff := many.stiffness(many.Thick().Metres())
	ply := sheetOf(t, "plywood").Sheet.Plane
	if e := (m.StretchAlong + m.StretchAcross) / 2; !ok ||
		math.Abs(stiff.At(2, 2)/e-ply.Shear/ply.Along) > 0.005 ||
		math.Abs(stiff.At(0, 1)/stiff.At(0, 0)-ply.Poisson) > 0.005 {
		t.Errorf("crossed Douglas-fir: shear %.3f, Poisson %.3f", stiff.At(2, 2)/e, stiff.At(0, 1)/stiff.At(0, 0))
	}
	// Table 12-3, GPa along and across.
	osb := [][2]float64{
		{4.41, 2.89},
		{4.78, 2.61},
		{5.75, 3.17},
		{4.41, 2.40},
		{5.67, 2.61},
		{4.41, 2.97},
		{5.01, 2.26},
		{6.28, 2.03},
		{5.69, 1.92},
		{6.31, 2.79},
	}
	along, across := 0.0, 0.0
	for _, row := range osb {
		along += row[0]
		across += row[1]
	}
	if p := sheetOf(t, "osb").Sheet.Plane; math.Abs(across/along-p.Across/p.Along) > 0.005 {
		t.Errorf("OSB: %.3f, want %.3f", p.Across/p.Along, across/along)
	}
	for _, kind := range []string{"mdf", "particle", "hardboard"} {
		if p := sheetOf(t, kind).Sheet.Plane; math.Abs(p.Shear/p.Along-1/(2*(1+p.Poisson))) > 0.001 {
			t.Errorf("%s is not alike in all directions: %+v", kind, p)
		}
	}
}

// What a ply does by itself, worked by hand: cherry from 8 to 6 % shrinks by C_T times 2, and
// MDF by 0.33 % over 30 points of humidity.
func TestPliesByThemselves(t *testing.T) {
	cherry := Solid{find(t, "black cherry"), Flat}
	l := Layup{{cherry, Millimetre, 0, 8}, {cherry, Millimetre, 0, 10}, {sheetOf(t, "mdf"), Millimetre, 0, Equilibrium(20, 50)}}
	dry := Equilibrium(20, 30)
	laminate, ok := l.At(dry)
	if !ok {
		t.Fatal("not known")
	}
	for i, want := range []float64{.00248 * (dry - 8), .00248 * (dry - 10), -.0033 * 20 / 30} {
		if got := laminate[i].GrowsAcross; math.Abs(got-want) > 1e-8 && i != 2 || math.Abs(got-want) > 1e-6 {
			t.Errorf("ply %d: %.6f, want %.6f", i, got, want)
		}
	}
	if got, want := laminate[0].GrowsAlong, alongRate*(dry-8); math.Abs(got-want) > 1e-12 {
		t.Errorf("along: %v, want %v", got, want)
	}
	if f := l.Footing(); f.Status != Memory || f.Borrowed || f.Worse {
		t.Errorf("footing %+v: MDF's growth is from memory", f)
	}
}

// One cherry veneer on MDF dries: the face goes hollow, across its grain more than along it.
func TestFacedOnOneSide(t *testing.T) {
	face := Ply{Solid{find(t, "black cherry"), Flat}, Inch / 32, 0, 8}
	core := Ply{sheetOf(t, "mdf"), 18 * Millimetre, 0, 8}
	bend := func(l Layup, moisture float64) Strain {
		laminate, ok := l.At(moisture)
		s, bends := laminate.Free()
		if !ok || !bends {
			t.Fatalf("no strain at %v", moisture)
		}
		return s
	}
	s := bend(Layup{face, core}, 6)
	if !(s.KY > 0 && s.KY > s.KX) {
		t.Errorf("drier: %+v", s)
	}
	if back := bend(Layup{core, face}, 6); math.Abs(back.KY+s.KY) > 1e-12 {
		t.Errorf("on the back: %+v", back)
	}
	if humid := bend(Layup{face, core}, 10); !(humid.KY < 0) {
		t.Errorf("more humid: %+v", humid)
	}
	if same := bend(Layup{face, core}, 8); same != (Strain{}) {
		t.Errorf("as pressed: %+v", same)
	}
	if both := bend(Layup{face, core, face}, 6); math.Abs(both.KY) > 1e-12 {
		t.Errorf("both faces: %+v", both)
	}
}

// Doubling a board's width doubles what it moves; its cup grows with the square.
func TestTwiceAsWide(t *testing.T) {
	oak := find(t, "red oak")
	rapid.Check(t, func(t *rapid.T) {
		width := Length(rapid.IntRange(1_000_000, 2_000_000_000).Draw(t, "width"))
		from := rapid.Float64Range(4, 20).Draw(t, "from")
		to := rapid.Float64Range(4, 20).Draw(t, "to")
		m, _ := oak.Moves(Flat, from, to)
		if one, two := m.Change(width), m.Change(2*width); (two - 2*one).Abs() > 1 {
			t.Fatalf("%v moves %v, twice of it %v", width, one, two)
		}
		s := Strain{KY: m.strain()}
		if one, two := s.Warp(Metre, width).Cup, s.Warp(Metre, 2*width).Cup; (two - 4*one).Abs() > 4 {
			t.Fatalf("%v cups %v, twice of it %v", width, one, two)
		}
	})
}

var anyPly = rapid.Custom(func(t *rapid.T) Ply {
	materials := []Material{
		Solid{mustFind("black cherry"), Flat},
		Solid{mustFind("black cherry"), Quarter},
		Solid{mustFind("yellow-poplar"), Flat},
		Solid{mustFind("American beech"), Unsaid},
		Board{mustSheet("mdf")},
		Board{mustSheet("plywood")},
	}
	return Ply{
		Material: rapid.SampledFrom(materials).Draw(t, "material"),
		Thick:    Length(rapid.SampledFrom([]int{600, 800, 1600, 3000, 12000}).Draw(t, "thick")) * Micrometre,
		Angle:    float64(rapid.SampledFrom([]int{0, 90, 45, 5}).Draw(t, "angle")),
		Moisture: float64(rapid.IntRange(6, 12).Draw(t, "moisture")),
	}
})

func mustFind(name string) *Species { s, _ := Find(name); return s }

func mustSheet(kind string) Sheet { s, _ := FindSheet(kind); return s }

func TestMirroredLayupStaysFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.SliceOfN(anyPly, 1, 5).Draw(t, "half")
		l := Layup(slices.Concat(half, []Ply{anyPly.Draw(t, "core")}))
		slices.Reverse(half)
		l = append(l, half...)
		b, ok := l.Balance(Panel{Metre, Metre, 0, []float64{5, 8, 14}})
		if !ok || b.Worst != -1 || b.Steps != nil || Over(b.Warp.Worst(), 0) {
			t.Fatalf("%+v, %v", b, ok)
		}
	})
}

func TestCaveat(t *testing.T) {
	for _, word := range []string{"upper guide", "linear", "creep"} {
		if !strings.Contains(LayupCaveat, word) {
			t.Errorf("the caveat does not say %q", word)
		}
	}
}
