package report

// When to use colour, and what for.

import (
	"github.com/fatih/color"

	"plancheck/internal/diag"
)

// The values of the flag --color.
const (
	ColorAuto   = "auto"
	ColorAlways = "always"
	ColorNever  = "never"
)

// UseColor decides whether a report is coloured. The flag goes before NO_COLOR, that
// before CLICOLOR_FORCE, that before TERM=dumb, and all before whether the report goes to
// a terminal (no-color.org; bixense.com/clicolors).
func UseColor(flag string, getenv func(string) string, terminal bool) bool {
	switch {
	case flag == ColorAlways:
		return true
	case flag == ColorNever, getenv("NO_COLOR") != "":
		return false
	}
	if force := getenv("CLICOLOR_FORCE"); force != "" && force != "0" {
		return true
	}
	return terminal && getenv("TERM") != "dumb"
}

// ink is how each kind of text looks. The zero ink is plain. What the eye looks for first
// is strong (how bad, what it comes to, what to write), what it looks up later is faint.
type ink struct {
	severity [diag.Error + 1]*color.Color
	strong   *color.Color // what a sum comes to
	faint    *color.Color // places and rules
	mend     *color.Color
	good     *color.Color
}

// newInk is made when a report is, so that a process that needs no colour makes none.
func newInk(colored bool) ink {
	if !colored {
		return ink{}
	}
	style := func(attributes ...color.Attribute) *color.Color {
		c := color.New(attributes...)
		c.EnableColor() // UseColor has decided
		return c
	}
	in := ink{
		strong: style(color.Bold),
		faint:  style(color.Faint),
		mend:   style(color.FgGreen),
		good:   style(color.FgGreen),
	}
	in.severity[diag.Error] = style(color.FgRed, color.Bold)
	in.severity[diag.Warning] = style(color.FgYellow, color.Bold)
	in.severity[diag.Advice] = style(color.FgBlue, color.Bold)
	return in
}

// on is s in a colour; nil is none.
func on(c *color.Color, s string) string {
	if c == nil || s == "" {
		return s
	}
	return c.Sprint(s)
}
