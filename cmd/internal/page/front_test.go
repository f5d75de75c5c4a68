package page

import (
	"math"
	"net/http"
	"strings"
	"testing"
)

// A cabinet's front has its rows from the top down, of which each stands over the next; a drawer
// by its size has none.
func TestFront(t *testing.T) {
	p, _ := open(t, bankText)
	f := answer[looked](t, p, "/api/look", asked{bankText, view{Unit: "in"}}, http.StatusOK).Front
	if f == nil || len(f.Rows) != 12 || f.Width != 564 || f.Height != 2100 || f.Rows[0].Drawer != "bank-1" {
		t.Fatalf("%+v", f)
	}
	for i, r := range f.Rows[1:] {
		above := f.Rows[i]
		// Gaps of 3 mm between fronts are usual.
		if gap := above.Bottom - (r.Bottom + r.Height); math.Abs(gap-3) > 1e-6 || r.Text[len(r.Text)-2:] != "in" {
			t.Errorf("row %d, %+v, stands %.3f under %+v", i+2, r, gap, above)
		}
	}
	bare := strings.Replace(bankText, "fronts: overlay", "fronts: none", 1)
	for text, says := range map[string]string{bankText: "heights of the drawer fronts", bare: "no drawer fronts"} {
		l := answer[looked](t, p, "/api/look", asked{Text: text}, http.StatusOK)
		if l.Front == nil || !strings.Contains(l.Front.Said, says) {
			t.Errorf("%+v does not say %q: %+v", l.Front, says, l.Problems)
		}
	}
	if f := answer[looked](t, p, "/api/look", asked{Text: jobText}, http.StatusOK).Front; f != nil {
		t.Errorf("a drawer without an opening: %+v", f)
	}
}

// TestBoxWidth: a drawer in an opening comes with the sum that its width is, in the unit that is shown; one by
// its size has none.
func TestBoxWidth(t *testing.T) {
	p, _ := open(t, bankText)
	for unit, says := range map[string]string{
		"mm": " mm wide = 564.00 opening - 2 x 12.70 slide", "in": " in wide = 22.205 opening - 2 x 0.500 slide"} {
		l := answer[looked](t, p, "/api/look", asked{bankText, view{Unit: unit}}, http.StatusOK)
		if l.Width == nil || !strings.Contains(l.Width.Said, says) {
			t.Errorf("%+v does not say %q", l.Width, says)
		}
	}
	if l := answer[looked](t, p, "/api/look", asked{Text: jobText}, http.StatusOK); l.Width != nil {
		t.Errorf("a drawer by its size: %+v", l.Width)
	}
}
