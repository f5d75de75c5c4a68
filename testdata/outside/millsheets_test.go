package outside

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// milledSheet is a sheet as dxf_mill.py reads it, for mill.mjs.
type milledSheet struct {
	Name      string  `json:"name"`
	Thickness float64 `json:"thickness"`
	Length    float64 `json:"length"`
	Width     float64 `json:"width"`
	Cuts      []struct {
		Outside bool             `json:"outside"`
		Depth   float64          `json:"depth"`
		Profile bool             `json:"profile"`
		Shape   [][][][2]float64 `json:"shape"`
	} `json:"cuts"`
	Parts []struct {
		Name                string
		X, Y, Length, Width float64
	} `json:"parts"`
}

// fallen is what a sheet comes apart into.
type fallen struct {
	Name       string
	Drawn, Out []struct {
		Volume    float64
		Low, High [3]float64
	}
}

// millJobs are of a router: parts cut on both faces and held by tabs or a skin, and parts
// that nothing holds.
var millJobs = []struct{ name, text string }{
	{"tabs, both faces", `units: mm
stock:
  birch: {thickness: 12.2, sheet: 1500 x 1250}
  ply: {thickness: 5.9, sheet: 1500 x 1250}
cutter: {kind: router, diameter: 6}
router: {tabs: {}, onion-skin: 0.3}
sheets: {kerf: 16, trim: 20}
drawers:
  - {name: one, outside: 460 x 140 x 500, sides: birch, bottom: ply, pull: {shape: half-round}}
  - {name: two, outside: 300 x 90 x 400, sides: birch, bottom: ply, pull: {shape: hand-hold}}
`},
	{"rabbets all round, whose overcuts make a ring with an island", `units: mm
stock:
  birch: {thickness: 14.6, sheet: 1500 x 1250}
cutter: {kind: router, diameter: 6}
router: {tabs: {}, onion-skin: 0.4}
sheets: {trim: 20}
drawers:
  - {name: one, outside: 400 x 200 x 380, sides: birch, bottom: birch, joinery: {bottom-fit: flush}}
  - {name: two, outside: 300 x 120 x 380, sides: birch, bottom: birch, joinery: {bottom-fit: flush}}
`},
	{"nothing that is drawn, with numbers, in inches", `units: in
stock:
  half: {thickness: 0.472, sheet: 60 x 60}
  quarter: {thickness: 0.205, sheet: 60 x 60}
cutter: {kind: router, diameter: 1/8}
router: {engrave: yes}
dxf: {elevation: yes}
sheets: {kerf: 1/2, trim: 3/4}
drawers:
  - {name: one, outside: 16 x 4 x 18, sides: half, bottom: quarter, joint: rabbet}
`},
}

// inBox reports whether a piece lies in the place of a part, and all of it.
func inBox(low, high [3]float64, x, y, length, width float64) bool {
	const off = 0.05 // mm
	return math.Abs(low[0]-x) < off && math.Abs(low[1]-y) < off && math.Abs(high[0]-x-length) < off && math.Abs(high[1]-y-width) < off
}

// TestMilledSheets: manifold-3d mills whole sheets from both sides, by what shapely cuts of
// their drawings; the parts that fall out when what holds them is cut through are those of
// the list, each in its place and of the volume that its own drawings give it. As they are
// drawn, none falls out that tabs or a skin should hold.
func TestMilledSheets(t *testing.T) {
	t.Parallel()
	for _, j := range millJobs {
		t.Run(j.name, func(t *testing.T) {
			t.Parallel()
			dir, r := build(t, j.text)
			files := map[string]cutFile{}
			for _, f := range shapely(t, "--solids", dir) {
				files[f.File] = f
			}
			own := map[string]float64{}
			var input strings.Builder
			encode := json.NewEncoder(&input)
			for _, p := range r.Parts {
				panel, err := milled(p, r, files, trial{})
				if err != nil {
					t.Fatal(err)
				}
				if err := encode.Encode(panel); err != nil {
					t.Fatal(err)
				}
			}
			for i, v := range lines[struct{ Volume float64 }](t, input.String(), "node", "booleans.mjs") {
				own[r.Parts[i].Name] = v.Volume
			}
			list := lines[milledSheet](t, "", python, "dxf_mill.py", dir)
			if len(list) == 0 {
				t.Fatal("no sheets")
			}
			fell := millSheets(t, list)
			for i, s := range list {
				if err := s.compare(fell[i], own, strings.Contains(j.text, "tabs")); err != nil {
					t.Errorf("%s: %v", s.Name, err)
				}
				// And that this can fail: with a pocket less.
				for k := range s.Cuts {
					if s.Cuts[k].Profile || len(s.Cuts[k].Shape) == 0 || s.Cuts[k].Depth > s.Thickness {
						continue
					}
					spoiled := s
					spoiled.Cuts = slices.Delete(slices.Clone(s.Cuts), k, k+1)
					if i == 0 {
						if err := spoiled.compare(millSheets(t, []milledSheet{spoiled})[0], own, false); err == nil {
							t.Errorf("%s: a cut that is missing is not seen", s.Name)
						}
					}
					break
				}
			}
		})
	}
}

func millSheets(t *testing.T, list []milledSheet) []fallen {
	t.Helper()
	var input strings.Builder
	encode := json.NewEncoder(&input)
	for _, s := range list {
		if err := encode.Encode(s); err != nil {
			t.Fatal(err)
		}
	}
	out := lines[fallen](t, input.String(), "node", "mill.mjs")
	if len(out) != len(list) {
		t.Fatalf("%d sheets, %d milled", len(list), len(out))
	}
	return out
}

// compare holds what fell out against the list.
func (s milledSheet) compare(f fallen, own map[string]float64, held bool) error {
	for _, p := range s.Parts {
		found := false
		for _, q := range f.Out {
			if !inBox(q.Low, q.High, p.X, p.Y, p.Length, p.Width) {
				continue
			}
			found = true
			if want := own[p.Name]; math.Abs(q.Volume-want) > chordVolume+1e-5*want {
				return fmt.Errorf("%s at %g, %g has %.2f mm3, by its own drawings %.2f", p.Name, p.X,
					p.Y, q.Volume, want)
			}
		}
		if !found {
			return fmt.Errorf("%s does not fall out at %g, %g", p.Name, p.X, p.Y)
		}
		for _, q := range f.Drawn {
			if held && inBox(q.Low, q.High, p.X, p.Y, p.Length, p.Width) {
				return fmt.Errorf("nothing holds %s at %g, %g", p.Name, p.X, p.Y)
			}
		}
	}
	return nil
}
