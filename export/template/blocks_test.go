package template

import (
	"math/big"
	"slices"
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

// TestBlocks: of 6.1 one plate of 3.15 and of the spacers 1.5, 1 and then 0.45 by a feeler make
// what is to be set: 3 would be 0.05 over, and nothing is sanded off a block. Of 6.15 the plate and
// the 3 are exact, without a feeler.
func TestBlocks(t *testing.T) {
	spacers := []float64{0.5, 1, 1.5, 3}
	for target, want := range map[float64][]string{
		6.1:  {"1 x 3.15 + 1.5 + 1 = 5.65 mm\n", "plus feeler 0.45 mm\n", "1 x 3.15 + 1.5 + 1 = 5.65 mm, plus feeler 0.45 mm. "},
		6.15: {"1 x 3.15 + 3 = 6.15 mm. "},
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
		if strings.Contains(text, "feeler") != (target == 6.1) {
			t.Errorf("%g: %q", target, text)
		}
	}
}

// TestBlocksAddUp: whatever is to be set, in whatever unit, of plates of whatever thickness and whatever spacers,
// the plates and spacers that a block's text lists add up to the height that it says, to the last printed decimal,
// and that with the feeler to the setting as setup sheets print it. Nothing is higher than the setting, and a feeler
// is said where something is missing alone.
func TestBlocksAddUp(t *testing.T) {
	exact, short := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o := options()
		o.Unit = rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		o.Thickness = rapid.Float64Range(3, 6).Draw(t, "thickness")
		spacer := rapid.SampledFrom([]float64{0.25, 0.5, 1, 2, 25.4 / 64, 25.4 / 16, 1.234, 3, 5})
		spacers := rapid.SliceOfN(spacer, 0, 5).Draw(t, "spacers")
		fence, height := rapid.Float64Range(1, 20).Draw(t, "fence"), rapid.Float64Range(1, 20).Draw(t, "height")
		if rapid.Bool().Draw(t, "of plates alone") {
			fence = o.Thickness * float64(rapid.IntRange(1, 4).Draw(t, "plates"))
		}
		deep := height + rapid.SampledFrom([]float64{0, 0.001, 0.3}).Draw(t, "room for glue")
		settings := map[string]float64{"fence": fence, "height": height, "dado-height": deep}
		for _, p := range Blocks(Corner{Name: "s", Fence: fence, Height: height, Deep: deep}, spacers, o) {
			setting := geom.LengthOf(settings[strings.TrimPrefix(p.Name, "block-s-")]).Fixed(o.Unit)
			text, _, _ := strings.Cut(p.Notes[0], ". ")
			what, stack, _ := strings.Cut(text, ": ")
			stack, feeler, more := strings.Cut(stack, ", plus feeler ")
			pieces, sum, _ := strings.Cut(stack, " = ")
			words := strings.ToUpper(said(Plate{Words: p.Words, Notes: p.Notes[1:]})) // or no room for them
			for _, w := range []string{strings.NewReplacer(" a ", " ", " of ", " ").Replace(what), stack, feeler} {
				if !strings.Contains(words, strings.ToUpper(w)) {
					t.Fatalf("%q is not on the plate: %s", w, words)
				}
			}
			made := new(big.Rat)
			for _, piece := range strings.Split(pieces, " + ") {
				made.Add(made, product(t, piece))
			}
			decimals := 2
			if o.Unit == geom.Inch {
				decimals = 3
			}
			total := product(t, strings.TrimSuffix(sum, " "+o.Unit.String()))
			if product(t, made.FloatString(decimals)).Cmp(total) != 0 {
				t.Fatalf("%s: the pieces are %s", text, made.FloatString(decimals+2))
			}
			if !more {
				exact++
			} else {
				add := product(t, strings.TrimSuffix(strings.TrimSuffix(feeler, "."), " "+o.Unit.String()))
				if total.Add(total, add); add.Sign() <= 0 {
					t.Fatalf("%s: a feeler of nothing", text)
				}
				short++
			}
			_, of, _ := strings.Cut(what, " of ")
			of = strings.TrimSuffix(of, " "+o.Unit.String())
			if want := product(t, setting); total.Cmp(want) != 0 || product(t, of).Cmp(want) != 0 {
				t.Fatalf("%s: it makes %s, and %s is to be set", text, total.FloatString(decimals+1), setting)
			}
		}
	})
	if exact == 0 || short == 0 {
		t.Errorf("%d exact blocks, %d with a feeler", exact, short)
	}
}

// product is a number, or a count of it as 2 x 3.15.
func product(t *rapid.T, s string) *big.Rat {
	count := big.NewRat(1, 1)
	if n, of, found := strings.Cut(s, " x "); found {
		count, s = product(t, n), of
	}
	v, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return v.Mul(v, count)
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

// TestBlocksForGlueRoom: dados that are deeper than tongues are long have a block of
// their own.
func TestBlocksForGlueRoom(t *testing.T) {
	list := Blocks(Corner{Name: "s", Fence: 6.1, Height: 6.1, Deep: 6.3}, nil, options())
	if len(list) != 2 || list[1].Name != "block-s-dado-height" {
		t.Errorf("%+v", list)
	}
}
