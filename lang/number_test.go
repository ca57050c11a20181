package lang

import "testing"

// Each form in which makers write numbers, with what it is worth and how it is laid out.
func TestQuantities(t *testing.T) {
	for _, c := range []struct{ text, value, unit, laid string }{
		{"27", "27", "", "27"},
		{"27.5", "55/2", "", "27.5"},
		{".5", "1/2", "", ".5"},
		{"007", "7", "", "007"},
		{"3/4", "3/4", "", "3/4"},
		{"27 1/2", "55/2", "", "27 1/2"},
		{"27   1/2", "55/2", "", "27 1/2"},
		{"27\t1/2", "55/2", "", "27 1/2"},
		{`27 1/2"`, "55/2", "in", `27 1/2"`},
		{`3/4"`, "3/4", "in", `3/4"`},
		{`27.5"`, "55/2", "in", `27.5"`},
		{`2' 6 1/2"`, "61/2", "in", `2' 6 1/2"`},
		{`2'6"`, "30", "in", `2' 6"`},
		{`2' .5"`, "49/2", "in", `2' .5"`},
		{`2.5' 1/2"`, "61/2", "in", `2.5' 1/2"`},
		{"2'", "2", "ft", "2'"},
		{"1/2'", "1/2", "ft", "1/2'"},
		{"2ft", "2", "ft", "2ft"},
		{"18mm", "18", "mm", "18mm"},
		{"18 mm", "18", "mm", "18mm"},
		{"1.8cm", "9/5", "cm", "1.8cm"},
		{"0.6m", "3/5", "m", "0.6m"},
		{"27 1/2 in", "55/2", "in", "27 1/2in"},
		{"45%", "45", "%", "45%"},
		{"66F", "66", "F", "66F"},
		{"19C", "19", "C", "19C"},
		{"110deg", "110", "deg", "110deg"},
		{"110 deg", "110", "deg", "110deg"},
		{"1:7", "1/7", "", "1:7"},
		{"12lb", "12", "lb", "12lb"},
		{"5 kg", "5", "kg", "5kg"},
		{"40psf", "40", "psf", "40psf"},
		{"25lb/ft", "25", "lb/ft", "25lb/ft"},
		{"25 lb/ft", "25", "lb/ft", "25lb/ft"},
		{"42lb/ft3", "42", "lb/ft3", "42lb/ft3"},
		{"700kg/m3", "700", "kg/m3", "700kg/m3"},
		{"20kg/m2", "20", "kg/m2", "20kg/m2"},
		{"37kg/m", "37", "kg/m", "37kg/m"},
		{"20 psi", "20", "psi", "20psi"},
		{"21inHg", "21", "inHg", "21inHg"},
		{"4Nm", "4", "Nm", "4Nm"},
		{"35inlb", "35", "inlb", "35inlb"},
		{"90N", "90", "N", "90N"},
		{"2kPa", "2", "kPa", "2kPa"},
		{"1MPa", "1", "MPa", "1MPa"},
		{"30s", "30", "s", "30s"},
		{"10 min", "10", "min", "10min"},
		{"2h", "2", "h", "2h"},
		{"3d", "3", "d", "3d"},
		{"999999999999999999", "999999999999999999", "", "999999999999999999"},
	} {
		st := sound(t, "size "+c.text+" # behind").Body[0]
		if len(st.Values) != 1 || st.Values[0].Op != Number {
			t.Errorf("%s is read as %s", c.text, outlineHead(st))
			continue
		}
		q := st.Values[0].Qty
		if q.Value.String() != c.value || q.Unit.String() != c.unit {
			t.Errorf("%s is read as %v %s", c.text, q.Value, q.Unit)
		}
		if got := st.Values[0].Span.Text(); got != c.text {
			t.Errorf("%s covers %q", c.text, got)
		}
		laid := Format(sound(t, "size "+c.text))
		if laid != "size "+c.laid+"\n" {
			t.Errorf("%s is laid out as %q", c.text, laid)
		}
	}
}
