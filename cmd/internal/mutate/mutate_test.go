package mutate

import (
	"runtime"
	"testing"
	"time"
)

// TestSpoil: the same number gives the same text, and numbers give different ones, seldom the sample itself.
func TestSpoil(t *testing.T) {
	const tries = 1000
	for name, c := range map[string]struct {
		format *Format
		text   string
	}{
		"YAML":  {&YAML, "units: mm\nstock:\n  birch: {thickness: [12.2, 12.1]}\ndrawers:\n  - name: a\n    sides: birch\n"},
		"CSV":   {&CSV, "name,length,width\na,500,140\n\"b, c\",300,200\n"},
		"DXF":   {&DXF, "0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n8\nA\n10\n1.5\n20\n2.5\n40\n4.0\n0\nENDSEC\n0\nEOF\n"},
		"JSON":  {&JSON, "{\n  \"a\": [1.5, true],\n  \"b\": {\"c\": \"d\"}\n}\n"},
		"Lines": {&Lines, "first 1\nsecond: 2\n\nthird\n"},
	} {
		samples := []Sample{{name, c.text}}
		all := map[string]bool{}
		same := 0
		for n := range tries {
			got := c.format.Spoil(n, samples)
			if again := c.format.Spoil(n, samples); again != got || got.Name != name {
				t.Fatalf("%s %d: %q, and %q", name, n, got, again)
			}
			all[got.Text] = true
			if got.Text == c.text {
				same++
			}
		}
		if len(all) < tries/2 || same > tries/5 {
			t.Errorf("%s: %d of %d differ, %d are the sample", name, len(all), tries, same)
		}
	}
}

// TestEmpty: an empty text can be spoiled as well, as when the ways before have left nothing of it.
func TestEmpty(t *testing.T) {
	for _, f := range []*Format{&YAML, &CSV, &DXF, &JSON, &Lines} {
		for n := range 1000 {
			f.Spoil(n, []Sample{{}})
		}
	}
}

// TestWatch: what uses a processor for longer than its limit is found, and so is what waits for ever;
// what ends before is not.
func TestWatch(t *testing.T) {
	const limit = 20 * time.Millisecond
	for name, wait := range map[string]func(){"busy": func() {}, "waiting": func() { time.Sleep(limit) }} {
		over := make(chan struct{})
		stop := watch(limit, func() { close(over) })
		for found := false; !found; wait() {
			select {
			case <-over:
				found = true
			default:
			}
		}
		stop()
		t.Log(name)
	}
	watch(time.Hour, func() { t.Error("what has ended is told") })()
}

// TestWatchMemory: what is in use at once is told; what is used piece by piece is not.
func TestWatchMemory(t *testing.T) {
	const piece, pieces = 8 << 20, 32
	held := func() (list [][]byte) {
		for range pieces {
			list = append(list, make([]byte, piece))
		}
		return list
	}
	stop := watch(time.Hour, func() {})
	list := held()
	if _, used := stop(); used < piece*pieces*9/10 || len(list) != pieces { // what was there before may be gone
		t.Errorf("of %d MiB %d are seen", piece*pieces>>20, used>>20)
	}
	list = nil
	runtime.GC()
	stop = watch(time.Hour, func() {})
	for range pieces {
		list = [][]byte{make([]byte, piece)}
		runtime.GC()
	}
	if all, used := stop(); all < piece*pieces || used > piece*pieces/2 || len(list) != 1 {
		t.Errorf("of %d MiB one after the other %d are seen", piece*pieces>>20, used>>20)
	}
}
