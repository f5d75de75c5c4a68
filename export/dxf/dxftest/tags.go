package dxftest

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Tag is one pair of a group code and its value, with the line of the code
// counted from 1.
type Tag struct {
	Code  int
	Value string
	Line  int
}

// ErrTags is the error of a file that is not made of pairs of lines.
var ErrTags = errors.New("not a sequence of tags")

// maxLine is the longest line that is read, more than the format allows.
const maxLine = 1 << 16

// ReadTags reads all pairs of a file. Line ends are \n or \r\n.
func ReadTags(r io.Reader) ([]Tag, error) {
	var tags []Tag
	scan := bufio.NewScanner(r)
	scan.Buffer(make([]byte, 0, 4096), maxLine)
	for line := 1; scan.Scan(); line += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(scan.Text()))
		if err != nil {
			return nil, fmt.Errorf("%w: line %d: group code %q", ErrTags, line, scan.Text())
		}
		if !scan.Scan() {
			return nil, fmt.Errorf("%w: line %d: group code %d without a value", ErrTags, line, code)
		}
		tags = append(tags, Tag{code, strings.TrimSuffix(scan.Text(), "\r"), line})
	}
	if err := scan.Err(); err != nil {
		return nil, err
	}
	return tags, nil
}

func readAll(data []byte) ([]Tag, error) { return ReadTags(bytes.NewReader(data)) }

// kind is what a group code says of its value.
type kind int

const (
	text kind = iota
	real
	integer
	handle
)

// kindOf gives the kind of a value by its group code, for the codes below 1000.
func kindOf(code int) kind {
	in := func(low, high int) bool { return low <= code && code <= high }
	switch {
	case in(10, 59), in(110, 149), in(210, 239):
		return real
	case in(60, 99), in(160, 179), in(270, 299), in(370, 389), in(400, 409):
		return integer
	case code == 5, code == 105, in(320, 369), in(390, 399):
		return handle
	default:
		return text
	}
}

// wrong says what is wrong with a tag's value, if anything is. A real number has
// a decimal point, is finite and is not a negative zero.
func (t Tag) wrong() string {
	switch kindOf(t.Code) {
	case real:
		v, err := strconv.ParseFloat(t.Value, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return "not a finite number"
		}
		if !strings.Contains(t.Value, ".") {
			return "a real number without a decimal point"
		}
		if v == 0 && math.Signbit(v) {
			return "a negative zero"
		}
	case integer:
		if _, err := strconv.ParseInt(t.Value, 10, 32); err != nil {
			return "not a whole number"
		}
	case handle:
		if _, err := strconv.ParseUint(t.Value, 16, 64); err != nil || strings.ToUpper(t.Value) != t.Value {
			return "not a handle"
		}
	default:
		for i := range len(t.Value) {
			if c := t.Value[i]; c < ' ' || c > '~' {
				return "a control character or one beyond ASCII"
			}
		}
	}
	return ""
}

// float gives a real number's value, 0 where it has none.
func (t Tag) float() float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(t.Value), 64)
	if err != nil {
		return 0
	}
	return v
}

// int gives a whole number's value, -1 where it has none.
func (t Tag) int() int {
	v, err := strconv.Atoi(strings.TrimSpace(t.Value))
	if err != nil {
		return -1
	}
	return v
}

// handle gives a handle's value, 0 where it has none.
func (t Tag) handle() uint64 {
	v, err := strconv.ParseUint(strings.TrimSpace(t.Value), 16, 64)
	if err != nil {
		return 0
	}
	return v
}
