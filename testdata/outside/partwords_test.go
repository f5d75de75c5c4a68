package outside

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"
)

// word is one on a page, as poppler finds it: in points, y down.
type word struct {
	geom.Rect
	text   string
	turned bool
}

var (
	pageSize  = regexp.MustCompile(`^width="([\d.]+)" height="([\d.]+)"`)
	wordFound = regexp.MustCompile(`<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)</word>`)
)

// wordsOf are those of a page of poppler's list, and the page itself.
func wordsOf(t *testing.T, page string) (list []word, size geom.Rect) {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	m := pageSize.FindStringSubmatch(page)
	if m == nil {
		t.Fatalf("a page without a size: %.60q", page)
	}
	for _, w := range wordFound.FindAllStringSubmatch(page, -1) {
		list = append(list, word{geom.Around(geom.Point{X: number(w[1]), Y: number(w[2])},
			geom.Point{X: number(w[3]), Y: number(w[4])}), w[5], false})
	}
	turn(list)
	return list, geom.Rect{Max: geom.Point{X: number(m[1]), Y: number(m[2])}}
}

// turn finds the words that are turned: those that are taller than long, and short ones of a line with such a word,
// which is as wide and begins where they do.
func turn(list []word) {
	for i := range list {
		list[i].turned = len(list[i].text) > 1 && list[i].Height() > list[i].Width()
	}
	for i, w := range list {
		for _, k := range []int{i - 1, i + 1} {
			if k >= 0 && k < len(list) && list[k].turned && list[k].Min.X == w.Min.X && list[k].Max.X == w.Max.X {
				list[i].turned = true
			}
		}
	}
}

// ink is about what the letters of a word cover: the box has the room of the tallest letters of
// the font above and below, a fifth each.
func (w word) ink() geom.Rect {
	const air, side = 0.22, 0.3
	x, y := side, air*w.Height()
	if w.turned {
		x, y = air*w.Width(), side
	}
	return geom.Rect{Min: w.Min.Add(geom.Point{X: x, Y: y}), Max: w.Max.Sub(geom.Point{X: x, Y: y})}
}

// clashes are words of a page that stand in each other's place or leave the page.
func clashes(list []word, page geom.Rect) (found []string) {
	for i, w := range list {
		if !page.Contains(w.Rect) {
			found = append(found, w.text+" leaves the page")
		}
		for _, other := range list[:i] {
			if w.ink().Overlaps(other.ink()) {
				found = append(found, w.text+" runs into "+other.text)
			}
		}
	}
	return found
}

// numbered is what every page says of itself.
var numbered = regexp.MustCompile(`>page</word>\s*<word [^>]*>(\d+)</word>\s*` +
	`<word [^>]*>of</word>\s*<word [^>]*>(\d+)</word>`)

// TestDrawingsWordsAsRead: on the pages of the packet of every sample, as poppler reads them, no word stands in
// another's place, none leaves the page, and each page says which one it is of how many.
func TestDrawingsWordsAsRead(t *testing.T) {
	pages, words := 0, 0
	for _, file := range sampleFiles(t) {
		dir, _ := build(t, textOf(t, file))
		all := run(t, "pdftotext", "-bbox", filepath.Join(dir, "packet.pdf"), "-")
		for n, page := range strings.Split(all, "<page ")[1:] {
			of := strings.Count(all, "<page ")
			if m := numbered.FindStringSubmatch(page); m == nil || m[1] != fmt.Sprint(n+1) || m[2] != fmt.Sprint(of) {
				t.Errorf("%s: page %d says %q", filepath.Base(file), n+1, m)
			}
			list, size := wordsOf(t, page)
			for _, c := range clashes(list, size) {
				t.Errorf("%s, page %d: %s", filepath.Base(file), n+1, c)
			}
			pages, words = pages+1, words+len(list)
			// What is looked for is found: a word moved on to another, and off the page.
			moved := list[0]
			moved.Rect = list[1].Rect.Translate(geom.Point{X: 1})
			if len(clashes(append(list[1:2:2], moved), size)) == 0 ||
				len(clashes([]word{{moved.Rect.Translate(size.Max), "off", false}}, size)) == 0 {
				t.Errorf("%s, page %d: a word that is moved on to another, or off the page, is not found",
					filepath.Base(file), n+1)
			}
		}
	}
	if pages < 200 || words < 40000 {
		t.Errorf("only %d pages with %d words", pages, words)
	}
}
