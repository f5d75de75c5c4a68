package page

import (
	"encoding/json"
	"net/http"
	"reflect"
	"strings"
	"testing"
)

// TestMeasures: each dimension in the picture names the entry that governs it, and its number
// as the file has it.
func TestMeasures(t *testing.T) {
	type one struct {
		Name, Path, Text string
		Axis             int
	}
	box := `units: mm
stock:
  birch: {thickness: 12, sheet: 1525 x 1525}
  hard: {thickness: 5.9}
cutter: {kind: saw, width: 6.35}
`
	for name, c := range map[string]struct {
		drawers string
		want    []one
	}{
		"an outside size": {`drawers:
  - {name: a, outside: 460 x 140 x 500, sides: birch, bottom: hard, dividers: [{direction: across, at: [240, 120], stock: hard}, {direction: along, at: 1, stock: hard}]}
`, []one{
			{"outside width", "drawers/0/outside/0", "460", 0},
			{"outside depth", "drawers/0/outside/2", "500", 1},
			{"outside height", "drawers/0/outside/1", "140", 2},
			{"from the inside of the box front", "drawers/0/dividers/0/at", "120", 1},
			{"from the inside of the box front", "drawers/0/dividers/0/at", "240", 1},
			{"from the inside of the left side", "drawers/0/dividers/1/at", "215.05", 0},
		}},
		"an opening": {`openings:
  base: {width: [564, 563.5], height: 300, depth: 545, cabinet: frameless, fronts: overlay}
drawers:
  - {name: a, opening: base, slide: side-mount, sides: birch, bottom: hard}
`, []one{
			{"width of the opening base", "openings/base/width", "564, 563.5", 0},
			{"depth of the opening base", "openings/base/depth", "545", 1},
			{"height of the opening base", "openings/base/height", "300", 2},
		}},
		"heights to choose from": {`openings:
  base: {width: 564, height: 300, depth: 545, cabinet: frameless, fronts: overlay}
drawers:
  - {name: a, opening: base, slide: side-mount, box-heights: [100, 200], sides: birch, bottom: hard}
`, []one{
			{"width of the opening base", "openings/base/width", "564", 0},
			{"depth of the opening base", "openings/base/depth", "545", 1},
			{"heights of boxes to choose from", "drawers/0/box-heights", "100, 200", 2},
		}},
	} {
		t.Run(name, func(t *testing.T) {
			p, _ := open(t, box+c.drawers)
			for _, unit := range []string{"", "in"} { // what is typed goes into the file, however numbers are shown
				asked := map[string]any{"text": box + c.drawers, "view": view{Unit: unit}}
				got := answer[looked](t, p, "/api/look", asked, http.StatusOK)
				if got.Failed || got.Unit != "mm" {
					t.Fatal(got.Problems, got.Unit)
				}
				var list []one
				for _, m := range got.Measures {
					list = append(list, one{m.Name, strings.Join(m.Path, "/"), m.Text, m.Axis})
				}
				if !reflect.DeepEqual(list, c.want) {
					t.Errorf("shown in %q: %+v\nwant\n%+v", unit, list, c.want)
				}
			}
		})
	}
}

// TestFirstDividerHasANumber: the page tells the number of each divider, that of the first too.
func TestFirstDividerHasANumber(t *testing.T) {
	data, err := json.Marshal(measure{Places: []string{"100"}})
	if err != nil || !strings.Contains(string(data), `"at":0`) {
		t.Errorf("%s %v", data, err)
	}
}
