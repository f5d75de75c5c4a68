package geom_test

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"

	"pgregory.net/rapid"
)

// TestSectionIsThePlan: at places well within the regions of a plan, sections both ways
// find the depths of the region; and runs hold the wood that depths find.
func TestSectionIsThePlan(t *testing.T) {
	const chord = 0.05
	rapid.Check(t, func(t *rapid.T) {
		p := geomtest.AnyPanel().Draw(t, "panel")
		if rapid.Bool().Draw(t, "hole") {
			p.Holes = append(p.Holes, geom.Circle(geom.Point{X: 25, Y: 20}, 12))
		}
		plan, err := geom.NewPlan(p, chord, geom.CoarseGrid)
		if err != nil {
			t.Fatal(err)
		}
		sections := p.SectionLines(chord)
		for _, tri := range plan.Triangles {
			a, b, c := plan.Place(plan.Points[tri.A]), plan.Place(plan.Points[tri.B]), plan.Place(plan.Points[tri.C])
			at, r := geom.Point{X: (a.X + b.X + c.X) / 3, Y: (a.Y + b.Y + c.Y) / 3}, plan.Regions[tri.Region]
			if (geom.Ring{a, b, c}).Distance(at) < 2*geom.CoarseGrid {
				continue
			}
			for _, axis := range []geom.Axis{geom.AlongX, geom.AlongY} {
				along, across := axis.Of(at)
				s := sections.At(axis, across)
				inside, outside, on := s.Depths(along)
				if on != r.OnPanel || on && (inside != r.InsideDepth || outside != r.OutsideDepth) {
					t.Fatalf("at %v: section %g, %g, %v; plan %+v", at, inside, outside, on, r)
				}
				woodAt := func(along float64) bool {
					inside, outside, on := s.Depths(along)
					return on && inside+outside < p.Thickness-chord
				}
				wood := woodAt(along)
				near := !woodAt(along-chord) || !woodAt(along+chord) // what is left out is short
				for _, run := range s.Runs() {
					near = near || run.Grow(3*chord).Contains(along)
					if h := run.Wood(p.Thickness); run.Contains(along) && (!wood || h.Min != outside || h.Max != p.Thickness-inside) {
						t.Fatalf("at %v: a run with wood at %v, depths %g and %g", at, h, inside, outside)
					}
				}
				if wood && !near {
					t.Fatalf("at %v: wood in no run", at)
				}
			}
		}
	})
}
