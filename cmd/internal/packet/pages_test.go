package packet

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// said are the words of a page in the order in which they are written, with single spaces.
func said(p drawing.Page) string {
	var all []string
	for _, w := range p.Texts {
		all = append(all, strings.Fields(w.String)...)
	}
	return strings.Join(all, " ")
}

// TestWarningsStandOnPageOne: the first page of every sample has the one answer on the job and every warning.
func TestWarningsStandOnPageOne(t *testing.T) {
	for _, k := range packets(t) {
		first, warned := said(k.pages[0]), 0
		for _, w := range present.Gathered(k.report.Warnings, geom.LevelWarning) {
			if warned++; !strings.Contains(first, "! "+w) {
				t.Errorf("%s: page one does not say %q: %s", k.file, w, first)
			}
		}
		out := present.Gathered(k.report.Warnings, geom.LevelWarning)[0] +
			` Way out, in the job: write "bottom-clearance: 2"; or choose thinner sides. !`
		if !strings.Contains(first, out) {
			t.Errorf("%s: the way out does not stand with its warning: %s", k.file, first)
		}
		answers := 0
		for _, begin := range []string{"Fits: ", "May not fit: ", "Does not fit: "} {
			answers += strings.Count(first, begin)
		}
		if answers != 1 || warned < 6 {
			t.Errorf("%s: page one has %d answers and %d warnings: %s", k.file, answers, warned, first)
		}
	}
}

// TestFiguresOfSettings: on the first page or, where it is full, the second, and once more on its card, whatever a
// machine is set to stands in figures of 12 mm: of the fence, for every pass.
func TestFiguresOfSettings(t *testing.T) {
	found, later := 0, 0
	for _, k := range packets(t) {
		want := make(map[string]int)
		for _, c := range present.SetupsOf(record.WorkOf(k.batch)).Machines {
			for _, b := range c.Bits {
				number, _ := present.Figure{Value: words.Bit(b.MM(), k.batch.Units)}.FigureParts()
				want[number]++
			}
			for _, s := range c.Settings {
				set := []record.Length{s.Height}
				if s.Fence > 0 {
					set = append(set, s.Fence)
				}
				if s.Cutter > 0 {
					set = append(set, s.Cutter)
				}
				for i, cut := range s.Cuts { // those with the same passes share the distances of the fence
					if len(cut.Passes) > 1 && !slices.ContainsFunc(s.Cuts[:i], func(o present.CutStep) bool {
						return slices.Equal(o.Passes, cut.Passes)
					}) {
						set = append(set, cut.Passes[1:]...)
						later++
					}
				}
				for _, v := range set {
					want[geom.LengthOf(v.MM()).Fixed(k.batch.Units)]++
				}
			}
		}
		got := make(map[string]int)
		for i, p := range k.pages {
			for _, w := range p.Texts {
				if capitals := 0.72 * w.Size; capitals >= paper.FigureHeight-1e-9 {
					if got[w.String]++; i > 1 && got[w.String] <= want[w.String] {
						t.Errorf("%s: %s stands large on page %d first", k.file, w.String, i+1)
					}
				}
			}
		}
		for number, n := range want {
			found += n
			if got[number] != 2*n {
				t.Errorf("%s: %s is set %d times; it stands large %d times", k.file, number, n, got[number])
			}
		}
	}
	if found < 20 || later < 3 {
		t.Errorf("only %d figures, %d cuts in passes", found, later)
	}
}

// leastUsed is the part of a page's room that is used at least.
const leastUsed = 0.25

// used is how far down a page is used, as part of its room: from its upper margin to the lowest thing over the title
// block, which ends 20 mm over the edge.
func used(p drawing.Page) float64 {
	const upper, block = 15.0, 20.5
	low := p.Height - upper
	take := func(box geom.Rect) {
		if box.Max.Y > block {
			low = min(low, max(box.Min.Y, block))
		}
	}
	for _, w := range p.Texts {
		take(w.Box())
	}
	for _, s := range p.Shapes {
		box := geom.Rect{Min: geom.Point{Y: math.Inf(1)}, Max: geom.Point{Y: math.Inf(-1)}}
		for _, path := range s.Paths {
			for _, v := range path {
				box.Min.Y, box.Max.Y = min(box.Min.Y, v.Y), max(box.Max.Y, v.Y)
			}
		}
		take(box)
	}
	return (p.Height - upper - low) / (p.Height - upper - block)
}

// TestNoPageIsNearlyEmpty: every page of every sample, with warnings or without, is used for a quarter at least, but
// for the last one of the labels, which ends where they end.
func TestNoPageIsNearlyEmpty(t *testing.T) {
	list := packets(t)
	for _, file := range samples(t) {
		list = append(list, layOut(t, file, date, nil))
	}
	for _, k := range list {
		for i, p := range k.pages {
			if part := used(p); part < leastUsed && i != len(k.pages)-1 {
				t.Errorf("%s, page %d of %d: %.0f %% are used: %.200s", k.file, i+1, len(k.pages), 100*part, said(p))
			}
		}
	}
}

// mostPages are how many pages of each sample stand before its labels at most.
var mostPages = map[string]int{
	"alcove-cabinets": 16,
	"bench-drawers":   10,
	"blanket-chest":   11,
	"cutlery":         11,
	"dresser":         16,
	"filing-drawer":   10,
	"hall-bench":      14,
	"hand-cut":        11,
	"herb-counter":    22,
	"inch-chest":      10,
	"kitchen-bank":    21,
	"linen-chest":     13,
	"no-flip":         10,
	"print-room":      22,
	"router-boxes":    19,
	"seed-store":      12,
	"sewing-cabinet":  18,
	"study-desk":      15,
	"tool-chest":      18,
	"tool-till":       15,
	"workshop-bench":  27, // parts are ticked drawer by drawer
}

// TestPagesOfSamples: no sample takes more pages than when these were last counted.
func TestPagesOfSamples(t *testing.T) {
	for _, file := range samples(t) {
		k := layOut(t, file, date, nil)
		pages := slices.IndexFunc(k.pages, func(p drawing.Page) bool { return begins(p, "Labels") })
		if most := mostPages[strings.TrimSuffix(k.file, ".yaml")]; pages > most {
			t.Errorf("%s: %d pages, there were %d", k.file, pages, most)
		}
	}
}

// begins reports whether a chapter begins on a page.
func begins(p drawing.Page, chapter string) bool {
	return slices.Contains(p.Bookmarks, drawing.Bookmark{Name: chapter})
}

// TestRoundingIsTold: boards of 12.21, 12.16 and 12.24 have a mean of 12.2033, printed as 12.2; two of them taken from
// 460 leave 435.593, printed as 435.59, and not 435.60. The first page says why, and parts.txt too.
func TestRoundingIsTold(t *testing.T) {
	for _, k := range packets(t) {
		var list bytes.Buffer
		present.PartsText(&list, k.report) // into memory: it cannot fail
		for what, text := range map[string]string{"page one": said(k.pages[0]),
			"parts.txt": strings.Join(strings.Fields(list.String()), " ")} {
			if want := words.Rounding(k.batch.Units); !strings.Contains(text, want) {
				t.Errorf("%s: %s does not say %q", k.file, what, want)
			}
		}
	}
}

// TestHelpListsChapters: `drawerwright help packet` names the chapters as they are called and in the order in which
// they stand in every packet.
func TestHelpListsChapters(t *testing.T) {
	topic, err := os.ReadFile("../reference/topics/packet.md")
	if err != nil {
		t.Fatal(err)
	}
	var listed []string
	for _, line := range strings.Split(string(topic), "\n") {
		if _, item, is := strings.Cut(line, "- **"); is {
			for _, part := range strings.Split(item, "**") {
				if part != "" && !strings.ContainsAny(part, ":;,.") {
					listed = append(listed, part)
				}
			}
		}
	}
	for _, k := range packets(t) {
		at := -1
		for _, p := range k.pages {
			for _, b := range p.Bookmarks {
				if b.Level > 0 {
					continue
				}
				i := slices.Index(listed, b.Name)
				if i <= at {
					t.Errorf("%s: the chapter %q is number %d of help packet, after number %d: %q", k.file, b.Name, i+1,
						at+1, listed)
				}
				at = i
			}
		}
		if at != len(listed)-1 {
			t.Errorf("%s: the packet ends with chapter %d of %q", k.file, at+1, listed)
		}
	}
}

// TestContents: the list of chapters on the first page has each chapter that begins later, with its page.
func TestContents(t *testing.T) {
	for _, k := range packets(t) {
		stands := make(map[string]string)
		for _, p := range k.pages[:2] { // with many warnings it comes on the second
			for _, l := range p.Later {
				for i := 0; i+1 < len(l.Texts); i += 2 {
					stands[l.Texts[i+1].String] = l.Texts[i].String
				}
			}
		}
		for i, p := range k.pages[1:] {
			for _, e := range p.Bookmarks {
				if e.Level == 0 && stands[e.Name] != fmt.Sprint(i+2) {
					t.Errorf("%s: %s begins on page %d; the contents say %q", k.file, e.Name, i+2, stands[e.Name])
				}
			}
		}
	}
}

// TestTablesOfReadings: what is read on the test piece and what is read on the parts stand in a table each.
func TestTablesOfReadings(t *testing.T) {
	tables := 0
	for _, k := range packets(t) {
		on := ""
		for _, p := range k.pages {
			for _, w := range p.Texts {
				switch {
				case w.String == "on the test piece" || w.String == "on the parts":
					on = w.String
					tables++
				case slices.Contains(fit.ReadingKinds, fit.ReadingKind(w.String)):
					if parts := fit.ReadingKind(w.String).OfSize(); parts != (on == "on the parts") {
						t.Errorf("%s: %q stands %s", k.file, w.String, on)
					}
				}
			}
		}
	}
	if tables < 20 {
		t.Errorf("%d tables", tables)
	}
}

// TestBenchPicture: the exploded picture of the bench sheet, on the first page or where that is full on the second, is
// as wide as half the page or as high as a quarter of it.
func TestBenchPicture(t *testing.T) {
	for _, k := range packets(t) {
		largest := 0.0
		for _, p := range k.pages[:2] {
			box := geom.Rect{Min: geom.Point{X: math.Inf(1), Y: math.Inf(1)}, Max: geom.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
			for _, s := range p.Shapes {
				if s.Tint == (drawing.Tint{}) { // wood has one
					continue
				}
				for _, path := range s.Paths {
					for _, v := range path {
						box.Min.X, box.Max.X = min(box.Min.X, v.X), max(box.Max.X, v.X)
						box.Min.Y, box.Max.Y = min(box.Min.Y, v.Y), max(box.Max.Y, v.Y)
					}
				}
			}
			largest = max(largest, box.Width()/k.pages[0].Width, box.Height()/k.pages[0].Height)
		}
		if largest < 0.22 {
			t.Errorf("%s: the picture takes %.2f of the page", k.file, largest)
		}
	}
}
