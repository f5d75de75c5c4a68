package record

import (
	"bytes"
	"encoding/json"
)

// JSON gives any of the package's values as indented text that ends in a newline.
func JSON(v any) ([]byte, error) {
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
	err := json.Unmarshal(data, &r)
	return r, err
}
