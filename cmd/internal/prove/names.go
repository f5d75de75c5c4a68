package prove

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawerwright/geom"
)

// names reads layer names by the pattern they were made with.
type names struct {
	form   *regexp.Regexp
	tokens []string
}

// said is what a layer's name says of its cuts; empty and 0 where it does not.
type said struct {
	operation, face string
	line            bool
	through, floor  bool
	depth           float64 // mm; of the wood left where floor
	step            float64 // mm: how far rounding takes the number from the depth
	depthSaid       bool
}

// forms are what can stand for a word of a pattern.
var forms = map[string]string{
	"{operation}": `(?:REGISTER|DADO|GROOVE|RABBET|DRILL|MORTISE|CUTOUT|FLANK|PROFILE|SLOT|ENGRAVE)(?:-LINE)?`,
	"{face}":      `INSIDE|OUTSIDE`,
	"{depth}":     `(?:LINE_)?(?:THROUGH|(?:FLOOR_|BELOW_)?[0-9]+-[0-9]+(?:MM|IN))`,
	"{cutter}":    `[A-Z0-9-]*`,
	"{tool}":      `[A-Z0-9-]*`,
	"{stock}":     `[A-Z0-9-]*`,
	"{diameter}":  `D[0-9]+-[0-9]+(?:MM|IN)`,
}

var wordInBraces = regexp.MustCompile(`\{[a-z]*\}`)

// maxPattern is the most bytes of a pattern of names; build takes 80.
const maxPattern = 255

// patternNames makes a reader of names.
func patternNames(pattern string) (names, error) {
	var n names
	if len(pattern) > maxPattern || !utf8.ValidString(pattern) {
		return n, errors.New("no pattern of names")
	}
	form := "^"
	rest := pattern
	for {
		at := wordInBraces.FindStringIndex(rest)
		if at == nil {
			break
		}
		token := rest[at[0]:at[1]]
		what, known := forms[token]
		if !known {
			return n, fmt.Errorf("unknown word %s", token)
		}
		before := regexp.QuoteMeta(strings.ToUpper(rest[:at[0]]))
		rest = rest[at[1]:]
		n.tokens = append(n.tokens, token)
		switch { // what is no hole has none, nor the line beside it
		case token != "{diameter}":
			form += before + "(" + what + ")"
		case strings.HasSuffix(before, "_"):
			form += strings.TrimSuffix(before, "_") + "(?:_(" + what + "))?"
		case strings.HasPrefix(rest, "_"):
			form, rest = form+before+"(?:("+what+")_)?", rest[1:]
		default:
			form += before + "(" + what + ")?"
		}
	}
	n.form = regexp.MustCompile(form + regexp.QuoteMeta(strings.ToUpper(rest)) + "$")
	return n, nil
}

// read takes a name apart, without regard to capitals.
func (n names) read(layer string) (said, bool) {
	var s said
	m := n.form.FindStringSubmatch(strings.ToUpper(layer))
	if m == nil {
		return s, false
	}
	for i, token := range n.tokens {
		text := m[i+1]
		switch token {
		case "{operation}":
			text, s.line = strings.CutSuffix(text, "-LINE")
			s.operation = strings.ToLower(text)
			s.line = s.line || s.operation == engraving
		case "{face}":
			s.face = strings.ToLower(text)
		case "{depth}":
			s.depthSaid = true
			if after, found := strings.CutPrefix(text, "LINE_"); found {
				text, s.line = after, true
			}
			if text == "THROUGH" {
				s.through = true
				continue
			}
			if after, found := strings.CutPrefix(text, "BELOW_"); found {
				text = after
			}
			text, s.floor = strings.CutPrefix(text, "FLOOR_")
			unit := geom.Millimeter
			if strings.HasSuffix(text, "IN") {
				unit = geom.Inch
			}
			s.step = rounding(unit)
			number, err := strconv.ParseFloat(strings.Replace(text[:len(text)-2], "-", ".", 1), 64)
			if err != nil {
				return s, false
			}
			s.depth = number * unit.MM()
		}
	}
	return s, true
}

// rounding is how far, in millimeters, the number in a layer's name is from the depth: half
// of 0.01 mm or 0.0001 in, and what a depth may lie under the middle that is rounded up.
func rounding(u geom.Unit) float64 {
	step := 0.01
	if u == geom.Inch {
		step = 0.0001 * geom.InchMM
	}
	return step/2 + geom.Computed.MM()
}

// readOf reads the name of a layer that the legend lists with a bit: where several bits
// would share a name, that of the bit comes after it.
func (n names) readOf(layer, bit string) (said, bool) {
	s, readable := n.read(layer)
	if at := strings.LastIndex(layer, "_"); !readable && bit != "" && at > 0 {
		return n.read(layer[:at])
	}
	return s, readable
}
