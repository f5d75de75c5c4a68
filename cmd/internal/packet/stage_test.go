package packet

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/paper"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/preview/scene"
)

// marks counts what is to have a balloon in a picture and is seen, by what is in it.
func marks(s paper.Scenery) map[string]int {
	list := make(map[string]int)
	for _, a := range s.Areas {
		if _, seen := picture.Middle(a.Loops); seen && a.Mark != "" {
			list[a.Mark]++
		}
	}
	return list
}

// TestStagesAreTheOpeningBackward: in every box of the samples each piece comes on in one stage, that of the step in
// which the page of boxes takes it off first, the last step first; glue is marked where walls come on and nowhere else;
// and every stage has its number on paper, in a picture that leaves nothing out.
func TestStagesAreTheOpeningBackward(t *testing.T) {
	eachTaken(t, func(name string, taken Taken) {
		came := make(map[int]bool)
		stages := taken.box.Stages(taken.drawer.Drawer)
		if len(stages) != len(taken.box.Opening)-1 {
			t.Errorf("%s: %d stages for %d steps of opening", name, len(stages), len(taken.box.Opening))
		}
		for n, s := range stages {
			if s.From != len(stages)-1-n {
				t.Errorf("%s: stage %d undoes step %d", name, n+1, s.From+1)
			}
			for _, i := range s.Pieces {
				p := taken.box.Pieces[i]
				if came[i] {
					t.Errorf("%s: the %s comes twice", name, p.Name)
				}
				came[i] = true
				if n > 0 && p.Moves[0].Step != s.From {
					t.Errorf("%s: the %s comes on in step %d, comes off in %d", name, p.Name, s.From+1,
						p.Moves[0].Step+1)
				}
			}
			scenery := taken.picture(s)
			if glue := marks(scenery)["G"]; (glue > 0) != (s.First || s.WallsClosed) {
				t.Errorf("%s: stage %d, %s, has %d marks of glue", name, n+1, s.Role, glue)
			}
			drawn := scenery.Draw((&paper.Book{Size: paper.A4}).StepRoom())
			for mark, n := range marks(scenery) {
				if got := numbersIn(drawn)[mark]; got != n {
					t.Errorf("%s: %d balloons %q of %d", name, got, mark, n)
				}
			}
		}
		if len(came) != len(taken.box.Pieces) {
			t.Errorf("%s: %d of %d pieces come on", name, len(came), len(taken.box.Pieces))
		}
	})
}

// TestClampsPullWhereTheJointNeedsIt: tongues in dados are clamped from side to side alone, fingers both ways: two
// clamps of five pieces, or four.
func TestClampsPullWhereTheJointNeedsIt(t *testing.T) {
	for joint, want := range map[joinery.Joint]int{joinery.DadoRabbet: 2 * 5, joinery.BoxJoint: 4 * 5} {
		text := strings.ReplaceAll(string(many(1)), "dado-rabbet", string(joint))
		taken, err := take(nil, read(t, "", []byte(text)).Drawers[0])
		if err != nil {
			t.Fatal(err)
		}
		steps := Steps(batch.Batch{}, taken.drawer, taken.box)
		closed := slices.IndexFunc(steps, func(s scene.Step) bool { return len(s.Clamps) > 0 })
		if got := len(steps[closed].Clamps); got != want {
			t.Errorf("%s has %d pieces of clamps, should have %d", joint, got, want)
		}
		if n := len(taken.clamped(steps[closed]).Paths); n < 2 {
			t.Errorf("%s: of the diagonals %d lines are seen", joint, n)
		}
	}
}
