package wood

// Wood screws: sizes, holes, and what they hold.

import "sync"

// Holes are the holes to drill for a screw. Zero where the table has none.
type Holes struct {
	PilotHard, PilotSoft, Shank Length
	Status                      Status
}

// ScrewHoles are the holes for a screw of that number, and whether it is in the table.
func ScrewHoles(number int) (Holes, bool) {
	h, ok := holes()[number]
	return h, ok
}

var holes = sync.OnceValue(func() map[int]Holes {
	byNumber := make(map[int]Holes)
	for r := range table("screws.csv") {
		byNumber[int(r.number("number"))] = Holes{
			PilotHard: r.inches("pilot_hard"), PilotSoft: r.inches("pilot_soft"),
			Shank: r.inches("shank"), Status: r.status("status"),
		}
	}
	return byNumber
})

// ScrewDiameter is the shank of a wood screw of that number: 0.060 in and 0.013 in for each
// number (the usual formula; screw tables agree).
func ScrewDiameter(number int) Length {
	return 60*Inch/1000 + Length(number)*(13*Inch/1000)
}

// ScrewRoot is the diameter at the root of the thread, about two thirds of the shank (Wood
// Handbook, FPL-GTR-190, ch. 8).
func ScrewRoot(diameter Length) Length { return diameter * 2 / 3 }

// Withdrawal is what a screw may be loaded with along its axis, in newtons for each metre of
// thread in side grain, in dry wood of a specific gravity: 2850 G^2 D lbf for each inch, D in
// inches (a structural handbook, ch. 6, and an engineering reference agree). In end grain it
// may carry nothing.
func Withdrawal(sg float64, diameter Length) float64 {
	perInch := 2850 * sg * sg * diameter.Inches()
	return perInch * PoundForce / Inch.Metres()
}
