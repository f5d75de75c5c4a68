package readback

import (
	"iter"
	"math"
	"regexp"
	"slices"
	"strings"
)

// paperScan goes through the lines of a packet, without their title blocks. It has
// some lines about the one that is read and no more, so that a packet may have any number of pages.
type paperScan struct {
	r     *reading
	lines [][]pdfText
	pages []int // on which the lines stand
	at    int
	below int // lines in which the heads that were found last go on
	page  func() ([]pdfText, bool)
	read  int // how many pages
	close func()
}

// ahead are lines after this one that are there, if there are any more; maxPassed are those before
// it that are kept.
const ahead, maxPassed = 8, 4096

func (r *reading) paper(data []byte) *paperScan {
	s := &paperScan{r: r}
	s.page, s.close = iter.Pull(pdfPages(r, data, s.counted))
	return s
}

// more reads pages until the lines ahead are there, and reports whether there is this one.
func (s *paperScan) more() bool {
	if s.at > maxPassed {
		s.lines, s.pages, s.at = slices.Clone(s.lines[s.at-1:]), slices.Clone(s.pages[s.at-1:]), 1
	}
	for s.at+ahead >= len(s.lines) {
		page, more := s.page()
		if !more {
			break
		}
		s.read++
		for _, line := range s.r.titleBlock(pdfLines(page), s.read) {
			s.lines, s.pages = append(s.lines, line), append(s.pages, s.read)
		}
	}
	return s.at < len(s.lines)
}

func (s *paperScan) cells() []string { return cells(s.lines[s.at]) }

// next is the line after this one, nil after the last.
func (s *paperScan) next() []pdfText {
	if s.more(); s.at+1 < len(s.lines) {
		return s.lines[s.at+1]
	}
	return nil
}

// begins reports whether this line has these heads, blank ones left out. A crowded table breaks them: what is left of
// them then stands in the lines below, in their order.
func (s *paperScan) begins(heads ...string) bool {
	list := s.cells()
	if len(list) != len(heads) {
		return false
	}
	s.below = 0
	var left []string
	for i, h := range heads {
		switch {
		case strings.HasPrefix(list[i], h):
		case strings.HasPrefix(h, list[i]+" "):
			left = append(left, h[len(list[i])+1:])
		default:
			return false
		}
	}
	for len(left) > 0 {
		s.below++
		s.more()
		if s.at+s.below >= len(s.lines) {
			return false
		}
		var still []string
		line := cells(s.lines[s.at+s.below])
		for _, h := range left {
			if len(line) == 0 || line[0] != h && !strings.HasPrefix(h, line[0]+" ") {
				return false
			}
			if line[0] != h {
				still = append(still, h[len(line[0])+1:])
			}
			line = line[1:]
		}
		if len(line) > 0 {
			return false
		}
		left = still
	}
	return true
}

// beginsNext is begins for the line after this.
func (s *paperScan) beginsNext(heads ...string) bool {
	s.at++
	found := s.begins(heads...)
	s.at--
	return found
}

// table takes the rows, of so many cells, below the heads in this line, and tells the reading
// on which page they stand. Heads stand again on the next page; a cell that is broken goes
// on below itself.
func (s *paperScan) table(columns int) iter.Seq[[]string] {
	rows, pages := s.rows(columns)
	return func(yield func([]string) bool) {
		for i, row := range rows {
			if s.r.at = pages[i]; !yield(row) {
				return
			}
		}
	}
}

// holeHeads are those of the table that follows that of the cuts.
var holeHeads = []string{"hole", "face", "depth", "center from the left end", "from the lower edge", "diameter"}

func (s *paperScan) rows(columns int) (rows [][]string, pages []int) {
	heads := s.cells()
	head := s.lines[s.at]
	var last []pdfText
	for s.at += 1 + s.below; s.more(); s.at++ {
		line := s.lines[s.at]
		switch {
		case cutsBegin(line):
			return rows, pages
		case slices.Equal(cells(line), heads):
			s.at += s.below
		case len(line) == columns:
			last = line
			rows, pages = append(rows, cells(line)), append(pages, s.pages[s.at])
		case len(rows) > 0 && len(line) < columns && s.closeBelow() &&
			s.goesOn(line, append(slices.Clone(head), last...), rows[len(rows)-1], last):
		default:
			return rows, pages
		}
	}
	return rows, pages
}

// cutsBegin reports whether the table of cuts or that of holes begins with a line: it follows another table at once.
func cutsBegin(line []pdfText) bool {
	list := cells(line)
	return len(list) == len(holeHeads) && (list[0] == "cut" || list[0] == holeHeads[0]) && list[1] == holeHeads[1]
}

// maxLeading is how far, in points, a line of a broken cell may stand below the one before it: a
// number in a picture under a table stands further.
const maxLeading = 16

// closeBelow reports whether this line stands right below the one before it.
func (s *paperScan) closeBelow() bool {
	return s.pages[s.at] == s.pages[s.at-1] && s.lines[s.at-1][0].y-s.lines[s.at][0].y <= maxLeading
}

// goesOn adds what is below cells to them; false where it belongs to none but the first.
func (s *paperScan) goesOn(line, columns []pdfText, row []string, last []pdfText) bool {
	for _, t := range line {
		i := slices.IndexFunc(last, func(c pdfText) bool { return math.Abs(c.x-t.x) < 1 })
		if i < 1 {
			return false
		}
		row[i] += " " + strings.TrimSpace(t.text)
	}
	return true
}

// sentence is this line with those after it up to one that ends in a full stop.
func (s *paperScan) sentence() string {
	text := strings.Join(s.cells(), " ")
	for !strings.HasSuffix(text, ".") && len(s.next()) == 1 {
		s.at++
		text += " " + strings.Join(s.cells(), " ")
	}
	return text
}

var (
	paperTotal   = regexp.MustCompile(`^(\d+) box(?:es)? of (\d+) kinds?\. `)
	paperStock   = regexp.MustCompile(`^(.+), (.+) (mm|in) thick(?:, sheets of .+)?(?:; the grain runs along the length)?$`)
	paperPart    = regexp.MustCompile(`^(\d+) pieces?, (.+) x (.+) (mm|in), of (.+), (\S.*) (mm|in) thick`)
	paperLayout  = regexp.MustCompile(`^(\d+ (?:sheet|offcut)s? of|no sheet)`)
	paperOpening = regexp.MustCompile(`^Opening (.+): worked out from (\d\S*(?: \([^)]+\)| \d+/\d+)?) x (\d\S*(?: \([^)]+\)| \d+/\d+)?) x (\d\S*(?: \([^)]+\)| \d+/\d+)?) (mm|in); slide: (.+)\.$`)
	paperSpacer  = regexp.MustCompile(`^spacer of (\S+) (?:mm|in)(?: \([^)]+\))? for (.+)$`)
	paperForm    = regexp.MustCompile(`^(.+) \d+ of (\d+)(?:, (\S+) (kg|lb))?$`)
	paperMachine = regexp.MustCompile(`^[A-Z][A-Za-z ]+, (?:cutter|bits?|plow iron) (\S+) (?:mm|in)(?: \([^)]+\))?(?:(?:,| and) [^:]+)?: (.+)$`)
	itemNumber   = regexp.MustCompile(`^\d+\.$`)
	paperStart   = regexp.MustCompile(`^(?:Cut a test piece|One setting for|Setting \d+:|\d+ passes, |One stack of|With the shop.s spacers|Nearest of|Notes: )`)
)

// packetReader reads packet.pdf: what stands on this line, and what the lines before it say
// that it belongs to.
type packetReader struct {
	*reading
	s     *paperScan
	list  []string // the cells of this line
	one   string   // the only cell, or nothing
	title string   // the last line that was a title

	big     bigFigures
	drawn   []drawnPart // the parts of the drawing that was read last
	drawnOf string      // and what they are of
	drawnAs string      // its heading
	// firstPart is the first of parts that are the same; empty where the heading has its name.
	firstPart string
	sheet     *setupReader
	said      map[string][]string // the remarks of the cover
	sawn      paperCuts
	opening   string // the one whose slides are read
	cover     bool   // the first page, up to the table of boxes
}

func packet(r *reading, data string) { r.packet([]byte(data)) }

// packet reads packet.pdf.
func (r *reading) packet(data []byte) {
	p := &packetReader{reading: r, s: r.paper(data), sheet: &setupReader{reading: r},
		said: make(map[string][]string), cover: true}
	defer p.s.close()
	for p.s.more() {
		r.at = p.s.pages[p.s.at]
		p.list, p.one = p.s.cells(), ""
		if len(p.list) == 1 {
			p.one = p.list[0]
		}
		how := notTaken
		for _, chapter := range []func() taken{p.bigFigures, p.boxes, p.lists, p.cuts, p.parts, p.setups, p.cabinets, p.pilots,
			p.forms} {
			if how = chapter(); how != notTaken {
				break
			}
		}
		if how == tableTaken {
			continue
		}
		if p.one != "" {
			p.title = p.one
		}
		p.s.at++
	}
	p.sheet.end()
}

// answered is how the answer on a job begins.
var answered = regexp.MustCompile(`^(Fits|May not fit|Does not fit): `)

// boxes reads the cover: verdict and remarks, the table of boxes, how many there are.
func (p *packetReader) boxes() taken {
	s := p.s
	switch {
	case p.cover && len(p.list) == 1 && answered.MatchString(p.list[0]):
		p.words("total", "job", "answer", s.together(0))
	case p.cover && len(p.list) == 2 && p.list[0] == "!":
		p.said["warning"] = append(p.said["warning"], s.together(1))
	case p.cover && len(p.list) == 2 && p.list[0] == "-":
		p.said["note"] = append(p.said["note"], s.together(1))
	case s.begins("drawer", "boxes", "outside", "inside", "corner"):
		p.cover = false
		p.remarks(p.said)
		for row := range s.table(5) {
			p.words("box", row[0], "count", row[1])
			p.paperBox(row[0], "outside", row[2])
			p.paperBox(row[0], "inside", row[3])
		}
		return tableTaken
	case paperTotal.MatchString(p.one):
		m := paperTotal.FindStringSubmatch(p.one)
		p.words("total", "job", "boxes", m[1])
		p.words("total", "job", "kinds", m[2])
	default:
		return notTaken
	}
	return lineTaken
}

// lists reads the cut list of a stock, what to buy, and how sheets are laid out.
func (p *packetReader) lists() taken {
	s, unit := p.s, p.unit
	switch {
	case paperStock.MatchString(p.one) && s.next() != nil &&
		s.beginsNext("no.", "pieces", "length "+unit, "width "+unit, "parts"):
		m := paperStock.FindStringSubmatch(p.one)
		s.at++
		p.paperCutList(s.table(5), m[1], m[2])
		return tableTaken
	case s.begins("kind", "what", "quantity", "unit"):
		for row := range s.table(4) {
			p.words("buy", row[0]+" "+row[1], "quantity", row[2])
			p.words("buy", row[0]+" "+row[1], "unit", row[3])
		}
		return tableTaken
	case paperLayout.MatchString(p.one):
		p.sheet.end() // the sheets follow the setups
		p.sheetSummary(p.title + ": " + strings.TrimSuffix(s.sentence(), "."))
		return lineTaken
	}
	return notTaken
}

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

// setups reads the setup sheets of machines.
func (p *packetReader) setups() taken {
	s, one, list := p.s, p.one, p.list
	switch {
	case paperMachine.MatchString(one):
		m := paperMachine.FindStringSubmatch(s.together(0))
		p.sheet.machine(m[1], someOf(strings.Split(m[2], ", ")))
	case one == "Not on this machine":
		for s.at++; s.more() && len(s.lines[s.at]) == 2 && s.cells()[0] == "!"; s.at++ {
			s.together(1)
			p.sheet.noSetup++
		}
		return tableTaken
	case settingLine.MatchString(one), strings.HasPrefix(one, oneSetting):
		p.sheet.paragraph(s.together(0))
	case len(list) == 2 && itemNumber.MatchString(list[0]):
		p.sheet.paragraph(list[0] + " " + s.together(1))
	case one != "" && (p.sheet.lastStep && whoLine.MatchString(one) || passesLine.MatchString(one)):
		p.sheet.paragraph(s.together(0))
	case s.begins("on the test piece", "set to "+p.unit, "least", "most", "measured"),
		s.begins("on the parts", "should be "+p.unit, "least", "most", "measured"):
		p.sheet.goChecks(s.table(4))
		return tableTaken
	case s.begins("on the test piece", "set to "+p.unit, "least", "most", "measured", "if more", "if less"):
		p.sheet.goChecks(s.table(6))
		return tableTaken
	case s.begins("pieces", "part", "face", "drawing"):
		for row := range s.table(4) {
			p.sheet.files++
			p.words(p.sheet.of, strings.ReplaceAll(row[3], " ", ""), "pieces", row[0])
		}
		return tableTaken
	default:
		return notTaken
	}
	return lineTaken
}

// cabinets reads openings, and where drawers and slides come in them.
func (p *packetReader) cabinets() taken {
	s := p.s
	switch {
	case s.begins("drawer", "opening", "slide line "+p.unit, "box lower edge", "front lower edge", "front height"),
		s.begins("drawer", "opening", "slide line "+p.unit, "box lower edge", "row lower edge", "row height"):
		for row := range s.table(6) {
			p.words("row", row[0], "opening", row[1])
			for i, m := range []string{"slide line", "box lower edge", "front lower edge", "front height"} {
				if row[2+i] != "-" {
					p.printed("row", row[0], m, row[2+i])
				}
			}
		}
		return tableTaken
	case strings.HasPrefix(p.one, "Opening "):
		at := s.at
		m := paperOpening.FindStringSubmatch(s.sentence())
		if m == nil {
			s.at = at
			return notTaken
		}
		p.opening = m[1]
		for i, what := range []string{"width", "height", "depth"} {
			p.printed("opening", m[1], what, m[2+i])
		}
		p.words("opening", m[1], "slide", m[6])
		return lineTaken
	case strings.HasPrefix(p.one, "Boxes ") && strings.Contains(p.one, " wide ="):
		p.boxWidth(p.opening, s.sentence())
		return lineTaken
	case len(p.list) == 2 && strings.HasPrefix(p.list[1], "spacer of "):
		m := paperSpacer.FindStringSubmatch(s.together(1))
		if m == nil {
			return notTaken
		}
		p.printed("spacer", m[2], "length", m[1])
		return lineTaken
	}
	return notTaken
}

// forms reads the line of the form for a box: the drawer's name, what is right of width, depth, height and diagonal, and
// by how much both diagonals may differ; limits stand below what is right. Below the name stands which box of how many
// it is, and perhaps what an empty one weighs.
func (p *packetReader) forms() taken {
	const given = 5 // cells after the first
	if len(p.list) != 1+given {
		return notTaken
	}
	name, first := p.list[0], p.s.lines[p.s.at][0]
	for k := p.s.at + 1; k < len(p.s.lines) && k < p.s.at+ahead && !paperForm.MatchString(name); k++ {
		below := p.s.lines[k][0]
		if math.Abs(below.x-first.x) > 0.1 || first.y-below.y > formLine*float64(k-p.s.at) {
			break
		}
		name += " " + strings.TrimSpace(below.text)
	}
	m := paperForm.FindStringSubmatch(name)
	if m == nil {
		return notTaken
	}
	p.words("box", m[1], "count", m[2])
	for i, what := range []string{"outside width", "outside depth", "outside height"} {
		p.printed("box", m[1], what, p.list[1+i])
	}
	p.printed("stack", m[1], "diagonal", p.list[4])
	p.taped("stack", m[1], "diagonals apart", p.list[given])
	p.formLimits(m[1])
	if m[3] != "" {
		p.weighed(m[1], "empty in "+m[4], m[3])
	}
	return lineTaken
}

// together is the text of this line from a cell on, with the lines that go on with it at the
// same distance from the left.
func (s *paperScan) together(cell int) string {
	x := s.lines[s.at][cell].x
	text := strings.TrimSpace(s.lines[s.at][cell].text)
	for {
		next := s.next()
		if len(next) != 1 || math.Abs(next[0].x-x) > 0.1 || paperStart.MatchString(next[0].text) {
			break
		}
		text += " " + strings.TrimSpace(next[0].text)
		s.at++
	}
	return text
}

// paperBox reads width x height x depth.
func (r *reading) paperBox(drawer, which, text string) {
	sides := strings.Split(text, " x ")
	if len(sides) != 3 {
		r.fail("%s: no size: %q", drawer, text)
	}
	for i, m := range []string{"width", "height", "depth"} {
		r.printed("box", drawer, which+" "+m, sides[i])
	}
}

func (r *reading) paperCutList(rows iter.Seq[[]string], stock, thickness string) {
	pieces := 0
	for row := range rows {
		names := strings.Split(row[4], ", ")
		first := names[0]
		r.words("group", first, "number", row[0])
		r.words("group", first, "pieces", row[1])
		r.words("group", first, "parts", row[4])
		r.words("part", first, "stock", stock)
		r.printed("part", first, "thickness", thickness)
		r.printed("part", first, "length", row[2])
		r.printed("part", first, "width", row[3])
		pieces += whole(r, row[1])
	}
	r.count("stock", stock, "pieces", pieces)
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
