package readback

import (
	"iter"
	"regexp"
	"slices"
	"strings"
)

// drawnPart is a part that a drawing shows, with what its letters stand for.
type drawnPart struct {
	name    string
	figures map[string]string
}

var (
	// familyHeads are those of the table of parts that one drawing shows, as far as they are the same in all.
	familyHeads = []string{"no.", "part", "pieces", "length", "width"}
	paperTitle  = regexp.MustCompile(`^\d+(?:, \d+)*(?: \.\.\.)?: \S+(?:, \S+)*$`) // of a drawing of parts
	letterHead  = regexp.MustCompile(`^[LW]\d*$`)
	brokenHeads = regexp.MustCompile(`^(?:[LW]\d*|mm|in| )+$`)
	paperFamily = regexp.MustCompile(`^Of (.+), (\S.*) (mm|in) thick`)
)

// partsAre is before the names of parts that are the same.
const partsAre = "Parts: "

// beginsCuts is begins for a table of cuts, which are from the lower edge or, of bottoms, from the front edge.
func (p *packetReader) beginsCuts(heads ...string) bool {
	if p.s.begins(heads...) {
		return true
	}
	own := slices.Clone(heads)
	for i, h := range own {
		own[i] = strings.Replace(h, "lower edge", "front edge", 1)
	}
	return p.s.begins(own...)
}

// beginsFamily reports whether this line has the heads of a table of parts that one drawing shows.
func (p *packetReader) beginsFamily() bool {
	if len(p.list) < len(familyHeads) {
		return false
	}
	for i, h := range familyHeads {
		if p.list[i] != h && (i < 3 || !strings.HasPrefix(p.list[i], h+" ")) {
			return false
		}
	}
	return !slices.ContainsFunc(p.list[len(familyHeads):], func(h string) bool {
		return !letterHead.MatchString(strings.TrimSuffix(h, " "+p.unit))
	})
}

// family reads the parts that one drawing shows: numbers, pieces and sizes, and what letters stand for in its tables.
func (p *packetReader) family(text string) {
	heads := slices.Clone(p.list)
	p.s.below = 0
	if next := cells(p.s.next()); len(next) > 0 && !slices.ContainsFunc(next, func(h string) bool {
		return !brokenHeads.MatchString(h)
	}) {
		heads = p.joined(heads)
		p.s.below = 1
	}
	m := paperFamily.FindStringSubmatch(text)
	p.drawn = nil
	for row := range p.s.table(len(heads)) {
		name, _, _ := strings.Cut(row[1], ", ")
		pieces, _, _ := strings.Cut(row[2], " (")
		p.words("group", name, "number", row[0])
		p.words("group", name, "pieces", pieces)
		p.printed("part", name, "length", row[3])
		p.printed("part", name, "width", row[4])
		p.words("part", name, "stock", m[1])
		p.printed("part", name, "thickness", m[2])
		one := drawnPart{name, make(map[string]string)}
		for i, h := range heads[3:] {
			for _, word := range strings.Fields(h) {
				if letterHead.MatchString(word) {
					one.figures[word], _, _ = strings.Cut(row[3+i], " (")
				}
			}
		}
		p.drawn = append(p.drawn, one)
	}
}

// joined are heads with what is broken of them in the next line, column by column.
func (p *packetReader) joined(heads []string) []string {
	line := p.s.lines[p.s.at]
	for _, b := range p.s.next() {
		for i := len(line) - 1; i >= 0; i-- {
			if line[i].x <= b.x {
				heads[i] = joinLines(heads[i], b.text)
				break
			}
		}
	}
	return heads
}

// own are rows of a table of cuts with the figures of one of the parts for its letters, each at its page.
func (p *packetReader) own(d drawnPart, rows [][]string, pages []int) iter.Seq[[]string] {
	return func(yield func([]string) bool) {
		for i, row := range rows {
			row = slices.Clone(row)
			for k, cell := range row {
				words := strings.Split(cell, " ")
				for n, w := range words {
					if figure, letter := d.figures[w]; letter {
						words[n] = figure
					}
				}
				row[k] = strings.Join(words, " ")
			}
			if p.at = pages[i]; !yield(row) {
				return
			}
		}
	}
}
