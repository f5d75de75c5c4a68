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
	f.each(t, samples, read, func(allocated, _ uint64) uint64 { return allocated })
}

// EachInUse is [Format.Each] for what works sound jobs out, too: of memory what is in use at once counts, with what is
// not collected yet.
func (f *Format) EachInUse(t *testing.T, samples []Sample, read func(spoiled Sample) error) {
	t.Helper()
	f.each(t, samples, read, func(_, inUse uint64) uint64 { return inUse })
}

func (f *Format) each(t *testing.T, samples []Sample, read func(spoiled Sample) error,
	counts func(allocated, inUse uint64) uint64) {
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
		start := time.Now()
		err := unpanicked(func() error { return read(spoiled) })
		used, took := counts(stop()), time.Since(start)
		if err == nil && used > MaxMemory && !UnderRace {
			err = fmt.Errorf("it takes %d MiB", used>>20)
		}
		if err != nil {
			t.Fatalf("case %d, of %s: %v\nthe file is kept as %s", number, spoiled.Name, err, Kept(spoiled.Text))
		}
		longest, most = max(longest, took), max(most, used)
	}
	t.Logf("%d files in %.1f s, the longest in %d ms, at most %d MiB",
		times, time.Since(least).Seconds(), longest.Milliseconds(), most>>20)
}

// patience is how many times its limit a case may take that waits: for a processor that others use, or
// for ever.
const patience = 24

// look is how often the watch looks.
const look = 20 * time.Millisecond

// watch calls over once a limit has passed and this process has used as much of the processors, so that others' work
// does not count, or has waited far longer. Its end gives what was allocated, and how much more was in use at once than
// before.
func watch(limit time.Duration, over func()) (stop func() (allocated, inUse uint64)) {
	used, start, ended := processorTime(), time.Now(), make(chan struct{})
	before := metric("/memory/classes/heap/objects:bytes")
	allocatedBefore := metric("/gc/heap/allocs:bytes")
	found := make(chan [2]uint64, 1)
	go func() {
		top := before
		for tick := time.NewTicker(look); ; {
			select {
			case <-ended:
				tick.Stop()
				// What was allocated in all cannot have been in use at once, if it is less.
				now := max(top, metric("/memory/classes/heap/objects:bytes"))
				all := metric("/gc/heap/allocs:bytes") - allocatedBefore
				found <- [2]uint64{all, min(now-before, all)}
				return
			case <-tick.C:
				top = max(top, metric("/memory/classes/heap/objects:bytes"))
				passed := time.Since(start)
				if passed > limit && processorTime()-used > limit || passed > patience*limit {
					over()
					found <- [2]uint64{}
					return
				}
			}
		}
	}()
	return func() (allocated, inUse uint64) {
		close(ended)
		list := <-found
		return list[0], list[1]
	}
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

// metric is a number of bytes that the runtime tells.
func metric(name string) uint64 {
	list := []metrics.Sample{{Name: name}}
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
