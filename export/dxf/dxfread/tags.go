package dxfread

import (
	"bytes"
	"strconv"
)

// tags reads the pairs of a file one after another. The first error is kept, and
// there is no pair after it.
type tags struct {
	data []byte
	at   int // the offset of the first line that is not read yet

	code  int    // of the pair that was read last
	value []byte // as it stands in the file, without the line end
	line  int    // of its group code, counted from 1

	comments []string
	err      error
}

func newTags(data []byte) tags { return tags{data: data, line: -1} }

// fail keeps the first error, at the line of the last pair's group code plus
// below.
func (t *tags) fail(rule error, below int, found string) { t.failAt(rule, t.line+below, found) }

func (t *tags) failAt(rule error, line int, found string) {
	if t.err == nil {
		t.err = &Error{Rule: rule, Line: line, Found: found}
	}
}

// commentCode is the group code of a comment, which may stand between any two
// pairs.
const commentCode = 999

// next reads the next pair that is not a comment, and says whether there is one.
// A file that has none left has lost its EOF, as nothing is read after that.
func (t *tags) next() bool {
	for t.pair() {
		if t.code != commentCode {
			return true
		}
		t.comments = append(t.comments, string(t.value))
	}
	return false
}

// nextGroup reads the next pair of a record, and says whether there is one: a
// group 0 begins another record.
func (t *tags) nextGroup() bool { return t.next() && t.code != 0 }

func (t *tags) pair() bool {
	if t.err != nil {
		return false
	}
	t.line += 2
	line, rest := cutLine(t.data[t.at:])
	word := trim(line)
	code, ok := whole(word)
	switch {
	case len(word) == 0 && len(trim(rest)) == 0:
		t.fail(ErrSections, 0, "the file ends without EOF")
	case !ok || code <= -codeLimit || code >= codeLimit:
		t.fail(ErrTags, 0, "group code "+shown(line))
	case len(rest) == 0:
		t.fail(ErrTags, 1, "group code "+strconv.Itoa(code)+" without a value")
	}
	if t.err != nil {
		return false
	}
	value, rest := cutLine(rest)
	t.at = len(t.data) - len(rest)
	if n := len(value); n > 0 && value[n-1] == '\r' {
		value = value[:n-1]
	}
	t.code, t.value = code, value
	return true
}

// cutLine parts the first line from the rest, without its line feed.
func cutLine(b []byte) (line, rest []byte) {
	if i := bytes.IndexByte(b, '\n'); i >= 0 {
		return b[:i], b[i+1:]
	}
	return b, nil
}

// codeLimit is beyond all group codes. The largest is 1071.
const codeLimit = 10_000

// trim drops white space at both ends.
func trim(b []byte) []byte {
	for len(b) > 0 && blank(b[0]) {
		b = b[1:]
	}
	for len(b) > 0 && blank(b[len(b)-1]) {
		b = b[:len(b)-1]
	}
	return b
}

func blank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// real gives the value as a real number, or 0 and an error.
func (t *tags) real() float64 {
	v, ok := real(t.value)
	if !ok {
		t.failNumber("number")
		return 0
	}
	return v
}

// whole gives the value as a whole number, or 0 and an error.
func (t *tags) whole() int {
	v, ok := whole(trim(t.value))
	if !ok {
		t.failNumber("whole number")
		return 0
	}
	return v
}

func (t *tags) failNumber(what string) {
	t.fail(ErrNumber, 1, "group "+strconv.Itoa(t.code)+", a "+what+", is "+shown(t.value))
}
