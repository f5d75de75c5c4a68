package outside

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// glbFacts is what  reports of a file.
type glbFacts struct {
	File             string
	Errors, Warnings int
	Messages         []json.RawMessage
	Low, High        [3]float64
	Nodes            []struct {
		Name, Part, Status string
		Mesh               int
		Volume             float64
		Open               int
	}
}

// sameBounds, in mm, is a tenth of what a caliper shows; float32 in meters is better.
const sameBounds = 0.001

// TestGLB: gltf-validator has nothing to say against any GLB of any sample, every node
// is a manifold for manifold-3d with the volume of its part, and three.js gives a
// drawer's GLB the bounds that it gives its STL: meters for millimeters, Y up for Z up.
func TestGLB(t *testing.T) {
	t.Parallel()
	for _, sample := range sampleFiles(t) {
		t.Run(filepath.Base(sample), func(t *testing.T) {
			out, r := build(t, textOf(t, sample))
			stl := map[string]solidFacts{}
			for _, f := range lines[solidFacts](t, strings.Join(glob(t, out, ".stl"), "\n"), "node", "stl.mjs") {
				stl[f.File] = f
			}
			volume, chords, pieces := map[string]float64{}, map[string]float64{}, map[string]int{}
			for _, p := range r.Parts {
				volume[p.Name] = stl[filepath.Join(out, p.Files.STL)].Volume
				if r.solidAsCut(p) { // without tabs and onion skin
					m := partsMilled(t, out)[p.Name]
					volume[p.Name], chords[p.Name] = m.Trimmed, m.chords()
				}
				pieces[p.Name] = len(p.Placements)
			}
			files := glob(t, out, ".glb")
			drawers := 0
			for _, f := range lines[glbFacts](t, strings.Join(files, "\n"), "node", "glb.mjs") {
				if f.Errors+f.Warnings != 0 {
					t.Errorf("%s: %d errors, %d warnings: %s", f.File, f.Errors, f.Warnings, f.Messages)
				}
				found, mesh := map[string]int{}, map[string]int{}
				for _, n := range f.Nodes {
					if m, again := mesh[n.Part]; again && m != n.Mesh {
						t.Errorf("%s: pieces of %s have two meshes", f.File, n.Part)
					}
					mesh[n.Part] = n.Mesh
					found[n.Part]++
					want := volume[n.Part]
					near := math.Abs(n.Volume-want) <= onBoxGrid*want+chords[n.Part]
					if n.Open != 0 || n.Status != "NoError" || !near {
						t.Errorf("%s: %s is %s with %d open edges and %.3f mm3, its part %.3f", f.File,
							n.Name, n.Status, n.Open, n.Volume, want)
					}
				}
				for part, n := range found {
					if n != pieces[part] {
						t.Errorf("%s: %d pieces of %s, which stands %d times", f.File, n, part, pieces[part])
					}
				}
				if filepath.Base(f.File) != "drawer.glb" {
					continue
				}
				drawers++
				s := stl[filepath.Join(filepath.Dir(f.File), "assembled.stl")]
				want := [2][3]float64{{s.Low[0], s.Low[2], -s.High[1]}, {s.High[0], s.High[2], -s.Low[1]}}
				for k := range 3 {
					if math.Abs(1000*f.Low[k]-want[0][k]) > sameBounds || math.Abs(1000*f.High[k]-want[1][k]) > sameBounds {
						t.Errorf("%s: from %v to %v m, its STL from %v to %v mm", f.File, f.Low, f.High,
							want[0], want[1])
					}
				}
			}
			if drawers != len(r.Drawers) {
				t.Errorf("%d files drawer.glb for %d drawers", drawers, len(r.Drawers))
			}
		})
	}
}

// TestGLBComparator: the outside programs see a corner that is not there and a
// triangle turned round.
func TestGLBComparator(t *testing.T) {
	dir, _ := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	data, err := os.ReadFile(filepath.Join(dir, "3d", "bench-wide", "drawer.glb"))
	if err != nil {
		t.Fatal(err)
	}
	bad := t.TempDir()
	spoil := func(name string, change func(corners []byte)) string {
		file := filepath.Join(bad, name)
		d := append([]byte(nil), data...)
		// The last surface is the bottom's, a plain board: 36 corners at the end.
		change(d[len(d)-72:])
		if err := os.WriteFile(file, d, 0o644); err != nil {
			t.Fatal(err)
		}
		return file
	}
	files := []string{
		spoil("corner.glb", func(c []byte) { binary.LittleEndian.PutUint16(c, 60000) }),
		spoil("turned.glb", func(c []byte) { c[0], c[1], c[2], c[3] = c[2], c[3], c[0], c[1] }),
	}
	facts := lines[glbFacts](t, strings.Join(files, "\n"), "node", "glb.mjs")
	if len(facts) != 2 {
		t.Fatalf("%d answers", len(facts))
	}
	if facts[0].Errors == 0 {
		t.Error("a corner beyond the vertices is no error")
	}
	if last := facts[1].Nodes[len(facts[1].Nodes)-1]; last.Open == 0 {
		t.Errorf("a triangle turned round is not seen: %+v", last)
	}
}
