package mutate

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"drawerwright/geom/geomtest"
)

// How many spoiled files a reader gets, and what it may take of the processors and memory for one. All that is
// allocated counts, also what is not in use any more.
const (
	few, all  = 2_000, 100_000
	MaxTime   = 5 * time.Second
	MaxMemory = 300 << 20
)

// Each hands a reader spoiled copies of samples, one after the other. A panic, an error, one that
// takes too long or too much memory fails the test, and the copy is kept in a file.
func (f *Format) Each(t *testing.T, samples []Sample, read func(spoiled Sample) error) {
	t.Helper()
	least := time.Now()
	var longest time.Duration
	var most uint64
	times, limit := geomtest.Cases(few, all), MaxTime
	if UnderRace {
		limit *= 10
	}
	for number := range times {
		spoiled := f.Spoil(number, samples)
		stop := watch(limit, func() {
			panic(fmt.Sprintf("case %d, of %s, takes over %v: %s", number, spoiled.Name, limit, Kept(spoiled.Text)))
		})
		before, start := allocated(), time.Now()
		err := unpanicked(func() error { return read(spoiled) })
		took, used := time.Since(start), allocated()-before
		stop()
		if err == nil && used > MaxMemory && !UnderRace {
			err = fmt.Errorf("it allocates %d MiB", used>>20)
		}
		if err != nil {
			t.Fatalf("case %d, of %s: %v\nthe file is kept as %s", number, spoiled.Name, err, Kept(spoiled.Text))
		}
		longest, most = max(longest, took), max(most, used)
	}
	t.Logf("%d files in %.1f s, the longest in %d ms, at most %d MiB allocated",
		times, time.Since(least).Seconds(), longest.Milliseconds(), most>>20)
}

// patience is how many times its limit a case may take that waits: for a processor that others use, or
// for ever.
const patience = 24

// watch calls over once this process has used more than a limit of the processors, on a machine that
// others use, too, or has waited far longer.
func watch(limit time.Duration, over func()) (stop func()) {
	used, start, ended := processorTime(), time.Now(), make(chan struct{})
	go func() {
		for tick := time.NewTicker(limit / 10); ; {
			select {
			case <-ended:
				tick.Stop()
				return
			case <-tick.C:
				if processorTime()-used > limit || time.Since(start) > patience*limit {
					over()
					return
				}
			}
		}
	}()
	return func() { close(ended) }
}

// unpanicked is what a reader says; a panic is an error.
func unpanicked(read func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("a panic: %v\n%s", p, debug.Stack())
		}
	}()
	return read()
}

// Kept keeps a text in a file and gives its name.
func Kept(text string) string {
	f, err := os.CreateTemp("", "spoiled-*")
	if err != nil {
		return err.Error()
	}
	defer f.Close()
	if _, err := f.WriteString(text); err != nil {
		return err.Error()
	}
	return f.Name()
}

// allocated is how many bytes were allocated so far.
func allocated() uint64 {
	list := []metrics.Sample{{Name: "/gc/heap/allocs:bytes"}}
	metrics.Read(list)
	return list[0].Value.Uint64()
}

// Samples reads the files of a pattern.
func Samples(t testing.TB, pattern string) (list []Sample) {
	t.Helper()
	paths, err := filepath.Glob(pattern)
	if err != nil || len(paths) == 0 {
		t.Fatalf("no files %s: %v", pattern, err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, Sample{filepath.Base(path), string(data)})
	}
	return list
}
