package main

// The finding by which the language is explained: one rail of one cabinet, with its working.

import (
	"bytes"
	"strings"
	"testing"
)

const cabinetFinding = `slip.plan:76:7: error: rail "head" is cut 14 5/16 but must be 16 13/16 [rail-length]
    19               opening carcass.left-door
  -  3/32            reveal, hinge side
  -  3/32            reveal, latch side
  = 18 13/16         width of leaf-frame
  -  2 1/4           stile hinge-side
  -  2 1/4           stile latch-side
  = 14 5/16          between shoulders
  +  1 1/4           tenon into hinge-side
  +  1 1/4           tenon into latch-side
  = 16 13/16         needed
  mend: write ` + "`cut 16 13/16`" + `

1 error in 1 file
`

func TestTheCabinetsSlip(t *testing.T) {
	t.Chdir("../../fixtures/projects/cabinet")
	var out, errors bytes.Buffer
	if code := run([]string{"check", "slip.plan"}, strings.NewReader(""), &out, &errors); code != 1 {
		t.Errorf("exit code %d, want 1; %s", code, &errors)
	}
	if got := out.String() + errors.String(); got != cabinetFinding {
		t.Errorf("got\n%s\nwant\n%s", got, cabinetFinding)
	}
}
