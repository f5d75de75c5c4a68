package advice

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// spec is a box from a router, of boards that are within a tenth.
func spec(name string) joinery.Spec {
	board := func(name string, mean float64) joinery.Stock {
		return joinery.Stock{Name: name, Thickness: joinery.Thickness{Mean: mean, Min: mean - 0.05, Max: mean + 0.05}}
	}
	return joinery.Spec{Name: name, Width: 460, Height: 140, Depth: 500, Count: 2, Joint: joinery.DadoRabbet,
		Cutter: joinery.Cutter{Kind: joinery.Router, Width: 6}, GrooveEnds: joinery.GrooveStopped, BottomFit: joinery.BottomAuto,
		DadoClearance: 0.25, GrooveClearance: 0.2, BottomClearance: 2, Limits: joinery.DefaultLimits, Sides: board("birch", 12),
		Front: board("birch", 12), Back: board("birch", 12), Bottom: board("thin", 6)}
}

func boxOf(t *testing.T, known *Memory, s joinery.Spec) Box {
	t.Helper()
	d, problems, sound := joinery.LayOut(s)
	if !sound {
		t.Fatal(problems)
	}
	return known.Box(d, Shop{Boards: fit.MeasuredBoards(s), Accuracy: fit.AccuracyOf(s.Cutter.Kind)})
}

func measure(t *testing.T, b Box, code joinery.CheckCode) (int, fit.SimulatedMeasure) {
	t.Helper()
	for i, m := range b.Outcome.Measures {
		if m.Code == code {
			return i, m
		}
	}
	t.Fatalf("no measure %s", code)
	return 0, fit.SimulatedMeasure{}
}

// TestRetry: tongues with far too much play come right with the play that lies between the
// limits; where nothing is out there is nothing that gains.
func TestRetry(t *testing.T) {
	s := spec("loose")
	s.DadoClearance = 0.6
	b := boxOf(t, NewMemory(), s)
	i, m := measure(t, b, joinery.CheckTongueClearance)
	if !m.OutOfLimits() {
		t.Fatalf("a clearance of 0.6 is right: %+v", m)
	}
	r, ends, found := Retry([]Box{b}, 0, i)
	if !found || !ends || len(r.Changes) != 1 || r.Changes[0].Setting != joinery.SettingDadoClearance {
		t.Fatalf("%+v, ends %v, found %v", r, ends, found)
	}
	s.DadoClearance = r.Changes[0].Min
	after := boxOf(t, NewMemory(), s)
	if _, m := measure(t, after, joinery.CheckTongueClearance); m.OutOfLimits() {
		t.Errorf("with a clearance of %g: %+v", s.DadoClearance, m)
	}
	if r, _, found := Retry([]Box{after}, 0, i); found {
		t.Errorf("nothing is out, and it would change %+v", r)
	}
}

// TestNothingWorse: a change with which fewer boxes come out right does not hold, though no
// measure is out by its likely range.
func TestNothingWorse(t *testing.T) {
	b := boxOf(t, NewMemory(), spec("right"))
	tried := 0
	for play := 0.25; play < 0.4; play += 0.005 {
		o, holds := b.with(geom.Remedy{Changes: []geom.Change{{Setting: joinery.SettingDadoClearance, Min: play, Max: play}}})
		if o.Verdict == joinery.GoesTogether && o.Right.Fraction < b.Outcome.Right.Fraction {
			if tried++; holds {
				t.Errorf("with a clearance of %g %s holds, and before it was %s", play, o.Right, b.Outcome.Right)
			}
		}
	}
	if tried == 0 {
		t.Error("no clearance makes fewer boxes right without being out")
	}
}

// TestSawnBottom: the bottom of a saw that has one cutter gets a groove of its own, made to
// fit it.
func TestSawnBottom(t *testing.T) {
	s := spec("sawn")
	s.Cutter, s.GrooveEnds, s.Bottom.Thickness = joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, joinery.GrooveThrough, joinery.Thickness{Mean: 5.2, Min: 5.15, Max: 5.25}
	b := boxOf(t, NewMemory(), s)
	i, m := measure(t, b, joinery.CheckGrooveClearance)
	if !m.OutOfLimits() {
		t.Fatalf("1.15 of clearance is right: %+v", m)
	}
	r, _, found := Retry([]Box{b}, 0, i)
	if !found || !r.Writes(joinery.SettingGrooveCutter) {
		t.Errorf("%+v, found %v", r, found)
	}
}

// TestSettingOf: a saw's dados are as wide as its cutter, so that no play moves them; the
// fence moves the recess of a front by twice as much, for it sets dado and tongue.
func TestSettingOf(t *testing.T) {
	saw := spec("sawn")
	saw.Cutter, saw.GrooveEnds = joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, joinery.GrooveThrough
	for _, c := range []struct {
		spec   joinery.Spec
		code   joinery.CheckCode
		want   geom.Setting
		factor float64
	}{{spec("router"), joinery.CheckTongueClearance, joinery.SettingDadoClearance, 1}, {saw, joinery.CheckTongueClearance, "", 0},
		{saw, joinery.CheckRecess, joinery.SettingFenceDistance, 0.5}, {spec("router"), joinery.CheckRecess, joinery.SettingFenceDistance, 1},
		{saw, joinery.CheckGrooveClearance, "", 0}, {saw, joinery.CheckBottomClearance, joinery.SettingBottomClearance, 1}} {
		b := Box{Drawer: joinery.Drawer{Spec: c.spec}}
		m := fit.SimulatedMeasure{Simulated: new(fit.Simulated)}
		m.Code = c.code
		if f, _, factor := b.settingOf(m); f != c.want || factor != c.factor {
			t.Errorf("%s of %s: %q by %g, want %q by %g", c.code, c.spec.Name, f, factor, c.want, c.factor)
		}
	}
}

// TestKeepOdds: a remedy with which fewer boxes come out right is left out, and of a range of
// which a part is no worse its best place is kept.
func TestKeepOdds(t *testing.T) {
	b := boxOf(t, NewMemory(), spec("right"))
	remedy := func(min, max float64) geom.Diagnosis {
		change := geom.Change{Setting: joinery.SettingDadoClearance, Min: min, Max: max}
		return geom.Diagnosis{Level: geom.LevelWarning, Remedies: []geom.Remedy{{Changes: []geom.Change{change}}}}
	}
	list := []geom.Diagnosis{remedy(0.6, 0.6), remedy(0.25, 0.25), remedy(0.25, 0.8)}
	b.KeepOdds(list)
	if len(list[0].Remedies) != 0 || len(list[1].Remedies) != 1 {
		t.Errorf("0.6 is kept %v, 0.25 is kept %v", list[0].Remedies, list[1].Remedies)
	}
	if r := list[2].Remedies; len(r) != 1 || r[0].Changes[0].Min != 0.25 || r[0].Changes[0].Max != 0.25 {
		t.Errorf("of 0.25 to 0.8 it keeps %+v", r)
	}
}

func TestMemory(t *testing.T) {
	known := NewMemory()
	a, b := boxOf(t, known, spec("a")), boxOf(t, known, spec("b"))
	other := spec("c")
	other.Width = 461
	c := boxOf(t, known, other)
	if !a.Like(&b) || a.Like(&c) || len(known.drawn) != 2 {
		t.Errorf("a like b %v, a like c %v, %d outcomes", a.Like(&b), a.Like(&c), len(known.drawn))
	}
}

func TestThickerBottom(t *testing.T) {
	s := spec("thin")
	list := ThickerBottom(s, 7.2)
	for i, most := range []float64{10.8, 9, 7.92, 7.2} { // half as much again, a quarter, a tenth, none
		if c := list[i].Changes[0]; c.Setting != joinery.SettingBottom || c.Min != 7.2 || math.Abs(c.Max-most) > 1e-9 {
			t.Errorf("%d: %+v, want up to %g", i, c, most)
		}
	}
	if s.Cutter.Kind = joinery.Saw; len(ThickerBottom(s, 7.2)) != len(list)+len(narrowing) {
		t.Error("a saw gets no cutter for the grooves of a thicker bottom")
	}
}

func TestFinest(t *testing.T) {
	if Finest(joinery.Hand) <= Finest(joinery.Saw) {
		t.Error("hands work finer than a saw")
	}
}
