package main

// Texts that no maker writes, given to the built command: each ends soon, takes no more
// memory than its length allows, and is told what is wrong. What is short enough to be shown
// stands in fixtures/cmd/bad-*.txtar.

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const fifty = 50 << 20 // bytes: near the most that is read

// What a run may take: some, and so much more for each byte of the text.
const (
	mostWork       = 3 * time.Second
	mostWorkAByte  = 400 * time.Nanosecond
	mostBytes      = 150 << 20
	mostBytesAByte = 240
)

const pine = "climate { shop 8% ; dry 6% ; humid 11% }\nwood pine { species \"eastern white pine\" ; sawn flat }\n"

func TestBadInput(t *testing.T) {
	tests := []struct {
		name  string
		long  bool // skipped with -short
		text  func() string
		wants []string // in what is said
	}{
		{"50 MB of sound lines", true, func() string {
			return each(fifty/28, func(i int) string { return fmt.Sprintf("let play-%d = 3 3/32 + 1/2\n", i) })
		}, []string{"nothing found"}},
		{"50 MB of anything", true, garbage, []string{"[syntax]", "the rest is not read"}},
		{"one line of 50 MB", true, func() string { return "let a = " + repeat("1 + ", fifty) + "1\n" }, []string{"this line is too long", "1 error in 1 file"}},
		{"one word of 50 MB", true, func() string { return repeat("a", fifty) }, []string{"this name is too long", "1 error in 1 file"}},
		{"one text of 50 MB", true, func() string { return `plan "` + repeat("a", fifty) + `"` }, []string{"this text is too long", "1 error in 1 file"}},
		{"one comment of 50 MB", true, func() string { return "#" + repeat("a", fifty) }, []string{"nothing found"}},
		{"50 MB of braces", true, func() string { return repeat("{", fifty) }, []string{"blocks stand at most 100 deep"}},
		{"more than is read", true, func() string { return repeat("\n", 65<<20) }, []string{"more than 64 MB of text"}},

		{"10,000 blocks", false, func() string { return repeat("case a {\n", 90_000) + repeat("}\n", 20_000) }, []string{"blocks stand at most 100 deep"}},
		{"10,000 blocks that are not closed", false, func() string { return repeat("case a {\n", 90_000) }, []string{"[syntax]"}},
		{"10,000 brackets", false, func() string { return "let a = " + repeat("(", 10_000) + "1" + repeat(")", 10_000) }, []string{"brackets stand at most 100 deep", "1 error in 1 file"}},
		{"10,000 brackets that are not closed", false, func() string { return "let a = " + repeat("(", 10_000) }, []string{"brackets stand at most 100 deep", "1 error in 1 file"}},
		{"lists in lists, as deep as they go", false, func() string {
			return pine + "case c { of pine 3/4 ; wide 1000 ; high 1000 ; deep 10\n" +
				each(98, func(i int) string { return []string{"across", "down"}[i%2] + " { open share 2\n" }) + "open last" + repeat("}", 99) + "\n"
		}, []string{"nothing is left for open"}},

		{"a number of 10,000 digits", false, func() string { return "let a = " + repeat("7", 10_000) + "\nlet b = a / 3\n" }, []string{"at most 18 digits", "1 error in 1 file"}},
		{"a chain of a million lets", true, func() string {
			return "let a0 = 1\n" + each(1_000_000, func(i int) string { return fmt.Sprintf("let a%d = a%d + 1\n", i+1, i) }) + "check \"so many\" a1000000 == 1000001\n"
		}, []string{"nothing found"}},
		{"a chain of a million lets, the last first", true, func() string {
			return "check \"so many\" a0 == 1000001\n" + each(1_000_000, func(i int) string { return fmt.Sprintf("let a%d = a%d + 1\n", i, i+1) }) + "let a1000000 = 1\n"
		}, []string{"nothing found"}},
		{"a ring of 100,000 lets", false, func() string {
			return each(100_000, func(i int) string { return fmt.Sprintf("let a%d = a%d + 1\n", i, (i+1)%100_000) })
		}, []string{":1:5: error: `a0` waits for itself", "1 error in 1 file"}},
		{"a number that doubles its digits 200 times", false, func() string {
			return "let a0 = 9/7\n" + each(200, func(i int) string { return fmt.Sprintf("let a%d = a%d * a%d\n", i+1, i, i) }) + "part p { size a200 x 2 x 1 }\n"
		}, []string{"more than 1 km"}},

		{"patterns that unfold tenfold, ten deep", false, func() string { return unfolding(10, 10) }, []string{"unfold into more than 200000 lines", "1 error in 1 file"}},
		{"patterns that unfold twofold, sixty deep", false, func() string { return unfolding(60, 2) }, []string{"unfold into more than 200000 lines", "1 error in 1 file"}},
		{"150,000 patterns that build the next", false, func() string { return unfolding(150_000, 1) }, []string{"build one another more than 20 deep", "1 error in 1 file"}},
		{"assemblies of two of the next, 64 times", false, func() string {
			return each(64, func(i int) string {
				return fmt.Sprintf("assembly a%d { high 3 ; deep 3 ; across { assembly q part a%d ; assembly r part a%d } }\n", i, i+1, i+1)
			}) + "assembly a64 { wide 3 ; high 3 ; deep 3 ; across { open o } }\n"
		}, []string{"comes to more than 1 km", "1 error in 1 file"}},
		{"layups of two of the next, 64 times", false, func() string {
			return each(64, func(i int) string { return fmt.Sprintf("layup l%d { ply l%d along ; ply l%d across }\n", i, i+1, i+1) }) + "veneer l64 { thick 1/42 }\n"
		}, []string{"come to more than 1 km"}},
		{"100,000 assemblies in one another", false, func() string {
			return each(100_000, func(i int) string { return fmt.Sprintf("assembly a%d { across { assembly q part a%d } }\n", i, i+1) }) +
				"assembly a100000 { wide 3 ; high 3 ; deep 3 ; across { open o } }\ncheck \"as wide\" a0.wide == 3\n"
		}, nil},
		{"100,000 layups of one another", false, func() string {
			return each(100_000, func(i int) string { return fmt.Sprintf("layup l%d { ply l%d along }\n", i, i+1) }) + "veneer l100000 { thick 1/42 }\n"
		}, []string{"more than 5000 deep"}},

		{"a row of 10,000", false, func() string {
			return pine + "frame f { of pine ; thick 1 ; wide 1000 ; high 10 ; across { stile a 2 ; slat lath 1/1000 count 10000 ; stile b 2 } }\n"
		}, nil},
		{"a row of 10,000 for which there is no room", false, func() string {
			return pine + "frame f { of pine ; thick 1 ; wide 100 ; high 10 ; across { stile a 2 ; slat lath 1 count 10000 ; stile b 2 } }\n"
		}, []string{"[list-sum]", "10000 of them", "1 error in 1 file"}},
		{"a list of 10,000 openings and dividers", false, func() string {
			return pine + "case c { of pine 3/4 ; wide 39000 ; high 10 ; deep 10 ; joint dado deep 1/4 ; down { top t ; across {\n" +
				each(10_000, func(i int) string { return fmt.Sprintf("open o%d ; divider d%d cut 4\n", i, i) }) + "open last } ; bottom b } }\n"
		}, []string{"10000 errors"}},

		{"10,000 dividers for which there is no room", false, func() string {
			return pine + "case c { of pine 3/4 ; wide 100 ; high 10 ; deep 10 ; across {\n" + each(10_000, func(i int) string { return fmt.Sprintf("divider d%d\n", i) }) + "} }\n"
		}, []string{"7400 more than there is room for", "… and 9972 lines more", "1 error in 1 file"}},

		{"200,000 unknown names", false, func() string {
			return each(200_000, func(i int) string { return fmt.Sprintf("let a%d = nosuch%d\n", i, i) })
		}, []string{"200000 errors in 1 file"}},
		{"one unknown name 200,000 times", false, func() string {
			return each(200_000, func(i int) string { return fmt.Sprintf("let a%d = nosuch\n", i) })
		}, []string{"nothing is called `nosuch`"}},
		{"200,000 unknown words", false, func() string {
			return each(200_000, func(i int) string { return fmt.Sprintf("fizz%d { buzz 3 }\nlet a%d = 1\n", i, i) })
		}, []string{"200000 errors in 1 file"}},
		{"200,000 of one name", false, func() string { return repeat("let a = 1\n", 2_000_000) }, []string{"199999 errors"}},
		{"200,000 broken lines", false, func() string { return repeat("a 27-1/2\n", 1_800_000) }, []string{"the rest is not read"}},
		{"20,000 lengths that do not add up", false, func() string {
			return pine + each(10_000, func(i int) string {
				return fmt.Sprintf("frame f%d { of pine ; thick 1 ; wide 10 ; high 10 ; joint tenon thick 1/4 long 1\n across { stile a 2 ; down { rail h 2 cut 3 ; open o ; rail g 2 cut 4 } ; stile c 2 } }\n", i)
			})
		}, []string{"20000 errors"}},

		{"a name of 1 MB", false, func() string {
			return "let " + repeat("a", 1<<20) + " = nosuch\nlet b = 1" + repeat("a", 1<<20) + "\n"
		}, []string{"this name is too long"}},
		{"100,000 names and one that is misspelt", false, func() string {
			return each(100_000, func(i int) string { return fmt.Sprintf("let name-%d = 1\n", i) }) + "let b = nmae-5555\n"
		}, []string{"did you mean `name-5555`?", "1 error in 1 file"}},
		{"100,000 names that are all misspelt", false, func() string {
			return each(100_000, func(i int) string { return fmt.Sprintf("let name-%d = nmae-%d\n", i, i) })
		}, []string{"did you mean `name-0`?", "100000 errors"}},
	}
	plancheck := build(t, ".")
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if test.long && testing.Short() {
				t.Skip("much text")
			}
			text := test.text()
			path := filepath.Join(t.TempDir(), "bad.plan")
			if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			s := spend(t, plancheck, path)
			t.Logf("%d bytes: %s, %d bytes said", len(text), s, len(s.out))
			if s.code < clean || s.code > failed || strings.Contains(s.out, "goroutine ") {
				t.Errorf("exit %d\n%.2000s", s.code, s.out)
			}
			for _, want := range test.wants {
				if !strings.Contains(s.out, want) {
					t.Errorf("%q is not said, but\n%.2000s\n…\n%s", want, s.out, s.out[max(0, len(s.out)-200):])
				}
			}
			if most := mostWork + time.Duration(len(text))*mostWorkAByte; s.work > most {
				t.Errorf("%s, and %s is the most", s, most)
			}
			if most := int64(mostBytes + len(text)*mostBytesAByte); s.peak > most {
				t.Errorf("%s, and %d MB is the most", s, most>>20)
			}
		})
	}
}

// repeat is some text again and again, as many bytes as that is in all, rounded up.
func repeat(text string, bytes int) string {
	return strings.Repeat(text, (bytes+len(text)-1)/len(text))
}

// each joins n texts.
func each(n int, text func(i int) string) string {
	var all strings.Builder
	for i := range n {
		all.WriteString(text(i))
	}
	return all.String()
}

// garbage is 50 MB of bytes without sense, the same every time.
func garbage() string {
	random := rand.NewChaCha8([32]byte{1})
	text := make([]byte, fifty)
	random.Read(text)
	return string(text)
}

// unfolding is patterns each of which builds the one before it so many times.
func unfolding(levels, builds int) string {
	return "pattern p0 { let q = 1 }\n" + each(levels, func(i int) string {
		return fmt.Sprintf("pattern p%d {\n", i+1) + each(builds, func(j int) string { return fmt.Sprintf("build b%d from p%d\n", j, i) }) + "}\n"
	}) + fmt.Sprintf("build all from p%d\n", levels)
}
