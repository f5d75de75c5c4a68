package packet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Kinds of letters of a packet, and how high, in mm, capitals of each are at least.
const (
	ofLabels = "of labels"
	ofForms  = "of the form"
	ofSizes  = "of dimensions"
	ofTitles = "that are large"
	ofWords  = "of all else"
)

var leastLetters = map[string]float64{ofLabels: 1.8, ofForms: 2.5, ofSizes: 3.5, ofTitles: 2.5, ofWords: 1.9}

// TestLeastLetters: over all samples no letters of a kind are lower than those of its kind may be.
func TestLeastLetters(t *testing.T) {
	found := make(map[string]int)
	for _, k := range packets(t) {
		m := maker{batch: k.batch, report: k.report, unit: k.batch.Units}
		inForm := make(map[string]bool)
		for _, c := range formColumns() {
			inForm[c.Head] = c.Head != ""
		}
		for _, row := range m.formRows() {
			for _, cell := range row[1:] {
				for _, line := range strings.Split(cell, "\n") {
					inForm[line] = line != ""
				}
			}
		}
		labels, form := false, false
		for i, p := range k.pages {
			labels = labels || begins(p, "Labels")
			form = form || begins(p, "Form for readings")
			for _, w := range p.Texts {
				kind := ofWords
				switch {
				case labels:
					kind = ofLabels
				case w.Value:
					kind = ofSizes
				case form && inForm[w.String]:
					kind = ofForms
				case w.Size > 4:
					kind = ofTitles
				}
				found[kind]++
				if high := 0.72 * w.Size; high < leastLetters[kind]-1e-9 {
					t.Errorf("%s, page %d: %q, %s, is %.2f mm high", k.file, i+1, w.String, kind, high)
				}
			}
			form = form && !begins(p, "Slides")
		}
	}
	for kind := range leastLetters {
		if found[kind] < 400 {
			t.Errorf("only %d letters %s", found[kind], kind)
		}
	}
}

// TestKeysOfSheets: on every picture of every sheet of the samples, as large as usual or smaller, each piece has its
// key, in letters of 2 mm or more; where it does not stand on its piece a leader ends there.
func TestKeysOfSheets(t *testing.T) {
	keys, beside := 0, 0
	for _, k := range packets(t) {
		m := sheetBook{Book: book(k.batch, "", func(drawing.Page) {})}
		for i := range k.plan.Stocks {
			s := &k.plan.Stocks[i]
			for n, one := range s.Laid {
				of := record.SheetStock{Stock: s.Name}
				for _, d := range m.pictures(laidSheet{k.plan, s, of, n}) {
					keys, beside = keys+len(one.Placements), beside+dots(d.Drawing)
					for _, wrong := range keyFaults(s, one, d.Drawing) {
						t.Errorf("%s, %s: %s", k.file, s.Name, wrong)
					}
				}
			}
		}
	}
	if keys < 300 || beside < 20 {
		t.Errorf("%d keys, %d of them beside their pieces", keys, beside)
	}
}

// keyFaults are letters of a picture that are too low, and keys that it does not have.
func keyFaults(s *sheets.Stock, one sheets.Sheet, d drawing.Drawing) (list []string) {
	want := make(map[string]int)
	for n := range one.Placements {
		if n < len(one.Called) {
			want[one.Called[n]]++
		} else if of := s.Numbers(one, n); of != "" {
			want[of]++
		}
	}
	for _, w := range d.Texts {
		if high := 0.72 * w.Size; high < 2-1e-9 {
			list = append(list, fmt.Sprintf("%q is %.2f mm high", w.String, high))
		}
		key, _, _ := strings.Cut(w.String, "  ")
		want[key]--
	}
	for key, left := range want {
		if left > 0 {
			list = append(list, fmt.Sprintf("%d pieces have no %q", left, key))
		}
	}
	return list
}

// dots counts the small filled circles of a drawing.
func dots(d drawing.Drawing) (n int) {
	for _, s := range d.Shapes {
		if s.Pen.Width > 0 || len(s.Paths) != 1 {
			continue
		}
		if _, r, round := geom.Loop(s.Paths[0]).AsCircle(); round && math.Abs(r-0.4) < 1e-9 {
			n++
		}
	}
	return n
}

// TestCautionsAreReadable: what stands behind an exclamation mark, and notes beside sheets and cuts behind a dot, are
// in letters of 3 mm or more, in every sample.
func TestCautionsAreReadable(t *testing.T) {
	found := make(map[string]int)
	for _, k := range packets(t) {
		for i, p := range k.pages {
			for at, w := range p.Texts {
				if w.String != "!" && w.String != "·" || at+1 == len(p.Texts) {
					continue
				}
				found[w.String]++
				if said := p.Texts[at+1]; w.Size < 3 || said.Size < 3 {
					t.Errorf("%s, page %d: %q in letters of %.1f mm", k.file, i+1, said.String, said.Size)
				}
			}
		}
	}
	if found["!"] < 100 || found["·"] < 100 {
		t.Errorf("%v cautions and notes", found)
	}
}
