package prove

import (
	"math"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// tabs holds what the slots of a part's own drawing leave between them against the tabs
// that the job asks for. On a sheet they are judged again, with what the neighbors cut.
func (r *panelReader) tabs() {
	asked := r.report.Router.Tabs
	if asked == nil || asked.Marked {
		return
	}
	var near [2][]layer // from the outside, and from the inside
	bit := math.Inf(1)
	for i, c := range r.drawn {
		side := 0
		if c.face == geom.Inside {
			side = 1
		}
		depth := c.depth
		if c.through {
			depth = r.out.thickness + 1
		}
		if c.operation == "slot" {
			bit = math.Min(bit, c.bit)
		}
		near[side] = append(near[side], layer{ringsOf(c.reach...), depth, i})
	}
	if math.IsInf(bit, 1) || bit <= 2*beside {
		return
	}
	found := bridges(r.beside(near), r.out.thickness)
	if found.free < 0 {
		return
	}
	width := found.width(bit)
	switch c := r.drawn[max(found.free, found.ending)]; {
	case found.count < proof.MinTied:
		r.fault("loose", r.place(c.file, c.at), rebuild, "%s hangs by %s when it is cut out; it takes %d", r.part.Name,
			words.Count(found.count, "bridge", "bridges"), proof.MinTied)
	case width < asked.Width.MM()-sameSize:
		c = r.drawn[found.ending]
		r.fault("narrow-tab", r.place(c.file, c.at), rebuild, "a tab of %s is %s wide; the job asks for %s",
			r.part.Name, r.text(math.Max(0, width)), r.text(asked.Width.MM()))
	}
}

// beside takes the cuts a hair outside the panel's outline, side by side.
func (r *panelReader) beside(near [2][]layer) (list []edge) {
	ring := r.region.ring
	if len(ring) == 0 {
		ring = r.region.box.Corners()
	}
	turn := math.Copysign(beside, ring.Area())
	for i, v := range ring {
		w := ring[(i+1)%len(ring)]
		length := v.To(w)
		if length < tick {
			continue
		}
		out := w.Sub(v).Right().Scale(turn / length)
		e := edge{a: v.Add(out), b: w.Add(out)}
		along := func(list []float64, g rings) []float64 { return g.along(list, e.a, e.b) }
		e.deepest = together(deepest(near[0], along, 0, 1), deepest(near[1], along, 0, 1),
			r.out.thickness, r.out.thickness)
		list = append(list, e)
	}
	return list
}
