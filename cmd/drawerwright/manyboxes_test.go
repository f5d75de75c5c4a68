package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestFormOverPages: a job of so many different boxes that their form goes on over several pages is proven as any
// other.
func TestFormOverPages(t *testing.T) {
	var job strings.Builder
	job.WriteString("units: mm\nstock: {ply: {thickness: 12}, thin: {thickness: 6}}\n" +
		"cutter: {kind: saw, width: 6.2}\ndrawers:\n")
	for i := range 40 {
		fmt.Fprintf(&job, "  - {name: d%d, outside: %d x %d x 400, sides: ply, bottom: thin}\n", i, 250+i, 80+i)
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "many.yaml")
	if err := os.WriteFile(file, []byte(job.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	ran(t, 0, "build", file, "-o", filepath.Join(dir, "out"))
}
