package readback

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
)

// What stands over a large figure, and before the first of a setting.
var (
	figureCaption = regexp.MustCompile(`^(fence|sacrificial fence|out of sacrificial fence|then fence|gauge or fence|height|depth or shoulder|cutter|plow iron|bit)` +
		`(?: (?:mm|in)(?: \([^)]+\))?(?:, .+)?)?$`)
	figureLabel  = regexp.MustCompile(`^Setting (\d+)(?:,|$)`)
	figureNumber = regexp.MustCompile(`^\d+\.\d+$`)
)

// bigFigures are the large figures of settings, on the bench sheet and on the cards.
type bigFigures struct {
	machine     int // on the bench sheet, which has them for all machines
	of, setting string
	later       int // fence distances after the first
	end         int // the line after the last row
}

// captions are what those on a line name; false where it has anything else.
func captions(line []pdfText) (names []string, ok bool) {
	for _, t := range line {
		m := figureCaption.FindStringSubmatch(strings.TrimSpace(t.text))
		if m == nil {
			return nil, false
		}
		names = append(names, m[1])
	}
	return names, len(names) > 0
}

// bigFigures reads the label of a setting, and each row of large figures, which are written after their captions.
func (p *packetReader) bigFigures() taken {
	s, b := p.s, &p.big
	if m := figureLabel.FindStringSubmatch(p.one); m != nil {
		if m[1] == "1" {
			b.machine++
		}
		b.of, b.setting, b.later = p.sheet.of, "setting "+m[1], 0
		if b.of == "" {
			b.of = fmt.Sprint("machine ", b.machine)
		}
		return lineTaken
	}
	heads := s.lines[s.at]
	names, ok := captions(heads)
	if !ok {
		return notTaken
	}
	if !slices.ContainsFunc(names, func(name string) bool { return name != "bit" }) { // a router, which has no settings
		if s.at != b.end {
			b.machine++
		}
		b.setting = ""
	}
	values := make([]string, len(names))
	left := len(names)
	for at := s.at + 1; left > 0; at++ {
		if at > s.at+len(names) || at == len(s.lines) {
			return notTaken
		}
		for _, t := range s.lines[at] {
			below := func(h pdfText) bool { return math.Abs(t.x-h.x) < 0.5 && t.size > h.size } // a board may be called as one
			if i := slices.IndexFunc(heads, below); i >= 0 && values[i] == "" {
				values[i] = strings.TrimSpace(t.text)
				left--
			}
		}
		b.end = at + 1
	}
	for i, name := range names {
		measure := figureOf[name]
		if measure == thenFence {
			b.later++
			measure = fmt.Sprint(thenFence, " ", b.later)
		}
		if b.setting != "" && figureNumber.MatchString(values[i]) && !(measure == "fence" && zero(values[i])) {
			p.printed(b.of, b.setting, measure, values[i])
		}
	}
	s.at = b.end
	return tableTaken
}
