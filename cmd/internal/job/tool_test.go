package job

import (
	"strings"
	"testing"
)

// TestToolInNames: a T before {tool} is that of the tool's number.
func TestToolInNames(t *testing.T) {
	for pattern, want := range map[string]string{
		"{operation}_T{tool}": "{operation}_{tool}", "T{tool}_{operation}": "{tool}_{operation}", "{operation}-t{tool}": "{operation}-{tool}",
		"{operation}_{tool}": "{operation}_{tool}", "{operation}_BIT{tool}": "{operation}_BIT{tool}",
	} {
		text := "units: mm\nstock: {ply: {thickness: 12}}\ncutter: {kind: router, diameter: 6}\ndxf: {layers: \"" + pattern + "\", elevation: yes}\ndrawers: [{name: a, outside: 400 x 100 x 500, sides: ply, bottom: ply}]\n"
		j, problems := Read("job.yaml", strings.NewReader(text))
		if problems.Failed() || j.Layers != want || !j.Elevation {
			t.Errorf("%s: %q, elevation %v, want %q: %v", pattern, j.Layers, j.Elevation, want, problems)
		}
	}
}
