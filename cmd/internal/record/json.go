package record

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
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
