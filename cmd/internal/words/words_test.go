package words

import (
	"fmt"
	"testing"

	"drawerwright/geom"
)

// The pound is 0.45359237 kg and the inch 25.4 mm by definition; 1 N/mm2 is 1e6 N/m2, and a
// pound-force on a square inch 0.45359237 x 9.80665 / 0.0254^2 = 6894.757 N/m2.
func TestWords(t *testing.T) {
	both := func(f func(u geom.Unit) string) [2]string { return [2]string{f(geom.Millimeter), f(geom.Inch)} }
	number := func(v float64, unit string) string { return geom.LengthOf(v).Decimal(geom.Millimeter) + " " + unit }
	for name, c := range map[string][2][2]string{
		"weight":      {both(func(u geom.Unit) string { return Weight(15.4, u) }), {"15 kg", "34 lb"}}, // 15.4 / 0.4536 = 33.95
		"light":       {both(func(u geom.Unit) string { return Weight(3.66, u) }), {"3.7 kg", "8.1 lb"}},
		"given":       {both(func(u geom.Unit) string { return Given(12.5, u) }), {"12.5 kg", "27.6 lb"}},
		"rating":      {both(func(u geom.Unit) string { return Rating(45, u) }), {"45 kg", "99 lb"}}, // 99.2
		"of pounds":   {both(func(u geom.Unit) string { return Rating(45.359237, u) }), {"45.4 kg", "100 lb"}},
		"compared":    {both(func(u geom.Unit) string { return Kilograms(15).In(u) }), {"15.0 kg", "33.1 lb"}},
		"glue":        {both(func(u geom.Unit) string { return number(Little(0.0093, u)) }), {"10 g", "0.5 oz"}}, // 9.3 / 28.35 = 0.328, up
		"area":        {both(func(u geom.Unit) string { return number(Area(92_903.04, u)) }), {"0.09 m2", "1 sq ft"}},
		"small area":  {both(func(u geom.Unit) string { return SmallArea(6.4516, u) }), {"6.5 mm2", "0.0100 sq in"}},
		"run":         {both(func(u geom.Unit) string { return number(Run(3048, u)) }), {"3.05 m", "10 ft"}},
		"stress":      {both(func(u geom.Unit) string { return Stresses(0.8, 0.7, u) }), {"0.7 to 0.8", "102 to 116"}},
		"one stress":  {both(func(u geom.Unit) string { return Stresses(0.81, 0.8, u) }), {"0.8", "116 to 117"}},
		"stress unit": {both(StressUnit), {"N/mm2", "psi"}},
		"one end":     {both(func(u geom.Unit) string { return To("a", "a") + To("a", "b") }), {"aa to b", "aa to b"}},
		// 0.236 in is 5.9944 mm, 15/64 in 5.953125, which is 0.0016 in less; 17 in 431.8 mm.
		"length":     {both(func(u geom.Unit) string { return Length(5.9944, u) }), {"5.99 mm", "0.236 in"}},
		"a 64th":     {both(func(u geom.Unit) string { return Length(5.953125, u) }), {"5.95 mm", "0.234 in (15/64)"}},
		"whole inch": {both(func(u geom.Unit) string { return Length(431.8, u) }), {"431.80 mm", "17.000 in"}},
		"place":      {both(func(u geom.Unit) string { return Place(5.9944, u) }), {"5.99", "0.236 (15/64)"}},
		"easy place": {both(func(u geom.Unit) string { return Place(63.5, u) }), {"63.50", "2 1/2"}},
		"inch place": {both(func(u geom.Unit) string { return Place(431.8, u) }), {"431.80", "17"}},
		"3/16":       {both(func(u geom.Unit) string { return Length(4.7625, u) }), {"4.76 mm", "0.188 in (3/16)"}},
		"metric bit": {both(func(u geom.Unit) string { s, m := Drill(6, u); return fmt.Sprint(s, m) }), {"6 mmfalse", "6 mm (0.236 in)true"}},
		"inch bit":   {both(func(u geom.Unit) string { s, m := Drill(3.96875, u); return fmt.Sprint(s, m) }), {"3.97 mmfalse", "5/32 infalse"}},
		"any bit":    {both(func(u geom.Unit) string { s, m := Drill(6.2, u); return fmt.Sprint(s, m) }), {"6.2 mmfalse", "0.244 infalse"}},
		"router bit": {both(func(u geom.Unit) string { return Bit(3.175, u) + ", " + Bit(3, u) }), {"3.18 mm, 3.00 mm", "1/8 in, 0.118 in"}},
		"sold in mm": {both(func(u geom.Unit) string { return Sold(500, u) }), {"500 mm", "500 mm"}},
		"sold in in": {both(func(u geom.Unit) string { return Sold(508, u) }), {"508 mm", "20 in"}},
		"cut to fit": {both(func(u geom.Unit) string { return Sold(457.5, u) }), {"457.5 mm", "18.012 in"}},
		"in a line":  {both(func(u geom.Unit) string { return PlaceIn(5.9944, u) }), {"5.99 mm", "0.236 in (15/64)"}},
		// 0.5 mm is 0.01969 in, 5 mm 0.19685, 0.3 mm 0.01181; 1 mm is 2.5 64ths.
		"within":   {both(func(u geom.Unit) string { return Within(0.5, 5, u) }), {"0.50 to 5.00", "0.020 to 0.196"}},
		"off by":   {both(func(u geom.Unit) string { return OffBy(1, u) }), {"1.00", "0.039"}},
		"off by 0": {both(func(u geom.Unit) string { return OffBy(0.3, u) }), {"0.30", "0.011"}},
		"offcut":   {both(func(u geom.Unit) string { return SizeAtMost(435.685, u) }), {"435.69", "17 1/8"}},
		"size":     {both(func(u geom.Unit) string { return Size(1525, u) }), {"1525", "60 1/32"}}, // 60.039 in
		"span":     {both(func(u geom.Unit) string { return Span(6.2, 6.1, u) }), {"6.10 to 6.20", "0.240 to 0.244"}},
	} {
		if c[0] != c[1] {
			t.Errorf("%s is %q, want %q", name, c[0], c[1])
		}
	}
	for n, want := range []string{"no pieces", "1 piece", "2 pieces"} {
		if got := Count(n, "piece", "pieces"); got != want {
			t.Errorf("%d: %s", n, got)
		}
	}
	if got := Some([]string{"a", "b", "c", "d", "e", "f"}); got != "a, b, c, d and 2 more" {
		t.Error(got)
	}
}

// TestTape: inches are 32nds, offcuts none longer than they are; millimeters stay as they are.
func TestTape(t *testing.T) {
	for _, c := range []struct {
		in         float64
		near, most string
	}{{17.153, "17 5/32", "17 1/8"}, {96, "96", "96"}, {47.606, "47 19/32", "47 19/32"}, {0.01, "0", "0"}, {2.75, "2 3/4", "2 3/4"}} {
		mm := c.in * geom.InchMM
		if near, least := Tape(mm, geom.Inch), TapeAtMost(mm, geom.Inch); near != c.near || least != c.most {
			t.Errorf("%g in: %s and %s, want %s and %s", c.in, near, least, c.near, c.most)
		}
	}
	if got := Tape(435.685, geom.Millimeter); got != "435.69" {
		t.Error(got)
	}
}
