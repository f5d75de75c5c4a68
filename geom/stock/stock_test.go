package stock

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

var rooms = &wood.Air{Now: 0.45, Driest: 0.3, Dampest: 0.6, Celsius: 20}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Abs(want) {
		t.Errorf("%s is %g, want %g", what, got, want)
	}
}

func TestOfSheet(t *testing.T) {
	birch, _ := wood.FindSheet("birch-plywood")
	s := joinery.Stock{Name: "mine", Thickness: joinery.Thickness{Mean: 12}}
	OfSheet(&s, birch, nil)
	if s.Density != 680 || s.Stiffness != 10719 || s.StiffnessAcross != 6781 || s.Shear != 620 ||
		s.Through != 120 || s.ThroughAcross != 120 ||
		s.StiffAs != birch.Name || s.Solid || s.Swelling != 0 {
		t.Errorf("%+v", s)
	}
	OfSheet(&s, birch, rooms)
	season, err := wood.SheetMovement(birch, *rooms)
	if err != nil || s.Swelling != season.Swell || s.Shrinkage != season.Shrink || s.Swelling <= 0 || s.Shrinkage <= 0 {
		t.Errorf("%+v, %+v, %v", s, season, err)
	}
}

func TestOfWood(t *testing.T) {
	oak, _ := wood.Find("red oak")
	var s joinery.Stock
	if season := OfWood(&s, oak, wood.Flatsawn, nil); season != (wood.Season{}) || s.Swelling != 0 || !s.Solid {
		t.Errorf("without air: %+v, %+v", season, s)
	}
	near(t, "density", s.Density, 1000*oak.Gravity*1.12) // at 12 %
	near(t, "stiffness across", s.StiffnessAcross/s.Stiffness, wood.AcrossShare)
	near(t, "shear through the thickness", s.Through, 0.05*oak.Modulus)
	near(t, "and across the grain", s.ThroughAcross, 0.003*oak.Modulus)
	season := OfWood(&s, oak, wood.Flatsawn, rooms)
	flat, through := s.Swelling, s.Thickening
	OfWood(&s, oak, wood.Quartersawn, rooms)
	if s.Swelling != through || s.Thickening != flat {
		t.Errorf("a flatsawn board thickens by %g, a quartersawn one by %g", through, s.Thickening)
	}
	if season.Limited || flat <= s.Swelling || s.Swelling <= 0 {
		t.Errorf("flatsawn swells by %g, quartersawn by %g; %+v", flat, s.Swelling, season)
	}
	if season := OfWood(&s, oak, wood.Flatsawn, &wood.Air{Now: 0.45, Driest: 0.2, Dampest: 0.9, Celsius: 20}); !season.Limited {
		t.Errorf("from 20 to 90 %% it is no estimate: %+v", season)
	}
	if season := OfWood(&s, oak, wood.Flatsawn, &wood.Air{Now: 2}); season != (wood.Season{}) {
		t.Errorf("air of 200 %%: %+v", season)
	}
}

func TestDropShear(t *testing.T) {
	s := joinery.Stock{Stiffness: 8000, StiffnessAcross: 2000, Poisson: 0.25}
	// plate.MostShear is sqrt(8000 x 2000) / 2 = 2000, and by 1.25 1600.
	if s.Shear = 1599; true {
		DropShear(&s)
		near(t, "shear", s.Shear, 1599)
	}
	if s.Shear = 1601; true {
		DropShear(&s)
		near(t, "shear", s.Shear, 0)
	}
}

func TestAssumed(t *testing.T) {
	s := joinery.Stock{Thickness: joinery.Thickness{Mean: 12}}
	for u, want := range map[geom.Unit]wood.Standard{geom.Millimeter: wood.EN315Sanded, geom.Inch: wood.PS1Sanded} {
		by, minus, plus, ok := Assumed(s, 1, u)
		wantMinus, wantPlus, err := wood.Tolerance(want, 12)
		if !ok || err != nil || by != want || minus != wantMinus || plus != wantPlus {
			t.Errorf("%s: %v, %g, %g, %v", u, by, minus, plus, ok)
		}
	}
	solid, thick := s, s
	solid.Solid, thick.Thickness.Mean = true, 400
	for name, c := range map[string]struct {
		s joinery.Stock
		n int
	}{"two readings": {s, 2}, "solid wood": {solid, 1}, "400 mm": {thick, 1}} {
		if _, _, _, ok := Assumed(c.s, c.n, geom.Millimeter); ok {
			t.Errorf("%s: a standard is assumed", name)
		}
	}
}

func TestIsPlate(t *testing.T) {
	for mm, want := range map[float64]bool{2.94: false, 2.96: true, 4: true, 6.04: true, 6.06: false} {
		if IsPlate(mm) != want {
			t.Errorf("%g mm: %v", mm, !want)
		}
	}
}
