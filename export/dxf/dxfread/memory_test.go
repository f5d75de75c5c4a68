package dxfread_test

import (
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"
)

// allocated gives the bytes and the number of allocations of reading a text.
func allocated(text []byte) (size, count uint64) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err := dxfread.Parse(text)
	runtime.ReadMemStats(&after)
	runtime.KeepAlive(err)
	return after.TotalAlloc - before.TotalAlloc, after.Mallocs - before.Mallocs
}

// maxMemory is how many bytes may be taken for each byte of the worst file: an
// entity of 120 bytes stands in 4 ("0\nX\n"). Append makes room for a quarter more
// each time, which comes to 1/(1 - 1/1.25) = 5 times the room in all, of which up to
// a quarter more than is needed.
const maxMemory = 120 / 4 * 25 / 4

// Memory grows with the file and with nothing else, whatever it is made of.
func TestMemory(t *testing.T) {
	const size = 1 << 20
	many := func(pairs string) string { return strings.Repeat(tags(pairs), size/len(tags(pairs))) }
	distinct := func(code string) string {
		var b strings.Builder
		for i := 0; b.Len() < size; i++ {
			b.WriteString(code + string(rune('A'+i%26)) + string(rune('A'+i/26%26)) + string(rune('A'+i/676%26)) + string(rune('A'+i/17576)) + "\n")
		}
		return b.String()
	}
	start, end := tags("0 SECTION|2 ENTITIES"), tags("0 ENDSEC|0 EOF")
	for name, text := range map[string]string{
		"entities":                start + many("0 X") + end,
		"entities, then comments": start + many("0 X") + many("999 ") + many("999 ") + end,
		"comments, then entities": start + tags("0 Y") + many("999 ") + many("999 ") + many("0 X") + end,
		"few entities, comments":  start + strings.Repeat("0\nX\n", 1000) + many("999 ") + end,
		"types":                   start + distinct("0\n") + end,
		"layers":                  start + distinct("0\nX\n8\n") + end,
		"layers of one entity":    start + "0\nX\n" + distinct("8\n") + end,
		"vertices":                start + tags("0 LWPOLYLINE") + many("10 1|20 2") + end,
		"old vertices":            start + tags("0 POLYLINE") + many("0 VERTEX|10 1|20 2") + tags("0 SEQEND") + end,
		"polylines":               start + many("0 LWPOLYLINE|10 1|20 2") + end,
		"a stated count":          start + tags("0 LWPOLYLINE|90 2000000000") + end,
		"a long code":             strings.Repeat("0", size) + "\n",
		"a long value":            start + tags("0 CIRCLE|10 "+strings.Repeat("1", size)) + end,
		"a long wrong value":      start + tags("0 CIRCLE|10 "+strings.Repeat("x", size)) + end,
		"a long type":             start + tags("0 "+strings.Repeat("x", size)) + end,
		"empty lines":             start + tags("0 CIRCLE|8 0") + strings.Repeat("\n", size),
		"layer table":             tags("0 SECTION|2 TABLES|0 TABLE|2 LAYER") + distinct("0\nLAYER\n2\n") + tags("0 ENDTAB|0 ENDSEC") + start + end,
	} {
		bytes, _ := allocated([]byte(text))
		if most := uint64(maxMemory*len(text) + 1<<16); bytes > most {
			t.Errorf("%s: %d bytes for %d, %.1f each", name, bytes, len(text), float64(bytes)/float64(len(text)))
		}
	}
}

// Reading a drawing takes one allocation for each polyline and few others.
func TestAllocations(t *testing.T) {
	for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
		for _, n := range []uint64{10_000, 20_000} {
			if _, count := allocated(large(t, v, int(n))); count > n+200 {
				t.Errorf("version %d: %d allocations for %d polylines", v, count, n)
			}
		}
	}
}

// The vertices of a polyline have no room into which a caller could append over
// those of the next.
func TestVerticesApart(t *testing.T) {
	f := parse(t, tags(head+"0 LWPOLYLINE|10 1|20 2|0 LWPOLYLINE|10 3|20 4"+tail))
	_ = append(f.Entities[0].Vertices, dxfread.Vertex{X: 9})
	if !slices.Equal(f.Entities[1].Vertices, []dxfread.Vertex{{X: 3, Y: 4}}) {
		t.Errorf("%+v", f.Entities)
	}
}

// Of many entities each is there, in order.
func TestManyEntities(t *testing.T) {
	var b strings.Builder
	const n = 30_000
	for i := range n {
		x := strconv.Itoa(i)
		b.WriteString("|0 LINE|8 A|10 " + x + "|20 2|11 3|21 4")
		if i > n/2 {
			b.WriteString("|999 " + x + strings.Repeat("|5 F", i%30))
		}
	}
	f := parse(t, tags("0 SECTION|2 ENTITIES"+b.String()+tail))
	if len(f.Entities) != n {
		t.Fatalf("%d entities, want %d", len(f.Entities), n)
	}
	for i, e := range f.Entities {
		if e.Type != "LINE" || e.Layer != "A" || !slices.Equal(e.Vertices, []dxfread.Vertex{{X: float64(i), Y: 2}, {X: 3, Y: 4}}) {
			t.Fatalf("entity %d: %+v", i, e)
		}
	}
}

// Polylines of few vertices and of many, in any order, are whole.
func TestLongPolylines(t *testing.T) {
	var b strings.Builder
	b.WriteString("0 SECTION|2 ENTITIES")
	sizes := []int{1, 63, 2, 100, 5000, 40_000, 3, 70_000, 65_536}
	for _, n := range sizes {
		b.WriteString("|0 LWPOLYLINE|8 A")
		b.WriteString(strings.Repeat("|10 1|20 2|10 3|20 4", n))
	}
	f := parse(t, tags(b.String()+tail))
	if len(f.Entities) != len(sizes) {
		t.Fatalf("%d entities", len(f.Entities))
	}
	for i, n := range sizes {
		v := f.Entities[i].Vertices
		if len(v) != 2*n {
			t.Fatalf("entity %d: %d vertices, want %d", i, len(v), 2*n)
		}
		for j := range v {
			if want := (dxfread.Vertex{X: float64(j%2*2 + 1), Y: float64(j%2*2 + 2)}); v[j] != want {
				t.Fatalf("entity %d, vertex %d: %v, want %v", i, j, v[j], want)
			}
		}
	}
}
