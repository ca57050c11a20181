package rules

// How quantities that are no lengths are said: in the units of the plan's tape, to as many figures as a
// maker can use, and never as a power of ten.

import (
	"math"
	"strconv"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

const (
	minute = 60.0
	hour   = 60 * minute
)

// timed is a time as a plan writes it: `45s`, `7.5min`, `12h`.
func timed(seconds float64) string {
	switch {
	case seconds >= hour:
		return number(seconds/hour) + "h"
	case seconds >= 2*minute:
		return number(seconds/minute) + "min"
	}
	return number(seconds) + "s"
}

// warmth is a temperature as the plan's tape would have it: `55F`, `13C`.
func warmth(p *plan.Plan, celsius float64) string {
	if p.Tape.Metric {
		return number(math.Round(celsius)) + "C"
	}
	return number(math.Round(celsius*9/5+32)) + "F"
}

// pressure is a pressure, and force a force, likewise: `150psi`, `1000kPa`; `4050lb`, `18000N`.
func pressure(p *plan.Plan, pascals float64) string {
	if p.Tape.Metric {
		return number(math.Round(pascals/1000)) + "kPa"
	}
	return number(math.Round(10*pascals/wood.PSI)/10) + "psi"
}

func force(p *plan.Plan, newtons float64) string {
	if p.Tape.Metric {
		return number(math.Round(newtons)) + "N"
	}
	return number(math.Round(newtons/wood.PoundForce)) + "lb"
}

// heft is a weight as a plan writes it: `62lb`, `28kg`.
func heft(p *plan.Plan, kilograms float64) string {
	if p.Tape.Metric {
		return number(math.Round(kilograms)) + "kg"
	}
	return number(math.Round(kilograms/wood.Pound)) + "lb"
}

// onArea is a load on an area as a plan writes it: `15psf`, `0.72kPa`.
func onArea(p *plan.Plan, pascals float64) string {
	if p.Tape.Metric {
		return number(math.Round(pascals/10)/100) + "kPa"
	}
	return number(math.Round(pascals/wood.PSI*144)) + "psf"
}

// onLength is a load along a length as a plan writes it: `25lb/ft`, `37kg/m`.
func onLength(p *plan.Plan, newtonsPerMetre float64) string {
	kilograms := newtonsPerMetre / wood.Gravity
	if p.Tape.Metric {
		return number(math.Round(10*kilograms)/10) + "kg/m"
	}
	return number(math.Round(10*kilograms/wood.Pound*0.3048)/10) + "lb/ft"
}

// modulus is a stiffness as a plan writes it: `1820000psi`, `12500MPa`.
func modulus(p *plan.Plan, pascals float64) string {
	if p.Tape.Metric {
		return significant(pascals/1e6, 3) + "MPa"
	}
	return significant(pascals/wood.PSI, 3) + "psi"
}

// light is a weight of a few pounds or kilograms as a plan writes it: `11.3lb`, `6.8kg`.
func light(p *plan.Plan, kilograms float64) string {
	if p.Tape.Metric {
		return number(math.Round(kilograms*10)/10) + "kg"
	}
	return number(math.Round(kilograms/wood.Pound*10)/10) + "lb"
}

// pull is a force as a spring balance shows it: `4.2lb`, `22.5N`.
func pull(p *plan.Plan, newtons float64) string {
	if p.Tape.Metric {
		return significant(newtons, 3) + "N"
	}
	return significant(newtons/wood.PoundForce, 2) + "lb"
}

// torque is a torque as a plan writes it: `108inlb`, `7.8Nm`.
func torque(p *plan.Plan, newtonMetres float64) string {
	if p.Tape.Metric {
		return number(math.Round(10*newtonMetres)/10) + "Nm"
	}
	return number(math.Round(newtonMetres/wood.InchPound)) + "inlb"
}

// small is a small length in more figures than a tape has: `0.071`, `1.8`.
func small(p *plan.Plan, l wood.Length) string {
	if p.Tape.Metric {
		return number(l.Millimetres())
	}
	return strconv.FormatFloat(math.Round(l.Inches()*1000)/1000, 'f', -1, 64)
}

// significant is a number to so many figures: `3.2`, `1950`.
func significant(v float64, figures int) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', figures, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
