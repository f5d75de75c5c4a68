package layer

import (
	"maps"
	"slices"
	"testing"
)

// TestEveryLayerIsExplained: each operation and layer with a color has a meaning, and each
// that is not cut.
func TestEveryLayerIsExplained(t *testing.T) {
	var told []string
	for _, m := range slices.Concat(Operations, Idle) {
		if len(m.Text) < 10 {
			t.Errorf("%s: %q", m.Word, m.Text)
		}
		told = append(told, m.Word)
	}
	want := slices.Collect(maps.Keys(colors))
	for _, name := range NotCut {
		if !slices.Contains(want, name) {
			want = append(want, name)
		}
	}
	slices.Sort(want)
	slices.Sort(told)
	if !slices.Equal(want, told) {
		t.Errorf("layers %q, explained %q", want, told)
	}
}
