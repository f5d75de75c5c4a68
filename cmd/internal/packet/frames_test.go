package packet

import (
	"encoding/json"
	"slices"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
	"drawerwright/preview/viewer"
)

// viewed is what a viewer is given of a box.
type viewed struct {
	Opening []string
	Steps   []struct {
		Text   string
		From   int
		Open   float64
		Glue   [][7]float64
		Clamps []struct{ Low, High [3]float64 }
	}
	Pieces []struct {
		Name         string
		Part         int
		Origin, X, Y [3]float64
		Moves        [][4]float64
	}
}

// viewedOf is a box as it comes out of the data of the viewer.
func viewedOf(t *testing.T, taken Taken) viewed {
	t.Helper()
	box := taken.box
	box.Steps = func() []scene.Step { return Steps(batch.Batch{}, taken.drawer, taken.box) }
	s := scene.Scene{Boxes: []scene.Box{box}}
	for range taken.drawer.Parts {
		s.Parts = append(s.Parts, scene.Part{})
	}
	text, err := viewer.Data(s)
	if err != nil {
		t.Fatal(err)
	}
	var data struct{ Boxes []viewed }
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	return data.Boxes[0]
}

// stood are the solids that the viewer shows in a step, as its script places them: those of which no move is undone
// later, each moved by what is left of its moves.
func (v viewed) stood(step int, taken Taken) (list []solid.Mesh) {
	vec := func(a [3]float64) geom.Vec3 { return geom.Vec3{X: a[0], Y: a[1], Z: a[2]} }
	s := v.Steps[step]
	for _, p := range v.Pieces {
		if len(p.Moves) > 0 && int(p.Moves[0][0]) < s.From {
			continue
		}
		at := geom.Placement{Origin: vec(p.Origin), X: vec(p.X), Y: vec(p.Y)}
		for _, m := range p.Moves {
			at.Origin = at.Origin.Add(vec([3]float64(m[1:])).Scale(min(1, max(0, s.Open-m[0]))))
		}
		list = append(list, taken.meshes[p.Part].Place(at, taken.grid))
	}
	return list
}

// TestFramesAreThoseOfTheViewer: for every box of the samples the viewer has the steps of the packet, word for word;
// where the packet has a picture, the pieces that it draws stand where the viewer has them; and glue and clamps are on
// in the same steps.
func TestFramesAreThoseOfTheViewer(t *testing.T) {
	m := maker{Book: &paper.Book{Size: paper.A4}}
	eachTaken(t, func(name string, taken Taken) {
		v, printed := viewedOf(t, taken), m.steps(taken)
		steps := Steps(batch.Batch{}, taken.drawer, taken.box)
		if len(v.Steps) != len(printed) {
			t.Fatalf("%s: %d steps in the viewer, %d in the packet", name, len(v.Steps), len(printed))
		}
		pictures, glued, clamped := 0, 0, 0
		for i, p := range printed {
			if v.Steps[i].Text != p.Words {
				t.Errorf("%s: step %d is %q in the viewer, %q in the packet", name, i+1, v.Steps[i].Text, p.Words)
			}
			if len(v.Steps[i].Glue) != len(steps[i].Glue) || len(v.Steps[i].Clamps) != len(steps[i].Clamps) {
				t.Errorf("%s: step %d has other glue or clamps in the viewer", name, i+1)
			}
			glued, clamped = glued+min(1, len(steps[i].Glue)), clamped+min(1, len(steps[i].Clamps))
			if p.Picture.Width == 0 {
				continue
			}
			pictures++
			_, _, drawn := taken.standing(steps[i].Frame)
			if shown := v.stood(i, taken); !slices.EqualFunc(drawn, shown, sameSolid) {
				t.Errorf("%s: step %d: %d pieces stand in the packet, %d in the viewer, or in other places", name, i+1,
					len(drawn), len(shown))
			}
		}
		if pictures != len(taken.box.Opening) || glued != 2 || clamped != 3 {
			t.Errorf("%s: %d pictures, glue in %d steps, clamps in %d", name, pictures, glued, clamped)
		}
	})
}

// sameSolid reports whether two solids stand in the same place, to what the viewer rounds to.
func sameSolid(a, b solid.Mesh) bool {
	return slices.EqualFunc(a.Vertices, b.Vertices, func(p, q geom.Vec3) bool { return p.Sub(q).Norm() < 0.01 })
}
