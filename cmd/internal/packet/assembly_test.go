package packet

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// TestStepsAreOfTheirDrawers: cleats stand as far from the ends as boards are thick, and their own thickness, so that
// boxes of 12 and of 15 mm have steps of their own; those of equal boards share them.
func TestStepsAreOfTheirDrawers(t *testing.T) {
	file := filepath.Join(t.TempDir(), "job.yaml")
	if err := os.WriteFile(file, []byte(`units: mm
stock:
  thin: {thickness: [12, 12, 12]}
  thick: {thickness: [15, 15, 15]}
  ply: {thickness: [6, 6, 6]}
cutter: {kind: saw, width: 6.2}
joinery: {bottom-fit: cleats}
drawers:
  - {name: small, outside: 300 x 100 x 400, joint: butt, sides: thin, bottom: ply}
  - {name: large, outside: 400 x 100 x 400, joint: butt, sides: thick, bottom: ply}
  - {name: same, outside: 350 x 100 x 400, joint: butt, sides: thin, bottom: ply}
`), 0o600); err != nil {
		t.Fatal(err)
	}
	k := layOut(t, file, date, nil)
	m := maker{batch: k.batch, unit: k.batch.Units}
	at := slices.IndexFunc(k.pages, func(p drawing.Page) bool { return begins(p, "Assembly") })
	text := said(k.pages[at]) + said(k.pages[at+1])
	for _, d := range m.batch.Drawers {
		side, _ := cleatsAt(d)
		want := "on the sides " + m.asSet(side) + " mm from the front ends"
		if !strings.Contains(text, want) {
			t.Errorf("%s: no %q in %q", d.Spec.Name, want, text)
		}
	}
	if groups := m.assembledAlike(); len(groups) != 2 || len(groups[0]) != 2 {
		t.Errorf("%d groups", len(groups))
	}
}
