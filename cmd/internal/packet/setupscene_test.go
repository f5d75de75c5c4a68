package packet

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
	"drawerwright/preview/viewer"
)

// viewedSetting is what a viewer is given of a setting.
type viewedSetting struct {
	Name, Heading   string
	Figures         [][2]string
	Notes, Cautions []string
	Cutter, Height  float64
	Cuts            []viewedCut
}

type viewedCut struct {
	Number          int
	Text, Parts     string
	Notes, Cautions []string
	Feeds           []viewedFeed
}

type viewedFeed struct {
	Parts         []int
	Edge, Down    string
	Pass, Passes  int
	Fence         float64
	Before, After int
	Origin, X, Y  [3]float64
	By, Lead      float64
	Rows          []float64
	Machine       []struct {
		Mesh int
		Role string
		Fed  bool
	}
}

// thick takes rabbets on end in two passes of its cutter, uneven the second one only for its thickest boards, and
// stopped has grooves between stops.
const (
	uneven = "units: mm\nstock:\n  birch: {thickness: [12.21, 12.16, 12.24], grain: length}\n" +
		"  front: {thickness: [12.62, 12.56, 12.68], grain: length}\n  board: {thickness: 5.9}\n" +
		"cutter: {kind: saw, width: 6.35}\ndrawers:\n  - {name: tight, outside: 460 x 140 x 500, sides: birch, " +
		"box-front: front, bottom: board}\n"
	thick = "units: mm\nstock:\n  ply: {thickness: 18, grain: length}\n  board: {thickness: 5.9, grain: none}\n" +
		"cutter: {kind: saw, width: 6.35}\njoinery: {fence-distance: 6.1, cutter-height: 7}\ndrawers:\n" +
		"  - {name: box, outside: 400 x 160 x 350, sides: ply, bottom: board, joint: dado-rabbet}\n"
	stopped = "units: mm\nstock:\n  ply: {thickness: 12.2, grain: length}\n" +
		"  board: {thickness: 5.9, grain: none}\ncutter: {kind: router-table, width: 6.35}\n" +
		"joinery: {groove-ends: stopped}\ndrawers:\n  - {name: box, outside: 400 x 160 x 350, sides: ply, " +
		"bottom: board, joint: dado-rabbet, back-joint: dado, back-setback: 15}\n"
)

// fourEdges is the seed of a job with a bottom that takes rabbets on all four edges in two passes each.
const fourEdges = 72

// eachAtMachines calls for every sample, as it is and with its saw changed for a router table; for jobs with passes and
// stops of all kinds; and for random jobs that can be built.
func eachAtMachines(t *testing.T, do func(name string, b batch.Batch)) {
	t.Helper()
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(file)
		do(name, read(t, file, text))
		if table := strings.Replace(string(text), "kind: saw", "kind: router-table", 1); table != string(text) {
			b := read(t, file, []byte(table))
			refused := func(d batch.Drawer) bool { return len(d.Outcome.Measures) == 0 }
			if !slices.ContainsFunc(b.Drawers, refused) {
				do(name+" at a router table", b)
			}
		}
	}
	do("thick", read(t, "thick.yaml", []byte(thick)))
	do("uneven", read(t, "uneven.yaml", []byte(uneven)))
	do("stopped", read(t, "stopped.yaml", []byte(stopped)))
	n := uint64(geomtest.Cases(40, 2000))
	for i := range n + 1 {
		seed := i
		if i == n {
			seed = fourEdges
		}
		machine := []string{"saw", "router-table"}[seed%2]
		text := jobtest.Seeded(seed, jobtest.Want{Machine: machine}).Text
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			continue
		}
		b, found := batch.Make(t.Context(), j)
		if !slices.ContainsFunc(found, batch.Problem.IsError) {
			do(fmt.Sprintf("job %d", seed), b)
		}
	}
}

// wholeScene is the scene of all drawers of a batch, with its settings, and what a viewer is given of these.
func wholeScene(t *testing.T, b batch.Batch) (scene.Scene, []viewedSetting) {
	t.Helper()
	var scenes []scene.Scene
	for _, d := range b.Drawers {
		source := scene.Drawer{Drawer: d.Drawer}
		for _, p := range d.Parts {
			source.Names, source.Numbers = append(source.Names, p.Name), append(source.Numbers, p.Number)
			source.Quantities = append(source.Quantities, p.Quantity)
		}
		s, err := scene.Make(source, geom.FineGrid(4000))
		if err != nil {
			t.Fatal(err)
		}
		scenes = append(scenes, s)
	}
	s := scene.Join("all", b.Units, scenes, nil)
	var err error
	if s.Settings, err = Settings(b, &s); err != nil {
		t.Fatal(err)
	}
	text, err := viewer.Data(s)
	if err != nil {
		t.Fatal(err)
	}
	var data struct{ Setups []viewedSetting }
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	return s, data.Setups
}

// TestSettingsAreThoseOfTheCards: the viewer has the settings of every machine with a fence, and of no other, in the
// order of their cards, with the same numbers, figures, words and cautions; and every part of a cut is fed at it, with
// every edge of its own.
func TestSettingsAreThoseOfTheCards(t *testing.T) {
	machines, passes := make(map[string]int), 0
	eachAtMachines(t, func(name string, b batch.Batch) {
		s, got := wholeScene(t, b)
		work := record.WorkOf(b)
		for i, m := range present.SetupsOf(work).Machines {
			if !joinery.CutterKind(m.Machine).Fenced() {
				continue
			}
			number := 0
			for k, want := range work.Machines[i].Plan.Settings {
				machines[m.Machine]++
				if len(got) == 0 {
					t.Fatalf("%s: setting %d of the %s is missing", name, k+1, m.Machine)
				}
				v, of := got[0], fmt.Sprintf("%s, %s", name, got[0].Name)
				got = got[1:]
				if !strings.HasSuffix(v.Name, fmt.Sprintf("setting %d", k+1)) {
					t.Errorf("%s: it is the setting %d", of, k+1)
				}
				setAs(t, of, v, m, k, want, b.Units)
				for j, c := range v.Cuts {
					number++
					card := m.Settings[k].Cuts[j]
					if c.Number != number || c.Text != card.How(b.Units)+"." || c.Parts != card.PartsText ||
						!slices.Equal(c.Cautions, textsOf(card.Cautions)) {
						t.Errorf("%s: cut %d: %q, %q, %q", of, c.Number, c.Text, c.Parts, c.Cautions)
					}
					passes = max(passes, len(card.Passes))
					for pass, face := range want.Cuts[j].Faces() {
						fedAs(t, fmt.Sprintf("%s, cut %d", of, number), s, c, want.Cuts[j], pass+1, face)
					}
				}
			}
		}
		if len(got) > 0 {
			t.Errorf("%s: %d settings more than there are cards", name, len(got))
		}
	})
	saws, tables := machines[string(joinery.Saw)], machines[string(joinery.RouterTable)]
	if saws < 6 || tables < 6 || machines[string(joinery.Hand)] > 0 || passes < 2 {
		t.Errorf("that tries too little: %v, %d passes", machines, passes)
	}
}

// setAs holds what is set, and what is said of it, against the card of a setting.
func setAs(t *testing.T, name string, v viewedSetting, m present.Machine, at int, want setup.Setting, u geom.Unit) {
	t.Helper()
	card := m.Settings[at]
	figures := make(map[string]string)
	for _, f := range v.Figures {
		figures[f[0]] = f[1]
	}
	if math.Abs(v.Cutter-want.Cutter)+math.Abs(v.Height-want.Height) > 1e-3 ||
		figures["height"] != words.Length(want.Height, u) ||
		figures[present.CutterName(m.Machine)] != words.Length(want.Cutter, u) ||
		want.Fence > 0 && figures["fence"] != words.Length(want.Fence, u) {
		t.Errorf("%s: %v, drawn %g, %g; its card has fence %g, height %g, cutter %g", name, v.Figures, v.Height,
			v.Cutter, want.Fence, want.Height, want.Cutter)
	}
	if !strings.EqualFold(v.Heading, card.Heading(at+1, m.Machine, u)+".") ||
		!slices.Equal(v.Cautions, textsOf(card.Cautions)) || !slices.Contains(v.Notes, withoutGuards) {
		t.Errorf("%s: it says %q %q %q", name, v.Heading, v.Cautions, v.Notes)
	}
	if len(v.Cuts) != len(want.Cuts) {
		t.Fatalf("%s: %d cuts, not %d", name, len(v.Cuts), len(want.Cuts))
	}
}

// fedAs holds the feeds of a pass against the boards of its cut.
func fedAs(t *testing.T, name string, s scene.Scene, c viewedCut, want setup.Cut, pass int, face float64) {
	t.Helper()
	fed := make(map[string]int)
	for _, f := range c.Feeds {
		if f.Pass != pass {
			continue
		}
		if f.Rows == nil && math.Abs(f.Fence-face) > 1e-3 || f.Passes != len(want.Faces()) {
			t.Errorf("%s: fence at %g, not %g; %d passes", name, f.Fence, face, f.Passes)
		}
		for _, p := range f.Parts {
			fed[s.Parts[p].Name]++
		}
	}
	for _, b := range want.Boards {
		if fed[b.Name] != len(b.Turns) {
			t.Errorf("%s: %s is fed %d times, not with %d edges", name, b.Name, fed[b.Name], len(b.Turns))
		}
		delete(fed, b.Name)
	}
	if len(fed) > 0 {
		t.Errorf("%s: fed without being cut: %v", name, fed)
	}
}

// boundsOf is the block about a solid.
func boundsOf(m solid.Mesh) (low, high geom.Vec3) {
	low, high = m.Vertices[0], m.Vertices[0]
	for _, v := range m.Vertices {
		low = geom.Vec3{X: min(low.X, v.X), Y: min(low.Y, v.Y), Z: min(low.Z, v.Z)}
		high = geom.Vec3{X: max(high.X, v.X), Y: max(high.Y, v.Y), Z: max(high.Z, v.Z)}
	}
	return low, high
}

// nearSet is how far places of a scene may be from each other and still be one: steps that differ by less than 0.01 mm
// are one setting, and solids lie on a grid.
const nearSet = 0.025

func same(a, b float64) bool { return math.Abs(a-b) < nearSet }

// TestCutsStandWhereTheyAreSet: in every feed the part lies on the table and against the fence, on the operator's
// side of it; cutter and fence stand where they are set; the part is fed all the way over the cutter, or between its
// stops; it loses the wood that the cutter goes through, and nothing else. After the last feed each part is what
// joinery has drawn, but for what is sawn or bored apart.
func TestCutsStandWhereTheyAreSet(t *testing.T) {
	feeds, rows, stops := 0, 0, 0
	eachAtMachines(t, func(name string, b batch.Batch) {
		s, settings := wholeScene(t, b)
		last := make(map[int]int)
		for _, v := range settings {
			for _, c := range v.Cuts {
				for _, f := range c.Feeds {
					feeds++
					at := fmt.Sprintf("%s, %s, cut %d, %s, pass %d", name, v.Name, c.Number, f.Edge, f.Pass)
					if len(f.Rows) > 0 {
						rows++
					}
					if f.Lead > 0 {
						stops++
					}
					for _, p := range f.Parts {
						if before, known := last[p]; known && before != f.Before {
							t.Errorf("%s: %s is not as the cut before has left it", at, s.Parts[p].Name)
						}
						last[p] = f.After
						for _, wrong := range fedWrong(s, v, f, s.Parts[p].Panel) {
							t.Errorf("%s: %s: %s", at, s.Parts[p].Name, wrong)
						}
					}
				}
			}
		}
		apart := make(map[string]bool)
		for _, m := range record.Ungauged(b).Machines {
			for _, c := range slices.Concat(m.Plan.Separate, m.Plan.Refused) {
				for _, p := range c.Boards {
					apart[p.Name] = true
				}
			}
		}
		for p, mesh := range last {
			want := geomtest.Volume(s.Parts[p].Panel)
			if got := s.Meshes[mesh].Mesh().Volume(); !apart[s.Parts[p].Name] && math.Abs(got-want) > 1e-3*want {
				t.Errorf("%s: %s is %g mm3 in the end, as drawn %g", name, s.Parts[p].Name, got, want)
			}
		}
	})
	if feeds < 100 || rows == 0 || stops == 0 {
		t.Errorf("%d feeds, %d of fingers, %d to a stop: that tries too little", feeds, rows, stops)
	}
}

// fedWrong is what is wrong with a feed of a panel.
func fedWrong(s scene.Scene, v viewedSetting, f viewedFeed, p geom.Panel) (wrong []string) {
	say := func(format string, args ...any) { wrong = append(wrong, fmt.Sprintf(format, args...)) }
	vec := func(a [3]float64) geom.Vec3 { return geom.Vec3{X: a[0], Y: a[1], Z: a[2]} }
	from := geom.Placement{Origin: vec(f.Origin), X: vec(f.X), Y: vec(f.Y)}
	place := func(m solid.Mesh) (low, high geom.Vec3) { return boundsOf(m.Place(from, geom.FineGrid(4000))) }
	low, high := place(s.Meshes[f.Before].Mesh())
	if !same(low.Z, 0) || !same(high.X, f.Fence) {
		say("it lies from %v to %v, the fence at %g", low, high, f.Fence)
	}
	for _, m := range f.Machine {
		from, to := boundsOf(s.Meshes[m.Mesh].Mesh())
		switch {
		case m.Role == string(scene.CutterRole):
			if !same(from.X, -v.Cutter) || !same(to.X, 0) || !same(from.Z, 0) || !same(to.Z, v.Height) {
				say("the cutter stands from %v to %v", from, to)
			}
			// Before and after it is clear of the cutter, unless it is lowered on to it and lifted off.
			if f.Lead == 0 && high.Y > from.Y || f.Lead == 0 && low.Y+f.By < to.Y {
				say("it is fed from %g by %g over a cutter from %g to %g", low.Y, f.By, from.Y, to.Y)
			}
		case m.Role == string(scene.FenceRole) && !m.Fed && !same(from.X, f.Fence):
			say("the fence stands at %g", from.X)
		case m.Role == string(scene.TableRole) && (!same(to.Z, 0) || to.X < f.Fence):
			say("the table is from %v to %v", from, to)
		}
	}
	return append(wrong, lostWrong(s, f, p, from)...)
}

// lostWrong is where a panel does not lose what the cutter's block goes through on the way of the part, or loses more:
// at places in it and about it.
func lostWrong(s scene.Scene, f viewedFeed, p geom.Panel, from geom.Placement) (wrong []string) {
	low, high := setup.Extent(p, from)
	var begin, end geom.Vec3 // of the cutter
	for _, m := range f.Machine {
		if m.Role == string(scene.CutterRole) {
			begin, end = boundsOf(s.Meshes[m.Mesh].Mesh())
		}
	}
	rows := f.Rows
	if rows == nil {
		rows, end.X = []float64{0}, min(0, f.Fence)
	}
	// What goes over the cutter, where the part begins: with stops it ends in the round of a bit.
	first, past := begin.Y-f.By, end.Y
	round := 0.0
	if f.Lead > 0 {
		round = end.Y
	}
	r, tried := rand.New(rand.NewPCG(5, uint64(f.After))), 0
	for range 400 {
		row := rows[r.IntN(len(rows))]
		between := func(a, b float64) float64 { return a + r.Float64()*(b-a) }
		q := geom.Vec3{X: between(begin.X-4, end.X+4) - row, Y: between(low.Y, high.Y), Z: between(0, min(high.Z, end.Z+4))}
		inside, clear := false, true
		for _, row := range rows {
			x := q.X + row
			for _, d := range []float64{x - begin.X, x - end.X, q.Z - end.Z, q.Y - first, q.Y - past} {
				clear = clear && math.Abs(d) > nearSet
			}
			inside = inside || x > begin.X && x < end.X && q.Z < end.Z && q.Y > first && q.Y < past
		}
		if round > 0 && (math.Abs(q.Y-first) < round || math.Abs(q.Y-past) < round) {
			continue
		}
		d := q.Sub(from.Origin)
		at := geom.Vec3{X: d.Dot(from.X), Y: d.Dot(from.Y), Z: d.Dot(from.Normal())}
		had, sure := woodAt(s.Meshes[f.Before].Mesh(), at)
		has, sureToo := woodAt(s.Meshes[f.After].Mesh(), at)
		if !clear || !sure || !sureToo {
			continue
		}
		if had {
			tried++
		}
		if has != (had && !inside) {
			return append(wrong, fmt.Sprintf("at %v there is wood before: %t, after: %t; the cutter goes there: %t",
				q, had, has, inside))
		}
	}
	if tried < 20 {
		return append(wrong, fmt.Sprintf("only %d places of its wood were tried", tried))
	}
	return wrong
}

// woodAt reports whether a place is in a solid, by the faces above it; not sure too near an edge of one.
func woodAt(m solid.Mesh, at geom.Vec3) (in, sure bool) {
	sure = true
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		side := func(p, q geom.Vec3) float64 { return (q.X-p.X)*(at.Y-p.Y) - (q.Y-p.Y)*(at.X-p.X) }
		u, v, w := side(a, b), side(b, c), side(c, a)
		area := u + v + w
		if math.Abs(area) < 1e-9 || !(u > 0 == (v > 0) && v > 0 == (w > 0)) {
			continue // a wall, or beside it
		}
		z := (u*c.Z + v*a.Z + w*b.Z) / area
		if math.Abs(z-at.Z) < nearSet {
			sure = false
		}
		if z > at.Z {
			in = !in
		}
	}
	return in, sure
}
