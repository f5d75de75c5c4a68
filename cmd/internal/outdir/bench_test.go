package outdir

import (
	"bytes"
	"fmt"
	"path/filepath"
	"sync"
	"testing"
)

// thousand are the files of 1,000 drawers: 14 files each of 6 kB, in their folders.
func thousand() (names []string) {
	for i := range 1000 {
		for j := range 14 {
			names = append(names, fmt.Sprintf("preview/drawer-%04d/part-%02d.stl", i, j))
		}
	}
	return names
}

func buildThousand(b *testing.B, dir string, names []string) {
	s, err := Create(dir)
	if err != nil {
		b.Fatal(err)
	}
	var wg sync.WaitGroup
	for w := range 2 {
		wg.Go(func() {
			data := bytes.Repeat([]byte("1234567890\n"), 560)
			for i := w; i < len(names); i += 2 {
				if err := s.WriteFile(names[i], data); err != nil {
					b.Error(err)
				}
			}
		})
	}
	wg.Wait()
	if err := s.Commit(); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkNew writes 14,000 files into a new folder.
func BenchmarkNew(b *testing.B) {
	names := thousand()
	for b.Loop() {
		b.StopTimer()
		dir := filepath.Join(b.TempDir(), "out")
		b.StartTimer()
		buildThousand(b, dir, names)
	}
}

// BenchmarkOver writes 14,000 files over as many.
func BenchmarkOver(b *testing.B) {
	names, dir := thousand(), filepath.Join(b.TempDir(), "out")
	buildThousand(b, dir, names)
	for b.Loop() {
		buildThousand(b, dir, names)
	}
}

// BenchmarkInspect reads and hashes 14,000 files of an old folder.
func BenchmarkInspect(b *testing.B) {
	dir := filepath.Join(b.TempDir(), "out")
	buildThousand(b, dir, thousand())
	t, err := resolve(dir)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := t.inspect(); err != nil {
			b.Fatal(err)
		}
	}
}
