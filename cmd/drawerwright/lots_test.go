package main

import (
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
// router, and says what the lots save and which sheet is which.
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
	_, said, _ = call(t, lotsJob, "sheets", "-")
	if !strings.Contains(said, "1, no. 2  ") {
		t.Error(said)
	}
}
