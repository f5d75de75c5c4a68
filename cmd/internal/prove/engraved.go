package prove

import (
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/stroke"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

const engraving = "engrave"

// engraved reads the number of a part back: its strokes are all there, where the report has
// them, no deeper than it says, clear of all other cuts, and in the panel.
func (r *panelReader) engraved() {
	e := r.part.Engraved
	if e == nil || e.Reason != "" {
		return // what is engraved all the same is extra
	}
	want := r.strokes(*e)
	for i, c := range r.drawn {
		if c.operation != engraving || c.face.String() != e.Face {
			continue
		}
		const again = rebuild
		found := -1
		for k, line := range want {
			if found < 0 && samePath(line, c.path) {
				found = k
			}
		}
		if found < 0 {
			r.fault(engraving, r.place(c.file, c.at), again,
				"a line on %s is no stroke of the number %s, or is not in its place",
				c.layer, e.Number)
		} else {
			want = append(want[:found], want[found+1:]...)
		}
		if deep := e.Depth.MM(); math.Abs(c.depth-deep) > 2*tick+sameDepth {
			r.fault("depth", r.place(c.file, c.at), again, "the number on %s comes out %s deep; the job wants %s",
				c.layer, r.text(c.depth), r.text(deep))
		}
		if c.swept-c.within > proof.MinLeft {
			r.fault(engraving, r.place(c.file, c.at), again, "the number on %s leaves the panel", c.layer)
		}
		for k, o := range r.drawn {
			beside := o.operation == engraving || o.operation == "slot" || len(o.reach) == 0
			if k != i && !beside && !c.shape.Bounds().Apart(o.shape.Bounds()) {
				r.fault(engraving, r.place(c.file, c.at), again, "the number on %s runs into the %s on %s",
					c.layer, o.operation, o.layer)
				break
			}
		}
	}
	if len(want) > 0 {
		r.fault("missing", r.place(r.file(e.Face), 0), rebuild,
			"%d strokes of the number %s of %s are not drawn",
			len(want), e.Number, r.part.Name)
	}
}

// strokes are the lines of a number in panel coordinates.
func (r *panelReader) strokes(e record.Engraved) (list [][]geom.Point) {
	lines, _ := stroke.Open(e.Number)
	high, sign := e.Height.MM(), 1.0
	if e.Face == geom.Outside.String() {
		sign = -1
	}
	for _, line := range lines {
		path := make([]geom.Point, len(line))
		for i, q := range line {
			path[i] = geom.Point{X: e.X.MM() + float64(sign*high*q.X), Y: e.Y.MM() + float64(high*q.Y)}
		}
		list = append(list, path)
	}
	return list
}

func samePath(want []geom.Point, got []geom.Vertex) bool {
	if len(want) != len(got) {
		return false
	}
	for i, q := range want {
		if q.To(got[i].Point) > tick || got[i].Bulge != 0 && i+1 < len(got) {
			return false
		}
	}
	return true
}
