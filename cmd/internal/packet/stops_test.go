package packet

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom/nest"
)

// TestStops: wherever a packet of many drawers is stopped, it is not gone on with for more than a few pages.
func TestStops(t *testing.T) {
	var text strings.Builder
	text.WriteString("units: mm\nstock:\n  ply: {thickness: 12, sheet: 1525 x 1525}\n" +
		"  hard: {thickness: 6, sheet: 1525 x 1525}\ncutter: {kind: router, diameter: 6}\ndrawers:\n")
	for i := range 60 {
		fmt.Fprintf(&text, "  - {name: d%d, outside: %d x %d x %d, sides: ply, bottom: hard}\n",
			i, 300+7*i, 90+3*i, 400+11*i)
	}
	b := read(t, "many.yaml", []byte(text.String()))
	plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	r := record.MakeKept(b, plan, nil)
	stopped := 0
	for at, all := 0, 1; at < all; at += 8 {
		ctx, stop := context.WithCancel(t.Context())
		pages := 0
		err := lay(ctx, b, r, plan, func(drawing.Page) {
			if pages++; pages == at {
				stop()
			}
		})
		stop()
		if at == 0 {
			if all = pages; err != nil || all < 40 {
				t.Fatalf("%d pages, %v", all, err)
			}
			continue
		}
		switch { // labels are the last, and soon done
		case err != nil && pages <= at+6:
			stopped++
		case err != nil || pages < all:
			t.Errorf("stopped at page %d of %d, it ends at %d, %v", at, all, pages, err)
		}
	}
	if stopped < 5 {
		t.Errorf("%d were stopped", stopped)
	}
}
