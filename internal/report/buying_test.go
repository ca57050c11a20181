package report_test

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/report"
	"plancheck/rules"
)

func TestBuyingList(t *testing.T) {
	for _, c := range []struct {
		plan, material, need, buy string
	}{
		// W. Noyes, Handwork in Wood, 1910: inches times inches times feet over 12; a quarter more for waste.
		{"units in\npart board { of m ; size 15ft x 6 x 1 }", "m", "7.5 board feet", "9.4 board feet, with 25% for waste"},
		// Thinner than an inch counts as an inch.
		{"units in\npart board x 2 { of m ; size 6ft x 6 x 3/4 }", "m", "6.0 board feet", "7.5 board feet, with 25% for waste"},
		{"units in\nshop { waste 50% }\npart board { of m ; size 2ft x 12 x 2 }", "m", "4.0 board feet", "6.0 board feet, with 50% for waste"},
		{"units mm\npart board { of m ; size 2000 x 500 x 30 }", "m", "0.0300 m³", "0.0375 m³, with 25% for waste"},
		// Nine parts of 2 x 2 feet: 36 square feet, and a sheet has 32.
		{"units in\npart board x 9 { of s ; size 24 x 24 x 3/4 }", "s", "36.0 square feet", "2 sheets at least, by area alone: lay the parts out first"},
		// A leaf 8 wide is 7 1/2 when its edges are trimmed: 24 takes four, on each face.
		{"units in\nlayup l { ply v along ; ply s across ; ply v along }\npart board { of l ; size 60 x 24 }", "v", "8 leaves", "10 leaves, with 25% for waste"},
		// Two strips of 40, and 2 to each, come from a leaf of 98.
		{"units in\nlayup l { ply v along ; ply s across ; ply v along }\npart board x 2 { of l ; size 40 x 7 }", "v", "2 leaves", "3 leaves, with 25% for waste"},
	} {
		text := c.plan + "\nwood m { species \"white oak\" ; sawn flat }\nveneer v { species \"white oak\" ; thick 1/42 ; long 98 ; wide 8 ; leaves 24 }\n" +
			"sheet s { kind plywood ; thick 3/4 ; actual 3/4 ; size 48 x 96 ; emission \"x\" }\n"
		p, _ := rules.Run(diag.NewFile("piece.plan", text), nil)
		found := false
		for _, b := range report.BuyingList(p) {
			if b.Material == c.material {
				found = true
				if b.Need != c.need || b.Buy != c.buy {
					t.Errorf("%s:\n got %s; %s\nwant %s; %s", strings.Split(c.plan, "\n")[1], b.Need, b.Buy, c.need, c.buy)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing is bought", c.plan)
		}
	}
}
