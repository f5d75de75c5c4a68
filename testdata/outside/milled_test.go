package outside

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/geom/geomtest"
)

const (
	// maxInGoing is the volume, in mm3, that two parts of a box that goes together
	// may have in common where they stand.
	maxInGoing = 1.0
	// chordVolume is what chords for arcs can make of it: those of the product's
	// proof keep within 0.005 mm of relief and bit rounds, a few millimeters long and
	// up to 10 mm deep.
	chordVolume = 0.1
	// sameOutside is what the sizes of a box may differ by, in mm.
	sameOutside = 0.02
)

// trial is a way in which boards or machine are off, and what prove takes for it.
// Lengths are in millimeters.
type trial struct {
	role    string  // of the part whose stock is
	thicker float64 // than its readings
	depth   float64 // by which every pocket is too deep
	along   float64 // by which the outside cuts of turned parts are off

	stock     string // of the role
	thickness float64
}

// trials are tried on every job: fits are looser than 0.1 mm and closer than 0.5.
var trials = []trial{{}, {depth: -0.6}, {depth: 0.1}, {along: 0.3}, {role: "bottom", thicker: 0.6}, {role: "side", thicker: -0.1}, {role: "box-front", thicker: 0.6}}

// trialsOf are those of one of the jobs: of a router, for which there are many jobs, the first,
// and two more in turn, or all ([geomtest.All]).
func trialsOf(i int, job string) []trial {
	if geomtest.All() || !strings.Contains(job, "kind: router") {
		return trials
	}
	return append(trials[:1:1], trials[1+2*(i%3):][:2]...)
}

// in finds the stock that a trial is about in one of a report's drawers.
func (v trial) in(r report, d drawer) trial {
	for _, p := range r.Parts {
		if p.Role == v.role && p.Drawer == d.Name {
			v.stock, v.thickness = p.Stock, p.Thickness*r.mm()+v.thicker
		}
	}
	return v
}

// growth is how much thicker than asked what stands in a slot becomes: of a part of
// which a rabbet in its outside leaves a tongue, or of its whole thickness.
func (v trial) growth(r report, p part) float64 {
	more := 0.0
	if p.Stock == v.stock {
		more = v.thicker
	}
	if !slices.ContainsFunc(p.Operations, func(o operation) bool { return o.Face == "outside" }) {
		return more
	}
	if r.Router.DepthFrom == "spoilboard" || r.machine(p) != "router" { // what is left stays the same
		more = 0
	}
	return more - v.depth
}

// expected reports whether a drawer goes together: it does when nothing grows that
// stands in a slot. Lapped corners have none.
func (v trial) expected(r report, d drawer) bool {
	lapped := true
	for _, p := range r.Parts {
		if p.Drawer == d.Name && p.Role == "side" {
			lapped = !slices.ContainsFunc(p.Operations, func(o operation) bool { return o.Kind == "dado" })
		}
	}
	for _, p := range r.Parts {
		inSlot := p.Role == "bottom" || p.Role != "side" && !lapped
		if p.Drawer == d.Name && inSlot && v.growth(r, p) > 0.5 {
			return false
		}
	}
	return true
}

// classic reports whether a drawer has the corners with dados or rabbets in all four
// walls, and a bottom in four grooves, for which it is known beforehand what goes.
func (r report) classic(d drawer) bool {
	rabbets := false
	for _, p := range r.Parts {
		if p.Drawer != d.Name {
			continue
		}
		bored := slices.ContainsFunc(p.Operations,
			func(o operation) bool { return o.Kind == "drill" || o.Kind == "cutout" })
		if p.Label != "" || p.Role == "divider" || p.Role == "drawer-front" || p.Role == "bottom" && bored {
			return false
		}
		rabbets = rabbets || p.Role == "box-front" && slices.ContainsFunc(p.Operations,
			func(o operation) bool { return o.Kind == "rabbet" })
	}
	return rabbets
}

func (r report) drawer(name string) drawer {
	return r.Drawers[slices.IndexFunc(r.Drawers, func(d drawer) bool { return d.Name == name })]
}

func (v trial) options() (list []string) {
	if v.stock != "" {
		list = append(list, "--thickness", fmt.Sprintf("%s=%.9g mm", v.stock, v.thickness))
	}
	if v.depth != 0 {
		list = append(list, "--depth-error", fmt.Sprintf("%g mm", v.depth))
	}
	if v.along != 0 {
		list = append(list, "--flip-error", fmt.Sprintf("%g mm", v.along))
	}
	return list
}

// milled is a part as its drawings and bits make it of a board, for manifold-3d.
func milled(p part, r report, files map[string]cutFile, v trial) (jsonPanel, error) {
	nominal := p.Thickness * r.mm()
	thick := nominal
	if v.stock == p.Stock {
		thick = v.thickness
	}
	length, width := p.Length*r.mm(), p.Width*r.mm()
	out := jsonPanel{Thickness: thick, Outline: [][2]float64{{0, 0}, {length, 0}, {length, width}, {0, width}}}
	for _, name := range []string{p.Files.Inside, p.Files.Outside} {
		f, ok := files[name]
		if name != "" && (!ok || math.Abs(f.Length-length) > micrometer || math.Abs(f.Width-width) > micrometer) {
			return out, fmt.Errorf("%s: %g x %g mm, the report has %g x %g", name, f.Length, f.Width, length, width)
		}
		if len(f.Outline) > 0 {
			out.Outline = f.Outline
		}
		outside := f.Face == "outside"
		for _, c := range f.Cuts {
			depth, left, err := depthIn(c.Layer, nominal)
			if err != nil {
				return out, err
			}
			through := depth == nominal
			// A depth told from the spoilboard leaves as much wood in every board; and
			// so does a saw beside whose blade the inside face runs along the fence.
			if left || outside && r.machine(p) != "router" {
				depth += thick - nominal
			}
			depth += v.depth
			if through {
				depth = thick + 1
			}
			if depth <= 0 || c.Reached == 0 { // it is beside the panel
				continue
			}
			for _, polygon := range c.Shape {
				if outside && p.Files.Inside != "" {
					polygon = moved(polygon, v.along)
				}
				out.Pockets = append(out.Pockets, jsonPocket{outside, depth, polygon})
			}
		}
	}
	return out, nil
}

func moved(polygon [][][2]float64, dx float64) (out [][][2]float64) {
	for _, ring := range polygon {
		ring = slices.Clone(ring)
		for i := range ring {
			ring[i][0] += dx
		}
		out = append(out, ring)
	}
	return out
}

// placed puts the milled parts of a drawer where the proof has them.
func placed(d proof, r report, files map[string]cutFile, v trial) (jsonBox, error) {
	box := jsonBox{Name: d.Drawer}
	for _, piece := range d.Assembled {
		i := slices.IndexFunc(r.Parts, func(p part) bool { return p.Name == piece.Part })
		panel, err := milled(r.Parts[i], r, files, v)
		if err != nil {
			return box, err
		}
		at := piece.Placement
		for k := range at.Origin {
			at.Origin[k] *= r.mm()
		}
		box.Parts = append(box.Parts, standing{piece.Name, panel, at})
	}
	return box, nil
}

// apart is how far a proof and the solids are from each other at most: volumes that
// two parts have in common as far as the proof tells them, what they have in common
// in boxes that go together, in mm3, and outside sizes, in mm.
type apart struct{ volume, going, size float64 }

// differs holds the proof of a drawer against the solids that manifold-3d makes of
// it. Where front and back are moved along by a turn the sides stand askew by up to
// as much, and the solids square: they are that much further apart.
func differs(d proof, f boxFacts, mm, askew float64) (off apart, err error) {
	most := overlap{}
	for _, o := range f.Overlaps {
		if o.Volume > most.Volume {
			most = o
		}
		said := 0.0
		for _, p := range d.Overlaps {
			if p.A == o.A && p.B == o.B || p.A == o.B && p.B == o.A {
				said = p.Volume
			}
		}
		if said == 0 && o.Volume <= maxInGoing+chordVolume { // the proof lists what is over 1 mm3
			continue
		}
		off.volume = max(off.volume, math.Abs(said-o.Volume))
		if math.Abs(said-o.Volume) > chordVolume {
			return off, fmt.Errorf("%s and %s have %.3f mm3 in common, the proof says %.3f", o.A, o.B, o.Volume, said)
		}
	}
	switch d.Verdict {
	case goes, goesBut, goesSome:
		off.going = most.Volume
		if most.Volume > maxInGoing+chordVolume {
			return off, fmt.Errorf("it %s, and %s and %s overlap by %.2f mm3", d.Verdict, most.A, most.B, most.Volume)
		}
		for axis, s := range [3]span{d.Width, d.Depth, d.Height} {
			if slices.ContainsFunc(d.Assembled, func(p piece) bool { return p.Name == "drawer front" }) {
				break // it stands out beyond the box
			}
			got := f.High[axis] - f.Low[axis]
			more := got - s.Mean*mm
			if axis != 0 {
				askew = 0
			}
			if more < -sameOutside || more > 2*askew+sameOutside {
				return off, fmt.Errorf("it is %.3f mm along %c, the proof says %.3f", got, "XYZ"[axis], s.Mean*mm)
			}
			if askew == 0 {
				off.size = max(off.size, math.Abs(more))
			}
		}
	case goesNot:
		if most.Volume <= maxInGoing {
			return off, fmt.Errorf("it %s, and nothing overlaps by more than %.2f mm3", d.Verdict, most.Volume)
		}
	default:
		return off, fmt.Errorf("%s: %+v", d.Verdict, d.Faults)
	}
	return off, nil
}

// TestMilled: manifold-3d makes the panels of every sample and of jobs that have
// what the samples do not from what shapely cuts of the drawings, and puts the
// boxes together where the proof puts them. Where that says that a box goes
// together no two parts overlap and the outside is as it says; where not, they do.
// Which of them go is also known beforehand.
func TestMilled(t *testing.T) {
	jobs := slices.Clone(extraJobs)
	for _, f := range sampleFiles(t) {
		jobs = append(jobs, extraJob{name: filepath.Base(f), text: textOf(t, f)})
	}
	var lock sync.Mutex
	count := map[string]int{} // of boxes by machine and verdict
	var worst apart
	t.Cleanup(func() {
		t.Logf("%v; at most apart: volumes %.2g mm3, sizes %.2g mm; in common where it goes together: %.2g mm3", count, worst.volume, worst.size, worst.going)
		for _, machine := range []string{"saw ", "router "} {
			good, bad := count[machine+goes]+count[machine+goesBut]+count[machine+goesSome], count[machine+goesNot]
			if good < 12 || bad < 12 {
				t.Errorf("%sboxes: %d go together, %d do not; 12 each are wanted", machine, good, bad)
			}
		}
	})
	for i, j := range jobs {
		t.Run(j.name, func(t *testing.T) {
			t.Parallel()
			dir, r := build(t, drawnIn(j.text, "R2000", "mm"))
			if !slices.ContainsFunc(r.Drawers, r.classic) { // TestTouching has them
				return
			}
			files := map[string]cutFile{}
			for _, f := range shapely(t, "--solids", dir) {
				files[f.File] = f
			}
			var boxes []jsonBox
			var proofs []proof
			var tried []trial
			known := map[string]proven{}
			for _, v := range trialsOf(i, j.text) {
				for i, d := range r.Drawers {
					if !r.classic(d) {
						continue
					}
					if v.along != 0 && d.Machine != "router" { // which turns nothing over on pins
						continue
					}
					v := v.in(r, d)
					key := fmt.Sprint(v.options())
					if _, done := known[key]; !done {
						known[key] = prove(t, dir, v.options()...)
					}
					p := known[key].Proof[i]
					box, err := placed(p, r, files, v)
					if err != nil {
						t.Fatal(err)
					}
					boxes, proofs, tried = append(boxes, box), append(proofs, p), append(tried, v)
					if want := v.expected(r, d); (p.Verdict != goesNot) != want {
						t.Errorf("%s, %q: it %s, and whether it should is %v", d.Name, v.options(), p.Verdict, want)
					}
					lock.Lock()
					count[d.Machine+" "+p.Verdict]++
					lock.Unlock()
				}
			}
			for i, f := range assemble(t, boxes) {
				off, err := differs(proofs[i], f, r.mm(), tried[i].along)
				if err != nil {
					t.Errorf("%s, %q: %v", proofs[i].Drawer, tried[i].options(), err)
				}
				lock.Lock()
				worst = apart{max(worst.volume, off.volume), max(worst.going, off.going), max(worst.size, off.size)}
				lock.Unlock()
			}
		})
	}
}

// TestMilledFinds: the comparison sees, in a box that goes together, a pocket
// 0.3 mm too shallow, bits of another radius, a part out of its place, and another
// size or verdict in the proof; in one that does not, another verdict or volume.
func TestMilledFinds(t *testing.T) {
	dir, r := build(t, extraJobs[0].text)
	byFile := func(list []cutFile) map[string]cutFile {
		files := map[string]cutFile{}
		for _, f := range list {
			files[f.File] = f
		}
		return files
	}
	files := byFile(shapely(t, "--solids", dir))
	fat := trial{role: "box-front", thicker: 0.6}.in(r, r.Drawers[0])
	good, bad := prove(t, dir).Proof[0], prove(t, dir, fat.options()...).Proof[0]
	box := func(d proof, files map[string]cutFile, v trial) jsonBox {
		b, err := placed(d, r, files, v)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	boxes := []jsonBox{box(good, files, trial{}), box(bad, files, fat)}
	shallow := box(good, files, trial{depth: -0.3})
	wide := box(good, byFile(shapely(t, "--radius", "1.5", "--solids", dir)), trial{})
	moved := box(good, files, trial{})
	moved.Parts[0].Origin[0] += 0.05
	boxes = append(boxes, shallow, wide, moved)
	facts := assemble(t, boxes)
	if _, err := differs(good, facts[0], 1, 0); err != nil || good.Verdict != goes {
		t.Fatal(good.Verdict, err)
	}
	if _, err := differs(bad, facts[1], 1, 0); err != nil || bad.Verdict != goesNot {
		t.Fatal(bad.Verdict, err)
	}
	for i, name := range []string{"too shallow", "another radius", "out of place"} {
		if _, err := differs(good, facts[2+i], 1, 0); err == nil {
			t.Errorf("%s: not found", name)
		}
	}
	for name, spoil := range map[string]func(p *proof){
		"width":   func(p *proof) { p.Width.Mean += 2 * sameOutside },
		"depth":   func(p *proof) { p.Depth.Mean -= 2 * sameOutside },
		"height":  func(p *proof) { p.Height.Mean += 2 * sameOutside },
		"verdict": func(p *proof) { p.Verdict = goesNot },
	} {
		p := good
		spoil(&p)
		if _, err := differs(p, facts[0], 1, 0); err == nil {
			t.Errorf("%s: not found", name)
		}
	}
	for name, spoil := range map[string]func(p *proof){
		"verdict": func(p *proof) { p.Verdict = goes },
		"volume":  func(p *proof) { p.Overlaps[0].Volume *= 1.02 },
		"parts":   func(p *proof) { p.Overlaps[0].A = "bottom" },
		"no list": func(p *proof) { p.Overlaps = nil },
	} {
		p := bad
		p.Overlaps = slices.Clone(bad.Overlaps)
		spoil(&p)
		if _, err := differs(p, facts[1], 1, 0); err == nil {
			t.Errorf("%s: not found where a box does not go", name)
		}
	}
}
