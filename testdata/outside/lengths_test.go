package outside

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestPageRoundsAsListsDo: the page's script prints a size as the program's lists do. Among
// the sizes are halves of the last digit, which toFixed takes down: 9.075 is 9.07499... as a
// binary number.
func TestPageRoundsAsListsDo(t *testing.T) {
	sizes := []float64{9.075, 0.005, -0.005, 12.345, 555.005, -0.004, 0, 447.675, 11.9888, 1.005}
	r := rand.New(rand.NewPCG(9, 7))
	for range 2000 {
		sizes = append(sizes, float64(r.IntN(400_000))*0.005)
	}
	data, err := json.Marshal(sizes)
	if err != nil {
		t.Fatal(err)
	}
	out := run(t, "node", "-e", textOf(t, "../../preview/viewer/script/lengths.js")+
		";const s="+string(data)+";console.log(JSON.stringify(['mm','in'].map((u)=>s.map((v)=>lengthText(v,u)))))")
	var printed [2][]string
	if err := json.Unmarshal([]byte(out), &printed); err != nil {
		t.Fatal(err)
	}
	for i, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
		for n, size := range sizes {
			want := geom.LengthOf(size).Fixed(u)
			if want = strings.TrimSuffix(strings.TrimRight(want, "0"), "."); want == "" {
				want = "0"
			}
			if got := printed[i][n]; got != want {
				t.Errorf("%v mm is %s on the page and %s %s in lists", size, got, want, u)
			}
		}
	}
}

// TestPageReadsTapes: sizes that a tape takes are the nearest 32nd of an inch in the picture, in
// lowest terms, and hundredths of a millimeter. 535.79 mm is 21.094 in, 21 3/32 = 21.09375.
func TestPageReadsTapes(t *testing.T) {
	sizes := []float64{535.79, 107.7, 508, 3, 25.4, 12.7, 0.1}
	r := rand.New(rand.NewPCG(9, 8))
	for range 500 {
		sizes = append(sizes, float64(r.IntN(400_000))*0.005)
	}
	data, err := json.Marshal(sizes)
	if err != nil {
		t.Fatal(err)
	}
	out := run(t, "node", "-e", textOf(t, "../../preview/viewer/script/lengths.js")+
		";const s="+string(data)+";console.log(JSON.stringify(s.map((v)=>tapeText(v,'in'))),tapeText(12.345,'mm'))")
	var printed []string
	list, metric, _ := strings.Cut(out, "] ")
	if err := json.Unmarshal([]byte(list+"]"), &printed); err != nil {
		t.Fatal(err)
	}
	if printed[0] != "21 3/32" || printed[2] != "20" || strings.TrimSpace(metric) != "12.35" {
		t.Errorf("%v %s", printed[:7], metric)
	}
	for n, size := range sizes {
		read, err := geom.ParseLength(printed[n], geom.Inch)
		if err != nil {
			t.Errorf("%v mm is %q", size, printed[n])
			continue
		}
		// In lowest terms it prints alike again, and half a 32nd is the most that is lost.
		const most = geom.InchMM/64 + 1e-6
		if off := read.MM() - size; read.Number(geom.Inch) != printed[n] || off > most || off < -most {
			t.Errorf("%v mm is %s: off by %v", size, printed[n], off)
		}
	}
}
