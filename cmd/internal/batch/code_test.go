package batch

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
)

// TestCode: the same parts have the same code, whatever the job is called and however it is set out; any size, count
// or name that is changed changes it.
func TestCode(t *testing.T) {
	const text = `units: mm
job: One
stock: {ply: {thickness: 12}, thin: {thickness: 6}}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: a, count: 2, outside: 400 x 120 x 450, sides: ply, bottom: thin}
`
	code := func(text string) string {
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := Make(t.Context(), j)
		if b.Code != b.DXF.Code {
			t.Errorf("%q on drawings, %q elsewhere", b.DXF.Code, b.Code)
		}
		return b.Code
	}
	want := code(text)
	if !regexp.MustCompile(`^[2-9A-HJ-NP-Z]{6}$`).MatchString(want) {
		t.Errorf("code %q", want)
	}
	for _, c := range [][2]string{{"job: One", "job: Two"}, {"units: mm", "units: mm # of 2026"}} {
		if got := code(strings.Replace(text, c[0], c[1], 1)); got != want {
			t.Errorf("%q for %q: %s, not %s", c[1], c[0], got, want)
		}
	}
	seen := map[string]string{want: ""}
	for i, c := range [][2]string{{"400 x", "400.01 x"}, {"120 x", "120.5 x"}, {"450", "451"}, {"count: 2", "count: 3"},
		{"name: a", "name: b"}, {"thickness: 12", "thickness: 12.01"}, {"thickness: 6", "thickness: 6.01"},
		{"width: 6.35", "width: 6.36"}, {"bottom: thin", "bottom: thin, joinery: {bottom-height: 13}"},
		{"{thickness: 12}", "{thickness: 12, grain: length}"}} {
		got := code(strings.Replace(text, c[0], c[1], 1))
		if of, twice := seen[got]; twice {
			t.Errorf("%q for %q: %s, as with %q", c[1], c[0], got, of)
		}
		seen[got] = fmt.Sprint(i, c)
	}
}
