package packet

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom/nest"
)

// laid are the pages of a sample.
func laid(t testing.TB, file, date string) (record.Report, []drawing.Page) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b := read(t, file, text)
	plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	r := record.Make(b, plan, nil)
	r.Date = date
	var pages []drawing.Page
	if err := lay(t.Context(), b, r, plan, func(p drawing.Page) { pages = append(pages, p) }); err != nil {
		t.Fatal(err)
	}
	return r, pages
}

// TestTitleBlock: every page of every sample says the code of the report, and which page it is of how many; all but
// those of labels have the date that was given, and none has one without.
func TestTitleBlock(t *testing.T) {
	const date = "2026-03-31"
	for _, file := range samples(t) {
		r, pages := laid(t, file, date)
		labels := 0
		for i, p := range pages {
			code, strip, number, dated := 0, 0, 0, 0
			for _, w := range p.Texts {
				switch {
				case w.String == "code "+r.Code:
					code++ // in the block, and on each label
				case strings.HasSuffix(w.String, ", code "+r.Code):
					strip++
				case w.String == fmt.Sprintf("page %d", i+1):
					number++
				case w.String == date:
					dated++
				}
			}
			if dated == 0 {
				labels, code = labels+1, strip
			}
			if code != 1 || number != 1 || dated > 1 || labels > 0 && dated == 1 {
				t.Errorf("%s, page %d: %d codes, %d numbers, %d dates", file, i+1, code, number, dated)
			}
			total := p.Later[len(p.Later)-1]
			if want := fmt.Sprintf("of %d", len(pages)); len(total.Texts) != 1 || total.Texts[0].String != want {
				t.Errorf("%s, page %d says %v, not %q", file, i+1, total.Texts, want)
			}
		}
		if labels == len(pages) {
			t.Errorf("%s: no page has the date", file)
		}
	}
	_, pages := laid(t, samples(t)[0], "")
	for i, p := range pages {
		for _, w := range p.Texts {
			if strings.Contains(w.String, date[:5]) {
				t.Errorf("page %d has a date: %q", i+1, w.String)
			}
		}
	}
}
