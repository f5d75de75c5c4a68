package prove_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// measured is the job of one box with other readings of its boards.
func measured(birch, ply, more string) string {
	text := jobOf(oneBit, `dxf: {files: "{part}"}`+"\n"+more)
	return strings.NewReplacer("{thickness: 12.2}", "{thickness: "+birch+"}", "{thickness: 5.9}",
		"{thickness: "+ply+"}").Replace(text)
}

func ranged(t *testing.T, what string, got record.Range, mean, least, most float64) {
	t.Helper()
	same(t, what+" at the mean", got.Mean.MM(), mean)
	same(t, what+" at the least", got.Min.MM(), least)
	same(t, what+" at the most", got.Max.MM(), most)
}

// TestReadings: the ranges are those of the extremes of all readings together.
func TestReadings(t *testing.T) {
	p := build(t, measured("[12.1, 12.2, 12.3]", "[5.85, 5.95]", "")).proof(t, prove.Options{})
	if p.Verdict != record.Goes || len(p.FailsWith) != 0 {
		t.Errorf("%s, %+v", p.Verdict, p.FailsWith)
	}
	for _, c := range p.Corners {
		ranged(t, "play", c.Clearance, 0.2, 0.1, 0.3) // cut down from the outside face
		ranged(t, "recess", c.Recess, 0, 0, 0)
		ranged(t, "shoulder gap", c.ShoulderGap, 0, 0, 0)
	}
	ranged(t, "bottom clearance", p.Bottom.Clearance, 0.2, 0.15, 0.25)
	ranged(t, "width", p.Width, 460, 459.8, 460.2)
	ranged(t, "depth", p.Depth, 500, 500, 500)
	ranged(t, "diagonal", p.Diagonal, math.Hypot(460, 500), math.Hypot(459.8, 500), math.Hypot(460.2, 500))
	ranged(t, "clearance across", p.Bottom.BottomClearance[0], 2, 2, 2)
	// Two inside faces; where they are further out, it is the dados' outer walls.
	ranged(t, "clearance along", p.Bottom.BottomClearance[1], 2, 1.8, 2)
	ranged(t, "hold", p.Bottom.Engagement, 5.1, 5, 5.1) // the least of the four
}

// TestNotWithEveryBoard: a box that goes together with most boards, and with which
// it does not.
func TestNotWithEveryBoard(t *testing.T) {
	for name, c := range map[string]struct {
		birch, ply string
		want       []record.Reading
	}{
		"thick boards": {"[11.9, 12.5]", "5.9", []record.Reading{{Stock: "birch", Thickness: 12.5}}}, // 0.2 - 0.3
		"thick bottom": {"12.2", "[5.6, 6.2]", []record.Reading{{Stock: "ply", Thickness: 6.2}}},
	} {
		p := build(t, measured(c.birch, c.ply, "")).proof(t, prove.Options{})
		if p.Verdict != record.GoesSome || len(p.Faults) != 0 || !p.Cuttable() || !slices.Equal(p.FailsWith, c.want) {
			t.Errorf("%s: %s, %+v, fails with %+v", name, p.Verdict, p.Faults, p.FailsWith)
		}
		// A board of the mean takes the others' place.
		mean := prove.Options{Thickness: map[string]float64{"birch": 12.2, "ply": 5.9}}
		if p := build(t, measured(c.birch, c.ply, "")).proof(t, mean); p.Verdict != record.Goes {
			t.Errorf("%s, at the mean: %s", name, p.Verdict)
		}
	}
}

// TestDoubleRabbetReadings: with rabbets all round nothing is captured; what boards
// differ by comes out before the sides' ends and at their outside faces, in front
// and behind alike.
func TestDoubleRabbetReadings(t *testing.T) {
	p := build(t, measured("[12.0, 12.4]", "5.9", "joinery: {faces: one}")).proof(t, prove.Options{})
	if p.Verdict != record.Goes {
		t.Errorf("%s, %+v, %q", p.Verdict, p.Faults, p.Remarks)
	}
	ranged(t, "width", p.Width, 460, 460, 460.4) // the front is 460 long
	ranged(t, "depth", p.Depth, 500, 499.6, 500.4)
	for _, c := range p.Corners {
		ranged(t, "lap", c.Lap, 0, -0.2, 0.2)
		ranged(t, "recess", c.Recess, -6.1, -6.3, -5.9) // a lip of T - 6.1
		if c.Interlocked || !c.Laps || !c.Fits {
			t.Errorf("%+v", c)
		}
	}
	ranged(t, "clearance along", p.Bottom.BottomClearance[1], 2, 2, 2)
}

// TestSaw: a saw's rabbets leave every board the same tongue, and what boards are
// thicker stands before the sides' ends and outside the box; also where it is the
// legend alone that tells the depths.
func TestSaw(t *testing.T) {
	for _, more := range []string{"", "dxf: {layers: \"{operation}_{face}\"}\n"} {
		f := build(t, more+sample(t, "bench-drawers.yaml"))
		const by = 0.1
		thick := map[string]float64{}
		for _, s := range f.report(t).Stocks {
			thick[s.Name] = s.Thickness.MM()
		}
		before := f.proofs(t, prove.Options{Thickness: map[string]float64{"birch": thick["birch"]}})
		after := f.proofs(t, prove.Options{Thickness: map[string]float64{"birch": thick["birch"] + by}})
		for i := range before {
			a, b := before[i], after[i]
			if len(b.Corners) != 4 || !b.Cuttable() {
				t.Fatalf("%s: %+v", b.Verdict, b)
			}
			for j := range a.Corners {
				same(t, "play", (b.Corners[j].Clearance.Mean - a.Corners[j].Clearance.Mean).MM(), 0)
				same(t, "recess", (b.Corners[j].Recess.Mean - a.Corners[j].Recess.Mean).MM(), -by)
			}
			same(t, "width", (b.Width.Mean - a.Width.Mean).MM(), 2*by)
		}
	}
}

// TestCutAway: a box whose pieces go together because nothing is left of them does
// not go together.
func TestCutAway(t *testing.T) {
	for _, deep := range []float64{5.7, 6.2, 100} { // 6.1 deep in 12.2: 0.4 are left, or nothing
		if p := build(t, harmed("R2000", "")).proof(t, prove.Options{Depth: deep}); p.Verdict != record.GoesNot {
			t.Errorf("%g deeper: %s", deep, p.Verdict)
		}
	}
}
