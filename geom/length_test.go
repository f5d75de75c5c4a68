package geom

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseLength(t *testing.T) {
	const in = int64(inch)
	for text, want := range map[string]int64{
		// Every form of the job file, then what else people write.
		"12.21 mm": 12_210_000, "12 mm": 12_000_000, "1/2 in": in / 2, `17 5/8"`: 17*in + in*5/8, "17-5/8 in": 17*in + in*5/8,
		`1' 5 5/8"`: 17*in + in*5/8, `1'5-5/8"`: 17*in + in*5/8, "1'": 12 * in, "2 ft": 24 * in, "1 1/2 feet": 18 * in,
		`17-5/8"`: 17*in + in*5/8, "17 - 5/8 in": 17*in + in*5/8, "5/8 inch": in * 5 / 8, ".5 in": in / 2, "3. mm": 3_000_000, "12.7mm": 12_700_000,
		"1.2 cm": 12_000_000, "0.5 m": 500_000_000, "-3/4 in": -in * 3 / 4, "- 2 mm": -2_000_000, "-1 1/2 in": -in * 3 / 2,
		"17⅝″": 17*in + in*5/8, "½ in": in / 2, "5 mm.": 5_000_000, "25 um": 25_000, "0": 0, "12": 12_000_000,
		"0.0000005 mm": 1, "0.0000004 mm": 0, "-0.0000005 mm": -1, // half away from zero, at one nanometer
		"09/16 in": in * 9 / 16, "1/08 in": in / 8, "010/4 in": in * 5 / 2, "007 3/016 in": 7*in + in*3/16, "010 mm": 10_000_000,
		"1/64 in": 396_875, "100 m": int64(MaxLength),
	} {
		if got, err := ParseLength(text, Millimeter); err != nil || got != Length(want) {
			t.Errorf("%s: %d nm, %v; want %d", text, got, err, want)
		}
	}
	if got, _ := ParseLength("17 5/8", Inch); got != Length(17*in+in*5/8) {
		t.Errorf("a bare number in an inch job: %d", got)
	}
	for text, want := range map[string]error{
		"": ErrLengthSyntax, "mm": ErrLengthSyntax, "NaN": ErrLengthSyntax, "Inf mm": ErrLengthSyntax, "1e308": ErrLengthUnit, "0x2": ErrLengthUnit,
		"12 furlongs": ErrLengthUnit, "1/0 in": ErrLengthSyntax, "1/00": ErrLengthSyntax, "5 6": ErrLengthSyntax, "1/2/3": ErrLengthSyntax,
		"1.2.3":     ErrLengthSyntax,
		"14 9/8 in": ErrLengthSyntax, "3 8/8": ErrLengthSyntax, "12,21": ErrLengthSyntax, "1,000 mm": ErrLengthSyntax, "--1": ErrLengthSyntax, "1' 5": ErrLengthSyntax,
		"1' -5/8 mm": ErrLengthSyntax, "5 5.5 in": ErrLengthSyntax, "100.1 m": ErrLengthRange, "99999999999999999999 m": ErrLengthRange,
		`1' 2' 3"`: ErrLengthSyntax, "12 mm mm": ErrLengthUnit, "1_000": ErrLengthUnit, "５": ErrLengthSyntax,
	} {
		if got, err := ParseLength(text, Millimeter); !errors.Is(err, want) {
			t.Errorf("%q: %d, %v; want %v", text, got, err, want)
		}
	}
}

func TestLengthText(t *testing.T) {
	for _, c := range []struct {
		nm   int64
		unit Unit
		want string
	}{
		{12_210_000, Millimeter, "12.21 mm"}, {460_000_000, Millimeter, "460 mm"}, {12_203_333, Millimeter, "12.2 mm"}, {12_205_000, Millimeter, "12.21 mm"},
		{0, Millimeter, "0 mm"}, {-4_973, Millimeter, "0 mm"}, {-20_000, Millimeter, "-0.02 mm"},
		{447_675_000, Inch, "17 5/8 in"}, {12_700_000, Inch, "1/2 in"}, {25_400_000, Inch, "1 in"}, {396_875, Inch, "1/64 in"}, {-19_050_000, Inch, "-3/4 in"},
		{6_000_000, Inch, "0.236 in"}, {11_980_000, Inch, "0.472 in"}, {0, Inch, "0 in"}, {12_702_540, Inch, "1/2 in"}, {12_720_000, Inch, "0.501 in"},
	} {
		if got := Length(c.nm).Text(c.unit); got != c.want {
			t.Errorf("%d nm is %q, want %q", c.nm, got, c.want)
		}
	}
	for nm, want := range map[Length]string{5_925_000: "5.93", 6_000_000: "6.00", 0: "0.00", -8_800_000: "-8.80", -4_000: "0.00", 450: "0.00"} {
		if got := nm.Fixed(Millimeter); got != want {
			t.Errorf("%d nm on a caliper is %s, want %s", nm, got, want)
		}
	}
	for _, u := range []Unit{Millimeter, Inch} { // as far as int64 goes, without end or panic
		for _, l := range []Length{math.MinInt64, math.MaxInt64} {
			if l.Text(u) == "" || l.Decimal(u) == "" || l.Fixed(u) == "" {
				t.Errorf("%d nm prints nothing", l)
			}
		}
	}
	if got := Length(5_990_000).Fixed(Inch); got != "0.236" {
		t.Errorf("5.99 mm on an inch caliper is %s", got)
	}
	for _, c := range []struct{ nm, down, up Length }{
		{22_453_333, 22_450_000, 22_460_000}, {22_450_000, 22_450_000, 22_450_000}, {22_449_999, 22_450_000, 22_450_000},
		{22_450_001, 22_450_000, 22_450_000}, {-22_453_333, -22_460_000, -22_450_000}, {0, 0, 0}, {-5_000, -10_000, 0},
	} {
		if down, up := c.nm.RoundDown(Millimeter), c.nm.RoundUp(Millimeter); down != c.down || up != c.up {
			t.Errorf("%d nm is rounded to %d and %d, want %d and %d", c.nm, down, up, c.down, c.up)
		}
	}
	if got := Length(6_202_500).RoundUp(Inch); got != 6_223_000 { // 0.24419 in
		t.Errorf("up to thousandths of an inch: %d", got)
	}
	if got := sixtyFourth.Decimal(Inch); got != "0.0156" {
		t.Errorf("1/64 in for programs is %s", got)
	}
	if got := Length(-12_345_678).Decimal(Millimeter); got != "-12.35" {
		t.Errorf("12.345678 mm for programs is %s", got)
	}
}

// TestLengthRoundTrip: (1) what is on a printed grid comes back exactly from its
// text, in either unit; (2) anything else comes back within half a step and what a
// computation may move it by.
func TestLengthRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Length(rapid.Int64Range(-90_000, 90_000).Draw(t, "n"))
		for _, c := range []struct {
			step Length
			unit Unit
		}{{hundredthMM, Millimeter}, {sixtyFourth, Inch}, {thousandth, Inch}} {
			want := n * c.step
			text := want.Text(c.unit)
			if got, err := ParseLength(text, Millimeter); err != nil || got != want {
				t.Fatalf("%d nm prints %q, which reads %d (%v)", want, text, got, err)
			}
		}
		// Half a step short of the bounds, beyond which rounding would lead.
		most := int64(MaxLength - thousandth)
		any := Length(rapid.Int64Range(-most, most).Draw(t, "nm"))
		for unit, step := range map[Unit]Length{Millimeter: hundredthMM, Inch: thousandth} {
			got, err := ParseLength(any.Text(unit), unit)
			if d := got - any; err != nil || 2*(d-Computed) > step || 2*(d+Computed) < -step {
				t.Fatalf("%d nm prints %q, off by %d (%v)", any, any.Text(unit), d, err)
			}
		}
	})
}

// TestOneSizePrintsAlike: a size on a grid of halves, or a 64th, prints alike whatever the
// last bits of a computation did to it, and never with a negative zero.
func TestOneSizePrintsAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]Length{hundredthMM / 2, thousandth / 2, sixtyFourth}).Draw(t, "step")
		size := Length(rapid.Int64Range(-2_000_000, 2_000_000).Draw(t, "n")) * step
		moved := size + Length(rapid.Int64Range(-int64(Computed), int64(Computed)).Draw(t, "moved by"))
		for _, u := range []Unit{Millimeter, Inch} {
			if u == Inch && step == hundredthMM/2 || u == Millimeter && step != hundredthMM/2 {
				continue // halves of another grid
			}
			for name, print := range map[string]func(Length) string{"Number": func(l Length) string { return l.Number(u) }, "Fixed": func(l Length) string { return l.Fixed(u) }, "Measured": func(l Length) string { return l.Measured(u) }} {
				if a, b := print(size), print(moved); a != b {
					t.Fatalf("%s: %d nm prints %s, %d nm %s", name, size, a, moved, b)
				}
				if zero := print(size); strings.HasPrefix(zero, "-") && !strings.ContainsAny(zero, "123456789") {
					t.Fatalf("%s of %d nm is %s", name, size, zero)
				}
			}
		}
	})
}

// TestMeasured: 17 5/8 = 17.625; 30/64 = 0.46875 is the nearest 64th of 0.472, and 0.016 is within
// half a thousandth of 1/64 = 0.015625.
func TestMeasured(t *testing.T) {
	for _, c := range []struct {
		nm   Length
		unit Unit
		want string
	}{
		{447_751_200, Inch, "17.628 (17 5/8)"}, {447_675_000, Inch, "17 5/8"}, {11_988_800, Inch, "0.472 (15/32)"},
		{447_598_800, Inch, "17.622 (17 5/8)"}, {406_400, Inch, "1/64"}, {25_400, Inch, "0.001"}, {0, Inch, "0"}, {9_075_000, Millimeter, "9.08"},
	} {
		if got := c.nm.Measured(c.unit); got != c.want {
			t.Errorf("%d nm is measured as %s, want %s", c.nm, got, c.want)
		}
	}
}

// TestSpan: the lesser first, and one number where both print alike.
func TestSpan(t *testing.T) {
	for _, c := range []struct {
		a, b Length
		unit Unit
		want string
	}{
		{800_000, 700_000, Millimeter, "0.70 to 0.80"}, {-4_000, 4_000, Millimeter, "0.00"}, {6_248_400, 6_250_000, Inch, "0.246"}, {-50_000, 50_000, Millimeter, "-0.05 to 0.05"},
	} {
		if got := Span(c.a, c.b, c.unit); got != c.want {
			t.Errorf("from %d to %d nm is %s, want %s", c.a, c.b, got, c.want)
		}
	}
}

func TestLengthOf(t *testing.T) {
	for mm, want := range map[float64]Length{12.21: 12_210_000, math.Inf(1): MaxLength, math.Inf(-1): -MaxLength, 1e308: MaxLength, -0.0000005: -1} {
		if got := LengthOf(mm); got != want {
			t.Errorf("%g mm is %d nm, want %d", mm, got, want)
		}
	}
	if LengthOf(math.NaN()) != 0 {
		t.Error("NaN has a length")
	}
}

func FuzzParseLength(f *testing.F) {
	for _, seed := range []string{"12.21", ".5001", `17 5/8"`, "17-5/8 in", `1' 5 5/8"`, "½ in", "-3/4 in", "1e308", "NaN", "1/0", "''", "9/9/9", "0x1p4", "１２"} {
		f.Add(seed, false)
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, s string, inches bool) {
		unit := Millimeter
		if inches {
			unit = Inch
		}
		l, err := ParseLength(s, unit)
		if err != nil {
			if !errors.Is(err, ErrLengthSyntax) && !errors.Is(err, ErrLengthUnit) && !errors.Is(err, ErrLengthRange) {
				t.Errorf("%q: an error of no kind: %v", s, err)
			}
			return
		}
		if l > MaxLength || l < -MaxLength {
			t.Errorf("%q is %d nm, out of range", s, l)
		}
		if l > MaxLength-thousandth || l < thousandth-MaxLength {
			return // its printed form may round to beyond the range
		}
		if again, err := ParseLength(l.Text(unit), Millimeter); err != nil || again.Text(unit) != l.Text(unit) {
			t.Errorf("%q prints %q, which reads as %q (%v)", s, l.Text(unit), again.Text(unit), err)
		}
	})
}

// TestWords: a text is broken anywhere but within a mixed number.
func TestWords(t *testing.T) {
	for text, want := range map[string][]string{
		"21 to 21 3/64": {"21", "to", "21 3/64"}, "17.153 (17 5/32), cut": {"17.153", "(17 5/32),", "cut"},
		"of 1/200 a  2x 1/2 -1 1/2": {"of", "1/200", "a", "2x", "1/2", "-1 1/2"}, "N/A 12 a/b 3 /4": {"N/A", "12", "a/b", "3", "/4"}, "": {},
	} {
		if got := Words(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
