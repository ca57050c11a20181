package report

// One rule, told for a person.

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"plancheck/internal/wood"
	"plancheck/lang"
	"plancheck/rules"
)

// Explain says what a rule is about: what goes wrong at the bench, what to do, a plan that shows
// the fault and its mend, and where the figures come from.
func Explain(r *rules.Rule) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s (%s): %s\n\n%s\n", r.Name, r.Severity, r.Summary, strings.TrimSpace(r.Doc))
	section := func(head, text string) {
		if text = strings.Trim(text, "\n"); text != "" {
			fmt.Fprintf(&b, "\n%s\n\n  %s\n", head, strings.ReplaceAll(text, "\n", "\n  "))
		}
	}
	section("It finds this:", r.Bad)
	section("Put right:", r.Good)
	section("Looks like it, and is not reported:", r.Sound)
	var figures strings.Builder
	for _, f := range r.Figures {
		fmt.Fprintf(&figures, "%s %s: %s (%s: %s)\n", f.Name, amount(f), f.Why, f.Basis, f.Source)
		if f.Basis.Settable() {
			fmt.Fprintf(&figures, "  otherwise in your shop: limit %s %s VALUE \"the reason\"\n", r.Name, f.Name)
		}
	}
	section("Figures", figures.String())
	section("Sources", r.Sources)
	if r.Always {
		fmt.Fprintf(&b, "\nIt cannot be silenced.\n")
	} else {
		fmt.Fprintf(&b, "\nWhere the piece is right as it is, write why:\n\n  allow %s \"the reason\"\n", r.Name)
	}
	return b.String()
}

// amount is what a figure comes to: a length, a weight and a pressure in both kinds of units, anything else as a plan
// writes it in the base unit of what it measures.
func amount(f *rules.Figure) string {
	if f.Dim == lang.Length {
		inch, metric := wood.Tape{Mark: wood.Inch / 64}, wood.Tape{Metric: true}
		return fmt.Sprintf("%s (%s)", inch.ShowUnit(f.Length), metric.ShowUnit(cmp.Or(f.Metric, f.Length)))
	}
	rounded := func(v float64, unit string) string {
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
		return strconv.FormatFloat(v, 'f', -1, 64) + unit
	}
	switch {
	case f.Dim == lang.Weight:
		return fmt.Sprintf("%s (%s)", rounded(f.Number/wood.Pound, "lb"), rounded(f.Number, "kg"))
	case f.Dim == lang.Pressure && f.Number < 10*wood.PSI: // what lies on a shelf, and not what a clamp presses
		return fmt.Sprintf("%s (%s)", rounded(f.Number/wood.PSI*144, "psf"), rounded(f.Number/1000, "kPa"))
	case f.Dim == lang.Pressure:
		return fmt.Sprintf("%s (%s)", rounded(f.Number/wood.PSI, "psi"), rounded(f.Number/1000, "kPa"))
	}
	unit := map[lang.Dim]string{
		lang.Percent: "%", lang.Temperature: "C", lang.Angle: "deg", lang.Force: "N", lang.Torque: "Nm",
		lang.LineLoad: "kg/m", lang.Density: "kg/m3", lang.Time: "s",
	}[f.Dim]
	digits := -1
	if f.Number < 1 { // a third is no page of threes
		digits = 3
	}
	return strconv.FormatFloat(f.Number, 'g', digits, 64) + unit
}
