package main

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// sagOf writes a job with one box, clear inside by width x depth, and gives the sag of
// its bottom as the report has it.
func sagOf(t *testing.T, width, depth, thickness float64, bottom, load string) record.Sag {
	t.Helper()
	inTemp(t)
	// Sides and ends of 12, with a fence distance of half of it, are flush: 24 of each.
	text := fmt.Sprintf(`units: mm
stock:
  side: {thickness: 12, sheet: 2440 x 1220, grain: length}
  bottom: {thickness: %g, sheet: 2440 x 1220, %s}
cutter: {kind: router, diameter: 4}
drawers:
  - {name: a, outside: %g x 150 x %g, sides: side, bottom: bottom, load: %s}
`, thickness, bottom, width+24, depth+24, load)
	if err := os.WriteFile("job.yaml", []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, errs := call(t, "", "parts", "job.yaml", "--json")
	if code != exitDone {
		t.Fatal(errs)
	}
	r, err := record.Read([]byte(out))
	if err != nil {
		t.Fatal(err)
	}
	if r.Drawers[0].Sag == nil {
		t.Fatalf("no sag in the report of\n%s", text)
	}
	return *r.Drawers[0].Sag
}

// navier is the sag in the middle of a simply supported plate by Navier's double series
// (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, articles 28 and 85),
//
//	w = 16 q / pi^6 sum (-1)^((m+n)/2 - 1) / (m n (Dx (m/a)^4 + 2 H (m n / (a b))^2 + Dy (n/b)^4))
//
// with Dx, Dy = E t^3 / (12 (1 - nu^2)) and H = nu sqrt(Dx Dy) + 2 G t^3 / 12: the twist
// stiffness from the modulus of shear.
func navier(a, b, t, ex, ey, g, nu, kg float64) float64 {
	d := func(e float64) float64 { return e * t * t * t / (12 * (1 - nu*nu)) }
	dx, dy := d(ex), d(ey)
	h := nu*math.Sqrt(dx*dy) + g*t*t*t/6
	q := kg * 9.80665 / (a * b)
	sum := 0.0
	for m := 1.0; m < 200; m += 2 {
		for n := 1.0; n < 200; n += 2 {
			sign := 1.0
			if int(m+n)/2%2 == 0 {
				sign = -1
			}
			x, y := m/a, n/b
			sum += sign / (m * n * (dx*x*x*x*x + 2*h*x*x*y*y + dy*y*y*y*y))
		}
	}
	return 16 * q / math.Pow(math.Pi, 6) * sum
}

// tilted is what shear through the thickness adds to it, of moduli gx and gy: the deflection of each
// term of the series as Mindlin and Reissner have it, by Cramer's rule, less that of one with moduli
// a hundred thousand times as large.
func tilted(a, b, t, ex, ey, g, nu, gx, gy, kg float64) float64 {
	d := func(e float64) float64 { return e * t * t * t / (12 * (1 - nu*nu)) }
	dx, dy, dk := d(ex), d(ey), g*t*t*t/12
	both := nu*math.Sqrt(dx*dy) + dk
	sum := 0.0
	for m := 1.0; m < 100; m += 2 {
		for n := 1.0; n < 100; n += 2 {
			sign := 1.0
			if int(m+n)/2%2 == 0 {
				sign = -1
			}
			x, y := m*math.Pi/a, n*math.Pi/b
			w := func(stiffer float64) float64 {
				sx, sy := stiffer*gx*t*5/6, stiffer*gy*t*5/6
				p, q, r := dx*x*x+dk*y*y+sx, dk*x*x+dy*y*y+sy, both*x*y
				minor := p*q - r*r
				whole := (sx*x*x+sy*y*y)*minor - sx*x*(sx*x*q-sy*y*r) + sy*y*(sx*x*r-sy*y*p)
				return minor / whole
			}
			sum += sign / (m * n) * (w(1) - w(1e5))
		}
	}
	return 16 * kg * 9.80665 / (a * b) / (math.Pi * math.Pi) * sum
}

// TestSagFromTheJob: from the text of a job to the sag in report.json.
func TestSagFromTheJob(t *testing.T) {
	const birch = "grain: length, material: birch-plywood"
	plywood := func(a, b float64) float64 { // through its thickness 120, from memory
		return navier(a, b, 6.5, 12737, 4763, 620, 0.1, 20) + tilted(a, b, 6.5, 12737, 4763, 620, 0.1, 120, 120, 20)
	}
	hard := func(a, b, t, e, kg float64) float64 { // 100, from memory
		return tilted(a, b, t, e, e, e/2.6, 0.3, 100, 100, kg)
	}
	for name, c := range map[string]struct {
		width, depth, thickness float64
		bottom, load            string
		want, part              float64
	}{
		// q = 196.133 / 250000 = 7.84532e-4. Handbook of Finnish Plywood: 12737 and 4763
		// along and across; shear 620, Poisson 0.1. With H = sqrt(Dx Dy), as a sheet
		// alike in all directions has it, and no Poisson, it would be 1.05.
		"birch plywood": {500, 500, 6.5, birch, "20 kg", plywood(500, 500), 1e-4},
		"its figure":    {500, 500, 6.5, birch, "20 kg", 1.607 + 0.026, 1e-3},
		"shallow":       {600, 300, 6.5, birch, "20 kg", plywood(600, 300), 1e-4},
		// A grain of no matter may run either way: the weaker one counts.
		"either way": {300, 600, 6.5, "material: birch-plywood", "20 kg", plywood(600, 300), 1e-4},
		// Own stiffness beside the material's shear and Poisson's ratio.
		"own stiffness": {500, 400, 6, birch + ", stiffness: 9 GPa, stiffness-across: 6 GPa", "10 kg", navier(500, 400, 6, 9000, 6000, 620, 0.1, 10) + tilted(500, 400, 6, 9000, 6000, 620, 0.1, 120, 120, 10), 1e-4},
		// Cherry: 10300 along, a twentieth of it across and in shear, Poisson 0.1; through the thickness
		// a twentieth and three thousandths.
		"solid": {400, 300, 8, "grain: length, material: cherry", "10 kg", navier(400, 300, 8, 10300, 515, 515, 0.1, 10) + tilted(400, 300, 8, 10300, 515, 515, 0.1, 515, 30.9, 10), 1e-4},
		// Formulas for Stress and Strain, table 11.4 case 1a: w = 0.0444 q b^4 / (E t^3)
		// for a square and 0.0906 for 1.6 to 1, Poisson 0.3; rounded by up to 0.6 %.
		// Hardboard has 3100 and 0.3.
		"handbook, square": {480, 480, 5, "material: hardboard", "8 kg", 0.0444*8*9.80665*480*480/(3100*125) + hard(480, 480, 5, 3100, 8), 0.006},
		"handbook, 1.6":    {480, 300, 5, "material: hardboard", "8 kg", 0.0906*8*9.80665/(480*300)*300*300*300*300/(3100*125) + hard(480, 300, 5, 3100, 8), 0.006},
		// 400 x 500, 6 mm, 4 GPa, 0.3, 10 kg: D = 4000 * 216 / 10.92 = 79121 N mm and
		// 0.006027 q a^4 / D = 0.9565 for g 9.81; 0.9562 for the standard g.
		"own figures": {500, 400, 6, "material: hardboard, stiffness: 4 GPa", "10 kg", 0.9565*9.80665/9.81 + hard(500, 400, 6, 4000, 10), 1e-3},
		// The same bottom without Poisson's ratio: D is 0.91 of that.
		"no Poisson": {500, 400, 6, "stiffness: 4 GPa", "10 kg", 0.9565 * 9.80665 / 9.81 / 0.91, 1e-3},
	} {
		if got := sagOf(t, c.width, c.depth, c.thickness, c.bottom,
			c.load); math.Abs(got.Simple.MM()-c.want) > c.part*c.want {
			t.Errorf("%s: the bottom sags %.4f, not %.4f", name, got.Simple, c.want)
		}
	}
}

// TestLastingSag: EN 1995-1-1 table 3.2 (from memory) has k_def 0.8 for plywood, 2.25 for
// hardboard and 0.6 for solid wood in dry rooms; of an unknown stock it is twice as much.
func TestLastingSag(t *testing.T) {
	for bottom, want := range map[string]float64{"grain: length, material: plywood": 1.8, "material: hardboard": 3.25, "grain: length, material: red oak": 1.6, "stiffness: 3000": 2} {
		if s := sagOf(t, 400, 400, 6, bottom, "5 kg"); math.Abs(s.LongTerm.MM()-want*s.Simple.MM()) > 1e-4 {
			t.Errorf("%s: %g in time, %g at once", bottom, s.LongTerm, s.Simple)
		}
	}
}

// TestEnough: a bottom as thick as is advised keeps the limit, and one a little thinner
// does not, though birch plywood is another sheet at another thickness.
func TestEnough(t *testing.T) {
	for _, bottom := range []string{"grain: length, material: birch-plywood", "material: birch-plywood", "material: hardboard", "grain: length, material: cherry", "grain: length, stiffness: 9000, stiffness-across: 5000"} {
		s := sagOf(t, 700, 500, 5, bottom, "35 kg")
		if s.Simple <= s.Limit {
			t.Fatalf("%s: %g of %g, nothing to advise", bottom, s.Simple, s.Limit)
		}
		thick := math.Ceil(s.MinThickness.MM()*1000) / 1000
		if again := sagOf(t, 700, 500, thick, bottom,
			"35 kg"); again.Simple > again.Limit || math.Abs((again.MinThickness-s.MinThickness).MM()) > 1e-4 {
			t.Errorf("%s: of %g, as advised, it sags %g of %g and wants %g", bottom, thick, again.Simple,
				again.Limit, again.MinThickness)
		}
		if thin := sagOf(t, 700, 500, thick-0.01, bottom, "35 kg"); thin.Simple <= thin.Limit {
			t.Errorf("%s: %g would do", bottom, thick-0.01)
		}
	}
}

// TestSagIsTold: the warning has the report's numbers, and the folder's report.json too.
func TestSagIsTold(t *testing.T) {
	s := sagOf(t, 700, 500, 5, "grain: length, material: birch-plywood", "35 kg")
	if code, _, errs := call(t, "", "build", "job.yaml", "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
	data, err := os.ReadFile("out/report.json")
	if err != nil {
		t.Fatal(err)
	}
	if r, err := record.Read(data); err != nil || *r.Drawers[0].Sag != s {
		t.Errorf("report.json has %+v, parts %+v, %v", r.Drawers[0].Sag, s, err)
	}
	_, _, errs := call(t, "", "check", "job.yaml")
	for _, v := range []record.Length{s.Simple, s.Clamped, s.LongTerm, s.Limit} {
		if !strings.Contains(errs, fmt.Sprintf("%.2f mm", v)) {
			t.Errorf("%g is not in\n%s", v, errs)
		}
	}
}
