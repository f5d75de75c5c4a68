package mutate

import "strings"

// ofLines are the ways to spoil lines, ofBlocks those to spoil a line with all that is indented below it.
var (
	ofLines  = spoilings(line)
	ofBlocks = spoilings(block)
)

// line finds the line of a place, block that line with those below it that stand further in.
func line(text string, at int) (from, to int) {
	from = strings.LastIndexByte(text[:at], '\n') + 1
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return from, at + n + 1
	}
	return from, len(text)
}

func block(text string, at int) (from, to int) {
	from, to = line(text, at)
	depth := indent(text[from:to])
	for to < len(text) {
		_, next := line(text, to)
		if below := text[to:next]; strings.TrimSpace(below) != "" && indent(below) <= depth {
			break
		}
		to = next
	}
	return from, to
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

// spoilings drop, double, swap and move what find finds at a place.
func spoilings(find func(text string, at int) (from, to int)) []way {
	found := func(s *spoiler, text string) (from, to int) { return find(text, s.place(text)) }
	return []way{
		func(s *spoiler, text string) string {
			from, to := found(s, text)
			return text[:from] + text[to:]
		},
		func(s *spoiler, text string) string {
			from, to := found(s, text)
			return text[:to] + text[from:]
		},
		func(s *spoiler, text string) string { // two of them swapped
			a, b := found(s, text)
			c, d := found(s, text)
			if a > c {
				a, b, c, d = c, d, a, b
			}
			if b > c { // one within the other
				return text
			}
			return text[:a] + text[c:d] + text[b:c] + text[a:b] + text[d:]
		},
		func(s *spoiler, text string) string { // one of any sample where it does not belong
			other := one(s, s.samples).Text
			from, to := found(s, other)
			at, _ := found(s, text)
			return text[:at] + other[from:to] + text[at:]
		},
	}
}

// place is a place in a text.
func (s *spoiler) place(text string) int { return s.IntN(len(text) + 1) }
