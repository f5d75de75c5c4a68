package main

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/readback"
	"drawerwright/geom"
)

// forPeople are the outputs that a joiner reads.
var forPeople = []string{readback.PartsText, readback.FitText, readback.SetupText, readback.SheetsText, readback.Packet,
	readback.ShopPage}

// lengthKinds are the things whose numbers are lengths where they have a step.
var lengthKinds = []string{"part", "row", "opening", "spacer", "fit", "box", "cut", "stack", "board", "corner", "sag", "bore"}

// inchNumber is the one grammar of lengths in inch jobs: whole inches, a fraction to a 64th, or three
// decimals; caliper limits that are nearer than that have more.
var inchNumber = regexp.MustCompile(`^-?(?:\d+|(?:\d+ )?\d*[13579]/(?:2|4|8|16|32|64)|\d+\.\d{3,5})$`)

// Lengths in millimeters that stand in an inch job: the names of bits and hardware made in those, with inches beside
// them where they are drilled for.
var (
	anyMM  = regexp.MustCompile(`\d+(?:\.\d+)? ?mm\b[^,;<]{0,14}`)
	goods  = regexp.MustCompile(`^\d+(?:\.5)? mm(?:\s\(0\.\d{3}\sin\)|\spins?|\sdowels?)`)
	bought = regexp.MustCompile(`(?m)^.*(?:dowel|slide|undermount|side-mount|center-mount).*$`)
)

// TestInchJobsHaveOneGrammar: every length that people read of inch jobs is of one grammar, and is
// the record's to half a thousandth; by a tape to half of its step; limits are on the inner side.
// There are no millimeters but in the names of goods.
func TestInchJobsHaveOneGrammar(t *testing.T) {
	lengths, jobs := 0, 0
	for seed := uint64(1); jobs < 4 && seed < 60; seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{Units: "in"}).Text
		outputs, ok := composed(t, text)
		if !ok {
			continue
		}
		jobs++
		facts, err := readback.Read(read(t, text, outputs, false), outputs)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		exact := make(map[readback.Key]float64)
		for _, f := range facts {
			if l, err := geom.ParseLength(f.Value, geom.Inch); err == nil && f.Step > 0 && f.Step < 1e-4 {
				exact[f.Key] = l.MM() / geom.InchMM
			}
		}
		for _, f := range facts {
			want, known := exact[f.Key]
			if f.Out == readback.Packet && f.Kind == "fit" && strings.HasPrefix(f.Measure, "limit ") {
				continue // what the form for readings says in two numbers, rounded inward: the reader's tests hold it
			}
			if !known || f.Step < 1e-4 || !slices.Contains(forPeople, f.Out) || !slices.Contains(lengthKinds, f.Kind) {
				continue
			}
			lengths++
			if why := unlike(f, want); why != "" {
				t.Errorf("seed %d: %s, %s: %q %s; the record has %.6f", seed, f.Out, f.Key, f.Value, why, want)
			}
		}
		noMillimeters(t, outputs)
	}
	t.Logf("%d lengths of %d jobs", lengths, jobs)
	if lengths < 1000 {
		t.Error("too few")
	}
}

// unlike says what is wrong with a length as it is printed; empty where nothing is. want is in inches.
func unlike(f readback.Fact, want float64) string {
	const computed = 2e-6 // of nanometers and of record's billionths
	if !inchNumber.MatchString(f.Value) {
		return "is of no grammar"
	}
	l, err := geom.ParseLength(f.Value, geom.Inch)
	if err != nil {
		return err.Error()
	}
	is := l.MM() / geom.InchMM
	over, half := is-want, 0.0005
	switch {
	case f.Measure == "limit from":
		over -= half
	case f.Measure == "limit to":
		over += half
	case f.Measure == "diagonals apart": // a limit, by a tape to a 64th
		over, half = over+1.0/128, 1.0/128
	case f.Step > 0.03: // by a tape to a 32nd
		half = 1.0 / 64
	}
	if math.Abs(over) > half+computed {
		return "is rounded too far"
	}
	return ""
}

// noMillimeters looks through what people read.
func noMillimeters(t *testing.T, outputs readback.Outputs) {
	t.Helper()
	for _, out := range append(slices.Clone(forPeople), readback.CheckJSON) {
		text := outputs[out]
		if out == readback.Packet {
			pages, err := readback.Pages(out, []byte(text))
			if err != nil {
				t.Fatal(err)
			}
			text = ""
			for _, p := range pages {
				text += strings.Join(p, "\n") + "\n"
			}
		}
		text = bought.ReplaceAllString(text, "")
		for _, found := range anyMM.FindAllString(text, -1) {
			if !goods.MatchString(found) {
				t.Errorf("%s: %q in an inch job", out, found)
			}
		}
	}
}
