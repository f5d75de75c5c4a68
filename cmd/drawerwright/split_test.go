package main

import (
	"encoding/csv"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// splitJob cuts a sheet with a bit that comes up again: the outlines of the box joint are cut
// with the small bit, those of the other box with the big one, which has cut dados before.
const splitJob = `units: mm
stock: {b: {thickness: 12, sheet: 2440 x 1220}, c: {thickness: 6, sheet: 1525 x 1525}}
cutter: {kind: router, bits: {big: {diameter: 8, reach: 25, tool: 1}, small: {diameter: 4, reach: 25, tool: 2}}}
joinery: {faces: one}
dxf: {split: cutter}
drawers:
 - {name: u, outside: 500 x 200 x 450, sides: b, bottom: c, joint: box-joint, dividers: [{direction: across, at: 1, stock: b}]}
 - {name: t, outside: 400 x 150 x 400, sides: b, bottom: c, joint: double-rabbet}
`

// TestBitFilesAreNamed: parts.txt, layers.csv, report.json and the commands name the files of
// single bits in the order of cutting, and these are the files that are there.
func TestBitFilesAreNamed(t *testing.T) {
	dir := t.TempDir()
	job, out := jobIn(t, dir, splitJob), filepath.Join(dir, "out")
	if code, _, errs := call(t, "", "build", job, "-o", out); code != exitDone {
		t.Fatal(errs)
	}
	text := func(name string) string {
		data, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	r, err := record.Read([]byte(text("report.json")))
	if err != nil {
		t.Fatal(err)
	}
	sheet := []string{"router/sheets/b-1.inside.1.t1-big.dxf", "router/sheets/b-1.inside.2.t2-small.dxf",
		"router/sheets/b-1.inside.3.t1-big.dxf"}
	laid := r.Sheets[0].Sheets[0]
	if want := append([]string{"router/sheets/b-1.inside.dxf"}, sheet...); !slices.Equal(laid.Files[:4], want) {
		t.Errorf("the sheet has %v, want %v first", laid.Files, want)
	}
	var steps, layers, listed []string
	for _, s := range laid.Run.Faces[0].Steps {
		steps = append(steps, s.File)
	}
	for _, l := range laid.Layers {
		layers = append(layers, l.BitFile)
	}
	if !slices.Equal(slices.Compact(steps), sheet) || !slices.Equal(slices.Compact(layers), sheet) || !r.DXF.Split {
		t.Errorf("run card %v, legend %v, want %v", steps, layers, sheet)
	}
	rows, err := csv.NewReader(strings.NewReader(text("router/layers.csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		if row[1] != "" {
			listed = append(listed, row[1])
		}
	}
	listed = slices.Compact(listed)
	there, err := filepath.Glob(filepath.Join(out, "router", "*", "*.t[12]-*.dxf"))
	if err != nil || len(there) != len(listed) {
		t.Errorf("%d files of bits, and layers.csv has %d: %v", len(there), len(listed), listed)
	}
	_, sheets, _ := call(t, "", "sheets", job, "--all")
	_, setup, _ := call(t, "", "setup", job, "--all")
	var parts, bare []string
	for _, name := range listed {
		if bare = append(bare, path.Base(name)); strings.HasPrefix(name, "router/parts/") {
			parts = append(parts, name)
		}
	}
	for what, c := range map[string]struct {
		text string
		want []string
	}{
		"run card": {text("parts.txt"), sheet},
		"legend":   {text("parts.txt"), bare[:len(parts)]},
		"sheets":   {sheets, sheet},
		"setup":    {setup, parts},
		"bits on run card": {text("parts.txt"), []string{"b-1.inside.1.t1-big.dxf: steps 1 to 2, with T1 big, 8 mm\n",
			"b-1.inside.2.t2-small.dxf: steps 3 to 4, with T2 small, 4 mm\n", "b-1.inside.3.t1-big.dxf: step 5, with T1 big, 8 mm\n"}},
		"bits on the setups": {setup, []string{"face up, with T1 big, 8 mm", "as it lies, with T2 small, 4 mm"}},
	} {
		at := 0
		for _, name := range c.want {
			i := strings.Index(c.text[at:], name)
			if i < 0 {
				t.Errorf("%s: no %s in its place", what, name)
				break
			}
			at += i + len(name)
		}
	}
}
