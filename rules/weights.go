package rules

// How weights and loads are said.

import (
	"math"

	"plancheck/internal/plan"
)

const gravity = 9.80665 // newtons for each kilogram

// heft is a weight as a plan writes it: `62lb`, `28kg`.
func heft(p *plan.Plan, kilograms float64) string {
	if p.Tape.Metric {
		return number(math.Round(kilograms)) + "kg"
	}
	return number(math.Round(kilograms*gravity/pound)) + "lb"
}

// onArea is a load on an area as a plan writes it: `15psf`, `0.72kPa`.
func onArea(p *plan.Plan, pascals float64) string {
	if p.Tape.Metric {
		return number(math.Round(pascals/10)/100) + "kPa"
	}
	return number(math.Round(pascals/psi*144)) + "psf"
}
