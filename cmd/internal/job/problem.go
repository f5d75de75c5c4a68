package job

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"drawerwright/geom"
)

// Rules for messages: the message says what was found, beginning with the
// entry; the hint says what the shop can write instead. Neither ends with a
// full stop. Whatever comes from the file goes through quote.

// Problem is one thing about a job file that a person has to know.
type Problem struct {
	File         string
	Line, Column int // from 1, in characters
	Level        geom.Level
	Code         Code
	Message      string
	Hint         string // what would do; may be empty
	Key          string // of a missing entry, in the mapping at the place
	// Instead are what the hint names to be written for the word or key at the place;
	// with each of them it is gone.
	Instead []string
	// Ways are ways out that were tried, each with what it writes.
	Ways    []WayOut
	Excerpt string // the line of the file, cut around the place, safe to print
	Caret   int    // columns of a terminal before the place in the excerpt
}

// IsError reports whether the job cannot be built.
func (p Problem) IsError() bool { return p.Level == geom.LevelError }

// Problems are all the problems of a file in the order of their places. At
// 500 the list ends.
type Problems []Problem

// Count is how many problems are of a level.
func (ps Problems) Count(l geom.Level) (n int) {
	for _, p := range ps {
		if p.Level == l {
			n++
		}
	}
	return n
}

// Failed reports whether one of the problems is an error.
func (ps Problems) Failed() bool {
	return slices.ContainsFunc(ps, Problem.IsError)
}

// reporter collects the problems of one file.
type reporter struct {
	src      *source
	problems Problems
	// lost is set when lines of the file could not be read, so that nothing is
	// reported missing that may stand there.
	lost bool
}

// full reports that further problems are not kept, so that reading can stop.
func (r *reporter) full() bool { return len(r.problems) >= MaxProblems }

func (r *reporter) fail(code Code, at Position, hint, format string, args ...any) {
	r.add(Problem{Level: geom.LevelError, Code: code, Hint: hint, Message: fmt.Sprintf(format, args...)}, at)
}

// suggest is fail for what another text at the place would end.
func (r *reporter) suggest(code Code, at Position, s suggestion, format string, args ...any) {
	r.add(Problem{Level: geom.LevelError, Code: code, Hint: s.hint, Instead: s.instead,
		Message: fmt.Sprintf(format, args...)}, at)
}

func (r *reporter) add(p Problem, at Position) {
	if !r.full() {
		r.problems = append(r.problems, r.src.place(p, at))
	}
}

// sorted returns the problems by line and column, those at one place in the
// order in which they were found. A line that was scanned twice may have been
// reported twice; once is kept.
func (r *reporter) sorted() Problems {
	slices.SortStableFunc(r.problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	r.problems = slices.CompactFunc(r.problems, func(a, b Problem) bool {
		return a.Line == b.Line && a.Column == b.Column && a.Code == b.Code && a.Message == b.Message
	})
	return r.problems
}

// quote shows text of the file in a message: cut, and with everything that
// does not print escaped.
func quote(text string) string {
	n := 0
	for i := range text {
		if n++; n > maxQuote {
			return strconv.Quote(text[:i] + "…")
		}
	}
	return strconv.Quote(text)
}

// First is the first problem of a level or a worse one; nil when there is none.
func (ps Problems) First(l geom.Level) *Problem {
	if i := slices.IndexFunc(ps, func(p Problem) bool { return p.Level >= l }); i >= 0 {
		return &ps[i]
	}
	return nil
}
