package packet

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// TestLogOnPaper: the packet of the sewing box says first that its cutter drifts, and has two charts, with a dot for
// each cut of cutter and fence: 12 days of each but for the fence that was moved. Of a log that shows no drift it says
// so; of too few cuts, and of a job that takes nothing from its log, it has no chart.
func TestLogOnPaper(t *testing.T) {
	text, err := os.ReadFile("../../../samples/log/sewing-box.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shop, err := os.ReadFile("../../../samples/log/shop.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(strings.TrimSpace(string(shop))+"\n", "\n")
	for _, c := range []struct {
		cuts int // of the log
		job  string
		said string // in the first line of the chapter
		dots int
	}{
		{len(lines) - 1, string(text), "cutter: the newest cut is narrower than chance makes one.", 24},
		{27, string(text), "Nothing drifts by the log shop.csv.", 14},
		{10, string(text), "", 0},
		{len(lines) - 1, strings.Replace(string(text), "accuracy: from-log\n", "", 1), "", 0},
	} {
		file := filepath.Join(t.TempDir(), "job.yaml")
		log := filepath.Join(filepath.Dir(file), "shop.csv")
		if err := os.WriteFile(log, []byte(strings.Join(lines[:c.cuts], "")), 0o644); err != nil {
			t.Fatal(err)
		}
		b := read(t, file, []byte(c.job))
		var pages []drawing.Page
		m := maker{Book: book(b, "", func(p drawing.Page) { pages = append(pages, p) }), batch: b, unit: b.Units}
		m.log()
		m.Close()
		said, dots := "", 0
		for _, p := range pages {
			for _, w := range p.Texts {
				said += w.String + " "
			}
			for _, s := range p.Shapes {
				for _, path := range s.Paths {
					if s.Fill == 1 && len(path) == 2 {
						dots++
					}
				}
			}
		}
		first := strings.Index(said, c.said)
		if dots != c.dots || first < 0 || c.said != "" && first > 60 || c.said == "" && said != "" {
			t.Errorf("%d cuts: %d dots, %q", c.cuts, dots, said)
		}
	}
}
