package outside

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// pdfRead is what pdf_rules.py says of a document.
type pdfRead struct {
	File    string
	Spoiled string // what was broken in it
	Faults  []struct{ Clause, What string }
	Counts  map[string]int
	Small   []string // texts in letters under 2 mm, with their pages
}

// keyOnSheet is what may be smaller: keys and areas to keep out of, which stand on their pieces of a sheet.
var keyOnSheet = regexp.MustCompile(`^(\d+([a-z]+\d*)*|keep out)$`)

// TestDocumentRules: every document of every sample keeps to the clauses of ISO 19005-2 (PDF/A-2, level U) and of ISO
// 32000-1 about tags that pdf_rules.py names, as pikepdf reads it. No validator of these standards is to be had: what
// that file has no check for is not claimed.
func TestDocumentRules(t *testing.T) {
	t.Parallel()
	var files []string
	for _, f := range sampleFiles(t) {
		dir, _ := build(t, textOf(t, f))
		files = append(files, glob(t, dir, ".pdf")...)
	}
	for _, d := range lines[pdfRead](t, "", python, append([]string{"pdf_rules.py"}, files...)...) {
		for _, f := range d.Faults {
			t.Errorf("%s: %s: %s", d.File, f.Clause, f.What)
		}
		if filepath.Base(d.File) != "packet.pdf" {
			continue
		}
		for _, s := range d.Small {
			if _, words, _ := strings.Cut(s, ": "); !keyOnSheet.MatchString(words) {
				t.Errorf("%s: letters under 2 mm, %s", d.File, s)
			}
		}
		for _, kind := range []string{"H1", "H2", "P", "Figure", "Table", "TR", "TH", "TD"} {
			if d.Counts[kind] == 0 {
				t.Errorf("%s: no %s", d.File, kind)
			}
		}
	}
}

// TestDocumentRulesSee: each thing that is broken in a copy of a packet is found.
func TestDocumentRulesSee(t *testing.T) {
	t.Parallel()
	dir, _ := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	list := lines[pdfRead](t, "", python, "pdf_rules.py", "--spoil", filepath.Join(dir, "packet.pdf"))
	if len(list) < 20 {
		t.Errorf("%d things were broken", len(list))
	}
	for _, d := range list {
		if len(d.Faults) == 0 {
			t.Errorf("%s: nothing is found", d.Spoiled)
		}
	}
}
