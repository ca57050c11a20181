package plan

// The generic hardware that comes with plancheck, written as a plan.

import (
	_ "embed"

	"plancheck/internal/diag"
	"plancheck/lang"
)

// GenericFile is the name under which findings show the generic hardware. No file of that name is read or
// written.
const GenericFile = "<generic hardware>"

// Generic is the text of the generic hardware, with the sources of its figures.
//
//go:embed generic.plan
var Generic string

// isGeneric reports whether a `use` asks for it: by its bare name, which no file has.
func isGeneric(said *lang.Expr) bool { return said.Op == lang.Name && said.Text == "generic" }

// usedFile is what a `use` takes in; nil where that was reported.
func (d *decoder) usedFile(said *lang.Expr) *diag.File {
	if isGeneric(said) {
		return diag.NewFile(GenericFile, Generic)
	}
	if d.open == nil {
		d.fault(CannotUse, said.Span, "%s cannot be taken in: this text has no folder to look in", quoted(said.Text))
		return nil
	}
	file, err := d.open(d.source.file, said.Text)
	if err != nil {
		d.fault(CannotUse, said.Span, "%s cannot be taken in: %v", quoted(said.Text), err)
		return nil
	}
	return file
}
