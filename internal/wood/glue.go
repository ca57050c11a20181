package wood

// Glues by family, for what a plan does not say about its own.

import (
	"sync"
	"time"
)

// Glue is what is usual in a family of glues. A label beats it.
type Glue struct {
	Kind    string        // pva, yellow-pva, urea …
	Open    time.Duration // from spreading to closing the joint; zero where no number is published
	Clamp   time.Duration // until the clamps may come off; zero likewise
	Coldest Figure        // wood and air, degrees Celsius
	Fills   string        // how well it fills a gap: poor, moderate, good, excellent; or ""
	Class   string        // exposure: interior, limited, exterior; or ""
	Status  Status
}

// FindGlue is the family of that kind.
func FindGlue(kind string) (Glue, bool) {
	g, ok := glues()[kind]
	return g, ok
}

var glues = sync.OnceValue(func() map[string]Glue {
	byKind := make(map[string]Glue)
	for r := range table("glues.csv") {
		coldest := r.figure("coldest_F", "a woodworking article of 2009")
		if coldest.Known() {
			coldest.Value = (coldest.Value - 32) * 5 / 9
		}
		byKind[r.text("kind")] = Glue{
			Kind:    r.text("kind"),
			Open:    time.Duration(r.number("open_min") * float64(time.Minute)),
			Clamp:   time.Duration(r.number("clamp_min") * float64(time.Minute)),
			Coldest: coldest,
			Fills:   r.text("fills"),
			Class:   r.text("class"),
			Status:  r.status("status"),
		}
	}
	return byKind
})
