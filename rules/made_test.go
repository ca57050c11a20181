package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"plancheck/internal/diag"
)

func tenonLong(joint string) string {
	if strings.Contains(joint, "long 1 1/2") {
		return "1 1/2"
	}
	return "1 1/4"
}

// What is proposed for rails that are cut already mends the finding and raises no other, whatever the
// frame: with a groove for a panel and without, with haunches, in inches and in millimetres.
func TestMadeRailsCanBeMended(t *testing.T) {
	proposed := 0
	for _, thick := range []string{"3/4", "7/8", "1 1/8"} {
		for _, stile := range []string{"2", "2 1/4", "3 1/2"} {
			for _, tenon := range []string{"tenon long 1 1/4 haunch 3/4", "tenon long 1 1/4 shoulder 3/4", "tenon thick 5/16 long 1 1/2 shoulder 3/4 set 1/4"} {
				for _, space := range []string{"space", "panel field { thick 1/2 ; tongue 1/4 x 3/8 ; float }"} {
					for _, short := range []string{"-1/4", "1/8", "1/4", "1/2", "1", "2 1/2", "2 5/8", "3"} {
						text := fmt.Sprintf(`climate { shop 8%% ; dry 6%% ; humid 11%% }
wood oak { species "white oak" ; sawn quarter }
frame leaf {
  of oak ; wide 20 ; high 24 ; thick %s
  joint %s
  each panel groove 1/4 x 3/8
  across { stile left %s ; down { rail head 3 cut 20 - 2 * (%s) + 2 * (%s) - (%s) made ; %s ; rail foot 3 } ; stile right %s }
}
`, thick, tenon, stile, stile, tenonLong(tenon), short, space, stile)
						c := example(text)
						for _, f := range c.found {
							if f.Rule != "rail-length" {
								continue
							}
							for _, fix := range f.Fixes {
								if len(fix.Edits) > 0 {
									proposed++
									c.checkFix(t, f, fix)
								}
							}
						}
						if t.Failed() {
							t.Fatalf("in\n%s\nwith\n%s", text, render([]diag.Finding(c.found)))
						}
					}
				}
			}
		}
	}
	if proposed < 200 {
		t.Errorf("only %d proposals were tried", proposed)
	}
}
