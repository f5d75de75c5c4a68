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

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Field is a reading that a form has room for: which, and what is right of it, as printed.
type Field struct {
	Drawer, What       string
	Right, Least, Most string
	// A reading is at most so far from what is meant, in mm: beyond, another thing was measured, or in another unit.
	Meant, Near float64
}

// Filled is what stands in a line of a form.
type Filled struct {
	Drawer string
	Field  int // among those of the drawer
	MM     float64
}

// formHeads are those of a form, in the order in which it is written.
var formHeads = []string{"drawer", "what", "right", "least", "most", "reading"}

// WriteForm is a form to fill in, with a line for each field.
func WriteForm(fields []Field) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write(formHeads)
	for _, f := range fields {
		w.Write([]string{words.Cell(f.Drawer), words.Cell(f.What), f.Right, f.Least, f.Most, ""})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// Read is a reading as it is written, in mm, with what is wrong with it and what would do.
func (f Field) Read(text string, u geom.Unit) (mm float64, fault, ask string) {
	l, err := geom.ParseLength(text, u)
	switch {
	case strings.Contains(text, ","):
		return 0, "has a comma", "write a point in a length, as " + f.Right
	case err != nil:
		return 0, "is no length", "write a length as " + f.Right + like[u]
	case math.Abs(l.MM()-f.Meant) > f.Near:
		return 0, "is too far from " + quoted(f.Right) + ", which is right, to be of this box",
			"check what was measured, the unit and the decimal point"
	}
	return l.MM(), "", ""
}

// like are other lengths that a shop writes.
var like = map[geom.Unit]string{geom.Millimeter: " or 6.35 mm", geom.Inch: " or 17 5/8"}

// ReadForm reads a form that was filled in, bare numbers in a unit; lines without a reading are left out. Of gives the
// fields of a drawer; false where there is none of that name.
func ReadForm(file string, from io.Reader, u geom.Unit, of func(drawer string) ([]Field, bool)) ([]Filled, error) {
	r := &formReader{reader: &reader{file: file, unit: u, heads: formHeads, needed: []string{"drawer", "what", "reading"},
		long: "keep the lines of one job", inchMarks: true}, of: of, lines: make(map[Filled]int)}
	if err := r.table(from, r.row); err != nil {
		return nil, err
	}
	if len(r.problems) == 0 && len(r.out) == 0 {
		r.fail("write what was measured into the column reading", "no reading is filled in")
	}
	return r.out, errors.Join(r.problems...)
}

// formReader reads a form.
type formReader struct {
	*reader
	of    func(drawer string) ([]Field, bool)
	out   []Filled
	lines map[Filled]int // of readings, without their lengths
}

// row reads a line.
func (r *formReader) row(row []string) {
	drawer, what := r.get(row, "drawer"), r.get(row, "what")
	if strings.TrimSpace(strings.Join(row, "")) == "" || !r.whole(row) { // a spreadsheet ends with empty lines
		return
	}
	fields, known := r.of(drawer)
	if !known {
		r.wrong(row, "drawer", "is no drawer of the job", "write its name as the job has it")
		return
	}
	one := Filled{Drawer: drawer, Field: slices.IndexFunc(fields, func(f Field) bool { return f.What == what })}
	if one.Field < 0 {
		r.wrong(row, "what", "is not read on a box of this drawer", "write it as a new form has it")
		return
	}
	f, text := fields[one.Field], r.get(row, "reading")
	for _, c := range []struct{ head, now string }{{"right", f.Right}, {"least", f.Least}, {"most", f.Most}} {
		r.asNow(row, c.head, c.now)
	}
	if text == "" {
		return
	}
	if before, twice := r.lines[one]; twice {
		r.wrong(row, "what", fmt.Sprintf("stands in line %d too", before), "delete one of the two")
		return
	}
	r.lines[one] = r.line
	mm, fault, ask := f.Read(text, r.unit)
	if fault != "" {
		r.wrong(row, "reading", "for the "+what+" "+fault, ask)
	}
	one.MM = mm
	r.out = append(r.out, one)
}

// asNow refuses a number that the job has no longer: who read by it was told another one. Where a form does not have
// it, nobody was.
func (r *formReader) asNow(row []string, head, now string) {
	text := r.get(row, head)
	if text == "" {
		return
	}
	l, err := geom.ParseLength(text, r.unit)
	if is, _ := geom.ParseLength(now, r.unit); err != nil || l != is {
		ask := "write the form anew, copy the readings into it, and look at each again"
		if r.get(row, "reading") == "" {
			ask = "a reading goes into the last column; else " + ask
		}
		r.wrong(row, head, "is not what the job has now, "+quoted(now), ask)
	}
}
