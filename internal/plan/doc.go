// Package plan turns the text of a plan into the piece it describes: names bound, units
// checked, layouts solved, every size worked out with where it stands and how it came to
// be. It passes no judgement; that is for package rules.
//
// The words of the language are declared in the tables words_*.go, and bound there to the
// typed fields that the rules read. decode.go reads lines by them, names.go and value.go
// work out what is named and what it comes to, layout.go deals out cells, ends.go finds
// what meets what, and member.go, fill.go and drawer.go make finished sizes of it all. Where a
// rule asks for it, cuts.go places every joint, groove and bore in the wood that it is cut into.
package plan

import "plancheck/internal/diag"

// Opener reads a file that a plan takes in by `use`. The name is as written; the opener
// resolves it against the file that asks, and refuses what lies outside the folder that
// it was given. The name of the file that it returns tells one file from another.
type Opener func(from *diag.File, name string) (*diag.File, error)
