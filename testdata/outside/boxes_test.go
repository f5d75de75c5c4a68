package outside

import (
	"encoding/json"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// mostOverlap is the volume, in mm3, in which two parts may both be where their
// faces meet: depths in layer names are rounded to 0.01 mm.
const mostOverlap = 10

// cutPanel is a panel as its DXF files describe it, in millimetres: the outline,
// and for each pocket the depth that its layer names.
type cutPanel struct {
	jsonPanel
	kinds []string // of the pockets: DADO, GROOVE, ...
}

func (c cutPanel) length() float64 { return extent(c.Outline, 0, math.Max) }
func (c cutPanel) width() float64  { return extent(c.Outline, 1, math.Max) }

func extent(ring [][2]float64, axis int, pick func(a, b float64) float64) float64 {
	v := ring[0][axis]
	for _, p := range ring {
		v = pick(v, p[axis])
	}
	return v
}

// first gives the first pocket of a kind.
func (c cutPanel) first(kind string) (jsonPocket, bool) {
	for i, k := range c.kinds {
		if k == kind {
			return c.Pockets[i], true
		}
	}
	return jsonPocket{}, false
}

// addFile puts what ezdxf read from one file onto the panel.
func (c *cutPanel) addFile(t *testing.T, a audited, outside bool) {
	t.Helper()
	for _, e := range a.Entities {
		words := strings.Split(e.Layer, "_")
		if len(words) != 3 {
			continue // not cut
		}
		var ring [][2]float64
		for _, p := range e.Points {
			ring = append(ring, [2]float64{p[0], p[1]})
		}
		switch {
		case words[0] == "PROFILE":
			c.Outline = ring
			continue
		case words[1] == "OUTSIDE" != outside:
			t.Errorf("%s: layer %s in the file of the other face", a.File, e.Layer)
		case outside: // as the panel lies with its inside up
			for i := range ring {
				ring[i][0] = c.length() - ring[i][0]
			}
			for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
				ring[i], ring[j] = ring[j], ring[i]
			}
		}
		depth, err := strconv.ParseFloat(strings.Replace(strings.TrimSuffix(words[2], "MM"), "-", ".", 1), 64)
		if err != nil {
			t.Fatalf("%s: layer %s names no depth", a.File, e.Layer)
		}
		c.Pockets = append(c.Pockets, jsonPocket{outside, depth, ring})
		c.kinds = append(c.kinds, words[0])
	}
}

type standing struct {
	Name   string     `json:"name"`
	Panel  jsonPanel  `json:"panel"`
	Origin [3]float64 `json:"origin"`
	X      [3]float64 `json:"x"`
	Y      [3]float64 `json:"y"`
}

type jsonBox struct {
	Name  string     `json:"name"`
	Parts []standing `json:"parts"`
}

// together puts a box together as a person does: tongues pushed home in the
// dados, against the outer walls, the bottom in the middle of its grooves.
func together(name string, side, front, back, bottom cutPanel) (box jsonBox, width float64) {
	dado, _ := side.first("DADO")
	rabbet, _ := front.first("RABBET")
	groove, _ := side.first("GROOVE")
	outerWall := extent(dado.Ring, 0, math.Min)
	tongue := extent(rabbet.Ring, 0, math.Max) - extent(rabbet.Ring, 0, math.Min)
	// The tongue meets the dado's floor, or the shoulder the side, whichever is first.
	width = front.length() + 2*math.Max(side.Thickness-dado.Depth, side.Thickness-tongue)
	depth := side.length()
	up := [3]float64{0, 0, 1}
	ground := extent(groove.Ring, 1, math.Min)
	if step, ok := bottom.first("RABBET"); ok {
		ground -= step.Depth
	}
	backRabbet, _ := back.first("RABBET")
	return jsonBox{name, []standing{
		{"left side", side.jsonPanel, [3]float64{}, [3]float64{0, 1, 0}, up},
		{"right side", side.jsonPanel, [3]float64{width, depth, 0}, [3]float64{0, -1, 0}, up},
		{"front", front.jsonPanel, [3]float64{(width + front.length()) / 2, outerWall - rabbet.Depth, 0}, [3]float64{-1, 0, 0}, up},
		{"back", back.jsonPanel, [3]float64{(width - back.length()) / 2, depth - outerWall + backRabbet.Depth, 0}, [3]float64{1, 0, 0}, up},
		{"bottom", bottom.jsonPanel, [3]float64{(width - bottom.length()) / 2, (depth - bottom.width()) / 2, ground}, [3]float64{1, 0, 0}, [3]float64{0, 1, 0}},
	}}, width
}

// boxFacts is what boxes.mjs tells of a box.
type boxFacts struct {
	Name      string
	Low, High [3]float64
	Overlaps  []struct {
		A, B   string
		Volume float64
	}
}

func assemble(t *testing.T, boxes []jsonBox) []boxFacts {
	t.Helper()
	var input strings.Builder
	for _, b := range boxes {
		line, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	facts := lines[boxFacts](t, input.String(), "node", "boxes.mjs")
	if len(facts) != len(boxes) {
		t.Fatalf("%d answers for %d boxes", len(facts), len(boxes))
	}
	return facts
}

// TestBoxes puts every drawer of every sample together from its DXF files as
// ezdxf reads them: no two parts overlap, and the outside is as asked to 0.02 mm.
func TestBoxes(t *testing.T) {
	// Layer names of inch files round depths to 0.001 in, which is more than the
	// tolerance here.
	samples(t, []string{"mm"}, func(t *testing.T, job, version, unit string) {
		dir, r := build(t, job)
		read := map[string]audited{}
		for _, a := range audit(t, glob(t, dir, ".dxf")) {
			read[a.File] = a
		}
		panels := map[string]cutPanel{}
		for _, p := range r.Parts {
			c := cutPanel{jsonPanel: jsonPanel{Thickness: p.Thickness * r.mm()}}
			c.addFile(t, read[filepath.Join(dir, p.Files.Inside)], false)
			if p.Files.Outside != "" {
				c.addFile(t, read[filepath.Join(dir, p.Files.Outside)], true)
			}
			panels[p.Name] = c
		}
		var boxes, spoiled []jsonBox
		for _, d := range r.Drawers {
			by := map[string]cutPanel{}
			for _, name := range d.Parts {
				by[name[strings.LastIndex(name, "-")+1:]] = panels[name]
			}
			box, width := together(d.Name, by["side"], by["front"], by["back"], by["bottom"])
			if math.Abs(width-d.Outside.Width*r.mm()) > 0.02 {
				t.Errorf("%s: %.3f mm wide, asked for %.3f", d.Name, width, d.Outside.Width*r.mm())
			}
			boxes = append(boxes, box)
			// The comparator must see a dado 0.3 mm too shallow.
			shallow := by["side"]
			shallow.Pockets = append([]jsonPocket(nil), shallow.Pockets...)
			shallow.Pockets[0].Depth -= 0.3
			bad, _ := together(d.Name, by["side"], by["front"], by["back"], by["bottom"])
			bad.Parts[0].Panel = shallow.jsonPanel
			spoiled = append(spoiled, bad)
		}
		for i, f := range assemble(t, boxes) {
			for _, o := range f.Overlaps {
				if o.Volume > mostOverlap {
					t.Errorf("%s: %s and %s overlap by %.1f mm3", f.Name, o.A, o.B, o.Volume)
				}
			}
			asked := r.Drawers[i].Outside
			for axis, want := range [3]float64{asked.Width * r.mm(), asked.Depth * r.mm(), asked.Height * r.mm()} {
				if got := f.High[axis] - f.Low[axis]; math.Abs(got-want) > 0.02 {
					t.Errorf("%s: %s is %.3f mm, asked for %.3f", f.Name, []string{"width", "depth", "height"}[axis], got, want)
				}
			}
		}
		for _, f := range assemble(t, spoiled) {
			most := 0.0
			for _, o := range f.Overlaps {
				most = math.Max(most, o.Volume)
			}
			if most <= mostOverlap {
				t.Errorf("%s: a dado 0.3 mm too shallow is not seen", f.Name)
			}
		}
	})
}
