package outside

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom/geomtest"
)

// milledPart is what dxf_solids.py makes of a part's drawings, in mm3.
type milledPart struct {
	Part            string
	Volume, Trimmed float64
	Round           float64 // mm2 of round walls
	text            json.RawMessage
}

var milledParts onces[map[string]milledPart]

// partsMilled are the parts of a folder as shapely mills them, by name.
func partsMilled(t *testing.T, dir string) map[string]milledPart {
	t.Helper()
	parts, err := milledParts.get(dir, func() (map[string]milledPart, error) {
		list, err := decode[json.RawMessage]("", python, "dxf_solids.py", dir)
		if err != nil {
			return nil, err
		}
		parts := map[string]milledPart{}
		for _, text := range list {
			p := milledPart{text: text}
			if err := json.Unmarshal(text, &p); err != nil {
				return nil, err
			}
			parts[p.Part] = p
		}
		return parts, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return parts
}

// solidAsCut reports whether the solids of a part are those that its bits leave.
func (r report) solidAsCut(p part) bool { return r.drawer(p.Drawer).Preview == "milled" }

// milledChord is how far chords of milled solids may be from their arcs, in mm: two thirds of
// that beside round walls is missing. sameMilled is the part of a volume that is rounding, onBoxGrid
// that on the coarser grid of a box.
const milledChord, sameMilled, onBoxGrid = 0.01, 1e-6, 1e-5

// chords is the volume that chords may make of the part's round walls, in mm3.
func (m milledPart) chords() float64 { return 2. / 3 * milledChord * m.Round }

// milledDiffer holds the solids of a folder against what shapely and manifold-3d make of its
// drawings, and reports how far they are apart at most.
func milledDiffer(t *testing.T, dir string, r report) (worst float64, err error) {
	t.Helper()
	parts := partsMilled(t, dir)
	solids, want := map[string]solidFacts{}, map[string]milledPart{}
	for _, f := range lines[solidFacts](t, strings.Join(glob(t, dir, ".stl"), "\n"), "node", "stl.mjs") {
		solids[f.File] = f
	}
	var panels strings.Builder
	var names []string
	apart := func(what string, got, wanted float64, m milledPart, rounding float64) {
		off, allowed := math.Abs(got-wanted), m.chords()+rounding*wanted
		worst = max(worst, off/wanted)
		if !(off <= allowed) && err == nil {
			err = fmt.Errorf("%s: %.3f mm3, by its drawings %.3f; chords make %.3f of it", what, got, wanted, allowed)
		}
	}
	for _, p := range r.Parts {
		m := parts[p.Name]
		s := solids[filepath.Join(dir, p.Files.STL)]
		if s.Open != 0 || s.Status != "NoError" {
			return 0, fmt.Errorf("%s: %s, %d open edges", s.File, s.Status, s.Open)
		}
		apart(p.Name, s.Volume, m.Volume, m, sameMilled)
		want[p.Name], names = m, append(names, p.Name)
		panels.Write(append(m.text, '\n'))
	}
	for i, v := range lines[struct{ Volume float64 }](t, panels.String(), "node", "booleans.mjs") {
		s := solids[filepath.Join(dir, r.Parts[i].Files.STL)]
		apart(names[i]+" by booleans", s.Volume, v.Volume, parts[names[i]], sameMilled)
	}
	for _, f := range lines[glbFacts](t, strings.Join(drawerFiles(t, dir), "\n"), "node", "glb.mjs") {
		for _, n := range f.Nodes {
			if n.Open != 0 || n.Status != "NoError" {
				return 0, fmt.Errorf("%s: %s is %s with %d open edges", f.File, n.Name, n.Status, n.Open)
			}
			apart(f.File+": "+n.Name, n.Volume, want[n.Part].Trimmed, want[n.Part], onBoxGrid)
		}
	}
	return worst, err
}

// drawerFiles are the previews of single drawers.
func drawerFiles(t *testing.T, dir string) (files []string) {
	t.Helper()
	for _, f := range glob(t, dir, ".glb") {
		if filepath.Base(f) == "drawer.glb" {
			files = append(files, f)
		}
	}
	return files
}

// standingBox is the preview of a drawer, and how far its proof moves each piece in it.
type standingBox struct {
	File   string       `json:"file"`
	Moves  [][3]float64 `json:"moves"`
	Pieces int          `json:"-"`
}

// pushedTogether are the previews of the drawers that go together by their proof.
func pushedTogether(t *testing.T, dir string, r report) (boxes []standingBox) {
	t.Helper()
	for i, d := range prove(t, dir).Proof {
		if d.Verdict != goes && d.Verdict != goesBut && d.Verdict != goesSome {
			continue
		}
		box := standingBox{Pieces: len(d.Assembled)}
		for _, p := range r.Parts {
			if !slices.Contains(r.Drawers[i].Parts, p.Name) {
				continue
			}
			box.File = filepath.Join(dir, filepath.Dir(p.Files.STL), "drawer.glb")
			for _, s := range p.Placements {
				if k := len(box.Moves); k < len(d.Assembled) && d.Assembled[k].Part == p.Name {
					var by [3]float64
					for c := range by {
						by[c] = (d.Assembled[k].Placement.Origin[c] - s.Origin[c]) * r.mm()
					}
					box.Moves = append(box.Moves, by)
				}
			}
		}
		boxes = append(boxes, box)
	}
	return boxes
}

// inCommon is the greatest volume that two pieces of any of the boxes have in common, in mm3.
func inCommon(t *testing.T, boxes []standingBox) (most overlap, err error) {
	t.Helper()
	var input strings.Builder
	for _, b := range boxes {
		text, err := json.Marshal(b)
		if err != nil {
			return most, err
		}
		input.Write(append(text, '\n'))
	}
	for i, f := range lines[struct {
		Pieces   int
		Overlaps []overlap
	}](t, input.String(), "node", "together.mjs") {
		if f.Pieces != boxes[i].Pieces || f.Pieces != len(boxes[i].Moves) {
			return most, fmt.Errorf("%s has %d pieces, its proof %d, of which %d are in their order", boxes[i].File,
				f.Pieces, boxes[i].Pieces, len(boxes[i].Moves))
		}
		for _, o := range f.Overlaps {
			if o.Volume > most.Volume {
				most = o
			}
		}
	}
	if most.Volume > maxInGoing {
		err = fmt.Errorf("a box goes together by its proof; %s and %s have %.3f mm3 in common", most.A, most.B,
			most.Volume)
	}
	return most, err
}

// oftenMilled are the extra jobs that are milled each time: they have what the samples do not.
var oftenMilled = []string{"relief-side", "slots-line", "tabs", "skin", "corners-saw", "engraved"}

// asMilled is a job whose previews are milled, whatever cuts it.
func asMilled(job string) string { return strings.TrimRight(job, "\n") + "\npreview: milled\n" }

// TestMilledSolids: the solid of each part of every sample, and of jobs that have what the
// samples do not, is what the bits leave by its drawings: closed, with the volume of its
// regions by their depths (shapely) and of booleans on them (manifold-3d); and the boxes that
// are put together from such solids have nothing in common where the proof says that they go.
func TestMilledSolids(t *testing.T) {
	t.Parallel()
	jobs := []extraJob{}
	for _, f := range sampleFiles(t) {
		jobs = append(jobs, extraJob{name: filepath.Base(f), text: textOf(t, f)})
	}
	for _, j := range extraJobs {
		if geomtest.All() || slices.Contains(oftenMilled, j.name) {
			jobs = append(jobs, j)
		}
	}
	for _, j := range jobs {
		t.Run(j.name, func(t *testing.T) {
			t.Parallel()
			dir, r := build(t, asMilled(j.text))
			worst, err := milledDiffer(t, dir, r)
			if err != nil {
				t.Error(err)
			}
			most, err := inCommon(t, pushedTogether(t, dir, r))
			if err != nil {
				t.Error(err)
			}
			t.Logf("volumes at most %.2g apart; %.2g mm3 in common at most", worst, most.Volume)
		})
	}
}

// TestMilledSolidsFinds: a pocket 0.1 mm deeper and a relief that is left out, in the drawing
// alone, are seen; and so is a side that stands 0.01 mm further in.
func TestMilledSolidsFinds(t *testing.T) {
	t.Parallel()
	dir, r := build(t, asMilled(extraJobs[0].text))
	if _, err := milledDiffer(t, dir, r); err != nil {
		t.Fatal(err)
	}
	boxes := pushedTogether(t, dir, r)
	if most, err := inCommon(t, boxes); err != nil {
		t.Fatal(most, err)
	}
	boxes[0].Moves[0][0] += 0.01
	if most, err := inCommon(t, boxes); err == nil {
		t.Errorf("a side further in: %.3f mm3 in common", most.Volume)
	}
	row := r.Layers[slices.IndexFunc(r.Layers, func(l legendRow) bool {
		return l.Operation == "groove" && strings.Contains(l.File, "side")
	})]
	deeper := strings.Replace(row.Layer, "9-00MM", "9-10MM", 1)
	relief := regexp.MustCompile(`(?m)^42\n1\.0$`)
	for what, plant := range map[string]func(string) string{
		"a pocket 0.1 mm deeper": func(s string) string { return strings.ReplaceAll(s, row.Layer, deeper) },
		"no relief":              func(s string) string { return relief.ReplaceAllString(s, "42\n0.0") },
	} {
		spoilt := t.TempDir()
		if err := os.CopyFS(spoilt, os.DirFS(dir)); err != nil {
			t.Fatal(err)
		}
		planted := 0
		for _, name := range []string{row.File, "report.json"} { // the legend has the layer's name, too
			text := textOf(t, filepath.Join(spoilt, name))
			changed := plant(text)
			if err := os.WriteFile(filepath.Join(spoilt, name), []byte(changed), 0o644); err != nil {
				t.Fatal(err)
			}
			if changed != text {
				planted++
			}
		}
		if worst, err := milledDiffer(t, spoilt, r); err == nil || planted == 0 {
			t.Errorf("%s: not found in %d files; volumes are %.2g apart", what, planted, worst)
		}
	}
}
