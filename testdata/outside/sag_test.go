package outside

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/geom/plate"
)

// TestSagAsScipy: bottoms of known materials, from the text of a job on, and of any figures
// sag as numpy's series and scipy's differences have it. The script has tables of its own.
func TestSagAsScipy(t *testing.T) {
	type bottom struct {
		Name      string   `json:"name"`
		Length    float64  `json:"length"`
		Width     float64  `json:"width"`
		Thickness float64  `json:"thickness"`
		KG        float64  `json:"kg"`
		Material  string   `json:"material,omitempty"`
		Along     *float64 `json:"along,omitempty"`
		Across    *float64 `json:"across,omitempty"`
		Shear     *float64 `json:"shear,omitempty"`
		Poisson   *float64 `json:"poisson,omitempty"`
	}
	random := rand.New(rand.NewPCG(18, 3))
	between := func(low, high float64) float64 { return math.Round((low+random.Float64()*(high-low))*10) / 10 }
	materials := []string{"birch-plywood", "hardboard", "mdf", "cherry"}
	var all []bottom
	sags := make(map[string][2]float64) // simply supported and clamped, by the bottom's name
	stocks, drawers := "  side: {thickness: 12, sheet: 4000 x 2000, grain: length}\n", ""
	for i := range 40 {
		b := bottom{Name: fmt.Sprintf("d%d", i), Length: between(250, 900), Width: between(250, 600), Thickness: between(4, 10), KG: between(2, 30)}
		if i == 0 { // the plate whose sag was once computed without its shear
			b.Length, b.Width, b.Thickness, b.KG = 500, 500, 6.5, 20
		}
		all = append(all, b)
		if i%5 < len(materials) {
			all[i].Material = materials[i%5]
		} else {
			along, across, poisson := between(2000, 14000), between(1000, 6000), between(0, 4)/10
			shear := math.Floor(math.Sqrt(along*across) * (0.05 + 0.4*random.Float64()))
			all[i].Along, all[i].Across, all[i].Shear, all[i].Poisson = &along, &across, &shear, &poisson
			sag, err := plate.Of(plate.Bottom{Length: b.Length, Width: b.Width, Thickness: b.Thickness, Along: along, Across: across, Shear: shear, Poisson: poisson}, b.KG)
			if err != nil {
				t.Fatal(err)
			}
			sags[b.Name] = [2]float64{sag.Simple, sag.Clamped}
			continue
		}
		stocks += fmt.Sprintf("  b%d: {thickness: %g, sheet: 4000 x 2000, grain: length, material: %s}\n", i, b.Thickness, all[i].Material)
		drawers += fmt.Sprintf("  - {name: d%d, outside: %g x 150 x %g, sides: side, bottom: b%d, load: %g kg}\n", i, b.Length+24, b.Width+24, i, b.KG)
	}
	file := filepath.Join(t.TempDir(), "job.yaml")
	if err := os.WriteFile(file, []byte("units: mm\nstock:\n"+stocks+"cutter: {kind: router, diameter: 3}\ndrawers:\n"+drawers), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(command, "parts", file, "--json").Output()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Drawers []struct {
			Name string
			Sag  struct{ Simple, Clamped float64 }
		}
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	var input strings.Builder
	for _, b := range all {
		line, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	answers := lines[struct {
		Name            string
		Simple, Clamped float64
	}](t, input.String(), python, "sag.py")
	for _, d := range got.Drawers {
		sags[d.Name] = [2]float64{d.Sag.Simple, d.Sag.Clamped}
	}
	if len(answers) != len(all) || len(sags) != len(all) {
		t.Fatalf("%d answers, %d sags for %d bottoms", len(answers), len(sags), len(all))
	}
	for i, want := range answers {
		got := sags[want.Name]
		if math.Abs(got[0]-want.Simple) > 0.001*want.Simple || math.Abs(got[1]-want.Clamped) > 0.003*want.Clamped {
			t.Errorf("%+v sags %v, by scipy %g and %g", all[i], got, want.Simple, want.Clamped)
		}
	}
	if first := sags["d0"][0]; math.Abs(first-1.633) > 0.001 { // 1.607 of bending, 0.026 of shear through the thickness
		t.Errorf("500 x 500 of birch plywood, 6.5 mm, under 20 kg: %g", first)
	}
}
