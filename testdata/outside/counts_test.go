package outside

import (
	"fmt"
	"maps"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
)

// counted is what dxflib/count.cpp reports of a file: entities by type and layer.
type counted struct {
	File   string
	Counts map[string]int
}

// dxflib compiles the counter.
func dxflib(t *testing.T) (program string) {
	t.Helper()
	program = filepath.Join(t.TempDir(), "count")
	if out, err := exec.Command("g++", "-Wall", "-Wextra", "-Werror", "-o", program, "dxflib/count.cpp", "-ldxflib").CombinedOutput(); err != nil {
		t.Fatalf("g++: %v\n%s", err, out)
	}
	return program
}

// counts are those of what ezdxf reads, by the words of the counter.
func (a audited) counts() map[string]int {
	n := map[string]int{}
	for _, e := range a.Entities {
		switch {
		case e.Type == "CIRCLE":
			n["CIRCLE "+e.Layer]++
		case e.Type != "LWPOLYLINE" && e.Type != "POLYLINE":
			n["OTHER "+e.Layer]++
		case e.Closed:
			n["POLYLINE "+e.Layer]++
		default:
			n["OPEN "+e.Layer]++
		}
		if len(e.Points) > 0 {
			n["VERTEX "+e.Layer] += len(e.Points)
		}
	}
	return n
}

func sameCounts(a audited, c counted) error {
	if want := a.counts(); a.File != c.File || len(want) == 0 || !maps.Equal(want, c.Counts) {
		return fmt.Errorf("%s: ezdxf reads %v, dxflib %v", a.File, want, c.Counts)
	}
	return nil
}

// TestCounts: dxflib reads as many entities of each type on each layer of every
// sample, as it is and in both versions and units, and of jobs that have what the samples do not,
// as ezdxf does.
func TestCounts(t *testing.T) {
	program := dxflib(t)
	check := func(t *testing.T, job string) {
		t.Helper()
		dir, _ := build(t, job)
		files := glob(t, dir, ".dxf")
		list := lines[counted](t, "", program, files...)
		if len(list) != len(files) {
			t.Fatalf("dxflib answers for %d of %d files", len(list), len(files))
		}
		for i, a := range audit(t, files) {
			if err := sameCounts(a, list[i]); err != nil {
				t.Error(err)
			}
		}
	}
	samples(t, []string{"mm", "in"}, func(t *testing.T, job, version, unit string) { check(t, job) })
	asTheyAre(t, check)
	extras(t, func(t *testing.T, job extraJob, version, unit string) { check(t, job.text) })
}

// TestCountsFind: the comparison sees an entity that is missing, one on another
// layer, one left open, one of another type, and one with a corner more.
func TestCountsFind(t *testing.T) {
	program := dxflib(t)
	dir, _ := build(t, extraJobs[0].text)
	files := glob(t, dir, "outside.dxf") // which has circles too
	good := lines[counted](t, "", program, files[0])[0]
	read := func() audited {
		a := audit(t, files[:1])[0]
		a.Entities = slices.Clone(a.Entities)
		return a
	}
	if err := sameCounts(read(), good); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(a *audited){
		"missing": func(a *audited) { a.Entities = a.Entities[1:] },
		"layer":   func(a *audited) { a.Entities[0].Layer += "X" },
		"type":    func(a *audited) { a.Entities[0].Type = "LWPOLYLINE" },
		"open":    func(a *audited) { a.Entities[2].Closed = !a.Entities[2].Closed },
		"corner":  func(a *audited) { a.Entities[2].Points = append(slices.Clone(a.Entities[2].Points), [3]float64{}) },
	} {
		a := read()
		spoil(&a)
		if sameCounts(a, good) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}
