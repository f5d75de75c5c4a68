package page

import (
	"net/http"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// twoSheets is a job whose birch is less than one sheet by area, and takes two.
const twoSheets = `units: mm
stock:
  birch: {thickness: [12.1, 12.2], sheet: 1000 x 1000, grain: length, price: 55}
  hard: {thickness: [5.98, 6], sheet: 1000 x 1000, price: 20}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: long, outside: 620 x 140 x 620, sides: birch, bottom: hard}
  - {name: deep, outside: 620 x 240 x 620, sides: birch, bottom: hard}
`

// TestOneCountOfSheets: what to buy and the sheets say the layout's number, in either unit;
// too little stock is a problem of the field that says so, and ends with the hint.
func TestOneCountOfSheets(t *testing.T) {
	p, _ := open(t, twoSheets)
	for unit, size := range map[string]string{"mm": "birch, 1000 x 1000 mm", "in": "birch, 39 3/8 x 39 3/8 in"} {
		for range 2 { // the second time out of memory
			got := answer[looked](t, p, "/api/look", asked{twoSheets, view{Show: "buy", Unit: unit}}, http.StatusOK)
			if row := got.Tables[0].Rows[0]; texts(row) != "board;"+size+";2;sheets;110.00" {
				t.Errorf("to buy: %q", row)
			}
		}
		laid := answer[record.Sheets](t, p, "/api/sheets", map[string]string{"text": twoSheets, "unit": unit}, http.StatusOK)
		if len(laid.Stocks) != 2 || laid.Stocks[0].Count != 2 || laid.Stocks[0].Cost != 110 || laid.Units != unit {
			t.Errorf("sheets: %+v", laid)
		}
	}
	few := strings.Replace(twoSheets, "price: 55", "price: 55, count: 1", 1)
	got := answer[looked](t, p, "/api/look", asked{few, view{}}, http.StatusOK)
	if q := got.Problems; !got.Failed || len(q) != 1 ||
		q[0].Code != "no-sheet" || q[0].Line != 3 ||
		strings.Join(q[0].Path, "/") != "stock/birch/count" || !strings.Contains(q[0].Hint, "`count: 2`") {
		t.Errorf("one sheet of two: %+v", q)
	}
	all := map[string]string{"text": few, "what": "all"}
	if w := do(p, request(p, "POST", "/api/take", all)); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("a download of it: %d", w.Code)
	}
	typed := step("enter", []string{"stock", "birch", "count"}, "2")
	got = answer[looked](t, p, "/api/edit", edited{Text: few, Step: typed, View: view{Show: "buy"}}, http.StatusOK)
	if got.Failed || got.Tables[0].Rows[0][2].Text != "2" {
		t.Errorf("two sheets of two: %+v", got.Problems)
	}
}

// texts are those of a row of cells, with a semicolon between.
func texts(row []cell) string {
	list := make([]string, len(row))
	for i, c := range row {
		list[i] = c.Text
	}
	return strings.Join(list, ";")
}
