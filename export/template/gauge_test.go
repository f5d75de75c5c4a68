package template

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// said are the words on a plate and its notes, a line each.
func said(p Plate) string {
	list := slices.Clone(p.Notes)
	for _, w := range p.Words {
		list = append(list, w.Text)
	}
	return strings.Join(list, "\n")
}

// TestBlocks: of 6.1 one plate of 3.15 and of the spacers 1.5, 1 and then 0.4 by a feeler make
// what is to be set: 3 would be 0.05 over, and nothing is sanded off a block. Of 6.15 the plate and
// the 3 are exact, without a feeler.
func TestBlocks(t *testing.T) {
	spacers := []float64{0.5, 1, 1.5, 3}
	for target, want := range map[float64][]string{
		6.1:  {"1 x 3.15 + 1.5 + 1 = 5.65\n", "plus feeler 0.45\n", "1 x 3.15 + 1.5 + 1 = 5.65, plus feeler 0.45. "},
		6.15: {"1 x 3.15 + 3 = 6.15. "},
	} {
		list := Blocks(Corner{Name: "s", Fence: target, Height: target}, spacers, options())
		if len(list) != 1 || list[0].Count != 1 {
			t.Fatalf("%+v", list)
		}
		text := said(list[0])
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%g: no %q in %q", target, w, text)
			}
		}
		if strings.Contains(text, "feeler") != (target == 6.1) || strings.Contains(strings.ToLower(text), "sand") {
			t.Errorf("%g: %q", target, text)
		}
	}
}

// TestBlocksAddUp: whatever is to be set and whatever spacers there are, plates, spacers and feeler make it, and
// without the feeler nothing is higher than it.
func TestBlocksAddUp(t *testing.T) {
	o := options()
	o.Number = func(mm float64) string { return geom.LengthOf(mm).Fixed(geom.Millimeter) }
	rapid.Check(t, func(t *rapid.T) {
		target := rapid.Float64Range(1, 20).Draw(t, "target")
		o.Thickness = rapid.Float64Range(3, 3.3).Draw(t, "thickness")
		spacers := rapid.SliceOfN(rapid.SampledFrom([]float64{0.25, 0.5, 1, 2, 3, 5}), 0, 5).Draw(t, "spacers")
		list := Blocks(Corner{Name: "s", Fence: target, Height: target}, spacers, o)
		if (len(list) == 0) != (target < o.Thickness-even) {
			t.Fatalf("%g: %d blocks", target, len(list))
		}
		for _, p := range list {
			text, _, _ := strings.Cut(p.Notes[0], ". ")
			_, stack, _ := strings.Cut(text, ": ")
			stack, feeler, _ := strings.Cut(stack, ", plus feeler ")
			pieces, sum, _ := strings.Cut(stack, " = ")
			made := 0.0
			for _, piece := range strings.Split(pieces, " + ") {
				made += product(t, piece)
			}
			total := product(t, strings.TrimSuffix(sum, " mm"))
			if math.Abs(made-total) > 0.04 || total > target+0.006 {
				t.Errorf("%g: %s", target, text)
			}
			if feeler != "" {
				total += product(t, strings.TrimSuffix(strings.TrimSuffix(feeler, "."), " mm"))
			}
			if math.Abs(total-math.Round(target*100)/100) > 1e-9 {
				t.Errorf("%g: %s makes %g", target, text, total)
			}
		}
	})
}

// product is a number, or a count of it as 2 x 3.15.
func product(t *rapid.T, s string) float64 {
	count := 1.0
	if n, of, found := strings.Cut(s, " x "); found {
		count, s = product(t, n), of
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return count * v
}

// TestBlocksAlone: without spacers it is as many plates as are not too high; there is no block where one is.
func TestBlocksAlone(t *testing.T) {
	o := options()
	o.Thickness = 3.2
	for target, want := range map[float64]int{6.25: 1, 4.7: 1, 6.4: 2, 9.9: 3, 1: 0} {
		count := 0
		for _, p := range Blocks(Corner{Name: "s", Fence: target, Height: target}, nil, o) {
			count += p.Count
		}
		if count != want {
			t.Errorf("%g: %d plates", target, count)
		}
	}
}

// TestGauge: the tooth is as long as the dado is deep, the mouths as wide as tongues may
// be at the most and the least.
func TestGauge(t *testing.T) {
	p := Gauge(Corner{Name: "s", Fence: 6.1, Height: 6.1, Cutter: 6.35, Deep: 6.1, Depths: [2]float64{6, 6.3}, Tongue: [2]float64{5.98, 6.23}}, options())
	// The rectangle from the edge up, 110 x 52, less the hollows beside the tooth, 1.2 x 1.5,
	// with the tooth, 5.75 x 6.1, less the mouths, 14 x (5.98 + 6.23).
	want := 110*52.0 - 2*1.2*1.5 + 5.75*6.1 - 14*(5.98+6.23)
	if got := p.Outline.Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, should be %g", got, want)
	}
}

// TestBlocksForGlueRoom: dados that are deeper than tongues are long have a block of
// their own.
func TestBlocksForGlueRoom(t *testing.T) {
	list := Blocks(Corner{Name: "s", Fence: 6.1, Height: 6.1, Deep: 6.3}, nil, options())
	if len(list) != 2 || list[1].Name != "block-s-dado-height" {
		t.Errorf("%+v", list)
	}
}
