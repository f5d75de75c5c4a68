package readback

import (
	"fmt"
	"io"
	"iter"
	"math"
	"regexp"
	"strings"
)

var (
	paperTotal   = regexp.MustCompile(`^(\d+) box(?:es)? of (\d+) kinds?\. `)
	paperStock   = regexp.MustCompile(`^(.+), (.+) (mm|in) thick(?:, sheets of .+)?(?:; the grain runs along the length)?$`)
	paperLayout  = regexp.MustCompile(`^(?:\d+ (?:sheet|offcut)s? of|no sheet)[^;]*;`) // names hold no semicolon
	paperOpening = regexp.MustCompile(`^Opening (.+): worked out from (\d\S*(?: \([^)]+\)| \d+/\d+)?) x (\d\S*(?: \([^)]+\)| \d+/\d+)?) x (\d\S*(?: \([^)]+\)| \d+/\d+)?) (mm|in); slide: (.+)\.$`)
	paperSpacer  = regexp.MustCompile(`^spacer of (\S+) (?:mm|in)(?: \([^)]+\))? for (.+)$`)
	paperForm    = regexp.MustCompile(`^(.+) \d+ of (\d+)(?:, (\S+) (kg|lb))?$`)
	paperMachine = regexp.MustCompile(`^[A-Z][A-Za-z ]+, (?:cutter|bits?|plow iron) (\S+) (?:mm|in)(?: \([^)]+\))?(?:(?:,| and) [^:]+)?: (.+)$`)
	itemNumber   = regexp.MustCompile(`^\d+\.$`)
)

// packetReader reads packet.pdf: what stands on this line, and what the lines before it say
// that it belongs to.
type packetReader struct {
	*reading
	s     *paperScan
	list  []string // the cells of this line
	one   string   // the paragraph that begins with it, or nothing where there are several cells
	lines int      // of that paragraph
	title string   // the last paragraph that was a title

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

func packet(r *reading, data string) { r.packet(strings.NewReader(data)) }

// packet reads packet.pdf as it comes.
func (r *reading) packet(in io.Reader) {
	p := &packetReader{reading: r, s: r.paper(in), sheet: &setupReader{reading: r},
		said: make(map[string][]string), cover: true}
	defer p.s.close()
	for p.s.more() {
		p.s.forget()
		r.at = p.s.pages[p.s.at]
		p.list, p.one = p.s.cells(), ""
		ends := p.s.at + 1
		if len(p.list) == 1 {
			p.one, p.lines = p.s.paragraph()
			ends = p.s.at + p.lines
		}
		how := notTaken
		for _, chapter := range []func() taken{p.lists, p.bigFigures, p.boxes, p.cuts, p.parts, p.setups, p.cabinets, p.pilots,
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
		p.s.at = max(p.s.at+1, ends)
	}
	p.sheet.end()
}

// answered is how the answer on a job begins.
var answered = regexp.MustCompile(`^(Fits|May not fit|Does not fit|Overloaded|Cannot be cut): `)

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
	case s.begins("boxes", "outside", "inside", "corner", "drawers"):
		p.cover = false
		p.remarks(p.said)
		for row := range s.table(5) {
			kind := strings.Split(row[4], ", ") // of as many boxes each
			for _, drawer := range kind {
				p.words("box", drawer, "count", fmt.Sprint(whole(p.reading, row[0])/len(kind)))
				p.paperBox(drawer, "outside", row[1])
				p.paperBox(drawer, "inside", row[2])
			}
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
	case paperStock.MatchString(p.one) &&
		s.beginsAfter(p.lines, "no.", "pieces", "length "+unit, "width "+unit, "parts"):
		m := paperStock.FindStringSubmatch(p.one)
		s.at += p.lines
		p.paperCutList(s.table(5), m[1], m[2])
		return tableTaken
	case s.begins("no.", "pieces", "boards of each", "rough length "+unit, "rough width", "parts"):
		for row := range s.table(6) {
			first, _, _ := strings.Cut(row[5], ", ")
			p.rough(first, row[0], row[1], row[2])
			p.printed("rough", first, "length", row[3])
			p.printed("rough", first, "width", row[4])
		}
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

// setups reads the setup sheets of machines.
func (p *packetReader) setups() taken {
	s, one, list := p.s, p.one, p.list
	switch {
	case paperMachine.MatchString(one):
		m := paperMachine.FindStringSubmatch(one)
		p.sheet.machine(m[1], someOf(strings.Split(m[2], ", ")))
	case one == "Not on this machine" && len(s.next()) == 2: // a board may be called so
		for s.at++; s.more() && len(s.lines[s.at]) == 2 && s.cells()[0] == "!"; s.at++ {
			s.together(1)
			p.sheet.noSetup++
		}
		return tableTaken
	case settingLine.MatchString(one), strings.HasPrefix(one, oneSetting):
		p.sheet.paragraph(s.together(0))
	case len(list) == 2 && itemNumber.MatchString(list[0]):
		p.sheet.paragraph(list[0] + " " + s.together(1))
	case p.sheet.lastStep && whoLine.MatchString(one):
		p.sheet.paragraph(s.ticked())
	case passesLine.MatchString(one):
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
			p.words("drawing", strings.ReplaceAll(row[3], " ", ""), "pieces", row[0])
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
	case s.begins("strip", "for", "pieces", "length "+p.unit, "width", "height", "lower edge at", "front end at"):
		for row := range s.table(8) {
			for i, head := range stripHeads {
				if of := row[0] + " of " + row[1]; i == 0 {
					p.words("strip", of, head, row[2])
				} else {
					p.printed("strip", of, head, row[2+i])
				}
			}
		}
		return tableTaken
	case s.begins("drawer", "free over it now "+p.unit, "in the dampest air", "in the driest air"):
		for row := range s.table(4) {
			for i, head := range seasonHeads {
				p.printed("row", row[0], head, row[1+i])
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

// forms reads the line of the form for a box: the drawer's name, what is right of width, depth, height and diagonal,
// and by how much both diagonals may differ; limits stand below what is right. Below the name stands which box of how
// many it is, and perhaps what an empty one weighs.
func (p *packetReader) forms() taken {
	const given = 5 // cells after the first
	if len(p.list) != 1+given {
		return notTaken
	}
	name, first := p.list[0], p.s.lines[p.s.at][0]
	for k := p.s.at + 1; k < len(p.s.lines) && k < p.s.at+ahead; k++ {
		below := p.s.lines[k][0]
		down := first.y - below.y // 0 or less on the next page
		if math.Abs(below.x-first.x) > 0.1 || down <= 0 || down > formLine*float64(k-p.s.at) {
			break
		}
		name = joinLines(name, below.text)
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
	p.printed("stack", m[1], "diagonals apart", p.list[given])
	p.formLimits(m[1])
	if m[3] != "" {
		p.weighed(m[1], "empty in "+m[4], m[3])
	}
	return lineTaken
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
