package outside

import (
	"encoding/json"
	"math"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"
)

// solidFacts is what  reports of a file.
type solidFacts struct {
	File, Status string
	Volume       float64
	Triangles    int
	Open         int
	Low, High    [3]float64
}

// TestSTL: every STL of every sample is closed for admesh and by exact
// coordinates; every part is a manifold for manifold-3d, as designed with the volume of
// its blank less its pockets, in closed form, to 1e-6; TestMilledSolids has that of milled ones.
func TestSTL(t *testing.T) {
	t.Parallel()
	for _, sample := range sampleFiles(t) {
		t.Run(filepath.Base(sample), func(t *testing.T) {
			out, r := build(t, textOf(t, sample))
			want := map[string]float64{}
			boxes, chords := map[string]float64{}, map[string]float64{}
			all := glob(t, out, ".stl")
			facts := lines[solidFacts](t, strings.Join(all, "\n"), "node", "stl.mjs")
			for _, d := range r.Drawers {
				for _, p := range r.Parts {
					if slices.Contains(d.Parts, p.Name) {
						v := closedForm(p) * math.Pow(r.mm(), 3)
						if r.solidAsCut(p) || !p.square() { // no closed form: what boxes are compared with
							i := slices.IndexFunc(facts,
								func(f solidFacts) bool { return f.File == filepath.Join(out, p.Files.STL) })
							v = facts[i].Volume
						}
						want[filepath.Join(out, p.Files.STL)] = v
						if r.solidAsCut(p) { // without tabs and onion skin
							v = partsMilled(t, out)[p.Name].Trimmed
						}
						pieces := float64(len(p.Placements))
						folder := filepath.Dir(filepath.Join(out, p.Files.STL))
						if r.solidAsCut(p) {
							more := pieces * partsMilled(t, out)[p.Name].chords()
							chords[filepath.Join(folder, "exploded.stl")] += more
						}
						boxes[filepath.Join(folder, "assembled.stl")] += pieces * v
						boxes[filepath.Join(folder, "exploded.stl")] += pieces * v
					}
				}
			}
			if len(all) != len(want)+len(boxes) {
				t.Errorf("%d STL files, the report names %d parts and %d boxes", len(all), len(want), len(boxes))
			}
			for _, f := range facts {
				if f.Open != 0 {
					t.Errorf("%s: %d open edges", f.File, f.Open)
				}
				admesh(t, f.File, f.Triangles)
				if v, ok := want[f.File]; ok {
					if f.Status != "NoError" || math.Abs(f.Volume-v) > 1e-6*v {
						t.Errorf("%s: %s, volume %.3f, closed form %.3f (%.2g of it)", f.File, f.Status,
							f.Volume, v, (f.Volume-v)/v)
					}
				} else if v, ok := boxes[f.File]; !ok || strings.HasSuffix(f.File, "exploded.stl") &&
					(f.Status != "NoError" || math.Abs(f.Volume-v) > onBoxGrid*v+chords[f.File]) {
					// In the assembled box parts touch, and welding would join them;
					// exploded, on the coarser grid of the box, each is itself.
					t.Errorf("%s: %s, volume %.3f, its parts %.3f", f.File, f.Status, f.Volume, v)
				}
			}
		})
	}
}

// square reports whether a part is a rectangle with rectangular pockets.
func (p part) square() bool {
	bent := func(l [][]float64) bool {
		return len(l) != 4 || slices.ContainsFunc(l, func(v []float64) bool { return len(v) > 2 })
	}
	return !bent(p.Outline) && !slices.ContainsFunc(p.Operations, func(o operation) bool { return bent(o.Outline) })
}

// admesh reads the "Original" column: what the file was before any repair.
func admesh(t *testing.T, file string, triangles int) {
	t.Helper()
	out, err := exec.Command("admesh", file).CombinedOutput()
	if err != nil {
		t.Fatalf("admesh: %v\n%s", err, out)
	}
	number := func(pattern string) int {
		m := regexp.MustCompile(pattern).FindSubmatch(out)
		if m == nil {
			t.Fatalf("admesh says nothing of %s:\n%s", pattern, out)
		}
		n, _ := strconv.Atoi(string(m[1]))
		return n
	}
	if n := number(`Number of facets\s*:\s*(\d+)`); n != triangles {
		t.Errorf("%s: admesh reads %d facets of %d", file, n, triangles)
	}
	for _, what := range []string{`Facets with 1 disconnected edge\s*:\s*(\d+)`, `Facets with 2 disconnected edges\s*:\s*(\d+)`,
		`Facets with 3 disconnected edges\s*:\s*(\d+)`, `Total disconnected facets\s*:\s*(\d+)`, `Degenerate facets\s*:\s*(\d+)`,
		`Edges fixed\s*:\s*(\d+)`, `Facets removed\s*:\s*(\d+)`, `Facets added\s*:\s*(\d+)`, `Facets reversed\s*:\s*(\d+)`,
		`Backward.? edges\s*:\s*(\d+)`, `Normals fixed\s*:\s*(\d+)`} {
		if n := number(what); n != 0 {
			t.Errorf("%s: admesh: %s is %d", file, strings.Split(what, `\s`)[0], n)
		}
	}
}

// closedForm is the blank less its pockets, in the report's unit: between all
// coordinates at which a rectangular pocket begins or ends, what the deepest
// pocket from each face leaves.
func closedForm(p part) float64 {
	type box struct{ x0, y0, x1, y1, depth float64 }
	var in, out []box
	xs, ys := []float64{0, p.Length}, []float64{0, p.Width}
	for _, op := range p.Operations {
		b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1), op.Depth}
		for _, v := range op.Outline {
			b.x0, b.x1 = math.Min(b.x0, v[0]), math.Max(b.x1, v[0])
			b.y0, b.y1 = math.Min(b.y0, v[1]), math.Max(b.y1, v[1])
		}
		xs, ys = append(xs, b.x0, b.x1), append(ys, b.y0, b.y1)
		if op.Face == "outside" {
			out = append(out, b)
		} else {
			in = append(in, b)
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	deepest := func(list []box, x, y float64) float64 {
		d := 0.0
		for _, b := range list {
			if x > b.x0 && x < b.x1 && y > b.y0 && y < b.y1 {
				d = math.Max(d, b.depth)
			}
		}
		return d
	}
	volume := 0.0
	for i := 1; i < len(xs); i++ {
		for j := 1; j < len(ys); j++ {
			x, y := (xs[i]+xs[i-1])/2, (ys[j]+ys[j-1])/2
			left := p.Thickness - deepest(in, x, y) - deepest(out, x, y)
			volume += (xs[i] - xs[i-1]) * (ys[j] - ys[j-1]) * math.Max(0, left)
		}
	}
	return volume
}

// jsonPanel is a panel as panels.mjs takes it.
type jsonPanel struct {
	Thickness float64      `json:"thickness"`
	Outline   [][2]float64 `json:"outline"`
	Pockets   []jsonPocket `json:"pockets,omitempty"`
}

type jsonPocket struct {
	Outside bool           `json:"outside"`
	Depth   float64        `json:"depth"`
	Rings   [][][2]float64 `json:"rings"`
}

func toJSON(p geom.Panel) jsonPanel {
	ring := func(l geom.Loop) (r [][2]float64) {
		for _, v := range l.Flatten(solid.DefaultChord) {
			r = append(r, [2]float64{v.X, v.Y})
		}
		return r
	}
	out := jsonPanel{Thickness: p.Thickness, Outline: ring(p.Outline)}
	for _, k := range p.Pockets {
		out.Pockets = append(out.Pockets, jsonPocket{k.Face == geom.Outside, k.Depth, [][][2]float64{ring(k.Outline)}})
	}
	return out
}

// TestBooleans: random panels with up to 30 overlapping pockets on both faces
// are always closed, and their volume is that of manifold-3d's booleans to 1e-5
// of the blank.
func TestBooleans(t *testing.T) {
	const panels = 400
	var input strings.Builder
	var ours, blanks []float64
	for seed := range panels {
		p := geomtest.AnyPanel().Example(seed)
		m, err := solid.Build(p, solid.Options{})
		if err == nil {
			err = geomtest.CheckMesh(m)
		}
		if err != nil {
			t.Fatalf("panel %d: %v", seed, err)
		}
		ours, blanks = append(ours, m.Volume()), append(blanks, p.Length()*p.Width()*p.Thickness)
		line, err := json.Marshal(toJSON(p))
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	theirs := lines[struct{ Volume float64 }](t, input.String(), "node", "booleans.mjs")
	if len(theirs) != panels {
		t.Fatalf("%d volumes for %d panels", len(theirs), panels)
	}
	for i, v := range theirs {
		if math.Abs(ours[i]-v.Volume) > 1e-5*blanks[i] {
			t.Errorf("panel %d: volume %.3f, booleans %.3f, blank %.3f", i, ours[i], v.Volume, blanks[i])
		}
	}
}
