package list

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/shoplog"
)

// Log is a shop's log of test cuts. The zero value is an empty one.
type Log struct {
	Cuts []shoplog.Cut
	text []byte   // as it was read
	cols []string // its columns
}

// logHeads are those of a log, in any order.
var logHeads = []string{"date", "machine", "cutter", "what", "aimed", "measured", "units", "then"}

// What becomes of a setting after a test cut.
const (
	kept  = "kept"
	moved = "moved"
)

// maxOff is by how much a cut may be off what was aimed at, in mm, twice what adjust takes: beyond, another thing
// was measured, or in another unit.
const maxOff = 10.0

// ReadLog reads a log as a table. An empty file is an empty log.
func ReadLog(file string, from io.Reader) (Log, error) {
	text, err := io.ReadAll(io.LimitReader(from, maxBytes+1))
	if err != nil {
		return Log{}, fmt.Errorf("cannot read %s: %w", file, err)
	}
	r := &reader{file: file, heads: logHeads, needed: logHeads, long: "begin a new log, or delete the oldest lines"}
	out := Log{text: text}
	err = r.table(bytes.NewReader(text), func(row []string) { out.Cuts = append(out.Cuts, r.cut(row)) })
	if err != nil {
		return Log{}, err
	}
	if err := errors.Join(r.problems...); err != nil {
		return Log{}, err
	}
	out.cols = r.names
	return out, nil
}

// cut reads a line of a log.
func (r *reader) cut(row []string) (c shoplog.Cut) {
	if !r.whole(row) {
		return c
	}
	get := func(head string) string { return r.get(row, head) }
	wrong := func(head, fault, ask string) { r.wrong(row, head, fault, ask) }
	before := len(r.problems)
	day, err := time.Parse(time.DateOnly, get("date"))
	if err != nil || day.Year() < 1 {
		wrong("date", "is no day", "write it as 2026-03-31")
	}
	if get("machine") == "" {
		wrong("machine", "is no name", "write what the shop calls the machine, or its kind, as saw")
	}
	c.Date, c.Tool = day, shoplog.Tool{Machine: r.name(get("machine")), Cutter: r.name(get("cutter"))}
	if c.What = shoplog.What(strings.ToLower(get("what"))); !slices.Contains(shoplog.Measured, c.What) {
		wrong("what", "is nothing that a test cut tells of", "write "+words.And(whats()))
	}
	switch then := strings.ToLower(get("then")); then {
	case kept, "":
	case moved:
		c.Moved = true
	default:
		wrong("then", "is neither kept nor moved", "write moved where the setting was moved after the cut, else kept")
	}
	unit, err := geom.ParseUnit(get("units"))
	if err != nil {
		wrong("units", "is no unit", "write mm or in")
		return c
	}
	length := func(head string) float64 {
		l, err := geom.ParseLength(get(head), unit)
		switch {
		case err != nil:
			wrong(head, "is no length", "write a length as 6.35 or 1/4")
		case l < 0 || l > most:
			wrong(head, "is out of range", "write a length from 0 to 100 m")
		}
		return l.MM()
	}
	c.Aimed, c.Measured = length("aimed"), length("measured")
	if math.Abs(c.Off()) > maxOff && len(r.problems) == before {
		wrong("measured", "is too far from "+quoted(get("aimed"))+", which was aimed at, to be of this cut",
			"check what was measured, the unit and the decimal point")
	}
	return c
}

// whats are the quantities of a log.
func whats() (list []string) {
	for _, w := range shoplog.Measured {
		list = append(list, string(w))
	}
	return list
}

// With is the text of the log with more cuts after it, in a unit; what was there stays to the last byte.
func (l Log) With(cuts []shoplog.Cut, u geom.Unit) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = len(l.text) == 0 || bytes.Contains(l.text, []byte("\r\n")) // RFC 4180, but as the rest of the file
	out.Write(l.text)
	if n := len(l.text); n > 0 && l.text[n-1] != '\n' {
		out.WriteString(map[bool]string{true: "\r\n", false: "\n"}[w.UseCRLF])
	}
	cols := l.cols
	if cols == nil {
		cols = logHeads
		w.Write(cols)
	}
	for _, c := range cuts {
		length := func(mm float64) string { return geom.LengthOf(mm).Decimal(u) }
		then := kept
		if c.Moved {
			then = moved
		}
		of := map[string]string{"date": c.Date.Format(time.DateOnly), "machine": words.Cell(c.Tool.Machine),
			"cutter": words.Cell(c.Tool.Cutter), "what": string(c.What), "aimed": length(c.Aimed),
			"measured": length(c.Measured), "units": u.String(), "then": then}
		row := make([]string, len(cols))
		for i, head := range cols {
			row[i] = of[head]
		}
		w.Write(row)
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
