package outside

import (
	"fmt"
	"path/filepath"
	"testing"
)

// bankOfSixty is as many drawers as the frames of the viewer are measured with, in two openings.
const bankOfSixty = `units: mm
stock:
  ply: {thickness: [12.02, 11.99, 12.01], grain: length}
  thin: {thickness: [6.02, 5.99, 6.01]}
cutter: {kind: router, diameter: 5, reach: 22}
openings:
  left: {width: 500, height: 3900, depth: 480, cabinet: frameless, fronts: overlay}
  right: {width: 450, height: 3900, depth: 480, cabinet: frameless, fronts: overlay}
drawers:
  - {name: left, opening: left, slide: side-mount, rows: 30, sides: ply, bottom: thin,
     drawer-front: {stock: ply, handles: handle, handle-spacing: 96}}
  - {name: right, opening: right, slide: side-mount, rows: 30, sides: ply, bottom: thin,
     drawer-front: {stock: ply, handles: handle, handle-spacing: 96}}
`

// BenchmarkFrame is what the script of the viewer takes of a frame, with 60 drawers that turn.
func BenchmarkFrame(b *testing.B) {
	dir, _ := build(b, bankOfSixty)
	input := fmt.Sprintf("{\"page\": %q}\n", filepath.Join(dir, "boxes.html"))
	for b.Loop() {
		for _, l := range lines[struct {
			Drawers int
			MS      map[string]float64
		}](b, input, "node", "viewer_frames.mjs") {
			for what, ms := range l.MS {
				b.ReportMetric(ms, what+"-ms")
			}
			b.ReportMetric(float64(l.Drawers), "drawers")
		}
	}
	b.ReportMetric(0, "ns/op") // starting the browser is most of it
}
