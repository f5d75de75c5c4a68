package files

import (
	"bytes"
	"fmt"
	"runtime"
	"strings"
	"testing"

	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/mutate"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/preview/scene"
)

// TestMemoryOfDrawers: what a build keeps of each drawer until the last is written, in bytes: so much a job of 5,000
// different ones has 5,000 times. It is what 160 drawers take more than 40.
func TestMemoryOfDrawers(t *testing.T) {
	if mutate.UnderRace {
		t.Skip("the race detector has its own memory")
	}
	const few, many = 40, 160
	keptOf(t, many) // once: what is drawn of measures stays known
	small, large := keptOf(t, few), keptOf(t, many)
	for i, most := range []struct {
		what  string
		bytes int
	}{{"read and worked out", 15_200}, {"on sheets, and the job let go", 0}, {"its report", 6_300}, {"what proves it", 900},
		{"its box for the page", 3_300}, {"what paper is compared with", 13_400}} {
		if each := (large[i] - small[i]) / (many - few); each > most.bytes {
			t.Errorf("%s: a drawer takes %d bytes, more than %d", most.what, each, most.bytes)
		} else {
			t.Logf("%s: %d bytes a drawer", most.what, each)
		}
	}
}

// keptOf is how much more memory is in use after each step of a build of different drawers.
func keptOf(t *testing.T, drawers int) (list []int) {
	var text strings.Builder
	text.WriteString("units: mm\nstock:\n  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}\n" +
		"  hardboard: {thickness: [5.9, 5.85], sheet: 2440 x 1220}\ncutter: {kind: router, diameter: 6}\n" +
		"router: {small-part: 50}\ndrawers:\n")
	for i := range drawers {
		fmt.Fprintf(&text, "  - {name: d%d, outside: %d x %d x %d, sides: birch, bottom: hardboard}\n", i, 250+i, 80+i,
			400+i)
	}
	before := inUse()
	more := func() {
		now := inUse()
		list, before = append(list, now-before), now
	}
	l := load.Read("job.yaml", strings.NewReader(text.String()), nil)
	more()
	l.Lay(t.Context(), nil, sheets.Search{})
	l.Job = nil
	if l.Failed() {
		t.Fatal(l.Problems)
	}
	more()
	r := record.MakeKept(l.Batch, l.Plan, l.Warnings)
	more()
	p, err := prove.New(r)
	if err != nil {
		t.Fatal(err)
	}
	more()
	scenes := make([]scene.Scene, drawers)
	for i, d := range l.Batch.Drawers {
		boxed, err := BoxOf(d, MilledOf(l.Batch, i))
		if err != nil {
			t.Fatal(err)
		}
		scenes[i] = boxed.Scene
	}
	more()
	var report bytes.Buffer
	if err := record.Write(&report, r); err != nil {
		t.Fatal(err)
	}
	said, err := readback.RecordOf(readback.Job{Units: "mm"}, &report, "")
	if err != nil {
		t.Fatal(err)
	}
	report = bytes.Buffer{}
	more()
	runtime.KeepAlive(l)
	runtime.KeepAlive(p)
	runtime.KeepAlive(scenes)
	runtime.KeepAlive(said)
	return list
}

// inUse is how many bytes are in use.
func inUse() int {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC() // what pools held is free after the second
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}
