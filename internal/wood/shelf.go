package wood

// Reading the tables in data/. A table is read once, when something on it is first asked
// for. A fault in one is a fault of the program, which the tests find, so it panics.

import (
	"embed"
	"encoding/csv"
	"fmt"
	"iter"
	"math"
	"math/big"
	"strconv"
	"strings"
)

//go:embed data/*.csv
var data embed.FS

// Status says how far a figure can be trusted.
type Status uint8

const (
	Unknown  Status = iota // no figure
	Memory                 // not read anywhere: check it
	Reported               // read on a page that cites the source
	Derived                // computed from figures that were seen
	Seen                   // read in a copy of the source
)

var statuses = [...]string{"unknown", "memory", "reported", "derived", "seen"}

func (s Status) String() string { return statuses[s] }

// Verified reports whether the figure was read somewhere, or computed from what was. Of
// one that is known but not verified a finding says that it is from memory and wants checking.
func (s Status) Verified() bool { return s > Memory }

// Figure is one published number. The zero value is a number that is not on the shelf.
type Figure struct {
	Value  float64
	Status Status
	Source string // "Wood Handbook, Table 13-5"
}

// Known reports whether there is a number at all.
func (f Figure) Known() bool { return f.Status != Unknown }

// row is one line of a table.
type row struct {
	table   string
	columns map[string]int
	cells   []string
}

// table reads a file in data/: comments with its source, a line that names the columns,
// then the rows.
func table(name string) iter.Seq[row] {
	return func(yield func(row) bool) {
		f, err := data.Open("data/" + name)
		if err != nil {
			panic(err)
		}
		defer f.Close()
		r := csv.NewReader(f)
		r.Comment = '#'
		records, err := r.ReadAll()
		if err != nil {
			panic(fmt.Errorf("%s: %w", name, err))
		}
		columns := make(map[string]int)
		for i, column := range records[0] {
			columns[column] = i
		}
		for _, cells := range records[1:] {
			if !yield(row{name, columns, cells}) {
				return
			}
		}
	}
}

// text is the cell in the named column.
func (r row) text(column string) string {
	i, ok := r.columns[column]
	if !ok {
		panic(fmt.Errorf("%s has no column %s", r.table, column))
	}
	return r.cells[i]
}

// number is the cell as a number, zero if it is blank.
func (r row) number(column string) float64 {
	s := r.text(column)
	if s == "" {
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(fmt.Errorf("%s, row %s, column %s: %w", r.table, r.cells[0], column, err))
	}
	return v
}

func (r row) status(column string) Status {
	for s := Memory; s <= Seen; s++ {
		if statuses[s] == r.text(column) {
			return s
		}
	}
	panic(fmt.Errorf("%s, row %s: %q is no status", r.table, r.cells[0], r.text(column)))
}

// inches is a cell such as 0.219 or 1 1/8 as a length, zero if it is blank.
func (r row) inches(column string) Length {
	var sum Length
	for part := range strings.FieldsSeq(r.text(column)) {
		v, ok := new(big.Rat).SetString(part)
		if !ok {
			panic(fmt.Errorf("%s, row %s, column %s: %q is no size", r.table, r.cells[0], column, part))
		}
		nanometres, _ := v.Mul(v, big.NewRat(int64(Inch), 1)).Float64()
		sum += Length(math.Round(nanometres))
	}
	return sum
}

// figure is the cell with the status of its row, unknown if the cell is blank.
func (r row) figure(column, source string) Figure {
	if r.text(column) == "" {
		return Figure{}
	}
	return Figure{Value: r.number(column), Status: r.status("status"), Source: source}
}
