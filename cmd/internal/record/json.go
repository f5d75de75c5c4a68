package record

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"
)

// JSON gives any of the package's values as indented text that ends in a newline, with lengths
// and areas in its units.
func JSON(v any) ([]byte, error) {
	v, err := InUnits(v)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// Read reads a report.json. The error names the place of what is wrong, or the entry.
func Read(data []byte) (Report, error) {
	var r Report
	if err := json.Unmarshal(data, &r); err != nil {
		return r, placed(data, err)
	}
	return eachMeasure(r, millimetersOf(r.Unit())), nil
}

// ReadKept is [Read] of a file, one element of its lists after the other, so that its text need not be held. What
// is not laid out as [Write] does it is read whole, with the words of that on what is wrong.
func ReadKept(from io.ReadSeeker) (Kept, error) {
	if k, err := readInOrder(json.NewDecoder(bufio.NewReader(from))); err == nil {
		return k, nil
	}
	if _, err := from.Seek(0, io.SeekStart); err != nil {
		return Kept{}, err
	}
	data, err := io.ReadAll(from)
	if err != nil {
		return Kept{}, err
	}
	r, err := Read(data)
	return Keep(r), err
}

// errOrder is what [readInOrder] does not read: a file of other hands.
var errOrder = errors.New("another layout")

// readInOrder reads a report of which each entry stands once, and the units before all lengths.
func readInOrder(d *json.Decoder) (Kept, error) {
	k := Keep(Report{})
	v, report := reflect.ValueOf(&k).Elem(), reflect.TypeFor[Report]()
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return k, cmp.Or(err, errOrder)
	}
	seen := make(map[string]bool)
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return k, err
		}
		i := fieldOf(report, key.(string))
		if i < 0 || seen[key.(string)] || !seen["units"] && hasMeasures(report.Field(i).Type) {
			return k, errOrder
		}
		seen[key.(string)] = true
		field, toMM := v.FieldByName(report.Field(i).Name), millimetersOf(k.Unit())
		if l, packed := field.Addr().Interface().(interface {
			read(*json.Decoder, *vocabulary, measures) error
		}); packed {
			err = l.read(d, k.words, toMM)
		} else if err = d.Decode(field.Addr().Interface()); err == nil {
			toMM.copied(field, reflect.ValueOf(field.Interface()))
		}
		if err != nil {
			return k, err
		}
	}
	if _, err := d.Token(); err != nil {
		return k, err
	}
	if _, err := d.Token(); err != io.EOF { // after the end
		return k, cmp.Or(err, errOrder)
	}
	k.find()
	return k, nil
}

// fieldOf is the field of an entry; -1 where there is none of just that name.
func fieldOf(t reflect.Type, entry string) int {
	for i := range t.NumField() {
		if name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ","); name == entry {
			return i
		}
	}
	return -1
}

// read appends the elements of a list as they come.
func (l *List[T]) read(d *json.Decoder, words *vocabulary, toMM measures) error {
	t, err := d.Token()
	if err != nil || t == nil {
		return err
	}
	if t != json.Delim('[') {
		return errOrder
	}
	*l = emptyList[T](words)
	for d.More() {
		var v T
		if err := d.Decode(&v); err != nil {
			return err
		}
		l.Append(eachMeasure(v, toMM))
	}
	_, err = d.Token()
	return err
}

// placed is an error of reading JSON with its place, in words that need no knowledge of the program.
func placed(data []byte, err error) error {
	var broken *json.SyntaxError
	var other *json.UnmarshalTypeError
	at, said := int64(0), err.Error()
	switch {
	case errors.As(err, &broken):
		at = max(1, broken.Offset) // of an empty file it is 0
	case errors.As(err, &other):
		at = other.Offset
		said = fmt.Sprintf("%s cannot be the value of %q", other.Value, cmp.Or(other.Field, "the whole"))
	}
	if at == 0 { // of an entry that has a reader of its own
		return errors.New(said)
	}
	before := data[:at-1]
	line := before[bytes.LastIndexByte(before, '\n')+1:]
	lines := bytes.Count(before, []byte("\n"))
	return fmt.Errorf("line %d, column %d: %s", lines+1, utf8.RuneCount(line)+1, said)
}
