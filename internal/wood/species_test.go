package wood

import (
	"slices"
	"strings"
	"testing"
)

func TestFind(t *testing.T) {
	tests := []struct{ name, want string }{
		{"white oak", "white oak"},
		{"Oak, white", "white oak"},
		{"oak white", "white oak"},
		{"WHITE-OAK", "white oak"},
		{"  white   oak ", "white oak"},
		{"sugar maple", "sugar maple"},
		{"hard maple", "sugar maple"},
		{"yellow poplar", "yellow-poplar"},
		{"yellow-poplar", "yellow-poplar"},
		{"poplar, yellow", "yellow-poplar"},
		{"yellowpoplar", "yellow-poplar"},
		{"sweet gum", "sweetgum"},
		{"Western Red Cedar", "western redcedar"},
		{"Cedar, western red", "western redcedar"},
		{"douglas fir", "coast Douglas-fir"},
		{"Douglas-fir", "coast Douglas-fir"},
		{"black walnut", "black walnut"},
		{"walnut", "black walnut"},
		{"cherry", "black cherry"},
		{"khaya", "African mahogany"},
		{"ipé", "ipe"},
		{"Spanish cedar", "Spanish-cedar"},
	}
	for _, test := range tests {
		s, ok := Find(test.name)
		if !ok {
			t.Errorf("%q is not found", test.name)
		} else if s.Name != test.want {
			t.Errorf("%q is %q, want %q", test.name, s.Name, test.want)
		}
	}
	for _, name := range []string{"", " ", "oak", "maple", "pine", "cedar", "oak, oak", "plywood", "42", "\xff"} {
		if s, ok := Find(name); ok {
			t.Errorf("%q finds %q", name, s.Name)
		}
	}
}

func TestNamesakes(t *testing.T) {
	tests := []struct {
		name  string
		first []string
	}{
		{"oak", []string{"red oak", "white oak"}},
		{"Maple", []string{"sugar maple"}},
		{"oak, American", []string{"American red oak", "American white oak"}},
		{"oka", nil},
		{"", nil},
		{"42", nil},
	}
	for _, test := range tests {
		got := Namesakes(test.name)
		if len(got) < len(test.first) || !slices.Equal(got[:len(test.first)], test.first) || test.first == nil && got != nil {
			t.Errorf("Namesakes(%q) = %q, want %q first", test.name, got, test.first)
		}
	}
}

// TestEveryRowIsReached: no row of a table is out of reach, no species points at a row that is
// not there, and no two names share a key.
func TestEveryRowIsReached(t *testing.T) {
	// Printed in Table 13-5 as "Oak, black", but with the figures of the California black oak.
	unreached := map[string]string{"Oak, black": "movement"}
	for _, column := range []string{"movement", "shrinkage", "strength", "elastic"} {
		there := rows(column + ".csv")
		reached := make(map[string]bool)
		for r := range table("species.csv") {
			name := r.text(column)
			if _, ok := there[name]; !ok && name != "" {
				t.Errorf("%s: %s.csv has no row %q", r.text("name"), column, name)
			}
			reached[name] = true
		}
		for name := range there {
			if !reached[name] && unreached[name] != column {
				t.Errorf("%s.csv: no species has row %q", column, name)
			}
		}
	}
}

func TestNamesAreClear(t *testing.T) {
	owner := make(map[string]string)
	claim := func(name, species string) {
		for _, key := range keys(name) {
			if other, taken := owner[key]; taken && other != species {
				t.Errorf("%q is %q and %q", name, species, other)
			}
			owner[key] = species
		}
	}
	for _, s := range All() {
		claim(s.Name, s.Name)
	}
	for r := range table("names.csv") {
		claim(r.text("name"), r.text("species"))
		if _, ok := Find(r.text("species")); !ok {
			t.Errorf("names.csv: no species %q", r.text("species"))
		}
		if s, _ := Find(r.text("name")); s == nil || s.Name != r.text("species") {
			t.Errorf("names.csv: %q does not find %q", r.text("name"), r.text("species"))
		}
		r.status("status")
	}
}

// TestTablesAreWhole: each file says where it is from, no row stands twice, every number is a
// number and every figure has a status.
func TestTablesAreWhole(t *testing.T) {
	files, err := data.ReadDir("data")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := data.ReadFile("data/" + file.Name())
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(string(text), "# ") || !strings.Contains(string(text), "# Source") {
			t.Errorf("%s does not say where it is from", file.Name())
		}
	}
	for _, file := range files {
		seen := make(map[string]bool)
		for r := range table(file.Name()) {
			key := r.cells[0]
			if file.Name() == "emc.csv" {
				key += " F, " + r.text("rh_pct")
			}
			if seen[key] {
				t.Errorf("%s: %q stands twice", file.Name(), key)
			}
			seen[key] = true
			if _, ok := r.columns["status"]; ok {
				r.status("status")
			}
		}
	}
	for r := range table("species.csv") {
		if g := r.text("group"); g != "hardwood" && g != "softwood" {
			t.Errorf("%s: group %q", r.text("name"), g)
		}
	}
	for _, s := range All() {
		if !s.CT.Known() && !s.ST.Known() && !s.MOE.Known() && !s.SG.Known() && s.Name != "gray birch" {
			t.Errorf("nothing is known of %s", s.Name)
		}
		if s.CR.Known() && s.CT.Known() && s.CR.Value >= s.CT.Value {
			t.Errorf("%s moves more radially (%v) than tangentially (%v)", s.Name, s.CR.Value, s.CT.Value)
		}
		if s.SR.Known() && s.ST.Known() && s.SR.Value >= s.ST.Value {
			t.Errorf("%s shrinks more radially (%v) than tangentially (%v)", s.Name, s.SR.Value, s.ST.Value)
		}
	}
}

// Figures of the printed tables, read again from them by another hand: Table 13-5 as in a second
// copy, Table 5-3a at 12 % moisture content.
func TestPublishedFigures(t *testing.T) {
	tests := []struct {
		name   string
		cr, ct float64
	}{
		{"red alder", .00151, .00256},
		{"white ash", .00169, .00274},
		{"basswood", .00230, .00330},
		{"beech", .00190, .00431},
		{"yellow birch", .00256, .00338},
		{"butternut", .00116, .00223},
		{"black cherry", .00126, .00248},
		{"chestnut", .00116, .00234},
		{"American elm", .00144, .00338},
		{"pecan", .00169, .00315},
		{"red maple", .00137, .00289},
		{"sugar maple", .00165, .00353},
		{"red oak", .00158, .00369},
		{"white oak", .00180, .00365},
		{"sweetgum", .00183, .00365},
		{"sycamore", .00172, .00296},
		{"black walnut", .00190, .00274},
	}
	for _, test := range tests {
		s, ok := Find(test.name)
		if !ok {
			t.Errorf("%s is not found", test.name)
			continue
		}
		if s.CR.Value != test.cr || s.CT.Value != test.ct {
			t.Errorf("%s: %v, %v, want %v, %v", test.name, s.CR.Value, s.CT.Value, test.cr, test.ct)
		}
		if s.CR.Status != Seen || s.CT.Source != "Wood Handbook, Table 13-5" {
			t.Errorf("%s: %v from %q", test.name, s.CR.Status, s.CT.Source)
		}
	}
}

func BenchmarkReadShelf(b *testing.B) {
	for b.Loop() {
		rows("movement.csv")
		rows("shrinkage.csv")
		rows("strength.csv")
		rows("species.csv")
		rows("names.csv")
	}
}
