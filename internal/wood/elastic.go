package wood

// How stiff a wood is in its three directions, for sums with plies that cross.

import "sync"

// Elastic is how stiff a wood is along L, across the rings R and along the rings T at about
// 12 % moisture content. The moduli are ratios to the stiffness along the grain, E_L. The first
// letter of a Poisson's ratio is the direction of the load, the second that of the strain
// across it. Zero where none is listed.
//
// E_L is about a tenth more than the MOE of the tables, which has the deflection by shear in
// it (from memory). The ratios of one table agree badly between themselves (MuLR E_R/E_L is
// 0.55 to 1.02 of MuRL), so a stiffness matrix is built from MuLT or MuLR and never from MuTL
// or MuRL.
type Elastic struct {
	ET, ER, GLR, GLT, GRT              float64
	MuLR, MuLT, MuRT, MuTR, MuRL, MuTL float64
	Status                             Status
	Source                             string
}

// Elastic is what Tables 5-1 and 5-2 say of the species, and whether they do.
func (s *Species) Elastic() (Elastic, bool) {
	e, ok := elastics()[s.elasticRow]
	return e, ok
}

var elastics = sync.OnceValue(func() map[string]Elastic {
	byRow := make(map[string]Elastic)
	for r := range table("elastic.csv") {
		byRow[r.text("species")] = Elastic{
			ET: r.number("ET_EL"), ER: r.number("ER_EL"),
			GLR: r.number("GLR_EL"), GLT: r.number("GLT_EL"), GRT: r.number("GRT_EL"),
			MuLR: r.number("mu_LR"), MuLT: r.number("mu_LT"), MuRT: r.number("mu_RT"),
			MuTR: r.number("mu_TR"), MuRL: r.number("mu_RL"), MuTL: r.number("mu_TL"),
			Status: r.status("status"),
			Source: handbook + "5-1 and 5-2",
		}
	}
	return byRow
})

// ElasticOr is what Tables 5-1 and 5-2 say of the species, with the mean of its group's woods in
// the table for what they do not, and whether any of that was needed.
func (s *Species) ElasticOr() (e Elastic, borrowed bool) {
	e, listed := s.Elastic()
	mean := groupElastics()[s.Group]
	if !listed {
		return mean, true
	}
	own, others := e.ratios(), mean.ratios()
	for i, ratio := range own {
		if *ratio == 0 {
			*ratio, borrowed = *others[i], true
		}
	}
	if borrowed {
		e.Status = min(e.Status, mean.Status)
	}
	return e, borrowed
}

// ratios are those that a ply is worked out from.
func (e *Elastic) ratios() [6]*float64 {
	return [...]*float64{&e.ET, &e.ER, &e.GLR, &e.GLT, &e.MuLR, &e.MuLT}
}

// groupElastics are the mean ratios of the hardwoods and of the softwoods in the table, each row
// counted once and blanks left out.
var groupElastics = sync.OnceValue(func() map[Group]Elastic {
	means := make(map[Group]Elastic)
	for _, group := range []Group{Hardwood, Softwood} {
		mean := Elastic{Status: Derived, Source: "the mean of Tables 5-1 and 5-2"}
		var count [6]float64
		counted := make(map[string]bool)
		for _, s := range species() {
			e, ok := s.Elastic()
			if !ok || s.Group != group || counted[s.elasticRow] {
				continue
			}
			counted[s.elasticRow] = true
			for i, ratio := range e.ratios() {
				if *ratio != 0 {
					*mean.ratios()[i] += *ratio
					count[i]++
				}
			}
		}
		for i, sum := range mean.ratios() {
			*sum /= count[i]
		}
		means[group] = mean
	}
	return means
})
