package files_test

import (
	"testing"
)

// TestHoleTouchesTheMiddle: the knob's clearance hole in the box's front, 10 mm in
// radius and 10 mm over the middle, touches the line on which the proof of sheets looks
// for wood; the front hangs by its tabs all the same.
func TestHoleTouchesTheMiddle(t *testing.T) {
	const text = `units: mm
stock:
  birch: {thickness: [12, 12.05], sheet: 1525 x 1525}
  ply: {thickness: [6, 6.05], sheet: 1525 x 1525}
  face: {thickness: 16.8}
cutter: {kind: router, bits: {six: {diameter: 6, reach: 32}, three: {diameter: 3, reach: 32}}}
router: {tabs: {}, onion-skin: 0.4}
drawers:
  - name: box
    outside: 500 x 180 x 450
    sides: birch
    bottom: ply
    drawer-front: {stock: face, width: 520, height: 200, overhang-left: 10, overhang-below: 10, handles: knob, handle-from-top: 90}
`
	written(t, text)
}
