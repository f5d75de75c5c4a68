package record_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
)

// TestWrittenAsJSON: of every sample, and of nothing, a report that is written piece by piece is the JSON
// of the whole, with proofs and without.
func TestWrittenAsJSON(t *testing.T) {
	same := func(name string, r record.Report) {
		var out bytes.Buffer
		if err := record.Write(&out, record.Keep(r)); err != nil {
			t.Fatal(err)
		}
		want, err := record.JSON(r)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(out.Bytes(), want) {
			t.Errorf("%s: %d bytes, not the %d of the whole", name, out.Len(), len(want))
		}
	}
	same("nothing", record.Report{Units: "in"})
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) < 10 {
		t.Fatal(samples, err)
	}
	for _, name := range samples {
		r := reportOf(t, name)
		same(name, r)
		r.Proof = []record.Proof{{Drawer: "<a & b>"}}
		r.Checked = []record.Checked{{Kind: record.CheckedSolid, Name: "x"}}
		same(name+", proven", r)
	}
}

// TestWriterFails: the writer's error is that of the report, whenever it comes.
func TestWriterFails(t *testing.T) {
	r := reportOf(t, "../../../samples/bench-drawers.yaml")
	for room := range 30 {
		if err := record.Write(&short{room * 1000}, record.Keep(r)); err != io.ErrShortWrite {
			t.Fatalf("room for %d KB: %v", room, err)
		}
	}
}

// short takes so many bytes.
type short struct{ room int }

func (s *short) Write(b []byte) (int, error) {
	if s.room -= len(b); s.room < 0 {
		return 0, io.ErrShortWrite
	}
	return len(b), nil
}

// reportOf is the report of a job file, laid out.
func reportOf(t *testing.T, name string) record.Report {
	t.Helper()
	in, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	l := load.Read(name, in, load.Beside(name))
	l.Lay(t.Context(), nil, sheets.Search{})
	if l.Failed() {
		t.Fatal(l.Problems)
	}
	return record.Make(l.Batch, l.Plan, l.Warnings)
}
