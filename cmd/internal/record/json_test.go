package record

import (
	"fmt"
	"testing"
)

// TestReadSaysWhere: what cannot be read of a report is said with its place, or with the entry that has a reader of
// its own.
func TestReadSaysWhere(t *testing.T) {
	for text, want := range map[string]string{
		"":                       "line 1, column 1: unexpected end of JSON input",
		"{\n  \"tool\": tool\n}": "line 2, column 12: invalid character 'o' in literal true (expecting 'r')",
		"{\"job\": \"Löwe\",\n \"job\": \"Löwe\" 4}": "line 2, column 16: invalid character '4' after object key:value pair",
		"{\r\n  \"format\": \"4\"}":                  `line 2, column 15: string cannot be the value of "format"`,
		"{\n  \"format\": 1e308}":                    `line 2, column 17: number 1e308 cannot be the value of "format"`,
		"[]":                                         `line 1, column 1: array cannot be the value of "the whole"`,
		"{\"parts\": [{\"outline\": [[1]]}]}":        `what is not two or three numbers cannot be the value of "parts.outline"`,
	} {
		if _, err := Read([]byte(text)); fmt.Sprint(err) != want {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}
