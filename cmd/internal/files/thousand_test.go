package files

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/preview/scene"
)

// sink keeps drawings, which are read back, and forgets all else.
type sink struct {
	sync.Mutex
	drawings map[string][]byte
}

func (s *sink) WriteFile(name string, data []byte) error {
	if strings.HasSuffix(name, ".dxf") {
		s.Lock()
		defer s.Unlock()
		s.drawings[name] = append([]byte(nil), data...)
	}
	return nil
}

func (s *sink) Stream(_ string, fill func(io.Writer) error) error { return fill(io.Discard) }

func (s *sink) ReadFile(name string) ([]byte, error) {
	s.Lock()
	defer s.Unlock()
	data, ok := s.drawings[name]
	if !ok {
		return nil, fmt.Errorf("%s: %w", name, os.ErrNotExist)
	}
	return data, nil
}

func (s *sink) Open(name string) (io.ReadCloser, error) {
	data, err := s.ReadFile(name)
	return io.NopCloser(bytes.NewReader(data)), err
}

// lot makes what writes a lot of different drawers, and proves them, as the build does: the proof goes on from
// the drawings that milled solids are read from.
func lot(b *testing.B, first, n int, solids string) func() {
	text := "units: mm\nstock:\n  birch: {thickness: [12.2, 12.15, 12.25]}\n  ply: {thickness: [5.9, 5.85, 5.95]}\n" +
		"cutter: {kind: router, diameter: 6}\npreview: " + solids + "\ndrawers:\n"
	for i := first; i < first+n; i++ {
		text += fmt.Sprintf("  - {name: d%d, outside: %d x %d x %d, sides: birch, bottom: ply}\n", i, 250+i%500,
			80+i%160, 400+i/10)
	}
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		b.Fatal(problems)
	}
	all, _ := batch.Bare(j)
	r := record.MakeKept(all, sheets.Plan{}, nil)
	r.Proof.Grow(n)
	reader, err := prove.New(r)
	if err != nil {
		b.Fatal(err)
	}
	return func() {
		d := drawers{batch: all, to: &sink{drawings: map[string][]byte{}}, reader: reader,
			proofs: r.Proof, scenes: make([]scene.Scene, n)}
		if err := d.write(b.Context()); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkThousand compares what the files of 1,000 different drawers take as milled and as designed, in one
// run, by turns: of each lot the fastest of three.
func BenchmarkThousand(b *testing.B) {
	const size = 50
	for b.Loop() {
		var took [2]time.Duration
		for first := 0; first < 1000; first += size {
			kinds := [2]func(){lot(b, first, size, "designed"), lot(b, first, size, "milled")}
			least := [2]time.Duration{math.MaxInt64, math.MaxInt64}
			for range 3 {
				for k, write := range kinds {
					start := time.Now()
					write()
					least[k] = min(least[k], time.Since(start))
				}
			}
			took[0], took[1] = took[0]+least[0], took[1]+least[1]
		}
		b.ReportMetric(took[0].Seconds(), "s-designed")
		b.ReportMetric(took[1].Seconds(), "s-milled")
		b.ReportMetric(took[1].Seconds()/took[0].Seconds(), "times")
	}
}
