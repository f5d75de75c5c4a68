package plate

import (
	"math"
	"testing"
)

// through is a sheet alike in all directions, of a thickness in parts of its short side of 1000.
func through(aspect, thick float64) Bottom {
	const e, nu = 10000.0, 0.3
	g := e / (2 * (1 + nu))
	return Bottom{Length: 1000, Width: 1000 * aspect, Thickness: 1000 * thick, Along: e, Across: e, Poisson: nu,
		ThroughAlong: g, ThroughAcross: g}
}

// TestThickSquare: the middle of a square of nu = 0.3 sags by 0.00427 q a^4 / D where it is a tenth as
// thick as wide, and by 0.00490 where it is a fifth (published for Mindlin's theory with 5/6, from
// memory). For simple supports and a sheet alike in all directions shear adds the moments' sum over
// 1 + nu, by 5/6 G t (Wang, 1995, from memory): 0.0479 x 2 / 1.3 = 0.0737 q a^2, by the table for thin
// plates (Timoshenko and Woinowsky-Krieger, table 8). Clamped it is 0.00150 at a tenth (from memory).
func TestThickSquare(t *testing.T) {
	for _, c := range []struct{ thick, simple, clamped float64 }{{0.1, 0.00427, 0.00150}, {0.2, 0.00490, 0}} {
		b := through(1, c.thick)
		sag, err := Of(b, 10)
		if err != nil {
			t.Fatal(err)
		}
		q := 10 * Gravity / (b.Length * b.Width)
		unit := q * math.Pow(1000, 4) / (b.Along * math.Pow(b.Thickness, 3) / (12 * (1 - 0.09)))
		if !within(sag.Simple/unit, c.simple, 0.2*percent) {
			t.Errorf("thick %g: %.6f, want %.5f", c.thick, sag.Simple/unit, c.simple)
		}
		want := 0.0737 * q * 1e6 / (5.0 / 6 * b.ThroughAlong * b.Thickness)
		if !within(b.sheared(q), want, 0.2*percent) {
			t.Errorf("thick %g: shear adds %g, want %g", c.thick, b.sheared(q), want)
		}
		if c.clamped > 0 && !within(sag.Clamped/unit, c.clamped, 3*percent) {
			t.Errorf("thick %g, clamped: %.6f, want %.5f", c.thick, sag.Clamped/unit, c.clamped)
		}
	}
}

// TestThickStrip: a strip eight times as long as wide bends as a beam does, whose middle shear lets
// down by q a^2 / (8 x 5/6 G t), whichever side is the longer; the grain may run either way.
func TestThickStrip(t *testing.T) {
	for _, turned := range []bool{false, true} {
		b := through(8, 0.05)
		b.ThroughAlong, b.ThroughAcross = 100, 2000
		if turned {
			b.Length, b.Width, b.ThroughAlong, b.ThroughAcross = b.Width, b.Length, b.ThroughAcross, b.ThroughAlong
		}
		if got, want := b.sheared(1), 1e6/(8*5.0/6*100*50); !within(got, want, 0.3*percent) {
			t.Errorf("turned %v: %g, want %g", turned, got, want)
		}
	}
}

// TestThinHasNoShear: the stiffer, the less; without a modulus it is none.
func TestThinHasNoShear(t *testing.T) {
	b := through(1.4, 0.05)
	last := math.Inf(1)
	for _, g := range []float64{10, 100, 1e4, 1e8} {
		b.ThroughAlong, b.ThroughAcross = g, g
		if now := b.sheared(1); now <= 0 || now >= last {
			t.Errorf("%g: shear adds %g, with less %g", g, now, last)
		} else {
			last = now
		}
	}
	b.ThroughAcross = 0
	if b.sheared(1) != 0 {
		t.Errorf("shear adds %g", b.sheared(1))
	}
}

// TestThicknessWithShear: a bottom as thick as it has to be sags by the limit.
func TestThicknessWithShear(t *testing.T) {
	for _, g := range []float64{5, 50, 500} {
		b := through(1.3, 0.01)
		b.ThroughAlong, b.ThroughAcross = g, 2*g
		thick, err := ThicknessFor(b, 200, 3)
		if err != nil {
			t.Fatal(err)
		}
		b.Thickness = thick
		if sag, err := Of(b, 200); err != nil || !within(sag.Simple, 3, 1e-6) {
			t.Errorf("G %g: %g mm sag by %g, %v", g, thick, sag.Simple, err)
		}
	}
}
