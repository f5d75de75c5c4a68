package readback

import (
	"iter"
	"regexp"
	"strings"
)

// holeHeads are those of the table that follows that of the cuts.
var holeHeads = []string{"hole", "face", "depth", "center from the left end", "from the lower edge", "diameter"}

// cutsBegin reports whether the table of cuts or that of holes begins with a line: it follows another table at once.
func cutsBegin(line []pdfText) bool {
	list := cells(line)
	return len(list) == len(holeHeads) && (list[0] == "cut" || list[0] == holeHeads[0]) && list[1] == holeHeads[1]
}

var paperPart = regexp.MustCompile(`^(\d+) pieces?, (.+) x (.+) (mm|in), of (.+), (\S.*) (mm|in) thick`)

// parts reads the drawing of a part, or of parts that differ in sizes alone, and the tables of its cuts.
func (p *packetReader) parts() taken {
	switch {
	case paperPart.MatchString(p.one):
		p.sheet.end() // the parts follow the setups
		number, name, _ := strings.Cut(p.drawnAs, ": ")
		if p.firstPart != "" {
			name = p.firstPart
		}
		p.drawn = []drawnPart{{name: name}}
		p.words("group", name, "number", number)
		p.paperPart(name, p.s.sentence())
		return lineTaken
	case paperFamily.MatchString(p.one):
		p.sheet.end()
		p.drawnOf = p.s.sentence()
		return lineTaken
	case p.drawnOf != "" && p.beginsFamily():
		p.family(p.drawnOf)
		p.drawnOf = ""
		return tableTaken
	case paperTitle.MatchString(p.one):
		p.drawn, p.drawnOf, p.drawnAs, p.firstPart = nil, "", p.one, ""
	case p.drawnAs != "" && p.drawn == nil && strings.HasPrefix(p.one, partsAre):
		p.firstPart, _, _ = strings.Cut(strings.TrimPrefix(strings.TrimSuffix(p.s.sentence(), "."), partsAre), ", ")
	case p.beginsCuts("cut", "face", "depth", "from the left end", "from the lower edge", "size"):
		if p.drawn == nil {
			p.fail("these cuts are of no part")
		}
		rows, pages := p.s.rows(7)
		for _, d := range p.drawn {
			p.paperCuts(d.name, p.own(d, rows, pages))
		}
		return tableTaken
	case p.beginsCuts(holeHeads...):
		rows, pages := p.s.rows(7)
		for _, d := range p.drawn {
			p.paperHoles(d.name, p.own(d, rows, pages))
		}
		return tableTaken
	}
	return notTaken
}

func (r *reading) paperPart(name, text string) {
	m := paperPart.FindStringSubmatch(text)
	r.words("group", name, "pieces", m[1])
	r.printed("part", name, "length", m[2])
	r.printed("part", name, "width", m[3])
	r.words("part", name, "stock", m[5])
	r.printed("part", name, "thickness", m[6])
}

// paperCuts reads the cuts of a part: its letter, what, the face, how deep, and where.
func (r *reading) paperCuts(part string, rows iter.Seq[[]string]) {
	for row := range rows {
		of := part + " " + row[0]
		side, through := strings.CutSuffix(row[2], ", seen through")
		row[2] = side
		r.paperDepth(of, row)
		if through {
			r.span("cut", of, row[4], "left, seen through", "right, seen through")
		} else {
			r.span("cut", of, row[4], "left", "right")
		}
		r.span("cut", of, row[5], "lower", "upper")
	}
}

// paperHoles reads the round holes of a part: its number, what, the face, how deep, where its
// center is, and how wide it is.
func (r *reading) paperHoles(part string, rows iter.Seq[[]string]) {
	for row := range rows {
		of := part + " " + row[0]
		r.paperDepth(of, row)
		r.printed("cut", of, "center from the left", row[4])
		r.printed("cut", of, "center from below", row[5])
		r.printed("cut", of, "diameter", row[6])
	}
}

// paperDepth reads what is alike for cuts and holes.
func (r *reading) paperDepth(of string, row []string) {
	r.words("cut", of, "kind", row[1])
	r.words("cut", of, "face", row[2])
	if row[3] == "through" {
		r.words("cut", of, "depth", row[3])
	} else {
		r.printed("cut", of, "depth", row[3])
	}
}
