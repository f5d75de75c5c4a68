package readback

import (
	"fmt"
	"regexp"
	"strings"
)

var (
	openingLine = regexp.MustCompile(`^opening (.+): worked out from (.+?) x (.+?) x (.+?) (mm|in);` +
		` slide: (.+); boxes (.+?) deep`)
	stockLine  = regexp.MustCompile(`^(.+), (.+) (mm|in) thick \(mean of the readings[^)]*\)`)
	packLine   = regexp.MustCompile(`^pack the cabinet's sides out by (\S+) `)
	spacerLine = regexp.MustCompile(`^  (\S+) (?:mm|in)(?: \([^)]+\))? for (.+)$`)
	blankLine  = regexp.MustCompile(`^(\d+ blanks, |Cut blanks of at least )`)
	pricedLine = regexp.MustCompile(`^board and banding as priced: (\S+)$`)
)

// partsReader reads what parts prints: its lines, and what they belong to.
type partsReader struct {
	*reading
	s       *scanner
	opening string
	sheets  bool // this line is of their list
	said    map[string][]string
}

// partsText reads what parts prints, and parts.txt.
func partsText(r *reading, text string) {
	p := &partsReader{reading: r, s: r.scan(text), said: make(map[string][]string)}
	for p.s.more() {
		text, how := p.s.line(), notTaken
		if p.s.at == 0 && answered.MatchString(text) { // where nothing is to be cut yet
			p.words("total", "job", "answer", text)
		}
		for _, chapter := range []func(string) taken{p.cabinets, p.lists, p.boxes, p.layouts, p.notes} {
			if how = chapter(text); how != notTaken {
				break
			}
		}
		if how != tableTaken {
			p.s.at++
		}
	}
	r.remarks(p.said)
}

// cabinets reads openings, and where drawers and slides come in them.
func (p *partsReader) cabinets(text string) taken {
	switch {
	case openingLine.MatchString(text):
		m := openingLine.FindStringSubmatch(text)
		p.opening = m[1]
		for i, what := range []string{"width", "height", "depth"} {
			p.printed("opening", p.opening, what, m[2+i])
		}
		p.words("opening", p.opening, "slide", m[6])
		p.printed("opening", p.opening, "slide length", m[7])
	case widthLine.MatchString(text):
		p.boxWidth(p.opening, text)
	case packLine.MatchString(text):
		p.printed("opening", p.opening, "packing", packLine.FindStringSubmatch(text)[1])
	case strings.HasPrefix(text, "drawer ") && rowHead.MatchString(text):
		p.rowTable(p.s.table("spacers:", "strip ", "Heights are"), p.opening)
		return tableTaken
	case strings.HasPrefix(text, "strip ") && strings.Contains(text, "lower edge"):
		p.stripTable(p.s.table("drawer ", "Strips are"))
		return tableTaken
	case strings.HasPrefix(text, "drawer ") && strings.Contains(text, "free over it"):
		p.seasonTable(p.s.table("Strips are"))
		return tableTaken
	case spacerLine.MatchString(text):
		p.spacerOf(spacerLine.FindStringSubmatch(text))
	default:
		return notTaken
	}
	return lineTaken
}

// lists reads the cut list of a stock, what machines are set to, how corners fit, and what
// it takes and costs.
func (p *partsReader) lists(text string) taken {
	s := p.s
	switch {
	case stockLine.MatchString(text):
		m := stockLine.FindStringSubmatch(text)
		s.at++
		p.cutList(s.tableUntil(blankLine.MatchString), m[1], m[2])
	case strings.HasPrefix(text, "no. ") && strings.Contains(text, " boards"):
		p.roughTable(s.table("Rough sizes are "))
	case strings.HasPrefix(text, "machine ") && (strings.Contains(text, fenceHead) || strings.Contains(text, edgeHead)):
		p.settingTable(s.tableUntil(func(text string) bool { return strings.Contains(text, " of fingers is ") }))
	case strings.HasPrefix(text, "measure ") && strings.Contains(text, "limits"):
		p.fitOf(s)
	case strings.HasPrefix(text, "stock ") && strings.Contains(text, "pieces"):
		p.boardTable(s.table())
	case strings.HasPrefix(text, "to buy ") && strings.Contains(text, "quantity"):
		p.buyTable(s.table("Sizes of parts", "board and banding"))
	case pricedLine.MatchString(text):
		p.money("total", "job", "cost", pricedLine.FindStringSubmatch(text)[1])
		return lineTaken
	default:
		return notTaken
	}
	return tableTaken
}

// boxes reads what boxes weigh, and the bores in the ends of their walls.
func (p *partsReader) boxes(text string) taken {
	switch {
	case strings.HasPrefix(text, "drawer ") && strings.Contains(text, "empty"):
		p.weightTable(p.s.table("Sag and stress"))
	case strings.HasPrefix(text, "drawer ") && strings.Contains(text, "bores in both ends"):
		p.boreTable(p.s.table(), "bores", "diameter")
	case strings.HasPrefix(text, "drawer ") && strings.Contains(text, "mortises in both ends"):
		p.boreTable(p.s.table(), "mortises", "width")
	default:
		return notTaken
	}
	return tableTaken
}

// layouts reads how sheets are laid out.
func (p *partsReader) layouts(text string) taken {
	switch {
	case strings.HasPrefix(text, "sheets ("):
		p.sheets = true
	case p.sheets && text == "":
		p.sheets = false
	case p.sheets && !strings.HasPrefix(text, "  "): // below it stands how its parts are held
		p.sheetSummary(text)
	default:
		return notTaken
	}
	return lineTaken
}

// notes keeps warnings and notes.
func (p *partsReader) notes(text string) taken {
	if text != "warnings" && text != "notes" {
		return notTaken
	}
	of := strings.TrimSuffix(text, "s")
	for p.s.at++; p.s.at < len(p.s.lines) && p.s.lines[p.s.at] != ""; p.s.at++ {
		p.said[of] = append(p.said[of], p.s.lines[p.s.at])
	}
	return tableTaken
}

// rowHead is of a table of rows, with drawer fronts or without.
var rowHead = regexp.MustCompile(`(front|row) height`)

func (r *reading) rowTable(t printedTable, opening string) {
	for row := range t.each(r) {
		drawer := row[0]
		r.words("row", drawer, "opening", opening)
		for _, measure := range []string{"front height", "front lower edge", "box lower edge", "free above", "free below",
			"slide line"} {
			head := measure
			if !t.has(head) { // there are no fronts
				head = strings.Replace(head, "front", "row", 1)
			}
			if v := t.get(r, row, head); v != "-" {
				r.printed("row", drawer, measure, v)
			}
		}
	}
}

// stripHeads and seasonHeads are the measures of strips and of what is free over boxes, as tables have them.
var (
	stripHeads  = []string{"pieces", "length", "width", "height", "lower edge at", "front end at"}
	seasonHeads = []string{"free over it now", "in the dampest air", "in the driest air"}
)

func (r *reading) stripTable(t printedTable) {
	for row := range t.each(r) {
		of := t.get(r, row, "strip") + " of " + t.get(r, row, "for")
		for i, head := range stripHeads {
			if v := t.get(r, row, head); i == 0 {
				r.words("strip", of, head, v)
			} else {
				r.printed("strip", of, head, v)
			}
		}
	}
}

func (r *reading) seasonTable(t printedTable) {
	for row := range t.each(r) {
		for _, head := range seasonHeads {
			r.printed("row", row[0], head, t.get(r, row, head))
		}
	}
}

// rough takes by which number, of how many pieces and of how many boards each, a group of parts is made.
func (r *reading) rough(first string, counts ...string) {
	for i, measure := range []string{"number", "pieces", "boards"} {
		r.words("rough", first, measure, counts[i])
	}
}

func (r *reading) roughTable(t printedTable) {
	for row := range t.each(r) {
		first, _, _ := strings.Cut(t.get(r, row, "parts"), ", ")
		r.rough(first, row[0], t.get(r, row, "pieces"), t.get(r, row, "boards of each"))
		r.printed("rough", first, "length", t.get(r, row, "rough length"))
		r.printed("rough", first, "width", t.get(r, row, "rough width"))
	}
}

// cutList reads the parts of one stock.
func (r *reading) cutList(t printedTable, stock, thickness string) {
	pieces := 0
	for row := range t.each(r) {
		parts := t.get(r, row, "parts")
		first, _, _ := strings.Cut(parts, ", ")
		r.above(t, func() {
			r.words("part", first, "stock", stock)
			r.printed("part", first, "thickness", thickness)
		})
		r.printed("part", first, "length", t.get(r, row, "length"))
		r.printed("part", first, "width", t.get(r, row, "width"))
		n := t.get(r, row, "pieces")
		r.words("group", first, "number", t.get(r, row, "no."))
		r.words("group", first, "pieces", n)
		r.words("group", first, "parts", parts)
		r.words("group", first, "cuts", t.get(r, row, "cuts"))
		if t.has("of them spare") {
			r.words("group", first, "spares", t.get(r, row, "of them spare"))
		}
		if pair := t.either(pairHeads...); pair != "" {
			r.words("group", first, "setting", t.get(r, row, pair))
		}
		pieces += whole(r, n)
	}
	r.count("stock", stock, "pieces", pieces)
}

// spacerOf reads a spacer and the drawers that stand on it.
func (r *reading) spacerOf(m []string) { r.printed("spacer", m[2], "length", m[1]) }

// fitOf reads a table of measures, and the verdict above it.
func (r *reading) fitOf(s *scanner) {
	r.at--
	drawers := r.judged(s.lines[s.at-1])
	r.measures(s.table(), drawers)
}

// above takes facts of the line above a table.
func (r *reading) above(t printedTable, take func()) {
	at := r.at
	r.at = t.line - 1
	take()
	r.at = at
}

// What fence distance and cutter height are called at machines with a fence, and at a router.
const (
	fenceHead, heightHead = "fence distance", "cutter height"
	edgeHead, deepHead    = "slots from edge", "slots deep"
)

var pairHeads = []string{"fence / height", "slots from edge / deep"}

// settingTable reads fence distance and cutter height of the corners of drawers.
func (r *reading) settingTable(t printedTable) {
	for row := range t.each(r) {
		height, _, _ := strings.Cut(t.get(r, row, t.either(heightHead, deepHead)), " ")
		for _, d := range strings.Split(t.get(r, row, "drawers"), ", ") {
			if cutter := "cutter " + r.unit; t.has(cutter) {
				r.printed("corner", d, "cutter", t.get(r, row, cutter))
			}
			r.printed("corner", d, "fence", t.get(r, row, t.either(fenceHead, edgeHead)))
			r.printed("corner", d, "height", height)
		}
	}
}

func (r *reading) boardTable(t printedTable) {
	for row := range t.each(r) {
		stock := t.get(r, row, "stock")
		r.words("stock", stock, "pieces", t.get(r, row, "pieces"))
		r.add("stock", stock, "area", t.get(r, row, "area"), 0.01)
		if n := t.get(r, row, "sheets"); n != "-" {
			r.words("stock", stock, "sheets", n)
		}
		r.money("stock", stock, "cost", t.get(r, row, "their price"))
	}
}

func (r *reading) buyTable(t printedTable) {
	for row := range t.each(r) {
		name := t.get(r, row, "to buy") + " " + t.get(r, row, "what")
		r.words("buy", name, "quantity", t.get(r, row, "quantity"))
		r.words("buy", name, "unit", t.get(r, row, "unit"))
		r.money("buy", name, "cost", t.get(r, row, "price"))
	}
}

func (r *reading) weightTable(t printedTable) {
	for row := range t.each(r) {
		drawer := t.get(r, row, "drawer")
		for _, measure := range []string{"empty", "loaded", "slides carry"} {
			if v := t.get(r, row, measure); v != "-" {
				value, unit, _ := strings.Cut(v, " ")
				r.weighed(drawer, measure+" in "+unit, value)
			}
		}
		if sags := t.get(r, row, "bottom sags"); sags != "-" {
			r.span("sag", drawer, sags, "clamped", "simple")
			r.printed("sag", drawer, "limit", t.get(r, row, "1/200"))
		}
	}
}

// limits reads `a to b` as limits, each rounded inward by a step at most.
func (r *reading) limits(kind, of, text, from, to string) {
	a, b, ok := strings.Cut(text, " to ")
	if !ok {
		b = a
	}
	step := 0.02
	if r.unit == "in" {
		step = 0.002
	}
	r.add(kind, of, from, a, step)
	r.add(kind, of, to, b, step)
}

// span reads `a to b` as two measures; where they print alike there is one number.
func (r *reading) span(kind, of, text, from, to string) {
	a, b, ok := strings.Cut(text, " to ")
	if !ok {
		b = a
	}
	r.printed(kind, of, from, a)
	r.printed(kind, of, to, b)
}

// boreTable reads holes in ends, and mortises, which have lengths too.
func (r *reading) boreTable(t printedTable, what, wide string) {
	for row := range t.each(r) {
		of := t.get(r, row, "drawer") + " " + t.get(r, row, what+" in both ends of")
		r.printed("bore", of, "diameter", diameter(t.get(r, row, wide)))
		r.printed("bore", of, "depth", t.get(r, row, "depth"))
		r.printed("bore", of, "from outside", t.get(r, row, "from the outside face"))
		for i, h := range strings.Split(t.get(r, row, "over the lower edge"), ", ") {
			r.printed("bore", of, fmt.Sprint("height ", i+1), h)
		}
		if what != "mortises" {
			continue
		}
		for i, n := range strings.Split(t.get(r, row, "length"), ", ") {
			r.printed("bore", of, fmt.Sprint("length ", i+1), n)
		}
	}
}

// diameter is the number of a bit's size: "4 mm", "1/8 in", "0.197 in (13/64 - 0.006)", and of
// metric hardware in inches "5 mm (0.197 in)".
func diameter(size string) string {
	if _, inches, metric := strings.Cut(size, " mm ("); metric {
		size = inches
	}
	size, _, _ = strings.Cut(size, " (")
	for _, unit := range []string{")", " mm", " in"} {
		size = strings.TrimSuffix(size, unit)
	}
	return size
}
