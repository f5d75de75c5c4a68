package record_test

import (
	"bytes"
	"math"
	"path/filepath"
	"reflect"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestKeptIsWhole: of every sample, in either unit, a report that is packed is unpacked as it was, to the last bit of
// its numbers, and read as a stream it is what it is read whole.
func TestKeptIsWhole(t *testing.T) {
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) < 10 {
		t.Fatal(samples, err)
	}
	for _, name := range samples {
		r := reportOf(t, name)
		r.Parts[0].Length, r.Parts[0].Width = record.Length(math.Copysign(0, -1)), record.Length(math.Pi)
		r.Parts[0].Thickness, r.Fit[0].Nominal = 1e300, record.Length(math.Inf(-1))
		if again := record.Keep(r).Whole(); !reflect.DeepEqual(again, r) || !math.Signbit(again.Parts[0].Length.MM()) {
			t.Errorf("%s is not what was packed", name)
		}
		text, err := record.JSON(reportOf(t, name))
		if err != nil {
			t.Fatal(err)
		}
		want, err := record.Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if read, err := record.ReadKept(bytes.NewReader(text)); err != nil || !reflect.DeepEqual(read.Whole(), want) {
			t.Errorf("%s: read as a stream it is another, %v", name, err)
		}
	}
}

// TestReadInAnyOrder: a report of other hands is read as [record.Read] reads it, and refused with its words.
func TestReadInAnyOrder(t *testing.T) {
	for _, text := range []string{
		`{"parts": [{"length": 1}], "units": "in"}`, `{"units": "mm", "parts": [{"length": 1}], "units": "in"}`,
		`{"units": "in", "Parts": [{"length": 1}], "other": 3}`, `{"units": "mm", "parts": null, "fit": []}`,
		`{"units": "mm", "parts": {}}`, `{"units": "mm", "parts": [{"length": "x"}]}`, `{"units": "mm"`, ``, `[]`, `{} {}`,
		`{"units": "mm", "parts": [{"length": 1}}`, `null`,
	} {
		want, wrong := record.Read([]byte(text))
		read, err := record.ReadKept(bytes.NewReader([]byte(text)))
		if (err == nil) != (wrong == nil) || err != nil && err.Error() != wrong.Error() {
			t.Errorf("%s: %v, read whole %v", text, err, wrong)
		}
		if err == nil && !reflect.DeepEqual(read.Whole(), want) {
			t.Errorf("%s: %+v, read whole %+v", text, read.Whole(), want)
		}
	}
}
