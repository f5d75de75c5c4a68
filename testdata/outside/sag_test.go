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
)

// TestSagAsScipy: bottoms of known materials, and of figures of the shop's own, sag in
// the report of the built command as numpy's series and scipy's differences have it,
// from the text of a job on. The script has tables of its own.
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
	stocks, drawers := "  side: {thickness: 12, sheet: 4000 x 2000, grain: length}\n", ""
	for i := range 40 {
		b := bottom{Name: fmt.Sprintf("d%d", i), Length: between(250, 900), Width: between(250, 600), Thickness: between(4, 10), KG: between(2, 30)}
		if i == 0 { // the plate whose sag was once computed without its shear
			b.Length, b.Width, b.Thickness, b.KG = 500, 500, 6.5, 20
		}
		entry := ""
		if i%5 < len(materials) {
			b.Material = materials[i%5]
			entry = "material: " + b.Material
		} else {
			along, across, poisson := between(2000, 14000), between(1000, 6000), between(0, 4)/10
			shear := math.Floor(math.Sqrt(along*across) * (0.05 + 0.4*random.Float64()))
			b.Along, b.Across, b.Shear, b.Poisson = &along, &across, &shear, &poisson
			entry = fmt.Sprintf("stiffness: %g, stiffness-across: %g N/mm2, shear: %g, poisson: %g", along, across, shear, poisson)
		}
		stocks += fmt.Sprintf("  b%d: {thickness: %g, sheet: 4000 x 2000, grain: length, %s}\n", i, b.Thickness, entry)
		drawers += fmt.Sprintf("  - {name: d%d, outside: %g x 150 x %g, sides: side, bottom: b%d, load: %g kg}\n", i, b.Length+24, b.Width+24, i, b.KG)
		all = append(all, b)
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
	if len(answers) != len(all) || len(got.Drawers) != len(all) {
		t.Fatalf("%d answers, %d drawers for %d bottoms", len(answers), len(got.Drawers), len(all))
	}
	for i, want := range answers {
		d := got.Drawers[i]
		if math.Abs(d.Sag.Simple-want.Simple) > 0.001*want.Simple || math.Abs(d.Sag.Clamped-want.Clamped) > 0.003*want.Clamped {
			t.Errorf("%+v sags %g and %g, by scipy %g and %g", all[i], d.Sag.Simple, d.Sag.Clamped, want.Simple, want.Clamped)
		}
	}
	if first := got.Drawers[0].Sag.Simple; math.Abs(first-1.607) > 0.001 {
		t.Errorf("500 x 500 of birch plywood, 6.5 mm, under 20 kg: %g", first)
	}
}
