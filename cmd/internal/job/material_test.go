package job

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

// stockText reads a job whose one stock, 6 mm thick, has these entries.
func stockText(t *testing.T, entries, climate string) (joinery.Stock, Problems) {
	t.Helper()
	text := "units: mm\n" + climate + "stock: {a: {thickness: 6, " + entries + "}}\ncutter: {kind: router, diameter: 4}\n" +
		"drawers: [{name: d, outside: 400 x 100 x 400, sides: a, bottom: a}]\n"
	j, problems := Read("job.yaml", strings.NewReader(text))
	return j.Stocks[0], problems
}

// TestMaterialsReachTheStock: what a table has of a material is what a stock of it has.
func TestMaterialsReachTheStock(t *testing.T) {
	const climate = "climate: {now: 45 %, driest: 30 %, dampest: 65 %, temperature: 20 C}\n"
	same := func(of, what string, got, want float64) {
		if math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s: %s is %g, in the table %g", of, what, got, want)
		}
	}
	emc := func(rh float64) float64 {
		m, err := wood.EMC(20, rh)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	for _, name := range wood.SheetNames() {
		s, problems := stockText(t, "material: "+name, climate)
		if problems.Failed() {
			t.Fatal(problems)
		}
		want, _ := wood.FindSheet(name)
		along, across, err := want.Stiffness(6)
		if err != nil {
			t.Fatal(err)
		}
		same(name, "density", s.Density, want.Density)
		same(name, "stiffness", s.Stiffness, along)
		same(name, "stiffness across", s.StiffnessAcross, across)
		same(name, "shear", s.Shear, want.Shear)
		same(name, "Poisson", s.Poisson, want.Poisson)
		same(name, "creep", s.Creep, want.Creep)
		same(name, "swelling", s.Swelling, want.InPlane*(emc(0.65)-emc(0.45)))
		same(name, "shrinkage", s.Shrinkage, want.InPlane*(emc(0.45)-emc(0.30)))
		if s.Solid || s.StiffAs != name {
			t.Errorf("%s: %+v", name, s)
		}
	}
	for _, name := range wood.Names() {
		want, _ := wood.Find(name)
		for cut, coefficient := range map[string]float64{"flatsawn": want.Tangential, "quartersawn": want.Radial} {
			s, problems := stockText(t, fmt.Sprintf("material: %s, cut: %s", name, cut), climate)
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			same(name, "density", s.Density, want.Gravity*1120) // 12 % moisture
			same(name, "stiffness", s.Stiffness, want.Modulus)
			same(name, "stiffness across", s.StiffnessAcross, want.Modulus/20)
			same(name, "shear", s.Shear, want.Modulus/20)
			same(name, "Poisson", s.Poisson, 0.1)
			same(name, "creep", s.Creep, 1.6)
			same(name, "swelling", s.Swelling, coefficient*(emc(0.65)-emc(0.45)))
			if !s.Solid || s.StiffAs != "" {
				t.Errorf("%s: %+v", name, s)
			}
		}
	}
}

// TestOwnFigures: the shop's figures come before the material's, whose modulus of shear
// counts as far as a sheet so stiff can have it.
func TestOwnFigures(t *testing.T) {
	for entries, want := range map[string][4]float64{ // along, across, shear, Poisson
		"material: birch-plywood, stiffness: 9 GPa":                {9000, 9000, 620, 0.1},
		"material: birch-plywood, stiffness-across: 5000":          {13483.8, 5000, 620, 0.1},
		"material: hardboard, stiffness: 4 GPa":                    {4000, 4000, 0, 0.3},
		"stiffness: 4000, stiffness-across: 1000":                  {4000, 1000, 0, 0},
		"material: birch-plywood, stiffness: 1200":                 {1200, 1200, 0, 0.1}, // 620 is not of such a sheet
		"material: cherry, stiffness: 8000, stiffness-across: 400": {8000, 400, 515, 0.1},
		"material: cherry, stiffness: 8000":                        {8000, 400, 515, 0.1}, // a twentieth
		"movement: 0.3 %, stiffness: 8000":                         {8000, 400, 400, 0.1},
	} {
		s, problems := stockText(t, entries, "")
		if problems.Failed() {
			t.Errorf("%s: %v", entries, problems)
		}
		// Between 4 and 6.5 mm the table is interpolated, at 6 by four fifths:
		// 16471 - 0.8 x 3734 = 13483.8 and 1029 + 0.8 x 3734 = 4016.2.
		for i, got := range []float64{s.Stiffness, s.StiffnessAcross, s.Shear, s.Poisson} {
			if math.Abs(got-want[i]) > 1e-6 {
				t.Errorf("%s: figure %d is %g, not %g", entries, i, got, want[i])
			}
		}
	}
	for entries, want := range map[string]string{
		"stiffness-across: 500":                "no-effect",
		"stiffness: 5":                         "out-of-range",
		"stiffness: 4000, stiffness-across: 5": "out-of-range",
		"material: mdf, movement: 0.3 %":       "no-effect",
		"movement: 0.3 %, cut: quartersawn":    "no-effect",
		"movement: 3 %":                        "out-of-range",
	} {
		_, problems := stockText(t, entries, "")
		if len(problems) == 0 || string(problems[0].Code) != want || problems[0].Line != 2 {
			t.Errorf("%s: %v", entries, problems)
		}
	}
}

// TestUnlistedWood: a wood that is described whole, by the figures of a listed one, is as that one, flatsawn: 0.50
// x 1120 kg/m3 at 12 % of moisture, 0.248 % for one of moisture. What moves less is said in place of the table.
func TestUnlistedWood(t *testing.T) {
	const climate = "climate: {now: 45 %, driest: 30 %, dampest: 65 %, temperature: 20 C}\n"
	listed, _ := stockText(t, "material: cherry", climate)
	own, problems := stockText(t, "density: 560 kg/m3, stiffness: 10300 N/mm2, movement: 0.248 %", climate)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for what, v := range map[string][2]float64{"swelling": {own.Swelling, listed.Swelling},
		"shrinkage": {own.Shrinkage, listed.Shrinkage}, "density": {own.Density, listed.Density}} {
		if v[1] <= 0 || math.Abs(v[0]-v[1]) > 1e-9*v[1] {
			t.Errorf("%s: %g, listed %g", what, v[0], v[1])
		}
	}
	own.Swelling, own.Shrinkage = listed.Swelling, listed.Shrinkage
	own.Density, own.Thickening = listed.Density, listed.Thickening
	if !reflect.DeepEqual(own, listed) {
		t.Errorf("%+v\nlisted %+v", own, listed)
	}
	half, _ := stockText(t, "material: cherry, movement: 0.124 %", climate)
	if math.Abs(half.Swelling-listed.Swelling/2) > 1e-9 || half.Density != listed.Density ||
		half.Thickening != half.Swelling {
		t.Errorf("%+v", half)
	}
}

// TestMoistureBeyondTheFormula: 20 % and 80 % of humidity at 20 C make 4.5 and 16.0 % of
// moisture (Wood Handbook, equation 4-5), and equation 13-2 is for 6 to 14 %.
func TestMoistureBeyondTheFormula(t *testing.T) {
	const edge = "{now: 50 %, driest: 20 %, dampest: 80 %}\n"
	_, problems := stockText(t, "material: cherry", "climate: "+edge)
	if len(problems) != 1 || problems[0].Code != CodeMoisture || problems[0].IsError() || problems[0].Line != 2 ||
		!strings.Contains(problems[0].Message, "4.5 % at its driest and 16.0 % at its dampest") {
		t.Errorf("%v", problems)
	}
	if _, problems := stockText(t, "material: cherry", "climate: {now: 50 %, driest: 30 %, dampest: 65 %}\n"); len(problems) > 0 {
		t.Errorf("%v", problems)
	}
}

// TestUnevenReadings: readings are of one order as long as they keep within EN 315 for sanded sheets: of 20 mm, 0.8 +
// 1.0 mm.
func TestUnevenReadings(t *testing.T) {
	for text, want := range map[string]bool{"19.11, 20.89": false, "19.09, 20.91": true, "20": false} {
		_, problems := Read("j.yaml", strings.NewReader("units: mm\nstock: {birch: {thickness: ["+text+"]}}\n"))
		told := slices.ContainsFunc(problems, func(p Problem) bool { return p.Code == CodeUnevenReadings })
		if told != want {
			t.Errorf("%s: told %v: %v", text, told, problems)
		}
	}
}

// TestOutlier: a reading that stands apart from all others is named, by Dixon's Q: of 12.0, 12.1, 12.2 and x it is
// (x - 12.2) / (x - 12.0), more than 0.829 from x = 13.17 on; so is one below. Two that agree are no outlier, nor is
// one that is off by no more than a caliper, nor one of three.
func TestOutlier(t *testing.T) {
	for text, want := range map[string]string{
		"12, 12.1, 13.16, 12.2":                     "",
		"12, 12.1, 13.18, 12.2":                     "13.18 mm, stands apart from the others, 12 mm to 12.2 mm",
		"12.1, 12.12, 11.39, 12.08, 12.11":          "11.39 mm, stands apart from the others, 12.08 mm to 12.12 mm",
		"12.1, 12.11, 12.1, 12.11, 12.1, 12.39":     "",
		"12.1, 12.11, 12.1, 12.11, 12.7, 12.71":     "",
		"12.1, 12.11, 12.7":                         "",
		"12.1, 12.11, 12.1, 12.11, 12.1, 12.42, 12": "12.42 mm",
	} {
		_, problems := Read("j.yaml", strings.NewReader("units: mm\nstock: {birch: {thickness: ["+text+"]}}\n"))
		i := slices.IndexFunc(problems, func(p Problem) bool { return p.Code == CodeUnevenReadings })
		if (i >= 0) != (want != "") || i >= 0 && !strings.Contains(problems[i].Message, want) {
			t.Errorf("%s: %v", text, problems)
		}
	}
}
