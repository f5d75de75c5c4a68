package record

import (
	"bytes"
	"encoding/json"
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

// Read reads a report.json.
func Read(data []byte) (Report, error) {
	var r Report
	if err := json.Unmarshal(data, &r); err != nil {
		return r, err
	}
	return eachMeasure(r, millimetersOf(r.Unit())), nil
}
