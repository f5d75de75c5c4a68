package prove

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// runCard holds what the report says at the machine against the drawings and their legend:
// every layer that is cut, in the order of the drawing, with its bit and what is to be set;
// pins where the drawing drills them.
func (r *sheetReader) runCard() {
	run := r.laid.Run
	if run == nil {
		if !r.saw {
			r.card("there is no run card")
		}
		return
	}
	if len(run.Faces) != len(r.faces) {
		r.card("the run card is of %s, there are drawings of %d", words.Count(len(run.Faces), "face", "faces"),
			len(r.faces))
		return
	}
	bit := ""
	for i, f := range run.Faces {
		if face := r.faces[i]; f.File != r.files[face] || f.Face != face.String() {
			r.card("face %d of the run card is %s in %s, and not %s", i+1, f.Face, f.File, r.files[face])
			continue
		}
		if i == 0 {
			r.pinsOf(f)
		}
		rows := slices.DeleteFunc(slices.Clone(r.laid.Layers),
			func(l record.Layer) bool { return l.File != f.File || l.Diameter == 0 })
		if len(rows) != len(f.Steps) {
			r.card("the run card has %s for %s, the legend %s that are cut", words.Count(len(f.Steps), "step", "steps"),
				f.File, words.Count(len(rows), "layer", "layers"))
			continue
		}
		for k, l := range rows {
			if what := r.stepOff(f.Steps[k], l, bit); what != "" {
				r.card("step %d of %s: %s", k+1, f.File, what)
			}
			bit = l.Bit
		}
	}
}

// stepOff says in what a step of the run card is not the layer of the legend, after a bit.
func (r *sheetReader) stepOff(s record.RunStep, l record.Layer, bit string) string {
	is := func(a, b record.Length) bool { return math.Abs((a - b).MM()) < sameDepth }
	u, load := r.unit, 0.0
	if s.Feed > 0 && s.Speed > 0 && l.Flutes > 0 {
		load = s.Feed.In(u) / (s.Speed * float64(l.Flutes))
	}
	switch {
	case s.Layer != l.Layer || s.Operation != l.Operation || s.Cuts != l.Cuts || s.File != l.BitFile:
		return fmt.Sprintf("it has %s of %s in %s, the legend %d of %s", words.Count(s.Cuts, "cut", "cuts"),
			s.Operation, s.Layer, l.Cuts, l.Layer)
	case s.Bit != l.Bit || s.Tool != l.Tool || !is(s.Diameter, l.Diameter):
		return fmt.Sprintf("it has bit %s, tool %d, of %g; the legend %s, tool %d, of %g", s.Bit, s.Tool,
			s.Diameter.In(u), l.Bit, l.Tool, l.Diameter.In(u))
	case s.BitChange != (l.Bit != bit):
		return "it is wrong about whether the bit is changed"
	case s.From != l.From || !is(s.Set, l.Set) || s.Through != (l.Stated == "through"):
		return fmt.Sprintf("%g is to be set from the %s, by the legend %g from the %s", s.Set.In(u), s.From, l.Set.In(u),
			l.From)
	case s.From == "top" && !is(s.Depth, s.Set):
		return fmt.Sprintf("it goes %g deep, and %g is to be set", s.Depth.In(u), s.Set.In(u))
	case !passesReach(s):
		return fmt.Sprintf("it has %s, which do not go from %g to %g deep by %g each",
			words.Count(s.Passes, "pass", "passes"), s.StartDepth.In(u), s.Depth.In(u), s.PassDepth.In(u))
	case math.Abs(s.ChipLoad.In(u)-load) > 1e-4+0.01*load:
		return fmt.Sprintf("its chip load is %g; feed, speed and edges make %.4g", s.ChipLoad.In(u), load)
	}
	return ""
}

// passesReach reports whether the passes of a step are as many as it takes to go so deep, to
// within a thousandth of one; without a pass depth there are none to count.
func passesReach(s record.RunStep) bool {
	if s.PassDepth <= 0 {
		return s.Passes == 0
	}
	const near = 1e-3
	need := math.Max(float64((s.Depth-s.StartDepth)/s.PassDepth), 0.5)
	return float64(s.Passes) > need-near && float64(s.Passes) < need+1+near
}

// pinsOf compares the pins of the face that is cut first with the holes in its drawing.
func (r *sheetReader) pinsOf(f record.RunFace) {
	face := r.faces[0]
	if len(f.Pins) != len(r.register[face]) && len(r.faces) > 1 {
		r.card("the run card has %d pins, %s %d registration holes", len(f.Pins), f.File, len(r.register[face]))
	}
	for _, p := range f.Pins {
		at := geom.Point{X: p.X.MM(), Y: p.Y.MM()}
		near := math.Inf(1)
		for _, h := range r.register[face] {
			drawn := h.at
			if face == geom.Outside { // read back as on the inside
				drawn.X = r.length - drawn.X
			}
			near = math.Min(near, math.Max(at.To(drawn), math.Abs(p.Diameter.MM()/2-h.radius)))
		}
		if near > 2*tick {
			r.card("a pin of the run card at %s, %s is %s off any hole of %s, in place or radius",
				r.text(at.X), r.text(at.Y), r.text(near), f.File)
		}
	}
}

func (r *sheetReader) card(format string, values ...any) {
	r.fault("run-card", r.place("report.json", 0), rebuild, format, values...)
}
