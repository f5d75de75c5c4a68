package readback

import (
	"fmt"
	"maps"
	"testing"
)

// TestFormLimits: limits are read where one number is for both ways, where there is one for each, in a line of its own,
// and in inches with a fraction; the line of the next box, and what stands below another column, are not taken.
func TestFormLimits(t *testing.T) {
	line := func(y float64, at map[float64]string) (list []pdfText) {
		for x := 0.0; x <= 90; x += 10 {
			if text, there := at[x]; there {
				list = append(list, pdfText{x: x, y: y, text: text})
			}
		}
		return list
	}
	p := &packetReader{s: &paperScan{lines: [][]pdfText{
		line(700, map[float64]string{0: "tray", 10: "420.12", 30: "280", 50: "6 3/32", 70: "504.78", 90: "1.00"}),
		line(691, map[float64]string{0: "1 of 2", 10: "±0.80", 30: "-0.25", 50: "±0.02"}),
		line(682, map[float64]string{30: "+0.50"}),
		line(670, map[float64]string{0: "tray", 10: "420.12", 30: "280", 50: "6 3/32", 70: "504.78", 90: "1.00"}),
		line(661, map[float64]string{0: "2 of 2", 70: "±9.00"}),
	}}}
	want := map[string]string{ // in the middle of what they can be before they are rounded down
		`fit "tray: outside width": limit from`: "419.31500 0.030", `fit "tray: outside width": limit to`: "420.92500 0.030",
		`fit "tray: outside depth": limit from`: "279.74500 0.030", `fit "tray: outside depth": limit to`: "280.50500 0.030",
		`fit "tray: outside height": limit from`: "6.06875 0.030", `fit "tray: outside height": limit to`: "6.11875 0.030",
		`fit "till: outside width": limit from`: "20.99850 0.003", `fit "till: outside width": limit to`: "21.06150 0.003",
		`fit "till: outside depth": limit from`: "17.98750 0.003", `fit "till: outside depth": limit to`: "18.01550 0.003",
	}
	found := make(map[string]string)
	p.reading = &reading{unit: "mm", take: func(f Fact) {
		found[f.Key.String()] = f.Value + fmt.Sprintf(" %.3f", f.Step)
	}}
	p.formLimits("tray")
	p.unit = "in"
	p.missed("till", "outside width", "21.030 (21 1/32)", map[string]string{"±": "0.031"})
	p.missed("till", "outside depth", "18", map[string]string{"-": "0.012", "+": "0.015"})
	if !maps.Equal(found, want) {
		t.Errorf("read %v, should be %v", found, want)
	}
}
