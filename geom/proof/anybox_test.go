package proof

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// settled is what joinery's own verdicts leave open of a size, in millimeters.
const settled = 1e-6

// nominal are the values of a drawer's checks, by code and part.
func nominal(d joinery.Drawer) map[string]float64 {
	all := map[string]float64{}
	for _, c := range d.Fit {
		all[string(c.Code)+" "+string(c.Part)] = c.Nominal
	}
	return all
}

// TestAnyBox: what joinery lets through goes together, with the plays and sizes
// that joinery said; and by cells no two boards are in each other.
func TestAnyBox(t *testing.T) {
	seen, lipped := map[joinery.Joint]int{}, 0
	rapid.Check(t, func(t *rapid.T) {
		d, ok := anyDrawer(t)
		if !ok {
			return
		}
		seen[d.Spec.Joint]++
		list := solidsOf(d)
		for i := range list {
			for j := range i {
				if v := list[i].shared(list[j]); v > MaxOverlap {
					t.Fatalf("by cells, %d and %d share %g mm3", j, i, v)
				}
			}
		}
		b := assemble(piecesOf(d))
		if !b.GoesTogether() {
			t.Fatalf("it does not go together: corners %+v, walls %+v, clearance %g %g, overlaps %+v",
				b.Corners, b.BottomJoints, b.ClearanceX, b.ClearanceY, b.Overlaps)
		}
		fit := nominal(d)
		is := func(what string, got float64, code, part string) {
			t.Helper()
			want, told := fit[code+" "+part]
			if part == "back" && !told { // of one stock with the front it is reported once
				want, told = fit[code+" box-front"]
			}
			if !told || !near(got, want, settled) {
				t.Fatalf("%s is %.9f; joinery said %.9f (%t)", what, got, want, told)
			}
		}
		for i, c := range b.Corners {
			part := []string{"box-front", "box-front", "back", "back"}[i]
			if d.Spec.Joint == joinery.DadoRabbet {
				is(c.End+" play", c.Clearance, "tongue-clearance", part)
				is(c.End+" recess", c.Recess, "recess", part)
			} else if d.Spec.Lip.Ends() && part == "box-front" {
				if lipped++; c.Laps || c.Lap != 0 {
					t.Fatalf("a lip that covers the side is judged as a lap: %+v", c)
				}
			} else if d.Spec.CornerAt(joinery.Back) != joinery.Rabbet || part == "box-front" {
				is(c.End+" lap", c.Lap, "lap", part)
			} else {
				is(c.End+" recess", c.Recess, "recess", part)
			}
		}
		is("bottom clearance", b.GrooveClearance, "groove-clearance", "bottom")
		is("front width", b.WidthFront, "outside-width", "")
		is("back width", b.WidthBack, "outside-width", "")
		is("depth", b.Depth, "outside-depth", "")
		for what, got := range map[string][2]float64{"height": {b.Height, d.Spec.Height}, "clearance across": {b.ClearanceX, d.Spec.BottomClearance}, "clearance along": {b.ClearanceY, d.Spec.ClearanceDepth()}} {
			if !near(got[0], got[1], settled) {
				t.Fatalf("%s is %.9f, want %.9f", what, got[0], got[1])
			}
		}
		for _, w := range b.BottomJoints { // grooves are as deep as the cutter is high
			slack := d.Spec.BottomClearance
			if w.Name == "front" || w.Name == "back" {
				slack = d.Spec.ClearanceDepth()
			}
			if want := d.Setup.CutterHeight - slack/2; !near(w.Engagement, want, settled) {
				t.Fatalf("the bottom stands %.9f in the %s, want %.9f", w.Engagement, w.Name, want)
			}
		}
	})
	for _, j := range []joinery.Joint{joinery.DadoRabbet, joinery.DoubleRabbet, joinery.RabbetedFront} {
		if seen[j] > 0 && lipped > 0 {
			continue
		}
		t.Errorf("boxes that were not refused: %v, corners with lips %d", seen, lipped)
	}
}

// TestNarrowDado: a dado narrowed below its tongue does not take it, and the play
// says by how much.
func TestNarrowDado(t *testing.T) {
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		d, ok := anyDrawer(t)
		if !ok || d.Spec.Joint != joinery.DadoRabbet {
			return
		}
		seen++
		list := piecesOf(d)
		side, dado := rapid.IntRange(left, right).Draw(t, "side"), rapid.IntRange(leftFrontDado,
			leftBackDado).Draw(t, "dado")
		play := nominal(d)["tongue-clearance box-front"]
		by := rapid.Float64Range(0.01, 1).Draw(t, "by")
		share := rapid.Float64Range(0, 1).Draw(t, "of it at one side")
		recut(&list[side], dado, sideways((play+by)*share, -(play+by)*(1-share)))
		b := assemble(list)
		at := list[side].Board.Cuts[dado].Shape.Bounds()
		corner := side
		// A left side's x runs to the back, a right side's to the front.
		if (at.Min.X > list[side].Board.Outline.Bounds().Max.X/2) == (side == left) {
			corner += 2
		}
		if b.GoesTogether() || b.Corners[corner].GoesTogether || !near(b.Corners[corner].Clearance, -by, settled) {
			t.Fatalf("narrowed by %g more than its play: %+v", by, b.Corners[corner])
		}
	})
	if seen == 0 {
		t.Error("no box was built")
	}
}

// TestGoesAsByCells: whatever is done to dados and rabbets, a corner goes together
// where the cells say so. Each side is pulled off as far as this package does.
func TestGoesAsByCells(t *testing.T) {
	outcomes := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		d, ok := anyDrawer(t)
		if !ok {
			return
		}
		list := solidsOf(d)
		off := rapid.Float64Range(-0.4, 0.4)
		for _, i := range []int{left, right, front, back} {
			for k := range list[i].panel.Pockets {
				p := &list[i].panel.Pockets[k]
				if p.Kind == geom.Groove || !rapid.Bool().Draw(t, "cut otherwise") {
					continue
				}
				r := p.Outline.Bounds()
				from, to := r.Min.X, r.Max.X
				if from > 0 { // an end of the board stays one
					from += off.Draw(t, "from")
				}
				if to < list[i].panel.Length() {
					to += off.Draw(t, "to")
				}
				p.Outline = geom.Rectangle(from, r.Min.Y, to, r.Max.Y)
				p.Depth += off.Draw(t, "depth")
			}
		}
		var all []Piece
		for i, s := range list {
			all = append(all, s.piece([]string{"left", "right", "front", "back", "bottom"}[i]))
		}
		b := assemble(all)
		for i, end := range []int{front, back} {
			place := [][2]float64{{math.Inf(-1), math.Inf(1)}}
			for j, side := range []int{left, right} {
				pulled := list[side]
				pulled.stand.Origin.X += outOf(j) * pull
				place = meet(place, pulled.openings(list[end]))
			}
			for _, p := range place {
				if math.Abs(p[1]-p[0]) < doubtful { // of these nobody can tell
					return
				}
			}
			goes := held(place)
			if got := b.Corners[2*i].GoesTogether && b.Corners[2*i+1].GoesTogether; got != goes {
				t.Fatalf("the %s goes in: %t, by cells %t: %v, %+v", all[end].Name, got, goes, place,
					b.Corners[2*i:2*i+2])
			}
			outcomes[goes]++
		}
	})
	if outcomes[true] == 0 || outcomes[false] == 0 {
		t.Errorf("goes together or not: %v", outcomes)
	}
}

// doubtful is the width, in millimeters, up to which what is open and what is
// closed are not told apart: what counts as penetration in two joints at once.
const doubtful = 3 * penetration

// meet gives the stretches in both lists, and those that all but are.
func meet(a, b [][2]float64) [][2]float64 {
	var list [][2]float64
	for _, p := range a {
		for _, q := range b {
			if from, to := math.Max(p[0], q[0]), math.Min(p[1], q[1]); from <= to+doubtful {
				list = append(list, [2]float64{from, to})
			}
		}
	}
	return list
}

// held reports whether there is a place within half a board of where the end is
// meant to be: further off it is somewhere else altogether.
func held(place [][2]float64) bool {
	const far = 4.0 // mm; boards are 9 or more, cuts are off by 0.4
	for _, p := range place {
		if p[0] < far && p[1] > -far && p[1] > p[0] {
			return true
		}
	}
	return false
}
