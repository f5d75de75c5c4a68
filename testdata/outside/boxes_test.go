package outside

import (
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// maxOverlap is the volume, in mm3, in which two parts may both be where their
// faces meet: depths in layer names are rounded to 0.01 mm.
const maxOverlap = 10

// cutPanel is a panel as its DXF files draw it, in millimeters: the outline, and
// for each pocket the depth that its layer names.
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

// step is the extent along x, within the panel, of the first pocket of a kind, and
// its depth.
func (c cutPanel) step(kind string) (from, to, depth float64, ok bool) {
	i := slices.Index(c.kinds, kind)
	if i < 0 {
		return 0, 0, 0, false
	}
	ring := c.Pockets[i].Rings[0]
	return max(0, extent(ring, 0, math.Min)), min(c.length(), extent(ring, 0, math.Max)), c.Pockets[i].Depth, true
}

// depthIn reads the depth from the name of a layer, in millimeters, for a panel of
// a thickness; of one that goes through it is that thickness.
func depthIn(layer string, thickness float64) (depth float64, left bool, err error) {
	words := strings.Split(layer, "_")
	if len(words) < 3 {
		return 0, false, fmt.Errorf("layer %s names no depth", layer)
	}
	// The third word, after FLOOR or LINE; the name of a bit may follow.
	i := 2
	for i < len(words)-1 && (words[i] == "FLOOR" || words[i] == "LINE") {
		i++
	}
	if words[i] == "THROUGH" {
		return thickness, false, nil
	}
	number, unit := words[i], 1.0
	if in, yes := strings.CutSuffix(number, "IN"); yes {
		number, unit = in, 25.4
	}
	depth, err = strconv.ParseFloat(strings.Replace(strings.TrimSuffix(number, "MM"), "-", ".", 1), 64)
	depth *= unit
	if left = words[i-1] == "FLOOR"; left {
		depth = thickness - depth
	}
	return depth, left, err
}

// ring is a closed polyline with chords for arcs.
func (e entity) ring() (ring [][2]float64) {
	var l geom.Loop
	for _, p := range e.Points {
		l = append(l, geom.Vertex{Point: geom.Point{X: p[0], Y: p[1]}, Bulge: p[2]})
	}
	for _, p := range l.Flatten(solid.DefaultChord) {
		ring = append(ring, [2]float64{p.X, p.Y})
	}
	return ring
}

// addFile puts what ezdxf read from one file onto the panel.
func (c *cutPanel) addFile(t *testing.T, a audited, outside bool) {
	t.Helper()
	for _, e := range a.Entities {
		ring := e.ring()
		words := strings.Split(e.Layer, "_")
		if words[0] == "PROFILE" || e.Layer == "OUTLINE" && len(ring) == 4 {
			c.Outline = ring
			if words[0] == "PROFILE" && words[1] == "OUTSIDE" != outside {
				t.Errorf("%s: layer %s in the file of the other face", a.File, e.Layer)
			}
		}
	}
	for _, e := range a.Entities {
		words := strings.Split(e.Layer, "_")
		if len(words) < 3 || slices.Contains([]string{"PROFILE", "SLOT", "REGISTER", "ENGRAVE"}, words[0]) {
			continue // nothing that another part touches
		}
		if words[1] == "OUTSIDE" != outside {
			t.Errorf("%s: layer %s in the file of the other face", a.File, e.Layer)
		}
		ring := e.ring()
		if outside { // as the panel lies with its inside up
			for i := range ring {
				ring[i][0] = c.length() - ring[i][0]
			}
			slices.Reverse(ring)
		}
		depth, _, err := depthIn(e.Layer, c.Thickness)
		if err != nil {
			t.Fatalf("%s: %v", a.File, err)
		}
		c.Pockets = append(c.Pockets, jsonPocket{outside, depth, [][][2]float64{ring}})
		c.kinds = append(c.kinds, words[0])
	}
}

// standing is a panel in its place.
type standing struct {
	Name  string    `json:"name"`
	Panel jsonPanel `json:"panel"`
	stand
}

type jsonBox struct {
	Name  string     `json:"name"`
	Parts []standing `json:"parts"`
}

// together puts a box together as a person does: ends pushed home in the sides,
// tongues against the outer walls of their dados, the bottom in the middle of its
// grooves.
func together(name string, side, front, back, bottom cutPanel) (box jsonBox, width, depth float64) {
	rabbetFrom, rabbetTo, rabbet, _ := front.step("RABBET")
	_, _, backRabbet, _ := back.step("RABBET")
	_, sideTo, sideRabbet, _ := side.step("RABBET")
	tongue := rabbetTo - rabbetFrom
	outerWall, _, dado, inDado := side.step("DADO")
	var x, y, frontAt, backAt float64 // of the left side; of the ends' outside faces
	if inDado {
		// The tongue meets the dado's floor, or the shoulder the side, whichever is first.
		width = front.length() + 2*math.Max(side.Thickness-dado, side.Thickness-tongue)
		frontAt, backAt = outerWall-rabbet, side.length()-outerWall+backRabbet
	} else {
		// The end's shoulder meets the floor of the side's rabbet, or its own end the
		// side's shoulder; the side's end meets the floor of the front's rabbet.
		x = math.Min(tongue-(side.Thickness-sideRabbet), sideTo-rabbet)
		width = front.length() - 2*math.Min(0, x)
		y = front.Thickness - rabbet
		backAt = y + side.length() + back.Thickness - backRabbet
	}
	depth = math.Max(y+side.length(), backAt) - math.Min(0, frontAt)
	up := [3]float64{0, 0, 1}
	groove := slices.Index(front.kinds, "GROOVE") // which has no relief
	ground := extent(front.Pockets[groove].Rings[0], 1, math.Min)
	if _, _, step, ok := bottom.step("RABBET"); ok {
		ground -= step
	}
	return jsonBox{name, []standing{
		{"left side", side.jsonPanel, stand{[3]float64{x, y, 0}, [3]float64{0, 1, 0}, up}},
		{"right side", side.jsonPanel, stand{[3]float64{width - x, y + side.length(), 0}, [3]float64{0, -1, 0}, up}},
		{"front", front.jsonPanel, stand{[3]float64{(width + front.length()) / 2, frontAt, 0}, [3]float64{-1, 0, 0}, up}},
		{"back", back.jsonPanel, stand{[3]float64{(width - back.length()) / 2, backAt, 0}, [3]float64{1, 0, 0}, up}},
		{"bottom", bottom.jsonPanel, stand{[3]float64{(width - bottom.length()) / 2, y + (side.length()-bottom.width())/2, ground}, [3]float64{1, 0, 0}, [3]float64{0, 1, 0}}},
	}}, width, depth
}

// boxFacts is what  reports of a box.
type boxFacts struct {
	Name      string
	Low, High [3]float64
	Overlaps  []overlap
}

type overlap struct {
	A, B   string
	Volume float64
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
// ezdxf reads them, as they are drawn: no two parts overlap, and the outside is as
// asked to 0.02 mm.
func TestBoxes(t *testing.T) {
	samples(t, []string{"mm", "in"}, func(t *testing.T, job, version, unit string) {
		if unit == "in" {
			t.Skip("layer names of inch files round depths to 0.001 in, which is more than the tolerance here")
		}
		dir, r := build(t, job)
		checkBoxes(t, dir, r)
	})
	for _, j := range extraJobs {
		if strings.HasPrefix(j.name, "double-rabbet") {
			t.Run(j.name, func(t *testing.T) {
				dir, r := build(t, drawnIn(j.text, "R2000", "mm"))
				checkBoxes(t, dir, r)
			})
		}
	}
}

func checkBoxes(t *testing.T, dir string, r report) {
	t.Helper()
	read := map[string]audited{}
	for _, a := range audit(t, glob(t, dir, ".dxf")) {
		read[a.File] = a
	}
	panels := map[string]cutPanel{}
	for _, p := range r.Parts {
		c := cutPanel{jsonPanel: jsonPanel{Thickness: p.Thickness * r.mm()}}
		if p.Files.Inside != "" {
			c.addFile(t, read[filepath.Join(dir, p.Files.Inside)], false)
		}
		if p.Files.Outside != "" {
			c.addFile(t, read[filepath.Join(dir, p.Files.Outside)], true)
		}
		panels[p.Name] = c
	}
	var boxes, spoiled []jsonBox
	var kept []drawer
	for _, d := range r.Drawers {
		if !r.classic(d) { // TestTouching has the others
			continue
		}
		kept = append(kept, d)
		by := map[string]cutPanel{}
		for _, p := range r.Parts {
			if p.Drawer == d.Name {
				by[p.Role] = panels[p.Name]
			}
		}
		box, width, depth := together(d.Name, by["side"], by["box-front"], by["back"], by["bottom"])
		if math.Abs(width-d.Outside.Width*r.mm()) > 0.02 || math.Abs(depth-d.Outside.Depth*r.mm()) > 0.02 {
			t.Errorf("%s: %.3f x %.3f mm, asked for %.3f x %.3f", d.Name, width, depth,
				d.Outside.Width*r.mm(), d.Outside.Depth*r.mm())
		}
		boxes = append(boxes, box)
		// The comparator must see a dado, or a rabbet of a side, 0.3 mm too shallow.
		shallow := by["side"]
		shallow.Pockets = slices.Clone(shallow.Pockets)
		corner := slices.IndexFunc(shallow.kinds, func(kind string) bool { return kind != "GROOVE" })
		if corner < 0 {
			t.Fatalf("%s: no corner in %v", d.Name, shallow.kinds)
		}
		shallow.Pockets[corner].Depth -= 0.3
		bad, _, _ := together(d.Name, by["side"], by["box-front"], by["back"], by["bottom"])
		bad.Parts[0].Panel = shallow.jsonPanel
		spoiled = append(spoiled, bad)
	}
	for i, f := range assemble(t, boxes) {
		for _, o := range f.Overlaps {
			if o.Volume > maxOverlap {
				t.Errorf("%s: %s and %s overlap by %.1f mm3", f.Name, o.A, o.B, o.Volume)
			}
		}
		asked := kept[i].Outside
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
		if most <= maxOverlap {
			t.Errorf("%s: a dado 0.3 mm too shallow is not seen", f.Name)
		}
	}
}
