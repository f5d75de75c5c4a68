package packet

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// packetOf is a sample's packet as it is laid out, with a date and some warnings.
type packetOf struct {
	file   string
	batch  batch.Batch
	report record.Kept
	pages  []drawing.Page
	plan   sheets.Plan
}

const date = "2026-03-31"

// layOut lays a job out.
func layOut(t testing.TB, file, date string, warnings []record.Warning) packetOf {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return layOutBatch(t, filepath.Base(file), date, read(t, file, text), warnings)
}

// layOutBatch lays a batch out.
func layOutBatch(t testing.TB, name, date string, b batch.Batch, warnings []record.Warning) packetOf {
	t.Helper()
	out := packetOf{file: name, batch: b}
	plan, err := sheets.Of(t.Context(), out.batch, nil, sheets.Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	out.plan, out.report = plan, record.MakeKept(out.batch, plan, warnings)
	out.report.Date = date
	take := func(p drawing.Page) { out.pages = append(out.pages, p) }
	if err := lay(t.Context(), out.batch, out.report, plan, take); err != nil {
		t.Fatal(err)
	}
	return out
}

// packets are those of all samples, laid out once for all tests.
func packets(t testing.TB) []packetOf {
	t.Helper()
	if len(laid) > 0 {
		return laid
	}
	var warnings []record.Warning
	for i := range 6 {
		warnings = append(warnings, record.Warning{Level: geom.LevelWarning.String(), Code: fmt.Sprint("w", i),
			Message: fmt.Sprintf("warning %d: something comes out %d mm off, and what stands here takes more than "+
				"one line of the page, so that it is broken", i, i)})
	}
	warnings[0].Hint = wayOut
	for _, file := range samples(t) {
		laid = append(laid, layOut(t, file, date, warnings))
	}
	return laid
}

var laid []packetOf

// wayOut is that of the first warning of [packets].
const wayOut = "write `bottom-clearance: 2`; or choose thinner sides"

// TestTitleBlock: every page of every sample says the code of the report, and which page it is of how many; all but
// those of labels have the date that was given, and none has one without.
func TestTitleBlock(t *testing.T) {
	for _, k := range packets(t) {
		labels := 0
		for i, p := range k.pages {
			code, strip, number, dated := 0, 0, 0, 0
			for _, w := range p.Texts {
				switch {
				case w.String == "code "+k.report.Code:
					code++ // in the block, and on each label
				case strings.HasSuffix(w.String, ", code "+k.report.Code):
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
				t.Errorf("%s, page %d: %d codes, %d numbers, %d dates", k.file, i+1, code, number, dated)
			}
			total := p.Later[len(p.Later)-1]
			if want := fmt.Sprintf("of %d", len(k.pages)); len(total.Texts) != 1 || total.Texts[0].String != want {
				t.Errorf("%s, page %d says %v, not %q", k.file, i+1, total.Texts, want)
			}
		}
		if labels == len(k.pages) {
			t.Errorf("%s: no page has the date", k.file)
		}
	}
	for i, p := range layOut(t, "../../../samples/bench-drawers.yaml", "", nil).pages {
		for _, w := range p.Texts {
			if strings.Contains(w.String, date[:5]) {
				t.Errorf("page %d has a date: %q", i+1, w.String)
			}
		}
	}
}
