package batch_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// readAs says as which reading adjust takes a row of a setup sheet, if it does: what it calls
// depth is that of the corner where it cuts one as high as the grooves.
func readAs(k fit.ReadingKind, d batch.Drawer, set gauge.Limits) (testcut.Kind, bool) {
	if d.Spec.Joint == joinery.DadoRabbet {
		as, takes := map[fit.ReadingKind]testcut.Kind{fit.DadoWidth: testcut.Slot, fit.DadoPlace: testcut.Edge,
			fit.DadoDepth: testcut.Depth, fit.TongueThick: testcut.Tongue, fit.RabbetDeep: testcut.RabbetDepth,
			fit.TongueLong: testcut.TongueLength}[k]
		return as, takes
	}
	switch k {
	case fit.GrooveWidth:
		return testcut.Slot, true
	case fit.GroovePlace:
		return testcut.Edge, true
	case fit.SideRabbet:
		return testcut.Depth, true
	case fit.GrooveDepth:
		return testcut.Depth, !slices.ContainsFunc(set.Rows,
			func(r gauge.Row) bool { return r.Kind == fit.SideRabbet || r.Kind == fit.UnderSide })
	}
	return "", false
}

// TestAdviceKeepsToSetupSheet: of readings that the setup sheet calls right, adjust calls none
// bad, finds no contradiction among them and moves nothing; of readings far beyond the sheet's
// limits it does.
func TestAdviceKeepsToSetupSheet(t *testing.T) {
	right, wrong, slots := 0, 0, 0
	for seed := range geomtest.Cases(60, 2000) {
		j, problems := job.Read("job.yaml", strings.NewReader(jobtest.Seeded(uint64(seed), jobtest.Want{}).Text))
		if problems.Failed() {
			continue
		}
		b, found := batch.Make(t.Context(), j)
		if slices.ContainsFunc(found, func(p batch.Problem) bool { return p.IsError() }) {
			continue
		}
		r := rand.New(rand.NewPCG(uint64(seed), 5))
		d, set := b.Drawers[0], b.LimitsFor(0)
		c := testcut.New(d.Drawer, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide, set)
		for try := range 8 {
			list := within(r, try, c, d, set)
			if len(list) == 0 {
				continue
			}
			if complaint := bad(c.Advise(list)); complaint != "" {
				t.Errorf("seed %d, %s: %v: %s", seed, d.Spec.Joint, list, complaint)
			}
			right++
			for i := range list {
				list[i].Value += 1.5
			}
			if bad(c.Advise(list)) != "" {
				wrong++
			}
		}
		slots += slotBeyond(t, c, within(r, 1, c, d, set), within(r, 2, c, d, set))
	}
	if wrong < right/2 {
		t.Errorf("of %d test cuts that are off by 1.5 mm %d are called bad", right, wrong)
	}
	if slots < 10 {
		t.Errorf("%d slots are beyond their limits", slots)
	}
}

// slotBeyond holds adjust to the setup sheet for slots narrower and wider than it calls right, all else as meant, and
// counts them: what goes well with the tongue may be too loose for the bottom.
func slotBeyond(t *testing.T, c testcut.Model, least, most []testcut.Reading) (n int) {
	t.Helper()
	for side, list := range [][]testcut.Reading{least, most} {
		i := slices.IndexFunc(list, func(r testcut.Reading) bool { return r.Kind == testcut.Slot })
		if i < 0 {
			continue
		}
		n++
		slot := list[i]
		slot.Value += []float64{-0.1, 0.1}[side]
		if a := c.Advise([]testcut.Reading{slot}); a.AllRight || !a.Residuals[0].Rejected && !a.CutterOff() {
			t.Errorf("%s: a slot of %g is called right", c.Joint(), slot.Value)
		}
	}
	return n
}

// within are readings that a setup sheet calls right: its targets, its limits, any between, all
// of them or one.
func within(r *rand.Rand, try int, c testcut.Model, d batch.Drawer, set gauge.Limits) (list []testcut.Reading) {
	nearest := make(map[testcut.Kind]float64)
	for _, row := range set.Rows {
		k, takes := readAs(row.Kind, d, set)
		meant, _ := c.Plausible(testcut.Reading{Kind: k})
		off := math.Abs(row.Target - meant)
		if near, twice := nearest[k]; !takes || !slices.Contains(c.ReadingKinds(), k) || twice && near <= off {
			continue
		}
		nearest[k] = off
		list = slices.DeleteFunc(list, func(r testcut.Reading) bool { return r.Kind == k })
		at := []float64{row.Target, row.Min, row.Max, row.Min + float64(r.Float64()*(row.Max-row.Min))}[min(try, 3)]
		list = append(list, testcut.Reading{Kind: k, Value: at, Name: string(k)})
	}
	if try > 4 && len(list) > 1 {
		return list[r.IntN(len(list)):][:1]
	}
	return list
}

// bad is what advice complains of.
func bad(a testcut.Advice) string {
	if len(a.Conflicts) > 0 {
		return "readings contradict each other"
	}
	for _, q := range a.AsItIs {
		if q.Verdict != q.Verdicts.Within && !q.EitherWay() {
			return q.Name + ": " + string(q.Verdict)
		}
	}
	for _, m := range a.Moves {
		if m.Action == testcut.Make || m.Action == testcut.Try || m.Better {
			return string(m.Setting) + ": " + string(m.Action)
		}
	}
	if a.CutterOff() || a.NoSetting != nil {
		return "another cutter"
	}
	return ""
}
