package dxfread

import (
	"errors"
	"strconv"
)

// The rules that a file can break. Compare with [errors.Is]; the line and what
// was found there are in the [*Error] around it.
var (
	ErrTags       = errors.New("the file is pairs of lines, a group code and its value")
	ErrNumber     = errors.New("the value is a finite number")
	ErrSections   = errors.New("every section ends, ENTITIES is there once, and EOF is last")
	ErrIncomplete = errors.New("a record has all of its parts")
)

// Error is one broken rule with its place.
type Error struct {
	Rule  error  // one of the Err values of this package
	Line  int    // counted from 1
	Found string // what is there
}

// Error names the line, what is there and the rule.
func (e *Error) Error() string {
	return "dxf line " + strconv.Itoa(e.Line) + ": " + e.Found + ": broken rule: " + e.Rule.Error()
}

// Unwrap gives the rule.
func (e *Error) Unwrap() error { return e.Rule }

// shownValue bounds how much of a value a message repeats, in bytes.
const shownValue = 64

// shown quotes a value for a message, so that nothing in it can do harm there.
func shown(value []byte) string {
	if len(value) > shownValue {
		return strconv.QuoteToASCII(string(value[:shownValue])) + "..."
	}
	return strconv.QuoteToASCII(string(value))
}
