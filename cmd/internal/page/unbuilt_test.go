package page

import (
	"net/http"
	"testing"
)

// A drawer for a router is shown as its bits leave it, also where it cannot be built.
func TestLookAtUnbuilt(t *testing.T) {
	const text = "units: mm\nstock: {birch: {thickness: 12, sheet: 1525 x 13}}\ncutter: {kind: router, diameter: 6}\n" +
		"drawers: [{name: wide, outside: 460 x 140 x 500, sides: birch, bottom: birch}]\n"
	p, _ := open(t, text)
	if got := answer[looked](t, p, "/api/look", asked{Text: text}, http.StatusOK); !got.Failed || len(got.Scene) == 0 {
		t.Errorf("%+v", got.Problems)
	}
}
