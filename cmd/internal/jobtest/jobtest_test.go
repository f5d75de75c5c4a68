package jobtest_test

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/load"
	"drawerwright/geom/geomtest"

	"pgregory.net/rapid"
)

// TestCoverage: most jobs can be built, and of what is built there is every unit, machine,
// corner, bottom and slide. None has a mistake of writing: what is refused is refused for
// the box's sake.
func TestCoverage(t *testing.T) {
	jobs := geomtest.Cases(75, 150)
	built, codes := 0, map[string]int{}
	seen := map[string]int{}
	for seed := range uint64(jobs) {
		drawn := jobtest.Seeded(seed, jobtest.Want{})
		if again := jobtest.Text(seed); again != drawn.Text {
			t.Fatalf("seed %d gives two jobs:\n%s\n%s", seed, drawn.Text, again)
		}
		l := load.Read("job.yaml", strings.NewReader(drawn.Text), nil)
		if l.Failed() {
			for _, p := range l.Problems {
				if p.IsError() {
					codes[string(p.Code)]++
					switch p.Code {
					case "yaml", "unknown-key", "no-effect", "missing-key", "not-a-length", "unknown-name":
						t.Errorf("seed %d, a mistake of writing: %v\n%s", seed, p, drawn.Text)
					}
				}
			}
			continue
		}
		built++
		for kind, words := range map[string][]string{"units": {drawn.Units}, "machine": {drawn.Machine}, "corner": drawn.Corners, "bottom": drawn.Bottoms, "slide": drawn.Slides} {
			for _, word := range words {
				seen[kind+" "+word]++
			}
		}
	}
	t.Logf("%d of %d can be built: %v; refused for %v", built, jobs, seen, codes)
	if built < jobs*6/10 {
		t.Errorf("%d of %d can be built", built, jobs)
	}
	for kind, words := range map[string][]string{"units": jobtest.Units, "machine": jobtest.Machines, "corner": jobtest.Corners, "bottom": jobtest.Bottoms, "slide": jobtest.Slides} {
		for _, word := range words {
			if seen[kind+" "+word] < jobs/50 {
				t.Errorf("%s %s: built %d times in %d jobs", kind, word, seen[kind+" "+word], jobs)
			}
		}
	}
}

// TestWants: every machine can be had with every corner and every slide.
func TestWants(t *testing.T) {
	for _, machine := range jobtest.Machines {
		for _, corner := range jobtest.Corners {
			for _, slide := range jobtest.Slides {
				built := 0
				for seed := uint64(0); built == 0 && seed < 12; seed++ {
					drawn := jobtest.Seeded(seed, jobtest.Want{Machine: machine, Corner: corner, Slide: slide})
					if drawn.Machine != machine || drawn.Corners[0] != corner || drawn.Slides[0] != slide {
						t.Fatalf("%s, %s, %s: drawn is %+v", machine, corner, slide, drawn)
					}
					if !load.Read("job.yaml", strings.NewReader(drawn.Text), nil).Failed() {
						built++
					}
				}
				if built == 0 {
					t.Errorf("%s, %s, %s: none can be built", machine, corner, slide)
				}
			}
		}
	}
}

// TestDraw: rapid's drawing is of the same kind.
func TestDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drawn := jobtest.Draw(t, jobtest.Want{})
		if j, problems := job.Read("job.yaml", strings.NewReader(drawn.Text)); j == nil {
			t.Fatalf("%v\n%s", problems, drawn.Text)
		}
	})
}
