package wood

// Sheets bought ready made: how stiff, how heavy, how thick, and how they grow.

import (
	"math"
	"sync"
)

// Sheet is what is published about a kind of sheet.
type Sheet struct {
	Kind   string // plywood, mdf, particle, hardboard, osb
	SG     Range  // specific gravity
	MOE    Range  // stiffness in bending, Pa
	MOR    Range  // strength in bending, Pa
	Status Status // of the three
	Source string

	// Growth in the sheet's own plane, a fraction for each 1 % of relative humidity.
	Expansion Figure

	// Stiffness in its own plane, of which Along is the middle of MOE.
	Plane       Plane
	PlaneStatus Status
}

// Range is what a kind of sheet is at least and at most.
type Range struct{ Least, Greatest float64 }

// FindSheet is the kind of sheet of that name.
func FindSheet(kind string) (Sheet, bool) {
	s, ok := sheets()[kind]
	return s, ok
}

// Density is the middle of what such sheets weigh, kg/m3.
func (s Sheet) Density() Figure {
	return Figure{Value: water * (s.SG.Least + s.SG.Greatest) / 2, Status: s.Status, Source: s.Source}
}

// Change is how much a length or width grows, or below zero shrinks, between two relative
// humidities in percent. Zero where no expansion is known.
func (s Sheet) Change(size Length, from, to float64) Length {
	return Length(math.Round(float64(size) * s.Expansion.Value * (to - from)))
}

var sheets = sync.OnceValue(func() map[string]Sheet {
	byKind := make(map[string]Sheet)
	for r := range table("sheets.csv") {
		s := Sheet{
			Kind:   r.text("kind"),
			SG:     Range{r.number("SG_low"), r.number("SG_high")},
			MOE:    Range{r.number("MOE_low_GPa") * 1e9, r.number("MOE_high_GPa") * 1e9},
			MOR:    Range{r.number("MOR_low_MPa") * 1e6, r.number("MOR_high_MPa") * 1e6},
			Status: r.status("status"),
			Source: handbook + "12-1",
		}
		if points := r.number("over_rh_points"); points != 0 {
			s.Expansion = Figure{
				Value:  r.number("expansion_pct") / 100 / points,
				Status: r.status("expansion_status"),
				Source: "sheets.csv",
			}
		}
		e := (s.MOE.Least + s.MOE.Greatest) / 2
		s.Plane = Plane{
			Along: e, Across: e * r.number("across_ratio"),
			Shear: e * r.number("shear_ratio"), Poisson: r.number("poisson"),
		}
		s.PlaneStatus = r.status("plane_status")
		byKind[s.Kind] = s
	}
	return byKind
})

// Band is how thick a plywood sheet of a nominal thickness may really be.
type Band struct {
	Nominal, Least, Greatest Length
	Label                    Length // as printed on the sheet; zero if sanded
	Status                   Status
}

// UnsandedBand is the band of an unsanded, touch-sanded or overlaid sheet (PS 1), if its nominal
// thickness is one of the standard's.
func UnsandedBand(nominal Length) (Band, bool) {
	for _, b := range bands() {
		if Same(b.Nominal, nominal) {
			return b, true
		}
	}
	return Band{}, false
}

// SandedBand is the band of a sanded sheet (PS 1-19): 1/64 in either way up to 3/4, 3 % above.
func SandedBand(nominal Length) Band {
	within := Inch / 64
	if Over(nominal, 3*Inch/4) {
		within = 3 * nominal / 100
	}
	return Band{Nominal: nominal, Least: nominal - within, Greatest: nominal + within, Status: Reported}
}

var bands = sync.OnceValue(func() []Band {
	var all []Band
	for r := range table("bands.csv") {
		all = append(all, Band{
			Nominal: r.inches("category"), Least: r.inches("least"), Greatest: r.inches("greatest"),
			Label: r.inches("label"), Status: r.status("status"),
		})
	}
	return all
})
