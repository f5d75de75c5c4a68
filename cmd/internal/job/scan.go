package job

import (
	"strings"

	"github.com/goccy/go-yaml/scanner"
)

// mark is one token of a job file: a scalar or one of the signs - : , [ ] { }.
type mark struct {
	sign  byte // 0 for a scalar
	text  string
	at    Position
	inset int  // columns from the place to the text itself: 1 in quotes; -1 where escapes change the text
	last  int  // the line that the token ends on; a later one for quotes that are bad
	bad   bool // a scalar that stands for something already reported
}

// scan cuts the text from a line on into marks with the scanner of
// goccy/go-yaml, and reports what a job does without: anchors, aliases, tags,
// merge keys, block text, further documents. The library's parser is not used:
// it stops at the first mistake, and its time grows with the square of the
// keys of a mapping; DEVELOPERS.md shows what was tried.
//
// The scanner's own time grows with the square of two things only, empty lines
// in block text and "<<". The first are left out (lines says where the others
// were), the second is limited.
//
// The signs that may still be scanned are taken from the budget. A file that
// has more of them is reported when it is scanned from its first line.
func scan(src *source, from int, budget *int, r *reporter) []mark {
	var (
		text  strings.Builder
		lines []int
		whole = *budget
	)
	for i, line := range src.lines[from-1:] {
		number := from + i
		if plain := strings.TrimLeft(line, " \t"); plain == "" || plain[0] == '#' {
			continue
		}
		if *budget -= 1 + countSigns(line); *budget < 0 {
			if from == 1 {
				r.fail(CodeTooLarge, Position{number, 1}, "divide the job into several files", "the file has more than %d signs up to this line", maxMarks)
			}
			return nil
		}
		// A tab further along a line separates as a space does.
		text.WriteString(strings.ReplaceAll(line, "\t", " ") + "\n")
		lines = append(lines, number)
	}
	if strings.Count(text.String(), "<<") > maxMerges {
		r.fail(CodeUnsupported, Position{1, 1}, "write the entries out", `"<<" is in the file more than %d times`, maxMerges)
		return nil
	}
	s := scanning{reporter: r, lines: lines, after: 1}
	s.marks = make([]mark, 0, 2*(whole-*budget)) // a sign, and text beside it
	var yaml scanner.Scanner
	yaml.Init(text.String())
	for invalid := 0; invalid < maxInvalid && !s.ended; invalid++ {
		tokens, err := yaml.Scan()
		s.take(tokens)
		if err == nil || len(tokens) == 0 {
			break
		}
	}
	return s.marks
}

// countSigns counts the bytes that can begin or end a token.
func countSigns(line string) int {
	n := 0
	for i := range len(line) {
		switch line[i] {
		case ':', ',', '[', ']', '{', '}', '#', '&', '*', '!', '|', '>', '\'', '"', '%', '@', '`', '?', '<':
			n++
		case '-':
			if i+1 == len(line) || line[i+1] == ' ' {
				n++
			}
		}
	}
	return n
}
