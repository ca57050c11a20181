package plan

import "plancheck/internal/wood"

// Length is what a limit sets, as a length; a bare number has the unit of its file. ok is
// false for other quantities.
func (l *Limit) Length() (value wood.Length, ok bool) { return l.Value.Length() }
