package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// lotsJob are boxes from sheets of two deliveries: of each, more than half.
const lotsJob = `units: mm
job: Two deliveries
stock:
  birch:
    thickness: [12.05, 12.06, 12.42, 12.40, 12.08, 12.07]
    readings-per-sheet: 2
    sheet: 1000 x 1000
    grain: length
    price: 40
  hard: {thickness: [5.9, 5.95], sheet: 1000 x 1000, price: 20}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, count: 5, outside: 400 x 140 x 450, sides: birch, bottom: hard}
  - {name: deep, count: 2, outside: 420 x 180 x 450, sides: birch, bottom: hard}
`

// TestOutputsOfLotsAgree: every output has the same numbers of boxes of several lots, cut with a saw and with a
// router, and says what the lots save and which sheet is which. An offcut, which has no readings, stays on the shelf;
// what is left comes there under the name that the stock has in the file.
func TestOutputsOfLotsAgree(t *testing.T) {
	whole(t, lotsJob)
	routed := strings.Replace(lotsJob, "{kind: saw, width: 6.35}", "{kind: router, diameter: 6, reach: 22}", 1)
	outputs, ok := composed(t, routed)
	if !ok {
		t.Fatal("the boxes cannot be cut with a router")
	}
	agreed(t, routed, outputs, false)
	_, said, _ := call(t, lotsJob, "check", "-")
	if !strings.Contains(said, "birch is cut in 2 lots at 2 settings, where each sheet by itself would take 3; ") {
		t.Error(said)
	}
	shelf := filepath.Join(t.TempDir(), "shelf.csv")
	const offcut = "stock,name,length,width,batch\nbirch,old,900 mm,500 mm,\n"
	if err := os.WriteFile(shelf, []byte(offcut), 0o644); err != nil {
		t.Fatal(err)
	}
	code, _, errs := call(t, lotsJob, "sheets", "-", "--shelf", shelf, "--put-back")
	kept, err := os.ReadFile(shelf)
	if err != nil || code != exitDone || strings.Contains(errs, "does not have") ||
		!strings.Contains(string(kept), "birch,old,900 mm,500 mm,") ||
		!strings.Contains(string(kept), "birch,Two deliveries birch B 1-1,990") {
		t.Errorf("exit %d: %s\n%s", code, errs, kept)
	}
	_, said, _ = call(t, lotsJob, "parts", "-")
	for _, want := range []string{"birch A, 12.07 mm thick (mean of the readings of your sheets 1 and 3)",
		"birch B, 12.41 mm thick (mean of the readings of your sheet 2)"} {
		if !strings.Contains(said, want) {
			t.Errorf("%s is not said: %s", want, said)
		}
	}
	_, said, _ = call(t, lotsJob, "sheets", "-")
	if !strings.Contains(said, "1, your sheet 2  ") {
		t.Error(said)
	}
	_, said, _ = call(t, lotsJob, "sheets", "-", "--all")
	a, b, _ := strings.Cut(said, "cuts of birch B")
	if !strings.Contains(a, " strip 3") || !strings.Contains(b, " strip 2") || strings.Contains(b, " strip 1") {
		t.Errorf("what comes off a sheet has another number than yours on it: %s", said) // A has 1 and 3, B has 2
	}
}

// TestSortedAlready: where each sheet is measured and its own readings differ too much, no lots are proposed, for its
// sheets are in lots; of how many boxes come out right is said in words, before and after.
func TestSortedAlready(t *testing.T) {
	const job = "units: mm\nstock:\n" +
		"  birch: {thickness: [12.0, 12.25, 12.5, 12.0, 12.25, 12.5], %ssheet: 1000 x 1000}\n" +
		"  hard: {thickness: [5.9, 5.95], sheet: 1000 x 1000, price: 20}\ncutter: {kind: saw, width: 6.35}\n" +
		"drawers:\n  - {name: wide, count: 2, outside: 400 x 140 x 450, sides: birch, bottom: hard}\n"
	for key, want := range map[string][2]string{
		"": {"with `readings-per-sheet`", "are in lots already"},
		"readings-per-sheet: 3, ": {"are in lots already: take other sheets, which measure within 0.36 mm",
			"`readings-per-sheet`"},
	} {
		_, said, errs := call(t, fmt.Sprintf(job, key), "check", "-")
		if !strings.Contains(said+errs, want[0]) || strings.Contains(said+errs, want[1]) {
			t.Errorf("%s%s", said, errs)
		}
	}
}

// TestSeedStore, by hand. Sheets 1 and 3 are (12.05 + 12.06 + 12.08 + 12.07) / 4 = 12.065 thick, sheet 2 is 12.355;
// each setting is half of that. Ten sides of 450 x 140 and two of 450 x 180 go on two sheets with their fronts and
// backs, the last box on the third.
func TestSeedStore(t *testing.T) {
	r := sampled(t, "seed-store.yaml")
	boxes := make(map[string]int)
	for _, d := range r.Drawers {
		boxes[d.Name] = d.Count
	}
	if want := map[string]int{"packets A": 5, "bulbs A": 1, "bulbs B": 1}; !maps.Equal(boxes, want) {
		t.Errorf("boxes %v, want %v", boxes, want)
	}
	is(t, "lot A", partOf(t, r, "packets-a-side").Thickness, 12.065)
	is(t, "lot B", partOf(t, r, "bulbs-b-side").Thickness, 12.355)
	if len(r.Setups) != 2 {
		t.Errorf("%d setups", len(r.Setups))
	}
	var sheets []string
	for _, k := range r.Sheets {
		for _, m := range k.Measured {
			sheets = append(sheets, fmt.Sprint(k.Stock, " ", m.Number))
		}
	}
	if want := []string{"birch A 1", "birch A 3", "birch B 2"}; !slices.Equal(sheets, want) {
		t.Errorf("sheets %v, want %v", sheets, want)
	}
}
