package load_test

import (
	"fmt"
	"strings"
	"testing"
)

// shortBitJob is a job whose fronts have holes of 5 mm through 11.95 mm for their handles.
const shortBitJob = `units: mm
stock:
  birch: {thickness: [11.9, 11.85, 11.95]}
  ply: {thickness: [6.1, 6.05, 6.15]}
cutter:
  kind: router
  bits:
    six: {diameter: 6, reach: 28}
    four: {diameter: 4, reach: 9}
openings: {base: {width: 443, height: 320, depth: 480, cabinet: frameless, fronts: overlay}}
drawers:
  - name: box
    opening: base
    slide: side-mount
    rows: 2
    sides: birch
    bottom: ply
    drawer-front: {stock: birch, handles: handle, handle-spacing: 96}
`

// TestBitsInTheirPlaces: what is wrong with a bit stands at that bit, names what it was to cut with
// its size, and what would do.
func TestBitsInTheirPlaces(t *testing.T) {
	const bits = "  bits:\n    six: {diameter: 6, reach: 28}\n    four: {diameter: 4, reach: 9}\n"
	for name, c := range map[string]struct{ with, at, says, hint string }{
		"short":     {bits, "9:32", "the hole of 5 mm on the inside face is 11.95 mm deep in the thickest board; the bit four of 4 mm reaches 9 mm", "use a bit of 5 mm or less with a reach of 11.95 mm or more"},
		"long":      {strings.Replace(bits, "reach: 9", "reach: 12", 1), "", "", ""},
		"wide":      {"  bits:\n    six: {diameter: 6, reach: 28}\n", "8:10", "the hole of 5 mm on the inside face has an inside radius of 2.5 mm; the bit six of 6 mm leaves 3 mm", "use a bit of 5 mm or less"},
		"only, one": {"  diameter: 5\n  reach: 9\n", "8:10", "no bit makes a registration hole of 6 mm through 11.95 mm and 5 mm into the spoilboard: the bit of 5 mm reaches 9 mm", "use a bit with a reach of 16.95 mm or more"},
	} {
		l := read(strings.Replace(shortBitJob, bits, c.with, 1))
		if c.at == "" {
			if l.Failed() {
				t.Errorf("%s: %v", name, l.Problems)
			}
			continue
		}
		if !l.Failed() {
			t.Errorf("%s: no error", name)
			continue
		}
		p := l.Problems[0]
		at := fmt.Sprintf("%d:%d", p.Line, p.Column)
		if at != c.at || !strings.HasSuffix(p.Message, c.says) || p.Hint != c.hint {
			t.Errorf("%s: %s %s\n  %s\nnot %s %s\n  %s", name, at, p.Message, p.Hint, c.at, c.says, c.hint)
		}
	}
}
