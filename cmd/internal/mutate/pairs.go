package mutate

import "strings"

// oddTags are values of a drawing, and group codes.
var oddTags = append([]string{"LWPOLYLINE", "POLYLINE", "VERTEX", "SEQEND", "CIRCLE", "LINE", "ARC", "INSERT", "SPLINE", "TEXT", "SECTION", "ENDSEC", "EOF", "HEADER", "TABLES", "ENTITIES", "BLOCKS",
	"TABLE", "ENDTAB", "LAYER", "8", "10", "11", "20", "21", "30", "38", "39", "42", "50", "51", "67", "70", "90", "210", "220", "230", "999", "-5", "32768", "1001", "AC1009", "AC1015", "$INSUNITS",
	"SCALE", "BLANK", "LABEL", "REGISTER", "PROFILE_INSIDE_THROUGH", "DADO_INSIDE_THROUGH", "DADO_OUTSIDE_6-10MM", "DADO_INSIDE_999-00MM"}, oddWords...)

// pair is a group code with its value, each on a line.
func pair(text string, at int) (from, to int) {
	from, to = line(text, at)
	if strings.Count(text[:from], "\n")%2 == 1 {
		from, _ = line(text, from-1)
		return from, to
	}
	_, to = line(text, min(to, len(text)))
	return from, to
}

// record is the pairs from one with the group code 0 to the next, section those from one section to the next.
func record(text string, at int) (from, to int)  { return between(text, at, "\n0\n") }
func section(text string, at int) (from, to int) { return between(text, at, "\n0\nSECTION\n") }

// between is what stands between two marks about a place.
func between(text string, at int, mark string) (from, to int) {
	from, to = strings.LastIndex(text[:at], mark)+1, len(text)
	if n := strings.Index(text[at:], mark); n >= 0 {
		to = at + n + 1
	}
	return from, to
}

// ofPairs spoil pairs of lines.
var ofPairs = append(append(append(spoilings(pair), spoilings(record)...), spoilings(section)...),
	func(s *spoiler, text string) string {
		return s.inPair(text, func(code, value string) string { return value + code })
	},
	func(s *spoiler, text string) string {
		return s.inPair(text, func(code, _ string) string { return code + one(s, s.format.odd) + "\n" })
	},
	func(s *spoiler, text string) string {
		return s.inPair(text, func(_, value string) string { return one(s, s.format.odd) + "\n" + value })
	},
	func(s *spoiler, text string) string { // larger, or lower
		return s.inPair(text, func(code, value string) string { return code + one(s, []string{"-", "9", "1e5", "0."}) + value })
	},
)

// inPair changes a pair.
func (s *spoiler) inPair(text string, change func(code, value string) string) string {
	from, to := pair(text, s.place(text))
	_, middle := line(text[:to], from)
	return text[:from] + change(text[from:middle], text[middle:to]) + text[to:]
}
