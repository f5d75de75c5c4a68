package dxf

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestMicroText(t *testing.T) {
	for _, c := range []struct {
		m    micro
		want string
	}{
		{0, "0.0"},
		{1, "0.000001"},
		{-1, "-0.000001"},
		{10, "0.00001"},
		{999_999, "0.999999"},
		{microOne, "1.0"},
		{-microOne, "-1.0"},
		{12_000_000, "12.0"},
		{12_500_000, "12.5"},
		{100_000_000, "100.0"},
		{105_010_000, "105.01"},
		{999_000_000, "999.0"},
		{1_000_000_000, "1000.0"},
		{9_999_123_456, "9999.123456"},
		{10_000_000_000, "10000.0"},
		{1_000_000_000_000, "1000000.0"},
		{math.MaxInt64, "9223372036854.775807"},
		{math.MinInt64, "-9223372036854.775808"},
	} {
		if got := string(c.m.appendTo(nil)); got != c.want {
			t.Errorf("%d: %s, want %s", int64(c.m), got, c.want)
		}
	}
}

func TestNanoText(t *testing.T) {
	for _, c := range []struct {
		n    nano
		want string
	}{
		{0, "0.0"},
		{1, "0.000000001"},
		{-10, "-0.00000001"},
		{nanoOne, "1.0"},
		{-nanoOne, "-1.0"},
		{414_213_562, "0.414213562"},
		{1_020_304_050, "1.02030405"},
		{1_000_000 * nanoOne, "1000000.0"},
		{math.MinInt64, "-9223372036.854775808"},
	} {
		if got := string(c.n.appendTo(nil)); got != c.want {
			t.Errorf("%d: %s, want %s", int64(c.n), got, c.want)
		}
	}
}

// Halves that a float64 holds exactly after the product go away from zero.
func TestRounding(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{
		{0.0000005, "0.000001"},
		{-0.0000005, "-0.000001"},
		{0.0000004999, "0.0"},
		{-0.0000004, "0.0"},
		{math.Copysign(0, -1), "0.0"},
		{0.0000015, "0.000002"},
		{0.5000005, "0.5"}, // the product is 500000.49999999994
		{5.99, "5.99"},
		{1.0 / 3, "0.333333"},
		{999999.9999996, "1000000.0"},
	} {
		if got := string(toMicro(c.v).appendTo(nil)); got != c.want {
			t.Errorf("%v: %s, want %s", c.v, got, c.want)
		}
	}
	if got := string(toNano(math.Tan(math.Pi / 8)).appendTo(nil)); got != "0.414213562" {
		t.Errorf("bulge of a quarter circle: %s", got)
	}
}

// canonical is the one form that a number of at most six decimals has.
var canonical = regexp.MustCompile(`^-?(0|[1-9][0-9]*)\.([0-9]|[0-9]{1,5}[1-9])$`)

// checkMicro holds a number's text to a slow reference and to the form.
func checkMicro(t interface{ Fatalf(string, ...any) }, m int64) {
	got := string(micro(m).appendTo([]byte("x")))[1:]
	sign, u := "", uint64(m)
	if m < 0 {
		sign, u = "-", -u
	}
	want := strings.TrimRight(fmt.Sprintf("%s%d.%06d", sign, u/1_000_000, u%1_000_000), "0")
	if strings.HasSuffix(want, ".") {
		want += "0"
	}
	if got != want {
		t.Fatalf("%d: %s, want %s", m, got, want)
	}
	if !canonical.MatchString(got) || got == "-0.0" {
		t.Fatalf("%d: %s is not in the one form", m, got)
	}
	got = string(nano(m).appendTo(nil))
	want = strings.TrimRight(fmt.Sprintf("%s%d.%09d", sign, u/1_000_000_000, u%1_000_000_000), "0")
	if strings.HasSuffix(want, ".") {
		want += "0"
	}
	if got != want {
		t.Fatalf("nano %d: %s, want %s", m, got, want)
	}
}

func TestNumberAgainstReference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkMicro(t, rapid.Int64().Draw(t, "n"))
		checkMicro(t, rapid.Int64Range(-1e12, 1e12).Draw(t, "coordinate"))
		checkMicro(t, rapid.Int64Range(-99, 99).Draw(t, "few")*rapid.SampledFrom([]int64{1, 10, 1e3, 1e6, 1e9}).Draw(t, "scale"))
	})
}

func FuzzNumber(f *testing.F) {
	for _, n := range []int64{0, 1, -1, 999_999, 1_000_000, 9_999_999_999, math.MaxInt64, math.MinInt64} {
		f.Add(n)
	}
	f.Fuzz(func(t *testing.T, n int64) { checkMicro(t, n) })
}

// What is read back is the nearest millionth: at most half of one away, and the
// error of a float64 of that size.
func TestNumberReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-MaxCoordinate, MaxCoordinate).Draw(t, "v")
		got, err := strconv.ParseFloat(string(toMicro(v).appendTo(nil)), 64)
		if err != nil {
			t.Fatal(err)
		}
		if limit := 0.5e-6 + 2*math.Abs(v)*0x1p-52; math.Abs(got-v) > limit {
			t.Fatalf("%v came back as %v, off by %v", v, got, got-v)
		}
	})
}

func TestHandleText(t *testing.T) {
	for h, want := range map[handle]string{
		0: "0", 1: "1", 0xA: "A", 0xF: "F", 0x10: "10", 0xFFFF: "FFFF", 0x1234567890ABCDEF: "1234567890ABCDEF",
		math.MaxUint64: "FFFFFFFFFFFFFFFF",
	} {
		if got := string(appendHandle(nil, h)); got != want {
			t.Errorf("%d: %s, want %s", h, got, want)
		}
	}
}
