package dxfread

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// same says whether a number is read as strconv reads it, to the bit.
func same(t interface {
	Helper()
	Fatalf(string, ...any)
}, text string) {
	t.Helper()
	got, ok := real([]byte(text))
	want, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if !ok || err != nil || math.Float64bits(got) != math.Float64bits(want) {
		t.Fatalf("%q: %v, %t; strconv: %v, %v", text, got, ok, want, err)
	}
}

func TestReal(t *testing.T) {
	for _, text := range []string{
		"0", "-0", "0.0", "-0.0", "+1", "1.", ".5", "-.5", "123.456789", "  7.25", "7.25 \t", "1e3", "-1.5E-7", "1E+2",
		"9007199254740991", "9007199254740992", "9007199254740993", "0.9007199254740993", // about 2^53, up to which a float64 holds each whole number
		"9999999999999999999", "18446744073709551616", "0.0000000000000000001", "0.00000000000000000001", // 19 and 20 digits
		"00000000000000000000000000001.5", "1.7976931348623157e308", "4.9e-324", "1e-999",
		"2.2250738585072011e-308", strings.Repeat("1234567890", 20), "0." + strings.Repeat("3", 400),
	} {
		same(t, text)
	}
	for _, text := range []string{
		"", " ", ".", "-", "-.", "+", "--1", "1-", "1.2.3", "1 2", "1,5", "e5", "1e", "1e+", "nan", "NaN", "inf", "-Inf",
		"Infinity", "1e309", "-1e309", "0x10", "0x1p-2", "1_000", "1d3", "١", "1\x00",
	} {
		if v, ok := real([]byte(text)); ok {
			t.Errorf("%q: %v", text, v)
		}
	}
}

// Decimals of any length, and any float64 however it is written, are read as
// strconv reads them.
func TestRealAgainstStrconv(t *testing.T) {
	decimal := rapid.StringMatching(`[ ]{0,2}-?([0-9]{1,7}\.[0-9]{0,9}|[0-9]{0,12}\.[0-9]{1,12}|[0-9]{1,21}|[0-9]{1,4}(\.[0-9]{1,4})?[eE][+-]?[0-9]{1,2})`)
	rapid.Check(t, func(t *rapid.T) {
		for range 50 {
			same(t, decimal.Draw(t, "decimal"))
		}
		v := rapid.Float64().Filter(finite).Draw(t, "float64")
		for _, format := range []byte("efg") {
			same(t, strconv.FormatFloat(v, format, -1, 64))
			same(t, strconv.FormatFloat(v, format, 6, 64))
		}
	})
}

func TestWhole(t *testing.T) {
	for text, want := range map[string]int{"0": 0, "7": 7, "-1": -1, "+4": 4, "0070": 70, "-2147483648": math.MinInt32} {
		if got, ok := whole([]byte(text)); !ok || got != want {
			t.Errorf("%q: %d, %t, want %d", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "-", "+", "+-1", "1.0", "1e3", " 1", "x", "9999999999999999999"} {
		if got, ok := whole([]byte(text)); ok {
			t.Errorf("%q: %d", text, got)
		}
	}
}

// Quarter turns are exact, and all other angles are those of package math.
func TestSincos(t *testing.T) {
	for degrees, want := range map[float64][2]float64{
		0: {0, 1}, 90: {1, 0}, 180: {0, -1}, 270: {-1, 0}, -90: {-1, 0}, -270: {1, 0}, 360: {0, 1}, 540: {0, -1},
	} {
		sin, cos := sincos(degrees)
		if sin != want[0] || cos != want[1] {
			t.Errorf("%v°: %v, %v, want %v", degrees, sin, cos, want)
		}
	}
	for degrees := -719.5; degrees < 720; degrees++ {
		sin, cos := sincos(degrees)
		wantSin, wantCos := math.Sincos(degrees * math.Pi / 180)
		if math.Abs(sin-wantSin) > 1e-14 || math.Abs(cos-wantCos) > 1e-14 {
			t.Errorf("%v°: %v, %v, want %v, %v", degrees, sin, cos, wantSin, wantCos)
		}
	}
}
