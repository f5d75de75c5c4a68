package readback

import (
	"regexp"
	"strconv"
	"strings"
)

// widthLine says how wide the boxes of an opening are, and as which sum; widthPart is one of its terms.
var (
	widthLine = regexp.MustCompile(`^[Bb]oxes (\S+) (?:mm|in) wide = (.+?)\.?$`)
	widthPart = regexp.MustCompile(`^(?:([+-]) )?(?:(\d+) x )?(\S+) ([a-z][a-z ]*)$`)
)

// widthTerms are the measures of all terms that there may be.
var widthTerms = func() string {
	var list []string
	for _, of := range []string{"opening", "shims", "slide", "inside deduction", "sides", "so that most run"} {
		list = append(list, "times "+of, "width from "+of)
	}
	return strings.Join(list, "|")
}()

// boxWidth reads such a line of an opening; each term is a fact, and so is how often it is taken.
func (r *reading) boxWidth(opening, line string) {
	m := widthLine.FindStringSubmatch(line)
	r.printed("opening", opening, "boxes wide", m[1])
	sum := strings.ReplaceAll(strings.ReplaceAll(m[2], " + ", "\n+ "), " - ", "\n- ")
	for _, term := range strings.Split(sum, "\n") {
		t := widthPart.FindStringSubmatch(term)
		if t == nil {
			r.fail("no part of a width: %q", term)
			continue
		}
		times := 1
		if t[2] != "" {
			times, _ = strconv.Atoi(t[2])
		}
		if t[1] == "-" {
			times = -times
		}
		r.widthTerm(opening, t[4], times)
		r.printed("opening", opening, "width from "+t[4], t[3])
	}
}

// widthTerm is how often a part of the width is taken.
func (r *reading) widthTerm(opening, of string, times int) {
	r.words("opening", opening, "times "+of, strconv.Itoa(times))
}
