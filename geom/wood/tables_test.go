package wood

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Every name is found, once, and its numbers are of wood: rings along the width
// move more than rings across it, by the Handbook less than ten to three; a
// stiffness of 6 to 16 GPa holds all timber that furniture is made of.
func TestSpecies(t *testing.T) {
	names := Names()
	if len(names) != len(species) || !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("names: %v", names)
	}
	for _, name := range names {
		s, ok := Find(name)
		if !ok || s.Name != name || !(s.Radial > 0.0005 && s.Radial < s.Tangential && s.Tangential < 0.005) ||
			!(s.Gravity > 0.3 && s.Gravity < 0.75) || !(s.Modulus > 6000 && s.Modulus < 16000) {
			t.Errorf("%s: %+v, %v", name, s, ok)
		}
	}
	if sugar, _ := Find("sugar maple"); sugar.Name != "" {
		hard, _ := Find("hard maple")
		if hard.Name = sugar.Name; hard != sugar {
			t.Errorf("hard maple %+v is not sugar maple %+v", hard, sugar)
		}
	}
	if s, ok := Find("plastic"); ok || s != (Species{}) {
		t.Errorf("found %+v", s)
	}
}

// Gravity and modulus against the Handbook in its American units: 10^6 psi is
// 6894.757 N/mm2, and GPa are printed to a tenth (secondary).
func TestModulusInOtherUnits(t *testing.T) {
	for name, psi := range map[string]float64{
		"red alder": 1.38, "white ash": 1.74, "basswood": 1.46, "beech": 1.72, "yellow birch": 2.01,
		"paper birch": 1.59, "cherry": 1.49, "red maple": 1.64, "douglas-fir": 1.95,
	} {
		if s, _ := Find(name); !near(s.Modulus, psi*6894.757, 80) {
			t.Errorf("%s: %g N/mm2, %g million psi", name, s.Modulus, psi)
		}
	}
}

func TestSheets(t *testing.T) {
	names := SheetNames()
	if want := []string{"birch-plywood", "hardboard", "mdf", "particleboard", "plywood"}; !slices.Equal(names, want) {
		t.Errorf("names: %v", names)
	}
	if _, ok := FindSheet("glass"); ok {
		t.Error("found glass")
	}
	// EN 622-2: hardboard has more than 900 kg/m3 (secondary).
	if s, _ := FindSheet("hardboard"); s.Density <= 900 {
		t.Errorf("hardboard: %g kg/m3", s.Density)
	}
	// The bound: 500 mm of plywood, 4 points, 0.4 mm at most.
	if s, _ := FindSheet("plywood"); !near(500*4*s.InPlane, 0.4, 1e-9) {
		t.Errorf("plywood: %g in plane", s.InPlane)
	}
}

// Birch plywood: every pair of the table adds up to 17500, and so does what lies
// between, by linearity. Every sheet: never stiffer across than along.
func TestStiffness(t *testing.T) {
	birch, _ := FindSheet("birch-plywood")
	for _, c := range []struct{ thickness, along, across float64 }{
		{4, 16471, 1029}, {6.5, 12737, 4763}, {9, 11395, 6105}, // from memory
		{7.75, 12066, 5434}, // halfway: (12737+11395)/2, (4763+6105)/2
		{3, 16471, 1029}, {24, 10048, 7452},
	} {
		along, across, err := birch.Stiffness(c.thickness)
		if err != nil || !near(along, c.along, 1e-9) || !near(across, c.across, 1e-9) {
			t.Errorf("%g mm: %g, %g, %v", c.thickness, along, across, err)
		}
	}
	// EN 622-5 (from memory): 2200 from 12 to 19 mm, and never above the class.
	mdf, _ := FindSheet("mdf")
	for thickness, class := range map[float64]float64{6.5: 2700, 10: 2500, 12.5: 2200, 16: 2200, 25: 2100} {
		if along, _, err := mdf.Stiffness(thickness); err != nil || along > class || along < 0.92*class {
			t.Errorf("mdf %g mm: %g, %v; class %g", thickness, along, err, class)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(sheets).Draw(t, "sheet")
		thickness := rapid.Float64Range(0.1, 60).Draw(t, "thickness")
		along, across, err := s.Stiffness(thickness)
		if err != nil || across > along || !(across > 0) {
			t.Fatalf("%g, %g, %v", along, across, err)
		}
		if s.Name == "birch-plywood" && !near(along+across, 17500, 1e-9) {
			t.Fatalf("%g + %g is not 17500", along, across)
		}
	})
	for _, bad := range []float64{0, -4, math.NaN(), math.Inf(1), 1e9} {
		if along, _, err := birch.Stiffness(bad); err == nil {
			t.Errorf("%g mm: %g and no error", bad, along)
		}
	}
	if _, _, err := (Sheet{}).Stiffness(6); err == nil {
		t.Error("a sheet of no kind has a stiffness")
	}
}

// EN 315 sanded, limits by the formula (computed): 6.5 mm is 5.905 to 6.895, 18
// mm 17.06 to 18.74. Unsanded: the upper side alone, the lower one is unsettled.
// PS 1 unsanded: its table in inches, to 0.001 (secondary). PS 1 sanded: two
// sheets of 3/4 in, both within it, may differ by 1/32 in (secondary).
func TestTolerance(t *testing.T) {
	for _, c := range []struct{ nominal, low, high float64 }{
		{4, 3.48, 4.32}, {6, 5.42, 6.38}, {6.5, 5.905, 6.895}, {9, 8.33, 9.47},
		{12, 11.24, 12.56}, {15, 14.15, 15.65}, {18, 17.06, 18.74}, {21, 19.97, 21.83},
	} {
		minus, plus, err := Tolerance(EN315Sanded, c.nominal)
		if err != nil || !near(c.nominal-minus, c.low, 1e-9) || !near(c.nominal+plus, c.high, 1e-9) {
			t.Errorf("EN 315 sanded, %g: -%g +%g, %v", c.nominal, minus, plus, err)
		}
		rough, upper, err := Tolerance(EN315Unsanded, c.nominal)
		if err != nil || !near(upper, plus+0.6, 1e-9) || rough < 0.3+0.03*c.nominal-1e-9 {
			t.Errorf("EN 315 unsanded, %g: -%g +%g, %v", c.nominal, rough, upper, err)
		}
	}
	for _, c := range []struct{ category, low, high float64 }{
		{1.0 / 4, 0.219, 0.281}, {11.0 / 32, 0.313, 0.375}, {3.0 / 8, 0.344, 0.406}, {15.0 / 32, 0.438, 0.500},
		{1.0 / 2, 0.469, 0.531}, {19.0 / 32, 0.563, 0.625}, {5.0 / 8, 0.594, 0.656}, {23.0 / 32, 0.688, 0.750},
		{3.0 / 4, 0.719, 0.781}, {7.0 / 8, 0.831, 0.919}, {1, 0.950, 1.050},
	} {
		minus, plus, err := Tolerance(PS1Unsanded, c.category*25.4)
		if err != nil || !near(c.category-minus/25.4, c.low, 0.00051) || !near(c.category+plus/25.4, c.high, 0.00051) {
			t.Errorf("PS 1 unsanded, %g in: -%g +%g, %v", c.category, minus/25.4, plus/25.4, err)
		}
	}
	minus, plus, err := Tolerance(PS1Sanded, 0.75*25.4)
	if err != nil || !near(minus+plus, 25.4/32, 1e-9) {
		t.Errorf("PS 1 sanded, 3/4 in: -%g +%g, %v", minus, plus, err)
	}
	// Above: 3 % of an inch.
	if minus, plus, err = Tolerance(PS1Sanded, 25.4); err != nil || !near(minus, 0.762, 1e-9) || !near(plus, 0.762, 1e-9) {
		t.Errorf("PS 1 sanded, 1 in: -%g +%g, %v", minus, plus, err)
	}
	for _, bad := range []float64{0, -6, 0.4, math.NaN(), math.Inf(1), 1000} {
		if minus, _, err := Tolerance(EN315Sanded, bad); err == nil {
			t.Errorf("%g mm: -%g and no error", bad, minus)
		}
	}
	if _, _, err := Tolerance(Standard(9), 6); err == nil {
		t.Error("an unknown standard has a tolerance")
	}
}
