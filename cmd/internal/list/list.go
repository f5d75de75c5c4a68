// Package list reads rectangles and the sheets that they are cut from as a table: CSV
// (RFC 4180) with a line of heads.
package list

import (
	"bufio"
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// List is what is to be laid out. Lengths are in nanometers.
//
// Parts with one name under match come from sheets of one batch; those with one under set
// lie side by side, in their order.
type List struct {
	Pieces []nest.Piece
	Sheets []nest.Sheet // without trims
	file   string
	unit   geom.Unit
	lines  map[geom.Setting][]int // of pieces and sheets
}

// At puts the line to which a diagnosis of a layout belongs before it, if it is of one.
func (l List) At(err error) error {
	var d geom.Diagnosis
	if !errors.As(err, &d) {
		return err
	}
	if of := l.lines[d.Subject.Setting]; d.Subject.Item < len(of) {
		d.Ask = geom.Sentencef("change that line, or those that it belongs to")
		return Problem{d, l.file, of[d.Subject.Item], l.unit}
	}
	return err
}

// heads are the headings of the table, in any order; all but name, length and width may be left out.
var heads = []string{"kind", "name", "length", "width", "count", "price", "turn", "batch", "match", "set"}

// Limits of a list.
const (
	maxBytes    = 64 << 20
	maxRows     = 1_000_000
	maxCount    = 1_000_000
	maxPrice    = 1e9
	maxProblems = 20
	maxName     = 100                          // characters: what a label holds
	least       = geom.Length(1_000_000)       // 1 mm: less is no board, and may be written as 0
	most        = geom.Length(100_000_000_000) // 100 m
)

// Problem is what is wrong in a line of a file.
type Problem struct {
	geom.Diagnosis
	File string
	Line int
	Unit geom.Unit // that its reader measures in
}

func (p Problem) Error() string {
	return fmt.Sprintf("%s:%d: %s\n  hint: %s", p.File, p.Line, p.Fact.In(p.Unit), p.Ask.In(p.Unit))
}

// Code is that of all mistakes in a list.
const Code geom.Code = "list"

// reader reads one table.
type reader struct {
	file   string
	unit   geom.Unit
	heads  []string
	needed []string // of them
	// inchMarks is set where a quote may stand in a value, as in 20 5/8".
	inchMarks bool
	long      string         // what to do with one that is too long, other than to lay out a part
	at        map[string]int // columns
	names     []string       // heads as they stand
	line      int
	problems  []error
	parts     int
	list      List
	// Names of groups that match, and of sets, as nest numbers them.
	matches, sets map[string]int
}

// Read reads a list whose bare numbers are in a unit. The error joins the problems of
// all lines, up to a number.
func Read(file string, from io.Reader, unit geom.Unit) (List, error) {
	r := &reader{file: file, unit: unit, heads: heads, needed: []string{"name", "length", "width"}, matches: make(map[string]int), sets: make(map[string]int)}
	r.list.lines = make(map[geom.Setting][]int)
	if err := r.table(from, r.row); err != nil {
		return List{}, err
	}
	if len(r.problems) == 0 && len(r.list.Sheets) == 0 {
		r.fail("write a line as `sheet,birch,2440,1220`", "there is no sheet to cut from")
	}
	if len(r.problems) == 0 && len(r.list.Pieces) == 0 {
		r.fail("write a line as `part,side,500,140,12`", "there are no parts")
	}
	r.list.file, r.list.unit = file, unit
	return r.list, errors.Join(r.problems...)
}

// table reads the lines after the heads. The error is one after which nothing can be
// read.
func (r *reader) table(from io.Reader, each func(row []string)) error {
	limited := &io.LimitedReader{R: from, N: maxBytes + 1}
	table := csv.NewReader(bufio.NewReader(limited))
	table.FieldsPerRecord = -1
	table.ReuseRecord = true
	table.TrimLeadingSpace = true
	table.LazyQuotes = r.inchMarks
	for rows := 0; len(r.problems) < maxProblems; rows++ {
		row, err := table.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		var bad *csv.ParseError
		switch {
		case errors.As(err, &bad):
			r.unquoted(bad)
			return errors.Join(r.problems...)
		case err != nil:
			return fmt.Errorf("cannot read %s: %w", r.file, err)
		}
		r.line, _ = table.FieldPos(0)
		switch {
		case rows > maxRows || limited.N == 0:
			r.fail(cmp.Or(r.long, "lay out a part of it at a time"), "the list has over %d lines or 64 MiB", maxRows)
			return errors.Join(r.problems...)
		case r.at == nil:
			if !r.readHeads(row) {
				return errors.Join(r.problems...)
			}
		default:
			each(row)
		}
	}
	return nil
}

// unquoted reports quotes that belong to no value. Those that are not closed take in all that follows:
// where they open is what is to be looked at.
func (r *reader) unquoted(bad *csv.ParseError) {
	const ask = "write quotes about the whole of a value with a comma in it, and two for each one within it"
	if r.line = bad.Line; bad.StartLine < bad.Line {
		r.line = bad.StartLine
		r.fail(ask, "the quotes that open in this line are not closed, or more follows than a comma, up to line %d",
			bad.Line)
		return
	}
	r.fail(ask, "the quotes near character %d stand within a value, or are not closed", bad.Column)
}

func (r *reader) fail(ask, fact string, args ...any) {
	r.refuse(geom.Sentencef("%s", ask), geom.Sentencef(fact, args...))
}

// whole reports whether a line has a value for each column, and refuses it otherwise.
func (r *reader) whole(row []string) bool {
	if len(row) == len(r.names) {
		return true
	}
	r.fail("write one for each, and decimal points, no decimal commas",
		"the line has %d values under %d column headings", len(row), len(r.names))
	return false
}

// wrong refuses a value of a line.
func (r *reader) wrong(row []string, head, fault, ask string) {
	r.fail(ask, "column %d, %s: %s %s", r.at[head]+1, head, quoted(r.get(row, head)), fault)
}

func (r *reader) refuse(ask, fact geom.Sentence) {
	d := geom.Diagnosis{Code: Code, Level: geom.LevelError, Fact: fact, Ask: ask}
	r.problems = append(r.problems, Problem{d, r.file, max(r.line, 1), r.unit})
}

func (r *reader) readHeads(row []string) bool {
	r.at = make(map[string]int)
	for i, h := range row {
		h = strings.ToLower(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff")))
		_, twice := r.at[h]
		switch {
		case strings.Contains(h, ";"):
			r.fail("write commas between values", "the column headings have semicolons: %s", quoted(h))
		case !slices.Contains(r.heads, h):
			r.fail("the column headings are "+strings.Join(r.heads, ", "), "%s is no column heading", quoted(h))
		case twice:
			r.fail("delete one of them", "%s stands twice", quoted(h))
		}
		r.at[h] = i
		r.names = append(r.names, h)
	}
	for _, h := range r.needed {
		if _, there := r.at[h]; !there && len(r.problems) == 0 {
			r.fail("begin with a line as `"+strings.Join(r.needed, ",")+"`", "there is no column %s", h)
		}
	}
	return len(r.problems) == 0
}

func (r *reader) row(row []string) {
	get := func(head string) string { return r.get(row, head) }
	if len(row) > len(r.names) {
		r.fail("write decimal points, and quotes about values with a comma in them",
			"the line has %d values under %d column headings", len(row), len(r.names))
	}
	if kind := get("kind"); strings.EqualFold(kind, "part") || kind == "" {
		if get("price") != "" {
			r.fail("prices are those of sheets: leave it out", "the part has a price, %s", quoted(get("price")))
		}
		if get("batch") != "" {
			r.fail("batches are those of sheets; parts match: write a name under match",
				"the part has a batch, %s", quoted(get("batch")))
		}
	} else {
		for _, head := range []string{"turn", "match", "set"} {
			if get(head) != "" {
				r.fail("that is for parts: leave it out", "the %s has %s for %s", quoted(kind), quoted(get(head)), head)
			}
		}
	}
	long, wide := r.length("length", get("length")), r.length("width", get("width"))
	kind := strings.ToLower(get("kind"))
	name := r.name(get("name"))
	count := r.count(get("count"))
	what := cmp.Or(kind, "part")
	known := slices.Contains([]string{"part", "sheet", "offcut"}, what)
	if text := get("count"); known && text != "" && strings.Trim(text, "0+-") == "" {
		r.fail("write how many there are, or delete the line", "the %s has a count of 0", what)
	}
	switch kind {
	case "", "part":
		if get("count") == "" {
			count = 1
		}
		if r.parts += count; r.parts > maxCount {
			r.fail("lay out a part of the list at a time", "the list has over %d parts", maxCount)
		}
		r.list.lines[nest.SettingPieces] = append(r.list.lines[nest.SettingPieces], r.line)
		r.list.Pieces = append(r.list.Pieces, nest.Piece{Name: name, Length: long, Width: wide, Count: count, MayRotate: r.yes(get("turn")),
			Match: number(r.matches, get("match")), Set: number(r.sets, get("set"))})
	case "sheet", "offcut":
		r.list.lines[nest.SettingSheets] = append(r.list.lines[nest.SettingSheets], r.line)
		r.list.Sheets = append(r.list.Sheets, nest.Sheet{Name: name, Length: long, Width: wide, Count: count,
			Price: r.price(get("price")), Offcut: kind == "offcut", Batch: r.name(get("batch"))})
	default:
		r.fail("write part, sheet or offcut", "%s is no kind", quoted(kind))
	}
}

// get is a row's value under a head, if there is one.
func (r *reader) get(row []string, head string) string {
	if i, there := r.at[head]; there && i < len(row) {
		return words.OfCell(strings.TrimSpace(row[i]))
	}
	return ""
}

// name is a name that a label can hold.
func (r *reader) name(text string) string { return r.upTo(maxName, text) }

// upTo is a name of so many characters at most, all of which print: a shelf is written again, and nothing may be lost
// from it.
func (r *reader) upTo(most int, text string) string {
	if n := utf8.RuneCountInString(text); n > most {
		r.fail(fmt.Sprintf("write up to %d", most), "the name %s has %d characters", quoted(text), n)
	}
	switch odd := strings.IndexFunc(text, words.Unprintable); {
	case !utf8.ValidString(text):
		r.fail("save the file as UTF-8", "the name %s is not UTF-8 text", quoted(text))
	case odd >= 0:
		c, _ := utf8.DecodeRuneInString(text[odd:])
		r.fail("write the name in one line, without it",
			"the name %s has a character that does not print, U+%04X", quoted(text), c)
	}
	return text
}

func (r *reader) length(head, text string) int64 {
	l, err := geom.ParseLength(text, r.unit)
	switch {
	case err != nil:
		r.fail("write a length as 500, 500 mm or 19 5/8 in", "the %s %s is no length", head, quoted(text))
	case l < least || l > most:
		r.refuse(geom.Sentencef("write one from %s to %s", geom.Millimeters(least.MM()), geom.Millimeters(most.MM())),
			geom.Sentencef("the %s %s is out of range", head, quoted(text)))
	}
	return int64(l)
}

func (r *reader) count(text string) int {
	if text == "" {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > maxCount {
		r.fail(fmt.Sprintf("write a whole number up to %d; none for sheets without end", maxCount),
			"the count %s is out of range", quoted(text))
	}
	return n
}

func (r *reader) price(text string) float64 {
	if text == "" {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= maxPrice) {
		r.fail("write a number as 58 or 58.50", "the price %s is out of range", quoted(text))
	}
	return v
}

func (r *reader) yes(text string) bool {
	switch strings.ToLower(text) {
	case "yes":
		return true
	case "", "no":
	default:
		r.fail("write yes where a part may lie the other way round, or no",
			"turn %s is neither yes nor no", quoted(text))
	}
	return false
}

// number numbers names from 1; no name is 0.
func number(names map[string]int, name string) int {
	if name == "" {
		return 0
	}
	if names[name] == 0 {
		names[name] = len(names) + 1
	}
	return names[name]
}

// quoted shows a value of a file, cut short, its control characters escaped.
func quoted(s string) string {
	const longest = 40
	if runes := []rune(s); len(runes) > longest {
		s = string(runes[:longest]) + "…"
	}
	return strconv.Quote(s)
}
