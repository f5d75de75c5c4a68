package readback

import (
	"regexp"
	"strings"
)

// heldTogether is what is measured with parts held together.
var heldTogether = map[string]*regexp.Regexp{
	"sides and box front": regexp.MustCompile(`^two sides and a box front, side by side +(\S+)`),
	"outside width":       regexp.MustCompile(`^outside width, dry fitted +(\S+)`),
	"diagonal":            regexp.MustCompile(`^both diagonals, over the ends of the sides +(\S+)`),
	"diagonals apart":     regexp.MustCompile(`^both diagonals, .* no more than (\S+) apart`),
}

// fitText reads what fit prints: the boards, and a table of measures for drawers of which
// everything is the same. Drawers beyond the four that are named cannot be told apart.
func fitText(r *reading, text string) {
	s := r.scan(text)
	var drawers []string
	for s.more() {
		line := s.line()
		switch {
		case strings.HasPrefix(line, "stock ") && strings.Contains(line, "thickness"):
			r.boards(s.table())
			continue
		case strings.HasPrefix(line, "measure ") && strings.Contains(line, "limits"):
			drawers = r.judged(s.lines[s.at-1])
			r.measures(s.table(), drawers)
			continue
		}
		for measure, held := range heldTogether {
			if m := held.FindStringSubmatch(line); m != nil {
				for _, d := range drawers {
					r.printed("stack", d, measure, m[1])
				}
			}
		}
		s.at++
	}
}

// judged reads the verdict on drawers, and gives those that are named.
func (r *reading) judged(line string) []string {
	names, said, ok := strings.Cut(line, ": ")
	if !ok {
		r.fail("no verdict: %q", line)
	}
	drawers := strings.Split(withoutMore(names), ", ")
	for _, d := range drawers {
		r.words("verdict", d, "said", said)
	}
	return drawers
}

// judgedLine is how a verdict with its odds ends.
var judgedLine = regexp.MustCompile(` boxes comes? out right$`)

// withoutMore leaves out how many more there are.
func withoutMore(names string) string {
	if first, n, found := cutLast(names, " and "); found && strings.HasSuffix(n, " more") {
		return first
	}
	return names
}

func (r *reading) boards(t printedTable) {
	for row := range t.each(r) {
		stock := t.get(r, row, "stock")
		r.printed("board", stock, "mean", t.get(r, row, "thickness"))
		r.printed("board", stock, "least", t.get(r, row, "least"))
		r.printed("board", stock, "most", t.get(r, row, "most"))
	}
}

// shortOf is the name of a measure without what explains its sign, which some tables leave out.
func shortOf(measure string) string {
	short, _, _ := strings.Cut(measure, " (")
	return short
}

// beside reads a number of a measure that stands beside its limits: at one of them it may be rounded as that is.
func (r *reading) beside(of, limits, measure, text string) {
	step := r.step(text)
	if low, high, _ := strings.Cut(limits, " to "); text == low || text == high {
		step *= 2
	}
	r.add("fit", of, measure, text, step)
}

// rangeBeside reads `a to b` of a measure that stands beside its limits.
func (r *reading) rangeBeside(of, limits, measure, text string) {
	a, b, _ := strings.Cut(text, " to ")
	r.beside(of, limits, measure+" from", a)
	r.beside(of, limits, measure+" to", b)
}

func (r *reading) measures(t printedTable, drawers []string) {
	for row := range t.each(r) {
		for _, d := range drawers {
			of := d + ": " + shortOf(t.get(r, row, "measure"))
			limits := t.get(r, row, "limits")
			r.limits("fit", of, limits, "limit from", "limit to")
			r.beside(of, limits, "nominal", t.get(r, row, "as set"))
			r.rangeBeside(of, limits, "likely", t.get(r, row, "likely"))
			// A screen marks what is not right.
			r.words("fit", of, "verdict", strings.TrimPrefix(t.get(r, row, "verdict"), "! "))
			r.words("fit", of, "right of 1,000", t.get(r, row, t.either("right of 1,000", "of 1,000")))
			if t.has("worst") {
				r.rangeBeside(of, limits, "worst", t.get(r, row, "worst"))
			}
		}
	}
}

func fitJSON(r *reading, text string) {
	var j struct {
		Boards []struct {
			Stock          string
			Mean, Min, Max float64
		}
		Drawers []struct {
			Drawer, Text string
			Fit          []fitted
			Stack        struct {
				SidesAndFront float64 `json:"sides_and_front"`
				OutsideWidth  float64 `json:"outside_width"`
				Diagonal      float64
				Apart         float64 `json:"max_diagonal_difference"`
			}
		}
	}
	r.decode(text, &j)
	for _, b := range j.Boards {
		r.exact("board", b.Stock, "mean", b.Mean)
		r.exact("board", b.Stock, "least", b.Min)
		r.exact("board", b.Stock, "most", b.Max)
	}
	for _, d := range j.Drawers {
		for _, f := range d.Fit {
			r.fit(d.Drawer, f)
		}
		r.words("verdict", d.Drawer, "said", d.Text)
		r.exact("stack", d.Drawer, "sides and box front", d.Stack.SidesAndFront)
		r.exact("stack", d.Drawer, "outside width", d.Stack.OutsideWidth)
		r.exact("box", d.Drawer, "outside width", d.Stack.OutsideWidth)
		r.exact("stack", d.Drawer, "diagonal", d.Stack.Diagonal)
		r.exact("stack", d.Drawer, "diagonals apart", d.Stack.Apart)
	}
}
