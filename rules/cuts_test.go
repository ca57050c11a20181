package rules_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/rules"
)

// TestSoundCutsAreSilent draws frames and cases whose cuts keep every distance that is asked for,
// just so or with room to spare: no rule about cuts in space finds anything in them.
func TestSoundCutsAreSilent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom([]func(*rapid.T) string{soundDoor, soundPost, soundShelves, soundDowels}).Draw(t, "piece")(t)
		for _, f := range example(text).found {
			if r := rules.Find(f.Rule); r.Group == rules.Cuts || f.Severity == diag.Error {
				t.Fatalf("%s\n%s", render([]diag.Finding{f}), text)
			}
		}
	})
}

// sixteenths draws a size in sixteenths of an inch.
func sixteenths(t *rapid.T, label string, low, high int) float64 {
	return float64(rapid.IntRange(low, high).Draw(t, label)) / 16
}

const soundWoods = `climate { shop 8% ; dry 6% ; humid 11% }
wood ash { species "white ash" ; sawn quarter }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
dowel peg { thick 3/8 ; long 2 }
`

// soundDoor is a frame with a middle rail, panels and muntins, haunched or narrowed at its ends.
func soundDoor(t *rapid.T) string {
	thick := sixteenths(t, "thick", 12, 28)
	stile, rail, middle := sixteenths(t, "stile", 32, 72), sixteenths(t, "rail", 36, 80), sixteenths(t, "middle", 40, 80)
	end := fmt.Sprintf("haunch %.6f", max(0.5, rail/4)+sixteenths(t, "haunch", 0, 3))
	if rapid.Bool().Draw(t, "shouldered") {
		end = fmt.Sprintf("shoulder %.6f", max(0.5, rail/4))
	}
	long := min(stile*7/8, stile-3.0/16) - 1.0/16
	return soundWoods + fmt.Sprintf(`frame leaf {
  of ash ; wide 30 ; high 60 ; thick %.6f
  joint tenon thick %.6f long %.6f
  each panel { of thin ; groove 1/4 x 3/8 ; glue edges }
  across {
    stile left %.6f
    down {
      rail head %.6f { joint tenon %s }
      across { panel a ; muntin upper 3 { joint tenon long 1 } ; panel b }
      rail middle %.6f
      across 20 { panel c ; muntin lower 3 { joint tenon long 1 } ; panel d }
      rail foot %.6f { joint tenon %s }
    }
    stile right %.6f
  }
}
`, thick, thick/3, long, stile, rail, end, middle, rail, end, stile)
}

// soundPost is a table whose tenons meet in the legs: mitred, short enough, or at two heights.
func soundPost(t *rapid.T) string {
	post := sixteenths(t, "post", 28, 56)
	back := sixteenths(t, "back", 0, 4)
	thick := sixteenths(t, "thick", 12, 16)
	tenon := thick / 3
	outside := back + thick/2 + tenon/2 // to the far side of the tenon
	long := post - outside - 1.0/8 - 1.0/16
	mitred, first, second := "", 0.0, 0.0
	switch rapid.IntRange(0, 2).Draw(t, "how") {
	case 0:
		mitred, long = "mitred", post*7/8-1.0/4
	case 1:
		first, second, long = 1, 6+sixteenths(t, "beyond", 2, 16), post*3/4
	}
	side := func(name, word string, wide, from float64, as string) string {
		down := fmt.Sprintf("apron %s 4 { thick %.6f ; recess front %.6f } ; space", name, thick, back)
		if from > 0 {
			down = fmt.Sprintf("space %.6f ; %s", from, down)
		}
		return fmt.Sprintf(`frame %s x 2 {
  of ash ; wide %.6f ; high 28 ; thick %.6f
  joint tenon thick %.6f long %.6f haunch 1 deep 3/8 %s
  across { post left part leg%s ; down { %s } ; post right part leg%s }
}
`, word, wide, post, tenon, long, mitred, as, down, as)
	}
	return soundWoods + fmt.Sprintf("part leg x 4 { of ash ; size 28 x %.6f x %.6f }\n", post, post) +
		side("one", "long", 60, first, "") + side("two", "short", 30, second, " turned")
}

// soundShelves is a divider with housings at both sides: not too deep, or staggered.
func soundShelves(t *rapid.T) string {
	thick := sixteenths(t, "thick", 10, 20)
	deep, at := thick/3, 8.0
	if rapid.Bool().Draw(t, "staggered") {
		deep, at = thick/2, 8+thick+sixteenths(t, "beyond", 0, 8)
	}
	return soundWoods + fmt.Sprintf(`case nest {
  of ash %.6f ; wide 40 ; high 30 ; deep 12 ; joint dado deep %.6f
  across {
    side left
    behind {
      across { down { open ; shelf one ; open 8 } ; divider mid ; down { open ; shelf two ; open %.6f } }
      back rear { of thin ; joint rabbet 1/4 x 1/4 }
    }
    side right
  }
}
`, thick, deep, at)
}

// soundDowels is a dowelled frame round a panel, and boards dowelled to a side.
func soundDowels(t *rapid.T) string {
	rail := sixteenths(t, "rail", 40, 96)
	first := 3.0/8 + 1.0/8 + 3.0/16 // the groove, the wood beside it, half a dowel
	side := sixteenths(t, "side", 12, 20)
	return soundWoods + fmt.Sprintf(`frame face {
  of ash ; wide 24 ; high 30 ; thick %.6f
  joint dowel peg at %.6f, %.6f
  each panel { of thin ; groove 1/4 x 3/8 ; glue edges }
  across { stile left 2 1/2 ; down { rail head %.6f ; panel field ; rail foot %.6f } ; stile right 2 1/2 }
}
case box {
  of ash %.6f ; wide 24 ; high 30 ; deep 10
  across { side left ; down { open ; shelf one { joint dowel peg deep %.6f own 1 1/2 at 3/8, 5, 9 } ; open } ; side right }
}
`, sixteenths(t, "thick", 12, 20), first, rail-first, rail, rail, side, side-1.0/8)
}
