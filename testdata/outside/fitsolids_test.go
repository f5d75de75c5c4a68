package outside

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// offs is what one machine was off by, in mm, when it cut a side and a front, by the
// names of geom/fit's sources.
type offs map[string]float64

// machine cuts a left side and a front from boards, as a saw or a router really would
// with settings that are off: with f, h and w the fence distance, the cutter's height
// and the slot's width as they are meant.
type machine struct {
	d                        joinery.Drawer
	f, h, w                  float64
	fence, height            string // names of sources
	tongue, deep, long, dado float64
	side, front              float64 // thicknesses
}

func cutBy(d joinery.Drawer, x offs) machine {
	m := machine{d: d, f: d.Setup.FenceDistance, h: d.Setup.CutterHeight, fence: "fence distance", height: "cutter height"}
	router := d.Spec.Cutter.Kind == joinery.Router
	if router {
		m.fence, m.height = "place of the board", "router's zero"
	}
	for _, c := range d.Fit {
		if c.Code == "tongue-clearance" {
			m.w = m.f + c.Nominal
		}
	}
	m.side = d.Spec.Sides.Thickness.Mean + x["thickness of the left side"]
	m.front = d.Spec.Front.Thickness.Mean + x["thickness of the box front"]
	// The dado's outer wall.
	m.dado = m.f + x[m.fence] + x["place of the box front's dado"]
	m.w += x["width of the cutter"]
	deeper := x[m.height]
	m.deep = m.h + d.Spec.GlueSpace + deeper + x["depth of the left dado"]
	if d.Spec.GlueSpace > 0 { // another setting
		m.deep += x[m.height+" of the dados"] - deeper
	}
	switch {
	case !router:
		// Stood on end against the same fence: the tongue is what is before the cutter,
		// and as long as the cutter is high.
		m.tongue = m.f + x[m.fence] + x["cut of the box front's tongue"]
		m.long = m.h + deeper + x["length of the left rabbet"]
	case d.Spec.DepthFrom == joinery.FromSpoilboard:
		// What is left over the spoilboard is the same in every board.
		m.tongue = m.f - deeper + x["cut of the box front's tongue"]
		m.deep += m.side - d.Spec.Sides.Thickness.Mean
		m.long = m.h + d.Spec.Sides.Thickness.Max - d.Spec.Sides.Thickness.Mean + x[m.fence] + x["length of the left rabbet"]
	default:
		// What is cut away is.
		m.tongue = m.front - (d.Spec.Front.Thickness.Mean - m.f + deeper) + x["cut of the box front's tongue"]
		m.long = m.h + x[m.fence] + x["length of the left rabbet"]
	}
	return m
}

// length of the front as the cut list has it.
func (m machine) length() float64 {
	return m.d.Spec.Width - 2*m.d.Spec.Sides.Thickness.Mean + 2*m.h
}

// fitPart is a panel in its place, as boxes.mjs takes it.
type fitPart struct {
	Name   string     `json:"name"`
	Panel  jsonPanel  `json:"panel"`
	Origin [3]float64 `json:"origin"`
	X      [3]float64 `json:"x"`
	Y      [3]float64 `json:"y"`
}

type fitBox struct {
	Name  string    `json:"name"`
	Parts []fitPart `json:"parts"`
}

// standing is the side with the front into it by so much, its outside face behind the
// side's end by recess.
func (m machine) standing(into, recess float64) fitBox {
	high, length := m.d.Spec.Height, m.length()
	box := func(x0, y0, x1, y1 float64) [][2]float64 { return [][2]float64{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	// Cuts run out of the boards, so that no two faces coincide.
	const out = 1
	side := jsonPanel{Thickness: m.side, Outline: box(0, 0, m.d.Spec.Depth, high),
		Pockets: []jsonPocket{{Depth: m.deep, Rings: [][][2]float64{box(m.dado, -out, m.dado+m.w, high+out)}}}}
	front := jsonPanel{Thickness: m.front, Outline: box(0, 0, length, high),
		Pockets: []jsonPocket{{Outside: true, Depth: m.front - m.tongue, Rings: [][][2]float64{box(length-m.long, -out, length+out, high+out)}}}}
	return fitBox{Name: fmt.Sprintf("into %g, recess %g", into, recess), Parts: []fitPart{
		{"side", side, [3]float64{}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}},
		{"front", front, [3]float64{m.side - into + length, recess, 0}, [3]float64{-1, 0, 0}, [3]float64{0, 0, 1}},
	}}
}

const (
	// fitStep is by how much, in mm, a front is moved beyond where it should stop, and
	// before: hundreds of times what manifold-3d rounds by.
	fitStep = 0.01
	// fitVolume is the volume, in mm3, of no overlap: of 0.00001 mm on a tongue.
	fitVolume = 0.005
)

// TestFitAsSolids: corners of the tolerance box, on a saw and on a router that measures
// depths either way, as solids. The tongue moves in its dado along the box by the play
// that geom/fit tells for that corner, from one recess to the other, and by nothing
// more; a tongue without play goes in nowhere. Pushed in, the front stops where the
// width says.
func TestFitAsSolids(t *testing.T) {
	limits := offs{"fence": 0.15, "height": 0.2, "width of the cutter": 0.1, "thickness of the box front": 0.25, "thickness of the left side": 0.3, "place of the box front's dado": 0.04,
		"cut of the box front's tongue": 0.05, "height of the dados": 0.17, "depth of the left dado": 0.06, "length of the left rabbet": 0.07}
	names := []string{"fence", "height", "width of the cutter", "thickness of the box front", "thickness of the left side", "place of the box front's dado",
		"cut of the box front's tongue", "depth of the left dado", "length of the left rabbet", "height of the dados"}
	saw := sawnBox(t, 300, 250, 0)
	again := func(kind joinery.CutterKind, from joinery.DepthFrom, room float64) joinery.Drawer {
		s := saw.Spec
		s.Cutter.Kind, s.DepthFrom, s.GlueSpace, s.DadoClearance, s.GrooveClearance = kind, from, room, 0.35, 0.2
		if kind == joinery.Router {
			s.Cutter.Width = 3
		}
		d, problems, _ := joinery.LayOut(s)
		for _, p := range problems {
			if p.IsError() {
				t.Fatalf("%s: %s", p.Code, p.Fact.In(geom.Millimeter))
			}
		}
		return d
	}
	var boxes strings.Builder
	type want struct {
		what   string
		volume float64 // below 0: more than none
	}
	var wants []want
	put := func(m machine, what string, into, recess, volume float64) {
		line, err := json.Marshal(m.standing(into, recess))
		if err != nil {
			t.Fatal(err)
		}
		boxes.Write(append(line, '\n'))
		wants = append(wants, want{what, volume})
	}
	tight := 0
	for _, c := range []struct {
		name string
		d    joinery.Drawer
	}{{"saw", saw}, {"from the top", again(joinery.Router, joinery.FromTop, 0)}, {"from the spoilboard", again(joinery.Router, joinery.FromSpoilboard, 0.1)}} {
		d := c.d
		list := fit.Measures(d, fit.MeasuredBoards(d.Spec), fit.AccuracyOf(d.Spec.Cutter.Kind), nil)
		for _, corner := range []string{"++++++++++", "-+-+-+-+--", "+-+-++--++", "--++-+--+-", "----------", "+--+-++-++"} {
			m := cutBy(d, nil)
			x := offs{}
			for i, n := range names {
				at := map[string]string{"fence": m.fence, "height": m.height, "height of the dados": m.height + " of the dados"}[n]
				if at == "" {
					at = n
				}
				x[at] = limits[n]
				if corner[i] == '-' {
					x[at] = -limits[n]
				}
			}
			m = cutBy(d, x)
			value := func(code joinery.CheckCode) float64 {
				s := stackOf(t, list, code)
				off := make([]float64, len(s.Sources))
				for i, from := range s.Sources {
					// The right side is cut as the left one is.
					off[i] = x[strings.Replace(from.Name, "right", "left", 1)]
				}
				return s.Value(off)
			}
			outer, inner, play := value("recess"), value("recess-inner"), value("tongue-clearance")
			into := (m.length() + 2*m.side - value("outside-width")) / 2
			what := fmt.Sprintf("%s, %s: ", c.name, corner)
			if math.Abs(inner-outer-play) > 1e-9 {
				t.Errorf("%srecess %.6f to %.6f, clearance %.6f", what, outer, inner, play)
			}
			// A millimeter off, so that the shoulder is away from the side.
			off := into - 1
			face := off * d.Spec.Height // of the tongue in the dado
			middle := (outer + inner) / 2
			if play < 0 {
				tight++
				put(m, what+"too thick", off, middle, -play*face)
				continue
			}
			for _, c := range []struct {
				what   string
				recess float64
				volume float64
			}{
				{"in the middle", middle, 0}, {"before the outer wall", outer + fitStep, 0}, {"before the inner wall", inner - fitStep, 0},
				{"in the outer wall", outer - fitStep, fitStep * face}, {"in the inner wall", inner + fitStep, fitStep * face},
			} {
				put(m, what+c.what, off, c.recess, c.volume)
			}
			put(m, what+"before it is home", into-fitStep, middle, 0)
			// In the dado's floor with the tongue's end, or in the side's wood between its end
			// and the dado with the shoulder.
			meets := m.tongue
			if m.long < m.deep {
				meets = min(m.dado, middle+m.front-m.tongue) - max(0, middle)
			}
			put(m, what+"beyond home", into+fitStep, middle, fitStep*meets*d.Spec.Height)
		}
	}
	if tight == 0 {
		t.Error("no corner is too tight")
	}
	answers := lines[struct{ Overlaps []struct{ Volume float64 } }](t, boxes.String(), "node", "boxes.mjs")
	if len(answers) != len(wants) {
		t.Fatalf("%d answers for %d boxes", len(answers), len(wants))
	}
	for i, w := range wants {
		got := answers[i].Overlaps[0].Volume
		if w.volume < 0 {
			if got <= fitVolume {
				t.Errorf("%s: the parts do not meet", w.what)
			}
		} else if math.Abs(got-w.volume) > fitVolume {
			t.Errorf("%s: they share %.4f mm3, want %.4f", w.what, got, w.volume)
		}
	}
}
