package files_test

import (
	"slices"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestOnionSkinIsLeft: a flush bottom is rabbeted all round on its outside face. Cut out from the
// inside, with a skin left on the outside, it would fall out where the rabbets' overcuts
// take the skin away; so it is cut out from its own face, and a skin of 0.4 holds it.
func TestOnionSkinIsLeft(t *testing.T) {
	const text = `units: mm
stock:
  birch: {thickness: [14.6, 14.62], sheet: 1525 x 1525}
cutter: {kind: router, diameter: 6}
router: {tabs: {}, onion-skin: 0.4}
drawers:
  - {name: box, outside: 400 x 200 x 380, sides: birch, bottom: birch, joinery: {bottom-fit: flush}}
`
	_, r := written(t, text)
	skins := 0
	for _, c := range r.Checked {
		if c.Sheet != nil {
			skins += c.Sheet.HeldByOnionSkin
		}
	}
	layers := r.Sheets[0].Sheets[0].Layers
	own := slices.ContainsFunc(layers, func(l record.Layer) bool {
		return l.Operation == "profile" &&
			l.Face == "outside" && l.Cuts == 1
	})
	if skins != 1 || !own {
		t.Errorf("%d parts hang by an onion skin, of layers %+v", skins, layers)
	}
}
