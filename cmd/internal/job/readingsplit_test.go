package job

import (
	"slices"
	"strings"
	"testing"
)

// Readings are parted as people type them, and a number with a fraction stays one.
func TestSplitReadings(t *testing.T) {
	for typed, want := range map[string]string{
		"0.469, 0.473": "0.469|0.473", "0.469 0.473": "0.469|0.473", "0.469; 0.473": "0.469|0.473",
		"0.469 and 0.473": "0.469|0.473", "12, 13 and 14": "12|13|14", "12, And 13": "12|13", "12 13": "12|13",
		"15 1/8": "15 1/8", "1 1/8 1 3/16": "1 1/8|1 3/16", "1 1 / 8": "1 1/8", "15 15 1/8": "15|15 1/8", "3/4 23/32": "3/4|23/32",
		"15 ½ 15½": "15 ½|15½", "12 mm 12.1 mm": "12 mm|12.1 mm", "1/2 in .47": "1/2 in|.47", "17 - 5/8": "17 - 5/8",
		`1' 5 5/8"`: `1' 5 5/8"`, "12,, 13": "12||13",
		"12,21; 12,16": "12.21|12.16", "12,21;12,16": "12.21|12.16", "12,21, 12,16": "12.21|12.16", "12,21 12,16 mm": "12.21|12.16 mm",
		"12,21 and 12,16": "12.21|12.16", "12,21; 12": "12.21|12", "0,469": "0.469", "12,13": "12|13", "12,13,14": "12|13|14",
		"12.2,12.3": "12.2|12.3", "12.2,12.3; 12": "12.2|12.3|12", "12,13, 14": "12|13|14", "1/2,15/32": "1/2|15/32", "12, ": "12", "": "", "12.5 1/8": "12.5|1/8", "12\n13": "12|13",
	} {
		if got := SplitReadings(typed); !slices.Equal(got, strings.Split(want, "|")) {
			t.Errorf("%q is %q", typed, got)
		}
	}
	for typed, want := range map[string]string{"0.469 and 0.473": "[0.469, 0.473]", "0.469 0.473": "[0.469, 0.473]",
		"15 1/8": " 15 1/8", "[12; 12.1]": "[12, 12.1]", "12,21; 12,16": "[12.21, 12.16]",
		"0,469": "0.469"} {
		file, err := Enter([]byte("stock:\n  a: {thickness: 12}\n"), typed, "stock", "a", "thickness")
		if err != nil || !strings.Contains(string(file), "thickness:"+" "+strings.TrimSpace(want)+"}") {
			t.Errorf("%q is written as %s%v", typed, file, err)
		}
	}
}
